import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { energyPlan } from '../../support/energy-plan.ts';

const rule = 'electrical.charge-state';
const stateOf = (battery: string) => findingOf(energyPlan({ battery }), rule);

describe('how far the battery is drawn', () => {
  test('to the bottom of the usable part, exactly what the guide keeps', async () => {
    const finding = await stateOf('{chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 200 Ah}');
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(0.2, 12);
  });
  test('a larger battery is not drawn so far', async () => {
    const finding = await stateOf('{chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 1000 Ah}');
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeGreaterThan(0.3);
  });
  test('lead drawn below half warns, whatever the plan calls usable', async () => {
    const finding = await stateOf('{chemistry: AGM, voltage: 12 V, capacity: 100 Ah, usable: 80 %}');
    expect(finding.verdict).toBe('warn');
    expect(measured(finding)).toBeCloseTo(0.2, 9);
    expect(words(finding.reason)).toContain('AGM lasts longest if it keeps 50 %.');
    // 80 Ah drawn, of which half must stay: 160 Ah.
    expect(words(finding.remedy)).toMatch(/^Fit 60 Ah more of it/);
  });
  test('lead used to half passes', async () => {
    const finding = await stateOf('{chemistry: AGM, voltage: 12 V, capacity: 100 Ah}');
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(0.5, 9);
  });
  test('what is missing', async () => {
    const finding = await findingOf(energyPlan({ living: '{nights_off_grid: 2}' }), rule);
    expect(finding.missing).toEqual(['living.place']);
  });
});
