import { describe, expect, test } from 'vitest';
import { type FluidName, fluidNames, fluids } from '../../src/catalogue/fluids.ts';

/** Copied figures in kg/m³, so they must match exactly. */
const published: readonly (readonly [FluidName, number, number, number, string])[] = [
  ['fresh', 997, 1000, 1000, 'DIN EN 12524 at 10 °C: 1000; IAPWS-95 at 25 °C: 997.0'],
  ['waste', 1000, 1000, 1000, 'common practice, no source'],
  ['diesel', 820, 845, 845, 'engineering forum: 845; EN 590: 820 to 845'],
  ['petrol', 720, 750, 775, 'helicopter flight manual: 750; EN 228: 720 to 775'],
  ['propane', 485, 512, 528, 'gas pipe sizing sheet: 512; saturated liquid at 30 °C and 0 °C'],
  ['butane', 567, 579, 601, 'saturated liquid at 30 °C, 20 °C and 0 °C'],
];

test.each(published)('%s: %d, %d, %d kg/m³', (name, lowKgM3, densityKgM3, highKgM3) => {
  expect(fluids[name]).toMatchObject({ name, lowKgM3, densityKgM3, highKgM3 });
});

test('every fluid is compared', () => {
  expect(published.map(([name]) => name)).toEqual([...fluidNames]);
});

// IAPWS-95, printed as 999.702 (10 °C), 998.207 (20 °C) and 997.048 (25 °C): all round into the band to 1 kg/m³.
test.each([999.702, 998.207, 997.048])('cold tank water of %d kg/m³ is inside the band', (kgM3) => {
  expect(Math.round(kgM3)).toBeGreaterThanOrEqual(fluids.fresh.lowKgM3);
  expect(Math.round(kgM3)).toBeLessThanOrEqual(fluids.fresh.highKgM3);
});

// Common practice, no source: 100 litres of water weigh 100 kg. Exact by the rule.
test('a litre of water weighs a kilogram', () => {
  expect(0.1 * fluids.fresh.densityKgM3).toBe(100);
  expect(0.1 * fluids.waste.densityKgM3).toBe(100);
});

// Other read figures that the band must hold: UK conversion factors 832.4 (diesel); aviation petrol 720; propane 505
// (forum), 504 (US trade table), 505 (47 kg in 93 litres, a carrier's rule), 520 (Italian LPG table).
test.each([
  ['diesel', 832.361],
  ['petrol', 720],
  ['propane', 505],
  ['propane', 504],
  ['propane', 47 / 0.093],
  ['propane', 520],
] as const)('%s of %d kg/m³ is inside the band', (name, kgM3) => {
  expect(kgM3).toBeGreaterThanOrEqual(fluids[name].lowKgM3);
  expect(kgM3).toBeLessThanOrEqual(fluids[name].highKgM3);
});

/**
 * Saturated liquid density: rho = rho_c M (1 + sum n_i theta^t_i), theta = 1 - T / T_c, with the coefficients of an
 * open fluid-property library (stated fit error 0.42 % for propane, 0.21 % for n-butane).
 */
describe('densities of the liquid gases from the equation', () => {
  const propane = {
    criticalK: 369.89,
    criticalMolM3: 5000,
    kgMol: 0.04409562,
    n: [
      2.104068052280433, 0.3371892411622086, 0.4401223810964251, -3.5679018989260567, 59.93889697061387,
      -70.9402469085883,
    ],
    t: [0.368, 0.875, 3.009, 9.51, 15.381, 17.001],
  };
  const butane = {
    criticalK: 425.125,
    criticalMolM3: 3922.7696129878086,
    kgMol: 0.0581222,
    n: [
      7.6544950329552, -16.928503641708495, 14.176327512939299, -2.3511736019127136, 5.431931351600508,
      -13.286388570143172,
    ],
    t: [0.501, 0.742, 0.917, 1.387, 9.328, 12.623],
  };
  const liquid = (gas: typeof propane, celsius: number): number => {
    const theta = 1 - (celsius + 273.15) / gas.criticalK;
    const sum = gas.n.reduce((total, n, index) => total + n * theta ** (gas.t[index] ?? Number.NaN), 0);
    return gas.criticalMolM3 * gas.kgMol * (1 + sum);
  };

  // The row keeps whole kg/m³, so half a unit is the tolerance.
  test.each([
    ['propane', propane, 30, fluids.propane.lowKgM3],
    ['propane', propane, 0, fluids.propane.highKgM3],
    ['butane', butane, 30, fluids.butane.lowKgM3],
    ['butane', butane, 20, fluids.butane.densityKgM3],
    ['butane', butane, 0, fluids.butane.highKgM3],
  ] as const)('%s', (_name, gas, celsius, kgM3) => {
    expect(Math.abs(liquid(gas, celsius) - kgM3)).toBeLessThanOrEqual(0.5);
  });

  test('the propane value is the heaviest source at ordinary temperature, heavier than at 15 °C', () => {
    expect(fluids.propane.densityKgM3).toBeGreaterThan(liquid(propane, 15));
    expect(fluids.propane.densityKgM3).toBeLessThan(liquid(propane, 10));
  });
});
