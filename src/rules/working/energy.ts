import type { DrivingCharger } from '../../build/electrical.ts';
import { type EnergyMonth, monthName, type WorkedYear } from '../../build/energy.ts';
import { roundingWh } from '../../build/energy-months.ts';
import { batteryOfMonth, loadOfMonth } from '../../calc/energy/month-of-year.ts';
import { daysOfMonths } from '../../calc/energy/months.ts';
import type { EnergyLedger, MonthSummary } from '../../calc/energy/year.ts';
import type { Part, Step } from '../../engine/finding.ts';
import { chargeAh, count, current, duration, energyWh, share, voltage } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';

/*
 * How the figures of the energy year come about. Its hours are too many to show: each step adds up a span of them, from
 * the same ledger that the checks read, so that what comes in and what goes out can be held against each other.
 */

const secondsAnHour = 3600;
const battery = ['electrical', 'battery'] as const;

/** What the battery gives from full down to the lowest state that it is used to. */
export function fullStep({ input, bank }: WorkedYear, month: number): Step {
  return {
    what: 'What a full battery gives up to its lowest state: E = u·C·U',
    sum: say`${share(bank.usableShare)} · ${chargeAh(bank.capacityAh)} · ${voltage(bank.voltageV)}`,
    result: energyWh(batteryOfMonth(input.battery, month).windowWh),
    paths: [[...battery]],
  };
}

/** What every load takes on a day of a month. */
export function dayStep({ loads }: WorkedYear, month: number): Step {
  const rows = loads.map(({ name, path, loads: each }): Part => {
    const wattHours = loadOfMonth(each, month).reduce((sum, powerW) => sum + powerW, 0);
    return { name, path, origin: 'computed', values: [], adds: energyWh(wattHours) };
  });
  return {
    what: `What a day of ${monthName(month)} takes: Σ P·h`,
    result: energyWh(wattHoursOf(rows)),
    parts: { columns: ['a day'], rows },
  };
}

const wattHoursOf = (rows: readonly Part[]): number =>
  rows.reduce((sum, { adds }) => sum + adds.value / secondsAnHour, 0);

const at = (column: Float64Array, hour: number): number => column[hour] ?? 0;

/** Hours of the year, the last one left out. */
interface Span {
  readonly from: number;
  readonly to: number;
}

const firstHourOf = (month: number): number =>
  24 * daysOfMonths.slice(0, month).reduce((sum, days) => sum + days, 0);

function total(column: Float64Array, { from, to }: Span): number {
  let sum = 0;
  for (let hour = from; hour < to; hour += 1) sum += at(column, hour);
  return sum;
}

interface Flow {
  readonly name: string;
  readonly path: Part['path'];
  readonly wattHours: number;
}

/** What the sources gave in a span, as far as it was taken. */
const taken = (ledger: EnergyLedger, span: Span): readonly Flow[] => [
  {
    name: 'from the sun',
    path: ['electrical', 'solar'],
    wattHours: total(ledger.producedWh, span) - total(ledger.curtailedWh, span),
  },
  {
    name: 'while driving',
    path: ['electrical', 'charging_while_driving'],
    wattHours: total(ledger.drivingWh, span),
  },
  {
    name: 'from a hook-up',
    path: ['electrical', 'shore', 'charger'],
    wattHours: total(ledger.shoreWh, span),
  },
];

const partOf = ({ name, path, wattHours }: Flow): Part => ({
  name,
  path,
  origin: 'computed',
  values: [],
  adds: energyWh(wattHours),
});

const less = (flow: Flow): Flow => ({ ...flow, wattHours: -flow.wattHours });

/** "day 12, 17:00": the end of an hour of the year, in its month. */
function clockOf(hour: number, month: number): string {
  const since = hour - firstHourOf(month);
  if (since === 24 * (daysOfMonths[month] ?? 0)) return "the month's end";
  return `day ${Math.floor(since / 24) + 1}, ${since % 24}:00`;
}

/** From when the battery was last full to its lowest: what came, what went, and what is left. */
export function lowestStep(
  { year: { ledger } }: WorkedYear,
  { month, days, lowestWh, windowWh }: MonthSummary,
): Step {
  const first = firstHourOf(month);
  const hours = Array.from({ length: days * 24 }, (_, hour) => first + hour);
  const low = hours.find((hour) => at(ledger.stateWh, hour) <= lowestWh);
  const what = 'What it holds at its lowest: E_least';
  // It begins full and never falls below that.
  if (low === undefined) return { what, sum: say`it stays full`, result: energyWh(lowestWh) };
  const full = hours.findLast((hour) => hour < low && at(ledger.stateWh, hour) >= windowWh * (1 - 1e-9));
  const from = full === undefined ? first : full + 1;
  const span = { from, to: low + 1 };
  const rows = [
    partOf({ name: `held on ${clockOf(from, month)}`, path: battery, wattHours: at(ledger.beforeWh, from) }),
    ...taken(ledger, span).map(partOf),
    partOf({
      name: 'given to the loads',
      path: ['electrical', 'circuits'],
      wattHours: -total(ledger.usedWh, span),
    }),
    partOf({ name: 'lost in the battery', path: battery, wattHours: -total(ledger.lostWh, span) }),
  ];
  return {
    what,
    sum: say`in ${monthName(month)}, ${full === undefined ? "from the month's beginning" : 'from when it was last full'} to ${clockOf(span.to, month)}; dull days end the month`,
    result: energyWh(wattHoursOf(rows)),
    parts: { columns: ['holds'], rows },
    paths: [
      ['living', 'driving'],
      ['living', 'shore_nights'],
    ],
  };
}

/** What driving brings of all that is taken in a month. */
export function drivenSteps(
  { year: { ledger }, input, bank }: WorkedYear,
  { path, currentA }: DrivingCharger,
  { month, days, shares }: MonthSummary,
): readonly Step[] {
  const first = firstHourOf(month);
  const rows = taken(ledger, { from: first, to: first + 24 * days }).map(partOf);
  const drivenWh = (rows[1]?.adds.value ?? 0) / secondsAnHour;
  const hours = input.driving?.hours[month] ?? 0;
  return [
    {
      what: 'What the charger can bring on a day of driving: I · U · h',
      sum: say`${current(currentA)} · ${voltage(bank.voltageV)} · ${duration(hours * secondsAnHour)}`,
      result: energyWh((input.driving?.powerW ?? 0) * hours),
      paths: [
        [...path, 'current'],
        ['living', 'driving'],
        [...battery, 'voltage'],
      ],
    },
    {
      what: `What the battery and the loads take from each source in ${monthName(month)}, the month that rests most on driving`,
      sum: say`over ${count(days)} days; a full battery takes no more`,
      result: energyWh(wattHoursOf(rows)),
      parts: { columns: ['taken'], rows },
      paths: [['living', 'shore_nights']],
    },
    {
      what: 'What of it comes from driving: E_driving / (E_sun + E_driving + E_hook-up)',
      sum: say`${energyWh(drivenWh)} / ${energyWh(wattHoursOf(rows))}`,
      result: share(shares.driving),
    },
  ];
}

export type TroubleKind = 'short on usual days' | 'falls from day to day' | 'short on dull days';

/** What a day takes, what a usual day brings, and what the worst month lacks. */
export function troubleSteps(worked: WorkedYear, month: number, trouble: TroubleKind): readonly Step[] {
  const found = worked.months[month];
  const summary = worked.year.months[month];
  if (!found || !summary) return [];
  return [
    fullStep(worked, month),
    dayStep(worked, month),
    bringsStep(worked, summary),
    ...(trouble === 'falls from day to day'
      ? fallingSteps(found)
      : [unmetStep(worked, summary, trouble === 'short on dull days')]),
  ];
}

/** What the sources can bring on a usual day, used or not. */
function bringsStep(
  { input: { driving, shore } }: WorkedYear,
  { month, days, typicalDayWh }: MonthSummary,
): Step {
  const drivingWh = driving ? (driving.powerW * (driving.hours[month] ?? 0) * driving.daysPerWeek) / 7 : 0;
  const shoreWh = shore ? (shore.powerW * shore.span.hours * (shore.nights[month] ?? 0)) / days : 0;
  const rows = [
    partOf({ name: 'from the sun', path: ['electrical', 'solar'], wattHours: typicalDayWh }),
    partOf({ name: 'while driving', path: ['electrical', 'charging_while_driving'], wattHours: drivingWh }),
    partOf({
      name: 'from a hook-up, on the mean',
      path: ['electrical', 'shore', 'charger'],
      wattHours: shoreWh,
    }),
  ];
  return {
    what: `What the sources can bring on a usual day of ${monthName(month)}, if there is room for it`,
    result: energyWh(wattHoursOf(rows)),
    parts: { columns: ['a day'], rows },
    paths: [
      ['living', 'driving'],
      ['living', 'shore_nights'],
    ],
  };
}

/** What the loads ask for less what they get: from the sources, and out of what was stored. */
function unmetStep(
  { year: { ledger }, input }: WorkedYear,
  { month, days }: MonthSummary,
  isDull: boolean,
): Step {
  const first = firstHourOf(month);
  const dullFrom = first + 24 * (days - input.dullDays);
  const span = isDull ? { from: dullFrom, to: first + 24 * days } : { from: first, to: dullFrom };
  const storedWh = at(ledger.beforeWh, span.from) - at(ledger.stateWh, span.to - 1);
  const rows = [
    {
      name: 'asked for by the loads',
      path: ['electrical', 'circuits'],
      wattHours: total(ledger.wantedWh, span),
    },
    ...taken(ledger, span).map(less),
    { name: 'less in the battery than before', path: battery, wattHours: -storedWh },
    { name: 'lost in the battery', path: battery, wattHours: total(ledger.lostWh, span) },
  ].map(partOf);
  return {
    what: `What the loads go short of on the ${isDull ? 'dull' : 'usual'} days of ${monthName(month)}, the worst month`,
    sum: say`over ${count((span.to - span.from) / 24)} days${isDull ? ' at its end' : ''}: what they ask for, less what the sources and the battery give, plus what is lost on the way through the battery`,
    result: energyWh(wattHoursOf(rows)),
    parts: { columns: ['adds'], rows },
  };
}

/** From the fullest hour early in the month to the fullest later on. */
function fallingSteps({
  name,
  fullest: { earlyWh, lateWh, apartDays },
  runsDownWhADay,
}: EnergyMonth): readonly Step[] {
  return [
    {
      what: `What the battery holds when it is fullest in the first half of the usual days of ${name}, the first day left out`,
      result: energyWh(earlyWh),
    },
    { what: 'What it holds when it is fullest in the second half', result: energyWh(lateWh) },
    {
      what: 'What it falls by from day to day',
      sum: say`(${energyWh(earlyWh)} − ${energyWh(lateWh)}) / ${count(apartDays)} days`,
      result: energyWh(runsDownWhADay),
    },
  ];
}

/** Every month: what the loads ask for, what they get, and that nothing lacks. */
export function nothingShortStep({ year, months, input }: WorkedYear): Step {
  const rows = months.map(({ month, name, typicalUnmetWh, dullUnmetWh }): Part => {
    const { wantedWh = 0, usedWh = 0 } = year.months[month] ?? {};
    const shortWh = typicalUnmetWh + dullUnmetWh;
    return {
      name,
      path: [],
      origin: 'computed',
      values: [energyWh(wantedWh), energyWh(usedWh)],
      // What is short for want of digits only is nothing.
      adds: energyWh(shortWh > roundingWh ? shortWh : 0),
    };
  });
  return {
    what: 'What the loads ask for and get in each month, hour by hour added up: unmet = loads − what they get',
    sum: say`each month begins with a full battery and ends with ${count(input.dullDays)} dull days that have ${share(input.dullShare)} of its mean sun; in none does the battery fall from day to day`,
    result: energyWh(wattHoursOf(rows)),
    parts: { columns: ['asked for', 'got', 'short'], rows },
    paths: [['living', 'place'], ['living', 'driving'], ['living', 'shore_nights'], [...battery]],
  };
}
