import { expect, test } from 'vitest';
import { findingOf, reportOf } from '../../support/check.ts';
import { waterPlan } from '../../support/water-plan.ts';

const rule = 'water.vents';

test.each([
  ['12 mm', 'pass'],
  ['10 mm', 'pass'],
  ['9 mm', 'warn'],
])('a vent of %s: %s', async (vent, verdict) => {
  const text = waterPlan({ fresh: `vent: ${vent}`, waste: 'vent: 20 mm' });
  const found = (await reportOf(text)).findings.filter((each) => each.rule === rule);
  expect(found.some((each) => each.verdict === verdict)).toBe(true);
  expect(found.filter(({ subject }) => subject === 'fresh tank').map((each) => each.verdict)).toEqual([
    verdict,
  ]);
});

test('a fast hose needs a wider one', async () => {
  // d = √(4·Q/(0.6·π)·√(1.225/(2·500))), Q = 200 L/min = 3.333e-3 m³/s: 15.7 mm.
  const text = (vent: string) =>
    waterPlan({ fresh: `vent: ${vent}, fill_rate: 200 L/min`, waste: 'vent: 20 mm' });
  const found = await findingOf(text('12 mm'), rule, 'fresh tank');
  expect(found.verdict).toBe('warn');
  expect(found.limit?.measure.value).toBeCloseTo(0.0157, 4);
  expect(await findingOf(text('16 mm'), rule)).toMatchObject({ verdict: 'pass' });
});

test('the pump sucks on the fresh tank, not on the waste tank', async () => {
  const found = await findingOf(
    waterPlan({ fresh: 'vent: 12 mm', waste: 'vent: 12 mm', water: 'pump: {flow: 200 L/min}' }),
    rule,
    'fresh tank',
  );
  expect(found.verdict).toBe('warn');
  expect(JSON.stringify(found.reason)).toContain('while the pump draws');
});

test('tanks of whose vents the plan is silent are not checked, in one finding', async () => {
  expect(await findingOf(waterPlan({}), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['tanks.fresh tank.vent', 'tanks.waste tank.vent'],
  });
});
