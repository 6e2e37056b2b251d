import { monthName } from '../../build/energy.ts';
import { judge } from '../../engine/judge.ts';
import { chargeAh, share } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import {
  climateCautions,
  climateSources,
  simulationSources,
  workedYear,
  yearCautions,
} from '../energy-facts.ts';

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
    const { usableShare, chemistry, capacityAh } = bank;
    const [first, ...others] = year.months;
    if (!first) return { findings: [] };
    const lowest = others.reduce((low, each) => (each.lowestShare < low.lowestShare ? each : low), first);
    const left = 1 - usableShare * (1 - lowest.lowestShare);
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
});
