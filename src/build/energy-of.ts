import { nearestPlace } from '../calc/energy/nearest-place.ts';
import type { EnergyYearInput } from '../calc/energy/year.ts';
import { type ClimatePlace, climatePlaces } from '../catalogue/electrical/climate.ts';
import type { Assumption } from '../engine/finding.ts';
import { share } from '../engine/measure.ts';
import { say } from '../engine/phrase.ts';
import type { Plan } from '../plan/schema.ts';
import type { Electrical } from './electrical.ts';
import type { ClimateUsed, Energy, WorkedYear } from './energy.ts';
import { yearBattery } from './energy-battery.ts';
import { dailyLoads } from './energy-loads.ts';
import { energyMonths } from './energy-months.ts';
import { drivingSource, shoreSource, solarSources } from './energy-sources.ts';
import type { HoursFromUse } from './hours-from-use.ts';
import type { Simulation } from './simulating.ts';

/** A run of dull days ends each month: own choice. */
const dullDays = 3;
const dullShare = 0.3;

/** The sun of a place farther off is no guide: own choice. */
export const farthestM = 1_000_000;

type Living = NonNullable<Plan['living']>;

/** What the plan says of its year of energy; undefined where it says nothing of either living or electricity. */
export function energyOf(
  plan: Plan,
  electrical: Electrical | undefined,
  simulation: Simulation | undefined,
  fromUse: ReadonlyMap<string, HoursFromUse> = new Map(),
): Energy | undefined {
  const { living, electrical: given } = plan;
  if (!living && !given) return undefined;
  const place = living?.place;
  const loads =
    given &&
    electrical?.bank &&
    dailyLoads(
      given,
      electrical,
      electrical.bank,
      place?.latitude.value ?? 0,
      plan.people?.sleepers?.length,
      fromUse,
    );
  const climate = living && climateOf(living);
  const missing = [
    ...(electrical?.bank ? [] : ['electrical.battery']),
    ...(loads ? loads.missing : given?.circuits ? [] : ['electrical.circuits']),
    ...(place ? [] : ['living.place']),
    ...(climate && !climate.sunTyped && climate.distanceM > farthestM ? ['living.sun'] : []),
  ];
  const energy = {
    missing,
    ...(living?.nights_off_grid && { nightsOffGrid: living.nights_off_grid.value }),
    drivingGiven: living?.driving !== undefined,
  };
  if (missing.length > 0 || !simulation || !climate || !given || !electrical?.bank || !loads) return energy;
  const worked = workOut(living, given, electrical, loads, climate, simulation);
  return { ...energy, ...(worked && { worked }) };
}

const joulesAWattHour = 3600;

function climateOf({ place, sun }: Living): ClimateUsed | undefined {
  if (!place) return undefined;
  const nearest = nearestPlace(climatePlaces, place.latitude.value, place.longitude.value);
  return { place: nearest.place, distanceM: nearest.distanceM, sunTyped: sun !== undefined };
}

function workOut(
  living: Living,
  given: NonNullable<Plan['electrical']>,
  electrical: Electrical,
  daily: ReturnType<typeof dailyLoads>,
  climate: ClimateUsed,
  { energyYear }: Simulation,
): WorkedYear | undefined {
  const { bank } = electrical;
  const { place } = living;
  if (!bank || !place) return undefined;
  const assumptions: Assumption[] = [climateAssumption(climate)];
  const longitudeDeg = place.longitude.value;
  const airC = airAt(climate.place, place.latitude.value);
  const driving = drivingSource(living, electrical, bank, assumptions);
  const shore = shoreSource(living, electrical, bank, assumptions);
  const input: EnergyYearInput = {
    // A clock that shows about solar time: loads follow the sun more than the law.
    site: {
      latitudeDeg: place.latitude.value,
      longitudeDeg,
      clockAheadOfUtcHours: Math.round(longitudeDeg / 15),
    },
    climate: sunAndAir(climate.place, airC, living.sun),
    arrays: solarSources(given, electrical, bank, place.latitude.value, assumptions),
    ...(driving && { driving }),
    ...(shore && { shore }),
    loads: daily.loads.flatMap(({ loads }) => loads),
    battery: yearBattery(bank, airC, assumptions),
    dullDays,
    dullShare,
  };
  assumptions.push(...daily.assumptions, {
    path: ['living'],
    text: say`every month begins with a full battery and ends with ${String(dullDays)} dull days of ${share(dullShare)} of its mean sun; what cables lose is not counted`,
  });
  const rerun: WorkedYear['rerun'] = (changed) => {
    const year = energyYear(changed);
    return { year, months: energyMonths(year, changed.dullDays) };
  };
  return { input, ...rerun(input), loads: daily.loads, climate, bank, rerun, assumptions };
}

function sunAndAir(
  place: ClimatePlace,
  airC: readonly number[],
  typed: Living['sun'],
): EnergyYearInput['climate'] {
  if (typed) return { globalWhM2: typed.map(({ value }) => value / joulesAWattHour), airC };
  const { globalWhM2, diffuseWhM2 } = place;
  return { globalWhM2, ...(diffuseWhM2 && { diffuseWhM2 }), airC };
}

/** On the other side of the equator it is summer in the place's winter. */
export function airAt({ airC, latitudeDeg: placeDeg }: ClimatePlace, latitudeDeg: number): readonly number[] {
  return Math.sign(placeDeg) * Math.sign(latitudeDeg) >= 0 ? airC : [...airC.slice(6), ...airC.slice(0, 6)];
}

/** Kilometres whatever the reader's units: the distance only says how far to trust a table. */
export const kilometres = (distanceM: number): string => `${Math.round(distanceM / 1000)} km`;

function climateAssumption({ place, distanceM, sunTyped }: ClimateUsed): Assumption {
  const what = sunTyped ? 'air' : 'sun and air';
  return {
    path: ['living', 'place'],
    text: say`${what} of ${place.name}, ${kilometres(distanceM)} away: a typical year, single months are 10 to 20 % off`,
    source: place.citation,
  };
}
