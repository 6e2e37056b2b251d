import { distance } from 'fastest-levenshtein';

/** The known name that is most like a mistyped one, if any is alike enough to be meant. */
export function nearest(written: string, known: Iterable<string>): string | undefined {
  const allowed = Math.max(1, Math.floor(written.length / 3));
  let best: string | undefined;
  let bestDistance = allowed + 1;
  for (const name of known) {
    const edits = distance(fold(written), fold(name));
    if (edits < bestDistance) {
      best = name;
      bestDistance = edits;
    }
  }
  return best;
}

const fold = (name: string): string => name.toLowerCase().replace(/[\s_-]+/g, '_');
