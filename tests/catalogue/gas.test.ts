import { describe, expect, test } from 'vitest';
import type { Citation } from '../../src/catalogue/citation.ts';
import { codes } from '../../src/catalogue/codes.ts';
import { alarmTimeCitations, monoxideGuidelineRows } from '../../src/catalogue/gas/carbon-monoxide.ts';
import { gasLimitFor, gasLimitIds, gasLimits } from '../../src/catalogue/gas/limits.ts';
import { hundredPoundCitations, southAfricanCitations } from '../../src/catalogue/gas/off-take.ts';
import {
  corrugatedCitations,
  equivalentLengthM,
  fittingLength,
  gasPipeKinds,
  gasPipeStandards,
  metricTubeCitations,
  metricTubes,
  pipeFlowCitations,
  swissCitations,
} from '../../src/catalogue/gas/pipes.ts';
import { gasProperties } from '../../src/catalogue/gas/properties.ts';
import {
  gasRequirementFor,
  gasRequirementIds,
  gasRequirements,
  placeNotes,
  supplyPressures,
  supplyPressuresFor,
  tightnessTest,
} from '../../src/catalogue/gas/requirements.ts';
import * as sources from '../../src/catalogue/gas/sources.ts';

const cited: readonly (readonly [string, readonly Citation[]])[] = [
  ...gasLimits.map((row) => [`limit ${row.id} ${row.codes.join(' ')}`, row.citations] as const),
  ...gasRequirements.map((row) => [`requirement ${row.id} ${row.codes.join(' ')}`, row.citations] as const),
  ...supplyPressures.map((row) => [`pressure ${row.pressurePa}`, row.citations] as const),
  ...placeNotes.map((row) => [`note ${row.place} ${row.words}`, row.citations] as const),
  ...gasPipeKinds.map((kind) => [`pipe ${kind}`, gasPipeStandards[kind].citations] as const),
  ...monoxideGuidelineRows.map((row) => [`monoxide ${row.overS}`, row.citations] as const),
  ['propane', gasProperties.propane.citations],
  ['butane', gasProperties.butane.citations],
  ['tightness', tightnessTest.citations],
  ['fittings', fittingLength.citations],
  ['tubes', metricTubeCitations],
  ['pipe flow', pipeFlowCitations],
  ['alarm times', alarmTimeCitations],
  [
    'other tables',
    [...hundredPoundCitations, ...southAfricanCitations, ...swissCitations, ...corrugatedCitations],
  ],
];

test.each(cited)('%s is cited', (_row, citations) => {
  expect(citations.length).toBeGreaterThan(0);
  for (const { title, readAt, provenance } of citations) {
    expect(title).not.toContain('http');
    expect(title).not.toMatch(/\.$/);
    if (provenance !== 'read') expect(readAt).toBeUndefined();
  }
});

test('what is from memory says so, every source is used', () => {
  const all = new Set(cited.flatMap(([, citations]) => citations));
  const remembered = [...all].filter(({ provenance }) => provenance === 'memory');
  expect(remembered.length).toBeGreaterThan(5);
  for (const { caution } of remembered) expect(caution).toMatch(/From memory/);
  const elsewhere = new Set<Citation>([
    // Used by functions and tests rather than by rows.
    sources.propaneState,
    sources.butaneState,
    sources.antoineCoefficients,
    sources.mixturePressures,
    sources.commercialPropane,
    sources.chemicalEquation,
    sources.germanOffTake,
    sources.lyingTankGuide,
    sources.regulatorInlet,
    sources.offTakePolicy,
  ]);
  for (const source of Object.values(sources))
    expect(all.has(source) || elsewhere.has(source), source.title).toBe(true);
});

describe('limits', () => {
  test('every limit has exactly one row for each of the codes', () => {
    for (const id of gasLimitIds)
      for (const region of codes) {
        const rows = gasLimits.filter((row) => row.id === id && row.codes.includes(region));
        expect(rows, `${id} ${region}`).toHaveLength(1);
        expect(gasLimitFor(id, region)).toBe(rows[0]);
      }
  });

  test('every row has a caution, as full sentences', () => {
    for (const { id, cautions } of gasLimits) {
      expect(cautions.length, id).toBeGreaterThan(0);
      for (const caution of cautions) expect(caution).toMatch(/\.$/);
    }
  });

  test('without codes the strictest row counts and says so, where rows differ', () => {
    for (const id of gasLimitIds) {
      const chosen = gasLimitFor(id);
      const rows = gasLimits.filter((row) => row.id === id);
      const values = rows.map(({ value }) => value);
      expect(chosen.value, id).toBe(chosen.sense === 'at most' ? Math.min(...values) : Math.max(...values));
      // One value may be a standard in one place and a guide in another.
      const differ = new Set(rows.map(({ value, force }) => `${value} ${force}`)).size > 1;
      expect(chosen.cautions.some((caution) => caution.includes('names no codes'))).toBe(differ);
    }
    expect(gasLimitFor('pipe-drop').codes).toEqual(['us']);
    expect(gasLimitFor('pipe-drop').cautions.at(-1)).toContain('that of the United States.');
    expect(gasLimitFor('locker-cylinder-mass').value).toBe(16);
    expect(gasLimitFor('hose-age').force).toBe('standard');
  });

  test('senses and units agree among the rows of one limit', () => {
    for (const id of gasLimitIds)
      expect(
        new Set(gasLimits.filter((row) => row.id === id).map(({ sense, unit }) => `${sense} ${unit}`)).size,
      ).toBe(1);
  });
});

describe('requirements', () => {
  test('every requirement has exactly one row for each of the codes', () => {
    for (const id of gasRequirementIds)
      for (const region of codes) {
        const rows = gasRequirements.filter((row) => row.id === id && row.codes.includes(region));
        expect(rows, `${id} ${region}`).toHaveLength(1);
        expect(gasRequirementFor(id, region)).toBe(rows[0]);
      }
  });

  test('without codes the row with the most force counts', () => {
    expect(gasRequirementFor('appliance-valve').force).toBe('standard');
    expect(gasRequirementFor('smoke-alarm').codes).toEqual(['us']);
    expect(gasRequirementFor('gas-alarm').force).toBe('common practice');
  });

  test('every row has a caution, and no words end with a full stop', () => {
    for (const { id, words, cautions } of gasRequirements) {
      expect(cautions.length, id).toBeGreaterThan(0);
      expect(words).not.toMatch(/\.$/);
    }
  });

  test('every region has one pressure for new vehicles', () => {
    for (const region of codes)
      expect(supplyPressuresFor(region).filter(({ forNew }) => forNew)).toHaveLength(1);
    expect(supplyPressuresFor()).toEqual(supplyPressures);
  });
});

describe('pipes', () => {
  test('tubes on offer keep the least wall and rise by bore', () => {
    const bores = metricTubes.map(({ outsideM, wallM }) => outsideM - 2 * wallM);
    expect(bores).toEqual(bores.toSorted((a, b) => a - b));
    for (const { outsideM, wallM } of metricTubes)
      expect(wallM / outsideM).toBeGreaterThanOrEqual(0.1 - 1e-12);
  });

  test('bends and tees lengthen: 0.3 and 0.5 m, or 30 and 60 bores of wide tube', () => {
    expect(equivalentLengthM({ lengthM: 3, boreM: 0.0064, bends: 2, tees: 1 })).toBeCloseTo(4.1, 12);
    expect(equivalentLengthM({ lengthM: 3, boreM: 0.02, bends: 1, tees: 1 })).toBeCloseTo(4.8, 12);
    expect(() => equivalentLengthM({ lengthM: -3, boreM: 0.02, bends: 1, tees: 1 })).toThrow(RangeError);
  });
});
