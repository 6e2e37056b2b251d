import { batteryBank } from '../calc/electrical/battery-bank.ts';
import { batteryChemistries } from '../catalogue/electrical/batteries.ts';
import { type Conductor, conductorFor, conductors } from '../catalogue/electrical/conductors.ts';
import { fuseFamily } from '../catalogue/electrical/fuses.ts';
import { inverterEfficiency } from '../catalogue/electrical/inverter-guidance.ts';
import type { Assumption } from '../engine/finding.ts';
import { say } from '../engine/phrase.ts';
import type { ConductorSize } from '../plan/conductor-field.ts';
import type { Plan } from '../plan/schema.ts';
import { celsius } from './celsius.ts';
import type {
  Bank,
  Circuit,
  CircuitFuse,
  Draw,
  DrivingCharger,
  Electrical,
  Inverter,
  MainsCircuit,
  Shore,
  SolarArray,
  Wire,
} from './electrical.ts';
import type { Routes } from './routes.ts';

type Given = NonNullable<Plan['electrical']>;
type GivenCircuit = NonNullable<Given['circuits']>[string];

export interface Electrics {
  readonly electrical: Electrical;
  readonly assumptions: readonly Assumption[];
}

const secondsADay = 86400;
const secondsAnHour = 3600;

/** Ambient of places in a van where the plan gives none, °C: common practice, no source. */
const usualAmbientC = { inside: 30, 'engine space': 60, roof: 50, 'in insulation': 40 } as const;
/** The plainest insulation there is, °C: whatever the cable is, it bears this. */
const plainInsulationC = 70;
const usualRatingHours = 20;

export function electricsOf(plan: Plan, routes: Routes | undefined): Electrics | undefined {
  const given = plan.electrical;
  if (!given) return undefined;
  const assumptions: Assumption[] = [];
  const path = ['electrical'];
  const distribution = Object.entries(given.distribution ?? {}).map(
    ([name, { kind, rating, thing, at_once: atOnce }]) => ({
      name,
      path: [...path, 'distribution', name],
      kind,
      ...(rating && { ratingA: rating.value }),
      ...(thing !== undefined && { thing }),
      atOnce: atOnce?.value ?? 1,
    }),
  );
  const points = new Set(distribution.map(({ name }) => name));
  const chargers = new Set(
    [
      ...Object.values(given.solar ?? {}).map(({ circuit }) => circuit),
      given.charging_while_driving?.circuit,
      given.shore?.charger?.circuit,
    ].filter((name) => name !== undefined),
  );
  const bank = given.battery && bankOf(given.battery, assumptions);
  const inverter = given.inverter && inverterOf(given.inverter, assumptions);
  const circuits = Object.entries(given.circuits ?? {}).map(([name, circuit]) =>
    circuitOf(name, circuit, { points, chargers, inverter, given, routes, assumptions }),
  );
  return {
    electrical: {
      path,
      nominalV: given.voltage.value,
      dropPractice: given.drop_limits ?? 'boats',
      ...(given.coldest && { coldestC: celsius(given.coldest) }),
      ...(given.warmest && { warmestC: celsius(given.warmest) }),
      ...(given.lay_up && { layUpDays: given.lay_up.value / secondsADay }),
      ...(bank && { bank }),
      distribution,
      circuits,
      solar: solarOf(given),
      ...(given.charging_while_driving && { drivingCharger: drivingOf(given.charging_while_driving) }),
      ...(inverter && { inverter }),
      ...(given.shore && { shore: shoreOf(given.shore) }),
      mains: mainsOf(given, routes),
    },
    assumptions,
  };
}

type GivenBattery = NonNullable<Given['battery']>;

function bankOf(given: GivenBattery, assumptions: Assumption[]): Bank {
  const chemistry = batteryChemistries[given.chemistry];
  const inSeries = given.in_series?.value ?? 1;
  const inParallel = given.in_parallel?.value ?? 1;
  const blockCapacityAh = given.capacity.value / secondsAnHour;
  const bank = batteryBank(
    { voltageV: given.voltage.value, capacityAh: blockCapacityAh },
    { inSeries, inParallel },
  );
  // Guidance is for blocks of one nominal voltage; a block of twice that has twice the cells.
  const blocksOfGuidance = bank.voltageV / chemistry.nominalBlockV;
  const ratingHours = given.rating_time ? given.rating_time.value / secondsAnHour : usualRatingHours;
  const path = ['electrical', 'battery'];
  if (!given.rating_time && chemistry.lead)
    assumptions.push({ path, text: say`battery: its capacity is rated over ${String(usualRatingHours)} h` });
  const guided = (rate: { readonly value: number } | undefined) =>
    rate ? rate.value * bank.capacityAh : undefined;
  const typed = (limit: { readonly value: number } | undefined) =>
    limit ? limit.value * inParallel : undefined;
  const chargeLimitA = typed(given.charge_limit) ?? guided(chemistry.chargeRatePerHour);
  const dischargeLimitA = typed(given.discharge_limit) ?? guided(chemistry.dischargeRatePerHour);
  const surgeLimitA = typed(given.surge_limit);
  const guidedOhm = chemistry.resistanceOhmAt100Ah;
  const leastOhm = given.internal_resistance
    ? (given.internal_resistance.value * inSeries) / inParallel
    : guidedOhm && (guidedOhm.low * 100 * blocksOfGuidance) / bank.capacityAh;
  return {
    path,
    chemistry,
    inSeries,
    inParallel,
    blockCapacityAh,
    voltageV: bank.voltageV,
    capacityAh: bank.capacityAh,
    ratingHours,
    lowestV: chemistry.lowestBlockV.value * blocksOfGuidance,
    highestV: chargingVoltPerNominal[chemistry.lead ? 'lead' : 'lithium'] * bank.voltageV,
    ...(leastOhm !== undefined && {
      resistance: { leastOhm, source: given.internal_resistance ? 'typed' : 'catalogue' },
    }),
    ...(chargeLimitA !== undefined && { chargeLimitA }),
    ...(dischargeLimitA !== undefined && { dischargeLimitA }),
    ...(surgeLimitA !== undefined && { surgeLimitA }),
    limitsFrom: {
      charge: given.charge_limit ? 'typed' : 'catalogue',
      discharge: given.discharge_limit ? 'typed' : 'catalogue',
    },
    ...(given.charges_from && { chargesFromC: celsius(given.charges_from) }),
    usableShare: given.usable?.value ?? chemistry.usableShare.value,
    ...(given.thing !== undefined && { thing: given.thing }),
  };
}

/** While it is charged a battery has so many times its nominal voltage: some 14.9 V at 12 V of lead, 14.6 V at 12.8 V of lithium; from memory. */
const chargingVoltPerNominal = { lead: 1.24, lithium: 14.6 / 12.8 } as const;

interface CircuitSetting {
  readonly points: ReadonlySet<string>;
  readonly chargers: ReadonlySet<string>;
  readonly inverter: Inverter | undefined;
  readonly given: Given;
  readonly routes: Routes | undefined;
  readonly assumptions: Assumption[];
}

const drawOf = (quantity: NonNullable<GivenCircuit['load']>): Draw =>
  quantity.kind === 'power' ? { powerW: quantity.value } : { currentA: quantity.value };

function circuitOf(name: string, given: GivenCircuit, setting: CircuitSetting): Circuit {
  const path = ['electrical', 'circuits', name];
  const { inverter } = setting;
  const isInverter = inverter?.circuit === name;
  // What the inverter takes is its power over its efficiency, at whatever voltage is left for it.
  const own = isInverter
    ? {
        load: { powerW: inverter.powerW / inverter.efficiency },
        surge: { powerW: inverter.surgeW / inverter.efficiency },
      }
    : undefined;
  const charging = setting.chargers.has(name) ? chargingCurrent(name, setting.given) : undefined;
  const load = given.load
    ? drawOf(given.load)
    : (own?.load ?? (charging === undefined ? undefined : { currentA: charging }));
  const surge = given.surge ? drawOf(given.surge) : own?.surge;
  return {
    name,
    path,
    from: given.from,
    to: given.to,
    feeds: setting.points.has(given.to),
    charges: setting.chargers.has(name),
    ...(load && { load }),
    ...(surge && { surge }),
    atOnce: given.at_once?.value ?? 1,
    wire: wireOf(name, given, setting, path),
    ...(given.fuse && { fuse: fuseOf(given.fuse, [...path, 'fuse']) }),
    dropClass: given.drop ?? 'ordinary',
    ...(given.switched !== undefined && { switched: given.switched }),
    ...(given.alarm && { alarm: given.alarm }),
    ...(given.standing && { standing: drawOf(given.standing) }),
  };
}

/** The current of the charger that a circuit belongs to. */
function chargingCurrent(name: string, given: Given): number | undefined {
  if (given.charging_while_driving?.circuit === name) return given.charging_while_driving.current.value;
  if (given.shore?.charger?.circuit === name) return given.shore.charger.current.value;
  const limits = Object.values(given.solar ?? {})
    .filter(({ circuit }) => circuit === name)
    .map(({ controller }) => controller?.current_limit.value);
  return limits.length > 0 && limits.every((limit) => limit !== undefined)
    ? limits.reduce((sum, limit) => sum + limit, 0)
    : undefined;
}

const fuseOf = (
  { type, rating, from_source: fromSource, sheathed }: NonNullable<GivenCircuit['fuse']>,
  path: readonly (string | number)[],
): CircuitFuse => ({
  path,
  family: fuseFamily(type),
  ratingA: rating.value,
  ...(fromSource && { fromSourceM: fromSource.value }),
  sheathed: sheathed === true,
});

function wireOf(
  name: string,
  given: GivenCircuit,
  { routes, assumptions }: CircuitSetting,
  path: readonly (string | number)[],
): Wire {
  const size = given.conductor;
  const conductor = size && rowOf(size, given.strands, given.tinned === true);
  const lies = given.lies ?? 'inside';
  const insulationC = given.insulation ? celsius(given.insulation) : plainInsulationC;
  const ambientC = given.ambient ? celsius(given.ambient) : usualAmbientC[lies];
  if (size && !given.insulation)
    assumptions.push({ path, text: say`${name}: its insulation bears ${String(plainInsulationC)} °C` });
  const routed = given.run === undefined ? undefined : routes?.runs.find((run) => run.name === given.run);
  const lengthM = given.length?.value ?? routed?.lengthM;
  if (given.length && routed?.lengthM !== undefined)
    assumptions.push({
      path: [...path, 'length'],
      text: say`${name}: its length is as typed, not as its route says`,
    });
  return {
    ...(size && { size }),
    ...(conductor && { conductor }),
    insulationC,
    lies,
    ambientC,
    bundled: given.bundled?.value ?? 1,
    ...(lengthM !== undefined && {
      outM: lengthM,
      backM: given.length_back?.value ?? lengthM,
      lengthFrom: given.length ? 'typed' : 'route',
    }),
    ...(given.run !== undefined && { run: given.run }),
  };
}

/** The row of a size; where the plan does not say how it is stranded, the one with the greatest resistance. */
export function rowOf(
  { system, size }: ConductorSize,
  build: Conductor['build'] | undefined,
  tinned: boolean,
): Conductor | undefined {
  const finish = tinned ? 'tinned' : 'plain';
  if (build) return conductorFor(system, size, build, finish) ?? worstOf(system, size);
  const rows = conductors.filter(
    (row) => row.system === system && row.size === size && row.finish === finish,
  );
  return greatestResistance(rows) ?? worstOf(system, size);
}

const worstOf = (system: ConductorSize['system'], size: string): Conductor | undefined =>
  greatestResistance(conductors.filter((row) => row.system === system && row.size === size));

const greatestResistance = (rows: readonly Conductor[]): Conductor | undefined =>
  rows.reduce<Conductor | undefined>(
    (worst, row) => (worst === undefined || row.resistanceOhmPerM > worst.resistanceOhmPerM ? row : worst),
    undefined,
  );

function solarOf(given: Given): readonly SolarArray[] {
  return Object.entries(given.solar ?? {}).map(([name, array]) => {
    const inSeries = array.in_series?.value ?? 1;
    return {
      name,
      path: ['electrical', 'solar', name],
      modules: array.modules.value,
      inSeries,
      strings: array.modules.value / inSeries,
      modulePowerW: array.power.value,
      openCircuitV: array.open_circuit.value,
      shortCircuitA: array.short_circuit.value,
      ...(array.voltage_per_kelvin && { voltagePerKelvin: array.voltage_per_kelvin.value }),
      ...(array.controller && {
        controller: {
          kind: array.controller.kind,
          currentLimitA: array.controller.current_limit.value,
          voltageLimitV: array.controller.voltage_limit.value,
        },
      }),
      ...(array.circuit !== undefined && { circuit: array.circuit }),
    };
  });
}

/** Output power over input power where the plan does not say; the stricter of the guidance, as for cables. */
const usualConverterEfficiency = 0.85;

const drivingOf = (given: NonNullable<Given['charging_while_driving']>): DrivingCharger => ({
  path: ['electrical', 'charging_while_driving'],
  currentA: given.current.value,
  ...(given.alternator && { alternatorA: given.alternator.value }),
  efficiency: given.efficiency?.value ?? usualConverterEfficiency,
  ...(given.circuit !== undefined && { circuit: given.circuit }),
});

function inverterOf(given: NonNullable<Given['inverter']>, assumptions: Assumption[]): Inverter {
  const path = ['electrical', 'inverter'];
  const efficiency = given.efficiency?.value ?? inverterEfficiency.low;
  if (!given.efficiency)
    assumptions.push({
      path,
      text: say`inverter: gives ${String(Math.round(efficiency * 100))} % of what it takes`,
    });
  return {
    path,
    powerW: given.power.value,
    surgeW: Math.max(given.power.value, given.surge?.value ?? given.power.value),
    efficiency,
    efficiencyAssumed: given.efficiency === undefined,
    ...(given.idle && { idleW: given.idle.value }),
    circuit: given.circuit,
    ...(given.changeover && { changeover: given.changeover }),
    alwaysOn: given.always_on === true,
  };
}

/** Mains voltage of the plan's region is typed where it differs. */
const usualMainsV = 230;

function shoreOf(given: NonNullable<Given['shore']>): Shore {
  const bonding = given.bonding && rowOf(given.bonding, undefined, false);
  return {
    path: ['electrical', 'shore'],
    voltageV: given.voltage?.value ?? usualMainsV,
    currentA: given.current.value,
    ...(given.lead && { lead: leadOf(given.lead) }),
    ...(given.residual_current && { residualCurrentA: given.residual_current.value }),
    ...(given.breaker && { breakerA: given.breaker.value }),
    ...(given.double_pole !== undefined && { doublePole: given.double_pole }),
    ...(given.bonding && { bonding: given.bonding }),
    ...(bonding && { bondingMm2: bonding.areaMm2 }),
    ...(given.charger && {
      charger: {
        currentA: given.charger.current.value,
        ...(given.charger.circuit !== undefined && { circuit: given.charger.circuit }),
      },
    }),
  };
}

function leadOf({ length, conductor: size, coiled }: NonNullable<NonNullable<Given['shore']>['lead']>) {
  const conductor = rowOf(size, 'flexible', false);
  return { lengthM: length.value, size, ...(conductor && { conductor }), coiled: coiled === true };
}

function mainsOf(given: Given, routes: Routes | undefined): readonly MainsCircuit[] {
  return Object.entries(given.mains_circuits ?? {}).map(([name, circuit]) => {
    const row = circuit.conductor && rowOf(circuit.conductor, undefined, false);
    const lengthM = circuit.length?.value ?? routes?.runs.find((run) => run.name === circuit.run)?.lengthM;
    return {
      name,
      path: ['electrical', 'mains_circuits', name],
      from: circuit.from,
      to: circuit.to,
      ...(circuit.load && { loadW: circuit.load.value }),
      ...(circuit.conductor && { size: circuit.conductor }),
      ...(row && { areaMm2: row.areaMm2 }),
      ...(circuit.breaker && { breakerA: circuit.breaker.value }),
      ...(circuit.residual_current && { residualCurrentA: circuit.residual_current.value }),
      ...(lengthM !== undefined && { lengthM }),
    };
  });
}
