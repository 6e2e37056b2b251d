import type { Problem } from '../problem.ts';
import { quote } from '../quote.ts';

/** A step into a section by a key, or into a list by the number of its entry, from 0 on. */
export interface Step {
  readonly key: string | number;
  /** Written in quotes: it is one key, whatever is in it. */
  readonly quoted: boolean;
}

const expected =
  'keys with dots between, such as `fixtures.bed.mass`; a name with dots in it in quotes, and an entry of a list by its number, as in `van.load_bay.ribs[2].width`';

const step =
  /\s*(?:"((?:[^"\\]|\\.)*)"|'((?:[^']|'')*)'|([^."'[\]][^.[\]]*))\s*((?:\[\s*\d+\s*\]\s*)*)(\.|$)/sy;

/** Reads `fixtures.bed.mass`, `fixtures."kitchen unit".mass`, `fixtures.kitchen unit.mass`, `people.sleepers[1].stature`. */
export function parsePlanPath(
  written: string,
): { readonly steps: readonly Step[] } | { readonly problem: Problem } {
  const steps: Step[] = [];
  const wrong = (message: string) => ({ problem: { message: `${quote(written)} ${message}`, expected } });
  if (written.trim() === '') return wrong('names nothing in the plan');
  step.lastIndex = 0;
  for (let ended = false; !ended; ) {
    const found = step.exec(written);
    if (!found) return wrong('is no path of a plan');
    const [, double, single, plain, numbers = '', end] = found;
    const key = double?.replace(/\\(.)/gs, '$1') ?? single?.replaceAll("''", "'") ?? (plain ?? '').trim();
    steps.push({ key, quoted: plain === undefined });
    for (const [number] of numbers.matchAll(/\d+/g)) {
      if (Number(number) === 0) return wrong('has an entry 0: the first one is `[1]`');
      steps.push({ key: Number(number) - 1, quoted: true });
    }
    ended = end === '';
    if (!ended && step.lastIndex === written.length) return wrong('ends with a dot');
  }
  return { steps };
}

/** A path as it would be written on a command line. */
export const writtenPath = (path: readonly (string | number)[]): string =>
  path
    .map((key) =>
      typeof key === 'number' ? `[${key + 1}]` : /[."'[\]]|^\s|\s$|^$/.test(key) ? JSON.stringify(key) : key,
    )
    .reduce((text, part) => (part.startsWith('[') || text === '' ? text + part : `${text}.${part}`), '');
