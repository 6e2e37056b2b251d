import { warmUpS } from '../../calc/heat/warm-up.ts';
import { judge } from '../../engine/judge.ts';
import { duration, power, temperatureC } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type Need, type RuleText } from '../../engine/rule.ts';
import { warmthCaution } from '../cautions.ts';
import { optional } from '../needs.ts';
import { observed } from '../observed.ts';
import { demand, heat, heaterOutputW, winterLow } from '../warmth.ts';

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

const secondsAnHour = 3600;

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
    const timeS = (heaterW: number): number =>
      warmUpS({
        capacityJPerK: demand.capacityJPerK,
        lossWPerK: demand.awake.totalWPerK,
        heaterW,
        startC: winterLowC,
        targetC: heat.insideC,
        outsideC: winterLowC,
      });
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
});

const stepW = 100;
const mostW = 20_000;

function heaterFor(timeS: (heaterW: number) => number, wantedS: number, outputW: number): Phrase {
  for (let watts = (Math.floor(outputW / stepW) + 1) * stepW; watts <= mostW; watts += stepW)
    if (timeS(watts) <= wantedS)
      return say`Take a heater of ${power(watts)}, let the van not get so cold, or allow more than ${duration(wantedS)}.`;
  return say`Allow more time than ${duration(Math.min(wantedS, 24 * secondsAnHour))}: no heater of a van is large enough for that.`;
}
