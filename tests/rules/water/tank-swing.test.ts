import { expect, test } from 'vitest';
import { renderPhrase } from '../../../src/report/format-measure.ts';
import { noteOf } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const rule = 'water.tank-swing';

test('the water of a tank swings axles and sides by its lever arms', async () => {
  // The wheelbase is 4 m, the track 2 m. Its middle is 3 m behind the front axle (2 m + 1 m) and 0.5 m right:
  // 100 kg load the rear axle with 75 kg and stand with 25 kg more than half of them on the right.
  const note = await noteOf(
    plan(`tanks: {fresh tank: {contents: fresh, holds: 100 L, size: {length: 400 mm, width: 400 mm, height: 400 mm}, at: {from_front: 1.8 m, from_right: 300 mm, above_floor: 0 mm}}}
water: {}`),
    rule,
  );
  expect(note?.rows.map((row) => row.map((cell) => renderPhrase(cell, 'metric')))).toEqual([
    ['fresh tank', '100 kg', '+25 kg', '+75 kg', '25 %', '25 kg right', '200 mm'],
  ]);
});

test('behind the rear axle a tank lifts the front', async () => {
  const note = await noteOf(
    plan(`tanks: {waste: {contents: waste, holds: 40 L, size: {length: 400 mm, width: 400 mm, height: 400 mm}, at: {from_front: 3.8 m, centred: true, above_floor: -500 mm}}}
water: {}`),
    rule,
  );
  // 5 m behind the front axle: 50 kg on the rear, −10 kg on the front.
  expect(note?.rows[0]?.slice(1, 6).map((cell) => renderPhrase(cell, 'metric'))).toEqual([
    '40 kg',
    '-10 kg',
    '+50 kg',
    '-25 %',
    'even',
  ]);
});

test('a plan without tanks says nothing', async () => {
  expect(await noteOf(plan('water: {}'), rule)).toBeUndefined();
});
