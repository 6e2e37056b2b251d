import { expect, test } from 'vitest';
import { buildOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

const winter = [0, 1, 2, 9, 10, 11];

interface Changes {
  readonly circuits: string;
  readonly more?: string;
  readonly living?: string;
}

const yearOf = async ({ circuits, more = '', living = '' }: Changes) =>
  (
    await buildOf(
      plan(`fixtures: {pump: {mass: 2 kg}, heater: {mass: 3 kg}, fridge: {mass: 20 kg}}
people: {sleepers: [{stature: 1.7 m}, {stature: 1.8 m}]}
electrical:
  voltage: 12 V
  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 200 Ah}
  circuits: {${circuits}}
living: {place: {latitude: 48.2, longitude: 11.6}${living && `, ${living}`}}
${more}`),
    )
  ).energy;

const pump = 'pump: {from: battery, to: pump, load: 60 W}';
const water = 'water: {pump: {flow: 10 L/min, circuit: pump}, outlets: {sink: {use: tap, flow: 5 L/min}}}';

test('a pump runs for the litres that are drawn, at the slowest outlet', async () => {
  const energy = await yearOf({ circuits: pump, more: water, living: 'litres_per_person_day: 15 L' });
  // 30 L a day at 5 L/min are 6 minutes of 60 W.
  expect(energy?.worked?.loads[0]).toMatchObject({ name: 'pump' });
  expect(energy?.worked?.loads[0]?.winterWh).toBeCloseTo(6, 9);
  expect(energy?.worked?.loads[0]?.summerWh).toBeCloseTo(6, 9);
});

test('hours that the plan types come first', async () => {
  const energy = await yearOf({
    circuits: 'pump: {from: battery, to: pump, load: 60 W, hours: 1 h}',
    more: water,
    living: 'litres_per_person_day: 15 L',
  });
  expect(energy?.worked?.loads[0]?.winterWh).toBeCloseTo(60, 9);
});

test('what the water or the heat lacks, the year lacks too', async () => {
  expect((await yearOf({ circuits: pump, more: water }))?.missing).toContain('living.litres_per_person_day');
  const heater = 'heater: {from: battery, to: heater, load: 25 W}';
  expect((await yearOf({ circuits: heater, more: 'heat: {heater: {circuit: heater}}' }))?.missing).toContain(
    'heat.heater.output',
  );
});

test("a heater's fan runs more in the months that are colder", async () => {
  const energy = await yearOf({
    circuits: 'heater: {from: battery, to: heater, load: 25 W}',
    more: `heat: {heater: {output: 3 kW, circuit: heater}, air_changes_per_hour: 1, cab: {closed_by: insulated cover}}
build_ups:
  walls: {of: walls, layers: [{material: XPS, thickness: 40 mm}]}
  floor: {of: floor, layers: [{material: XPS, thickness: 40 mm}]}
  ceiling: {of: ceiling, layers: [{material: XPS, thickness: 40 mm}]}
  doors: {of: rear doors, layers: [{material: XPS, thickness: 40 mm}]}`,
  });
  const load = energy?.worked?.loads[0];
  expect(load?.winterWh).toBeGreaterThan(3 * (load?.summerWh ?? Number.POSITIVE_INFINITY));
  const factors = load?.loads[0]?.monthFactors ?? [];
  // Munich is coldest in February of the typical year.
  expect(factors.indexOf(Math.max(...factors))).toBe(1);
  const hours = (load?.winterWh ?? 0) / 25;
  expect(hours).toBeGreaterThan(1);
  expect(hours).toBeLessThan(24);
});

test('a fridge runs longer in a warm month, and in winter as warm as it is inside', async () => {
  const energy = await yearOf({
    circuits: 'fridge: {from: battery, to: fridge, load: 50 W, hours: 8 h, hours_at: 25 degC}',
    more: 'heat: {inside: 15 degC}',
  });
  const load = energy?.worked?.loads[0];
  const factors = load?.loads[0]?.monthFactors ?? [];
  // 15 °C inside: 8 h · (15 − 5)/(25 − 5) = 4 h, 200 Wh; in July 18.0 °C outside: 8 · 13/20 = 5.2 h.
  const perDay = (month: number) =>
    (factors[month] ?? 0) * (load?.loads[0]?.hourlyW ?? []).reduce((a, b) => a + b, 0);
  for (const month of winter.filter((each) => each !== 9)) expect(perDay(month)).toBeCloseTo(200, 6);
  expect(perDay(6)).toBeCloseTo(260, 6);
});
