import type { Layout, Solid } from '../../build/layout.ts';
import { longestLying } from '../../calc/space/fit-in.ts';
import { TOUCH_TOLERANCE_M } from '../../calc/space/plane.ts';
import { bodyCorrections, bodyMeasuresCaution, measureFor } from '../../catalogue/body-measures.ts';
import { lengthLimit } from '../../catalogue/fit-limits.ts';
import { shoulderBreadthTable, statureTable } from '../../catalogue/fit-sources.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { count, length, share } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type EffectiveLimit, type Need, type RuleText } from '../../engine/rule.ts';
import { bodyCaution, fitCaution } from '../cautions.ts';
import { narrowestBetween } from '../clear-height.ts';
import { longAndShortM, surfaceOf } from '../lying-surface.ts';
import { layout, some } from '../needs.ts';
import { statures, unknownStatures } from '../sleepers.ts';
import { upToMillimetre } from '../whole-millimetres.ts';

const text: RuleText = {
  id: 'movement.bed-length',
  topic: 'movement',
  title: 'length of the bed',
  why: 'Who cannot stretch out does not sleep well, and no cushion makes a bed longer afterwards.',
  formula:
    'l ≥ S + 15 mm + clearance, S: stature of the tallest who sleeps there, mm; across the corners: the longest rectangle 520 mm wide (shoulders of a broad man, clothed) that lies on the mattress at any angle ≥ S + 15 mm. The tallest sleepers are put in the longest beds, and two in the widest',
  sources: [statureTable, shoulderBreadthTable],
  cautions: [fitCaution, bodyCaution, bodyMeasuresCaution],
  fix: 'Make the bed longer or turn it, and leave room beyond feet and head.',
  limits: ['bed-clearance', 'bed-width-single'],
  place: ['people', 'sleepers'],
};

/** Above the bottom of a mattress, the height within which a lying body touches a wall that leans in: own choice. */
const bodyAboveM = 0.3;

const beds: Need<readonly Solid[]> = some('fixtures.NAME.is', bedsOf);

export default defineRule({
  ...text,
  override: { limit: 'bed-clearance', kinds: ['length'] },
  needs: { layout, statures, beds },
  check: ({ facts, limit }) => {
    const clearance = limit('bed-clearance');
    const single = limit('bed-width-single');
    const occupied = peopled(
      facts.beds.map((bed) => measuredBed(bed, facts.layout)),
      facts.layout.sleepers,
      facts.statures,
    );
    return {
      findings: occupied.flatMap((bed) => [
        ...(bed.tallestM === undefined ? [] : [lengthFinding(bed, bed.tallestM, clearance, facts.layout)]),
        ...widthFinding(bed, single),
      ]),
    };
  },
});

/** A mattress on a bed is not one more bed. */
function bedsOf({ solids }: Layout): readonly Solid[] {
  const all = solids.filter(({ use, whereabouts }) => use === 'bed' && whereabouts !== 'under the floor');
  const names = new Set(all.map(({ name }) => name));
  return all.filter(({ hosts }) => !hosts.some((host) => names.has(host)));
}

interface Bed {
  readonly bed: Solid;
  readonly lengthM: number;
  readonly widthM: number;
  /** What the walls, which lean in over its ends, take of its length. */
  readonly lostM: number;
  /** Clear between the walls at the height of the body, where the bed lies across the van. */
  readonly acrossM?: number;
}

function measuredBed(bed: Solid, room: Layout): Bed {
  const { box, cushions } = surfaceOf(bed, room);
  const [longM, widthM] = longAndShortM(box);
  const isAcross = box.mostYM - box.leastYM > box.mostXM - box.leastXM;
  if (!isAcross || bed.whereabouts !== 'inside') return { bed, lengthM: longM, widthM, lostM: 0 };
  // Without a mattress in the plan, the body lies on the bed's top or a mattress does.
  const fromM = cushions.length > 0 ? box.bottomM : box.topM;
  const halfM = narrowestBetween(room.shell, fromM, fromM + bodyAboveM) / 2;
  const { centreYM } = room.shell;
  const clearM = Math.min(box.mostYM, centreYM + halfM) - Math.max(box.leastYM, centreYM - halfM);
  const isCut = longM - clearM > TOUCH_TOLERANCE_M;
  return {
    bed,
    lengthM: isCut ? Math.max(clearM, widthM) : longM,
    widthM,
    lostM: isCut ? longM - clearM : 0,
    acrossM: 2 * halfM,
  };
}

interface Peopled extends Bed {
  readonly sleepers: number;
  /** Of those whose stature is known; undefined where nobody of them sleeps here. */
  readonly tallestM: number | undefined;
}

/** Puts the sleepers in the beds: one in each, the others with them where it is widest; the tallest where it is longest. */
function peopled(beds: readonly Bed[], sleepers: number, staturesM: readonly number[]): readonly Peopled[] {
  const places = new Map(beds.map((each) => [each, 1]));
  for (let more = beds.length; more < sleepers; more += 1) {
    const roomEach = (each: Bed) => each.widthM / ((places.get(each) ?? 0) + 1);
    const [widest] = [...beds].sort((a, b) => roomEach(b) - roomEach(a));
    if (widest) places.set(widest, (places.get(widest) ?? 0) + 1);
  }
  const waiting = [...staturesM].sort((a, b) => b - a);
  const tallest = new Map(
    [...beds]
      .sort((a, b) => b.lengthM - a.lengthM)
      .map((each) => [each, waiting.splice(0, places.get(each) ?? 1)[0]] as const),
  );
  return beds.map((each) => ({
    ...each,
    sleepers: places.get(each) ?? 1,
    tallestM: tallest.get(each),
  }));
}

/** Shoulders of a broad man, clothed. */
const shouldersM = measureFor('shoulder breadth').p95M + bodyCorrections.indoorClothingOnShoulders.valueM;

function lengthFinding(bed: Peopled, statureM: number, clearance: EffectiveLimit, room: Layout): Finding {
  const { name, path } = bed.bed;
  const lyingM = statureM + bodyCorrections.supine.valueM;
  const wantedM = lyingM + clearance.value;
  const common = {
    rule: text,
    subject: name,
    path: [...path, 'size'],
    kind: 'length',
    sense: 'at least',
    sources: clearance.citations,
    cautions: clearance.cautions,
  } as const;
  const about = say`${leaningWalls(bed)}${unknownStatures(room)}`;
  const longer = (byM: number) => lengthen(bed, upToMillimetre(byM));
  if (!exceeds(lyingM, bed.lengthM))
    return judge({
      ...common,
      measured: { value: bed.lengthM, standard: 0 },
      limit: wantedM,
      broken: clearance.failing ? 'fail' : 'warn',
      reason: exceeds(wantedM, bed.lengthM)
        ? say`Someone of ${length(statureM)} just lies straight in ${name}: ${length(lyingM)} of ${length(bed.lengthM)}, head and feet at its ends.${about}`
        : say`Someone of ${length(statureM)} lies straight in ${name}: ${length(bed.lengthM)} long, ${length(bed.lengthM - lyingM)} more than the ${length(lyingM)} that the body takes.${comfort(bed, lyingM)}${about}`,
      remedy: longer,
    });
  const diagonalM = longestLying(shouldersM, { lengthM: bed.lengthM, widthM: bed.widthM });
  if (diagonalM !== undefined && !exceeds(lyingM, diagonalM))
    return judge({
      ...common,
      measured: { value: bed.lengthM, standard: 0 },
      limit: wantedM,
      broken: 'warn',
      reason: say`Someone of ${length(statureM)} lies in ${name} only across its corners: straight it is ${length(bed.lengthM)}, on the diagonal ${length(diagonalM)} for shoulders of ${length(shouldersM)}, and the body takes ${length(lyingM)}.${takenFromOther(bed, lyingM)}${about}`,
      remedy: longer,
    });
  const crossM =
    diagonalM !== undefined && diagonalM - bed.lengthM > TOUCH_TOLERANCE_M ? diagonalM : undefined;
  return judge({
    ...common,
    measured: { value: crossM ?? bed.lengthM, standard: 0 },
    limit: lyingM,
    broken: 'fail',
    reason: say`Nobody of ${length(statureM)} with shoulders of ${length(shouldersM)} lies stretched out in ${name}: the body takes ${length(lyingM)}, and the bed has ${length(bed.lengthM)} straight${crossM === undefined ? ' and no more across its corners' : say` and ${length(crossM)} across its corners`}.${about}`,
    remedy: () => longer(wantedM - bed.lengthM),
  });
}

/** A bed across the van that would have to be longer than the van is wide can only be turned. */
function lengthen({ bed, acrossM, lengthM, widthM }: Peopled, byM: number): Phrase {
  const { name } = bed;
  if (acrossM !== undefined && exceeds(lengthM + byM, acrossM))
    return say`Turn ${name} lengthways and make it ${length(upToMillimetre(lengthM + byM))} long and ${length(widthM)} wide: across the van there are only ${length(acrossM)} clear at that height.`;
  return say`Make ${name} ${length(byM)} longer.`;
}

const leaningWalls = ({ lostM, bed }: Bed): Phrase =>
  lostM === 0
    ? []
    : say` The walls lean in over the ends of ${bed.name} and take ${length(lostM)} of its length.`;

/** The measure of a bed in a house, for those who have the room. */
function comfort({ lengthM }: Bed, lyingM: number): Phrase {
  const comfortable = lengthLimit('bed-clearance-comfortable').valueM;
  return lengthM - lyingM >= comfortable
    ? []
    : say` A bed in a house has ${length(comfortable)} more than the body.`;
}

/**
 * Someone who lies on the diagonal lies with half of the body in each half of the bed, whatever the angle, because both
 * are the same turned half round.
 */
function takenFromOther({ sleepers, lengthM, widthM }: Peopled, lyingM: number): Phrase {
  if (sleepers < 2) return [];
  return say` That takes ${share((lyingM * shouldersM) / (lengthM * widthM))} of the other half of the bed.`;
}

function widthFinding({ bed, widthM, sleepers }: Peopled, single: EffectiveLimit): readonly Finding[] {
  const neededM = sleepers * single.value;
  if (!exceeds(neededM, widthM)) return [];
  return [
    judge({
      rule: text,
      subject: `${bed.name}, width`,
      path: [...bed.path, 'size'],
      kind: 'length',
      measured: { value: widthM, standard: 0 },
      limit: neededM,
      sense: 'at least',
      broken: single.failing ? 'fail' : 'warn',
      reason: say`${bed.name} is ${length(widthM)} wide for ${sleepers === 1 ? 'one sleeper' : say`${count(sleepers)} sleepers, who have ${length(widthM / sleepers)} each`}; a berth has ${length(single.value)} for each.`,
      remedy: (shortfall) =>
        say`Make ${bed.name} ${length(upToMillimetre(shortfall))} wider, or plan another bed.`,
      sources: single.citations,
      cautions: single.cautions,
    }),
  ];
}
