import type { PureGas } from '../calc/gas/saturation.ts';
import { dailyGasKg } from '../calc/gas/stored.ts';
import { heatingValueOf } from '../catalogue/gas/properties.ts';
import { usualEfficiencies } from '../catalogue/heat/heating.ts';
import type { PlanPath } from '../engine/finding.ts';
import type { Build } from './build.ts';
import { gasOfInput } from './flames.ts';
import type { Appliance } from './gas.ts';
import { heatDemandOf } from './heat-demand.ts';
import { waterUseOf } from './water-use.ts';

/*
 * The gas that the appliances of a plan burn on a day, kg. Winter is the mean day of the month that takes most heat (a day
 * at the winter low where the months are not known), summer that of the month that takes least.
 */

export interface DayOfGas {
  readonly winterKg: number;
  readonly summerKg: number;
}

/** What the gas of a use came from, on a winter day: lit for a time, or heat that is wanted. */
export type GasCause =
  | { readonly gasKgPerS: number; readonly litS: number }
  | {
      readonly heatJ: number;
      readonly efficiency: number;
      /** The plan says no efficiency. */
      readonly isUsual: boolean;
      /** Appliances that share this heat. */
      readonly sharedBy: number;
    };

export interface UseOfGas extends DayOfGas {
  readonly use: ApplianceUse;
  readonly cause: GasCause;
}

export interface ApplianceGas extends DayOfGas {
  readonly name: string;
  readonly path: PlanPath;
  readonly uses: readonly UseOfGas[];
}

export interface GasUse {
  /** Keys without which the gas of a day is not known. */
  readonly missing: readonly string[];
  readonly burns: PureGas;
  /** In the order of the plan; those that are not known are left out. */
  readonly byAppliance: readonly ApplianceGas[];
  /** Of all; undefined while anything is missing. */
  readonly day?: DayOfGas;
  /** Keys without which the full rate is not known. */
  readonly rateMissing: readonly string[];
  /** All appliances on; undefined while an input is missing. */
  readonly fullRateKgPerS?: number;
  /** What was taken though the plan does not say it. */
  readonly assumed: readonly string[];
}

export type ApplianceUse = NonNullable<Appliance['use']>;

/** What the plan's first cylinder or tank holds; propane where there is none. */
export const gasBurntIn = ({ gas }: Build): PureGas => gas?.stores[0]?.gas ?? 'propane';

/** What an appliance takes with everything on it lit, kg/s. */
export const fullRateOf = ({ input }: Appliance, burns: PureGas): number | undefined =>
  input && gasOfInput(input, burns);

/** What an appliance is for: one that heats both water and room is the thing of both heaters. */
export function usesOf({ use, thing }: Appliance, { water, heat }: Build): ReadonlySet<ApplianceUse> {
  const isThing = (other: string | undefined): boolean => thing !== undefined && thing === other;
  return new Set<ApplianceUse>([
    ...(use ? [use] : []),
    ...(isThing(water?.heater?.thing) ? ['water heating' as const] : []),
    ...(isThing(heat?.heater?.thing) ? ['room heating' as const] : []),
  ]);
}

const secondsADay = 86_400;
const none: Worked = { missing: [] };

/** A day of one use, all its appliances together, or the keys that are missing. */
type Worked = (DayOfGas & { readonly cause: GasCause }) | { readonly missing: readonly string[] };

export function gasUseOf(build: Build): GasUse {
  const { gas, water, heat } = build;
  const burns = gasBurntIn(build);
  const appliances = gas?.appliances ?? [];
  if (appliances.length === 0)
    return {
      missing: ['gas.appliances'],
      rateMissing: ['gas.appliances'],
      burns,
      byAppliance: [],
      assumed: [],
    };
  const missing: string[] = [];
  const assumed: string[] = [];
  const serving = (wanted: ApplianceUse) =>
    appliances.filter((appliance) => usesOf(appliance, build).has(wanted));
  const shares = {
    'water heating': serving('water heating').length,
    'room heating': serving('room heating').length,
  };
  if (water?.heater?.heatedBy === 'gas' && shares['water heating'] === 0)
    missing.push('gas.appliances.NAME.use');
  if (heat?.heater?.heatedBy === 'gas' && shares['room heating'] === 0)
    missing.push('gas.appliances.NAME.use');
  const hot = shares['water heating'] > 0 ? hotWaterDay(build, burns, assumed) : none;
  const room = shares['room heating'] > 0 ? roomDay(build, burns, assumed) : none;
  const byAppliance = appliances.flatMap((appliance): ApplianceGas[] => {
    const uses = usesOf(appliance, build);
    if (uses.size === 0) missing.push(`${appliance.path.join('.')}.use`);
    const parts = [...uses].map((use): readonly [ApplianceUse, Worked] => {
      if (use === 'water heating') return [use, partOf(hot, shares[use])];
      if (use === 'room heating') return [use, partOf(room, shares[use])];
      return [use, litDay(appliance, use, build, assumed)];
    });
    const lacking = parts.flatMap(([, part]) => ('missing' in part ? part.missing : []));
    missing.push(...lacking);
    if (lacking.length > 0 || uses.size === 0) return [];
    const days = parts.flatMap(([use, part]): readonly UseOfGas[] =>
      'missing' in part ? [] : [{ use, ...part }],
    );
    return [{ name: appliance.name, path: appliance.path, ...sumOf(days), uses: days }];
  });
  const rates = appliances.map((appliance) => fullRateOf(appliance, burns));
  const rateMissing = appliances
    .filter(({ input }) => input === undefined)
    .map(({ path }) => `${path.join('.')}.input`);
  return {
    missing: [...new Set(missing)],
    burns,
    byAppliance,
    ...(missing.length === 0 && { day: sumOf(byAppliance) }),
    rateMissing,
    ...(rateMissing.length === 0 && {
      fullRateKgPerS: rates.reduce<number>((sum, rate) => sum + (rate ?? 0), 0),
    }),
    assumed: [...new Set(assumed)],
  };
}

const sumOf = (days: readonly DayOfGas[]): DayOfGas => ({
  winterKg: days.reduce((sum, { winterKg }) => sum + winterKg, 0),
  summerKg: days.reduce((sum, { summerKg }) => sum + summerKg, 0),
});

/** Several appliances for one use share its heat. */
const partOf = (day: Worked, of: number): Worked =>
  'missing' in day
    ? day
    : {
        winterKg: day.winterKg / of,
        summerKg: day.summerKg / of,
        cause: 'heatJ' in day.cause ? { ...day.cause, sharedBy: of } : day.cause,
      };

/** What burns by the clock: a cooker while food is cooked, with all of it lit, a refrigerator all day. */
function litDay(appliance: Appliance, use: ApplianceUse, build: Build, assumed: string[]): Worked {
  const rate = fullRateOf(appliance, gasBurntIn(build));
  const seconds = use === 'refrigerator' ? secondsADay : build.habits.cookingS;
  if (rate === undefined || seconds === undefined)
    return {
      missing: [
        ...(rate === undefined ? [`${appliance.path.join('.')}.input`] : []),
        ...(seconds === undefined ? ['living.cooking'] : []),
      ],
    };
  assumed.push(
    use === 'refrigerator'
      ? `${appliance.name} burns at its full input all day`
      : `everything on ${appliance.name} is lit for the whole time of cooking`,
  );
  const litS = Math.min(seconds, secondsADay);
  const kg = dailyGasKg({ gasKgPerS: rate, secondsPerDay: litS });
  return { winterKg: kg, summerKg: kg, cause: { gasKgPerS: rate, litS } };
}

function efficiencyOf(given: number | undefined, what: string, key: string, assumed: string[]): number {
  if (given !== undefined && given > 0) return given;
  assumed.push(
    `${what} turns ${usualEfficiencies.gas * 100} % of the gas into heat (\`${key}\` says otherwise)`,
  );
  return usualEfficiencies.gas;
}

/** Efficiencies are taken as net, as makers give them: with the lower heating value that needs more gas. */
const gasForHeat = (heatJPerDay: number, efficiency: number, burns: PureGas): number =>
  dailyGasKg({ heatJPerDay, efficiency, heatingValueJPerKg: heatingValueOf(burns) });

function hotWaterDay(build: Build, burns: PureGas, assumed: string[]): Worked {
  const heater = build.water?.heater;
  if (!heater) return { missing: ['water.heater'] };
  const { hotEnergyJPerDay, hotMissing } = waterUseOf(build);
  if (hotEnergyJPerDay === undefined) return { missing: hotMissing };
  const efficiency = efficiencyOf(heater.efficiency, 'the water heater', 'water.heater.efficiency', assumed);
  const kg = gasForHeat(hotEnergyJPerDay, efficiency, burns);
  assumed.push('what the water heater and its pipes lose while they stand is left out');
  return { winterKg: kg, summerKg: kg, cause: heatCause(hotEnergyJPerDay, efficiency, heater.efficiency) };
}

const heatCause = (heatJ: number, efficiency: number, given: number | undefined): GasCause => ({
  heatJ,
  efficiency,
  isUsual: efficiency !== given,
  sharedBy: 1,
});

function roomDay(build: Build, burns: PureGas, assumed: string[]): Worked {
  const heater = build.heat?.heater;
  if (!heater) return { missing: ['heat.heater'] };
  const { worked, missing } = heatDemandOf(build);
  if (!worked) return { missing };
  const { months, winterLow } = worked;
  const heats = months?.map(({ heatJPerDay }) => heatJPerDay);
  const winterJ = heats ? Math.max(...heats) : winterLow && winterLow.meanDayW * secondsADay;
  if (winterJ === undefined) return { missing: ['living.place'] };
  const efficiency = efficiencyOf(heater.efficiency, 'the heater', 'heat.heater.efficiency', assumed);
  return {
    winterKg: gasForHeat(winterJ, efficiency, burns),
    summerKg: gasForHeat(heats ? Math.min(...heats) : 0, efficiency, burns),
    cause: heatCause(winterJ, efficiency, heater.efficiency),
  };
}
