import * as z from 'zod';
import { chemistryNames } from '../catalogue/electrical/batteries.ts';
import { dropPractices } from '../catalogue/electrical/drop-limits.ts';
import { fuseFamilyIds } from '../catalogue/electrical/fuses.ts';
import { conductor } from './conductor-field.ts';
import {
  amount,
  named,
  oneOf,
  positive,
  quantity,
  type ReadQuantity,
  section,
  trueOrFalse,
  words,
} from './fields.ts';
import { partsOfDay } from './times-of-day.ts';

export const distributionKinds = ['busbar', 'fuse box', 'isolator'] as const;
export const dropClasses = ['critical', 'ordinary', 'lighting'] as const;
/** Where a cable lies: how warm it gets there is another matter. */
export const layings = ['inside', 'engine space', 'roof', 'in insulation'] as const;
export const alarmKinds = ['gas alarm', 'carbon monoxide alarm', 'smoke alarm'] as const;
export const controllerKinds = ['MPPT', 'PWM'] as const;
export const changeovers = ['automatic', 'manual'] as const;

/** The electrical part of a plan. Lengths are one way: the way back is counted by itself. */
export function electricalSchema(read: ReadQuantity) {
  const current = positive(read, 'current');
  const voltage = positive(read, 'voltage');
  const power = positive(read, 'power');
  const length = positive(read, 'length');
  const temperature = quantity(read, 'temperature');
  const hours = amount(read, 'duration');
  /** How long it runs on a day, and in which part of the day. */
  const inUse = {
    hours: z.union([hours, section({ summer: hours, winter: hours }, '{summer: 2 h}')]).optional(),
    when: oneOf(partsOfDay).optional(),
    per_person: trueOrFalse.optional(),
  };
  const wire = {
    conductor: conductor().optional(),
    strands: oneOf(['stranded', 'flexible']).optional(),
    tinned: trueOrFalse.optional(),
    insulation: temperature.optional(),
    bundled: positive(read, 'number').optional(),
    lies: oneOf(layings).optional(),
    ambient: temperature.optional(),
    run: words('fridge supply').optional(),
    length: length.optional(),
    length_back: length.optional(),
  };
  const fuse = section(
    {
      type: oneOf(fuseFamilyIds),
      rating: current,
      from_source: amount(read, 'length').optional(),
      sheathed: trueOrFalse.optional(),
    },
    '{type: blade, rating: 10 A, from_source: 100 mm}',
  );
  const battery = section(
    {
      chemistry: oneOf(chemistryNames),
      voltage,
      capacity: positive(read, 'charge'),
      rating_time: positive(read, 'duration').optional(),
      in_series: positive(read, 'number').optional(),
      in_parallel: positive(read, 'number').optional(),
      internal_resistance: positive(read, 'resistance').optional(),
      charge_limit: current.optional(),
      discharge_limit: current.optional(),
      surge_limit: current.optional(),
      charges_from: temperature.optional(),
      usable: amount(read, 'share').optional(),
      thing: words('battery').optional(),
    },
    '{chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 100 Ah, in_parallel: 2}',
  );
  const distribution = section(
    {
      kind: oneOf(distributionKinds),
      rating: current.optional(),
      thing: words('fuses and busbars').optional(),
      at_once: amount(read, 'share').optional(),
    },
    '{kind: fuse box, rating: 100 A, thing: fuses and busbars}',
  );
  const circuit = section(
    {
      from: words('fuse box'),
      to: words('fridge'),
      load: positive(read, 'current', 'power').optional(),
      surge: positive(read, 'current', 'power').optional(),
      at_once: amount(read, 'share').optional(),
      ...wire,
      fuse: fuse.optional(),
      drop: oneOf(dropClasses).optional(),
      switched: trueOrFalse.optional(),
      alarm: oneOf(alarmKinds).optional(),
      standing: positive(read, 'current', 'power').optional(),
      ...inUse,
      hours_at: temperature.optional(),
    },
    '{from: fuse box, to: fridge, load: 4 A, conductor: 4 mm2, run: fridge supply, fuse: {type: blade, rating: 10 A}}',
  );
  const solar = section(
    {
      modules: positive(read, 'number'),
      in_series: positive(read, 'number').optional(),
      power,
      open_circuit: voltage,
      short_circuit: current,
      voltage_per_kelvin: quantity(read, 'voltagePerKelvin').optional(),
      controller: section(
        {
          kind: oneOf(controllerKinds),
          current_limit: current,
          voltage_limit: voltage,
        },
        '{kind: MPPT, current_limit: 20 A, voltage_limit: 100 V}',
      ).optional(),
      circuit: words('solar supply').optional(),
      tilt_degrees: quantity(read, 'number').optional(),
      facing_degrees: quantity(read, 'number').optional(),
      shaded: amount(read, 'share').optional(),
      losses: amount(read, 'share').optional(),
    },
    '{modules: 2, power: 115 W, open_circuit: 22.4 V, short_circuit: 6.5 A}',
  );
  const vehicleCharger = section(
    {
      current,
      alternator: current.optional(),
      efficiency: amount(read, 'share').optional(),
      circuit: words('charging line').optional(),
    },
    '{current: 30 A, alternator: 150 A, circuit: charging line}',
  );
  const inverter = section(
    {
      power,
      surge: power.optional(),
      efficiency: amount(read, 'share').optional(),
      idle: power.optional(),
      circuit: words('inverter feed'),
      changeover: oneOf(changeovers).optional(),
      always_on: trueOrFalse.optional(),
    },
    '{power: 1000 W, surge: 2000 W, efficiency: 88 %, idle: 8 W, circuit: inverter feed}',
  );
  const shore = section(
    {
      voltage: voltage.optional(),
      current,
      lead: section(
        { length, conductor: conductor(), coiled: trueOrFalse.optional() },
        '{length: 25 m, conductor: 2.5 mm2}',
      ).optional(),
      residual_current: current.optional(),
      breaker: current.optional(),
      double_pole: trueOrFalse.optional(),
      bonding: conductor().optional(),
      charger: section(
        { current, circuit: words('charger output').optional() },
        '{current: 20 A, circuit: charger output}',
      ).optional(),
    },
    '{current: 10 A, residual_current: 30 mA, breaker: 10 A, bonding: 4 mm2}',
  );
  const mainsCircuit = section(
    {
      from: oneOf(['shore', 'inverter', 'both']),
      to: words('sockets'),
      load: power.optional(),
      conductor: conductor().optional(),
      breaker: current.optional(),
      residual_current: current.optional(),
      length: length.optional(),
      run: words('socket supply').optional(),
      ...inUse,
    },
    '{from: both, to: sockets, load: 1000 W, conductor: 2.5 mm2, breaker: 10 A, residual_current: 30 mA}',
  );
  return section(
    {
      voltage,
      drop_limits: oneOf(dropPractices).optional(),
      coldest: temperature.optional(),
      warmest: temperature.optional(),
      lay_up: positive(read, 'duration').optional(),
      battery: battery.optional(),
      distribution: named(distribution, '{fuse box: {kind: fuse box, rating: 100 A}}').optional(),
      circuits: named(circuit, '{fridge: {from: fuse box, to: fridge, load: 4 A}}').optional(),
      solar: named(
        solar,
        '{roof: {modules: 2, power: 115 W, open_circuit: 22.4 V, short_circuit: 6.5 A}}',
      ).optional(),
      charging_while_driving: vehicleCharger.optional(),
      inverter: inverter.optional(),
      shore: shore.optional(),
      mains_circuits: named(mainsCircuit, '{sockets: {from: both, to: sockets, load: 1000 W}}').optional(),
    },
    '{voltage: 12 V, battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 200 Ah}}',
  );
}
