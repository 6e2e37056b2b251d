import { expect, test } from 'vitest';
import { figuresOf } from '../../src/rules/circuits.ts';
import { buildOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

const figures = async (distribution: string, circuits: string, more = '') => {
  const { electrical } = await buildOf(
    plan(`fixtures: {pump: {mass: 1 kg}, lamp: {mass: 1 kg}}
electrical:
  voltage: 12 V
  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 100 Ah}
  distribution: {${distribution}}
  circuits: {${circuits}}
  ${more}`),
  );
  if (!electrical) throw new Error('there is no electrical part');
  return figuresOf(electrical);
};

const wire = 'conductor: 10 mm2, length: 1 m';

test('what feeds a point bears all of that point, whatever part of the whole is on at once', async () => {
  const found = await figures(
    'bar: {kind: busbar, at_once: 50 %}, box: {kind: fuse box}',
    `bar feed: {from: battery, to: bar, ${wire}}, box feed: {from: bar, to: box, ${wire}}, pump: {from: box, to: pump, load: 20 A, ${wire}}`,
  );
  expect(found.get('box feed')?.designA).toBeCloseTo(20, 9);
  expect(found.get('bar feed')?.designA).toBeCloseTo(10, 9);
  expect(found.get('pump')?.designA).toBeCloseTo(20, 9);
});

test('the part of the time that a load is on lightens what feeds it, not its own circuit', async () => {
  const found = await figures(
    'box: {kind: fuse box}',
    `box feed: {from: battery, to: box, ${wire}}, pump: {from: box, to: pump, load: 10 A, at_once: 30 %, ${wire}}, lamp: {from: box, to: lamp, load: 2 A, ${wire}}`,
  );
  expect(found.get('box feed')?.designA).toBeCloseTo(5, 9);
  expect(found.get('pump')?.designA).toBeCloseTo(10, 9);
});

test('two arrays on one circuit push together', async () => {
  const array =
    '{modules: 1, power: 100 W, open_circuit: 22 V, short_circuit: 6 A, controller: {kind: MPPT, current_limit: 10 A, voltage_limit: 75 V}, circuit: sun}';
  const found = await figures(
    '',
    `sun: {from: battery, to: pump, ${wire}}`,
    `solar: {front: ${array}, rear: ${array}}`,
  );
  expect(found.get('sun')?.designA).toBeCloseTo(20, 9);
});

// 10 mm² flexible: 1.91 mΩ/m at 20 °C (the greater of flexible and stranded); at 70 °C times (234.5 + 70) / 254.5.
test('the loss is worked out warm, out and back, over every circuit on the way', async () => {
  const found = await figures(
    'box: {kind: fuse box}',
    `box feed: {from: battery, to: box, ${wire}}, pump: {from: box, to: pump, load: 10 A, ${wire}}`,
  );
  const loopOhm = 2 * 0.00191 * (304.5 / 254.5);
  expect(found.get('pump')?.ownDropV).toBeCloseTo(10 * loopOhm, 9);
  expect(found.get('pump')?.dropV).toBeCloseTo(20 * loopOhm, 9);
});
