import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { accumulatorUsableM3 } from '../../../src/calc/water/accumulator.ts';
import { deadLeg } from '../../../src/calc/water/dead-leg.ts';
import { drainSlope, drainSlopeLeaning, fallNeededM } from '../../../src/calc/water/drain.ts';
import {
  pipeFilmResistanceMKW,
  pipeInsulationResistanceMKW,
  pipeSecondsToFreezing,
  tankConductanceWK,
  tankSecondsToFreezing,
} from '../../../src/calc/water/freezing.ts';
import { heatingEnergyJ, mixedFromLayered, mixedFromStirred } from '../../../src/calc/water/heating.ts';
import { dailyWater } from '../../../src/calc/water/supply.ts';
import { lyingCylinderVolumeM3 } from '../../../src/calc/water/tank.ts';
import { ventDiameterM, ventPressurePa } from '../../../src/calc/water/vent.ts';

const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 10_000 }).map((part) => min + ((max - min) * part) / 10_000);

describe('frost', () => {
  test('insulation round a pipe never shortens the time to freezing', () => {
    fc.assert(
      fc.property(
        between(0.006, 0.03),
        between(0, 0.03),
        between(0, 0.02),
        between(-30, -0.1),
        (bore, thickness, more, airC) => {
          const seconds = (thicknessM: number): number =>
            pipeSecondsToFreezing({
              innerDiameterM: bore,
              // The least film counts only under the insulation, where a thicker layer cannot lessen it.
              resistanceMKW: pipeInsulationResistanceMKW({
                outerDiameterM: bore + 0.003,
                thicknessM,
                conductivityWMK: 0.04,
              }),
              waterC: 8,
              airC,
            });
          expect(seconds(thickness + more)).toBeGreaterThanOrEqual(seconds(thickness));
        },
      ),
    );
  });

  test('colder air and smaller resistance never lengthen it, for a tank and a pipe', () => {
    fc.assert(
      fc.property(
        between(0.1, 20),
        between(-30, -0.1),
        between(0, 10),
        between(1, 3),
        (waterC, airC, colder, factor) => {
          const pipe = { innerDiameterM: 0.01, resistanceMKW: 1, waterC, airC };
          const tank = { massKg: 60, conductanceWK: 2, waterC, airC };
          expect(pipeSecondsToFreezing({ ...pipe, airC: airC - colder })).toBeLessThanOrEqual(
            pipeSecondsToFreezing(pipe),
          );
          expect(tankSecondsToFreezing({ ...tank, conductanceWK: 2 * factor })).toBeLessThanOrEqual(
            tankSecondsToFreezing(tank),
          );
          expect(pipeSecondsToFreezing({ ...pipe, airC: 0 })).toBe(Number.POSITIVE_INFINITY);
        },
      ),
    );
  });

  test('more insulation on a tank never conducts more', () => {
    fc.assert(
      fc.property(between(0, 0.1), between(0, 0.1), (thickness, more) => {
        const wall = (insulationM: number) => [
          { areaM2: 0.4, surfaceM2KW: 0.04, insulationM, conductivityWMK: 0.035 },
        ];
        expect(tankConductanceWK(wall(thickness + more))).toBeLessThanOrEqual(
          tankConductanceWK(wall(thickness)),
        );
        expect(pipeFilmResistanceMKW(0.02, 0.13)).toBeGreaterThan(pipeFilmResistanceMKW(0.02, 0.04));
      }),
    );
  });
});

describe('hot water', () => {
  test('a stirred store never mixes more than a layered one, and both keep the heat', () => {
    fc.assert(
      fc.property(between(1, 100), between(39, 95), between(1, 20), (litres, hotC, coldC) => {
        const store = { storeM3: litres / 1000, hotC, coldC, mixedC: 38 };
        const layered = mixedFromLayered(store);
        const stirred = mixedFromStirred(store);
        expect(stirred.mixedM3).toBeLessThanOrEqual(layered.mixedM3);
        for (const { mixedM3, hotM3, coldM3 } of [layered, stirred]) {
          expect(hotM3 + coldM3).toBeCloseTo(mixedM3, 12);
          expect(coldM3).toBeGreaterThanOrEqual(0);
        }
        // Layered: all the heat above the cold goes into the mix.
        expect(layered.mixedM3 * (38 - coldC)).toBeCloseTo(store.storeM3 * (hotC - coldC), 9);
      }),
    );
  });

  test('heat in two steps is the heat in one, within what the mean heat capacity gives', () => {
    fc.assert(
      fc.property(between(0, 30), between(31, 60), between(61, 100), (coldC, midC, hotC) => {
        const energy = (fromC: number, toC: number) => heatingEnergyJ({ volumeM3: 0.01, fromC, toC });
        const whole = energy(coldC, hotC);
        // A litre of hot water weighs less, which the second step counts with its own density.
        expect(Math.abs(energy(coldC, midC) + energy(midC, hotC) - whole)).toBeLessThan(0.03 * whole);
      }),
    );
  });

  test('the wait grows with the pipe and shrinks with the flow', () => {
    fc.assert(
      fc.property(
        between(0.1, 10),
        between(0.006, 0.02),
        between(2, 12),
        (lengthM, innerDiameterM, litresPerMinute) => {
          const leg = (factor: number, faster: number) =>
            deadLeg({
              pipes: [{ lengthM: lengthM * factor, innerDiameterM }],
              flowM3S: (litresPerMinute / 60_000) * faster,
              coldDrawsPerDay: 3,
            });
          expect(leg(2, 1).waitS).toBeCloseTo(2 * leg(1, 1).waitS, 9);
          expect(leg(1, 2).waitS).toBeCloseTo(leg(1, 1).waitS / 2, 9);
          expect(leg(1, 2).wastedM3PerDay).toBeCloseTo(3 * leg(1, 1).heldM3, 12);
        },
      ),
    );
  });
});

describe('drains', () => {
  test('no lean of the parked vehicle beats the worst one', () => {
    fc.assert(
      fc.property(
        between(-2, 2),
        between(-2, 2),
        between(-0.05, 0.2),
        between(0, 360),
        between(0, 5),
        (rearwardM, rightwardM, fallM, toward, leanDeg) => {
          const runM = Math.hypot(rearwardM, rightwardM);
          if (runM < 0.01) return;
          const lean = Math.tan((leanDeg * Math.PI) / 180);
          const to = (toward * Math.PI) / 180;
          const parking = {
            noseUpDeg: (Math.atan(lean * Math.cos(to)) * 180) / Math.PI,
            leftUpDeg: (Math.atan(lean * Math.sin(to)) * 180) / Math.PI,
          };
          const worst = drainSlopeLeaning(fallM, runM, leanDeg);
          expect(drainSlope({ rearwardM, rightwardM, fallM }, parking)).toBeGreaterThanOrEqual(worst - 1e-9);
        },
      ),
    );
  });

  test('the fall asked for a slope gives that slope when it leans', () => {
    fc.assert(
      fc.property(between(0.1, 4), between(0, 0.1), between(0, 8), (runM, slope, leanDeg) => {
        expect(drainSlopeLeaning(fallNeededM(runM, slope, leanDeg), runM, leanDeg)).toBeCloseTo(slope, 9);
      }),
    );
  });
});

describe('tanks', () => {
  test('a lying cylinder fills without falling back', () => {
    fc.assert(
      fc.property(between(0, 1), between(0, 1), (one, other) => {
        const [lower, upper] = [Math.min(one, other), Math.max(one, other)];
        expect(lyingCylinderVolumeM3(0.2, 1, 0.4 * lower)).toBeLessThanOrEqual(
          lyingCylinderVolumeM3(0.2, 1, 0.4 * upper) + 1e-15,
        );
      }),
    );
  });

  test('an accumulator gives no more than it holds, and waste is no more than fresh', () => {
    fc.assert(
      fc.property(
        between(0, 300_000),
        between(0, 300_000),
        between(1, 200_000),
        between(0, 1),
        (prechargePa, cutInPa, step, share) => {
          const usable = accumulatorUsableM3({
            volumeM3: 0.002,
            prechargePa,
            cutInPa,
            cutOutPa: cutInPa + step,
          });
          expect(usable).toBeGreaterThanOrEqual(0);
          expect(usable).toBeLessThan(0.002);
          const { freshM3, wasteM3 } = dailyWater(2, [
            { m3PerPersonDay: 0.003, drainedShare: 0 },
            { m3PerPersonDay: 0.012, drainedShare: share },
          ]);
          expect(wasteM3).toBeLessThanOrEqual(freshM3);
        },
      ),
    );
  });

  test('a wider vent never builds up more pressure', () => {
    fc.assert(
      fc.property(between(0, 5e-4), between(0.004, 0.03), between(1, 3), (flow, bore, factor) => {
        expect(ventPressurePa(flow, bore * factor)).toBeLessThanOrEqual(ventPressurePa(flow, bore));
        expect(ventPressurePa(flow, ventDiameterM(flow, 200) || bore)).toBeLessThanOrEqual(200 * (1 + 1e-9));
      }),
    );
  });
});
