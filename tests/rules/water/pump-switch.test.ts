import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { waterPlan, wide } from '../../support/supply-plan.ts';
import { plan } from '../../support/test-van.ts';

const found = (text: string) => findingOf(text, 'water.pump-switch');
const pump = (cutIn: string) => `{flow: 10 L/min, cut_out: 2 bar, ${cutIn}}`;

/** The sink takes 5 L/min at 1 bar: with it open, 1 bar stands behind the pump. */
describe('one outlet open', () => {
  test.each([
    { cutIn: 'cut_in: 1.2 bar', verdict: 'pass' },
    { cutIn: 'cut_in: 0.99 bar', verdict: 'warn' },
    // 2.0 − 0.7 bar
    { cutIn: '', verdict: 'pass' },
  ])('$cutIn: $verdict', async ({ cutIn, verdict }) => {
    const finding = await found(
      waterPlan({ pump: `{flow: 10 L/min, cut_out: 2 bar${cutIn && `, ${cutIn}`}}` }),
    );
    expect(finding.verdict).toBe(verdict);
    if (cutIn === '') expect(words(finding.reason)).toContain('1.30 bar (a usual step below');
  });

  test('exactly at the cut-in it runs on', async () => {
    expect((await found(waterPlan({ pump: pump('cut_in: 1 bar') }))).verdict).toBe('pass');
  });

  // V · (0.9 + 1.01325)·(1/1.91325 − 1/3.01325) = 0.36506·V; ten seconds of 5 L/min are 0.8333 L: V = 2.283 L.
  test('an accumulator that gives ten seconds of water is enough', async () => {
    const withIt = (holds: string) =>
      waterPlan({
        pump: pump('cut_in: 0.9 bar'),
        more: `accumulator: {holds: ${holds}, charged_to: 0.9 bar}`,
      });
    const small = await found(withIt('1 L'));
    expect(small.verdict).toBe('warn');
    expect(measured(small)).toBeCloseTo(0.36506 / (5 / 60), 3);
    expect(words(small.remedy)).toContain('an accumulator of 2.5 L, charged to 0.90 bar');
    expect((await found(withIt('2.5 L'))).verdict).toBe('pass');
  });

  test('without one there is nothing between two starts', async () => {
    const finding = await found(waterPlan({ pump: pump('cut_in: 0.9 bar') }));
    expect(measured(finding)).toBe(0);
    expect(words(finding.reason)).toContain('Without an accumulator');
  });
});

test('the switch is told once, for the outlet that is worst', async () => {
  const text = waterPlan({
    pump: pump('cut_in: 0.5 bar'),
    more: 'accumulator: {holds: 0.5 L, charged_to: 0.5 bar}',
    outlets:
      '{sink: {use: tap, flow: 5 L/min, pressure: 1 bar, above_floor: 0 m}, basin: {use: tap, flow: 4 L/min, pressure: 1 bar, above_floor: 0 m}}',
    pipes: `{suction: {from: fresh tank, to: pump, ${wide}}, one: {from: pump, to: basin, ${wide}}, two: {from: pump, to: sink, ${wide}}}`,
  });
  const finding = await found(text);
  expect(finding).toMatchObject({ verdict: 'warn', subject: 'sink, cold' });
  expect(words(finding.reason)).toContain('So it is with basin, cold.');
});

// 1.5 m of water are 0.147 bar.
test('a pump whose switch stays open under the water above it never starts: fail', async () => {
  const high = (cutIn: string) =>
    waterPlan({
      pump: pump(`cut_in: ${cutIn}`),
      outlets: '{sink: {use: tap, flow: 5 L/min, pressure: 1 bar, above_floor: 1.5 m}}',
    });
  const finding = await found(high('0.14 bar'));
  expect(finding).toMatchObject({ verdict: 'fail', subject: 'cut-in' });
  expect(words(finding.reason)).toContain('0.15 bar');
  expect((await found(high('0.15 bar'))).verdict).not.toBe('fail');
});

test.each([
  { text: plan('water: {}'), missing: ['water.pump'] },
  {
    text: waterPlan({
      pump: '{curve: [{flow: 0 L/min, pressure: 2 bar}, {flow: 10 L/min, pressure: 0 bar}]}',
    }),
    missing: ['water.pump.cut_out'],
  },
])('missing: $missing', async ({ text, missing }) => {
  expect(await found(text)).toMatchObject({ verdict: 'not checked', missing });
});
