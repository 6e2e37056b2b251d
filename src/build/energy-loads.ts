import { spreadOverSpan } from '../calc/energy/hours.ts';
import type { EnergyLoad } from '../calc/energy/year.ts';
import { inverterIdleRange, inverterIdleRows } from '../catalogue/electrical/inverter-guidance.ts';
import type { Assumption, PlanPath } from '../engine/finding.ts';
import { power } from '../engine/measure.ts';
import { say } from '../engine/phrase.ts';
import type { Plan } from '../plan/schema.ts';
import { type GivenHours, hoursOf, type PartOfDay, spanOf } from '../plan/times-of-day.ts';
import type { Bank, Draw, Electrical, Inverter } from './electrical.ts';
import type { DailyLoad } from './energy.ts';
import type { HoursFromUse } from './hours-from-use.ts';

interface Season {
  readonly summer: number;
  readonly winter: number;
}

export interface DailyLoads {
  readonly loads: readonly DailyLoad[];
  readonly missing: readonly string[];
  readonly assumptions: readonly Assumption[];
}

interface Gathered {
  readonly loads: DailyLoad[];
  readonly missing: string[];
  readonly assumptions: Assumption[];
  /** Of the twelve months. */
  readonly isSummer: readonly boolean[];
  /** Those who sleep in the van; undefined where the plan does not say. */
  readonly people: number | undefined;
  /** Of circuits whose hours follow from the rest of the plan. */
  readonly fromUse: ReadonlyMap<string, HoursFromUse>;
}

/** What the circuits take on a day. Loads in amperes are counted at the battery's nominal voltage. */
export function dailyLoads(
  given: NonNullable<Plan['electrical']>,
  electrical: Electrical,
  bank: Bank,
  latitudeDeg: number,
  people: number | undefined,
  fromUse: ReadonlyMap<string, HoursFromUse> = new Map(),
): DailyLoads {
  const north = latitudeDeg >= 0;
  const isSummer = Array.from({ length: 12 }, (_, month) => (month >= 3 && month <= 8) === north);
  const gathered: Gathered = { loads: [], missing: [], assumptions: [], isSummer, people, fromUse };
  addCircuits(gathered, given, electrical, bank);
  if (electrical.inverter) addInverter(gathered, given, electrical, electrical.inverter, bank);
  const timed = [...Object.values(given.circuits ?? {}), ...Object.values(given.mains_circuits ?? {})];
  if (timed.some(({ hours }) => hours && 'summer' in hours))
    gathered.assumptions.push({
      path: electrical.path,
      text: say`summer is from April to September north of the equator, from October to March south of it; the rest is winter`,
    });
  if (timed.some(({ hours, when }) => hours && when === undefined))
    gathered.assumptions.push({
      path: electrical.path,
      text: say`loads without \`when\` run evenly over day and night`,
    });
  if (gathered.loads.length === 0 && gathered.missing.length === 0)
    gathered.missing.push('electrical.circuits');
  return gathered;
}

const wattsOf = (draw: Draw, { voltageV }: Bank): number =>
  'powerW' in draw ? draw.powerW : draw.currentA * voltageV;

const none: Season = { summer: 0, winter: 0 };
const allDay: Season = { summer: 24, winter: 24 };

function addCircuits(
  gathered: Gathered,
  given: NonNullable<Plan['electrical']>,
  { circuits, inverter }: Electrical,
  bank: Bank,
): void {
  for (const circuit of circuits) {
    const { name, path, load, standing } = circuit;
    const isLoad = !circuit.feeds && !circuit.charges && inverter?.circuit !== name;
    if (!isLoad && (!standing || inverter?.circuit === name)) continue;
    const {
      hours: givenHours,
      hours_at: hoursAt,
      when,
      per_person: perPerson,
    } = given.circuits?.[name] ?? {};
    const used = (givenHours && !hoursAt) || !isLoad || !load ? undefined : gathered.fromUse.get(name);
    if (used) {
      addFromUse(gathered, name, path, when ?? 'always', wattsOf(load ?? { powerW: 0 }, bank), used);
      continue;
    }
    const hours = isLoad ? hoursOfLoad(gathered, circuit, givenHours, perPerson === true) : none;
    if (!hours) continue;
    const standingW = standing ? wattsOf(standing, bank) : 0;
    gathered.loads.push(
      dailyLoad(gathered.isSummer, name, path, when ?? 'always', [
        { part: when ?? 'always', powerW: load ? wattsOf(load, bank) : 0, hours },
        {
          part: 'always',
          powerW: standingW,
          hours: { summer: 24 - hours.summer, winter: 24 - hours.winter },
        },
      ]),
    );
  }
}

/** A load whose hours differ from month to month. */
function addFromUse(
  { loads, missing, assumptions, isSummer }: Gathered,
  name: string,
  path: PlanPath,
  when: PartOfDay,
  powerW: number,
  { hours, missing: lacking, text }: HoursFromUse,
): void {
  if (!hours) {
    missing.push(...lacking);
    return;
  }
  assumptions.push({ path, text });
  const most = Math.max(...hours);
  const meanWh = (inSummer: boolean): number => {
    const season = hours.filter((_, month) => isSummer[month] === inSummer);
    return (powerW * season.reduce((sum, each) => sum + each, 0)) / Math.max(1, season.length);
  };
  loads.push({
    name,
    path,
    when,
    summerWh: meanWh(true),
    winterWh: meanWh(false),
    loads: [
      {
        hourlyW: spreadOverSpan(powerW * most, spanOf(when)),
        monthFactors: hours.map((each) => (most === 0 ? 0 : each / most)),
      },
    ],
  });
}

/** The hours of all people together, a day at most. Undefined where the plan does not say how many there are. */
function ofAll({ missing, people }: Gathered, given: GivenHours, perPerson: boolean): Season | undefined {
  const { summer, winter } = hoursOf(given);
  if (!perPerson) return { summer, winter };
  if (people === undefined) {
    missing.push('people.sleepers');
    return undefined;
  }
  return { summer: Math.min(24, people * summer), winter: Math.min(24, people * winter) };
}

/** Undefined where the plan does not say; what is missing is noted. */
function hoursOfLoad(
  gathered: Gathered,
  { name, path, load, standing, alarm }: Electrical['circuits'][number],
  given: GivenHours | undefined,
  perPerson: boolean,
): Season | undefined {
  const { missing, assumptions } = gathered;
  const key = path.join('.');
  if (!load) {
    if (standing) return none;
    missing.push(`${key}.load`, ...(given ? [] : [`${key}.hours`]));
    return undefined;
  }
  if (given) return ofAll(gathered, given, perPerson);
  if (alarm) {
    assumptions.push({ path, text: say`${name}: an alarm, on day and night` });
    return allDay;
  }
  missing.push(`${key}.hours`);
  return undefined;
}

function addInverter(
  gathered: Gathered,
  given: NonNullable<Plan['electrical']>,
  { mains, circuits }: Electrical,
  inverter: Inverter,
  bank: Bank,
): void {
  const fed = mains.filter(({ from }) => from !== 'shore');
  if (fed.length === 0) {
    gathered.missing.push('electrical.mains_circuits');
    return;
  }
  let summer = 0;
  let winter = 0;
  for (const { name, path, loadW } of fed) {
    const { hours: givenHours, when = 'always', per_person: perPerson } = given.mains_circuits?.[name] ?? {};
    const key = path.join('.');
    if (loadW === undefined) gathered.missing.push(`${key}.load`);
    if (!givenHours) gathered.missing.push(`${key}.hours`);
    if (loadW === undefined || !givenHours) continue;
    const hours = ofAll(gathered, givenHours, perPerson === true);
    if (!hours) continue;
    summer += hours.summer;
    winter += hours.winter;
    const powerW = loadW / inverter.efficiency;
    gathered.loads.push(dailyLoad(gathered.isSummer, name, path, when, [{ part: when, powerW, hours }]));
  }
  const standing = circuits.find(({ name }) => name === inverter.circuit)?.standing;
  const idleW = inverter.idleW ?? (standing ? wattsOf(standing, bank) : guidedIdleW(inverter.powerW));
  if (inverter.idleW === undefined && !standing)
    gathered.assumptions.push({
      path: inverter.path,
      text: say`inverter: takes ${power(idleW)} with nothing plugged in`,
    });
  const hours = inverter.alwaysOn ? allDay : { summer: Math.min(24, summer), winter: Math.min(24, winter) };
  if (!inverter.alwaysOn)
    gathered.assumptions.push({
      path: inverter.path,
      text: say`inverter: switched on only while its sockets are in use, one after the other (\`always_on: true\` counts it day and night)`,
    });
  gathered.loads.push(
    dailyLoad(gathered.isSummer, 'inverter, idling', inverter.path, 'always', [
      { part: 'always', powerW: idleW, hours },
    ]),
  );
}

/** The most that an inverter of the next printed size takes; beyond the sizes the most of all. */
function guidedIdleW(ratedW: number): number {
  const larger = inverterIdleRows.filter((row) => row.ratedW >= ratedW);
  const next = Math.min(...larger.map((row) => row.ratedW));
  return larger.length === 0
    ? inverterIdleRange.highW
    : Math.max(...larger.filter((row) => row.ratedW === next).map((row) => row.idleW));
}

interface Part {
  readonly part: PartOfDay;
  readonly powerW: number;
  readonly hours: Season;
}

function dailyLoad(
  isSummer: readonly boolean[],
  name: string,
  path: PlanPath,
  when: PartOfDay,
  parts: readonly Part[],
): DailyLoad {
  const sumOver = (season: keyof Season): number =>
    parts.reduce((sum, { powerW, hours }) => sum + powerW * hours[season], 0);
  return {
    name,
    path,
    when,
    summerWh: sumOver('summer'),
    winterWh: sumOver('winter'),
    loads: parts.filter(({ powerW }) => powerW > 0).map((part) => energyLoad(isSummer, part)),
  };
}

function energyLoad(isSummer: readonly boolean[], { part, powerW, hours }: Part): EnergyLoad {
  const most = Math.max(hours.summer, hours.winter);
  return {
    hourlyW: spreadOverSpan(powerW * most, spanOf(part)),
    monthFactors: isSummer.map((summer) => (most === 0 ? 0 : (summer ? hours.summer : hours.winter) / most)),
  };
}
