import { expect, test } from 'vitest';
import type { Citation } from '../../../src/catalogue/citation.ts';
import {
  airChanges,
  dieselHeatCitations,
  ductPractice,
  efficiencyCitations,
  heaterMarginCitation,
  sleeperSensibleCitations,
  usualAirChangesCitation,
} from '../../../src/catalogue/heat/heating.ts';
import {
  boundRatioCitations,
  metalBridgeCitations,
  studIncreaseCitation,
  usStudCitation,
  usualRibCitation,
} from '../../../src/catalogue/heat/metal-bridges.ts';
import {
  cabLosses,
  doorLosses,
  paneCoverCitation,
  paneLosses,
  roofHatchLoss,
} from '../../../src/catalogue/heat/openings.ts';
import {
  absorptanceCitations,
  coveredSolarCitation,
  paneSolarCitations,
  paneSolarShares,
  skyLossCitation,
  summerSunCitation,
} from '../../../src/catalogue/heat/sun.ts';
import {
  airGapCitations,
  airGapVapourCitations,
  filmCitations,
  mouldFilmCitations,
  mouldHumidityCitations,
} from '../../../src/catalogue/heat/surface-films.ts';
import { thermalMaterials } from '../../../src/catalogue/heat/thermal-materials.ts';
import {
  condensateLimits,
  meanFromExtremeCitation,
  outsideHumidityCitation,
  paints,
  vapourFoils,
} from '../../../src/catalogue/heat/vapour-layers.ts';
import { cabKinds, paneKinds } from '../../../src/plan/schema-heat.ts';

const rows: readonly { readonly citations: readonly Citation[] }[] = [
  ...thermalMaterials,
  ...vapourFoils,
  ...paints,
  ...condensateLimits,
  ...paneLosses,
  ...doorLosses,
  ...cabLosses,
  roofHatchLoss,
  ...airChanges,
  ...ductPractice,
];
const single: readonly Citation[] = [
  ...efficiencyCitations,
  ...dieselHeatCitations,
  ...sleeperSensibleCitations,
  heaterMarginCitation,
  usualAirChangesCitation,
  ...boundRatioCitations,
  ...metalBridgeCitations,
  studIncreaseCitation,
  usStudCitation,
  usualRibCitation,
  paneCoverCitation,
  ...absorptanceCitations,
  coveredSolarCitation,
  ...paneSolarCitations,
  skyLossCitation,
  summerSunCitation,
  ...airGapCitations,
  ...airGapVapourCitations,
  ...filmCitations,
  ...mouldFilmCitations,
  ...mouldHumidityCitations,
  meanFromExtremeCitation,
  outsideHumidityCitation,
];

test('every value of heat says where it comes from', () => {
  for (const row of rows) expect(row.citations.length).toBeGreaterThan(0);
  for (const { title, readAt, provenance, caution } of [...rows.flatMap((row) => row.citations), ...single]) {
    expect(title.trim()).not.toBe('');
    expect(title).not.toContain('http');
    if (provenance === 'read') expect(readAt, title).toMatch(/\w\.\w/);
    if (provenance === 'common practice' || provenance === 'own choice')
      expect(readAt, title).toBeUndefined();
    if (provenance === 'memory') expect(caution, title).toMatch(/not looked up|memory|not found/i);
  }
});

test('every kind of pane and cab that a plan may name has a loss', () => {
  expect(paneLosses.map(({ id }) => id)).toEqual([...paneKinds]);
  expect(Object.keys(paneSolarShares)).toEqual([...paneKinds]);
  expect(cabLosses.map(({ id }) => id)).toEqual([...cabKinds]);
});
