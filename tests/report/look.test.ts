import { stripVTControlCharacters } from 'node:util';
import fc from 'fast-check';
import stringWidth from 'fast-string-width';
import { describe, expect, test } from 'vitest';
import type { Figure, Picture, View } from '../../src/build/picture/model.ts';
import { pictureOf } from '../../src/build/picture/picture.ts';
import { rectangle } from '../../src/calc/space/plane.ts';
import { length } from '../../src/engine/measure.ts';
import { say } from '../../src/engine/phrase.ts';
import { arm, glyphOf } from '../../src/report/look/glyphs.ts';
import { keyOf } from '../../src/report/look/keys.ts';
import { renderPicture } from '../../src/report/look/look.ts';
import { cellHeight, columnsPerM } from '../../src/report/look/scale.ts';
import { buildOf } from '../support/check.ts';
import { drafts, write } from '../support/random-plan.ts';
import { wholeVan } from '../support/whole-van.ts';

const allViews = ['plan', 'left', 'right'] as const;
const widths = [60, 80, 100, 120, 160, 200];

async function pictureFrom(text: string, cutM?: number): Promise<Picture> {
  const build = await buildOf(text);
  if (!build.layout) throw new Error('the plan has no load bay');
  return pictureOf(build, build.layout, { views: allViews, ...(cutM !== undefined && { cutM }) });
}

const solid = (thing: string, box: readonly [number, number, number, number], nearnessM = 0): Figure => ({
  thing,
  outline: rectangle(...box),
  line: 'solid',
  nearnessM,
  hides: true,
  hatched: false,
});

const shell = (...box: readonly [number, number, number, number]): Figure => ({
  outline: rectangle(...box),
  line: 'shell',
  nearnessM: Infinity,
  hides: false,
  hatched: false,
});

/** A picture of a single view, with an entry in the legend for each figure that names one. */
function pictureWith(view: Partial<View>, names: readonly string[] = []): Picture {
  const figures = view.figures ?? [];
  const ids = [
    ...figures.flatMap(({ thing }) => thing ?? []),
    ...(view.gaps ?? []).map(({ thing }) => thing),
  ];
  return {
    name: 'trial',
    units: 'metric',
    views: [
      {
        name: 'plan',
        title: say`Plan`,
        across: { leastM: 0, mostM: 5.9 },
        down: { leastM: 0, mostM: 2 },
        edges: { left: '', right: '', above: '', below: '' },
        figures,
        gaps: [],
        ticks: [],
        sweeps: [],
        passage: [],
        marks: [],
        guides: [],
        remarks: [],
        ...view,
      },
    ],
    things: [...new Set(ids)].map((id, index) => ({
      id,
      name: names[index] ?? id,
      sort: 'thing',
      remark: '',
      size: [length(1), length(1), length(1)],
      place: [length(0), length(0), length(0)],
    })),
    signs: {},
    notes: [],
  };
}

const draw = (picture: Picture, width = 60): string => renderPicture(picture, { width, colour: false });

/** The lines of the view alone: a picture of 5.9 m at 60 columns has ten columns and five rows a metre. */
const drawing = (picture: Picture): string => {
  const lines = draw(picture).split('\n');
  const start = lines.indexOf('Plan') + 2;
  return lines.slice(start, start + 11).join('\n');
};

describe('joints', () => {
  test('lines that meet share a joint', () => {
    expect(drawing(pictureWith({ figures: [solid('one', [0, 0, 1, 1]), solid('two', [1, 0, 1, 1])] }))).toBe(
      [
        '┌─────────┬─────────┐',
        '│         │         │',
        '│    A    │    B    │',
        '│         │         │',
        '│         │         │',
        '└─────────┴─────────┘',
        ...Array<string>(5).fill(''),
      ].join('\n'),
    );
  });

  test('a thing at the wall joins the heavy line of the wall', () => {
    const figures = [shell(0, 0, 3, 2), solid('one', [0, 0, 1, 1]), solid('two', [2, 1, 1, 1])];
    expect(drawing(pictureWith({ figures }))).toBe(
      [
        '┏━━━━━━━━━┯━━━━━━━━━━━━━━━━━━━┓',
        '┃         │                   ┃',
        '┃    A    │                   ┃',
        '┃         │                   ┃',
        '┃         │                   ┃',
        '┠─────────┘         ┌─────────┨',
        '┃                   │         ┃',
        '┃                   │    B    ┃',
        '┃                   │         ┃',
        '┃                   │         ┃',
        '┗━━━━━━━━━━━━━━━━━━━┷━━━━━━━━━┛',
      ].join('\n'),
    );
  });

  test('what lies behind something nearer is dashed, and only there', () => {
    const figures = [solid('below', [0, 0, 2, 1], 0), solid('above', [1, 0.4, 2, 1], 1)];
    const lines = drawing(pictureWith({ figures })).split('\n');
    expect(lines[2]).toBe('│        A┌─────────┼─────────┐');
    expect(lines[3]).toMatch(/^│ +│ +┆ +│$/);
    expect(lines[5]).toBe('└─────────┼┄┄┄┄┄┄┄┄┄┘         │');
  });

  test('a door is a gap with the letter in it, a window a double line', () => {
    const gap = { from: { xM: 1, yM: 0 }, to: { xM: 2, yM: 0 } };
    const [door = ''] = drawing(
      pictureWith({ figures: [shell(0, 0, 3, 2)], gaps: [{ thing: 'd', ...gap }] }),
    ).split('\n');
    expect(door).toBe('┏━━━━━━━━━╸    A    ╺━━━━━━━━━┓');
    const window = { thing: 'w', ...gap, line: 'window' as const };
    const [glass = ''] = drawing(pictureWith({ figures: [shell(0, 0, 3, 2)], gaps: [window] })).split('\n');
    expect(glass).toBe('┏━━━━━━━━━━════A════━━━━━━━━━━┓');
  });

  test('every joint of light and heavy lines has a character of its own', () => {
    const kinds = [arm.none, arm.light, arm.heavy];
    const all = kinds.flatMap((up) =>
      kinds.flatMap((right) =>
        kinds.flatMap((down) => kinds.map((left) => glyphOf([up, right, down, left]))),
      ),
    );
    expect(new Set(all).size).toBe(81);
    expect(glyphOf([arm.heavy, arm.light, arm.heavy, arm.none])).toBe('┠');
    expect(glyphOf([arm.light, arm.double, arm.none, arm.double])).toBe('╧');
    expect(glyphOf([arm.none, arm.double, arm.none, arm.heavy])).toBe('━');
  });
});

describe('scale', () => {
  test.each(widths)('a box twice as long as wide stays so at %i columns', (width) => {
    const figures = [solid('box', [1, 0.25, 2.4, 1.2])];
    const picture = pictureWith({ figures });
    const perM = columnsPerM(picture, width);
    const lines = draw(picture, width).split('\n');
    const top = lines.findIndex((line) => line.includes('┌'));
    const bottom = lines.findIndex((line) => line.includes('└'));
    const columns = (lines[top] ?? '').indexOf('┐') - (lines[top] ?? '').indexOf('┌');
    expect(Math.abs(columns - 2.4 * perM)).toBeLessThanOrEqual(1);
    expect(Math.abs(cellHeight * (bottom - top) - 1.2 * perM)).toBeLessThanOrEqual(cellHeight);
  });

  test('the bar is as long as it says', () => {
    const [, bar = ''] = draw(pictureWith({ figures: [] })).split('\n');
    expect(bar).toBe(`To scale  ├${'─'.repeat(9)}┤ 1000 mm`);
  });

  test('something far larger than the picture is cut off at its edge', () => {
    const lines = drawing(pictureWith({ figures: [solid('vast', [-20, 1, 50, 20])] })).split('\n');
    expect(lines[4]).toBe('');
    expect(lines[5]).toBe('─'.repeat(60));
  });
});

describe('keys', () => {
  test('A to Z without what looks like a line, then AA', () => {
    expect([0, 7, 8, 23, 24, 25].map((index) => keyOf(index, 'thing'))).toEqual([
      'A',
      'H',
      'J',
      'Z',
      'AA',
      'AB',
    ]);
    expect([0, 11].map((index) => keyOf(index, 'van'))).toEqual(['a', 'm']);
  });

  test('something too small for an inside has its letter on its edge', () => {
    const figures = [solid('flat', [0, 0, 1, 0.2]), solid('dot', [2, 0, 0.02, 0.02])];
    const lines = drawing(pictureWith({ figures })).split('\n');
    expect(lines.slice(0, 2)).toEqual(['┌────A────┐         B', '└─────────┘']);
  });

  test('a letter stands where its thing is alone', () => {
    const figures = [solid('host', [0, 0, 3, 2]), solid('inside', [0.5, 0.4, 2, 1.2])];
    const lines = drawing(pictureWith({ figures })).split('\n');
    expect(lines[5]?.indexOf('B')).toBe(15);
    const column = lines.map((line) => line.indexOf('A')).find((at) => at >= 0) ?? -1;
    const row = lines.findIndex((line) => line.includes('A'));
    expect(column < 5 || column > 25 || row < 2 || row > 8).toBe(true);
  });

  test('two keys do not stand side by side where there is another place', () => {
    const figures = [solid('one', [1, 1, 0.02, 0.02]), solid('two', [1.1, 0.6, 0.02, 0.8])];
    expect(drawing(pictureWith({ figures }))).not.toMatch(/[AB]{2}/);
  });

  test('without room for a letter a thing is named below the legend', () => {
    const figures = ['one', 'two', 'three'].map((name) => solid(name, [1, 1, 0.02, 0.02]));
    const text = draw(pictureWith({ figures }));
    expect(text).toContain('Drawn without a letter, for want of room: two, three.');
    expect(text).not.toMatch(/^B /m);
  });
});

/** The keys of the legend, be it a table or a list. */
const keysIn = (legend: string): string[] =>
  [...legend.matchAll(/^([A-Z]{1,2}|[a-z]{1,2}) {1,2}\S/gm)].flatMap(([, key]) => key ?? []);

describe.each(widths)('a whole van at %i columns', (width) => {
  test('fits, and each letter of the legend is in the picture', async () => {
    const text = draw(await pictureFrom(wholeVan), width);
    for (const line of text.split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(width);
    const [picture = '', legend = ''] = text.split(/\n\n(?=(?: {3,}length|A {2}))/);
    const keys = keysIn(legend.split(/\n\n/)[0] ?? '');
    expect(keys.length).toBeGreaterThan(15);
    const inPicture = new Set(
      picture
        .split('\n')
        .slice(2)
        .join(' ')
        .match(/(?<![a-zA-Z])[A-Za-z]{1,2}(?![a-zA-Z])/g),
    );
    for (const key of keys) expect(inPicture).toContain(key);
  });

  test('says the same without colour, and then without any escape', async () => {
    const picture = await pictureFrom(wholeVan, 1.2);
    const plain = draw(picture, width);
    expect(plain.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
    const coloured = renderPicture(picture, { width, colour: true });
    expect(coloured).not.toBe(plain);
    expect(stripVTControlCharacters(coloured)).toBe(plain);
  });
});

test('names cannot steer the terminal or break the lines', async () => {
  const names = ['\u001b[31mred\u001b[0m', 'a\u202egpj', '冷蔵庫'.repeat(30), 'x'.repeat(300), 'two\nlines'];
  const figures = names.map((name, at) => solid(name, [at, 0, 1, 1]));
  for (const width of widths) {
    const text = draw(pictureWith({ figures }, names), width);
    expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Bidi_Control}]/u);
    for (const line of text.split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(width);
  }
});

test('measures are in the units of the plan', async () => {
  const text = draw(await pictureFrom(`${wholeVan}units: imperial\n`), 160);
  expect(text).toMatch(/^To scale {2}├─+┤ \d ft 0 in$/m);
  expect(text).not.toMatch(/\d mm/);
});

test('whatever the plan, no line is wider than the terminal', async () => {
  await fc.assert(
    fc.asyncProperty(
      drafts,
      fc.integer({ min: 60, max: 200 }),
      fc.option(fc.double({ min: -1, max: 3, noNaN: true })),
      async (draft, width, cut) => {
        const build = await buildOf(write(draft));
        if (!build.layout) return;
        const picture = pictureOf(build, build.layout, {
          views: allViews,
          ...(cut !== null && { cutM: cut }),
        });
        const lines = draw(picture, width).split('\n');
        for (const line of lines) expect(stringWidth(line)).toBeLessThanOrEqual(width);
      },
    ),
    { numRuns: 40 },
  );
});
