import type { Build } from '../../build/build.ts';
import type { LosingPart, WorkedHeatDemand } from '../../build/heat-demand.ts';
import { heaterMargin, heaterMarginCitation } from '../../catalogue/heat/heating.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { power, share, temperatureC } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { warmthCaution } from '../cautions.ts';
import { thicknessThatCutsLoss } from '../thicker-insulation.ts';
import { demand, heat, heaterOutputW, uValueSources, winterLow } from '../warmth.ts';

const text: RuleText = {
  id: 'heat.loss',
  topic: 'heat',
  title: 'heater against the heat loss',
  why: 'A heater smaller than the loss lets the van cool down on the coldest nights, however long it runs.',
  formula:
    'Q = (Σ U·A + n·V·1200 / 3600) · (T_i − T_e) · (1 + m); U W/(m²·K), A m², n changes of air an hour, V m³, m margin; people are not counted',
  sources: [
    ...uValueSources,
    {
      title: '0.33 W/(m³·K) for each change of air an hour: heat of air over an hour',
      provenance: 'computed',
    },
    heaterMarginCitation,
  ],
  cautions: [warmthCaution],
  fix: 'Take a heater with more output, or insulate what loses most.',
  place: ['heat', 'heater'],
};

export default defineRule({
  ...text,
  needs: { heat, demand, outputW: heaterOutputW, winterLowC: winterLow },
  check: ({ build, facts: { heat, demand, outputW, winterLowC } }) => {
    const lossW = demand.lossW(winterLowC);
    // Too small fails; within the margin it only warns.
    const isTooSmall = exceeds(lossW, outputW);
    const limitW = isTooSmall ? lossW : lossW * (1 + heaterMargin);
    const differenceK = heat.insideC - winterLowC;
    const margin = isTooSmall
      ? []
      : say` With ${share(heaterMargin)} more to warm up and for wind that is ${power(limitW)}.`;
    return {
      findings: [
        {
          ...judge({
            rule: text,
            subject: 'heater',
            path: ['heat', 'heater', 'output'],
            kind: 'power',
            measured: { value: outputW, standard: 0 },
            limit: limitW,
            sense: 'at least',
            broken: isTooSmall ? 'fail' : 'warn',
            reason: say`At ${temperatureC(winterLowC)} outside and ${temperatureC(heat.insideC)} inside the living space loses ${power(lossW)}${rangeText(demand, differenceK)}, most of it through ${mostLosing(demand.parts, differenceK)}, and ${power(demand.awake.ventilationWPerK * differenceK)} with the air.${margin}`,
            remedy: (shortfallW) => remedy(build, winterLowC, limitW, shortfallW),
            sources: demand.citations,
          }),
          assumptions: demand.assumptions,
        },
      ],
    };
  },
});

const rangeText = ({ leastWPerK, greatestWPerK }: WorkedHeatDemand, differenceK: number): Phrase =>
  greatestWPerK - leastWPerK > 0.01 * greatestWPerK
    ? say` (from ${power(leastWPerK * differenceK)} to ${power(greatestWPerK * differenceK)}, by what ribs and battens let through)`
    : [];

const shown = 3;

/** "the left wall (190 W), the way to the cab (187 W) and the ceiling (183 W)". */
function mostLosing(parts: readonly LosingPart[], differenceK: number): Phrase {
  const most = parts
    .slice(0, shown)
    .map(({ name, uValue, areaM2 }) => say`the ${name} (${power(uValue * areaM2 * differenceK)})`);
  return most.reduce((all, one, at) =>
    at === most.length - 1 ? say`${all} and ${one}` : say`${all}, ${one}`,
  );
}

/** Whole steps that are sold or asked for. */
const stepW = 100;

function remedy(build: Build, winterLowC: number, limitW: number, shortfallW: number): Phrase {
  const neededW = Math.ceil(limitW / stepW - 1e-9) * stepW;
  const heaterText = say`Take a heater of ${power(neededW)} or more`;
  const thicker = thicknessThatCutsLoss(build, winterLowC, limitW, shortfallW);
  return thicker ? say`${heaterText}, or ${thicker}.` : say`${heaterText}.`;
}
