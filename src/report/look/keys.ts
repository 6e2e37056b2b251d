/** Letters of keys. Those that look like a line or a sign of the picture are left out. */
const alphabets = { thing: 'ABCDEFGHJKLMNPQRSTUVWXYZ', van: 'abcdefghijkmnpqrstuvwyz' } as const;

/** A, B, … Z, AA, AB, … */
export function keyOf(index: number, sort: keyof typeof alphabets): string {
  const letters = alphabets[sort];
  let key = '';
  for (let rest = index + 1; rest > 0; rest = Math.floor((rest - 1) / letters.length))
    key = (letters[(rest - 1) % letters.length] ?? '') + key;
  return key;
}
