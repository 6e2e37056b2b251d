import { expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { waterPlan, wide } from '../../support/supply-plan.ts';
import { plan } from '../../support/test-van.ts';

const pair = (pressure: string, { flow = '5 L/min', pump = '{flow: 10 L/min, cut_out: 2 bar}' } = {}) =>
  waterPlan({
    pump,
    outlets: `{sink: {use: tap, flow: ${flow}, pressure: ${pressure}, above_floor: 0 m}, shower: {use: shower, flow: ${flow}, pressure: ${pressure}, above_floor: 0 m}}`,
    pipes: `{suction: {from: fresh tank, to: pump, ${wide}}, trunk: {from: pump, to: tee, ${wide}}, one: {from: tee, to: sink, ${wide}}, two: {from: tee, to: shower, ${wide}}}`,
    more: 'tees: [tee]',
  });
const found = async (text: string) =>
  (await reportOf(text)).findings.filter(({ rule }) => rule === 'water.two-outlets');

// Both open at half of 5 L/min: the pump gives 2 · (1 − 5/10) = 1 bar at 5 L/min in all; an outlet that lets half of its
// flow through has a quarter of its pressure, so 4 bar are exactly at the limit.
test('exactly half of what is wanted is kept', async () => {
  const [finding, ...more] = await found(pair('4 bar'));
  expect(more).toEqual([]);
  expect(finding?.verdict).toBe('pass');
  expect(finding && measured(finding)).toBeCloseTo(0.5, 9);
});

test('less than half warns, once for both', async () => {
  const [finding, ...more] = await found(pair('4.2 bar'));
  expect(more).toEqual([]);
  expect(finding).toMatchObject({ verdict: 'warn', subject: 'shower and sink' });
  expect(words(finding?.reason)).toContain('gives 2.5 L/min of cold water; 5.0 L/min are wanted');
});

// One of them 1 m up has 0.098 bar less than the other.
test.each([
  { up: 'sink: {use: tap', says: 'While shower is open too, sink gives' },
  { up: 'shower: {use: shower', says: 'While sink is open too, shower gives' },
])('the outlet that lacks most is told: $says', async ({ up, says }) => {
  const before = `${up}, flow: 5 L/min, pressure: 4.2 bar, above_floor: `;
  const text = pair('4.2 bar').replace(`${before}0 m`, `${before}1 m`);
  expect(words((await found(text))[0]?.reason)).toContain(says);
});

// At 4.2 bar: 2·(1 − 5/q) ≥ 1.05 needs q ≥ 10.53 L/min: 11 in whole litres.
test('the remedy is enough', async () => {
  const [finding] = await found(pair('4.2 bar'));
  expect(words(finding?.remedy)).toContain('a pump of 11 L/min open flow that stops at 2.00 bar');
  const mended = await found(pair('4.2 bar', { pump: '{flow: 11 L/min, cut_out: 2 bar}' }));
  expect(mended.map(({ verdict }) => verdict)).toEqual(['pass']);
});

test('the two that want most are taken', async () => {
  const findings = await found(
    waterPlan({
      outlets:
        '{little: {use: tap, flow: 1 L/min, pressure: 0.1 bar, above_floor: 0 m}, sink: {use: tap, flow: 9 L/min, pressure: 3 bar, above_floor: 0 m}, shower: {use: shower, flow: 9 L/min, pressure: 3 bar, above_floor: 0 m}}',
      pipes: `{suction: {from: fresh tank, to: pump, ${wide}}, a: {from: pump, to: little, ${wide}}, b: {from: pump, to: sink, ${wide}}, c: {from: pump, to: shower, ${wide}}}`,
    }),
  );
  expect(findings.map(({ subject }) => subject)).toEqual(['shower and sink']);
});

test('with one outlet there is nothing to share', async () => {
  expect(await findingOf(waterPlan(), 'water.two-outlets')).toMatchObject({
    verdict: 'pass',
    subject: 'outlets',
  });
});

test.each([
  { text: plan(''), missing: ['water'] },
  { text: pair('1 bar', { pump: '{flow: 10 L/min}' }), missing: ['water.pump.cut_out'] },
])('missing: $missing', async ({ text, missing }) => {
  expect(await findingOf(text, 'water.two-outlets')).toMatchObject({ verdict: 'not checked', missing });
});
