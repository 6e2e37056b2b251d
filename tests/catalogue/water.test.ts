// The catalogue of water: sources, and figures in an order that makes sense.
import { describe, expect, test } from 'vitest';
import type { Citation } from '../../src/catalogue/citation.ts';
import { fittingNames, lossTableNames, lossTables } from '../../src/catalogue/water/fittings.ts';
import { waterLimitIds, waterLimits } from '../../src/catalogue/water/limits.ts';
import { pipeMaterials, pipeRoughness, pipeSizes } from '../../src/catalogue/water/pipes.ts';
import { smallPump } from '../../src/catalogue/water/pumps.ts';
import * as sources from '../../src/catalogue/water/sources.ts';
import { outletFlowsByKind } from '../../src/catalogue/water/use.ts';

const cited: readonly (readonly [string, Citation])[] = Object.entries(sources);

test.each(cited)('%s', (_name, { title, readAt, provenance, caution }) => {
  expect(title.trim()).not.toBe('');
  expect(title).not.toContain('http');
  // What was read was read somewhere, or says why it keeps no address.
  if (provenance === 'read') expect(readAt ?? caution ?? '').toMatch(/\w\.\w|left out|no address/);
  if (provenance === 'memory') expect(caution).toMatch(/not looked up/i);
  if (provenance !== 'read') expect(readAt).toBeUndefined();
});

test.each(waterLimitIds)('%s has a source', (id) => {
  const { value, citations, force, of } = waterLimits[id];
  expect(Number.isFinite(value)).toBe(true);
  expect(citations.length).toBeGreaterThan(0);
  expect(of).not.toBe('');
  expect(force).not.toBe('law');
  // A published guide leans on something published: not on one's own choice alone.
  if (force === 'published guide')
    expect(citations.some(({ provenance }) => provenance !== 'own choice')).toBe(true);
});

test('the pairs of limits leave room between them', () => {
  const pairs = [
    ['hot-water-wait', 'hot-water-wait-longest'],
    ['dead-leg-volume', 'dead-leg-volume-house'],
    ['dead-leg-volume-house', 'run-off-volume-house'],
    ['legionella-growth-from', 'legionella-growth-to'],
    ['scald-temperature', 'hot-outlet-temperature'],
    ['hot-outlet-temperature', 'hot-store-temperature'],
    ['trap-seal-least', 'trap-seal-greatest'],
    ['part-fill-from', 'part-fill-to'],
  ] as const;
  for (const [lower, upper] of pairs) {
    expect(waterLimits[lower].value, lower).toBeLessThan(waterLimits[upper].value);
    expect(waterLimits[lower].unit).toBe(waterLimits[upper].unit);
  }
});

describe('pipes and fittings', () => {
  test('a tube is as wide as its bore and two walls', () => {
    for (const { outerDiameterM, wallM, innerDiameterM, citations } of pipeSizes) {
      expect(innerDiameterM + 2 * wallM).toBeCloseTo(outerDiameterM, 9);
      expect(innerDiameterM).toBeGreaterThan(0.005);
      expect(citations).not.toEqual([]);
    }
  });

  test('no size stands twice', () => {
    const names = pipeSizes.map(({ material, name }) => `${material} ${name}`);
    expect(new Set(names).size).toBe(names.length);
  });

  test.each(pipeMaterials)('%s has a roughness', (material) => {
    expect(pipeRoughness[material].roughnessM).toBeGreaterThan(0);
    expect(pipeRoughness[material].roughnessM).toBeLessThan(0.001);
  });

  test.each(lossTableNames)('%s has every fitting', (table) => {
    for (const fitting of fittingNames) expect(lossTables[table][fitting].k, fitting).toBeGreaterThan(0);
  });
});

test('what is usual lies between the bounds', () => {
  for (const { leastLMin, usualLMin, mostLMin } of Object.values(outletFlowsByKind)) {
    expect(usualLMin).toBeGreaterThanOrEqual(leastLMin);
    expect(usualLMin).toBeLessThanOrEqual(mostLMin);
  }
  expect(smallPump.cutOutBar.usual).toBeLessThan(smallPump.cutOutBar.most);
  expect(smallPump.cutInBelowCutOutBar.usual).toBeLessThan(smallPump.cutInBelowCutOutBar.most);
});
