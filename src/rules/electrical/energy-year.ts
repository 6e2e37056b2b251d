import type { EnergyMonth, WorkedYear } from '../../build/energy.ts';
import { roundingWh } from '../../build/energy-months.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { chargeAh, energyWh, power } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { closingChanges } from '../energy-changes.ts';
import {
  climateCautions,
  climateSources,
  listed,
  simulationSources,
  workedYear,
  yearCautions,
} from '../energy-facts.ts';
import { nothingShortStep, type TroubleKind, troubleSteps } from '../working/energy.ts';

const text: RuleText = {
  id: 'electrical.energy-year',
  topic: 'electrical',
  title: 'energy through the year',
  why: 'A battery only stores: what the loads take, the sun, the engine or a hook-up must bring, in December too.',
  formula:
    'each hour: E₂ = E₁ + η·(sun + driving + hook-up − loads) when charging, E₁ − (loads − sources)/η when not; unmet = loads − what they get',
  sources: simulationSources,
  cautions: yearCautions,
  fix: 'Use less, fit more solar, charge from the engine or at a hook-up, or fit a larger battery.',
  place: ['living'],
};

export default defineRule({
  ...text,
  needs: { worked: workedYear },
  check: ({ facts: { worked } }) => ({ findings: [yearFinding(worked)] }),
  work: ({ facts: { worked } }) => {
    const { lacks, worst } = troubleOf(worked.months);
    return worst && lacks ? troubleSteps(worked, worst.month, lacks) : [nothingShortStep(worked)];
  },
});

type Trouble = Pick<Parameters<typeof judge>[0], 'subject' | 'measured' | 'broken' | 'reason'> & {
  readonly worst?: EnergyMonth;
  readonly lacks?: TroubleKind;
};

function yearFinding(worked: WorkedYear): Finding {
  const { worst, ...trouble } = troubleOf(worked.months);
  return judge({
    rule: text,
    path: ['living'],
    kind: 'energy',
    limit: 0,
    sense: 'at most',
    ...trouble,
    remedy: () => worst && closing(worked, worst),
    sources: climateSources(worked),
    cautions: climateCautions(worked),
  });
}

const joulesAWattHour = 3600;
const exactly = (wattHours: number) => ({ value: wattHours * joulesAWattHour, standard: 0 });
const namesOf = (months: readonly EnergyMonth[]): string => listed(months.map(({ name }) => name));

/** The worst kind of trouble that any month has, with all the months that have it. */
function troubleOf(months: readonly EnergyMonth[]): Trouble {
  const short = most(months, ({ typicalUnmetWh }) => typicalUnmetWh);
  if (short)
    return {
      subject: namesOf(short.all),
      measured: exactly(short.worst.typicalUnmetWh),
      broken: 'fail',
      worst: short.worst,
      lacks: 'short on usual days',
      reason: say`On usual days the battery runs empty in ${namesOf(short.all)}; worst in ${short.worst.name}, where the loads go short of ${energyWh(short.worst.typicalUnmetWh)}, and ask for ${energyWh(short.worst.wantedWhADay)} a day.`,
    };
  const falling = most(months, ({ runsDownWhADay }) => runsDownWhADay);
  if (falling)
    return {
      subject: namesOf(falling.all),
      measured: exactly(falling.worst.runsDownWhADay),
      broken: 'warn',
      worst: falling.worst,
      lacks: 'falls from day to day',
      reason: say`In ${namesOf(falling.all)} the sources bring less than the loads take, and only what the battery holds at the beginning of the month covers it; in ${falling.worst.name} it falls by ${energyWh(falling.worst.runsDownWhADay)} a day.`,
    };
  const dull = most(months, ({ dullUnmetWh }) => dullUnmetWh);
  if (dull)
    return {
      subject: namesOf(dull.all),
      measured: exactly(dull.worst.dullUnmetWh),
      broken: 'warn',
      worst: dull.worst,
      lacks: 'short on dull days',
      reason: say`Usual days bring enough, but a run of dull days empties the battery in ${namesOf(dull.all)}; worst in ${dull.worst.name}, where the loads go short of ${energyWh(dull.worst.dullUnmetWh)}.`,
    };
  return {
    subject: 'all twelve months',
    measured: exactly(0),
    broken: 'fail',
    reason: say`In no month do the loads go short, in a run of dull days neither.`,
  };
}

function most(
  months: readonly EnergyMonth[],
  read: (month: EnergyMonth) => number,
): { readonly all: readonly EnergyMonth[]; readonly worst: EnergyMonth } | undefined {
  const all = months.filter((month) => read(month) > roundingWh);
  const [first, ...others] = all;
  if (!first) return undefined;
  return { all, worst: others.reduce((worst, each) => (read(each) > read(worst) ? each : worst), first) };
}

/** What would close the worst month, each by itself. */
function closing(worked: WorkedYear, { month, name }: EnergyMonth): Phrase {
  const { lessLoad, moreArrayW, moreBatteryAh } = closingChanges(worked, month);
  const ways: Phrase[] = [
    ...(lessLoad ? [say`${energyWh(lessLoad.wattHoursADay)} a day less load`] : []),
    ...(moreArrayW === undefined ? [] : [say`${power(moreArrayW)} more array`]),
    ...(moreBatteryAh === undefined ? [] : [say`${chargeAh(moreBatteryAh)} more battery`]),
  ];
  const [first, ...others] = ways;
  if (!first) return say`Nothing that fits a van closes ${name}: plan hook-ups or driving for it.`;
  return say`What closes ${name}, each by itself: ${others.reduce((all, way) => say`${all}, or ${way}`, first)}. \`storystick energy\` shows every month.`;
}
