import type { Complain, Path } from './cross-check.ts';
import { nearestOf } from './nearest.ts';
import { quote } from './quote.ts';

const mostListed = 12;

const listed = (names: readonly string[]): string =>
  `one of ${names.slice(0, mostListed).join(', ')}${names.length > mostListed ? ` and ${names.length - mostListed} more` : ''}`;

/** Refuses a name that refers to nothing. `what`: "is not in the plan"; `otherwise`: what to write where there is none. */
export function refersTo(
  names: Iterable<string>,
  what: string,
  otherwise: string,
  complain: Complain,
): (name: string | undefined, path: Path) => void {
  const known = [...names];
  const nearest = nearestOf(known);
  return (name, path) => {
    if (name === undefined || known.includes(name)) return;
    complain(path, `${quote(name)} ${what}`, {
      expected: known.length > 0 ? listed(known) : otherwise,
      meant: nearest(name),
      about: name,
    });
  };
}

/** Refuses a part of a whole that is none. */
export function isPart(
  complain: Complain,
): (share: { readonly value: number } | undefined, path: Path) => void {
  return (share, path) => {
    if (share && (share.value > 1 || share.value === 0))
      complain(path, 'this share is not a part of the whole', {
        expected: 'more than `0 %` and at most `100 %`',
      });
  };
}

/** Refuses a count that is no whole number. */
export function isWhole(
  complain: Complain,
): (count: { readonly value: number } | undefined, path: Path) => void {
  return (count, path) => {
    if (count && !Number.isInteger(count.value))
      complain(path, 'a count is a whole number', { expected: 'such as `2`' });
  };
}
