import type { WorkedYear } from '../../build/energy.ts';
import { monthName } from '../../build/energy.ts';
import { autonomyDays, batteryOfMonth, loadOfMonth } from '../../calc/energy/month-of-year.ts';
import type { MonthSummary } from '../../calc/energy/year.ts';
import type { Part, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { chargeAh, duration, energyWh, share } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type Need, type RuleText } from '../../engine/rule.ts';
import { least, withBattery } from '../energy-changes.ts';
import {
  climateCautions,
  climateSources,
  simulationSources,
  workedYear,
  yearCautions,
} from '../energy-facts.ts';
import { optional } from '../needs.ts';
import { dayStep, fullStep } from '../working/energy.ts';

const secondsADay = 86_400;
/** No battery of a van is called more than this. */
const longestDays = 1000;

const text: RuleText = {
  id: 'electrical.autonomy',
  topic: 'electrical',
  title: 'nights on the battery alone',
  why: 'With a dull sky, the engine off and no hook-up, the battery is all there is until something charges it again.',
  formula:
    't: hours from 18:00, full, until E < P·1 h; E = u·C·U, less P/η each hour (lead above its rated power P_r: times (P/P_r)^(n−1)); in nights: t / 24 h',
  sources: simulationSources,
  cautions: yearCautions,
  fix: 'Fit a larger battery, use less, or plan fewer nights.',
  place: ['living'],
};

const nightsOffGrid: Need<number> = optional('living.nights_off_grid', ({ energy }) => energy?.nightsOffGrid);

export default defineRule({
  ...text,
  needs: {
    worked: workedYear,
    nights: nightsOffGrid,
  },
  check: ({ facts: { worked, nights } }) => {
    const darkest = darkestOf(worked.year.months);
    if (!darkest) return { findings: [] };
    const days = Math.min(longestDays, darkest.autonomyDays);
    return {
      findings: [
        judge({
          rule: text,
          subject: `battery in ${monthName(darkest.month)}`,
          path: ['living', 'nights_off_grid'],
          kind: 'duration',
          measured: { value: days * secondsADay, standard: 0 },
          limit: nights * secondsADay,
          sense: 'at least',
          broken: 'fail',
          reason: say`Full at six in the evening and with nothing that charges it, the battery carries the loads of ${monthName(darkest.month)}, the darkest month, for ${duration(days * secondsADay)}, which is ${inNights(days)}; the plan wants ${inNights(nights)}.`,
          remedy: () => largerBattery(worked, darkest.month, nights),
          sources: climateSources(worked),
          cautions: climateCautions(worked),
        }),
      ],
    };
  },
  work: ({ facts: { worked } }) => {
    const darkest = darkestOf(worked.year.months);
    if (!darkest) return undefined;
    return Number.isFinite(darkest.autonomyDays)
      ? stepsOf(worked, darkest.month)
      : endlessSteps(worked, darkest.month);
  },
});

const darkestOf = (months: readonly MonthSummary[]): MonthSummary | undefined =>
  months.reduce<MonthSummary | undefined>(
    (darkest, each) => (darkest === undefined || each.globalWhM2 < darkest.globalWhM2 ? each : darkest),
    undefined,
  );

/** Rounded down, so that too few never look like enough. */
const inNights = (days: number): string => {
  const shown = Math.floor(10 * days + 1e-9) / 10;
  return `${shown} ${shown === 1 ? 'night' : 'nights'}`;
};

const stepAh = 10;
const mostAh = 2000;

function largerBattery({ input, rerun, bank }: WorkedYear, month: number, nights: number): Phrase {
  const lasts = (steps: number): boolean => {
    const changed = withBattery(input, 1 + (steps * stepAh) / bank.capacityAh);
    return (rerun(changed).year.months[month]?.autonomyDays ?? 0) >= nights - 1e-9;
  };
  const steps = least(mostAh / stepAh, lasts);
  if (steps === undefined)
    return say`Use less: even ${chargeAh(mostAh)} more battery would not last so long.`;
  return say`Fit ${chargeAh(steps * stepAh)} more battery of the same kind, use less, or plan fewer nights.`;
}

const fromHour = 18;

/** Nothing draws, or so little that it does not count. */
const endlessSteps = (worked: WorkedYear, month: number): readonly Step[] => [
  fullStep(worked, month),
  dayStep(worked, month),
  {
    what: 'How long that lasts: beyond what is counted',
    sum: say`no battery of a van is called more than this`,
    result: duration(longestDays * secondsADay),
  },
];

/** What the full battery holds, what a day takes, and what is left of it evening by evening. */
function stepsOf(worked: WorkedYear, month: number): readonly Step[] {
  const { input } = worked;
  const battery = batteryOfMonth(input.battery, month);
  const hourlyW = loadOfMonth(input.loads, month);
  const hours: { readonly beforeWh: number; readonly givenWh: number; readonly afterWh: number }[] = [];
  const { standingW } = input.battery;
  const days = autonomyDays(hourlyW, battery, standingW, fromHour, (beforeWh, givenWh, afterWh) =>
    hours.push({ beforeWh, givenWh, afterWh }),
  );
  const evenings = Array.from({ length: Math.ceil(days - 1e-9) }, (_, day): Part => {
    const those = hours.slice(24 * day, 24 * (day + 1));
    const startWh = those[0]?.beforeWh ?? hours.at(-1)?.afterWh ?? battery.windowWh;
    return {
      name: `day ${day + 1}`,
      path: ['electrical', 'battery'],
      origin: 'computed',
      values: [energyWh(startWh), energyWh(those.reduce((sum, { givenWh }) => sum + givenWh, 0))],
      adds: duration(Math.min(1, days - day) * secondsADay),
    };
  });
  return [
    fullStep(worked, month),
    dayStep(worked, month),
    {
      what: `Hour by hour from ${fromHour}:00: E less P / η, η of the way out`,
      sum: say`η = √(round trip) = ${share(battery.dischargeEfficiency)}; stored as the day begins, given in whole hours; it ends in the hour that cannot be met whole, and of that the met part counts`,
      result: duration(evenings.reduce((sum, { adds }) => sum + adds.value, 0)),
      parts: { columns: ['stored', 'given', 'lasts'], rows: evenings },
    },
  ];
}
