import type { Build } from '../../build/build.ts';
import type { LosingPart, WorkedHeatDemand } from '../../build/heat-demand.ts';
import { heaterMargin, heaterMarginCitation } from '../../catalogue/heat/heating.ts';
import type { Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { conductance, power, share, temperatureC } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { warmthCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { thicknessThatCutsLoss } from '../thicker-insulation.ts';
import { demand, heat, heaterOutputW, uValueSources, winterLow } from '../warmth.ts';
import { lossAtStep, lossPerKelvinSteps } from '../working/loss.ts';

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
    if (winterLowC >= heat.insideC)
      return {
        findings: [
          observed(text, {
            verdict: 'pass',
            subject: 'heater',
            path: ['living', 'winter_low'],
            reason: say`The plan's winter low of ${temperatureC(winterLowC)} is no colder than it is inside: there is nothing to heat.`,
          }),
        ],
      };
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
            remedy: () =>
              remedy(build, winterLowC, lossW * (1 + heaterMargin), lossW * (1 + heaterMargin) - outputW),
            sources: demand.citations,
          }),
          assumptions: demand.assumptions,
        },
      ],
    };
  },
  work: ({ build, facts: { heat, demand, outputW, winterLowC } }) =>
    stepsOf(build, demand, heat.insideC, winterLowC, outputW),
});

/** Part by part, then the air, then the coldest night, and last what the heater gives against it. */
function stepsOf(
  build: Build,
  demand: WorkedHeatDemand,
  insideC: number,
  winterLowC: number,
  outputW: number,
): readonly Step[] {
  const lostW = demand.lossW(winterLowC);
  return [
    ...lossPerKelvinSteps(demand, build),
    lossAtStep('What is lost in the coldest night, nobody counted: Q = H·(T_i − T_e)', {
      lossWPerK: conductance(demand.awake.totalWPerK),
      insideC,
      outsideC: winterLowC,
    }),
    // A heater that is smaller than the loss is told so without the margin.
    ...(exceeds(lostW, outputW)
      ? []
      : [
          {
            what: 'With the margin for warming up and for wind: Q·(1 + m)',
            sum: say`${power(lostW)} · (1 + ${share(heaterMargin)})`,
            result: power(lostW * (1 + heaterMargin)),
          },
        ]),
    { what: 'What the heater gives', result: power(outputW), paths: [['heat', 'heater', 'output']] },
  ];
}

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
