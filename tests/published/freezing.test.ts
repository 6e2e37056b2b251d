// Time until water in a pipe or a tank freezes.
import { describe, expect, test } from 'vitest';
import {
  MELTING_HEAT_J_PER_KG,
  pipeFilmResistanceMKW,
  pipeInsulationResistanceMKW,
  pipeSecondsToFreezing,
  tankConductanceWK,
  tankSecondsOfFreezing,
  tankSecondsToFreezing,
} from '../../src/calc/water/freezing.ts';
import { airFilm, freezingGrowth, pipeFoam } from '../../src/catalogue/water/frost.ts';
import { pipeFreezing, surfaceResistances, tankFreezing } from '../../src/catalogue/water/sources.ts';
import { exactly, expectPublished } from './agreement.ts';

const celsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

describe('pipe', () => {
  const resistanceMKW = pipeInsulationResistanceMKW({
    outerDiameterM: 2.375 * 0.0254,
    thicknessM: 1.5 * 0.0254,
    conductivityWMK: pipeFoam.conductivityWMK,
  });

  test('2 in pipe with 1.5 in of foam from 42 to 32 °F at −18 °F: 1.4 h', () => {
    const seconds = pipeSecondsToFreezing({
      innerDiameterM: 2.067 * 0.0254,
      resistanceMKW,
      waterC: celsius(42),
      airC: celsius(-18),
    });
    expectPublished(
      seconds / 3600,
      { value: 1.4, within: 0.05, because: 'half a unit in the last place' },
      pipeFreezing,
    );
    expectPublished(
      seconds / 3600,
      { value: 1.378, within: 0.001, because: 'recomputed in the units of the source' },
      pipeFreezing,
    );
  });

  test('minutes in a small tube', () => {
    const small = {
      innerDiameterM: 0.0064,
      resistanceMKW:
        pipeInsulationResistanceMKW({ outerDiameterM: 0.01, thicknessM: 0.009, conductivityWMK: 0.04 }) +
        pipeFilmResistanceMKW(0.028, airFilm.outside.m2KW),
      waterC: 5,
      airC: -10,
    };
    expect(pipeSecondsToFreezing(small) / 60).toBeGreaterThan(1);
    expect(pipeSecondsToFreezing(small) / 60).toBeLessThan(10);
  });

  test('films of air', () => {
    expectPublished(airFilm.inside.m2KW, exactly(0.13), surfaceResistances);
    expectPublished(airFilm.outside.m2KW, exactly(0.04), surfaceResistances);
    expect(pipeFilmResistanceMKW(1 / Math.PI, 0.13)).toBeCloseTo(0.13, 12);
  });
});

describe('tank', () => {
  const tank = { massKg: 60, conductanceWK: 2, waterC: 10, airC: -5 };

  test('60 kg at 2 W/K from 10 °C in −5 °C: 38.5 h, and 27.8 h for a twentieth of ice', () => {
    expectPublished(
      tankSecondsToFreezing(tank),
      { value: 138_425, within: 0.5, because: 'half a unit in the last place' },
      tankFreezing,
    );
    expectPublished(tankSecondsOfFreezing(tank, 0.05), exactly(100_200), tankFreezing);
    expect(MELTING_HEAT_J_PER_KG).toBe(334_000);
  });

  test('ice takes 9.05 % more room', () => {
    expectPublished(
      freezingGrowth.value * 100,
      { value: 9.05, within: 0.005, because: 'half a unit in the last place' },
      tankFreezing,
    );
  });

  test('walls side by side', () => {
    const wall = { areaM2: 0.5, surfaceM2KW: 0.04, insulationM: 0.02, conductivityWMK: 0.04 };
    expect(tankConductanceWK([wall])).toBeCloseTo(0.5 / 0.54, 12);
    expect(tankConductanceWK([wall, { ...wall, areaM2: 1 }])).toBeCloseTo(1.5 / 0.54, 12);
  });
});
