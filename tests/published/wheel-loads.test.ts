// Left and right: what "4 % over the wheel load" means.
import { describe, expect, test } from 'vitest';
import { heavierWheelShare, rightShare, sideDifference, wheelLoads } from '../../src/calc/wheel-loads.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { exactly, expectPublished } from './agreement.ts';

const source: Citation = {
  title: 'Light truck body/equipment mounting directives, issue 20.10.2020, clause 4.2.1',
  provenance: 'read',
  caution: '4 % of half the axle: 2 % of the axle on one wheel, 4 % of the axle between the wheels',
};

describe('an axle of 5000 kg with 4 % over the wheel load', () => {
  // Its centre lies 2 % of the track beside the middle: 1/2 + 0.02 = 0.52.
  const trackM = 1.7;
  const toTheRight = wheelLoads(5000, 0.02 * trackM, trackM);
  const toTheLeft = wheelLoads(5000, -0.02 * trackM, trackM);

  test('the heavier wheel', () => {
    expectPublished(toTheRight.rightKg, exactly(2600), source);
    expectPublished(toTheLeft.leftKg, exactly(2600), source);
  });
  test('the lighter wheel', () => {
    expectPublished(toTheRight.leftKg, exactly(2400), source);
    expectPublished(toTheLeft.rightKg, exactly(2400), source);
  });
  test('the heavier wheel is 4 % above half the axle', () => {
    expectPublished(heavierWheelShare(2400, 2600) / 0.5, exactly(1.04), source);
  });
  test('the heavier wheel carries 52 % of the axle, on whichever side', () => {
    expectPublished(heavierWheelShare(2400, 2600), exactly(0.52), source);
    expectPublished(heavierWheelShare(2600, 2400), exactly(0.52), source);
  });
  test('the difference between the sides is 4 % of the axle', () => {
    expectPublished(sideDifference(2400, 2600), exactly(0.04), source);
    expectPublished(sideDifference(2600, 2400), exactly(0.04), source);
  });
  test('the two measures agree: the difference is twice the heavier share less one', () => {
    expect(sideDifference(700, 900)).toBeCloseTo(2 * heavierWheelShare(700, 900) - 1, 12);
  });
});

describe('the place across the vehicle (from the definition)', () => {
  test.each([
    { place: 'on the left wheel', rightOfCentreM: -0.85, share: 0 },
    { place: 'in the middle', rightOfCentreM: 0, share: 0.5 },
    { place: 'on the right wheel', rightOfCentreM: 0.85, share: 1 },
    { place: 'outside the right wheel', rightOfCentreM: 1.02, share: 1.1 },
  ])('$place', ({ rightOfCentreM, share }) => {
    expect(rightShare(rightOfCentreM, 1.7)).toBeCloseTo(share, 12);
  });
});
