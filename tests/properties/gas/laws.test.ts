import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gasForInput, inputOfGas, inputOnBasis } from '../../../src/calc/gas/input-rate.ts';
import {
  codeDropPa,
  codeFlowM3S,
  dropLawAt,
  gasDropPa,
  leastBoreM,
  poleDropPa,
  poleFlowM3S,
} from '../../../src/calc/gas/pipe-flow.ts';
import { type GasSection, gasTreeOf } from '../../../src/calc/gas/pipe-tree.ts';
import {
  boilingPointC,
  mixturePressurePa,
  propaneMoleShare,
  saturatedLiquidKgM3,
  saturationPressurePa,
} from '../../../src/calc/gas/saturation.ts';
import { gasWhenFilled, insideForGas, shareWhenWarm } from '../../../src/calc/gas/stored.ts';
import { lockerVents } from '../../../src/catalogue/gas/locker-vents.ts';
import { cylinderOffTake, offTakeDuties } from '../../../src/catalogue/gas/off-take.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const gas = fc.constantFrom('propane', 'butane');
const propane = { gravity: 1.5, viscosityPaS: 8e-6 };
const boreM = between(0.003, 0.1);
const lengthM = between(0.1, 50);
const flowM3S = between(1e-7, 1e-2);

test('a drop written as k·L·Q^a/D^b is the drop', () => {
  fc.assert(
    fc.property(boreM, lengthM, flowM3S, (bore, length, flow) => {
      const tube = { boreM: bore, lengthM: length };
      const { factor, flowPower, borePower } = dropLawAt(tube, flow, propane);
      const written = (factor * length * 1e3 * (flow * 60_000) ** flowPower) / (bore * 1e3) ** borePower;
      expect(written / gasDropPa(tube, flow, propane).dropPa).toBeCloseTo(1, 9);
    }),
  );
});

describe('saturation', () => {
  test('warmer is higher in pressure and lighter in liquid', () => {
    fc.assert(
      fc.property(gas, between(-60, 59), between(0.01, 1), (which, at, more) => {
        expect(saturationPressurePa(which, at + more)).toBeGreaterThan(saturationPressurePa(which, at));
        expect(saturatedLiquidKgM3(which, at + more)).toBeLessThan(saturatedLiquidKgM3(which, at));
      }),
    );
  });

  test('the boiling point undoes the pressure', () => {
    fc.assert(
      fc.property(gas, between(-59.9, 59.9), (which, at) => {
        expect(Math.abs(boilingPointC(which, saturationPressurePa(which, at)) - at)).toBeLessThan(1e-5);
      }),
    );
  });

  test('more propane is more pressure, and a share of the mass is a greater share of the molecules', () => {
    fc.assert(
      fc.property(between(0, 1), between(0, 1), between(-60, 60), (one, other, at) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)];
        expect(mixturePressurePa(more, at)).toBeGreaterThanOrEqual(mixturePressurePa(less, at));
        expect(propaneMoleShare(more)).toBeGreaterThanOrEqual(propaneMoleShare(less));
        expect(propaneMoleShare(one)).toBeGreaterThanOrEqual(one * (1 - 1e-12));
      }),
    );
  });
});

describe('pipes', () => {
  test('flow and drop undo each other, by the code and by Pole', () => {
    fc.assert(
      fc.property(boreM, lengthM, flowM3S, (bore, length, flow) => {
        const tube = { boreM: bore, lengthM: length };
        const back = codeFlowM3S(tube, codeDropPa(tube, flow, 1.2462), 1.2462);
        expect(Math.abs(back / flow - 1)).toBeLessThan(1e-9);
        const pole = poleFlowM3S(tube, poleDropPa(tube, flow, 1.5), 1.5);
        expect(Math.abs(pole / flow - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  test('more gas, a longer or a narrower tube never lose less; none of the three is above the drop', () => {
    fc.assert(
      fc.property(boreM, lengthM, flowM3S, between(1, 3), (bore, length, flow, factor) => {
        const at = (b: number, l: number, q: number) =>
          gasDropPa({ boreM: b, lengthM: l }, q, propane).dropPa;
        const here = gasDropPa({ boreM: bore, lengthM: length }, flow, propane);
        const least = here.dropPa * (1 - 1e-12);
        expect(at(bore, length, flow * factor)).toBeGreaterThanOrEqual(least);
        expect(at(bore, length * factor, flow)).toBeGreaterThanOrEqual(least);
        expect(at(bore / factor, length, flow)).toBeGreaterThanOrEqual(least);
        expect(here.dropPa).toBeGreaterThanOrEqual(Math.max(here.codePa, here.polePa, here.laminarPa));
      }),
    );
  });

  test('the least bore keeps the drop, a hair less does not', () => {
    fc.assert(
      fc.property(lengthM, flowM3S, between(50, 500), (length, flow, dropPa) => {
        const bore = leastBoreM({ lengthM: length, flowM3S: flow, dropPa, vapour: propane });
        if (bore === undefined || bore === 0.001) return;
        const at = (b: number) => gasDropPa({ boreM: b, lengthM: length }, flow, propane).dropPa;
        expect(at(bore + 2e-6)).toBeLessThanOrEqual(dropPa);
        expect(at(bore - 2e-6)).toBeGreaterThanOrEqual(dropPa);
      }),
    );
  });

  test('a tree: what flows in flows out, the order of its pipes is nothing, and further is never less', () => {
    const drafts = fc.array(
      fc.record({ parent: fc.nat(1000), bore: boreM, length: lengthM, flow: flowM3S }),
      {
        minLength: 1,
        maxLength: 12,
      },
    );
    fc.assert(
      fc.property(drafts, fc.infiniteStream(fc.nat()), (points, order) => {
        const sections = points.map(
          ({ parent, bore, length }, index): GasSection => ({
            name: `pipe ${index}`,
            from: index === 0 ? 'regulator' : `point ${parent % index}`,
            to: `point ${index}`,
            boreM: bore,
            lengthM: length,
          }),
        );
        const demands = new Map(points.map(({ flow }, index) => [`point ${index}`, flow]));
        const tree = gasTreeOf('regulator', sections, demands, propane);
        const total = [...demands.values()].reduce((sum, flow) => sum + flow, 0);
        expect(Math.abs((tree.sections[0]?.flowM3S ?? 0) / total - 1)).toBeLessThan(1e-9);
        expect(tree.unfed).toEqual([]);
        for (const { from, to } of sections)
          expect(tree.dropPaAt.get(to) ?? 0).toBeGreaterThanOrEqual(tree.dropPaAt.get(from) ?? 0);
        const shuffled = sections
          .map((section) => ({ section, key: order.next().value ?? 0 }))
          .toSorted((a, b) => a.key - b.key)
          .map(({ section }) => section);
        const again = gasTreeOf('regulator', shuffled, demands, propane);
        for (const [point, dropPa] of tree.dropPaAt)
          expect(Math.abs((again.dropPaAt.get(point) ?? Number.NaN) - dropPa)).toBeLessThanOrEqual(
            1e-9 * dropPa,
          );
      }),
    );
  });
});

test('input and gas undo each other, and a basis is undone by the other', () => {
  fc.assert(
    fc.property(between(1, 1e5), between(1e6, 6e7), between(1e6, 6e7), (inputW, one, other) => {
      expect(Math.abs(inputOfGas(gasForInput(inputW, one), one) / inputW - 1)).toBeLessThan(1e-12);
      expect(Math.abs(inputOnBasis(inputOnBasis(inputW, one, other), other, one) / inputW - 1)).toBeLessThan(
        1e-12,
      );
    }),
  );
});

test('a tank for so much gas holds it, and warming fills it further', () => {
  fc.assert(
    fc.property(
      between(0.1, 100),
      between(0.1, 1),
      between(400, 650),
      between(0.5, 1),
      (kg, share, density, less) => {
        const inside = insideForGas(kg, share, density);
        expect(Math.abs(gasWhenFilled(inside, share, density) / kg - 1)).toBeLessThan(1e-12);
        expect(shareWhenWarm(share, density, density * less)).toBeGreaterThanOrEqual(share);
      },
    ),
  );
});

test('a cylinder: warmer, larger and shorter draws never give less; never more than printed', () => {
  fc.assert(
    fc.property(
      gas,
      between(0.5, 60),
      between(-60, 60),
      between(0, 20),
      between(0, 20),
      (which, kg, at, warmer, larger) => {
        for (const [index, duty] of offTakeDuties.entries()) {
          const here = cylinderOffTake({ gas: which, holdsKg: kg, duty, ambientC: at });
          const warm = cylinderOffTake({ gas: which, holdsKg: kg, duty, ambientC: at + warmer });
          const large = cylinderOffTake({ gas: which, holdsKg: kg + larger, duty, ambientC: at });
          expect(warm.kgPerS).toBeGreaterThanOrEqual(here.kgPerS);
          expect(large.kgPerS).toBeGreaterThanOrEqual(here.kgPerS);
          expect(here.kgPerS * 3600).toBeLessThanOrEqual(3);
          const shorter = offTakeDuties[index + 1];
          if (shorter)
            expect(
              cylinderOffTake({ gas: which, holdsKg: kg, duty: shorter, ambientC: at }).kgPerS,
            ).toBeGreaterThanOrEqual(here.kgPerS);
          if (at <= here.boilsC) expect(here.kgPerS).toBe(0);
        }
      },
    ),
  );
});

test('a larger locker never needs less', () => {
  fc.assert(
    fc.property(
      between(0.01, 2),
      between(0, 2),
      fc.constantFrom('uk', 'eu', 'us', 'au', undefined),
      (floor, more, codes) => {
        const [small, large] = [lockerVents(floor, codes), lockerVents(floor + more, codes)];
        expect(large.eachOfTwoM2).toBeGreaterThanOrEqual(small.eachOfTwoM2);
        expect(large.lowAloneM2 ?? 0).toBeGreaterThanOrEqual(small.lowAloneM2 ?? 0);
      },
    ),
  );
});
