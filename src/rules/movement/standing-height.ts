import type { Layout } from '../../build/layout.ts';
import { shoesNote, statureTable } from '../../catalogue/fit-sources.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type EffectiveLimit, type Need, type RuleText } from '../../engine/rule.ts';
import { bodyCaution, fitCaution } from '../cautions.ts';
import { type Ceiling, highestSpot, lowestOver, overheadFrom } from '../clear-height.ts';
import { layout, some } from '../needs.ts';
import { statures, unknownStatures } from '../sleepers.ts';
import { overheadFromM, type StandingPlace, standingPlaces, standingSpot } from '../standing-places.ts';
import { upToMillimetre } from '../whole-millimetres.ts';
import { type Cleared, standingSteps } from '../working/standing.ts';

const text: RuleText = {
  id: 'movement.standing-height',
  topic: 'movement',
  title: 'standing height',
  why: 'Cooking, washing and dressing are done standing, every day; a stooped back soon tells.',
  formula:
    'h = greatest, over spots of 400 mm × 300 mm where one stands, of the least height over the spot from the floor to the roof or to what hangs above 1200 mm; h ≥ S + allowance, S: stature of the tallest sleeper, mm. Walls that lean in are not counted, nor the thickness of a shower tray',
  sources: [
    {
      title:
        'Where one stands: the space that the plan says a thing needs, or else 500 mm before it (common practice, no source)',
      provenance: 'common practice',
    },
    { title: 'A spot of 400 mm × 300 mm for someone who stands, either way round', provenance: 'own choice' },
    statureTable,
    shoesNote,
  ],
  cautions: [fitCaution, bodyCaution],
  fix: 'Lower the floor build-up, or take away what hangs over the place; no furniture mends a low roof.',
  limits: ['standing-headroom'],
  place: ['people', 'sleepers'],
};

const places: Need<readonly StandingPlace[]> = some('fixtures.NAME.is', standingPlaces);

export default defineRule({
  ...text,
  override: { limit: 'standing-headroom', kinds: ['length'] },
  needs: { layout, statures, places },
  check: ({ facts, limit }) => {
    const allowance = limit('standing-headroom');
    const { statureM, neededM, high, low } = sorted(facts, allowance);
    const findingOf = (group: readonly Cleared[], reason: (lowest: Cleared) => Phrase): readonly Finding[] =>
      group.slice(0, 1).map((lowest) =>
        judge({
          rule: text,
          subject: subjectOf(group),
          path: lowest.place.path,
          kind: 'length',
          measured: { value: lowest.clearM, standard: 0 },
          limit: neededM,
          sense: 'at least',
          broken: allowance.failing ? 'fail' : 'warn',
          reason: say`${reason(lowest)} The tallest sleeper, ${length(statureM)}, needs ${length(neededM)} with shoes on and a little air.${unknownStatures(facts.layout)}`,
          remedy: (shortfall) => remedyFor(lowest.ceiling, upToMillimetre(shortfall)),
          sources: allowance.citations,
          cautions: allowance.cautions,
        }),
      );
    return {
      findings: [
        ...low.flatMap((group) =>
          findingOf(
            group,
            ({ ceiling }) => say`Too low to stand up under ${called(ceiling)}: ${heightsOf(group)}.`,
          ),
        ),
        ...findingOf(
          high,
          ({ clearM, ceiling, place }) =>
            say`The lowest place is at ${place.thing.name}, ${length(clearM)} up to ${called(ceiling)}.`,
        ),
      ],
    };
  },
  work: ({ facts, limit }, { subject }) => {
    const allowance = limit('standing-headroom');
    const { statureM, neededM, high, low } = sorted(facts, allowance);
    const group = [...low, high].find((each) => subjectOf(each) === subject);
    return group && standingSteps(group, { statureM, allowanceM: allowance.value, neededM }, facts.layout);
  },
});

interface Facts {
  readonly layout: Layout;
  readonly statures: readonly number[];
  readonly places: readonly StandingPlace[];
}

/** The places that are high enough, and the others by what is over them; in each the lowest first. */
function sorted({ layout: room, statures: staturesM, places: all }: Facts, { value }: EffectiveLimit) {
  const statureM = Math.max(...staturesM);
  const neededM = statureM + value;
  const lowestFirst = lowestOfEach(all.map((place) => cleared(place, room))).sort(
    (a, b) => a.clearM - b.clearM,
  );
  const isLow = ({ clearM }: Cleared) => exceeds(neededM, clearM);
  return {
    statureM,
    neededM,
    high: lowestFirst.filter((each) => !isLow(each)),
    low: underEach(lowestFirst.filter(isLow)),
  };
}

const subjectOf = (group: readonly Cleared[]): string =>
  listed(group.map(({ place }) => place.thing.name).sort());

const called = ({ below }: Ceiling): string => below ?? 'the roof';

/** "cooker 1,790 mm, sink 1,810 mm" */
const heightsOf = (group: readonly Cleared[]): Phrase =>
  group.flatMap(
    ({ place, clearM }, index) => say`${index === 0 ? '' : ', '}${place.thing.name} ${length(clearM)}`,
  );

/** "cooker", "cooker and sink", "cooker, sink and wardrobe". */
const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;

function cleared(place: StandingPlace, room: Layout): Cleared {
  const { thing, outline, floorM } = place;
  const overhead = overheadFrom(
    room,
    floorM + overheadFromM,
    ({ name, whereabouts }) => name !== thing.name && whereabouts === 'inside',
  );
  // A shower tray that is round or cut off may hold no such spot: then one stands all over it.
  const [first = { outline, ceiling: lowestOver(room.shell, overhead, outline) }, ...others] = [
    { lengthM: standingSpot.depthM, widthM: standingSpot.widthM },
    { lengthM: standingSpot.widthM, widthM: standingSpot.depthM },
  ].flatMap((spot) => highestSpot(room.shell, overhead, outline, spot) ?? []);
  const best = others.reduce((most, next) => (next.ceiling.atM > most.ceiling.atM ? next : most), first);
  return { place, clearM: best.ceiling.atM - floorM, ceiling: best.ceiling, over: best.outline };
}

/** Of the places of one thing the lowest counts: the plan says that one stands at each of them. */
function lowestOfEach(all: readonly Cleared[]): Cleared[] {
  const byThing = new Map<string, Cleared>();
  for (const each of all) {
    const known = byThing.get(each.place.thing.name);
    if (!known || each.clearM < known.clearM) byThing.set(each.place.thing.name, each);
  }
  return [...byThing.values()];
}

/** Places that are too low under one thing are one defect. */
function underEach(low: readonly Cleared[]): readonly (readonly Cleared[])[] {
  const groups = new Map<string | undefined, readonly Cleared[]>();
  for (const each of low) groups.set(each.ceiling.below, [...(groups.get(each.ceiling.below) ?? []), each]);
  return [...groups.values()];
}

const remedyFor = ({ below }: Ceiling, shortM: number): Phrase =>
  below === undefined
    ? say`Find ${length(shortM)} more there: a thinner floor or ceiling, a roof hatch of at least ${length(standingSpot.widthM)} by ${length(standingSpot.depthM)} over the spot, or a raised roof; or plan to sit at it.`
    : say`Raise ${below} by ${length(shortM)}, or make it so much shallower that a spot of ${length(standingSpot.widthM)} by ${length(standingSpot.depthM)} is free of it.`;
