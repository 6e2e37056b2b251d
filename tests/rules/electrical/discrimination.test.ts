import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'electrical.discrimination';

/** 10 mm² in the battery's cable and 2.5 mm², which bears 20 A, to a fridge of 4 A. */
const pair = (upType: string, upA: number, downType: string, downA: number, between = false) =>
  plan(
    `fixtures: {fridge: {mass: 1 kg, at: {from_front: 1 m, centred: true, above_floor: 0 m}}}
electrical:
  voltage: 12 V
  battery: {chemistry: AGM, voltage: 12 V, capacity: 100 Ah}
  distribution: {bar: {kind: busbar}, fuse box: {kind: fuse box}}
  circuits:
    main: {from: battery, to: bar, conductor: 10 mm2, length: 1 m, fuse: {type: ${upType}, rating: ${upA} A}}
    ${between ? 'link: {from: bar, to: fuse box, conductor: 10 mm2, length: 1 m}' : ''}
    fridge: {from: ${between ? 'fuse box' : 'bar'}, to: fridge, load: 4 A, conductor: 2.5 mm2, length: 1 m, fuse: {type: ${downType}, rating: ${downA} A}}`,
  );

describe('two fuses, one behind the other', () => {
  test.each([
    { up: 20, down: 10, verdict: 'pass' },
    { up: 16, down: 10, verdict: 'pass' },
    // 25 / 16 = 1.5625.
    { up: 25, down: 16, verdict: 'warn' },
  ])('gG $up A before $down A: $verdict', async ({ up, down, verdict }) => {
    const finding = await findingOf(pair('industrial gG', up, 'industrial gG', down), id);
    expect(finding).toMatchObject({ verdict, subject: 'fridge behind main' });
    expect(measured(finding)).toBeCloseTo(up / down, 12);
  });

  test.each([{ up: 10 }, { up: 15 }])('$up A before 15 A goes first', async ({ up }) => {
    const finding = await findingOf(pair('blade', up, 'blade', 15), id);
    expect(finding.verdict).toBe('warn');
    expect(words(finding.reason)).toContain('it goes first');
  });

  // 1.6 · 15 = 24: 25 A, which 10 mm² bears; 20 / 1.6 = 12.5: 10 A, of which the 4 A take half.
  test('both ways out have numbers', async () => {
    const finding = await findingOf(pair('blade', 20, 'blade', 15), id);
    expect(words(finding.remedy)).toBe(
      'Fit 25 A in main, which its cable bears, or 10 A in fridge, which its load allows.',
    );
  });

  // 10 / 1.6 = 6.25: 5 A, and 1.25 · 4 A = 5 A exactly. 1.6 · 10 = 16: 20 A.
  test('a load that just allows it', async () => {
    expect(words((await findingOf(pair('blade', 10, 'blade', 10), id)).remedy)).toContain(
      'or 5.0 A in fridge',
    );
  });

  test('a circuit without a fuse between them changes nothing', async () => {
    expect((await findingOf(pair('blade', 20, 'blade', 15, true), id)).verdict).toBe('warn');
  });
});

const alone = (fuse: string) =>
  plan(
    `fixtures: {fridge: {mass: 1 kg, at: {from_front: 1 m, centred: true, above_floor: 0 m}}}
electrical: {voltage: 12 V, circuits: {fridge: {from: battery, to: fridge${fuse}}}}`,
  );

test('a fuse alone has none to go before it', async () => {
  expect((await findingOf(alone(', fuse: {type: blade, rating: 10 A}'), id)).verdict).toBe('pass');
});

test('without any fuse it is not checked', async () => {
  expect(await findingOf(alone(''), id)).toMatchObject({ verdict: 'not checked' });
});
