import type { Build } from '../../build/build.ts';
import { wantedFlowOf } from '../../build/outlet-flow.ts';
import type { Water, WaterPipe } from '../../build/water.ts';
import {
  type DeadLegResult,
  deadLeg,
  longestPipeM,
  type PipeLength,
  pipeVolumeM3,
} from '../../calc/water/dead-leg.ts';
import { coldDraws, pipeWallShare } from '../../catalogue/water/dead-leg.ts';
import { waterLimits } from '../../catalogue/water/limits.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { flow, length, share, smallVolume, volume, wait } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import {
  defineRule,
  type EffectiveLimit,
  given,
  missing,
  type Need,
  type RuleText,
} from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { observed } from '../observed.ts';
import { boreKeys, boreOf } from '../pipe-bore.ts';
import { downToShown, downToShownLength, litresPerM3 } from '../shown-digits.ts';
import {
  flowThrough,
  type KnownSupply,
  lengthKeys,
  resolve,
  type Supply,
  suppliesOf,
} from '../water-network.ts';
import { curveOf, supplies } from '../water-supplies.ts';
import { narrowerThan } from '../wider-pipes.ts';

const text: RuleText = {
  id: 'water.hot-wait',
  topic: 'water',
  title: 'wait for hot water',
  why: 'What stands in the pipe has gone cold and runs into the waste tank before hot water comes: a long, wide pipe costs litres a day that were carried in by hand.',
  formula:
    't = V·(1 + s) / Q; V = Σ π·D²/4·L of the hot pipes, m³; s = 0.2 for the warmth that their walls take; Q flow of the outlet, m³/s, as solved for it alone, else as wanted; lost a day = n·V·(1 + s), n draws from a cold pipe',
  sources: [...pipeWallShare.citations, ...coldDraws.citations],
  cautions: [waterCaution, 'An instant heater needs some seconds to start, which come on top.'],
  fix: 'Bring the heater nearer to the outlet, or take a narrower hot pipe.',
  limits: ['hot-water-wait', 'hot-water-wait-longest', 'dead-leg-volume'],
  place: ['water', 'heater'],
};

interface HotWay {
  readonly supply: Supply;
  /** From the heater on. */
  readonly pipes: readonly WaterPipe[];
}

interface HotWays {
  readonly water: Water;
  readonly ways: readonly HotWay[];
}

const hotWays: Need<HotWays> = ({ water }) => {
  if (!water) return missing('water');
  if (!water.heater) return missing('water.heater');
  const ways = suppliesOf(water)
    .filter(({ kind }) => kind === 'hot')
    .map((supply) => ({ supply, pipes: supply.pipes.filter(({ role }) => role === 'hot') }));
  return ways.length > 0 ? given({ water, ways }) : missing('water.pipes.NAME.from');
};

export default defineRule({
  ...text,
  override: { limit: 'hot-water-wait', kinds: ['duration'] },
  needs: { hot: hotWays },
  check: ({ build, facts: { hot }, limit }) => {
    const known = hot.ways.filter(({ supply, pipes }) => keysOf(supply, pipes).length === 0);
    const findings = known.map((way) =>
      findingOf({ build, water: hot.water, way, limit: limit('hot-water-wait') }),
    );
    const keys = hot.ways.flatMap(({ supply, pipes }) => keysOf(supply, pipes));
    return { findings: [...foldPasses(findings, 'outlet'), ...notKnown([...new Set(keys)])] };
  },
  work: ({ build, facts: { hot } }, { subject, measured }) => {
    const way = hot.ways.find(({ supply }) => supply.outlet.name === subject);
    return way && measured && stepsOf(build, hot.water, way, measured.kind === 'wait');
  },
});

const keysOf = ({ outlet }: Supply, pipes: readonly WaterPipe[]): readonly string[] => [
  ...pipes.flatMap((pipe) => [...(boreOf(pipe) ? [] : boreKeys(pipe)), ...lengthKeys(pipe)]),
  ...(wantedFlowOf(outlet) ? [] : [`${outlet.path.join('.')}.flow`]),
];

interface Waiting {
  readonly build: Build;
  readonly water: Water;
  readonly way: HotWay;
  readonly limit: EffectiveLimit;
}

interface Runs {
  readonly flowM3S: number;
  readonly isSolved: boolean;
}

/** As much as flows, if that can be solved; else as much as is wanted. */
function flowOf(build: Build, water: Water, supply: Supply): Runs {
  const all = supplies(build);
  const resolved = resolve(supply, water);
  const solved =
    all.ok && resolved.ok && (all.value.curve || !supply.isPumped)
      ? flowThrough(water, [resolved.supply], curveOf(all.value, resolved.supply)).totalM3S
      : 0;
  if (solved > 0) return { flowM3S: solved, isSolved: true };
  return { flowM3S: wantedFlowOf(supply.outlet)?.flowM3PerS ?? 0, isSolved: false };
}

/** What stands in a pipe is told by its widest bore. */
const lengthsOf = (pipes: readonly WaterPipe[]): readonly PipeLength[] =>
  pipes.map((pipe) => ({ lengthM: pipe.lengthM ?? 0, innerDiameterM: boreOf(pipe)?.widestM ?? 0 }));

function drawsOf({ habits }: Build, { outlet }: Supply): number {
  if (outlet.use !== 'shower') return coldDraws.perDay;
  const { showersPerPersonDay, people } = habits;
  return showersPerPersonDay === undefined || people === undefined ? 1 : showersPerPersonDay * people;
}

function findingOf({ build, water, way, limit }: Waiting): Finding {
  const { supply, pipes } = way;
  const runs = flowOf(build, water, supply);
  const leg = deadLeg({
    pipes: lengthsOf(pipes),
    flowM3S: runs.flowM3S,
    wallShare: pipeWallShare.value,
    coldDrawsPerDay: drawsOf(build, supply),
  });
  const longest = waterLimits['hot-water-wait-longest'];
  const held = waterLimits['dead-leg-volume'];
  const subject = {
    rule: text,
    subject: supply.outlet.name,
    path: pipes.at(-1)?.path ?? text.place,
    broken: 'warn',
    sense: 'at most',
    reason: working(way, leg, runs, drawsOf(build, supply)),
    remedy: () =>
      remedyOf(way, {
        flowM3S: runs.flowM3S,
        flowAt: (boreM) => flowWith(build, water, supply, pipes, boreM),
        mostM3: held.value,
        mostS: limit.value,
      }),
  } as const;
  // Water that comes soon may still be a lot of water, for one who carries it.
  if (!exceeds(leg.waitS, limit.value) && exceeds(leg.heldM3, held.value))
    return judge({
      ...subject,
      kind: 'volume',
      measured: { value: leg.heldM3, standard: 0 },
      limit: held.value,
      sources: held.citations,
    });
  const overrideAllows = Math.max(longest.value, limit.value);
  return judge({
    ...subject,
    kind: 'wait',
    measured: { value: leg.waitS, standard: 0 },
    limit: limit.value,
    broken: exceeds(leg.waitS, overrideAllows) ? 'fail' : 'warn',
    sources: [...limit.citations, ...longest.citations],
    cautions: limit.cautions,
  });
}

function working({ supply, pipes }: HotWay, leg: DeadLegResult, runs: Runs, draws: number): Phrase {
  const lengthM = pipes.reduce((sum, pipe) => sum + (pipe.lengthM ?? 0), 0);
  const names = pipes.map(({ name }) => name).join(', ');
  const flows = runs.isSolved
    ? say`At the ${flow(runs.flowM3S)} that flow`
    : say`At the ${flow(runs.flowM3S)} that are wanted`;
  const lost =
    draws > 0 ? say` With ${drawsText(draws)} that makes ${volume(leg.wastedM3PerDay)} a day.` : '';
  return say`${volume(leg.heldM3)} stand in ${length(lengthM)} of ${names}, and warming its wall takes more. ${flows}, ${supply.outlet.name} runs cold for ${wait(leg.waitS)} and ${volume(leg.wastedM3)} go down the drain.${lost}`;
}

const drawsText = (draws: number): string =>
  draws === 1
    ? 'one draw a day from a cold pipe'
    : `${Number(draws.toFixed(1))} draws a day from a cold pipe`;

/** What stands in the pipes, and where the wait is what was judged, what runs off of it and how fast. */
function stepsOf(
  build: Build,
  water: Water,
  { supply, pipes }: HotWay,
  judgesWait: boolean,
): readonly Step[] {
  const held = lengthsOf(pipes).map((each) => ({ ...each, m3: pipeVolumeM3([each]) }));
  const told = judgesWait ? smallVolume : volume;
  const heldM3 = held.reduce((sum, { m3 }) => sum + m3, 0);
  const standing: Step = {
    what: 'What stands in the hot pipes: V = Σ π·D²/4·L',
    result: told(heldM3),
    parts: {
      columns: ['L', 'D', 'holds'],
      rows: pipes.map(({ name, path }, at) => ({
        name,
        path,
        origin: 'computed',
        values: [length(held[at]?.lengthM ?? 0), length(held[at]?.innerDiameterM ?? 0)],
        adds: told(held[at]?.m3 ?? 0),
      })),
    },
    paths: pipes.map(({ path }) => path),
  };
  if (!judgesWait) return [standing];
  const { flowM3S, isSolved } = flowOf(build, water, supply);
  const runsM3 = heldM3 * (1 + pipeWallShare.value);
  return [
    standing,
    {
      what: 'What runs off, the warmth that the walls take counted as water: V·(1 + s)',
      sum: say`${smallVolume(heldM3)} · (1 + ${share(pipeWallShare.value)})`,
      result: smallVolume(runsM3),
    },
    {
      what: `What flows from ${supply.outlet.name}`,
      sum: isSolved
        ? say`hot, with nothing else open; \`storystick explain water.flow\` shows the steps`
        : say`as much as is wanted, since it could not be solved`,
      result: flow(flowM3S),
      paths: [supply.outlet.path],
    },
    {
      what: 'The wait: t = V·(1 + s) / Q',
      sum: say`${smallVolume(runsM3)} / ${flow(flowM3S)}`,
      result: wait(runsM3 / flowM3S),
    },
  ];
}

/** What would flow if all hot pipes had another bore; as wanted where that cannot be solved. */
function flowWith(
  build: Build,
  water: Water,
  supply: Supply,
  pipes: readonly WaterPipe[],
  boreM: number,
): number {
  const all = supplies(build);
  const resolved = resolve(supply, water);
  const wanted = wantedFlowOf(supply.outlet)?.flowM3PerS ?? 0;
  if (!all.ok || !resolved.ok || (supply.isPumped && !all.value.curve)) return wanted;
  const known: KnownSupply = {
    ...resolved.supply,
    segments: resolved.supply.segments.map((segment, index) => {
      const pipe = supply.pipes[index];
      return pipe && pipes.includes(pipe) ? { ...segment, innerDiameterM: boreM } : segment;
    }),
  };
  return flowThrough(water, [known], curveOf(all.value, known)).totalM3S;
}

interface Wanted {
  /** What flows now. */
  readonly flowM3S: number;
  /** What would flow if all hot pipes had another bore. */
  readonly flowAt: (boreM: number) => number;
  readonly mostM3: number;
  readonly mostS: number;
}

/** A narrower pipe that still gives its water soon enough, or how long the pipe may be. */
function remedyOf({ pipes }: HotWay, { flowM3S, flowAt, mostM3, mostS }: Wanted): Phrase {
  const [first] = pipes;
  const bore = first && boreOf(first);
  if (!first || !bore) return say`Bring the heater nearer to the outlet.`;
  const lengthM = pipes.reduce((sum, pipe) => sum + (pipe.lengthM ?? 0), 0);
  const [narrower] = narrowerThan(first, bore.widestM).filter(({ narrowestM, widestM }) => {
    const atM3S = flowAt(narrowestM);
    if (atM3S <= 0) return false;
    const leg = deadLeg({
      pipes: [{ lengthM, innerDiameterM: widestM }],
      flowM3S: atM3S,
      wallShare: pipeWallShare.value,
    });
    return !exceeds(leg.heldM3, mostM3) && !exceeds(leg.waitS, mostS);
  });
  // A shorter pipe lets no less through.
  const mayM3 = Math.min(mostM3, (mostS * flowM3S) / (1 + pipeWallShare.value));
  const shorter = shorterText(pipes, bore.widestM, mayM3);
  if (!narrower) return say`Without a narrower pipe that is enough: ${shorter}.`;
  return say`Take ${narrower.text}, which holds less, or ${shorter}.`;
}

/** How long pipes of one bore may be; of several, what they may hold. */
function shorterText(pipes: readonly WaterPipe[], boreM: number, mayM3: number): Phrase {
  if (pipes.some((pipe) => boreOf(pipe)?.widestM !== boreM))
    return say`bring the heater so near that the hot pipes hold no more than ${volume(downToShown(mayM3, litresPerM3))} together`;
  const longest = length(downToShownLength(longestPipeM(mayM3, boreM)));
  return pipes.length === 1
    ? say`bring the heater so near that the pipe is no longer than ${longest}`
    : say`bring the heater so near that the hot pipes are no longer than ${longest} together`;
}

function notKnown(keys: readonly string[]): Finding[] {
  if (keys.length === 0) return [];
  return [
    observed(text, {
      verdict: 'not checked',
      subject: 'hot pipes',
      path: text.place,
      reason: say`How much stands in a hot pipe follows from its material, size and length.`,
      remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
      missing: keys,
    }),
  ];
}
