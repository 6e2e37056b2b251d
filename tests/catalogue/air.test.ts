// The catalogue of air and moisture: sources and order of its figures.
import { describe, expect, test } from 'vitest';
import { breathingRows } from '../../src/catalogue/air/carbon-dioxide.ts';
import { leisureOpenRows } from '../../src/catalogue/air/fixed-ventilation.ts';
import { airLimitIds, airLimits } from '../../src/catalogue/air/limits.ts';
import { humidityClassRows, moistureIds, moistureRows } from '../../src/catalogue/air/moisture.ts';
import * as sources from '../../src/catalogue/air/sources.ts';

describe('citations', () => {
  test.each(Object.entries(sources))('%s', (_name, { title, readAt, provenance, caution }) => {
    expect(title.trim()).not.toBe('');
    expect(title).not.toContain('http');
    if (provenance === 'read') expect(readAt ?? caution ?? '').toMatch(/\w\.\w|left out|code index/);
    if (provenance === 'memory') expect(caution).toMatch(/not looked up/i);
    if (provenance !== 'read') expect(readAt).toBeUndefined();
  });
});

test.each(airLimitIds)('limit %s is cited, and what is from memory says so', (id) => {
  const { value, citations, caution } = airLimits[id];
  expect(value).toBeGreaterThan(0);
  expect(citations.length).toBeGreaterThan(0);
  if (citations.every(({ provenance }) => provenance === 'memory')) expect(caution).toMatch(/from memory/i);
});

test.each(moistureIds)('%s: the value lies in its range and is cited', (id) => {
  const { low, value, high, citations } = moistureRows[id];
  expect(low).toBeGreaterThan(0);
  expect(value).toBeGreaterThanOrEqual(low);
  expect(value).toBeLessThanOrEqual(high);
  expect(citations.length).toBeGreaterThan(0);
});

test('classes of humidity rise evenly', () => {
  expect(humidityClassRows.map(({ id, excessPa }) => excessPa / id)).toEqual([270, 270, 270, 270, 270]);
});

test('wall vents are twice roof vents in every row', () => {
  for (const { roofHighM2, wallHighM2 } of leisureOpenRows)
    expect(wallHighM2 / roofHighM2).toBeCloseTo(2, 12);
});

test('thirteen ages of each sex, by rising age, rising with activity', () => {
  for (const sex of ['female', 'male']) {
    const rows = breathingRows.filter((row) => row.sex === sex);
    expect(rows.map(({ fromYears }) => fromYears)).toEqual([0, 1, 3, 6, 11, 16, 21, 30, 40, 50, 60, 70, 80]);
    for (const { litresPerS } of rows) {
      expect(litresPerS).toHaveLength(7);
      expect([...litresPerS].sort((a, b) => a - b)).toEqual(litresPerS);
    }
  }
});
