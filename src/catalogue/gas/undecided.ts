import { type Codes, codesNames } from '../codes.ts';

/** Said where a plan names no codes, and what they ask for is not the same: whose was taken. */
export function strictestTaken({ codes }: { readonly codes: readonly Codes[] }): string {
  const names = codes.map((each) => `the ${codesNames[each]}`.replace('the Australia', 'Australia'));
  const whose =
    names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;
  return `The plan names no codes, so the strictest of the tables is taken: that of ${whose}. \`codes\` says which hold.`;
}
