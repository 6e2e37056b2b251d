import type { Bank } from '../../build/electrical.ts';
import { monthName } from '../../build/energy.ts';
import type { MonthSummary } from '../../calc/energy/year.ts';
import { judge } from '../../engine/judge.ts';
import { chargeAh, energyWh, share } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import {
  climateCautions,
  climateSources,
  simulationSources,
  workedYear,
  yearCautions,
} from '../energy-facts.ts';
import { fullStep, lowestStep } from '../working/energy.ts';

const text: RuleText = {
  id: 'electrical.charge-state',
  topic: 'electrical',
  title: 'how far the battery is drawn',
  why: 'A battery that is drawn deeply every few days lasts for fewer years; lead ages the fastest below half.',
  formula: 'state of charge = 1 − u·(1 − E_least / E_usable); u: usable share of the capacity',
  sources: simulationSources,
  cautions: yearCautions,
  fix: 'Use less, charge more, or fit a larger battery.',
  place: ['electrical', 'battery'],
};

export default defineRule({
  ...text,
  needs: { worked: workedYear },
  check: ({ facts: { worked } }) => {
    const { bank, year } = worked;
    const { chemistry, capacityAh } = bank;
    const lowest = lowestOf(year.months);
    if (!lowest) return { findings: [] };
    const left = leftOf(bank, lowest);
    const guide = 1 - chemistry.usableShare.value;
    const drawnAh = capacityAh * (1 - left);
    return {
      findings: [
        judge({
          rule: text,
          subject: `battery in ${monthName(lowest.month)}`,
          path: bank.path,
          kind: 'share',
          measured: { value: left, standard: 0 },
          limit: guide,
          sense: 'at least',
          broken: 'warn',
          reason: say`At its lowest, in ${monthName(lowest.month)}, the battery is down to ${share(left)} of its charge; ${chemistry.name} lasts longest if it keeps ${share(guide)}.`,
          // The same charge drawn from more battery leaves a larger part of it.
          remedy: () =>
            say`Fit ${chargeAh(Math.ceil((drawnAh / (1 - guide) - capacityAh) / 10) * 10)} more of it, or count on less of the battery (\`usable\`) and use less.`,
          sources: [...chemistry.usableShare.citations, ...climateSources(worked)],
          cautions: climateCautions(worked),
        }),
      ],
    };
  },
  work: ({ facts: { worked } }) => {
    const { bank, year } = worked;
    const lowest = lowestOf(year.months);
    if (!lowest) return undefined;
    const { chemistry, usableShare, path } = bank;
    const { windowWh, lowestWh, month } = lowest;
    const guide = chemistry.usableShare.value;
    return [
      fullStep(worked, month),
      lowestStep(worked, lowest),
      {
        what: `What ${chemistry.name} should keep to last, by guidance for its kind`,
        sum: say`1 − ${share(guide)}`,
        result: share(1 - guide),
        paths: [[...path, 'chemistry']],
      },
      {
        what: `What is left of its whole charge then, in the lowest of the twelve months: 1 − u · (1 − E_least / E_usable)`,
        sum: say`1 − ${share(usableShare)} · (1 − ${energyWh(lowestWh)} / ${energyWh(windowWh)})`,
        result: share(leftOf(bank, lowest)),
        paths: [[...path, 'usable']],
      },
    ];
  },
});

const lowestOf = ([first, ...others]: readonly MonthSummary[]): MonthSummary | undefined =>
  first && others.reduce((low, each) => (each.lowestShare < low.lowestShare ? each : low), first);

const leftOf = ({ usableShare }: Bank, { lowestShare }: MonthSummary): number =>
  1 - usableShare * (1 - lowestShare);
