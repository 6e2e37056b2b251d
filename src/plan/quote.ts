const longest = 60;
// The two variation selectors that choose between a plain and a coloured sign may stay.
const unseen =
  /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]|(?![\uFE0E\uFE0F])\p{Default_Ignorable_Code_Point}|(?! )\p{Zs}/u;

/** A part of the plan's text for use within a sentence: in back quotes, and cut where it is long. */
export const quote = (text: string): string =>
  text.length > longest ? `\`${text.slice(0, longest).replace(/[\uD800-\uDBFF]$/, '')}…\`` : `\`${text}\``;

/** A value as it was written, or what sort of thing it is. */
export function quoteValue(value: unknown): string {
  if (Array.isArray(value)) return 'a list';
  return typeof value === 'object' && value !== null ? 'a section' : quote(String(value));
}

/**
 * The first character of a text that would not be seen on the page, as `U+00A0`: a control character, a line break,
 * a mark without width, half of a pair, or a space other than the usual one.
 */
export function unseenIn(text: string): string | undefined {
  const found = unseen.exec(text)?.[0];
  const code = found?.codePointAt(0);
  return code === undefined ? undefined : `U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
}
