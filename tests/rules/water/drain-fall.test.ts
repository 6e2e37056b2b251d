import { expect, test } from 'vitest';
import { findingOf, only, reportOf } from '../../support/check.ts';
import { waterPlan } from '../../support/water-plan.ts';

const rule = 'water.drain-fall';

/** A waste pipe of 40 mm and 2 m, typed: its strictest fall is 1 in 48, 2.08 %. */
const typed = (rise: string, slope = '0 %', length = '2 m') =>
  waterPlan({
    water: `outlets: {sink: {thing: sink}}, pipes: {waste: {from: sink, to: waste tank, material: rigid plastic, size: 40 mm, length: ${length}, rise: ${rise}}}`,
    living: slope === '' ? '' : `parking_slope: ${slope}`,
  });

test('a pipe with enough fall passes', async () => {
  const found = await findingOf(typed('-60 mm'), rule);
  expect(found).toMatchObject({ verdict: 'pass', subject: 'waste' });
  // 60 mm over √(2² − 0.06²) m.
  expect(found.measured?.value).toBeCloseTo(0.06 / Math.sqrt(4 - 0.0036), 9);
  expect(found.limit?.measure.value).toBeCloseTo(1 / 48, 9);
});

test('exactly the least fall passes', async () => {
  // h/√(l² − h²) = 1/48 where l = h·√(48² + 1).
  expect(await findingOf(typed('-40 mm', '0 %', `${0.04 * Math.sqrt(48 ** 2 + 1)} m`), rule)).toMatchObject({
    verdict: 'pass',
  });
});

test('one that climbs fails', async () => {
  const found = await findingOf(typed('10 mm'), rule);
  expect(found.verdict).toBe('fail');
  expect(JSON.stringify(found.reason)).toContain('climbs');
});

// 1 m up over 0.1 m along is 84.3° against the water; with 5.7° of ground it would be 90° and, as a slope, turn its sign.
test.each(['0 %', '5 %', '10 %', '20 %'])(
  'one that climbs nearly upright fails on ground of %s',
  async (slope) => {
    const found = await findingOf(typed('1 m', slope, `${Math.hypot(1, 0.1)} m`), rule);
    expect(found).toMatchObject({ verdict: 'fail', measured: { value: -1 } });
  },
);

test('too little fall warns, and doing what the remedy says is enough', async () => {
  const found = await findingOf(typed('-20 mm', '1 %'), rule);
  expect(found.verdict).toBe('warn');
  const fall = found.remedy?.find((part) => typeof part !== 'string');
  if (!fall || typeof fall === 'string') throw new Error('no fall');
  expect(await findingOf(typed(`${-fall.value * 1000} mm`, '1 %'), rule)).toMatchObject({ verdict: 'pass' });
});

test('one degree of slope eats most of a fall of two per cent; a plan that is silent is parked on one', async () => {
  const level = await findingOf(typed('-50 mm'), rule);
  expect(level.verdict).toBe('pass');
  const silent = await findingOf(typed('-50 mm', ''), rule);
  expect(silent.verdict).toBe('warn');
  // 2.5 % less 1.75 %, as angles.
  expect(silent.measured?.value).toBeCloseTo(Math.tan(Math.asin(0.025) - Math.PI / 180), 9);
});

const routed = (heights: readonly [string, string], end = '-200 mm') =>
  waterPlan({
    water:
      'outlets: {sink: {thing: sink, waste_above_floor: 700 mm}}, pipes: {waste: {from: sink, to: waste tank, run: waste run, size: 40 mm}}',
    living: 'parking_slope: 0 %',
    rest: `routes:
  points:
    a: {at: {from_front: 1.2 m, from_right: 200 mm, above_floor: ${heights[0]}}}
    b: {at: {from_front: 1.2 m, from_right: 900 mm, above_floor: ${heights[1]}}}
    c: {at: {from_front: 1.25 m, centred: true, above_floor: ${end}}}
  chases:
    across: {between: [a, b], carries: [water], runs: inside}
    down: {between: [b, c], carries: [water], runs: under floor}
  runs: {waste run: {carries: water, from: sink, to: waste tank, from_point: a, to_point: c}}`,
  });

test('along a route every piece is checked, and the worst is named', async () => {
  expect(await findingOf(routed(['300 mm', '250 mm'], '-90 mm'), rule)).toMatchObject({ verdict: 'pass' });
  const climbing = await findingOf(routed(['300 mm', '310 mm'], '-90 mm'), rule);
  expect(climbing.verdict).toBe('fail');
  expect(JSON.stringify(climbing.reason)).toContain('in the chase across');
});

test('a way that ends above its last point climbs at its end', async () => {
  // The tank is filled at its top, 100 mm below the floor; the last point is 100 mm lower.
  const found = await findingOf(routed(['300 mm', '250 mm']), rule);
  expect(found.verdict).toBe('fail');
});

test('waste that comes to no tank fails', async () => {
  const text = waterPlan({
    water:
      'outlets: {sink: {thing: sink}}, tees: [tee], pipes: {waste: {from: sink, to: tee, size: 40 mm, length: 1 m, rise: -100 mm}}',
  });
  expect(only(await reportOf(text), rule, 'sink, where')).toMatchObject({ verdict: 'fail' });
});

test('an outlet without a waste pipe and a pipe without a way are not checked, in one finding', async () => {
  const text = waterPlan({
    water: 'outlets: {sink: {}, basin: {}}, pipes: {waste: {from: sink, to: waste tank, size: 40 mm}}',
  });
  expect(await findingOf(text, rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['water.pipes.NAME: {from: basin, to: waste tank}', 'water.pipes.waste.run'],
  });
});

test('where nothing drains there is nothing to fall', async () => {
  expect(await findingOf(waterPlan({ water: 'outlets: {hose: {use: outside}}' }), rule)).toMatchObject({
    verdict: 'pass',
  });
});
