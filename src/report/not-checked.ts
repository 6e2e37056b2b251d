import { type Finding, saysTooLittle } from '../engine/finding.ts';
import type { Pen } from './pen.ts';
import { visible } from './visible.ts';
import { wrapped } from './wrap.ts';

/** A check that could not begin, for the plan lacks what it needs: the keys to add are all there is to say of it. */
export const couldNotBegin = ({ reason }: Finding): boolean => reason === saysTooLittle;

/** Checks that could not begin, one line each, with the keys that would let them. */
export function notCheckedLines(findings: readonly Finding[], pen: Pen, width: number): string[] {
  if (findings.length === 0) return [];
  const [first = '', ...rest] = wrapped(
    'not checked, since the plan does not say enough; the keys to add:',
    width,
  );
  const verdict = findings[0]?.verdict ?? 'not checked';
  return [
    pen.verdict[verdict](verdict) + first.slice(verdict.length),
    ...rest,
    ...findings.flatMap(({ title, missing = [], rule }) =>
      wrapped(visible(`${title}: ${missing.join(', ')} (${rule})`), width - 4).map(
        (line, at) => `${at === 0 ? '  ' : '    '}${line}`,
      ),
    ),
  ];
}
