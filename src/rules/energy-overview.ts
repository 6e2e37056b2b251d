import type { Build } from '../build/build.ts';
import { type EnergyMonth, monthName, type WorkedYear } from '../build/energy.ts';
import { isClosed, roundingWh } from '../build/energy-months.ts';
import { kilometres } from '../build/energy-of.ts';
import type { EnergyOverview, OverviewMonth } from '../engine/energy-overview.ts';
import { chargeAh, energyWh, power, share } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import { closingChanges } from './energy-changes.ts';
import { climateCautions, yearCautions } from './energy-facts.ts';

/** The year of energy as `storystick energy` shows it. */
export function energyOverview({ name, units, assumptions }: Build, worked: WorkedYear): EnergyOverview {
  const { climate, loads } = worked;
  const worst = worstMonth(worked.months);
  const months = overviewMonths(worked);
  return {
    name,
    units,
    place: say`${climate.sunTyped ? 'Sun as typed in, air of' : 'Sun and air of'} ${climate.place.name}, ${kilometres(climate.distanceM)} away.`,
    months,
    loads: loads
      .map(({ name: load, when, summerWh, winterWh }) => ({ name: load, when, summerWh, winterWh }))
      .sort((a, b) => Math.max(b.summerWh, b.winterWh) - Math.max(a.summerWh, a.winterWh)),
    outcome: worst ? outcomeOf(worst) : tightest(months),
    changes: worst ? changesFor(worked, worst) : [],
    assumptions: [
      ...worked.assumptions,
      // What its losses are was assumed for the sake of its cables.
      ...assumptions.filter((each) => each.path[1] === 'inverter' && !worked.assumptions.includes(each)),
    ].map(({ text }) => text),
    cautions: [...yearCautions, ...climateCautions(worked)],
  };
}

function overviewMonths({ year, months, bank }: WorkedYear): readonly OverviewMonth[] {
  return year.months.map((summary): OverviewMonth => {
    const { month, days } = summary;
    const found = months[month];
    const [typical, dull] = [found?.typicalUnmetWh ?? 0, found?.dullUnmetWh ?? 0];
    return {
      name: monthName(month),
      sunKWhM2: summary.globalWhM2 / 1000,
      arrayWh: summary.typicalDayWh,
      otherWh: (summary.drivingWh + summary.shoreWh) / days,
      loadsWh: summary.wantedWh / days,
      shortWh: typical + dull > roundingWh ? typical + dull : 0,
      dullOnly: typical <= roundingWh,
      runsDown: (found?.runsDownWhADay ?? 0) > 0,
      lowest: 1 - bank.usableShare * (1 - summary.lowestShare),
      nights: summary.autonomyDays,
    };
  });
}

/** The month with the most that is short; where none is short, the one in which the battery falls the most. */
export function worstMonth(months: readonly EnergyMonth[]): EnergyMonth | undefined {
  const shortOf = ({ typicalUnmetWh, dullUnmetWh }: EnergyMonth): number => typicalUnmetWh + dullUnmetWh;
  const open = months.filter((month) => !isClosed(month));
  return open.reduce<EnergyMonth | undefined>((worst, each) => {
    if (!worst) return each;
    const more = shortOf(each) - shortOf(worst);
    const isWorse = Math.abs(more) > roundingWh ? more > 0 : each.runsDownWhADay > worst.runsDownWhADay;
    return isWorse ? each : worst;
  }, undefined);
}

function outcomeOf({ name, typicalUnmetWh, dullUnmetWh, runsDownWhADay }: EnergyMonth): Phrase {
  const shortWh = typicalUnmetWh + dullUnmetWh;
  if (shortWh > roundingWh)
    return say`The worst month is ${name}: the loads go short of ${energyWh(shortWh)}.`;
  return say`The worst month is ${name}: the battery falls by ${energyWh(runsDownWhADay)} a day.`;
}

function tightest(months: readonly OverviewMonth[]): Phrase {
  const [first, ...others] = months;
  if (!first) return [];
  const low = others.reduce((lowest, each) => (each.lowest < lowest.lowest ? each : lowest), first);
  return say`No month is short. The tightest is ${low.name}, in which the battery is down to ${share(low.lowest)}.`;
}

function changesFor(worked: WorkedYear, { month, name, runsDownWhADay }: EnergyMonth): readonly Phrase[] {
  const { lessLoad, moreArrayW, moreBatteryAh } = closingChanges(worked, month);
  return [
    lessLoad
      ? say`less load: ${energyWh(lessLoad.wattHoursADay)} a day less, ${share(lessLoad.share)} of what the loads take in ${name}`
      : say`less load: does not close it`,
    moreArrayW === undefined
      ? say`more array: not by itself, within what a van has room for`
      : say`more array: ${power(moreArrayW)} more, lying like what there is`,
    moreBatteryAh === undefined
      ? say`more battery: not by itself, ${runsDownWhADay > 0 ? 'since too little comes in to fill it' : 'within what a van carries'}`
      : say`more battery: ${chargeAh(moreBatteryAh)} more of the same kind`,
  ];
}
