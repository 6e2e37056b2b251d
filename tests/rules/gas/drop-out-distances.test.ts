import { expect, test } from 'vitest';
import { combustionCaution, gasCaution } from '../../../src/rules/cautions.ts';
import { pairOf } from '../../../src/rules/pair.ts';
import { cautionedVerdicts } from '../../support/cautioned.ts';
import { findingOf, only, reportOf } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

const rule = 'gas.drop-out-distances';
const place = (fromFront: string) => `{from_front: ${fromFront}, from_right: 200 mm, above_floor: 0 mm}`;
/** Nothing but the heater burns anything. */
const van = { energy: 'electric' };
const dropOut = `  drop_outs: {low: {in: cupboard, area: 20 cm2, at: ${place('500 mm')}}}`;

test.each([
  ['1.2 m', 'pass'],
  ['1 m', 'pass'],
  ['999 mm', 'warn'],
])('an engine exhaust at %s, with the drop-out at 500 mm: %s', async (fromFront, verdict) => {
  // 500 mm are asked for.
  const found = await findingOf(gasPlan({ gas: dropOut, van: { exhaust: place(fromFront) } }), rule);
  expect(found).toMatchObject({ verdict, subject: 'low and the exhaust of the engine' });
});

test.each([
  ['exhaust: ', '900 mm', 'low and the exhaust of the heater'],
  ['combustion_air: ', '700 mm', 'low and the combustion air of the heater'],
])('the heater: %s%s warns', async (key, fromFront, subject) => {
  const rest = `heat: {heater: {${key}${place(fromFront)}}}`;
  expect(await findingOf(gasPlan({ gas: dropOut, rest, van }), rule)).toMatchObject({
    verdict: 'warn',
    subject,
  });
});

test('a waste tank under the floor is a drain', async () => {
  const tank = (fromFront: string) =>
    gasPlan({
      gas: dropOut,
      tanks: `  waste: {contents: waste, holds: 40 L, size: {length: 500 mm, width: 400 mm, height: 200 mm}, at: {from_front: ${fromFront}, from_right: 0 mm, above_floor: -200 mm}}`,
      rest: 'water: {}',
      van,
    });
  // 250 mm from its nearest face.
  expect(await findingOf(tank('750 mm'), rule)).toMatchObject({ verdict: 'pass' });
  expect(await findingOf(tank('740 mm'), rule)).toMatchObject({ verdict: 'warn' });
});

const under = (fromFront: string) =>
  `size: {length: 300 mm, width: 200 mm, height: 150 mm}, at: {from_front: ${fromFront}, from_right: 100 mm, above_floor: -150 mm}`;
const box = (name: string, fromFront: string) => `  ${name}: {mass: 8 kg, ${under(fromFront)}}`;

test.each([
  [
    'a battery',
    'battery',
    'electrical: {voltage: 12 V, battery: {thing: battery, voltage: 12.8 V, chemistry: lithium iron phosphate, capacity: 100 Ah}}',
    '',
  ],
  [
    'a pump',
    'pump',
    'electrical: {voltage: 12 V, circuits: {pump: {from: battery, to: pump, load: 48 W, length: 2 m, conductor: 2.5 mm2}}}',
    '',
  ],
  ['a gas burner', 'boiler', '', '    boiler: {thing: boiler, use: water heating}'],
  ['the heater', 'warmer', 'heat: {heater: {thing: warmer, heated_by: battery}}', ''],
])('%s under the floor may light what falls out', async (_, name, rest, appliances) => {
  const at = (fromFront: string) =>
    gasPlan({ gas: dropOut, fixtures: box(name, fromFront), rest, appliances, van });
  // Its nearest face is 250 mm from the drop-out.
  expect(only(await reportOf(at('750 mm')), rule, pairOf('low', name))).toMatchObject({ verdict: 'pass' });
  expect(only(await reportOf(at('749 mm')), rule, pairOf('low', name))).toMatchObject({
    verdict: 'warn',
    limit: { measure: { value: 0.25 } },
  });
});

test('what stands above the floor does not count', async () => {
  const text = gasPlan({
    gas: dropOut,
    fixtures: box('battery', '500 mm').replace('above_floor: -150 mm', 'above_floor: 0 mm'),
    rest: 'electrical: {voltage: 12 V, battery: {thing: battery, voltage: 12.8 V, chemistry: lithium iron phosphate, capacity: 100 Ah}}',
    van: { exhaust: place('3 m') },
  });
  expect(
    (await reportOf(text)).findings.filter((each) => each.rule === rule).map(({ subject }) => subject),
  ).toEqual(['low and the exhaust of the engine']);
});

test('an exhaust that there must be and that has no place is asked for', async () => {
  const text = gasPlan({
    gas: dropOut,
    hob: 'use: cooking, flue: room-sealed',
    rest: 'heat: {heater: {heated_by: diesel}}',
    van: { exhaust: place('2 m') },
  });
  const found = (await reportOf(text)).findings.filter((each) => each.rule === rule);
  expect(found.map(({ verdict }) => verdict).sort()).toEqual(['not checked', 'pass']);
  expect(found.flatMap(({ missing = [] }) => missing)).toEqual([
    'heat.heater.exhaust',
    'gas.appliances.hob.exhaust',
  ]);
});

test('what is missing is asked for', async () => {
  expect(await findingOf(gasPlan({}), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.drop_outs'],
  });
  expect(await findingOf(gasPlan({ gas: '  drop_outs: {low: {in: cupboard}}' }), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.drop_outs.low.at'],
  });
  expect(await findingOf(gasPlan({ gas: dropOut }), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['van.exhaust', 'heat.heater.exhaust'],
  });
});

test('every finding carries its cautions, whatever the verdict', async () => {
  const texts = [
    gasPlan({ gas: dropOut, van: { exhaust: place('1.2 m') } }),
    gasPlan({ gas: dropOut, van: { exhaust: place('999 mm') } }),
    gasPlan({}),
  ];
  expect(await cautionedVerdicts(rule, [gasCaution, combustionCaution], texts)).toEqual([
    'not checked',
    'pass',
    'warn',
  ]);
});
