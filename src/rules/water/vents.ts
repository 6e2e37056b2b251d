import type { Water, WaterTank } from '../../build/water.ts';
import { ventAirKgM3, ventDiameterM, ventDischarge, ventPressurePa } from '../../calc/water/vent.ts';
import { waterLimits } from '../../catalogue/water/limits.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { flow, length, pressure } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { tankCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { keyAt, silentAbout } from '../silent-about.ts';
import { isFresh, tanks } from '../watered.ts';
import { upToMillimetre } from '../whole-millimetres.ts';

const bore = waterLimits['vent-bore'];
const most = waterLimits['vent-pressure'];

const text: RuleText = {
  id: 'water.vents',
  topic: 'water',
  title: 'tanks can breathe',
  why: 'A tank that cannot breathe bulges while it is filled, is sucked together by the pump, and fills at a trickle.',
  formula:
    'd ≥ the greater of d_least and √(4·Q/(C·π)·√(ρ/(2·Δp))); d bore of the vent, m; Q the faster of filling and pumping, m³/s; C 0.6; ρ of air; Δp the most pressure, Pa',
  sources: [],
  cautions: [tankCaution, ...(bore.caution === undefined ? [] : [bore.caution])],
  fix: 'Give each tank a vent that is wide enough for the hose and for the pump.',
  limits: ['vent-bore', 'vent-pressure'],
  place: ['tanks'],
};

export default defineRule({
  ...text,
  needs: { tanks },
  work: ({ build, facts }, { subject, measured }) => {
    const tank = facts.tanks.find(({ name, inToilet }) => name === subject && !inToilet);
    return tank && measured && stepsOf(tank, build.water);
  },
  check: ({ build, facts }) => {
    const { water } = build;
    // What a toilet is emptied from breathes by its own cap.
    const vented = facts.tanks.filter(({ inToilet }) => !inToilet);
    const known = vented.flatMap((tank) =>
      tank.ventBoreM === undefined ? [] : [judged(tank, tank.ventBoreM, water)],
    );
    return {
      findings: [
        ...foldPasses(known, 'tank'),
        ...silentAbout(
          text,
          vented.filter(({ ventBoreM }) => ventBoreM === undefined),
          'the bore of its vent',
          keyAt('vent'),
        ),
      ],
    };
  },
});

interface Wanted {
  readonly fillM3PerS: number;
  readonly pumpM3PerS: number;
  /** The faster of the two; what goes in or out, as much air goes the other way. */
  readonly fastest: number;
  readonly byFlowM: number;
  readonly limitM: number;
}

function wantedOf(tank: WaterTank, water: Water | undefined): Wanted {
  const { fillM3PerS = 0 } = tank;
  const pumpM3PerS = isFresh(tank) ? (water?.pump?.openFlowM3PerS ?? 0) : 0;
  const fastest = Math.max(fillM3PerS, pumpM3PerS);
  const byFlowM = ventDiameterM(fastest, most.value);
  return { fillM3PerS, pumpM3PerS, fastest, byFlowM, limitM: Math.max(bore.value, byFlowM) };
}

/** The bore that the air needs, the least that any vent has, and what the plan gives it. */
function stepsOf(tank: WaterTank, water: Water | undefined): readonly Step[] {
  const { path, ventBoreM = 0 } = tank;
  const { fillM3PerS, pumpM3PerS, fastest, byFlowM, limitM } = wantedOf(tank, water);
  const air: readonly Step[] = [
    {
      what: 'The air that must pass, as much as water: Q, the faster of filling and pumping',
      sum: say`the greater of ${flow(fillM3PerS)} and ${flow(pumpM3PerS)}`,
      result: flow(fastest),
      paths: [
        [...path, 'fill_rate'],
        ...(water?.pump && pumpM3PerS > 0 ? [[...water.pump.path, 'flow']] : []),
      ],
    },
    {
      what: 'The bore for that: √(4·Q/(C·π)·√(ρ/(2·Δp)))',
      sum: say`√(4 · ${flow(fastest)} / (${String(ventDischarge)} · π) · √(${String(ventAirKgM3)} kg/m³ / (2 · ${String(most.value)} Pa))); 60,000 L/min are 1 m³/s`,
      result: length(byFlowM),
    },
  ];
  return [
    ...(fastest > 0 ? air : []),
    {
      what: 'What it needs at the least',
      sum:
        fastest > 0
          ? say`the greater of ${length(byFlowM)} and the ${length(bore.value)} that every vent should have`
          : say`${length(bore.value)}, as every vent should have; how fast it fills is not in the plan`,
      result: length(limitM),
    },
    {
      what: 'The bore d of its vent, as the plan gives it',
      sum: say`as typed`,
      result: length(ventBoreM),
      paths: [[...path, 'vent']],
    },
  ];
}

function judged(tank: WaterTank, boreM: number, water: Water | undefined): Finding {
  const { name, path } = tank;
  const { fillM3PerS, pumpM3PerS, fastest, byFlowM, limitM } = wantedOf(tank, water);
  const flowing =
    fastest > 0
      ? say` At ${flow(fastest)}${fillM3PerS >= pumpM3PerS ? ' while it fills' : ' while the pump draws'}, ${pressure(ventPressurePa(fastest, boreM))} stand in it; ${pressure(most.value)} are the most.`
      : say``;
  return judge({
    rule: text,
    subject: name,
    path: [...path, 'vent'],
    kind: 'length',
    measured: { value: boreM, standard: 0 },
    limit: limitM,
    sense: 'at least',
    broken: 'warn',
    reason: say`${name} breathes through ${length(boreM)}.${flowing}`,
    remedy: () =>
      say`Take a vent of at least ${length(upToMillimetre(limitM))} inside, rising all the way, with a screen against insects.`,
    sources: byFlowM > bore.value ? most.citations : bore.citations,
  });
}
