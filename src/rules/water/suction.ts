import type { Water, WaterPipe, WaterTank } from '../../build/water.ts';
import { STANDARD_GRAVITY_M_PER_S2 } from '../../calc/space/restraint.ts';
import { seriesLossPa } from '../../calc/water/pipe-loss.ts';
import { smallPump, suctionHeight } from '../../catalogue/water/pumps.ts';
import { colebrookPaper } from '../../catalogue/water/sources.ts';
import type { Finding } from '../../engine/finding.ts';
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
});

function findingOf(each: Suction): Finding {
  const { tank, pipes, riseM, openM3PerS } = each;
  const lossM = lossOf(each);
  const headM = Math.max(0, riseM + lossM);
  const limitM = smallPump.primeLiftM.least;
  const [last] = pipes.toReversed();
  return judge({
    rule: text,
    subject: `pump from ${tank.name}`,
    path: last?.path ?? text.place,
    kind: 'length',
    measured: { value: headM, standard: 0 },
    limit: limitM,
    sense: 'at most',
    broken: exceeds(headM, suctionHeight.lengthM) ? 'fail' : 'warn',
    reason: say`${placeOf(riseM, tank)} At ${flow(openM3PerS)} ${pipes.map(({ name }) => name).join(', ')} ${pipes.length === 1 ? 'loses' : 'lose'} as much as ${length(lossM)} of height.`,
    sources: networkCitations(pipes),
    remedy: (shortfall) =>
      riseM > limitM
        ? say`Set the pump at least ${length(shortfall)} lower: best beside the tank, no higher than its bottom.`
        : say`Make the suction wider or shorter, so that it loses ${length(shortfall)} less, or set the pump ${length(shortfall)} lower.`,
  });
}

const placeOf = (riseM: number, { name }: WaterTank): Phrase =>
  riseM > 0
    ? say`The pump sits ${length(riseM)} above the bottom of ${name}, and sucks the water up.`
    : say`The pump sits no higher than the bottom of ${name}: the water runs to it.`;

function lossOf({ water, pipes, openM3PerS }: Suction): number {
  const liquid = liquidOf(water);
  const segments = pipes.flatMap((pipe) => segmentOf(pipe, water) ?? []);
  return seriesLossPa(openM3PerS, segments, liquid) / (liquid.densityKgM3 * STANDARD_GRAVITY_M_PER_S2);
}
