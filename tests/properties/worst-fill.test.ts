import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type RatioMass, type VariableMass, worstFill, worstRatio } from '../../src/calc/worst-fill.ts';

type Range = Omit<VariableMass, 'effect'>;

/**
 * Every corner of { least ≤ m ≤ most, sum of the sharers ≤ supply }: all at an end, or all but one, a sharer that gets
 * exactly what the others leave it. Where even the least of the sharers is too much, they are at their least.
 */
function* corners(masses: readonly Range[], supplyKg: number): Generator<number[]> {
  const room = supplyKg - masses.reduce((sum, { shares, leastKg }) => sum + (shares ? leastKg : 0), 0);
  for (let between = -1; between < masses.length; between += 1) {
    if (between === -1 || masses[between]?.shares) yield* cornersWith(masses, between, Math.max(0, room));
  }
}

/** The corners in which this one mass, if there is such a one, is between its ends. */
function* cornersWith(masses: readonly Range[], between: number, room: number): Generator<number[]> {
  const chosen = masses.map(({ leastKg }) => leastKg);
  const last = masses[between];
  function* go(index: number, left: number): Generator<number[]> {
    const mass = masses[index];
    if (left < 0) return;
    if (!mass) {
      if (!last) yield [...chosen];
      else if (left > 0 && left < last.mostKg - last.leastKg)
        yield chosen.map((kg, each) => (each === between ? last.leastKg + left : kg));
      return;
    }
    yield* go(index + 1, left);
    if (index === between || mass.mostKg === mass.leastKg) return;
    chosen[index] = mass.mostKg;
    yield* go(index + 1, mass.shares ? left - (mass.mostKg - mass.leastKg) : left);
    chosen[index] = mass.leastKg;
  }
  yield* go(0, room);
}

/** Zero, ties and both signs on purpose. */
const effect = fc.oneof(fc.integer({ min: -3, max: 3 }), fc.double({ min: -2, max: 2, noNaN: true }));
const range: fc.Arbitrary<Range> = fc
  .tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 0, max: 30 }), fc.boolean())
  .map(([leastKg, extent, shares]) => ({ leastKg, mostKg: leastKg + extent, shares }));
const supply = fc.oneof(
  fc.integer({ min: 0, max: 40 }),
  fc.integer({ min: 0, max: 600 }),
  fc.double({ min: 0, max: 200, noNaN: true }),
);

const masses = fc.array(
  fc.tuple(range, effect).map(([ends, each]): VariableMass => ({ ...ends, effect: each })),
  { maxLength: 12 },
);

const sumOf = (all: readonly VariableMass[], chosen: readonly number[]): number =>
  all.reduce((sum, mass, index) => sum + mass.effect * (chosen[index] ?? 0), 0);

/** Within the ends, and the sharers within the supply or at their least. */
function expectFeasible(all: readonly Range[], chosen: readonly number[], supplyKg: number): void {
  expect(chosen).toHaveLength(all.length);
  let shared = 0;
  let sharedLeast = 0;
  all.forEach(({ leastKg, mostKg, shares }, index) => {
    const kg = chosen[index] ?? Number.NaN;
    expect(kg).toBeGreaterThanOrEqual(leastKg);
    expect(kg).toBeLessThanOrEqual(mostKg + 1e-9);
    if (shares) {
      shared += kg;
      sharedLeast += leastKg;
    }
  });
  expect(shared).toBeLessThanOrEqual(Math.max(supplyKg, sharedLeast) + 1e-9);
}

describe('the greatest sum', () => {
  test('is that of the best corner', () => {
    fc.assert(
      fc.property(masses, supply, fc.constantFrom(1, 0.05), (whole, supplyOf, scale) => {
        // In small masses too, where a kilogram too much is seen.
        const supplyKg = scale * supplyOf;
        const all = whole.map((mass) => ({
          ...mass,
          leastKg: scale * mass.leastKg,
          mostKg: scale * mass.mostKg,
        }));
        const chosen = worstFill(all, supplyKg);
        let best = Number.NEGATIVE_INFINITY;
        for (const corner of corners(all, supplyKg)) best = Math.max(best, sumOf(all, corner));
        expect(sumOf(all, chosen)).toBeCloseTo(best, 9);
        expectFeasible(all, chosen, supplyKg);
      }),
      { numRuns: 200 },
    );
  });

  test('is not beaten by anything in between', () => {
    const parts = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 12, maxLength: 12 });
    fc.assert(
      fc.property(masses, supply, parts, (all, supplyKg, part) => {
        const wanted = all.map(({ leastKg, mostKg }, index) => (part[index] ?? 0) * (mostKg - leastKg));
        const taken = all.reduce((sum, { shares }, index) => sum + (shares ? (wanted[index] ?? 0) : 0), 0);
        const least = all.reduce((sum, { shares, leastKg }) => sum + (shares ? leastKg : 0), 0);
        const scale = taken > 0 ? Math.min(1, Math.max(0, supplyKg - least) / taken) : 1;
        const some = all.map(
          ({ leastKg, shares }, index) => leastKg + (wanted[index] ?? 0) * (shares ? scale : 1),
        );
        expect(sumOf(all, worstFill(all, supplyKg))).toBeGreaterThanOrEqual(sumOf(all, some) - 1e-9);
      }),
    );
  });

  test('leaves what does nothing at its least', () => {
    fc.assert(
      fc.property(masses, supply, (all, supplyKg) => {
        const chosen = worstFill(all, supplyKg);
        all.forEach(({ effect: each, leastKg }, index) => {
          if (each <= 0) expect(chosen[index]).toBe(leastKg);
        });
      }),
    );
  });
});

describe('the greatest ratio', () => {
  const ratioMasses = (under: fc.Arbitrary<number>) =>
    fc.array(
      fc
        .tuple(range, effect, under)
        .map(([ends, over, below]): RatioMass => ({ ...ends, over, under: below })),
      { maxLength: 12 },
    );
  type Constant = { readonly over: number; readonly under: number };
  const ratioOf = (all: readonly RatioMass[], constant: Constant, chosen: readonly number[]) => {
    const sum = (key: 'over' | 'under') =>
      all.reduce((total, mass, index) => total + mass[key] * (chosen[index] ?? 0), constant[key]);
    return sum('over') / sum('under');
  };
  const expectBest = (all: readonly RatioMass[], constant: Constant, supplyKg: number) => {
    const chosen = worstRatio(all, constant, supplyKg);
    let best = Number.NEGATIVE_INFINITY;
    for (const corner of corners(all, supplyKg)) {
      const ratio = ratioOf(all, constant, corner);
      if (!Number.isNaN(ratio)) best = Math.max(best, ratio);
    }
    expect(ratioOf(all, constant, chosen)).toBeCloseTo(best, 9);
    expectFeasible(all, chosen, supplyKg);
  };

  test('is that of the best corner', () => {
    const below = fc.oneof(fc.constantFrom(0, 1), fc.double({ min: 0, max: 2, noNaN: true }));
    const constant = fc.record({
      over: fc.integer({ min: -50, max: 50 }),
      under: fc.integer({ min: 1, max: 50 }),
    });
    fc.assert(fc.property(ratioMasses(below), constant, supply, expectBest));
  });

  // A denominator that shrinks where the numerator grows, as an axle that a tail relieves.
  test('is that of the best corner where some masses lighten the denominator', () => {
    const below = fc.double({ min: -0.5, max: 1.5, noNaN: true });
    const constant = fc.record({ over: fc.integer({ min: 0, max: 500 }), under: fc.constant(1000) });
    fc.assert(fc.property(ratioMasses(below), constant, supply, expectBest));
  });

  // A centre of mass of things that may all be left at home: there it has none.
  test('passes over the filling in which there is nothing', () => {
    const alone = ratioMasses(fc.constant(1)).filter((all) => {
      const most = worstRatioMost(all);
      return most > 0;
    });
    fc.assert(
      fc.property(alone, (all) => {
        expectBest(
          all.map((mass) => ({ ...mass, shares: false })),
          { over: 0, under: 0 },
          0,
        );
      }),
    );
  });

  test('is refused where the denominator is nothing or less', () => {
    const one: RatioMass = { leastKg: 0, mostKg: 10, shares: false, over: 1, under: 1 };
    expect(() => worstRatio([], { over: 1, under: 0 }, 0)).toThrow(RangeError);
    expect(() => worstRatio([], { over: 0, under: 0 }, 0)).toThrow(RangeError);
    expect(() => worstRatio([one], { over: 0, under: -20 }, 0)).toThrow(RangeError);
    expect(() => worstRatio([{ ...one, under: 0 }], { over: 0, under: 0 }, 0)).toThrow(RangeError);
  });
});

const worstRatioMost = (all: readonly RatioMass[]): number =>
  all.reduce((sum, { mostKg }) => sum + mostKg, 0);

test.each([
  { leastKg: 5, mostKg: 4 },
  { leastKg: Number.NaN, mostKg: 4 },
  { leastKg: 0, mostKg: Number.POSITIVE_INFINITY },
])('bounds that are none are refused: $leastKg to $mostKg', (ends) => {
  expect(() => worstFill([{ ...ends, effect: 1, shares: false }], 0)).toThrow(RangeError);
});

// The supply does not even cover what is always there: nothing is poured, and what is not water is still free.
test('a supply that is too small leaves every sharer at its least', () => {
  const all: VariableMass[] = [
    { leastKg: 10, mostKg: 50, effect: 3, shares: true },
    { leastKg: 5, mostKg: 20, effect: 1, shares: true },
    { leastKg: 0, mostKg: 7, effect: 1, shares: false },
  ];
  expect(worstFill(all, 14)).toEqual([10, 5, 7]);
  expect(worstFill(all, 15)).toEqual([10, 5, 7]);
  expect(worstFill(all, 16)).toEqual([11, 5, 7]);
});

// Three tanks of 1.5 kg, the first the worst: what there is goes there first, and not a gram more than there is.
test.each([
  { supplyKg: 1.2, expected: [1.2, 0, 0] },
  { supplyKg: 2, expected: [1.5, 0.5, 0] },
  { supplyKg: 4, expected: [1.5, 1.5, 1] },
  { supplyKg: 9, expected: [1.5, 1.5, 1.5] },
])('$supplyKg kg of water', ({ supplyKg, expected }) => {
  const tanks = [3, 2, 1].map((effect): VariableMass => ({ leastKg: 0, mostKg: 1.5, effect, shares: true }));
  expect(worstFill(tanks, supplyKg)).toEqual(expected);
});

/** How often the effects are looked at, which is what the time goes into. */
describe('the work grows with the number of masses, not faster', () => {
  const looks = (effects: readonly number[], supplyPart: number): number => {
    let count = 0;
    const all = effects.map(
      (each): VariableMass => ({
        leastKg: 0,
        mostKg: 1,
        shares: true,
        get effect() {
          count += 1;
          return each;
        },
      }),
    );
    const chosen = worstFill(all, supplyPart * effects.length);
    expect(chosen.filter((kg) => kg > 0)).toHaveLength(Math.round(supplyPart * effects.length));
    return count / effects.length;
  };

  // Numbers without a pattern, the same at every run: multiples of the golden section, folded into 0 to 1.
  const scattered = (n: number) =>
    Array.from({ length: n }, (_, i) => ((i * 0.6180339887498949) % 1) + 0.001);

  test.each([
    { order: 'scattered', effects: scattered },
    { order: 'falling', effects: (n: number) => scattered(n).sort((a, b) => b - a) },
    { order: 'all the same', effects: (n: number) => scattered(n).map(() => 1) },
  ])('$order', ({ effects }) => {
    // Half of them get what there is, so the selection has to find the middle one.
    const few = looks(effects(1_000), 0.5);
    const many = looks(effects(100_000), 0.5);
    // Sorting would take log₂ 10⁵ / log₂ 10³ = 1.7 times as many for each, pairs of all with all 100 times as many.
    expect(many).toBeLessThan(1.5 * few + 2);
    expect(many).toBeLessThan(40);
  });
});
