import type { WorkedHeatDemand } from '../../build/heat-demand.ts';
import { warmUpS } from '../../calc/heat/warm-up.ts';
import { judge } from '../../engine/judge.ts';
import { duration, power, temperatureC } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type Need, type RuleText } from '../../engine/rule.ts';
import { warmthCaution } from '../cautions.ts';
import { optional } from '../needs.ts';
import { observed } from '../observed.ts';
import { upToShownTime } from '../shown-digits.ts';
import { demand, heat, heaterOutputW, winterLow } from '../warmth.ts';
import { warmUpSteps } from '../working/warm-up.ts';

const text: RuleText = {
  id: 'heat.warm-up',
  topic: 'heat',
  title: 'warming up a cold van',
  why: 'Whoever comes back to a frozen van wants to take the coat off the same evening.',
  formula:
    't = (C / H) · ln((T_∞ − T_0) / (T_∞ − T_1)), T_∞ = T_e + P / H; C J/K of air, linings and half of the insulation, H W/K, P heater in W; T_0 = T_e',
  sources: [
    { title: 'Balance of heat of one lump that warms up as a whole', provenance: 'computed' },
    {
      title: 'What warms up: layers inside of the insulation and half of it; furniture stays cold at first',
      provenance: 'own choice',
    },
  ],
  cautions: [warmthCaution],
  fix: 'Take a heater with more output, or let the van not get so cold.',
  place: ['heat', 'warms_up_in'],
};

const wantedS: Need<number> = optional('heat.warms_up_in', (build) => build.heat?.warmsUpInS);

export default defineRule({
  ...text,
  needs: {
    heat,
    demand,
    outputW: heaterOutputW,
    winterLowC: winterLow,
    wantedS,
  },
  check: ({ facts: { heat, demand, outputW, winterLowC, wantedS } }) => {
    if (winterLowC >= heat.insideC)
      return {
        findings: [
          observed(text, {
            verdict: 'pass',
            subject: 'heater',
            path: ['living', 'winter_low'],
            reason: say`The plan's winter low of ${temperatureC(winterLowC)} is no colder than it is inside: there is nothing to warm up.`,
          }),
        ],
      };
    const timeS = (heaterW: number): number => warmingS(demand, heat.insideC, winterLowC, heaterW);
    const takesS = timeS(outputW);
    const path = ['heat', 'warms_up_in'];
    const whole = say`from ${temperatureC(winterLowC)} to ${temperatureC(heat.insideC)}`;
    if (takesS === Number.POSITIVE_INFINITY)
      return {
        findings: [
          observed(text, {
            verdict: 'warn',
            subject: 'heater',
            path,
            measured: power(outputW),
            reason: say`With ${power(outputW)} the van never gets ${whole}: it loses as much before it is warm.`,
            remedy: heaterFor(timeS, wantedS, outputW),
          }),
        ],
      };
    return {
      findings: [
        {
          ...judge({
            rule: text,
            subject: 'heater',
            path,
            kind: 'duration',
            measured: { value: takesS, standard: 0 },
            limit: wantedS,
            sense: 'at most',
            broken: 'warn',
            reason: say`With ${power(outputW)} air and linings take ${duration(takesS)} to get ${whole}; cupboards and what is in them take longer.`,
            remedy: () => heaterFor(timeS, wantedS, outputW),
          }),
          assumptions: demand.assumptions,
        },
      ],
    };
  },
  work: ({ build, facts: { heat, demand, outputW, winterLowC } }) =>
    warmUpSteps({
      build,
      demand,
      insideC: heat.insideC,
      outsideC: winterLowC,
      outputW,
      takesS: warmingS(demand, heat.insideC, winterLowC, outputW),
    }),
});

/** From as cold as it is outside. */
const warmingS = (
  { capacityJPerK, awake }: WorkedHeatDemand,
  insideC: number,
  outsideC: number,
  heaterW: number,
): number =>
  warmUpS({
    capacityJPerK,
    lossWPerK: awake.totalWPerK,
    heaterW,
    startC: outsideC,
    targetC: insideC,
    outsideC,
  });

const stepW = 100;
const mostW = 20_000;

function heaterFor(timeS: (heaterW: number) => number, wantedS: number, outputW: number): Phrase {
  const nowS = timeS(outputW);
  const allow = Number.isFinite(nowS) ? say`allow ${duration(upToShownTime(nowS))}` : undefined;
  for (let watts = (Math.floor(outputW / stepW) + 1) * stepW; watts <= mostW; watts += stepW)
    if (timeS(watts) <= wantedS)
      return allow
        ? say`Take a heater of ${power(watts)}, let the van not get so cold, or ${allow}.`
        : say`Take a heater of ${power(watts)}, or let the van not get so cold.`;
  return allow
    ? say`Let the van not get so cold, or ${allow}: no heater of a van is large enough for ${duration(wantedS)}.`
    : say`Insulate better, or let the van not get so cold: no heater of a van is large enough for ${duration(wantedS)}.`;
}
