import { describe, expect, test } from 'vitest';
import { fannedPlan } from '../../support/air-plan.ts';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'air.fans';
const roof = 'roof: {in: ceiling, free_area: 400 cm2, closes: false}';
const floor = (cm2: number, more = '') => `floor: {in: floor, free_area: ${cm2} cm2, closes: false${more}}`;
const fan = (more = '') => `fan: {vent: roof, blows: exhaust, flow: 360 m3/h, pressure: 50 Pa${more}}`;

/** 0.61 · √(2 / 1.1989): m³/s through 1 m² at 1 Pa. */
const unit = 0.61 * Math.sqrt(2 / 1.1989);

test('what a fan moves is where its curve meets the opening', async () => {
  const finding = await findingOf(fannedPlan(`${roof}, ${floor(100)}`, fan()), id);
  const flow = measured(finding);
  // On the line from 0.1 m³/s at 0 Pa to nothing at 50 Pa, and on the orifice of 100 cm².
  const depression = 50 * (1 - flow / 0.1);
  expect(flow).toBeCloseTo(unit * 0.01 * Math.sqrt(depression), 9);
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toContain(
    'with 100 cm² of other vents open (floor) and windows and doors shut',
  );
});

test('without an opening that lets air in it moves nothing, and the area is told', async () => {
  const finding = await findingOf(fannedPlan(roof, fan()), id);
  expect(finding.verdict).toBe('warn');
  expect(measured(finding)).toBeCloseTo(0, 9);
  expect(words(finding.reason)).toContain('with no vent to let air in');
  // 70 m³/h are 0.019444 m³/s at 50 · (1 − 0.19444) = 40.28 Pa: 0.019444 / (0.7879 · √40.28) m².
  expect(words(finding.remedy)).toContain('Open 39 cm² more, such as a window');
});

test('exactly 70 m³/h is kept', async () => {
  const flow = 70 / 3600;
  const cm2 = (flow / (unit * Math.sqrt(50 * (1 - flow / 0.1)))) * 1e4;
  expect((await findingOf(fannedPlan(`${roof}, ${floor(cm2)}`, fan()), id)).verdict).toBe('pass');
  expect((await findingOf(fannedPlan(`${roof}, ${floor(cm2 * 0.99)}`, fan()), id)).verdict).toBe('warn');
});

test('a vent of a locker lets no air into the room', async () => {
  const text = `fixtures: {box: {mass: 1 kg}}\n`;
  const finding = await findingOf(fannedPlan(`${roof}, ${floor(100, ', serves: box')}`, fan(), text), id);
  expect(finding.verdict).toBe('warn');
});

describe('pairs', () => {
  const at = (x: number, name: string) =>
    `${name}: {in: ceiling, free_area: 400 cm2, closes: false, at: {from_front: ${x} mm, centred: true}}`;
  const both = `out: {vent: front, blows: exhaust, flow: 360 m3/h, pressure: 50 Pa}, into: {vent: rear, blows: intake, flow: 360 m3/h, pressure: 50 Pa}`;

  test('at opposite ends move their full flow without any vent', async () => {
    const finding = await findingOf(fannedPlan(`${at(500, 'front')}, ${at(3500, 'rear')}`, both), id);
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(0.1, 6);
  });

  test('less than a metre apart blow past the room', async () => {
    const report = await reportOf(fannedPlan(`${at(500, 'front')}, ${at(1400, 'rear')}`, both));
    const found = report.findings.filter(({ rule }) => rule === id);
    expect(found.map(({ verdict }) => verdict)).toEqual(['warn', 'warn']);
    expect(words(found[0]?.remedy)).toContain('1000 mm or more apart');
    // Exactly a metre is far enough.
    expect((await findingOf(fannedPlan(`${at(500, 'front')}, ${at(1500, 'rear')}`, both), id)).verdict).toBe(
      'pass',
    );
  });
});

test('not checked: no fan, or one that says too little', async () => {
  expect((await findingOf(plan(), id)).missing).toEqual(['air.fans']);
  expect((await findingOf(fannedPlan(roof, 'fan: {vent: roof}'), id)).missing).toEqual([
    'air.fans.fan.blows',
    'air.fans.fan.flow',
    'air.fans.fan.pressure',
  ]);
});
