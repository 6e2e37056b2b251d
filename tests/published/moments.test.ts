// Mass tables, moved masses, masses added and taken out, against worked examples of mass and balance training. An arm is
// a distance behind any datum; a "wheelbase" of 1 turns the rear axle's load into the moment itself.
import { describe, expect, test } from 'vitest';
import {
  axleChangeOfShift,
  axleLoads,
  centreBehindFrontAxle,
  massToShift,
  type PlacedMass,
  shiftForAxleChange,
} from '../../src/calc/axle-loads.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { exactly, expectPublished, type Published } from './agreement.ts';

const momentOf = (items: readonly PlacedMass[]): number => axleLoads(items, 1).rearKg;
const totalOf = (items: readonly PlacedMass[]): number => {
  const { frontKg, rearKg } = axleLoads(items, 1);
  return frontKg + rearKg;
};
const centreOf = (items: readonly PlacedMass[]): number => {
  const { frontKg, rearKg } = axleLoads(items, 3);
  return centreBehindFrontAxle(frontKg, rearKg, 3);
};
const at = (massKg: number, behindFrontAxleM: number): PlacedMass => ({ massKg, behindFrontAxleM });

describe('seven items in kg and m', () => {
  const source: Citation = {
    title: 'light aircraft training page, generic mass and balance worked example',
    provenance: 'read',
  };
  const items = [
    { item: 'empty mass', ...at(737, 1.04), moment: 766.48 },
    { item: 'front left', ...at(82, 0.937), moment: 76.83 },
    { item: 'front right', ...at(70, 0.937), moment: 65.59 },
    { item: 'rear left', ...at(75, 1.853), moment: 138.98 },
    { item: 'rear child', ...at(30, 1.853), moment: 55.59 },
    { item: 'baggage', ...at(8, 2.412), moment: 19.3 },
    { item: 'fuel', ...at(109, 1.219), moment: 132.87 },
  ];
  const toHundredths = (value: number): Published => ({
    value,
    within: 0.005,
    because: 'moments printed to 0.01',
  });

  test.each(items)('moment of $item', ({ massKg, behindFrontAxleM, moment }) => {
    expectPublished(momentOf([at(massKg, behindFrontAxleM)]), toHundredths(moment), source);
  });
  test('total mass', () => {
    expectPublished(totalOf(items), exactly(1111), source);
  });
  test('total moment', () => {
    const published: Published = {
      value: 1255.64,
      within: 0.02,
      because: 'the sum of seven moments that were rounded to 0.01 first',
    };
    expectPublished(momentOf(items), published, source);
  });
  test('centre of gravity (inputs read, answer recomputed)', () => {
    expect(centreOf(items)).toBeCloseTo(1.1302, 4);
  });
  test('the same loads come out about either axle', () => {
    // OpenStax University Physics Volume 1, section 12.1: the pivot is free to choose. Checked on a wheelbase of 3 m.
    const aboutRear =
      items.reduce((sum, { massKg, behindFrontAxleM }) => sum + massKg * (3 - behindFrontAxleM), 0) / 3;
    expect(axleLoads(items, 3).frontKg).toBeCloseTo(aboutRear, 9);
  });
});

describe('five items in lb and in', () => {
  const source: Citation = {
    title: "Pilot's Handbook of Aeronautical Knowledge (FAA-H-8083-25), Figure 10-5, computational method",
    readAt: 'https://flight-study.com/determining-aircraft-loaded-weight-and-center-of-gravity/',
    provenance: 'memory',
    caution:
      'weights, total and centre of gravity read; the arms and the empty weight are from memory of the figure',
  };
  const items = [at(2100, 78.3), at(340, 85), at(350, 121), at(75 * 6, 75), at(80, 150)];
  test('total weight', () => {
    expectPublished(totalOf(items), exactly(3320), source);
  });
  test('centre of gravity (arms from memory)', () => {
    expectPublished(centreOf(items), { value: 84.8, within: 0.05, because: 'printed to 0.1 in' }, source);
  });
});

describe('moving a mass', () => {
  const proportion: Citation = {
    title: "Pilot's Handbook of Aeronautical Knowledge (FAA-H-8083-25), weight and balance, weight shifting",
    provenance: 'read',
  };

  test('the mass that brings the centre to the aft limit', () => {
    expectPublished(massToShift(7800, 81.5 - 80.5, 150 - 30), exactly(65), proportion);
  });
  test('that mass, moved, puts the centre on the limit', () => {
    const moved = [at(7800, 81.5), at(-65, 150), at(65, 30)];
    expectPublished(centreOf(moved), exactly(80.5), proportion);
  });

  test.each([
    { name: 'before', items: [at(8000, 77)], moment: 616_000, centre: 77 },
    { name: 'after', items: [at(8000, 77), at(-100, 30), at(100, 150)], moment: 628_000, centre: 78.5 },
  ])('total moments $name moving 100 lb from station 30 to 150', ({ items, moment, centre }) => {
    expectPublished(momentOf(items), exactly(moment), proportion);
    expectPublished(centreOf(items), exactly(centre), proportion);
  });
  test('the change of moment, rearwards', () => {
    expectPublished(-axleChangeOfShift(100, -(150 - 30), 1), exactly(12_000), proportion);
  });
  test('the axle form of the same move, there and back', () => {
    // Moving m by d towards the front axle changes it by m · d / L (computed from the proportion above).
    const gainKg = axleChangeOfShift(65, 1.2, 3.6);
    const moved = axleLoads([at(65, 1.3)], 3.6).frontKg - axleLoads([at(65, 2.5)], 3.6).frontKg;
    expect(gainKg).toBeCloseTo(moved, 12);
    expect(shiftForAxleChange(gainKg, 65, 3.6)).toBeCloseTo(1.2, 12);
  });
});

describe('adding and taking out masses', () => {
  const fuelBurnt: Citation = {
    title: 'pilot training page, weight change formula, 120 lb of fuel burnt',
    readAt: 'https://www.runup.ca/what-is-the-weight-change-formula/',
    provenance: 'read',
  };
  const shift = centreOf([at(2450, 93), at(-120, 48)]) - 93;
  test('how far the centre moves when fuel ahead of it is burnt', () => {
    const published: Published = {
      value: 2.31,
      within: 0.01,
      because: 'cut off, not rounded: 5400 / 2330 = 2.3176',
    };
    expectPublished(Math.abs(shift), published, fuelBurnt);
  });
  test('it moves away from what was taken out, although the page says forward (negative reference)', () => {
    expect(shift).toBeGreaterThan(0);
  });

  const alterations: Citation = {
    title: 'aircraft weight and balance study question: seats out, cabinet, seat and radio in',
    readAt: 'https://aircraftweightandbal.passetra.com/question/an-aircraft-had-an-empty-57ec04b3dbfd8aff',
    provenance: 'read',
  };
  const before = [at(2886, 101_673.78 / 2886)];
  const after = [...before, at(-15, 71), at(-15, 71), at(97, 71), at(20, 71), at(30, 94)];
  const toHundredths = (value: number, within: number): Published => ({
    value,
    within,
    because: 'printed to 0.01 in',
  });

  test('new empty weight', () => {
    expectPublished(totalOf(after), exactly(3003), alterations);
  });
  test('new moment', () => {
    expectPublished(momentOf(after), exactly(110_670.78), alterations);
  });
  test('centre before', () => {
    expectPublished(centreOf(before), toHundredths(35.23, 0.005), alterations);
  });
  test('centre after', () => {
    // 36.8534, printed 36.85.
    expectPublished(centreOf(after), toHundredths(36.85, 0.005), alterations);
  });
  test('how far it moved', () => {
    expectPublished(centreOf(after) - centreOf(before), toHundredths(1.62, 0.01), alterations);
  });
});
