/**
 * Makes text from a plan fit for a terminal: line breaks and tabs become spaces, invisible marks that only change
 * how a neighbour is drawn are left out, and whatever could steer the terminal or turn the reading direction round
 * (control characters, escape sequences, direction overrides, lone surrogates) is written out, e.g. `\u{1b}`.
 */
export const visible = (text: string): string =>
  text
    .replace(/[\t\n\v\f\r\u0085\p{Zl}\p{Zp}]+/gu, ' ')
    .replace(/[\p{Cc}\p{Cs}\p{Bidi_Control}]/gu, writtenOut)
    .replace(/\p{Default_Ignorable_Code_Point}/gu, '')
    .replace(/\p{Cf}/gu, writtenOut);

const writtenOut = (character: string): string => `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`;
