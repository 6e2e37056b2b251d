import { expect, test } from 'vitest';
import { visible } from '../../src/report/visible.ts';

test.each([
  ['plain words', 'bed, 1900 mm', 'bed, 1900 mm'],
  ['other scripts', '冷蔵庫 مطبخ Küche', '冷蔵庫 مطبخ Küche'],
  ['line breaks and tabs', 'a\r\nb\tc\u2028d', 'a b c d'],
  ['an escape sequence', '\u001b[31mred\u001b[0m', '\\u{1b}[31mred\\u{1b}[0m'],
  ['the one-byte escape', '\u009b31m', '\\u{9b}31m'],
  ['a bell and a backspace', '\u0007\b', '\\u{7}\\u{8}'],
  ['a direction override', 'a\u202egpj.exe', 'a\\u{202e}gpj.exe'],
  ['half a character', 'a\ud83d', 'a\\u{d83d}'],
  ['joiners and selectors', '👨\u200d👩 ❤\ufe0f soft\u00adly', '👨👩 ❤ softly'],
])('%s', (_, text, expected) => {
  expect(visible(text)).toBe(expected);
});
