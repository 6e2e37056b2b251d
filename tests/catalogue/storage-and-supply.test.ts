// The catalogue of batteries, charging, inverters and leisure-vehicle mains: sources and order of its figures.
import { describe, expect, test } from 'vitest';
import type { Citation } from '../../src/catalogue/citation.ts';
import {
  batteryChemistries,
  chemistryNames,
  type Guidance,
} from '../../src/catalogue/electrical/batteries.ts';
import { coldVoltageRows } from '../../src/catalogue/electrical/cold-voltage.ts';
import { lithiumRates } from '../../src/catalogue/electrical/lithium-rates.ts';
import * as storageSources from '../../src/catalogue/electrical/storage-sources.ts';
import * as supplySources from '../../src/catalogue/electrical/supply-sources.ts';

const cited: readonly (readonly [string, Citation])[] = [
  ...Object.entries(storageSources),
  ...Object.entries(supplySources),
];

describe('citations', () => {
  test.each(cited)('%s', (_name, { title, readAt, provenance, caution }) => {
    expect(title.trim()).not.toBe('');
    expect(title).not.toContain('http');
    // What was read was read somewhere, or says why it keeps no address.
    if (provenance === 'read') expect(readAt ?? caution ?? '').toMatch(/\w\.\w|left out|no address/);
    if (provenance === 'memory') expect(caution).toMatch(/not looked up/i);
    if (provenance !== 'read') expect(readAt).toBeUndefined();
  });

  test('sources are told from memory', () => {
    expect(cited.filter(([, { provenance }]) => provenance === 'memory').length).toBeGreaterThan(5);
  });
});

describe.each(chemistryNames)('%s', (name) => {
  const row = batteryChemistries[name];
  const guided: readonly (readonly [string, Guidance | undefined])[] = [
    ['lowest voltage', row.lowestBlockV],
    ['usable share', row.usableShare],
    ['charge rate', row.chargeRatePerHour],
    ['discharge rate', row.dischargeRatePerHour],
    ['coulombic efficiency', row.coulombicEfficiency],
    ['energy efficiency', row.energyEfficiency],
    ['self-discharge', row.selfDischargePerMonth],
    ['resistance', row.resistanceOhmAt100Ah],
    ['exponent', row.peukertExponent],
  ];

  test.each(guided)('%s lies in its span and is cited', (_what, guidance) => {
    if (guidance === undefined) return;
    const { value, low, high, citations } = guidance;
    expect(value).toBeGreaterThanOrEqual(low);
    expect(value).toBeLessThanOrEqual(high);
    expect(citations.length).toBeGreaterThan(0);
  });

  test('carries its own name, and what is remembered only says so', () => {
    expect(row.name).toBe(name);
    for (const [, guidance] of guided) {
      if (guidance?.citations.every(({ provenance }) => provenance === 'memory'))
        expect(guidance.caution).toMatch(/from memory/i);
    }
  });

  test('shares are shares', () => {
    for (const { high } of [row.usableShare, row.coulombicEfficiency, row.energyEfficiency])
      expect(high).toBeLessThanOrEqual(1);
    expect(row.coulombicEfficiency.value).toBeGreaterThanOrEqual(row.energyEfficiency.value);
  });
});

test('rates of lithium iron phosphate cover every temperature without a gap', () => {
  const { standardCharge, fastCharge, standardDischarge, mostDischarge } = lithiumRates;
  for (const bands of [standardCharge, fastCharge, standardDischarge, mostDischarge]) {
    expect(bands[0]?.fromC).toBe(Number.NEGATIVE_INFINITY);
    expect(bands.at(-1)?.toC).toBe(Number.POSITIVE_INFINITY);
    for (const [index, { toC }] of bands.entries()) {
      const next = bands[index + 1];
      if (next !== undefined) expect(next.fromC).toBe(toC);
    }
    expect(bands[0]?.ratePerHour).toBe(0);
  }
});

test('cold factors go from 25 °C down to −40 °C', () => {
  expect(coldVoltageRows[0]?.fromC).toBe(25);
  expect(coldVoltageRows.at(-1)?.fromC).toBe(-40);
});
