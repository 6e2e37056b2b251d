import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { axleLoads, centreBehindFrontAxle, type PlacedMass } from '../../src/calc/axle-loads.ts';
import { heavierWheelShare, sideDifference, wheelLoads } from '../../src/calc/wheel-loads.ts';

const wheelbase = fc.double({ min: 2, max: 6, noNaN: true });
const track = fc.double({ min: 1.2, max: 2.2, noNaN: true });
const mass: fc.Arbitrary<PlacedMass> = fc.record({
  massKg: fc.double({ min: 0, max: 800, noNaN: true }),
  behindFrontAxleM: fc.double({ min: -2, max: 8, noNaN: true }),
});
const items = fc.array(mass, { maxLength: 40 });
const shift = fc.double({ min: -3, max: 3, noNaN: true });

describe('axles', () => {
  test('carry the whole between them', () => {
    fc.assert(
      fc.property(items, wheelbase, (all, lengthM) => {
        const { frontKg, rearKg } = axleLoads(all, lengthM);
        const totalKg = all.reduce((sum, { massKg }) => sum + massKg, 0);
        expect(frontKg + rearKg).toBeCloseTo(totalKg, 8);
      }),
    );
  });

  // The same moments about the other axle: R_f = Σ m (L − x) / L.
  test('come out the same about either of them', () => {
    fc.assert(
      fc.property(items, wheelbase, (all, lengthM) => {
        const aboutRear = all.map((item) => ({
          ...item,
          behindFrontAxleM: lengthM - item.behindFrontAxleM,
        }));
        expect(axleLoads(aboutRear, lengthM).rearKg).toBeCloseTo(axleLoads(all, lengthM).frontKg, 8);
      }),
    );
  });

  test('exchange m·dx / L when a mass moves by dx', () => {
    fc.assert(
      fc.property(items, mass, shift, wheelbase, (all, moved, byM, lengthM) => {
        const before = axleLoads([...all, moved], lengthM);
        const after = axleLoads(
          [...all, { ...moved, behindFrontAxleM: moved.behindFrontAxleM + byM }],
          lengthM,
        );
        const expectedKg = (moved.massKg * byM) / lengthM;
        expect(after.rearKg - before.rearKg).toBeCloseTo(expectedKg, 8);
        expect(before.frontKg - after.frontKg).toBeCloseTo(expectedKg, 8);
      }),
    );
  });

  test('are relieved in front by exactly what lies behind the rear axle, and never more loaded', () => {
    fc.assert(
      fc.property(items, wheelbase, fc.double({ min: 0.01, max: 3, noNaN: true }), (all, lengthM, m) => {
        const added = { massKg: 100, behindFrontAxleM: lengthM + m };
        const change = axleLoads([...all, added], lengthM).frontKg - axleLoads(all, lengthM).frontKg;
        expect(change).toBeCloseTo((-100 * m) / lengthM, 8);
        expect(change).toBeLessThan(0);
      }),
    );
  });

  test('say where the centre is, and it is between the outermost masses', () => {
    const some = fc.array(
      mass.map((each) => ({ ...each, massKg: each.massKg + 1 })),
      { minLength: 1 },
    );
    fc.assert(
      fc.property(some, wheelbase, (all, lengthM) => {
        const { frontKg, rearKg } = axleLoads(all, lengthM);
        const centreM = centreBehindFrontAxle(frontKg, rearKg, lengthM);
        const places = all.map(({ behindFrontAxleM }) => behindFrontAxleM);
        expect(centreM).toBeGreaterThanOrEqual(Math.min(...places) - 1e-9);
        expect(centreM).toBeLessThanOrEqual(Math.max(...places) + 1e-9);
      }),
    );
  });
});

describe('wheels', () => {
  const axle = fc.double({ min: 1, max: 3000, noNaN: true });
  const place = fc.double({ min: -2, max: 2, noNaN: true });

  test('carry the axle between them', () => {
    fc.assert(
      fc.property(axle, place, track, (axleKg, y, trackM) => {
        const { leftKg, rightKg } = wheelLoads(axleKg, y, trackM);
        expect(leftKg + rightKg).toBeCloseTo(axleKg, 8);
      }),
    );
  });

  test('differ by 2·m·dy / T more when a mass moves across by dy', () => {
    fc.assert(
      fc.property(axle, place, shift, track, (massKg, y, byM, trackM) => {
        const before = wheelLoads(massKg, y, trackM);
        const after = wheelLoads(massKg, y + byM, trackM);
        const change = after.rightKg - after.leftKg - (before.rightKg - before.leftKg);
        expect(change).toBeCloseTo((2 * massKg * byM) / trackM, 7);
      }),
    );
  });

  test('are mirror images of each other', () => {
    fc.assert(
      fc.property(axle, place, track, (axleKg, y, trackM) => {
        const here = wheelLoads(axleKg, y, trackM);
        const mirrored = wheelLoads(axleKg, -y, trackM);
        expect(mirrored.leftKg).toBeCloseTo(here.rightKg, 8);
        expect(mirrored.rightKg).toBeCloseTo(here.leftKg, 8);
      }),
    );
  });

  // 52 % on the heavier wheel is a side difference of 4 %: two published limits that say the same.
  test('have a side difference of twice what the heavier one has above a half', () => {
    fc.assert(
      fc.property(axle, place, track, (axleKg, y, trackM) => {
        const { leftKg, rightKg } = wheelLoads(axleKg, y, trackM);
        expect(sideDifference(leftKg, rightKg)).toBeCloseTo(2 * heavierWheelShare(leftKg, rightKg) - 1, 8);
      }),
    );
  });
});
