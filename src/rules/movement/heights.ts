import type { Build } from '../../build/build.ts';
import type { Layout, Solid } from '../../build/layout.ts';
import { distanceBetween } from '../../calc/space/distance.ts';
import {
  bodyMeasuresCaution,
  measureFor,
  scaledToStature,
  scalingCitations,
} from '../../catalogue/body-measures.ts';
import { type BandLimit, bandLimit } from '../../catalogue/fit-limits.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import {
  defineRule,
  type EffectiveLimit,
  type Need,
  type RuleText,
  type Setting,
} from '../../engine/rule.ts';
import { bodyCaution, fitCaution } from '../cautions.ts';
import { type Surface, surfaceOf, widthAndDepthM } from '../lying-surface.ts';
import { layout, some } from '../needs.ts';
import { elbowHeightM, hasOwnLimit, limitForPeople } from '../sleepers.ts';
import { banded, cited, type Measured, suiting } from '../suiting.ts';
import { downToMillimetre, nearestMillimetre, upToMillimetre } from '../whole-millimetres.ts';
import {
  aboveSeatSteps,
  elbowSteps,
  forShortSteps,
  seatSideStep,
  seatTopStep,
  topOf,
} from '../working/heights.ts';
import { topStep, undersideStep } from '../working/rise.ts';

const text: RuleText = {
  id: 'movement.heights',
  topic: 'movement',
  title: 'heights to sit and work at',
  why: 'A seat too high presses behind the knees, a table too low bends the neck, a worktop too low the back.',
  formula:
    'seat: top ≤ 400 mm · S / 1610 mm and depth ≤ 480 mm · S / 1610 mm, S: stature of the shortest sleeper (else the table), width for one sitter; table: top less the top of the nearest seat within 600 mm, else top above the floor, and height under it; worktop: elbow = 1090 mm · S / 1740 mm + 25 mm of shoes, top 100 to 150 mm below it, from the least for the shortest to the most for the tallest sleeper (else the table)',
  sources: [
    { title: 'A seat within 600 mm of a table is the one to sit at it', provenance: 'own choice' },
    ...scalingCitations,
  ],
  cautions: [fitCaution, bodyCaution, bodyMeasuresCaution],
  fix: 'Set the seat, the table or the worktop to the height that suits its people.',
  limits: ['knee-space-height', 'seat-height', 'seat-depth', 'seat-width'],
  place: ['fixtures'],
};

/** How near a seat must be to belong to a table: own choice. */
const sitsAtWithinM = 0.6;

/** A table whose box begins higher than this has its legs left out, so that what is under it is known: own choice. */
const openBelowM = 0.3;

const things: Need<readonly Solid[]> = some('fixtures.NAME.is', ({ solids }) =>
  solids.filter(
    ({ use, whereabouts }) =>
      (use === 'seat' || use === 'table' || use === 'worktop') && whereabouts === 'inside',
  ),
);

export default defineRule({
  ...text,
  override: { limit: 'seat-height', kinds: ['length'] },
  needs: {
    layout,
    things,
  },
  check: (setting) => ({
    findings: setting.facts.things.flatMap((thing) => findingsOf(thing, measuresOf(thing, setting))),
  }),
  work: (setting, { subject }) => {
    for (const thing of setting.facts.things) {
      const measures = measuresOf(thing, setting);
      const [first] = measures;
      if (thing.name === subject) return first?.steps();
      const broken = measures.find((measure) => subjectOf(thing, measure) === subject);
      if (broken) return broken.steps();
    }
    return undefined;
  },
});

interface Facts {
  readonly layout: Layout;
  readonly things: readonly Solid[];
}

function measuresOf(thing: Solid, { build, facts, limit }: Setting<Facts>): readonly Measured[] {
  const room = facts.layout;
  const seats = facts.things.filter(({ use }) => use === 'seat');
  if (thing.use === 'table')
    return tableMeasures(thing, nearestSeat(thing, seats, room), limit('knee-space-height'), room);
  if (thing.use === 'worktop') return [worktopHeight(thing, room)];
  return seatMeasures(thing, build, room, {
    height: limit('seat-height'),
    depth: limit('seat-depth'),
    width: limit('seat-width'),
  });
}

const subjectOf = ({ name }: Solid, { of }: Measured): string => `${name}, ${of}`;

const isBroken = ({ valueM, limitM, sense }: Measured): boolean =>
  sense === 'at most' ? exceeds(valueM, limitM) : exceeds(limitM, valueM);

/** One finding for each measure that is off, or one for a thing that is fine. */
function findingsOf(thing: Solid, measures: readonly Measured[]): readonly Finding[] {
  const broken = measures.filter(isBroken);
  if (broken.length > 0)
    return broken.map((measure) => findingOf(thing, measure, subjectOf(thing, measure), measure.broken));
  const kept = measures.map((measure) => measure.kept);
  const together = kept.flatMap((each, index) => (index === 0 ? each : ['; ', ...each]));
  return measures.slice(0, 1).map((measure) => ({
    ...findingOf(thing, measure, thing.name, say`${thing.name} suits people: ${together}.`),
    sources: unlike([...measures.flatMap(({ citations }) => citations), ...text.sources]),
    cautions: unlike([...text.cautions, ...measures.flatMap(({ cautions }) => cautions)]),
  }));
}

const unlike = <T>(list: readonly T[]): T[] => [...new Set(list)];

const findingOf = (thing: Solid, measure: Measured, subject: string, reason: Phrase): Finding =>
  judge({
    rule: text,
    subject,
    path: thing.path,
    kind: 'length',
    measured: { value: measure.valueM, standard: 0 },
    limit: measure.limitM,
    sense: measure.sense,
    broken: measure.failing ? 'fail' : 'warn',
    reason,
    remedy: () => measure.remedy,
    sources: measure.citations,
    cautions: measure.cautions,
  });

interface SeatLimits {
  readonly height: EffectiveLimit;
  readonly depth: EffectiveLimit;
  readonly width: EffectiveLimit;
}

function seatMeasures(seat: Solid, build: Build, room: Layout, limits: SeatLimits): readonly Measured[] {
  const surface = surfaceOf(seat, room);
  const { box } = surface;
  const [widthM, depthM] = widthAndDepthM(seat, surface);
  const { name } = seat;
  const forShort = (
    measure: 'popliteal height' | 'buttock-popliteal length',
    published: EffectiveLimit,
    isPlansOwn: boolean,
  ) =>
    limitForPeople(room, published, isPlansOwn, 'at most', (staturesM) => ({
      estimateM: scaledToStature(measure, Math.min(...staturesM), 'British women'),
      citations: measureFor(measure, 'British women').citations,
    }));
  const height = forShort('popliteal height', limits.height, hasOwnLimit(build, text.id));
  // A limit of the plan's own is for the height; the depth follows the people.
  const depth = forShort('buttock-popliteal length', limits.depth, false);
  const whose = (isTheirs: boolean) => (isTheirs ? 'the shortest sleeper' : 'short people');
  return [
    {
      of: 'height',
      valueM: box.topM,
      limitM: height.value,
      sense: 'at most',
      failing: height.failing,
      kept: say`the top is ${length(box.topM)} above the floor`,
      broken: say`The top of ${name} is ${length(box.topM)} above the floor; the feet of ${whose(height.isTheirs)} reach the floor from ${length(height.value)} at the most.`,
      remedy: say`Make ${name} ${length(downToMillimetre(height.value))} high or lower, with its cushion pressed down, or keep a footrest of ${length(upToMillimetre(box.topM - height.value))}.`,
      steps: () => [...forShortSteps('popliteal height', height, room), seatTopStep(seat, surface, room)],
      ...cited(height),
    },
    {
      of: 'depth',
      valueM: depthM,
      limitM: depth.value,
      sense: 'at most',
      failing: depth.failing,
      kept: say`it is ${length(depthM)} deep`,
      broken: say`${name} is ${length(depthM)} deep; ${whose(depth.isTheirs)} ${depth.isTheirs ? 'has' : 'have'} the backrest and the knees over the edge up to ${length(depth.value)}.`,
      remedy: say`Make ${name} ${length(downToMillimetre(depth.value))} deep or less, or put a cushion of ${length(upToMillimetre(depthM - depth.value))} behind the back.`,
      steps: () => [
        ...forShortSteps('buttock-popliteal length', depth, room),
        seatSideStep('shorter', depthM, seat, surface),
      ],
      ...cited(depth),
    },
    {
      of: 'width',
      valueM: widthM,
      limitM: limits.width.value,
      sense: 'at least',
      failing: limits.width.failing,
      kept: say`and ${length(widthM)} wide`,
      broken: say`${name} is ${length(widthM)} wide; broad hips, clothed, take ${length(limits.width.value)} for each sitter.`,
      remedy: say`Make ${name} at least ${length(upToMillimetre(limits.width.value))} wide.`,
      steps: () => [seatSideStep('longer', widthM, seat, surface)],
      ...cited(limits.width),
    },
  ];
}

interface Seated {
  readonly name: string;
  readonly topM: number;
  readonly seat: Solid;
  readonly surface: Surface;
}

function nearestSeat(table: Solid, seats: readonly Solid[], room: Layout): Seated | undefined {
  const near = seats
    .map((seat) => ({ seat, awayM: distanceBetween(table.prism.outline, seat.prism.outline).distanceM }))
    .filter(({ awayM }) => !exceeds(awayM, sitsAtWithinM))
    .sort((a, b) => a.awayM - b.awayM);
  const nearest = near[0]?.seat;
  if (!nearest) return undefined;
  const surface = surfaceOf(nearest, room);
  return { name: nearest.name, topM: surface.box.topM, seat: nearest, surface };
}

function tableMeasures(
  table: Solid,
  seat: Seated | undefined,
  kneeSpace: EffectiveLimit,
  room: Layout,
): readonly Measured[] {
  const { name, box } = table;
  const top = seat
    ? banded('height', box.topM - seat.topM, bandLimit('table-height-above-seat'), (end) => ({
        kept: say`its top is ${length(box.topM - seat.topM)} above ${seat.name}`,
        broken: say`The top of ${name} is ${length(box.topM - seat.topM)} above ${seat.name}, too ${end} to eat at.`,
        remedy: say`With ${seat.name} ${length(seat.topM)} high, a table ${suiting(bandLimit('table-height-above-seat'), seat.topM)} high suits.`,
        steps: () => aboveSeatSteps(table, seat, room),
      }))
    : banded('height', box.topM, bandLimit('table-height'), (end) => ({
        kept: say`its top is ${length(box.topM)} above the floor`,
        broken: say`The top of ${name} is ${length(box.topM)} above the floor, too ${end} for a usual chair; no seat of the plan is within ${length(sitsAtWithinM)} of it.`,
        remedy: say`Make ${name} ${suiting(bandLimit('table-height'))} high, or give the seat that belongs to it.`,
        steps: () => [topStep(topOf(name), table, room)],
      }));
  return [top, ...knees(table, seat, kneeSpace, room)];
}

/**
 * The height under a table, where the plan says what is under it. The figure is for a usual chair: beside a bench so
 * low that no table as thick as this one could keep it and be low enough for the sitter, less does.
 */
function knees(
  table: Solid,
  seat: Seated | undefined,
  kneeSpace: EffectiveLimit,
  room: Layout,
): readonly Measured[] {
  const { name, box } = table;
  const thickM = box.topM - box.bottomM;
  const highestM = seat && seat.topM + bandLimit('table-height-above-seat').mostM;
  if (box.bottomM <= openBelowM || (highestM !== undefined && exceeds(kneeSpace.value + thickM, highestM)))
    return [];
  return [
    {
      of: 'knee space',
      valueM: box.bottomM,
      limitM: kneeSpace.value,
      sense: 'at least',
      failing: kneeSpace.failing,
      kept: say`${length(box.bottomM)} clear are under it`,
      broken: say`Under ${name} ${length(box.bottomM)} are clear for the knees; ${length(kneeSpace.value)} let everybody in.`,
      remedy: say`Raise ${name} by ${length(upToMillimetre(kneeSpace.value - box.bottomM))}, or make its top that much thinner.`,
      steps: () => [undersideStep(`How high it is under ${name}`, table, room)],
      ...cited(kneeSpace),
    },
  ];
}

function worktopHeight(worktop: Solid, room: Layout): Measured {
  const { name, box } = worktop;
  const statures = unlike(room.staturesM).sort((a, b) => a - b);
  const [shortestM] = statures;
  const tallestM = statures.at(-1);
  if (shortestM === undefined || tallestM === undefined)
    return banded('height', box.topM, bandLimit('work-surface-height'), (end) => ({
      kept: say`its top is ${length(box.topM)} above the floor`,
      broken: say`The top of ${name} is ${length(box.topM)} above the floor, too ${end} for most people to work at standing.`,
      remedy: say`Make ${name} ${suiting(bandLimit('work-surface-height'))} high; with the statures of \`people.sleepers\` their elbows decide.`,
      steps: () => [topStep(topOf(name), worktop, room)],
    }));
  const row = bandLimit('worktop-below-elbow');
  const [lowest, highest] = [belowElbow(shortestM), belowElbow(tallestM)];
  const suits = statures.flatMap((statureM, index) => [
    ...(index === 0 ? '' : '; '),
    ...say`${suiting(belowElbow(statureM))} suits ${length(statureM)}`,
  ]);
  const elbow = measureFor('elbow height standing');
  return banded(
    'height',
    box.topM,
    {
      ...highest,
      leastM: lowest.leastM,
      citations: [...highest.citations, ...elbow.citations],
    },
    (end) => ({
      kept: say`its top is ${length(box.topM)} above the floor (${suits})`,
      broken: say`The top of ${name} is ${length(box.topM)} above the floor, too ${end} for the elbows of those who live there. A worktop of ${suits}.`,
      remedy: say`Make ${name} ${suiting({ leastM: lowest.leastM, mostM: highest.mostM })} high.`,
      steps: () => [
        ...(end === 'high'
          ? elbowSteps('tallest', tallestM, row.leastM, highest.mostM)
          : elbowSteps('shortest', shortestM, row.mostM, lowest.leastM)),
        topStep(topOf(name), worktop, room),
      ],
    }),
  );
}

/** The heights of a worktop that suit someone of a stature. */
function belowElbow(statureM: number): BandLimit {
  const row = bandLimit('worktop-below-elbow');
  const elbowM = elbowHeightM(statureM);
  return {
    ...row,
    leastM: nearestMillimetre(elbowM - row.mostM),
    mostM: nearestMillimetre(elbowM - row.leastM),
  };
}
