import { describe, expect, test } from 'vitest';
import { findingOf, only, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'electrical.fuse-distance';

const withCircuits = (circuits: string, kind = 'busbar') =>
  plan(
    `fixtures: {fridge: {mass: 1 kg, at: {from_front: 1 m, centred: true, above_floor: 0 m}}}
electrical:
  voltage: 12 V
  distribution: {bar: {kind: ${kind}}}
  circuits:
    ${circuits}`,
  );

const fromBattery = (place: string) =>
  withCircuits(`fridge: {from: battery, to: fridge, fuse: {type: blade, rating: 10 A${place}}}`);

/** 7 in = 177.8 mm open; on the battery's own conductor 900 mm in a sheath, the shortest of what was read. */
describe('a fuse along the cable from the battery', () => {
  test.each([
    { place: ', from_source: 0 mm', verdict: 'pass' },
    { place: ', from_source: 177.8 mm', verdict: 'pass' },
    { place: ', from_source: 178 mm', verdict: 'warn' },
    { place: ', from_source: 900 mm, sheathed: true', verdict: 'pass' },
    { place: ', from_source: 901 mm, sheathed: true', verdict: 'warn' },
  ])('$place: $verdict', async ({ place, verdict }) => {
    expect(await findingOf(fromBattery(place), id)).toMatchObject({ verdict, subject: 'fridge' });
  });

  test('a sheath is a way out, as far as it reaches', async () => {
    const near = await findingOf(fromBattery(', from_source: 400 mm'), id);
    expect(words(near.remedy)).toContain('within 177 mm of the battery');
    expect(words(near.remedy)).toContain('lay those 400 mm in a sheath');
    const far = await findingOf(fromBattery(', from_source: 1.5 m'), id);
    expect(words(far.remedy)).toContain('within 900 mm with a sheath');
  });

  test('of unknown place it is not checked', async () => {
    expect(await findingOf(fromBattery(''), id)).toMatchObject({
      verdict: 'not checked',
      missing: ['electrical.circuits.fridge.fuse.from_source'],
    });
  });
});

describe('a fuse behind another', () => {
  // 2.5 mm² bears 20 A (see the test of the ratings).
  const behind = (mainA: number, place: string, kind?: string) =>
    withCircuits(
      `main: {from: battery, to: bar, fuse: {type: maxi blade, rating: ${mainA} A, from_source: 50 mm}}
    fridge: {from: bar, to: fridge, conductor: 2.5 mm2, fuse: {type: blade, rating: 10 A${place}}}`,
      kind,
    );

  test.each([
    { place: ', from_source: 500 mm, sheathed: true', verdict: 'pass' },
    { place: ', from_source: 501 mm, sheathed: true', verdict: 'warn' },
  ])('away from the battery a sheath reaches 500 mm: $place: $verdict', async ({ place, verdict }) => {
    const finding = await findingOf(behind(100, place), id, verdict === 'warn' ? 'fridge' : '');
    expect(finding).toMatchObject({ verdict, subject: 'fridge' });
  });

  test('may be anywhere where the one before it protects its cable', async () => {
    const finding = await findingOf(behind(20, ', from_source: 3 m'), id);
    expect(finding).toMatchObject({ verdict: 'pass', subject: 'main' });
  });

  test('sits in a fuse box, but not in a busbar', async () => {
    expect((await findingOf(behind(100, '', 'fuse box'), id)).verdict).toBe('pass');
    expect(only(await reportOf(behind(100, '')), id, 'fridge').verdict).toBe('not checked');
  });
});

test('without any fuse it is not checked', async () => {
  expect(await findingOf(withCircuits('fridge: {from: battery, to: fridge}'), id)).toMatchObject({
    verdict: 'not checked',
    missing: ['electrical.circuits.NAME.fuse'],
  });
});
