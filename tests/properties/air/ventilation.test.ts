import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  areaForDepressionM2,
  type FanCurve,
  fanFlowM3S,
  fanPressurePa,
  flowOfFans,
  straightFanCurve,
} from '../../../src/calc/air/fans.ts';
import { furtherAreaM2, parallelAreaM2, seriesAreaM2 } from '../../../src/calc/air/openings.ts';
import { orificeAreaM2, orificeFlowM3S, orificePressurePa } from '../../../src/calc/air/orifice.ts';
import { naturalFlowM3S, stackFlow } from '../../../src/calc/air/stack.ts';
import {
  boatVentilationM2,
  caravanAuNzM2,
  dwellingCookerRowFor,
  leisureRowFor,
} from '../../../src/catalogue/air/fixed-ventilation.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const areaM2 = number(1e-5, 0.5);
const areas = fc.array(areaM2, { minLength: 1, maxLength: 6 });

describe('openings', () => {
  test('in a row they are worth no more than the smallest, side by side no less than the largest', () => {
    fc.assert(
      fc.property(areas, (list) => {
        expect(seriesAreaM2(list)).toBeLessThanOrEqual(Math.min(...list) * (1 + 1e-12));
        expect(parallelAreaM2(list)).toBeGreaterThanOrEqual(Math.max(...list) * (1 - 1e-12));
      }),
    );
  });

  test('a larger opening never makes a row worth less', () => {
    fc.assert(
      fc.property(areas, number(1, 3), (list, times) => {
        const [first = 0, ...others] = list;
        expect(seriesAreaM2([first * times, ...others])).toBeGreaterThanOrEqual(
          seriesAreaM2(list) * (1 - 1e-12),
        );
      }),
    );
  });

  test('the further opening makes up what is wanted', () => {
    fc.assert(
      fc.property(areaM2, number(0.01, 0.99), (others, share) => {
        const wanted = others * share;
        expect(seriesAreaM2([others, furtherAreaM2(wanted, others)]) / wanted).toBeCloseTo(1, 9);
      }),
    );
  });

  test('flow, pressure and area go back and forth', () => {
    fc.assert(
      fc.property(areaM2, number(0.01, 500), (area, pressurePa) => {
        const flow = orificeFlowM3S({ areaM2: area }, pressurePa);
        expect(orificePressurePa({ areaM2: area }, flow) / pressurePa).toBeCloseTo(1, 9);
        expect(orificeAreaM2(flow, pressurePa) / area).toBeCloseTo(1, 9);
        expect(orificeFlowM3S({ areaM2: area }, -pressurePa)).toBe(-flow);
      }),
    );
  });
});

describe('stack', () => {
  const openings = fc.record({
    lowAreaM2: areaM2,
    highAreaM2: areaM2,
    heightM: number(0.05, 3),
    insideC: number(-10, 45),
    outsideC: number(-30, 45),
  });

  test('larger openings, more height: never less flow', () => {
    fc.assert(
      fc.property(openings, number(1, 4), (still, times) => {
        const { flowM3S } = stackFlow(still);
        for (const key of ['lowAreaM2', 'highAreaM2', 'heightM'] as const)
          expect(stackFlow({ ...still, [key]: still[key] * times }).flowM3S).toBeGreaterThanOrEqual(
            flowM3S * (1 - 1e-12),
          );
      }),
    );
  });

  test('as much mass leaves as comes in', () => {
    fc.assert(
      fc.property(openings, (still) => {
        const { flowM3S, neutralM, comesIn } = stackFlow(still);
        expect(neutralM).toBeGreaterThanOrEqual(0);
        expect(neutralM).toBeLessThanOrEqual(still.heightM * (1 + 1e-12));
        if (comesIn === 'nowhere') return;
        const [inside, outside] = [still.insideC + 273.15, still.outsideC + 273.15];
        const [outArea, toOut] =
          comesIn === 'low' ? [still.highAreaM2, still.heightM - neutralM] : [still.lowAreaM2, neutralM];
        // Densities go as 1/T; the pressure at each opening as its height from the neutral level.
        const drive = Math.abs(inside - outside) / Math.max(inside, outside);
        const out = 0.65 * outArea * Math.sqrt((2 * 9.81 * toOut * drive * inside) / outside);
        expect(out / inside / (flowM3S / outside)).toBeCloseTo(1, 6);
      }),
    );
  });

  test('wind and stack together are the larger', () => {
    fc.assert(
      fc.property(number(0, 1), number(0, 1), (one, other) => {
        expect(naturalFlowM3S(one, other)).toBe(Math.max(one, other));
      }),
    );
  });
});

/** Points that fall and rise as a curve must. */
const curves: fc.Arbitrary<FanCurve> = fc
  .array(fc.tuple(number(0.005, 0.1), number(1, 60)), { minLength: 1, maxLength: 5 })
  .map((steps) => {
    const stall = steps.reduce((sum, [, fall]) => sum + fall, 0);
    let flowM3S = 0;
    let pressurePa = stall;
    return [
      { flowM3S, pressurePa },
      ...steps.map(([rise, fall], index) => {
        flowM3S += rise;
        pressurePa = index === steps.length - 1 ? 0 : pressurePa - fall;
        return { flowM3S, pressurePa };
      }),
    ];
  });

describe('fans', () => {
  test('what one fan moves lies on its curve and on that of the opening, to a millionth', () => {
    fc.assert(
      fc.property(curves, areaM2, (curve, area) => {
        const { freshM3S, depressionPa } = flowOfFans({
          exhausts: [curve],
          intakes: [],
          opening: { areaM2: area },
        });
        const stall = curve[0]?.pressurePa ?? 0;
        const open = curve.at(-1)?.flowM3S ?? 0;
        expect(Math.abs(fanPressurePa(curve, freshM3S) - depressionPa)).toBeLessThan(1e-6 * stall);
        expect(Math.abs(orificeFlowM3S({ areaM2: area }, depressionPa) - freshM3S)).toBeLessThan(1e-6 * open);
        expect(freshM3S).toBeGreaterThan(0);
        expect(freshM3S).toBeLessThan(open);
      }),
    );
  });

  test('what comes in goes out, with fans both ways', () => {
    fc.assert(
      fc.property(
        fc.array(curves, { maxLength: 3 }),
        fc.array(curves, { maxLength: 3 }),
        fc.option(areaM2, { nil: 0 }),
        (exhausts, intakes, area) => {
          const flow = flowOfFans({ exhausts, intakes, opening: { areaM2: area } });
          const sum = (flows: readonly number[]) => flows.reduce((total, each) => total + each, 0);
          const most = sum([...exhausts, ...intakes].map((curve) => curve.at(-1)?.flowM3S ?? 0));
          expect(Math.abs(sum(flow.exhaustM3S) - sum(flow.intakeM3S) - flow.openingM3S)).toBeLessThanOrEqual(
            1e-6 * most,
          );
          expect(flow.freshM3S).toBeLessThanOrEqual(most * (1 + 1e-6));
        },
      ),
    );
  });

  test('a larger opening never lets less air in, and lowers the depression', () => {
    fc.assert(
      fc.property(curves, areaM2, number(1, 5), (curve, area, times) => {
        const at = (areaOf: number) =>
          flowOfFans({ exhausts: [curve], intakes: [], opening: { areaM2: areaOf } });
        expect(at(area * times).freshM3S).toBeGreaterThanOrEqual(at(area).freshM3S * (1 - 1e-9));
        expect(at(area * times).depressionPa).toBeLessThanOrEqual(at(area).depressionPa * (1 + 1e-9));
      }),
    );
  });

  test('the area for a depression gives that depression', () => {
    fc.assert(
      fc.property(curves, number(0.01, 0.99), (curve, share) => {
        const wanted = share * (curve[0]?.pressurePa ?? 0);
        const area = areaForDepressionM2(curve, wanted);
        const { depressionPa } = flowOfFans({ exhausts: [curve], intakes: [], opening: { areaM2: area } });
        expect(depressionPa / wanted).toBeCloseTo(1, 6);
      }),
    );
  });

  test('curve and its inverse', () => {
    fc.assert(
      fc.property(curves, number(0, 1), (curve, share) => {
        const flow = share * (curve.at(-1)?.flowM3S ?? 0);
        expect(fanFlowM3S(curve, fanPressurePa(curve, flow))).toBeCloseTo(flow, 9);
      }),
    );
    expect(fanFlowM3S(straightFanCurve(0.2, 50), 25)).toBeCloseTo(0.1, 12);
  });
});

describe('tables of fixed openings never ask less of more', () => {
  test('leisure vehicles by area and by what burns', () => {
    fc.assert(
      fc.property(number(0.1, 40), number(0, 20), fc.boolean(), (area, more, burnsRoomAir) => {
        const small = leisureRowFor(area, burnsRoomAir);
        for (const large of [leisureRowFor(area + more, burnsRoomAir), leisureRowFor(area, true)]) {
          expect(large.roofHighM2).toBeGreaterThanOrEqual(small.roofHighM2);
          expect(large.wallHighM2).toBeGreaterThanOrEqual(small.wallHighM2);
          expect(large.lowM2).toBeGreaterThanOrEqual(small.lowM2);
        }
      }),
    );
  });

  test('boats and caravans by input and people', () => {
    const some = fc.record({ fluelessW: number(0, 2e4), fluedW: number(0, 2e4), people: fc.nat(8) });
    fc.assert(
      fc.property(some, some, (one, more) => {
        const both = {
          fluelessW: one.fluelessW + more.fluelessW,
          fluedW: one.fluedW + more.fluedW,
          people: one.people + more.people,
        };
        expect(boatVentilationM2(both).lowM2).toBeGreaterThanOrEqual(boatVentilationM2(one).lowM2);
        expect(caravanAuNzM2(both.fluelessW, both.people)).toBeGreaterThanOrEqual(
          caravanAuNzM2(one.fluelessW, one.people),
        );
      }),
    );
  });

  test('a smaller room never needs less for a flueless cooker', () => {
    fc.assert(
      fc.property(number(0.1, 30), number(0, 20), (roomM3, more) => {
        expect(dwellingCookerRowFor(roomM3).areaM2).toBeGreaterThanOrEqual(
          dwellingCookerRowFor(roomM3 + more).areaM2,
        );
      }),
    );
  });
});
