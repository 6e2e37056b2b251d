import type { Water, WaterPipe, WaterTank } from '../../build/water.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../../calc/space/restraint.ts';
import { pipeLossPa } from '../../calc/water/pipe-loss.ts';
import { smallPump, suctionHeight } from '../../catalogue/water/pumps.ts';
import { colebrookPaper } from '../../catalogue/water/sources.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { flow, length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { boreKeys, boreOf } from '../pipe-bore.ts';
import {
  lengthKeys,
  liquidOf,
  networkCitations,
  pumpKeys,
  riseOf,
  segmentOf,
  waysToPump,
} from '../water-network.ts';
import { upToMillimetre } from '../whole-millimetres.ts';
import { widerThan } from '../wider-pipes.ts';
import { pipeValues } from '../working/flow.ts';

const text: RuleText = {
  id: 'water.suction',
  topic: 'water',
  title: 'what the pump sucks up',
  why: 'A pump pushes far better than it sucks: with a long, narrow or high suction it runs dry, roars and never fills.',
  formula:
    'H = h + Σ (f·L/D + ΣK)·v²/(2·g) at the open flow of the pump; h pump above the bottom of the tank, m; L, D length and inner diameter, m; v speed, m/s',
  sources: [
    colebrookPaper,
    ...smallPump.citations,
    ...suctionHeight.citations,
    {
      title: 'More than small pumps lift warns; more than the air can press up fails',
      provenance: 'own choice',
    },
  ],
  cautions: [waterCaution],
  fix: 'Put the pump lower and nearer to its tank.',
  place: ['water', 'pump'],
};

interface Suction {
  readonly water: Water;
  readonly tank: WaterTank;
  readonly pipes: readonly WaterPipe[];
  readonly riseM: number;
  readonly openM3PerS: number;
}

const suction: Need<readonly Suction[]> = ({ water }) => {
  if (!water) return missing('water');
  const { pump } = water;
  if (!pump) return missing('water.pump');
  const ways = waysToPump(water);
  if (ways.length === 0) return missing('water.pipes.NAME.to');
  const openM3PerS = pump.openFlowM3PerS ?? pump.curve?.at(-1)?.flowM3PerS;
  const keys = ways.flatMap(({ tank, pipes }) => [
    ...pipes.flatMap((pipe) => [...(boreOf(pipe) ? [] : boreKeys(pipe)), ...lengthKeys(pipe)]),
    ...(riseOf(pipes) === undefined ? placeKeys(water, tank) : []),
  ]);
  if (openM3PerS === undefined) keys.push(...pumpKeys(pump).filter((key) => key.endsWith('flow')));
  if (keys.length > 0 || openM3PerS === undefined) return missing(...new Set(keys));
  return given(ways.map((way) => ({ ...way, water, riseM: riseOf(way.pipes) ?? 0, openM3PerS })));
};

const placeKeys = ({ pump }: Water, { name, box }: WaterTank): string[] => [
  ...(pump?.place ? [] : ['water.pump.thing']),
  ...(box ? [] : [`tanks.${name}.at`]),
  ...(pump?.place && box ? ['water.pipes.NAME.rise'] : []),
];

export default defineRule({
  ...text,
  needs: { suction },
  check: ({ facts }) => ({ findings: facts.suction.map(findingOf) }),
  work: ({ facts }, { subject }) => {
    const each = facts.suction.find((way) => subjectOf(way) === subject);
    return each && stepsOf(each);
  },
});

const subjectOf = ({ tank }: Suction): string => `pump from ${tank.name}`;

/** The height that it sucks over, and what the pipes lose, as height. */
const headOf = (riseM: number, lossM: number): number => Math.max(0, riseM + lossM);

/** What the pipes lose as height, then how high the pump sits above the tank. */
function stepsOf(each: Suction): readonly Step[] {
  const { water, tank, pipes, riseM, openM3PerS } = each;
  const { kinematicViscosityM2S } = liquidOf(water);
  const losses = lossesOf(each);
  const lossM = lossOf(each);
  return [
    {
      what: 'What the suction loses at the open flow, as height, each pipe: (f·L/D + ΣK)·v²/(2·g)',
      sum: say`v = 4·Q/(π·D²), Q = ${flow(openM3PerS)}, g = 9.81 m/s²; f the friction, by Colebrook–White, ΣK bends and valves`,
      result: length(lossM),
      parts: {
        columns: ['L', 'D', 'f', 'ΣK', 'lost'],
        rows: pipes.map((pipe, at) => ({
          name: pipe.name,
          path: pipe.path,
          origin: 'computed',
          values: pipeValues(segmentOf(pipe, water), openM3PerS, kinematicViscosityM2S),
          adds: length(losses[at] ?? 0),
        })),
      },
      paths: [...(water.pump ? [water.pump.path] : []), ...pipes.map(({ path }) => path)],
    },
    {
      what: 'What the pump sucks up: H = h + that, and no less than nothing',
      sum: say`${length(riseM)} from the bottom of ${tank.name} up to the pump + ${length(lossM)}`,
      result: length(headOf(riseM, lossM)),
      paths: [[...tank.path, 'at'], ...pipes.map(({ path }) => [...path, 'rise'])],
    },
  ];
}

function findingOf(each: Suction): Finding {
  const { tank, pipes, riseM, openM3PerS } = each;
  const lossM = lossOf(each);
  const headM = headOf(riseM, lossM);
  const limitM = smallPump.primeLiftM.least;
  const [last] = pipes.toReversed();
  return judge({
    rule: text,
    subject: subjectOf(each),
    path: last?.path ?? text.place,
    kind: 'length',
    measured: { value: headM, standard: 0 },
    limit: limitM,
    sense: 'at most',
    broken: exceeds(headM, suctionHeight.lengthM) ? 'fail' : 'warn',
    reason: say`${placeOf(riseM, tank)} At ${flow(openM3PerS)} ${pipes.map(({ name }) => name).join(', ')} ${pipes.length === 1 ? 'loses' : 'lose'} as much as ${length(lossM)} of height.`,
    sources: networkCitations(pipes),
    remedy: () => remedyOf(each, limitM),
  });
}

/** Lower, as far as the tank's bottom; wider or shorter, as far as there is something to lose less of. */
function remedyOf(each: Suction, limitM: number): Phrase {
  const { tank, riseM, pipes } = each;
  const lossM = lossOf(each);
  const lowered = upToMillimetre(riseM + lossM - limitM);
  const beside = say`beside ${tank.name}, no higher than its bottom`;
  if (!exceeds(lossM, limitM))
    return riseM > limitM
      ? say`Set the pump at least ${length(lowered)} lower: best ${beside}.`
      : say`Make the suction wider or shorter, so that it loses ${length(lowered)} less${widerText(each, riseM, limitM)}, or set the pump ${length(lowered)} lower.`;
  // No lower place makes up for such pipes, unless it is under the tank.
  const stays = Math.min(riseM, 0);
  const less = upToMillimetre(stays + lossM - limitM);
  const its = pipes.length === 1 ? 'it loses' : 'they lose';
  return riseM > 0
    ? say`Set the pump ${beside}, and make the suction wider or shorter, so that ${its} ${length(less)} less${widerText(each, stays, limitM)}: lowering the pump alone is not enough.`
    : say`Make the suction wider or shorter, so that it loses ${length(less)} less${widerText(each, riseM, limitM)}.`;
}

/** " (13 mm hose does)": the narrowest size of the suction's own kind that is enough. */
function widerText(each: Suction, riseM: number, limitM: number): Phrase {
  const [first] = each.pipes;
  const bore = first && boreOf(first);
  if (!bore) return [];
  const enough = widerThan(first, bore.narrowestM).find(
    ({ narrowestM }) => !exceeds(headOf(riseM, lossOf(each, narrowestM)), limitM),
  );
  return enough ? say` (${enough.text} does)` : [];
}

const placeOf = (riseM: number, { name }: WaterTank): Phrase =>
  riseM > 0
    ? say`The pump sits ${length(riseM)} above the bottom of ${name}, and sucks the water up.`
    : say`The pump sits no higher than the bottom of ${name}: the water runs to it.`;

/** What each of the pipes loses at the open flow, as height, with a bore of one's own for all to try another size. */
function lossesOf({ water, pipes, openM3PerS }: Suction, boreM?: number): readonly number[] {
  const liquid = liquidOf(water);
  const perMetrePa = liquid.densityKgM3 * STANDARD_GRAVITY_M_PER_S2;
  return pipes
    .flatMap((pipe) => segmentOf(pipe, water, boreM) ?? [])
    .map((segment) => pipeLossPa(openM3PerS, segment, liquid) / perMetrePa);
}

const lossOf = (each: Suction, boreM?: number): number =>
  lossesOf(each, boreM).reduce((sum, lossM) => sum + lossM, 0);
