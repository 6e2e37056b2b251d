import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const rule = 'fit.rib';
const of = (text: string, subject = '') => findingOf(text, rule, subject);

/** The load bay is 4 m long. Ribs of 60 mm on the left at 1 m and 2 m; on the ceiling at 1 m, 1.4 m, 1.9 m and 2.5 m. */
const ribs =
  '[{in: left wall, from_front: 2 m, width: 60 mm}, {in: left wall, from_front: 1 m, width: 60 mm}, {in: ceiling, from_front: 1 m, width: 60 mm}, {in: ceiling, from_front: 1.4 m, width: 60 mm}, {in: ceiling, from_front: 1.9 m, width: 60 mm}, {in: ceiling, from_front: 2.5 m, width: 1.5 m}]';
const bay = (ribbed: string | undefined) =>
  `{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, floor_above_ground: 0.5 m${ribbed === undefined ? '' : `, ribs: ${ribbed}`}}`;
const withOpenings = (openings: string | undefined, ribbed: string | undefined = ribs) =>
  plan('', { load_bay: bay(ribbed), openings });

const window = (from: number, length = 0.8, more = '') =>
  `window: {in: left wall, kind: window, length: ${length} m, height: 0.4 m, at: {from_front: ${from} m, above_floor: 1 m}${more}}`;
const fan = (from: number, length: number) =>
  `fan: {in: ceiling, kind: vent, length: ${length} m, width: 0.4 m, at: {from_front: ${from} m, centred: true}}`;

describe('a window', () => {
  test('between the ribs: pass', async () => {
    expect(await of(withOpenings(`{${window(1.1)}}`))).toMatchObject({
      verdict: 'pass',
      subject: 'window',
      path: ['van', 'openings', 'window', 'at'],
    });
  });

  // From 1.06 m to 2 m is 940 mm.
  test('that just fits between them: pass', async () => {
    expect((await of(withOpenings(`{${window(1.06, 0.94)}}`))).verdict).toBe('pass');
  });

  test('that cuts into one warns, with how far and where it is clear', async () => {
    // 1.02 to 1.82 m: 40 mm of the rib from 1 m to 1.06 m.
    const finding = await of(withOpenings(`{${window(1.02)}}`));
    expect(finding.verdict).toBe('warn');
    expect(measured(finding)).toBeCloseTo(0.04, 9);
    expect(words(finding.reason)).toBe(
      'window cuts into 1 rib of the left wall: 40 mm of the one 1000 mm from the front, which is 60 mm wide.',
    );
    expect(words(finding.remedy)).toMatch(/^Move it 40 mm rearward, to begin 1060 mm from the front/);
    expect(finding.cautions.join(' ')).toContain('Ribs, pillars');
    expect((await of(withOpenings(`{${window(1.06)}}`))).verdict).toBe('pass');
  });

  test('over two ribs names both, the front one first', async () => {
    const finding = await of(withOpenings(`{${window(1.05, 1)}}`));
    expect(words(finding.reason)).toContain(
      'cuts into 2 ribs of the left wall: 10 mm of the one 1000 mm from the front, which is 60 mm wide and 50 mm of the one 2000 mm',
    );
    expect(measured(finding)).toBeCloseTo(0.05, 9);
    // 940 mm between them are too little; before the first are 1000 mm.
    expect(words(finding.remedy)).toMatch(
      /^Move it 1010 mm rearward, to begin 2060 mm|^Move it 1050 mm forward/,
    );
  });

  test('moves past no other opening of its height', async () => {
    const text = (aboveFloor: number) =>
      withOpenings(
        `{${window(1.02)}, other: {in: left wall, kind: vent, length: 0.2 m, height: 0.2 m, at: {from_front: 1.8 m, above_floor: ${aboveFloor} m}}}`,
      );
    // 1.06 to 1.8 m are 740 mm: forward to 0.2 m then, which ends at the rib.
    expect(words((await of(text(1.1), 'window')).remedy)).toMatch(/^Move it 820 mm forward, to begin 200 mm/);
    expect(words((await of(text(1.5), 'window')).remedy)).toMatch(/^Move it 40 mm rearward/);
  });
});

describe('a fan in the roof', () => {
  test('for which there is no room says how much there is', async () => {
    // Clear: 0 to 1, 1.06 to 1.4, 1.46 to 1.9, 1.96 to 2.5 m; nothing from 2.5 m on.
    const finding = await of(withOpenings(`{${fan(1.2, 1.1)}}`));
    expect(finding.verdict).toBe('warn');
    expect(words(finding.remedy)).toContain(
      'is there room for its 1100 mm; the widest clear stretch is 1000 mm',
    );
  });

  test('goes to the nearest gap', async () => {
    // 400 mm from 1.2 m: 1.46 m is 260 mm away, 0.6 m is 600 mm.
    expect(words((await of(withOpenings(`{${fan(1.2, 0.4)}}`))).remedy)).toMatch(
      /^Move it 260 mm rearward, to begin 1460 mm/,
    );
  });
});

describe('what is not held to it', () => {
  test("doors, which are the van's own, and what is in the rear doors", async () => {
    const doors = `{door: {in: left wall, kind: door, length: 1.2 m, height: 1.6 m, at: {from_front: 1 m}}, pane: {in: rear doors, kind: window, width: 0.5 m, height: 0.5 m, at: {from_left: 0 m, above_floor: 1 m}}}`;
    expect(await of(withOpenings(doors))).toMatchObject({
      verdict: 'not checked',
      missing: ['van.openings.NAME'],
    });
    const beside = `{${window(1.1)}, ${doors.slice(1)}`;
    const found = (await reportOf(withOpenings(beside))).findings.filter((each) => each.rule === rule);
    expect(found.map(({ subject }) => subject)).toEqual(['window']);
  });

  test('ribs of another surface', async () => {
    const finding = await of(withOpenings(`{${window(1).replace('left wall', 'right wall')}}`));
    expect(finding).toMatchObject({ verdict: 'not checked', missing: ['van.load_bay.ribs'] });
    expect(words(finding.reason)).toContain('no ribs of the right wall');
  });
});

describe('what the plan leaves out', () => {
  test.each([
    { lacks: 'ribs', text: withOpenings(`{${window(1)}}`, '[]'), missing: ['van.load_bay.ribs'] },
    { lacks: 'openings', text: withOpenings(undefined), missing: ['van.openings.NAME'] },
    {
      lacks: 'their places',
      text: withOpenings('{window: {in: left wall, length: 1 m, height: 0.5 m, kind: window}}'),
      missing: ['van.openings.window.at.from_front', 'van.openings.window.at.above_floor'],
    },
    { lacks: 'the load bay', text: plan('', { load_bay: undefined }), missing: ['van.load_bay'] },
  ])('$lacks: not checked', async ({ text, missing }) => {
    expect(await of(text)).toMatchObject({ verdict: 'not checked', missing });
  });
});
