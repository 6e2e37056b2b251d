import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { fixtureAtHeight, plan } from '../../support/test-van.ts';

const stability = (text: string) => findingOf(text, 'balance.stability');
const unladen = (centre: string) =>
  `{front: 1000 kg, rear: 1000 kg, from: weighbridge, includes: {driver: true}, centre_height: ${centre}}`;
const van = { unladen: unladen('0.7 m') };

/** SSF = T / (2 h), at least 1.04; empty 2 / 1.4 = 1.43. The floor is 0.5 m above the ground. */
describe('500 kg up high', () => {
  // h = (2000 · 0.7 + 500 · 2.0) / 2500 = 0.96 m: 2 / 1.92 = 1.0417.
  test('pass', async () => {
    const finding = await stability(plan(fixtureAtHeight('1.5 m', '500 kg'), van));
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(2 / 1.92, 12);
    expect(words(finding.reason)).toContain('960 mm above the ground');
  });

  // A track of 2.08 m and h = (1400 + 500 · 2.2) / 2500 = 1 m: 2.08 / 2 = 1.04.
  test('exactly at the limit is kept', async () => {
    const finding = await stability(plan(fixtureAtHeight('1.7 m', '500 kg'), { ...van, track: '2.08 m' }));
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(1.04, 12);
  });

  // h = (1400 + 500 · 2.21) / 2500 = 1.002 m: 1.0379. It is a yardstick and no law, so it warns.
  test('just below warns', async () => {
    const finding = await stability(plan(fixtureAtHeight('1.71 m', '500 kg'), { ...van, track: '2.08 m' }));
    expect(finding.verdict).toBe('warn');
    expect(words(finding.remedy)).toContain('down by 2 mm');
  });

  // h = 0.96 m, u(h) = 500 · 0.05 / √3 / 2500 = 5.77 mm; u(SSF) = SSF · u(h) / h = 0.00627, U = 0.0125 > 0.0017.
  test('the limit within the tolerance warns', async () => {
    const finding = await stability(plan(fixtureAtHeight('1.5 m ± 0.05 m', '500 kg'), van));
    expect(finding.verdict).toBe('warn');
    const u = (500 * 0.05) / Math.sqrt(3) / 2500;
    expect(finding.tolerance?.value).toBeCloseTo((2 * (2 / 1.92) * u) / 0.96, 12);
  });
});

// 1.8 m at the rear is the narrower: 1.8 / 1.4.
test('the narrower track counts', async () => {
  expect(measured(await stability(plan('', { ...van, rear_track: '1.8 m' })))).toBeCloseTo(1.8 / 1.4, 12);
  expect(measured(await stability(plan('', { ...van, rear_track: '2.2 m' })))).toBeCloseTo(2 / 1.4, 12);
});

// 25 m instead of 25 mm below the floor.
test('a centre of mass below the ground is a slip in the plan, not a stable van', async () => {
  const finding = await stability(plan(fixtureAtHeight('-25 m', '500 kg'), van));
  expect(finding.verdict).toBe('warn');
  expect(words(finding.reason)).toContain('below the ground');
  expect(words(finding.remedy)).toContain('wrong unit');
});

test('never says that a van is safe', async () => {
  const finding = await stability(plan('', van));
  expect(finding.cautions.join()).toContain('no figure here says how a van handles');
});

test.each([
  { lacks: 'track', changes: { track: undefined }, missing: ['van.track'] },
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
])('without $lacks it is not checked', async ({ changes, missing }) => {
  expect(await stability(plan('', { ...van, ...changes }))).toMatchObject({
    verdict: 'not checked',
    missing,
  });
});
