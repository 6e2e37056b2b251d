import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { saturationPressurePa } from '../../../src/calc/air/saturation.ts';
import { bridgedResistance } from '../../../src/calc/heat/bridged.ts';
import {
  glaserProfile,
  glaserYear,
  type VapourMonth,
  type VapourWall,
} from '../../../src/calc/heat/glaser.ts';
import { heatNeed, lossPerKelvin } from '../../../src/calc/heat/heat-loss.ts';
import { ribbedResistance } from '../../../src/calc/heat/metal-ribs.ts';
import { warmUpS } from '../../../src/calc/heat/warm-up.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const films = { insideM2KPerW: 0.13, outsideM2KPerW: 0.04 };

const layer = fc.record({ resistanceM2KPerW: real(0, 2), equivalentAirM: real(0.01, 50) });
const wall: fc.Arbitrary<VapourWall> = fc
  .array(layer, { minLength: 1, maxLength: 5 })
  .map((layers) => ({ ...films, layers }));
const month: fc.Arbitrary<VapourMonth> = fc
  .record({
    durationS: real(1e5, 3e6),
    outsideC: real(-20, 30),
    insideC: real(15, 30),
    out: real(0.3, 1),
    in: real(0.2, 0.9),
  })
  .map(({ durationS, outsideC, insideC, out, in: inside }) => ({
    durationS,
    outsideC,
    insideC,
    outsidePa: out * saturationPressurePa(outsideC),
    insidePa: inside * saturationPressurePa(insideC),
  }));

describe('resistance', () => {
  const band = fc
    .record({ share: real(0.001, 0.5), fill: real(0.01, 3), bridge: real(0.0001, 1) })
    .map(({ share, fill, bridge }) => [
      { share: 1 - share, layersM2KPerW: [fill] },
      { share, layersM2KPerW: [bridge] },
    ]);
  test('the lower bound is never above the upper', () => {
    fc.assert(
      fc.property(fc.array(band, { maxLength: 4 }), (bands) => {
        const { upperM2KPerW, lowerM2KPerW } = bridgedResistance({ ...films, bands });
        expect(lowerM2KPerW).toBeLessThanOrEqual(upperM2KPerW * (1 + 1e-12));
      }),
    );
  });

  const ribs = fc.record({
    depthM: real(0.01, 0.1),
    metalM: real(0.0005, 0.004),
    spacingM: real(0.2, 1.5),
    metalWPerMK: real(10, 230),
    flangeM: real(0, 0.08),
  });
  test('the chosen value lies in the range, and ribs never help', () => {
    fc.assert(
      fc.property(ribs, real(0.01, 3), real(0.001, 1), (rib, fillM2KPerW, lining) => {
        // Filling that conducts better than the metal of the ribs is not filling.
        fc.pre(fillM2KPerW > rib.depthM / rib.metalWPerMK);
        const ribbed = ribbedResistance({
          ...films,
          outerLayersM2KPerW: [0.00002],
          fillM2KPerW,
          innerLayersM2KPerW: [lining],
          ribs: rib,
        });
        expect(ribbed.uValue).toBeGreaterThanOrEqual(ribbed.leastUValue * (1 - 1e-12));
        expect(ribbed.uValue).toBeLessThanOrEqual(ribbed.greatestUValue * (1 + 1e-12));
        expect(ribbed.increase).toBeGreaterThanOrEqual(-1e-12);
      }),
    );
  });

  test('more insulation over ribs never raises either bound of the loss', () => {
    fc.assert(
      fc.property(ribs, real(0.1, 3), real(0.001, 1), real(0.001, 1), (rib, fillM2KPerW, lining, more) => {
        const at = (inner: number) =>
          ribbedResistance({
            ...films,
            outerLayersM2KPerW: [],
            fillM2KPerW,
            innerLayersM2KPerW: [inner],
            ribs: rib,
          });
        const before = at(lining);
        const after = at(lining + more);
        expect(after.leastUValue).toBeLessThanOrEqual(before.leastUValue);
        expect(after.greatestUValue).toBeLessThanOrEqual(before.greatestUValue);
        expect(after.uValue).toBeLessThanOrEqual(before.uValue * (1 + 1e-12));
      }),
    );
  });
});

describe('heat', () => {
  test('more insulation never raises the loss', () => {
    fc.assert(
      fc.property(
        real(0.1, 60),
        real(0.1, 6),
        real(0, 1),
        real(0, 40),
        real(0, 5),
        (areaM2, uValue, better, volumeM3, airChangesPerHour) => {
          const at = (u: number) =>
            heatNeed({
              lossWPerK: lossPerKelvin({ surfaces: [{ areaM2, uValue: u }], volumeM3, airChangesPerHour })
                .totalWPerK,
              insideC: 20,
              outsideC: -10,
              gainsW: 100,
              margin: 0.2,
            }).heaterW;
          expect(at(uValue * better)).toBeLessThanOrEqual(at(uValue));
        },
      ),
    );
  });
  test('a larger heater never takes longer', () => {
    fc.assert(
      fc.property(
        real(1e4, 1e6),
        real(0, 200),
        real(0, 5000),
        real(0, 3000),
        (capacityJPerK, lossWPerK, heaterW, more) => {
          const at = (watts: number) =>
            warmUpS({ capacityJPerK, lossWPerK, heaterW: watts, startC: 0, targetC: 18, outsideC: -5 });
          // Beside the place where the formula changes to a straight line it may be off by 1e-9.
          expect(at(heaterW + more)).toBeLessThanOrEqual(at(heaterW) * (1 + 1e-9));
        },
      ),
    );
  });
});

describe('water in walls', () => {
  test('pressure never exceeds saturation on a face between layers, and a dry wall only gains', () => {
    fc.assert(
      fc.property(wall, month, (layers, weather) => {
        const { pressuresPa, saturationsPa, flows } = glaserProfile(layers, weather);
        pressuresPa.slice(1, -1).forEach((pressure, index) => {
          expect(pressure).toBeLessThanOrEqual((saturationsPa[index + 1] ?? 0) * (1 + 1e-9));
        });
        for (const { rateKgPerM2S } of flows) expect(rateKgPerM2S).toBeGreaterThan(-1e-15);
      }),
    );
  });
  test('vapour in less vapour out is what stays', () => {
    fc.assert(
      fc.property(wall, fc.array(month, { minLength: 1, maxLength: 12 }), (layers, year) => {
        const { months, leftKgPerM2, peakKgPerM2 } = glaserYear(layers, year);
        const sum = months.reduce((total, { changeKgPerM2 }) => total + changeKgPerM2, 0);
        expect(sum).toBeCloseTo(leftKgPerM2, 6);
        expect(peakKgPerM2).toBeGreaterThanOrEqual(leftKgPerM2 - 1e-12);
        for (const { water } of months)
          for (const { waterKgPerM2 } of water) expect(waterKgPerM2).toBeGreaterThan(0);
      }),
    );
  });
  test('a month in two halves is a month', () => {
    fc.assert(
      fc.property(
        wall,
        fc.array(month, { minLength: 1, maxLength: 6 }),
        real(0.1, 0.9),
        (layers, year, part) => {
          const halves = year.flatMap((one) => [
            { ...one, durationS: one.durationS * part },
            { ...one, durationS: one.durationS * (1 - part) },
          ]);
          expect(glaserYear(layers, halves).leftKgPerM2).toBeCloseTo(glaserYear(layers, year).leftKgPerM2, 6);
        },
      ),
    );
  });
  test('a tighter foil inside never lets more water gather in a dry month', () => {
    fc.assert(
      fc.property(wall, month, real(0.1, 100), real(1, 10), ({ layers }, weather, airM, times) => {
        fc.pre(weather.insidePa >= weather.outsidePa);
        const gained = (equivalentAirM: number) =>
          glaserProfile(
            { ...films, layers: [...layers, { resistanceM2KPerW: 0, equivalentAirM }] },
            weather,
          ).flows.reduce((sum, { rateKgPerM2S }) => sum + rateKgPerM2S, 0);
        expect(gained(airM * times)).toBeLessThanOrEqual(gained(airM) + 1e-15);
      }),
    );
  });
});
