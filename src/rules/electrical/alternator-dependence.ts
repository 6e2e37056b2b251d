import type { DrivingCharger } from '../../build/electrical.ts';
import { monthName } from '../../build/energy.ts';
import type { MonthSummary } from '../../calc/energy/year.ts';
import type { Citation } from '../../catalogue/citation.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { energyWh, share } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type Need, type RuleText } from '../../engine/rule.ts';
import {
  climateCautions,
  climateSources,
  listed,
  simulationSources,
  workedYear,
  yearCautions,
} from '../energy-facts.ts';
import { optional } from '../needs.ts';
import { drivenSteps } from '../working/energy.ts';

const mostShare = 0.5;
const halfChoice: Citation = {
  title: 'A warning where driving brings more than half of the energy of a month',
  provenance: 'own choice',
};

const text: RuleText = {
  id: 'electrical.alternator-dependence',
  topic: 'electrical',
  title: 'dependence on driving',
  why: 'Energy that comes from the engine stays away as soon as the van stands still for a week.',
  formula: 'share = E_driving / (E_sun + E_driving + E_hook-up), each as taken in the month',
  sources: [halfChoice, ...simulationSources],
  cautions: yearCautions,
  fix: 'Fit more solar, plan nights at a hook-up, or use less.',
  place: ['living'],
};

const drivingCharger: Need<DrivingCharger> = optional(
  'electrical.charging_while_driving',
  ({ electrical }) => electrical?.drivingCharger,
);
const drivingHours: Need<true> = optional('living.driving', ({ energy }) =>
  energy?.drivingGiven ? true : undefined,
);

export default defineRule({
  ...text,
  needs: {
    worked: workedYear,
    charger: drivingCharger,
    driving: drivingHours,
  },
  check: ({ facts: { worked, charger } }) => {
    const { months } = worked.year;
    const worst = mostDriven(months);
    if (!worst) return { findings: [] };
    const over = months.filter((each) => exceeds(drivenShare(each), mostShare));
    const named = listed((over.length > 0 ? over : [worst]).map(({ month }) => monthName(month)));
    const part = drivenShare(worst);
    return {
      findings: [
        judge({
          rule: text,
          subject: `driving in ${monthName(worst.month)}`,
          path: charger.path,
          kind: 'share',
          measured: { value: part, standard: 0 },
          limit: mostShare,
          sense: 'at most',
          broken: 'warn',
          reason:
            over.length > 0
              ? say`Driving brings more than ${share(mostShare)} of the energy in ${named}; in ${monthName(worst.month)} ${share(part)}.`
              : say`Driving brings ${share(part)} of the energy in ${named}, the most of all months.`,
          remedy: () =>
            say`To stand still for longer, find ${energyWh(lackingWh(worst))} a day from more array or from hook-ups in ${monthName(worst.month)}, or use so much less.`,
          sources: climateSources(worked),
          cautions: climateCautions(worked),
        }),
      ],
    };
  },
  work: ({ facts: { worked, charger } }) => {
    const worst = mostDriven(worked.year.months);
    return worst && drivenSteps(worked, charger, worst);
  },
});

const mostDriven = ([first, ...others]: readonly MonthSummary[]): MonthSummary | undefined =>
  first && others.reduce((most, each) => (drivenShare(each) > drivenShare(most) ? each : most), first);

const drivenShare = ({ shares }: MonthSummary): number => shares.driving;

/** Of every day, what must come from elsewhere in place of driving for it to bring no more than its share. */
const lackingWh = ({ drivingWh, producedWh, curtailedWh, shoreWh, days }: MonthSummary): number =>
  (drivingWh - mostShare * (drivingWh + producedWh - curtailedWh + shoreWh)) / days;
