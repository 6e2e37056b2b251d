// Water by temperature against values computed from the international formulation.
import { describe, test } from 'vitest';
import { columnPa } from '../../src/calc/water/pipe-loss.ts';
import { waterProperties } from '../../src/calc/water/properties.ts';
import { pressureUnits, waterFormulation } from '../../src/catalogue/water/sources.ts';
import { expectPublished } from './agreement.ts';

const share = (value: number, part: number, because: string) => ({ value, within: part * value, because });

describe('water at ordinary pressure', () => {
  test.each([
    [0.01, 999.844, 1791.13, 1.7914, 4.2194],
    [4, 999.975, 1567.29, 1.5673, 4.2075],
    [5, 999.967, 1518.17, 1.5182, 4.205],
    [10, 999.702, 1305.9, 1.3063, 4.1952],
    [20, 998.207, 1001.6, 1.0034, 4.1841],
    [25, 997.048, 890.02, 0.8927, 4.1813],
    [40, 992.216, 652.73, 0.6578, 4.1794],
    [50, 988.035, 546.52, 0.5531, 4.1813],
    [70, 977.765, 403.55, 0.4127, 4.1901],
    [90, 965.31, 314.18, 0.3255, 4.2052],
  ])('%f °C', (temperatureC, density, viscosity, kinematic, capacity) => {
    const water = waterProperties(temperatureC);
    const older = 'an older formula on another temperature scale';
    expectPublished(water.densityKgM3, { value: density, within: 0.02, because: older }, waterFormulation);
    expectPublished(
      water.viscosityPaS * 1e6,
      share(viscosity, 5e-4, 'the short formula is held to 0.05 %'),
      waterFormulation,
    );
    expectPublished(
      water.kinematicViscosityM2S * 1e6,
      share(kinematic, 6e-4, 'the viscosity, and the last place of the row'),
      waterFormulation,
    );
    expectPublished(
      water.heatCapacityJKgK / 1000,
      share(capacity, 1e-4, 'taken from the rows; 0.01 °C lies between two'),
      waterFormulation,
    );
  });

  test('a metre of water at 20 °C is 0.09789 bar', () => {
    expectPublished(
      columnPa(1, waterProperties(20).densityKgM3) / 1e5,
      { value: 0.09789, within: 5e-6, because: 'half a unit in the last printed place' },
      pressureUnits,
    );
  });
});
