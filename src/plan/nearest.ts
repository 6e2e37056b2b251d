import { distance } from 'fastest-levenshtein';

/** Finds the known name that a mistyped one was probably meant to be; `except` is never it. */
export type Nearest = (written: string, except?: string) => string | undefined;

/** The known name that is most like a mistyped one, if any is alike enough to be meant. */
export const nearest = (written: string, known: Iterable<string>): string | undefined =>
  nearestOf(known)(written);

/**
 * The same for many mistyped names among the same known ones, such as the names of a plan's things. Letter case and
 * the separators space, hyphen and underscore do not count; swapped letters count as one slip; of names as near, one
 * as long as the mistyped wins, then the first. Where none is alike, a name that begins or ends with the whole of
 * what was written will do.
 */
export function nearestOf(known: Iterable<string>): Nearest {
  const folded = [...new Set(known)].map((name) => ({ name, as: fold(name), letters: sorted(fold(name)) }));
  return (written, except) => {
    const typed = fold(written);
    const typedLetters = sorted(typed);
    const allowed = typed.length < 2 ? 0 : Math.max(1, Math.floor(typed.length / 3));
    let best: string | undefined;
    let least = allowed + 1;
    for (const { name, as, letters } of folded) {
      const unlike = Math.abs(as.length - typed.length);
      if (unlike >= least || name === except) continue;
      const swapped = as !== typed && letters === typedLetters;
      const slips = (swapped ? 1 : distance(typed, as)) + (unlike === 0 ? 0 : 0.5);
      if (slips < least) {
        best = name;
        least = slips;
      }
    }
    return best ?? folded.find(({ name, as }) => name !== except && isPart(typed, as))?.name;
  };
}

const isPart = (part: string, whole: string): boolean =>
  part.length >= 3 && (whole.startsWith(part) || whole.endsWith(part));

const fold = (name: string): string => name.toLowerCase().replace(/[\s_-]+/g, '_');

const sorted = (text: string): string => [...text].sort().join('');
