import { describe, expect, test } from 'vitest';
import { assemble } from '../../src/build/assemble.ts';
import type { WorkedYear } from '../../src/build/energy.ts';
import { loadPlan } from '../../src/plan/load.ts';
import { assumptionsOf, buildOf } from '../support/check.ts';
import { energyPlan } from '../support/energy-plan.ts';

async function workedOf(changes: Parameters<typeof energyPlan>[0] = {}): Promise<WorkedYear> {
  const { energy } = await buildOf(energyPlan(changes));
  if (!energy?.worked) throw new Error(`not worked out: ${energy?.missing.join(', ')}`);
  return energy.worked;
}
const missingOf = async (text: string) => (await buildOf(text)).energy?.missing;
const loadOf = ({ loads }: WorkedYear, name: string) => {
  const found = loads.find((load) => load.name === name);
  if (!found) throw new Error(`no load ${name}`);
  return found;
};
const sunOf = (value: string): string => Array.from({ length: 12 }, () => value).join(', ');
const southern = `{place: {latitude: -33, longitude: 18}, sun: [${sunOf('4 kWh/m2')}]}`;
const inverter = (rest: string, mains: string): string =>
  `    inverter feed: {from: battery, to: lamps}
  inverter: {power: 600 W, efficiency: 80 %, circuit: inverter feed${rest}}
  mains_circuits: {sockets: {from: both, to: lamps, ${mains}}}`;

describe('what the loads take on a day', () => {
  test('power times hours; amperes at the nominal voltage of the battery', async () => {
    const worked = await workedOf({ fridge: 'load: 5 A, hours: 6 h' });
    // 5 A at 12.8 V for 6 h, and 20 W for 4 h.
    expect(loadOf(worked, 'fridge').winterWh).toBeCloseTo(384, 9);
    expect(loadOf(worked, 'lamps').summerWh).toBeCloseTo(80, 9);
    expect(worked.year.months[0]?.wantedWh).toBeCloseTo(31 * 464, 6);
  });
  test('summer and winter hours, the other way round south of the equator', async () => {
    const fridge = 'load: 10 W, hours: {summer: 10 h, winter: 5 h}';
    const january = async (living?: string) =>
      (await workedOf({ fridge, ...(living && { living }) })).year.months[0]?.wantedWh;
    expect(await january()).toBeCloseTo(31 * (50 + 80), 6);
    expect(await january(southern)).toBeCloseTo(31 * (100 + 80), 6);
  });
  test('hours for each person count as often as people sleep there, and no day has more than 24', async () => {
    const of = async (hours: string, sleepers: number) => {
      const people = `people: {sleepers: [${Array.from({ length: sleepers }, () => '{stature: 1.7 m}').join(', ')}]}`;
      const living = `{nights_off_grid: 3, place: {latitude: 48.2, longitude: 11.6}}\n${people}`;
      return loadOf(
        await workedOf({ fridge: `load: 10 W, hours: ${hours}, per_person: true`, living }),
        'fridge',
      );
    };
    expect((await of('2 h', 3)).winterWh).toBeCloseTo(60, 9);
    expect((await of('10 h', 3)).winterWh).toBeCloseTo(240, 9);
    expect(await missingOf(energyPlan({ fridge: 'load: 10 W, hours: 2 h, per_person: true' }))).toContain(
      'people.sleepers',
    );
  });
  test('what stands by draws in the hours that are left', async () => {
    const worked = await workedOf({ fridge: 'load: 45 W, hours: 8 h, standing: 2 W' });
    expect(loadOf(worked, 'fridge').winterWh).toBeCloseTo(8 * 45 + 16 * 2, 9);
  });
  test('an evening is an evening', async () => {
    const [, lamps] = (await workedOf()).input.loads;
    // 80 Wh over the five hours from six.
    expect(lamps?.hourlyW[17]).toBe(0);
    expect(lamps?.hourlyW[18]).toBeCloseTo(16, 12);
    expect(lamps?.hourlyW[23]).toBe(0);
  });
  test('an alarm is on day and night', async () => {
    const worked = await workedOf({ lamps: 'load: 1 W, alarm: smoke alarm' });
    expect(loadOf(worked, 'lamps').winterWh).toBeCloseTo(24, 9);
  });
  test('mains loads through the inverter, which idles while they run, or always', async () => {
    const some = await workedOf({ more: inverter(', idle: 10 W', 'load: 400 W, hours: 1 h') });
    expect(loadOf(some, 'sockets').winterWh).toBeCloseTo(500, 9);
    expect(loadOf(some, 'inverter, idling').winterWh).toBeCloseTo(10, 9);
    const always = await workedOf({
      more: inverter(', idle: 10 W, always_on: true', 'load: 400 W, hours: 1 h'),
    });
    expect(loadOf(always, 'inverter, idling').winterWh).toBeCloseTo(240, 9);
    // Unsaid: the larger of the two rows for 600 W and more, 7.2 W.
    const guided = await workedOf({ more: inverter(', always_on: true', 'load: 400 W, hours: 1 h') });
    expect(loadOf(guided, 'inverter, idling').winterWh).toBeCloseTo(24 * 7.2, 9);
  });
});

describe('sources and battery', () => {
  test('an array of modules, its plane, its controller', async () => {
    const [array] = (
      await workedOf({
        more: '  solar: {roof: {modules: 4, power: 110 W, open_circuit: 22 V, short_circuit: 6.3 A, tilt_degrees: 30, facing_degrees: 200, shaded: 10 %, losses: 12 %, controller: {kind: MPPT, current_limit: 20 A, voltage_limit: 100 V}}}',
      })
    ).input.arrays;
    expect(array).toMatchObject({
      peakW: 440,
      tiltDeg: 30,
      azimuthDeg: 200,
      shadedShare: 0.1,
      losses: [0.12],
      hotterK: 0,
      controllerMostW: 256,
      controllerEfficiency: 0.95,
    });
  });
  test('a controller that only switches wastes what lies above the voltage of the battery', async () => {
    const [array] = (
      await workedOf({
        more: '  solar: {roof: {modules: 1, power: 110 W, open_circuit: 40 V, short_circuit: 3 A, controller: {kind: PWM, current_limit: 20 A, voltage_limit: 100 V}}}',
      })
    ).input.arrays;
    // 12.8 V of 0.82 · 40 V.
    expect(array?.controllerEfficiency).toBeCloseTo(12.8 / 32.8, 12);
  });
  test('a tilted array looks to the equator where the plan does not say', async () => {
    const more =
      '  solar: {roof: {modules: 1, power: 110 W, open_circuit: 22 V, short_circuit: 6 A, tilt_degrees: 30}}';
    const south = await workedOf({ more, living: southern });
    expect(south.input.arrays[0]?.azimuthDeg).toBe(0);
    expect((await workedOf({ more })).input.arrays[0]?.azimuthDeg).toBe(180);
  });
  test('chargers count only with the hours and nights that the plan gives', async () => {
    const more =
      '  charging_while_driving: {current: 30 A}\n  shore: {current: 10 A, charger: {current: 20 A}}';
    const without = await workedOf({ more });
    expect([without.input.driving, without.input.shore]).toEqual([undefined, undefined]);
    const { input } = await workedOf({
      more,
      living: '{place: {latitude: 48, longitude: 11}, driving: 90 min, shore_nights: 4}',
    });
    expect(input.driving).toMatchObject({ powerW: 384, daysPerWeek: 7 });
    expect(input.driving?.hours[0]).toBeCloseTo(1.5, 12);
    expect(input.shore).toMatchObject({ powerW: 256 });
    expect(input.shore?.nights).toEqual(Array.from({ length: 12 }, () => 4));
  });
  test('the usable part of a lithium bank, and its table of charging', async () => {
    const { input } = await workedOf({
      battery:
        '{chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 100 Ah, in_parallel: 2, charge_limit: 50 A}',
    });
    // 200 Ah at 12.8 V, 80 % of it; 100 A at most, of which 0.2 C is 40 A between 10 and 25 °C.
    expect(input.battery.windowWh).toBeCloseTo(2048, 9);
    expect(input.battery.mostChargeW).toBeCloseTo(1280, 9);
    expect(input.battery.chargeSteps).toContainEqual({ fromC: 10, share: 0.4 });
    expect(input.battery.peukert).toBeUndefined();
    expect(Math.min(...input.battery.cellC)).toBe(5);
  });
  test('charging begins where the plan says', async () => {
    const { input } = await workedOf({
      battery:
        '{chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 200 Ah, charge_limit: 100 A, charges_from: 7 degC}',
    });
    expect(input.battery.chargeSteps.slice(0, 2)).toEqual([
      { fromC: 7, share: 0.2 },
      { fromC: 10, share: 0.4 },
    ]);
  });
  test('lead has Peukert at the hours of its rating, and no table', async () => {
    const { input } = await workedOf({
      battery: '{chemistry: AGM, voltage: 12 V, capacity: 200 Ah, rating_time: 20 h}',
    });
    expect(input.battery).toMatchObject({
      windowWh: 1200,
      chargeSteps: [],
      peukert: { exponent: 1.11, ratedPowerW: 120 },
    });
  });
});

describe('the sun', () => {
  test('of the nearest place', async () => {
    const { climate, input } = await workedOf();
    expect(climate.place.name).toBe('Munich, Germany');
    expect(climate.distanceM).toBeLessThan(15_000);
    expect(input.climate.globalWhM2[11]).toBe(670);
  });
  test('as typed in, without a diffuse part of elsewhere', async () => {
    const sun = Array.from({ length: 12 }, (_, month) => `${month + 1}00 Wh/m2`).join(', ');
    const { input, climate } = await workedOf({
      living: `{place: {latitude: 48.2, longitude: 11.6}, sun: [${sun}]}`,
    });
    expect(input.climate.globalWhM2[11]).toBeCloseTo(1200, 9);
    expect(input.climate.diffuseWhM2).toBeUndefined();
    expect(climate.sunTyped).toBe(true);
  });
});

describe('far from every table', () => {
  test('the plan must bring its own sun', async () => {
    expect(await missingOf(energyPlan({ living: '{place: {latitude: -33, longitude: 18}}' }))).toEqual([
      'living.sun',
    ]);
  });
  test('the air south of the equator has its summer in January', async () => {
    const { airC } = (await workedOf({ living: southern })).input.climate;
    expect(airC[0]).toBeGreaterThan((airC[6] ?? 0) + 10);
  });
});

describe('months', () => {
  test('a battery that falls from day to day runs down, one that fills again does not', async () => {
    const dark = await workedOf({
      more: '',
      lamps: 'load: 1 W, hours: 1 h',
      fridge: 'load: 1 W, hours: 24 h',
    });
    // 25 Wh a day out of 2048 Wh, over losses: it lasts the month and falls by 25/√0.92 Wh a day.
    expect(dark.months[0]?.typicalUnmetWh).toBe(0);
    expect(dark.months[0]?.runsDownWhADay).toBeGreaterThan(25);
    const july = (await workedOf()).months[6];
    expect(july).toMatchObject({ name: 'July', typicalUnmetWh: 0, dullUnmetWh: 0, runsDownWhADay: 0 });
  });
});

describe('what the plan leaves out', () => {
  test('is asked for, key by key', async () => {
    expect(await missingOf(energyPlan({ fridge: 'load: 45 W', living: '{nights_off_grid: 2}' }))).toEqual([
      'electrical.circuits.fridge.hours',
      'living.place',
    ]);
    expect(await missingOf(energyPlan({ fridge: 'conductor: 4 mm2' }))).toEqual([
      'electrical.circuits.fridge.load',
      'electrical.circuits.fridge.hours',
    ]);
    expect(await missingOf('storystick: 1\nvan: {}\nliving: {nights_off_grid: 2}\n')).toEqual([
      'electrical.battery',
      'electrical.circuits',
      'living.place',
    ]);
    expect(await missingOf('storystick: 1\nvan: {}\n')).toBeUndefined();
    expect(await missingOf(energyPlan({ more: inverter('', 'load: 400 W') }))).toEqual([
      'electrical.mains_circuits.sockets.hours',
    ]);
  });
  test('is assumed in words', async () => {
    const said = assumptionsOf(await buildOf(energyPlan()));
    expect(said).toEqual(
      expect.arrayContaining([
        'roof: lies flat',
        'sun and air of Munich, Germany, 11 km away: a typical year, single months are 10 to 20 % off',
        'loads without `when` run evenly over day and night',
      ]),
    );
  });
  test('without a simulation nothing is worked out', async () => {
    const { plan } = await loadPlan(energyPlan(), () => import('../../src/plan/calculator.ts'));
    expect(plan && assemble(plan).energy).toMatchObject({ missing: [] });
    expect(plan && assemble(plan).energy?.worked).toBeUndefined();
  });
});
