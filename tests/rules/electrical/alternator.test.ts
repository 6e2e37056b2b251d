import { expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'electrical.alternator';
const text = (driving: string, volt = 12) =>
  plan(`electrical: {voltage: ${volt} V, charging_while_driving: {${driving}}}`);

// Half of what 150 A give hot: 0.5 · 0.75 · 150 = 56.25 A. A charger of η = 80 % at 14.4 V takes 14.4 / (13.5 · 0.8) =
// 4/3 of its output: 42 A take 56 A, 43 A take 57.3 A.
test.each([
  { driving: 'current: 42 A, efficiency: 80 %, alternator: 150 A', verdict: 'pass', takenA: 56 },
  { driving: 'current: 43 A, efficiency: 80 %, alternator: 150 A', verdict: 'warn', takenA: 57.3333 },
  // Exactly: 45 A take 60 A, half of the 120 A that 160 A give hot.
  { driving: 'current: 45 A, efficiency: 80 %, alternator: 160 A', verdict: 'pass', takenA: 60 },
  // Efficiency unknown: 0.85. 30 · 14.4 / (13.5 · 0.85).
  { driving: 'current: 30 A, alternator: 150 A', verdict: 'pass', takenA: 37.6471 },
])('$driving: $verdict', async ({ driving, verdict, takenA }) => {
  const finding = await findingOf(text(driving), id);
  expect(finding).toMatchObject({ verdict, path: ['electrical', 'charging_while_driving', 'current'] });
  expect(measured(finding)).toBeCloseTo(takenA, 4);
});

test('a battery of 24 V takes twice the current from the alternator', async () => {
  const driving = 'current: 21 A, efficiency: 80 %, alternator: 150 A';
  expect(measured(await findingOf(text(driving, 24), id))).toBeCloseTo(56, 10);
});

test('both remedies are enough', async () => {
  const driving = (currentA: number, alternatorA: number) =>
    text(`current: ${currentA} A, efficiency: 80 %, alternator: ${alternatorA} A`);
  const finding = await findingOf(driving(60, 150), id);
  // 60 · 56.25 / 80 = 42.19; 150 · 80 / 56.25 = 213.3.
  expect(words(finding.remedy)).toMatch(/at most 42 A, or have an alternator of at least 214 A/);
  expect((await findingOf(driving(42, 150), id)).verdict).toBe('pass');
  expect((await findingOf(driving(60, 214), id)).verdict).toBe('pass');
  expect((await findingOf(driving(60, 213), id)).verdict).toBe('warn');
});

test('not checked without the alternator or the charger', async () => {
  expect(await findingOf(text('current: 30 A'), id)).toMatchObject({
    verdict: 'not checked',
    missing: ['electrical.charging_while_driving.alternator'],
  });
  expect((await findingOf(plan('electrical: {voltage: 12 V}'), id)).missing).toEqual([
    'electrical.charging_while_driving',
  ]);
  expect((await findingOf(plan(), id)).missing).toEqual(['electrical']);
});
