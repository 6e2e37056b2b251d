import type { Build } from '../../build/build.ts';
import type { Layout, Solid } from '../../build/layout.ts';
import { offset } from '../../calc/space/clip.ts';
import { boundsOf, type Outline } from '../../calc/space/plane.ts';
import {
  bodyCorrections,
  bodyMeasuresCaution,
  measureFor,
  scaledToStature,
  scalingCitations,
} from '../../catalogue/body-measures.ts';
import { sittingHeightTable } from '../../catalogue/fit-sources.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type EffectiveLimit, type Need, type RuleText } from '../../engine/rule.ts';
import { bodyCaution, fitCaution } from '../cautions.ts';
import { type Ceiling, highestSpot, lowestOver, overheadFrom } from '../clear-height.ts';
import { surfaceOf } from '../lying-surface.ts';
import { layout, some } from '../needs.ts';
import { hasOwnLimit, limitForPeople } from '../sleepers.ts';
import { upToMillimetre } from '../whole-millimetres.ts';
import { headroomSteps } from '../working/headroom.ts';

const text: RuleText = {
  id: 'movement.headroom',
  topic: 'movement',
  title: 'headroom on beds and seats',
  why: 'Who cannot sit up straight reads, dresses and drinks lying down, and hits the head at night.',
  formula:
    'h = height from the seat or mattress up to the roof or to what hangs there; seat: least h over it; bed: greatest, over spots of 450 mm × 450 mm, of the least h over the spot; h ≥ sitting height of the tallest sleeper (910 mm · S / 1740 mm) + 25 mm, or the table where no stature is known; and on a bed the least h everywhere ≥ lying headroom. Walls that lean in are not counted',
  sources: [
    {
      title:
        'A spot of 450 mm × 450 mm for someone who sits up in bed; what hangs less than 60 mm over its edge is over nobody',
      provenance: 'own choice',
    },
    sittingHeightTable,
    ...scalingCitations,
  ],
  cautions: [fitCaution, bodyCaution, bodyMeasuresCaution],
  fix: 'Lower the bed or seat, or take away what hangs over it.',
  limits: ['sitting-headroom', 'lying-headroom'],
  place: ['fixtures'],
};

/** Own choice. */
const sittingSpot = { lengthM: 0.45, widthM: 0.45 } as const;

const places: Need<readonly Solid[]> = some('fixtures.NAME.is', ({ solids }) =>
  solids.filter(({ use, whereabouts }) => (use === 'bed' || use === 'seat') && whereabouts === 'inside'),
);

export default defineRule({
  ...text,
  override: { limit: 'sitting-headroom', kinds: ['length'] },
  needs: {
    layout,
    places,
  },
  check: ({ build, facts, limit }) => {
    const sitting = sittingLimit(build, facts.layout, limit('sitting-headroom'));
    return {
      findings: facts.places
        .filter(({ hosts }) => !facts.places.some(({ name }) => hosts.includes(name)))
        .flatMap((thing) =>
          thing.use === 'bed'
            ? onBed(thing, facts.layout, sitting, limit('lying-headroom'))
            : [onSeat(thing, facts.layout, sitting)],
        ),
    };
  },
  work: ({ build, facts, limit }, { subject }) => {
    const room = facts.layout;
    const sitting = sittingLimit(build, room, limit('sitting-headroom'));
    const thing = facts.places.find((each) => each.name === subject || lyingSubject(each) === subject);
    if (!thing) return undefined;
    if (thing.use !== 'bed') {
      const { surface, ceiling } = overSeat(thing, room);
      return headroomSteps(thing, surface, { ceiling, over: boundsOf(surface.outline), sitting }, room);
    }
    const { surface, lowest, best, spot } = overBed(thing, room);
    const over = boundsOf(surface.outline);
    const clear =
      thing.name === subject
        ? { ceiling: best, over: spot ? boundsOf(spot) : over, sitting, spot: sittingSpot }
        : { ceiling: lowest, over };
    return headroomSteps(thing, surface, clear, room);
  },
});

const lyingSubject = ({ name }: Solid): string => `${name}, lying`;

const sittingLimit = (build: Build, room: Layout, published: EffectiveLimit): Sitting =>
  limitForPeople(room, published, hasOwnLimit(build, text.id), 'at least', (staturesM) => ({
    estimateM: scaledToStature('sitting height', Math.max(...staturesM)) + bodyCorrections.hat.valueM,
    citations: measureFor('sitting height').citations,
  }));

type Sitting = EffectiveLimit & { readonly isTheirs: boolean };

/** Over a bed or a seat; a table over somebody's lap is no ceiling. */
const overheadOf = ({ name, use }: Solid, room: Layout, topM: number) =>
  overheadFrom(
    room,
    topM,
    (solid) =>
      solid.name !== name &&
      !solid.hosts.includes(name) &&
      solid.whereabouts === 'inside' &&
      !(use === 'seat' && (solid.use === 'table' || solid.use === 'worktop')),
  );

const called = ({ below }: Ceiling): string => below ?? 'the roof';

function overSeat(seat: Solid, room: Layout) {
  const surface = surfaceOf(seat, room);
  const { outline, box } = surface;
  return { surface, ceiling: lowestOver(room.shell, overheadOf(seat, room, box.topM), outline) };
}

function onSeat(seat: Solid, room: Layout, sitting: Sitting): Finding {
  const { surface, ceiling } = overSeat(seat, room);
  return sittingFinding(seat, ceiling, ceiling.atM - surface.box.topM, sitting, []);
}

/** A window frame or a shelf that hangs this far over the edge of a bed is over nobody: own choice. */
const edgeM = 0.06;

/** A bed without its edge; the whole of one that is nothing but edge. */
const innerPart = (outline: Outline): Outline => offset([outline], -edgeM).outlines[0] ?? outline;

/** Over a bed: what is lowest anywhere, and what is over the best place to sit up. */
function overBed(bed: Solid, room: Layout) {
  const surface = surfaceOf(bed, room);
  const { outline, box } = surface;
  const overhead = overheadOf(bed, room, box.topM);
  const [roof, hanging] = [
    lowestOver(room.shell, [], outline),
    lowestOver(room.shell, overhead, innerPart(outline)),
  ];
  const lowest = roof.atM <= hanging.atM ? roof : hanging;
  const spot = highestSpot(room.shell, overhead, outline, sittingSpot);
  return { surface, lowest, best: spot?.ceiling ?? lowest, spot: spot?.outline };
}

function onBed(bed: Solid, room: Layout, sitting: Sitting, lying: EffectiveLimit): readonly Finding[] {
  const { surface, lowest, best } = overBed(bed, room);
  const { box } = surface;
  const [leastM, bestM] = [lowest.atM - box.topM, best.atM - box.topM];
  const isLow = exceeds(lying.value, leastM);
  const low = judge({
    rule: text,
    subject: lyingSubject(bed),
    path: bed.path,
    kind: 'length',
    measured: { value: leastM, standard: 0 },
    limit: lying.value,
    sense: 'at least',
    broken: lying.failing ? 'fail' : 'warn',
    reason: say`Over ${bed.name} there are only ${length(leastM)} between the mattress and ${called(lowest)} at the lowest place; a berth has ${length(lying.value)} everywhere.${exceeds(lying.value, bestM) ? ' Nobody sits up anywhere on it.' : ''}`,
    remedy: (shortfall) => remedyFor(bed, lowest, shortfall),
    sources: lying.citations,
    cautions: lying.cautions,
  });
  // A bed too low to lie under is too low to sit up in; that is said once.
  if (isLow && exceeds(lying.value, bestM)) return [low];
  const sitUp = sittingFinding(bed, best, bestM, sitting, [
    say` at the best place; lying, there are ${length(leastM)} at the least`,
  ]);
  if (!isLow) return [sitUp];
  return sitUp.verdict === 'pass' ? [low] : [sitUp, low];
}

function sittingFinding(
  thing: Solid,
  ceiling: Ceiling,
  clearM: number,
  sitting: Sitting,
  more: readonly Phrase[],
): Finding {
  const whom = sitting.isTheirs ? 'the tallest sleeper' : 'a tall person';
  return judge({
    rule: text,
    subject: thing.name,
    path: thing.path,
    kind: 'length',
    measured: { value: clearM, standard: 0 },
    limit: sitting.value,
    sense: 'at least',
    broken: sitting.failing ? 'fail' : 'warn',
    reason: say`From ${thing.name} up to ${called(ceiling)} there are ${length(clearM)}${more.flat()}. To sit up straight ${whom} needs ${length(sitting.value)}.`,
    remedy: (shortfall) => remedyFor(thing, ceiling, shortfall),
    sources: sitting.citations,
    cautions: sitting.cautions,
  });
}

function remedyFor({ name }: Solid, { below }: Ceiling, shortfall: number): Phrase {
  const byM = length(upToMillimetre(shortfall));
  return below === undefined
    ? say`Lower ${name} by ${byM}.`
    : say`Raise ${below} or lower ${name} by ${byM}.`;
}
