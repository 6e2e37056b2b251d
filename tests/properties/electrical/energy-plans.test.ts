import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { imbalanceWh } from '../../../src/calc/energy/year.ts';
import { buildOf } from '../../support/check.ts';
import { energyPlan } from '../../support/energy-plan.ts';

const plans = fc.record({
  arrayW: fc.integer({ min: 10, max: 1500 }),
  tilt: fc.integer({ min: 0, max: 90 }),
  batteryAh: fc.integer({ min: 20, max: 600 }),
  chemistry: fc.constantFrom('lithium iron phosphate', 'AGM', 'gel', 'flooded lead'),
  fridgeW: fc.integer({ min: 1, max: 200 }),
  hours: fc.integer({ min: 0, max: 24 }),
  evening: fc.integer({ min: 0, max: 5 }),
  drivingMinutes: fc.integer({ min: 0, max: 300 }),
  shoreNights: fc.integer({ min: 0, max: 28 }),
  latitude: fc.integer({ min: -90, max: 90 }),
  longitude: fc.integer({ min: -180, max: 180 }),
  sun: fc.array(fc.integer({ min: 0, max: 8000 }), { minLength: 12, maxLength: 12 }),
});
type Drawn = typeof plans extends fc.Arbitrary<infer T> ? T : never;

const planOf = (each: Drawn): string =>
  energyPlan({
    battery: `{chemistry: ${each.chemistry}, voltage: ${each.chemistry.startsWith('lithium') ? 12.8 : 12} V, capacity: ${each.batteryAh} Ah}`,
    fridge: `load: ${each.fridgeW} W, hours: ${each.hours} h`,
    lamps: `load: 20 W, hours: {summer: 0 h, winter: ${each.evening} h}, when: evening`,
    more: `  solar: {roof: {modules: 1, power: ${each.arrayW} W, open_circuit: 22 V, short_circuit: 6 A, tilt_degrees: ${each.tilt}}}
  charging_while_driving: {current: 30 A}
  shore: {current: 10 A, charger: {current: 20 A}}`,
    living: `{place: {latitude: ${each.latitude}, longitude: ${each.longitude}}, sun: [${each.sun.map((value) => `${value} Wh/m2`).join(', ')}], driving: ${each.drivingMinutes} min, shore_nights: ${each.shoreNights}}`,
  });

async function workedOf(each: Drawn) {
  const { energy } = await buildOf(planOf(each));
  if (!energy?.worked) throw new Error(`not worked out: ${energy?.missing.join(', ')}`);
  return energy.worked;
}

const runs = { numRuns: 25 };
/** What sums of 744 hours gather of rounding, Wh. */
const roundingWh = 1e-6;

describe('a plan’s year of energy', () => {
  test('every hour closes, and the months add up to what the hours miss', async () => {
    await fc.assert(
      fc.asyncProperty(plans, async (each) => {
        const { year, months } = await workedOf(each);
        let worst = 0;
        for (let hour = 0; hour < 8760; hour += 1)
          worst = Math.max(worst, Math.abs(imbalanceWh(year.ledger, hour)));
        expect(worst).toBeLessThanOrEqual(1e-9);
        for (const { month, typicalUnmetWh, dullUnmetWh } of months)
          expect(typicalUnmetWh + dullUnmetWh).toBeCloseTo(year.months[month]?.unmetWh ?? Number.NaN, 6);
      }),
      runs,
    );
  });

  test('more array never leaves more unmet, nor does more driving', async () => {
    await fc.assert(
      fc.asyncProperty(plans, fc.integer({ min: 1, max: 500 }), async (each, more) => {
        const before = await workedOf(each);
        for (const changed of [
          { ...each, arrayW: each.arrayW + more },
          { ...each, drivingMinutes: each.drivingMinutes + more },
        ]) {
          const after = await workedOf(changed);
          for (const [month, { unmetWh }] of after.year.months.entries())
            expect(unmetWh).toBeLessThanOrEqual(
              (before.year.months[month]?.unmetWh ?? Number.NaN) + roundingWh,
            );
        }
      }),
      runs,
    );
  });
});
