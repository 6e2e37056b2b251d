import { describe, expect, test } from 'vitest';
import { findingOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const placed = (text: string) => findingOf(text, 'fit.placed');

const box = 'size: {length: 1 m, width: 1 m, height: 1 m}';
const spot = 'at: {from_front: 0 m, from_left: 0 m}';

test('pass: everything has a size and a place', async () => {
  const finding = await placed(
    plan(`fixtures: {bed: {mass: 1 kg, ${box}, ${spot}}, box: {mass: 1 kg, ${box}, ${spot}, in: bed}}`),
  );
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toBe('2 things have a size and a place.');
});

test('what lacks a key is named with it', async () => {
  const finding = await placed(
    plan(
      `fixtures: {bed: {mass: 1 kg, size: {length: 1 m, width: 1 m}, ${spot}}}\ntanks: {fresh: {contents: fresh, holds: 9 L, ${box}}}`,
    ),
  );
  expect(finding).toMatchObject({
    verdict: 'not checked',
    subject: 'things without a place',
    path: ['fixtures', 'bed'],
    missing: ['fixtures.bed.size.height', 'tanks.fresh.at.from_front', 'tanks.fresh.at.from_left'],
  });
  expect(words(finding.reason)).toContain('bed (size.height), fresh (at.from_front, at.from_left).');
  expect(words(finding.remedy)).toContain('Add 3 keys, beginning with `fixtures.bed.size.height`');
});

test('no more than eight are named, but every key is listed', async () => {
  const fixtures = Array.from({ length: 11 }, (_, index) => `b${index}: {mass: 1 kg, ${box}}`);
  const finding = await placed(plan(`fixtures: {${fixtures.join(', ')}}`));
  expect(words(finding.reason)).toContain('The room of 11 things is not known');
  expect(words(finding.reason)).toMatch(/b7 \([^)]*\) and 3 more\.$/);
  expect(words(finding.reason)).not.toContain('b8');
  expect(finding.missing).toHaveLength(22);
});

describe('loose contents', () => {
  const withLoose = (rest: string) =>
    placed(plan(`fixtures: {bed: {mass: 1 kg, ${box}, ${spot}}, cutlery: {mass: 1 kg, in: bed}${rest}}`));

  test('are no defect, and are counted', async () => {
    const finding = await withLoose('');
    expect(finding.verdict).toBe('pass');
    expect(words(finding.reason)).toBe(
      '1 thing has a size and a place. 1 thing lying loose in or on another, without size or place, is left out.',
    );
  });

  test('with part of a size are not loose', async () => {
    const finding = await withLoose(', fridge: {mass: 1 kg, in: bed, size: {length: 1 m}}');
    expect(finding.verdict).toBe('not checked');
    expect(finding.missing).toContain('fixtures.fridge.size.width');
    expect(words(finding.reason)).not.toContain('cutlery');
  });

  test('may lie on something too, but not on the floor', async () => {
    const finding = await withLoose(', blanket: {mass: 1 kg, on: bed}');
    expect(finding.verdict).toBe('pass');
    expect(words(finding.reason)).toContain('2 things lying loose');
    expect((await withLoose(', rug: {mass: 1 kg, on: floor}')).missing).toContain('fixtures.rug.size.length');
  });
});

test('what hangs on a host without a place asks for the keys of the host once', async () => {
  const finding = await placed(
    plan(`fixtures: {bed: {mass: 1 kg, ${box}}, fridge: {mass: 1 kg, ${box}, ${spot}, in: bed}}`),
  );
  expect(finding.missing).toEqual(['fixtures.bed.at.from_front', 'fixtures.bed.at.from_left']);
  expect(words(finding.reason)).toContain('2 things');
});

test('a host that takes no room is asked for by name', async () => {
  const finding = await placed(
    plan(`fixtures: {corner: {mass: 1 kg, solid: false}, fridge: {mass: 1 kg, ${box}, ${spot}, in: corner}}`),
  );
  expect(finding.missing).toEqual(['fixtures.corner.at']);
});

test('what takes no room needs none', async () => {
  const finding = await placed(
    plan(`fixtures: {bed: {mass: 1 kg, ${box}, ${spot}}, rug: {mass: 1 kg, solid: false}}`),
  );
  expect(finding.verdict).toBe('pass');
});

test('a part of the van without its height is among them', async () => {
  const finding = await placed(
    plan(`fixtures: {bed: {mass: 1 kg, ${box}, ${spot}}}`, {
      wheel_arches: '{from_front: 2 m, length: 1 m, width: 0.2 m}',
    }),
  );
  expect(finding).toMatchObject({ verdict: 'not checked', missing: ['van.wheel_arches.height'] });
});

test.each([
  { lacks: 'a load bay', text: plan('', { load_bay: undefined }), missing: ['van.load_bay'] },
  { lacks: 'things', text: plan(), missing: ['fixtures.NAME.size'] },
])('without $lacks it is not checked', async ({ text, missing }) => {
  expect(await placed(text)).toMatchObject({ verdict: 'not checked', missing });
});
