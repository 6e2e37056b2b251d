import { expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { waterPlan, wide } from '../../support/supply-plan.ts';
import { plan } from '../../support/test-van.ts';

const suction = (text: string) => findingOf(text, 'water.suction');
const lifted = (rise: string, pipe = wide) =>
  waterPlan({ pipes: `{suction: {from: fresh tank, to: pump, rise: ${rise}, ${pipe}}}` });

test('a pump beside the tank: pass', async () => {
  const finding = await suction(lifted('0 m'));
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toContain('the water runs to it');
});

test.each([
  { rise: '1.8 m', verdict: 'pass' },
  { rise: '1.81 m', verdict: 'warn' },
  { rise: '10 m', verdict: 'warn' },
  { rise: '10.1 m', verdict: 'fail' },
])('$rise: $verdict', async ({ rise, verdict }) => {
  const finding = await suction(lifted(rise));
  expect(finding.verdict).toBe(verdict);
  expect(measured(finding)).toBeCloseTo(Number.parseFloat(rise), 6);
});

// 8 mm hose at 10 L/min: v = 3.316 m/s, Re = 20 300, f = 0.0278; 3 m lose 10.4 velocity heads of 0.561 m: 5.8 m.
test('a narrow suction is as bad as a high one', async () => {
  const finding = await suction(lifted('0 m', 'material: hose, size: 8 mm, length: 3 m'));
  expect(finding.verdict).toBe('warn');
  expect(measured(finding)).toBeGreaterThan(5.6);
  expect(measured(finding)).toBeLessThan(6.1);
  expect(words(finding.remedy)).toContain('wider or shorter');
});

test('heights come from the places of tank and pump', async () => {
  const finding = await suction(
    waterPlan({
      pump: '{thing: pump, flow: 10 L/min}',
      pipes: `{suction: {from: fresh tank, to: pump, ${wide}}}`,
      rest: 'fixtures: {pump: {mass: 2 kg, size: {length: 200 mm, width: 200 mm, height: 100 mm}, at: {from_front: 1 m, centred: true, above_floor: 350 mm}}}',
    }),
  );
  // The middle of the pump is at 400 mm, the bottom of the tank on the floor.
  expect(measured(finding)).toBeCloseTo(0.4, 6);
});

test.each([
  { text: plan('water: {}'), missing: ['water.pump'] },
  { text: waterPlan({ pipes: '' }), missing: ['water.pipes.NAME.to'] },
  {
    text: waterPlan({ pipes: '{s: {from: fresh tank, to: pump, rise: 1 m, bore: 8 mm}}' }),
    missing: ['water.pipes.s.length'],
  },
  { text: waterPlan(), missing: ['water.pump.thing'] },
  {
    text: waterPlan({ pump: '{}', pipes: `{s: {from: fresh tank, to: pump, rise: 1 m, ${wide}}}` }),
    missing: ['water.pump.flow'],
  },
])('missing: $missing', async ({ text, missing }) => {
  expect(await suction(text)).toMatchObject({ verdict: 'not checked', missing });
});
