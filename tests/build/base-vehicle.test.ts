import { describe, expect, test } from 'vitest';
import { assumptionsOf, bodiesOf, bodyOf, buildOf, placeOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';
import { fuelled, totals } from '../support/totals.ts';

describe('the empty van', () => {
  const bodies = async (unladen: string, van = {}) =>
    (await buildOf(plan('', { unladen, ...van }))).bodies.filter(({ sort }) => sort === 'van');

  test('as two axle loads', async () => {
    const [front, rear, ...more] = await bodies('{front: 1190 kg, rear: 870 kg}');
    expect(more).toEqual([]);
    expect([front?.massKg, front?.position?.x.valueM]).toEqual([1190, 0]);
    expect([rear?.massKg, rear?.position?.x.valueM]).toEqual([870, 4]);
  });

  test('as four wheel loads, half a track either side', async () => {
    const found = await bodies(
      '{front_left: 594 kg, front_right: 600 kg, rear_left: 433 kg, rear_right: 437 kg}',
      { rear_track: '1.8 m' },
    );
    expect(found.map(({ massKg, position }) => [massKg, position?.x.valueM, position?.y.valueM])).toEqual([
      [594, 0, -1],
      [600, 0, 1],
      [433, 4, -0.9],
      [437, 4, 0.9],
    ]);
  });

  test('as one mass with its place', async () => {
    const [van, ...more] = await bodies('{mass: 2060 kg, behind_front_axle: 1.6 m ± 0.1 m}');
    expect(more).toEqual([]);
    expect(van?.position?.x).toEqual({
      valueM: 1.6,
      errors: [{ source: 'van.unladen.behind_front_axle', standard: 0.1 / Math.sqrt(3) }],
    });
  });

  test('as one mass without a place has none', async () => {
    const [van] = await bodies('{mass: 2060 kg}');
    expect(van?.position).toBeUndefined();
  });

  // The centre is 0.7 m above the ground and the floor 0.5 m: 0.2 m above the floor.
  test('with the height of its centre', async () => {
    const [front] = await bodies('{front: 1000 kg, rear: 1000 kg, centre_height: 0.7 m}');
    expect(front?.position?.z.valueM).toBeCloseTo(0.2, 12);
  });
});

/** 100 L of diesel, 84.5 kg, at x = 2 m. */
describe('the fuel', () => {
  const tank = '{holds: 100 L, fuel: diesel, at: {from_front: 1 m, centred: true}}';

  test.each([
    // Weighed empty of fuel: 84.5 kg come on top when it is full, none when it is empty.
    { includes: '{driver: true, fuel: 0 %}', full: 2084.5, empty: 2000 },
    // Weighed half full: 42.25 kg more when full, 42.25 kg less when empty.
    { includes: '{driver: true, fuel: 50 %}', full: 2042.25, empty: 1957.75 },
    { includes: '{driver: true, fuel: 100 %}', full: 2000, empty: 1915.5 },
    { includes: '{driver: true}', full: 2084.5, empty: 2000 },
  ])('$includes', async ({ includes, full, empty }) => {
    const build = await buildOf(
      plan('', { unladen: `{front: 1000 kg, rear: 1000 kg, includes: ${includes}}`, fuel_tank: tank }),
    );
    expect(totals(build, fuelled(build, 1)).totalKg).toBeCloseTo(full, 9);
    expect(totals(build, fuelled(build, 0)).totalKg).toBeCloseTo(empty, 9);
    // At x = 2 m of 4 m each axle has half of what changes.
    expect(totals(build, fuelled(build, 1)).frontKg).toBeCloseTo(1000 + (full - 2000) / 2, 9);
  });

  test('is in the unladen mass where the plan has no tank', async () => {
    const build = await buildOf(plan());
    expect(bodiesOf(build, 'fuel')).toEqual([]);
    expect(assumptionsOf(build).join()).toContain('fuel: all that the van carries is in its unladen mass');
  });

  test('of an electric van is no question', async () => {
    const build = await buildOf(plan('', { energy: 'electric' }));
    expect(assumptionsOf(build).join()).not.toContain('fuel');
  });

  test.each([
    { van: { fuel_tank: '{holds: 100 L}' }, massKg: 84.5, assumed: 'holds diesel' },
    { van: { fuel_tank: '{holds: 100 L}', energy: 'petrol' }, massKg: 75, assumed: 'holds petrol' },
  ])('of no kind: $assumed', async ({ van, massKg, assumed }) => {
    const build = await buildOf(plan('', van));
    expect(bodyOf(build, 'fuel').massKg).toBeCloseTo(massKg, 9);
    expect(assumptionsOf(build).join()).toContain(assumed);
  });

  // Between the axles, x = 2 m ± 2 m, and under the floor, −0.2 m ± 0.2 m.
  test('without a place is under the floor somewhere between the axles', async () => {
    const build = await buildOf(plan('', { fuel_tank: '{holds: 100 L, fuel: diesel}' }));
    expect(placeOf(build, 'fuel')).toEqual([2, 0, -0.2]);
    expect(bodyOf(build, 'fuel').position.x.errors[0]?.standard).toBeCloseTo(2 / Math.sqrt(3), 12);
    expect(assumptionsOf(build).join()).toContain('somewhere between the axles');
  });

  test('with half a place has the rest of it assumed, and says so', async () => {
    const build = await buildOf(
      plan('', { fuel_tank: '{holds: 100 L, fuel: diesel, at: {from_front: 1 m}}' }),
    );
    expect(placeOf(build, 'fuel')).toEqual([2, 0, -0.2]);
    expect(assumptionsOf(build).join()).toContain('somewhere across the width');
    expect(assumptionsOf(build).join()).toContain('under the floor');
  });
});
