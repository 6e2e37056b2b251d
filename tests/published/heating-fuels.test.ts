// What a litre or a kilogram of fuel gives.
import { describe, test } from 'vitest';
import { fuelFor } from '../../src/calc/heat/fuel.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { heatingValueOf } from '../../src/catalogue/gas/properties.ts';
import { dieselHeatJPerM3 } from '../../src/catalogue/heat/heating.ts';
import { expectPublished, type Published } from './agreement.ts';

const kWh = 3.6e6;
const printed = (value: number, lastPlace: number): Published => ({
  value,
  within: lastPlace / 2,
  because: 'half a unit in the last printed place',
});
describe('diesel', () => {
  const source: Citation = {
    title: 'UK government greenhouse gas conversion factors 2025, as restated',
    readAt: 'https://universal-converter.org/fuels/diesel',
    provenance: 'read',
  };
  test('9.905 kWh/L net and 10.531 gross', () => {
    expectPublished(dieselHeatJPerM3.net / kWh / 1000, printed(9.905, 0.001), source);
    expectPublished(dieselHeatJPerM3.gross / kWh / 1000, printed(10.531, 0.001), source);
  });
  test('42.84 MJ/kg at 832.361 kg/m³', () => {
    expectPublished(dieselHeatJPerM3.net / 832.361 / 1e6, printed(42.84, 0.01), source);
  });
  test('2 kW at 80 % take 0.252 L an hour', () => {
    const m3 = fuelFor({
      meanHeatW: 2000,
      durationS: 3600,
      efficiency: 0.8,
      heatingValueJPerUnit: dieselHeatJPerM3.net,
    });
    expectPublished(1000 * m3, printed(0.252, 0.001), source);
  });
});

// Properties of the gases have tests of their own; this one is of the use of their heating value.
test('propane: 1 kW net is 78 g/h', () => {
  const kg = fuelFor({
    meanHeatW: 1000,
    durationS: 3600,
    efficiency: 1,
    heatingValueJPerUnit: heatingValueOf('propane', 'net'),
  });
  expectPublished(
    1000 * kg,
    { value: 78, within: 0.5, because: 'a whole number of grams' },
    {
      title: 'Swiss LPG supplier: 1 kW is 78 g/h',
      readAt: 'http://www.selzam.ch/xml_1/internet/de/application/d37/f4.cfm',
      provenance: 'read',
    },
  );
});
