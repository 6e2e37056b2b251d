import type { Picture, Sign, Thing } from '../../build/picture/model.ts';
import { formatMeasure, renderPhrase } from '../format-measure.ts';
import { type Pen, penOf } from '../pen.ts';
import { visible } from '../visible.ts';
import { hanging, wrapped } from '../wrap.ts';
import { keyOf } from './keys.ts';
import { legendLines } from './legend.ts';
import { placeKeys } from './place-keys.ts';
import { columnsPerM } from './scale.ts';
import { type Sheet, sheetOf, signs } from './sheet.ts';
import { viewLines } from './view-lines.ts';

export interface LookOptions {
  /** The terminal's columns; no line is longer. */
  readonly width: number;
  readonly colour: boolean;
}

/** Draws a picture for a terminal, with its legend. Ends with a line break. */
export function renderPicture(picture: Picture, { width, colour }: LookOptions): string {
  const pen = penOf(colour);
  const perM = columnsPerM(picture, width);
  const sheets = picture.views.map((view) => sheetOf(view, perM));
  const keys = keysFor(picture, sheets);
  const views = sheets.map((sheet) => viewLines(sheet, picture.units, pen, width));
  const { keyed, unkeyed } = grouped(picture, sheets, keys);
  const paragraphs = [
    [...wrapped(visible(picture.name), width).map(pen.strong), scaleBar(picture, perM, width)],
    ...views,
    legendLines(keyed, keys, picture, pen, width),
    signLines(picture, views.flat().join('\n'), pen, width),
    unkeyed.length === 0
      ? []
      : wrapped(`Drawn without a letter, for want of room: ${unkeyed.map(named).join(', ')}.`, width),
    picture.notes.flatMap((note) => wrapped(visible(renderPhrase(note, picture.units)), width)),
  ];
  const filled = paragraphs.filter((lines) => lines.length > 0);
  return `${filled.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

const named = ({ name, remark }: Thing): string =>
  visible(name) + (remark === '' ? '' : ` (${visible(remark)})`);

/** Writes the keys on the sheets. Only things with room for one get one, so that no letter is passed over. */
function keysFor({ things }: Picture, sheets: readonly Sheet[]): Map<string, string> {
  const longest = new Map(numbered(things).map(([id, key]) => [id, key.length]));
  const places = sheets.map((sheet) => placeKeys(sheet, (thing) => longest.get(thing) ?? 1));
  const keys = new Map(numbered(things.filter(({ id }) => places.some((place) => place.has(id)))));
  sheets.forEach(({ canvas }, index) => {
    for (const [thing, { column, row }] of places[index] ?? [])
      [...(keys.get(thing) ?? '')].forEach((letter, at) => {
        canvas.put({ column: column + at, row }, letter);
      });
  });
  return keys;
}

function numbered(things: readonly Thing[]): (readonly [id: string, key: string])[] {
  return (['thing', 'van'] as const).flatMap((wanted) =>
    things.filter(({ sort }) => sort === wanted).map(({ id }, index) => [id, keyOf(index, wanted)] as const),
  );
}

function grouped(
  { things }: Picture,
  sheets: readonly Sheet[],
  keys: ReadonlyMap<string, string>,
): { readonly keyed: readonly Thing[]; readonly unkeyed: readonly Thing[] } {
  const drawn = new Set(sheets.flatMap((sheet) => sheet.drawn.map(({ thing }) => thing)));
  const ordered = (['thing', 'van'] as const).flatMap((wanted) =>
    things.filter(({ sort }) => sort === wanted),
  );
  return {
    keyed: ordered.filter(({ id }) => keys.has(id)),
    unkeyed: ordered.filter(({ id }) => drawn.has(id) && !keys.has(id)),
  };
}

const mPerFt = 0.3048;
const barsM = {
  metric: [10, 5, 2, 1, 0.5, 0.2, 0.1],
  imperial: [30, 15, 6, 3, 2, 1].map((feet) => feet * mPerFt),
} as const;

/** "├────────┤ 1000 mm": the longest round length that takes no more than a quarter of the width. */
function scaleBar({ units }: Picture, perM: number, width: number): string {
  const bars = barsM[units];
  const lengthM = bars.find((each) => each * perM <= width / 4) ?? bars.at(-1) ?? 1;
  const columns = Math.round(lengthM * perM);
  const measure = formatMeasure({ kind: 'length', value: lengthM }, units, 0);
  const bar = columns < 2 ? '' : `├${'─'.repeat(Math.min(columns, width) - 1)}┤ ${measure}`;
  return `To scale  ${bar}`.trimEnd();
}

/** What each sort of line means, for those that are drawn. */
const meanings: readonly (readonly [pattern: RegExp, text: string])[] = [
  [/[━┃]/u, '━ load bay'],
  [/[═║]/u, '═ window'],
  [/[╍╏]/u, '╍ door, hatch or vent'],
  [/[┳┻]/u, '┳ rib'],
  [/░/u, '░ part of the van'],
  [/[┄┆]/u, '┄ behind something, below it, on the roof or under the floor'],
  [/•/u, '• room to open, slide out or turn'],
];

const noBreak = '\u00a0';

function signLines({ units, signs: said }: Picture, drawn: string, pen: Pen, width: number): string[] {
  const lines = meanings.filter(([pattern]) => pattern.test(drawn)).map(([, text]) => text);
  const joined = lines.map((text) => text.replaceAll(' ', noBreak)).join('   ');
  const explained = (['passage', 'narrowest', 'centre'] as const satisfies readonly Sign[]).flatMap(
    (sign) => {
      const text = said[sign];
      if (!text || !drawn.includes(signs[sign])) return [];
      return hanging(`${signs[sign]}  ${visible(renderPhrase(text, units))}`, 3, width);
    },
  );
  return [
    ...wrapped(joined, width)
      .map((line) => line.trimEnd())
      .map(pen.faint),
    ...explained,
  ];
}
