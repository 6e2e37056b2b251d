// Air for charging lead batteries against the standard's printed examples.
import { describe, expect, test } from 'vitest';
import {
  boreM,
  hydrogenM3PerH,
  openingM2,
  ventilationFlowM3PerS,
} from '../../src/calc/electrical/lead-ventilation.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import {
  gassingFor,
  stationaryGassing,
  tractionGassingMaPerAh,
} from '../../src/catalogue/electrical/lead-gassing.ts';
import { tractionStandard, ventilationStandard } from '../../src/catalogue/electrical/storage-sources.ts';
import { exactly, expectPublished } from './agreement.ts';

const flowM3PerH = (cells: number, gassingMaPerAh: number, capacityAh: number): number =>
  3600 * ventilationFlowM3PerS({ cells, gassingPerHour: gassingMaPerAh / 1000, capacityAh });
const openingCm2 = (m3PerH: number): number => 1e4 * openingM2(m3PerH / 3600);

test('108 cells of 50 Ah: 0.27 m³/h, 7.56 cm², a bore of 3.1 cm', () => {
  const catalogue: Citation = {
    title: 'emergency lighting catalogue p. 82 after EN 50272-2:2001, 8.2',
    readAt: 'https://www.yumpu.com (cut: the rest of the address carries the maker’s name)',
    provenance: 'read',
  };
  const flow = flowM3PerH(108, 1, 50);
  expectPublished(flow, exactly(0.27), catalogue);
  expectPublished(openingCm2(flow), exactly(7.56), catalogue);
  const bore = { value: 3.1, within: 0.05, because: 'printed to 0.1 cm' };
  expectPublished(100 * boreM(openingM2(flow / 3600)), bore, catalogue);
});

test.each([
  { what: '100 Ah valve-regulated on float', mA: 1, ah: 100, flow: 0.03, cm2: 0.84 },
  { what: '100 Ah valve-regulated on boost', mA: 8, ah: 100, flow: 0.24, cm2: 6.72 },
  { what: '200 Ah vented on float', mA: 5, ah: 200, flow: 0.3, cm2: 8.4 },
  { what: '200 Ah vented on boost', mA: 20, ah: 200, flow: 1.2, cm2: 33.6 },
])('12 V, $what: $flow m³/h, $cm2 cm²', ({ mA, ah, flow, cm2 }) => {
  expectPublished(flowM3PerH(6, mA, ah), exactly(flow), ventilationStandard);
  expectPublished(openingCm2(flow), exactly(cm2), ventilationStandard);
});

test.each(stationaryGassing)(
  '$cell on $mode: $chargeMaPerAh × $emissionFactor × $safetyFactor = $gassingMaPerAh mA/Ah',
  ({ chargeMaPerAh, emissionFactor, safetyFactor, gassingMaPerAh }) => {
    const product = chargeMaPerAh * emissionFactor * safetyFactor;
    expectPublished(product, exactly(gassingMaPerAh), ventilationStandard);
  },
);

test('stationary and traction part agree for vented cells on boost, and part for valve-regulated ones', () => {
  expectPublished(tractionGassingMaPerAh.vented, exactly(20), tractionStandard);
  expectPublished(
    gassingFor('flooded lead', 'boost')?.gassingPerHour ?? Number.NaN,
    exactly(0.02),
    ventilationStandard,
  );
  // 8 against 10: the stricter is taken.
  expectPublished(gassingFor('AGM', 'boost')?.gassingPerHour ?? Number.NaN, exactly(0.01), tractionStandard);
  expectPublished(
    gassingFor('gel', 'float')?.gassingPerHour ?? Number.NaN,
    exactly(0.001),
    ventilationStandard,
  );
});

test('does not apply to lithium iron phosphate', () => {
  expect(gassingFor('lithium iron phosphate', 'float')).toBeUndefined();
  expect(gassingFor('lithium iron phosphate', 'boost')).toBeUndefined();
});

describe('hydrogen by Faraday’s law', () => {
  const faradayCPerMol = 96485.33;
  const litrePerAh = (molarLitre: number): number => (3600 / (2 * faradayCPerMol)) * molarLitre;

  test('0.418 L an Ah at 0 °C, printed as 0.42 in the standard', () => {
    const printed = { value: 0.42, within: 0.005, because: 'printed to 0.01 L' };
    expectPublished(litrePerAh(22.414), printed, ventilationStandard);
  });

  test('24 × 0.42 L × 5 is 0.0504, printed as 0.05; the 0.055 of a newer reprint is not that product', () => {
    const printed = { value: 0.05, within: 0.0005, because: 'rounded by the standard itself, by 0.8 %' };
    const product = 24 * 0.42e-3 * 5;
    expectPublished(product, printed, ventilationStandard);
    expect(Math.abs(product - 0.055), tractionStandard.caution).toBeGreaterThan(0.004);
    // The flow follows the standard's rounded factor.
    expectPublished(flowM3PerH(1, 1000, 1), exactly(0.05), ventilationStandard);
  });

  test('100 cells at 50 A set 79 ft³ an hour free', () => {
    const summary: Citation = {
      title: 'battery-room ventilation summary: 0.0158 ft³ an Ah and cell',
      readAt: 'https://www.scribd.com/document/885283179/BATTERY-ROOM-VENTILATION',
      provenance: 'read',
    };
    const cubicFootM3 = 0.3048 ** 3;
    expectPublished(hydrogenM3PerH(100, 50, 0.0158 * cubicFootM3) / cubicFootM3, exactly(79), summary);
  });

  test('a Swedish rule, 0.017 L/s a cell and ampere, is 26 × 5 × 0.46 L an hour', () => {
    const firm: Citation = {
      title: 'service firm’s note on battery rooms: 0.017 · I · n · z',
      provenance: 'read',
      caution: 'The address carries the firm’s name.',
    };
    const litrePerS = (hydrogenM3PerH(1, 1, 0.46e-3) * 1000 * 26 * 5) / 3600;
    expectPublished(litrePerS, { value: 0.017, within: 0.0005, because: 'printed to 0.001' }, firm);
  });
});
