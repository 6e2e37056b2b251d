import type { Side } from '../../engine/compare/comparison.ts';

const longestName = 14;

/** A short name for each variant: its file's, without folder and ending; or A, B, C where those would not do. */
export function shortNames(sides: readonly Side[]): readonly string[] {
  const names = sides.map(({ file }) => file.replace(/^.*[\\/]/, '').replace(/\.ya?ml$/i, ''));
  const areClear =
    new Set(names).size === names.length &&
    names.every((name) => name !== '' && name.length <= longestName && /^[\w.-]+$/.test(name));
  return areClear ? names : sides.map((_, at) => letterOf(at));
}

/** A to Z, then A2 and so on. */
const letterOf = (at: number): string =>
  String.fromCharCode(65 + (at % 26)) + (at < 26 ? '' : String(Math.floor(at / 26) + 1));
