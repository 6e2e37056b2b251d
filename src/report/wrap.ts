import stringWidth from 'fast-string-width';
import { wrapAnsi } from 'fast-wrap-ansi';

const noBreak = '\u00a0';

/** Keeps a number and its unit in one line: "1,980 kg" is never torn at its space. */
const keepUnits = (text: string): string =>
  text.replace(
    /(?<=\d) (?=(?:k?g|lb|oz|[cm]?m|in|ft|L|%|points|m?A|V|W|k?Wh|Ah|mohm|h|min|s|°[CF]|K|Pa|m?bar|psi|ppm)(?![\p{L}\d]))/gu,
    noBreak,
  );

/** Breaks text into lines of at most `width` columns, at spaces where it can, inside a word where it must. */
export const wrapped = (text: string, width: number): string[] =>
  wrapAnsi(loosened(keepUnits(text), width), width, { hard: true })
    .replaceAll(noBreak, ' ')
    .split('\n');

/** What was to be kept in one line but is longer than one may be broken at its spaces after all, not anywhere. */
const loosened = (text: string, width: number): string =>
  text.includes(noBreak)
    ? text
        .split(' ')
        .map((word) => (stringWidth(word) <= width ? word : keepUnits(word.replaceAll(noBreak, ' '))))
        .join(' ')
    : text;

/** The width of the longest piece of a text that is left whole in a line, if there is room for it. */
export const widestWord = (text: string): number =>
  Math.max(
    0,
    ...keepUnits(text)
      .split(' ')
      .map((word) => stringWidth(word)),
  );

/**
 * Breaks text into lines of at most `width` columns, all but the first indented. The first `indent` characters must
 * be narrow; they stay in front of the first line.
 */
export function hanging(text: string, indent: number, width: number): string[] {
  const [first = '', ...rest] = wrapped(text.slice(indent), width - indent);
  return [text.slice(0, indent) + first, ...rest.map((line) => ' '.repeat(indent) + line)];
}

/** Breaks text into indented lines of at most `width` columns; no lines if there is no text. */
export const indented = (text: string, indent: number, width: number): string[] =>
  text === '' ? [] : wrapped(text, width - indent).map((line) => ' '.repeat(indent) + line);

/** Breaks text into lines of at most `width` columns, all but the first indented. */
export const outdented = (text: string, indent: number, width: number): string[] =>
  wrapped(text, width - indent).map((line, at) => (at === 0 ? line : ' '.repeat(indent) + line));

/** A heading with a rule of its own width below it; one that is too long for a line takes several. */
export function underlined(
  heading: string,
  mark: string,
  width: number,
): { readonly title: readonly string[]; readonly rule: string } {
  const title = wrapped(heading, width);
  return { title, rule: mark.repeat(Math.max(...title.map((line) => stringWidth(line)))) };
}

/**
 * Joins labels and values to one text, "measured 1,980 kg, limit at most 2,240 kg", that is wrapped only between
 * its fields; fields without a value are left out.
 */
export const fieldList = (
  fields: readonly (readonly [label: string, value: string])[],
  between = ', ',
): string =>
  fields
    .filter(([, value]) => value !== '')
    .map(([label, value]) => (label === '' ? value : `${label} ${value}`).replaceAll(' ', noBreak))
    .join(between);
