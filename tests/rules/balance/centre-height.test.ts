import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { fixtureAtHeight, plan } from '../../support/test-van.ts';

const height = (text: string) => findingOf(text, 'balance.centre-height');
const unladen = (centre: string) =>
  `{front: 1000 kg, rear: 1000 kg, from: weighbridge, includes: {driver: true}, centre_height: ${centre}}`;
const floor = (aboveGround: string) =>
  `{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, floor_above_ground: ${aboveGround}}`;
const van = { unladen: unladen('0.7 m'), centre_limits: '{height: 960 mm}' };

/** The empty van's centre is 0.7 m above the ground, the floor 0.5 m. */
describe('500 kg up high', () => {
  // At 1.4 m above the floor, 1.9 m above ground: (2000 · 0.7 + 500 · 1.9) / 2500 = 0.94 m.
  test('pass', async () => {
    const finding = await height(plan(fixtureAtHeight('1.4 m', '500 kg'), van));
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(0.94, 12);
  });

  // At 1.5 m: (1400 + 500 · 2.0) / 2500 = 0.96 m.
  test('exactly at the limit is kept', async () => {
    expect((await height(plan(fixtureAtHeight('1.5 m', '500 kg'), van))).verdict).toBe('pass');
  });

  // At 1.51 m: 0.962 m. The limit is the maker's, so it fails.
  test('just over fails', async () => {
    const finding = await height(plan(fixtureAtHeight('1.51 m', '500 kg'), van));
    expect(finding.verdict).toBe('fail');
    expect(finding.margin?.value).toBeCloseTo(-0.002, 9);
    expect(words(finding.remedy)).toContain('2 mm lower on average');
  });

  // At 1.45 m: 0.95 m. 10 mm are within U where the place is ± 0.1 m: u = 500 · 0.1 / √3 / 2500 = 11.5 mm.
  test('the limit within the tolerance warns', async () => {
    const finding = await height(plan(fixtureAtHeight('1.45 m ± 0.1 m', '500 kg'), van));
    expect(finding.verdict).toBe('warn');
    expect(finding.tolerance?.value).toBeCloseTo((2 * 500 * 0.1) / Math.sqrt(3) / 2500, 12);
  });
});

describe('tolerances of the heights', () => {
  // The empty van is four fifths of the mass: 0.8 · 0.03 / √3.
  test("the empty van's centre counts with its share of the mass", async () => {
    const finding = await height(
      plan(fixtureAtHeight('1 m', '500 kg'), { ...van, unladen: unladen('0.7 m ± 0.03 m') }),
    );
    expect(finding.tolerance?.value).toBeCloseTo((2 * 0.8 * 0.03) / Math.sqrt(3), 12);
  });

  // The floor lifts what stands on it, a fifth of the mass; the empty van's own centre was given above ground.
  test("the floor's height counts for what stands on it only", async () => {
    const finding = await height(
      plan(fixtureAtHeight('1 m', '500 kg'), { ...van, load_bay: floor('0.5 m ± 0.05 m') }),
    );
    expect(finding.tolerance?.value).toBeCloseTo((2 * 0.2 * 0.05) / Math.sqrt(3), 12);
  });

  test('an empty van does not care how high its floor is', async () => {
    const finding = await height(plan('', { ...van, load_bay: floor('0.5 m ± 0.05 m') }));
    expect(measured(finding)).toBeCloseTo(0.7, 12);
    expect(finding.tolerance?.value ?? 0).toBeCloseTo(0, 12);
  });
});

// 100 L at 2.3 m above ground raise the centre; 100 L under the floor, at 0.2 m, would lower it. Highest: the roof tank
// full, the other empty. (2000 · 0.7 + 100 · 2.3) / 2100 = 0.776 m.
test('the worst state has the low tanks empty', async () => {
  const tanks = `tanks:
  roof tank: {contents: fresh, holds: 100 L, at: {from_front: 1 m, centred: true, above_floor: 1.8 m}}
  low tank: {contents: waste, holds: 100 L, at: {from_front: 1 m, centred: true, above_floor: -0.3 m}}`;
  const finding = await height(plan(tanks, van));
  expect(measured(finding)).toBeCloseTo((1400 + 230) / 2100, 12);
  expect(finding.worstState?.text).toBe('fresh full, waste empty, 1 aboard');
});

test('without a limit the figure is shown, and not checked', async () => {
  const finding = await height(
    plan(fixtureAtHeight('1.4 m', '500 kg'), { ...van, centre_limits: undefined }),
  );
  expect(finding).toMatchObject({ verdict: 'not checked', missing: ['van.centre_limits.height'] });
  expect(measured(finding)).toBeCloseTo(0.94, 12);
});

test.each([
  {
    lacks: 'floor_above_ground',
    changes: { load_bay: '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m}' },
    missing: ['van.load_bay.floor_above_ground'],
  },
  {
    lacks: 'centre_height',
    changes: { unladen: '{front: 1000 kg, rear: 1000 kg, from: weighbridge, includes: {driver: true}}' },
    missing: ['van.unladen.centre_height'],
  },
  {
    lacks: 'both and the wheelbase',
    changes: {
      load_bay: '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m}',
      unladen: '{front: 1000 kg, rear: 1000 kg, from: weighbridge, includes: {driver: true}}',
      wheelbase: undefined,
    },
    missing: ['van.wheelbase', 'van.load_bay.floor_above_ground', 'van.unladen.centre_height'],
  },
])('without $lacks it is not checked', async ({ changes, missing }) => {
  expect(await height(plan('', { ...van, ...changes }))).toMatchObject({ verdict: 'not checked', missing });
});
