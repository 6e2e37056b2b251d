import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { waterPlan, wide } from '../../support/supply-plan.ts';
import { plan } from '../../support/test-van.ts';

/** Without a pump the flow is what is wanted. */
const hot = (pipe: string, { flow = '5 L/min', pump = '{}', use = 'tap', rest = '' } = {}) =>
  waterPlan({
    pump,
    outlets: `{sink: {use: ${use}, flow: ${flow}, pressure: 0.3 bar, above_floor: 0 m}}`,
    pipes: `{suction: {from: fresh tank, to: pump, ${wide}}, to heater: {from: pump, to: heater, ${wide}}, hot: {from: heater, to: sink, ${pipe}}}`,
    more: 'heater: {kind: storage, holds: 10 L}',
    rest,
  });
const found = (text: string) => findingOf(text, 'water.hot-wait');

/** A bore of 10 mm holds π/4 · 0.01² = 0.07854 L a metre; with the wall a fifth more, 0.09425 L. At 1 L/min: 5.655 s a metre. */
describe('waiting at 1 L/min', () => {
  test.each([
    { lengthM: 5.3, seconds: 29.97, verdict: 'pass' },
    { lengthM: 5.32, seconds: 30.08, verdict: 'warn' },
    { lengthM: 10.6, seconds: 59.94, verdict: 'warn' },
    { lengthM: 10.62, seconds: 60.05, verdict: 'fail' },
  ])('$lengthM m: $seconds s, $verdict', async ({ lengthM, seconds, verdict }) => {
    const finding = await found(hot(`bore: 10 mm, length: ${lengthM} m`, { flow: '1 L/min' }));
    expect(finding.verdict).toBe(verdict);
    expect(measured(finding)).toBeCloseTo(seconds, 1);
  });

  test('the remedy says how long it may be', async () => {
    const finding = await found(hot('bore: 10 mm, length: 8 m', { flow: '1 L/min' }));
    // 30 s of 1 L/min are 0.5 L, of which five sixths stand in the pipe: 0.41667 / 0.07854 = 5.305 m
    expect(words(finding.remedy)).toContain('no longer than 5305 mm');
  });

  test('a plan may take another limit', async () => {
    const text = hot('bore: 10 mm, length: 8 m', {
      flow: '1 L/min',
      rest: 'rules: {water.hot-wait: {limit: 50 s, reason: the water is caught in a jug}}',
    });
    expect((await found(text)).verdict).toBe('pass');
  });
});

// A bore of 20 mm holds 0.31416 L a metre: a litre at 3.183 m, in 14 s at 5 L/min.
test('a litre is too much for a tank, however soon it has run off', async () => {
  expect((await found(hot('bore: 20 mm, length: 3.18 m'))).verdict).toBe('pass');
  const finding = await found(hot('bore: 20 mm, length: 3.2 m'));
  expect(finding).toMatchObject({ verdict: 'warn', measured: { kind: 'volume' } });
});

test('a litre is exactly kept', async () => {
  // π/4 · D² · 1 m = 1 L
  const boreMm = Math.sqrt(0.004 / Math.PI) * 1000;
  expect((await found(hot(`bore: ${boreMm} mm, length: 1 m`))).verdict).toBe('pass');
});

test('the narrower size is the remedy, and is enough', async () => {
  const text = (pipe: string) => hot(`${pipe}, length: 8 m`, { pump: '{flow: 10 L/min, cut_out: 2 bar}' });
  const finding = await found(text('material: copper, size: 22 mm'));
  expect(words(finding.remedy)).toContain('Take 12 mm copper');
  expect((await found(text('material: copper, size: 12 mm'))).verdict).toBe('pass');
});

test('where walls differ, the widest bore stands full', async () => {
  // 15 mm copper, 0.7 mm wall: 0.14527 L a metre, 0.1743 L with the wall: 2 m at 5 L/min in 4.18 s.
  expect(measured(await found(hot('material: copper, size: 15 mm, length: 2 m')))).toBeCloseTo(4.184, 2);
});

test('what really flows counts where it is known', async () => {
  const slow = await found(hot('bore: 10 mm, length: 4 m', { pump: '{flow: 2 L/min, cut_out: 2 bar}' }));
  expect(words(slow.reason)).toContain('that flow');
  expect(measured(slow)).toBeGreaterThan(measured(await found(hot('bore: 10 mm, length: 4 m'))));
});

describe('a day', () => {
  test('a tap is drawn from cold three times', async () => {
    const finding = await found(hot('bore: 10 mm, length: 10 m'));
    // 3 · 0.9425 L
    expect(words(finding.reason)).toContain(
      '0.9 L go down the drain. With 3 draws a day from a cold pipe that makes 2.8 L a day.',
    );
  });

  test('a shower as often as people shower', async () => {
    const finding = await found(
      hot('bore: 10 mm, length: 10 m', {
        use: 'shower',
        rest: 'people: {sleepers: [{}, {}]}\nliving: {showers_per_person_day: 0.75, litres_per_shower: 10 L}',
      }),
    );
    expect(words(finding.reason)).toContain('With 1.5 draws a day');
  });
});

test.each([
  { text: plan('water: {}'), missing: ['water.heater'] },
  { text: waterPlan({ more: 'heater: {kind: storage}' }), missing: ['water.pipes.NAME.from'] },
  {
    text: hot('material: PEX'),
    missing: ['water.pipes.hot.size', 'water.pipes.hot.length'],
  },
])('missing: $missing', async ({ text, missing }) => {
  expect(await found(text)).toMatchObject({ verdict: 'not checked', missing });
});
