import { type GasUse, gasUseOf } from '../../build/gas-use.ts';
import { daysOfGas } from '../../calc/gas/stored.ts';
import { gasProperties } from '../../catalogue/gas/properties.ts';
import { efficiencyCitations } from '../../catalogue/heat/heating.ts';
import { judge } from '../../engine/judge.ts';
import { count, mass } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { combustionCaution, gasCaution } from '../cautions.ts';
import { stores } from '../gas-facts.ts';
import { optional } from '../needs.ts';
import { observed } from '../observed.ts';
import { joined, namesOf } from '../routed.ts';
import { daysSteps } from '../working/gas-days.ts';

const text: RuleText = {
  id: 'gas.days',
  topic: 'gas',
  title: 'days of gas',
  why: 'Gas that runs out does so in the coldest week, when most of it is burnt and the heating stops with it.',
  formula:
    'n = Σ m / Σ m_day ≥ days between refills; m_day = ṁ·t for cooking, Q / (η·h) for water and room, kg; winter is the mean day of the coldest month',
  sources: [{ title: 'Use is as the plan says', provenance: 'computed' }, ...efficiencyCitations],
  cautions: [gasCaution, combustionCaution],
  fix: 'Carry more gas, refill more often, or cook and heat with less of it.',
  lifeSafety: true,
  place: ['living', 'days_between_gas_refills'],
};

const use: Need<GasUse & { readonly day: NonNullable<GasUse['day']> }> = (build) => {
  const found = gasUseOf(build);
  return found.day ? given({ ...found, day: found.day }) : missing(...found.missing);
};

const refills: Need<number> = optional(
  'living.days_between_gas_refills',
  ({ habits }) => habits.daysBetweenGasRefills,
);

export default defineRule({
  ...text,
  needs: { stores, use, refills },
  check: ({ facts: { stores: all, use: gasUse, refills: days } }) => {
    const { day, byAppliance, burns, assumed } = gasUse;
    const kg = all.reduce((sum, { holdsKg }) => sum + holdsKg, 0);
    const path = all[0]?.path ?? text.place;
    const holds = say`${namesOf(all.map(({ name }) => name))} ${all.length === 1 ? 'holds' : 'hold'} ${mass(kg)}`;
    if (day.winterKg <= 0)
      return {
        findings: [
          observed(text, {
            verdict: 'pass',
            subject: burns,
            path,
            reason: say`${holds}, and by the plan nothing burns any of it.`,
          }),
        ],
      };
    const parts = byAppliance
      .filter(({ winterKg }) => winterKg > 0)
      .map(({ name, winterKg }) => say`${name} ${mass(winterKg)}`);
    const summer =
      day.summerKg < day.winterKg && day.summerKg > 0
        ? say` In summer it is ${mass(day.summerKg)} a day, and the gas lasts ${wholeDays(kg, day.summerKg)}.`
        : say``;
    return {
      findings: [
        {
          ...judge({
            rule: text,
            subject: burns,
            path,
            kind: 'count',
            measured: { value: daysOfGas(kg, [day.winterKg]), standard: 0 },
            limit: days,
            sense: 'at least',
            broken: 'warn',
            reason: say`${holds}. On a winter day ${mass(day.winterKg)} are burnt (${joined(parts)}): it lasts ${wholeDays(kg, day.winterKg)}.${summer}`,
            remedy: () =>
              say`Carry ${mass(Math.ceil((days * day.winterKg - kg) * 10 - 1e-6) / 10)} more gas${kg >= day.winterKg ? say`, or refill every ${wholeDays(kg, day.winterKg)}` : say``}.`,
            sources: gasProperties[burns].citations,
          }),
          assumptions: assumed,
        },
      ],
    };
  },
  work: ({ build, facts: { stores: all, use: gasUse, refills: days } }, { measured }) =>
    measured && daysSteps({ build, stores: all, use: gasUse, winterKg: gasUse.day.winterKg, days }),
});

const wholeDays = (kg: number, perDayKg: number) => {
  const n = Math.floor(kg / perDayKg + 1e-9);
  return say`${count(n)} ${n === 1 ? 'day' : 'days'}`;
};
