import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkPlan } from '../../src/cli/check-plan.ts';
import { renderProblems } from '../../src/report/problems.ts';

const examples = fileURLToPath(new URL('../../examples/', import.meta.url));
const plans = readdirSync(examples, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.yaml'))
  .sort()
  .map((name) => [name, readFileSync(`${examples}${name}`, 'utf8')] as const);

/** One thing that may happen to a plan on its way from a tired head into a file. */
type Mutation = (text: string) => string;

const linesOf = (text: string): string[] => text.split('\n');
const at = (index: number, length: number): number => (length === 0 ? 0 : index % length);
const place = fc.nat(1_000_000);

const oneLine = (change: (lines: string[], index: number) => void) =>
  place.map(
    (index): Mutation =>
      (text) => {
        const lines = linesOf(text);
        change(lines, at(index, lines.length));
        return lines.join('\n');
      },
  );

const splice = (text: string, start: number, removed: number, added: string): string =>
  text.slice(0, start) + added + text.slice(start + removed);

const wherever = (change: (text: string, offset: number) => string) =>
  place.map(
    (index): Mutation =>
      (text) =>
        change(text, at(index, text.length)),
  );

const signs = [...'{}[]:,#&*!|>\'"%@`-?~\t\0\r\u00a0\u200b\ufeff\u2028\u202e²½±−×'];
const unit = fc.constantFrom('kg', 'mm', 'm', 'L', 'lb', 'gal', 'kk', '%', '', 'm2', 'kg/m2', 'in ± 5 %');
const value = fc.oneof(
  fc.constantFrom(
    '',
    '~',
    'true',
    '[]',
    '{}',
    '-1',
    '1e999',
    '3 kg',
    '0 mm',
    '50 %',
    '*x',
    '&x',
    'a + b',
    '((1))',
  ),
  fc.string({ unit: 'binary', maxLength: 12 }),
);

const mutation: fc.Arbitrary<Mutation> = fc.oneof(
  oneLine((lines, index) => lines.splice(index, 1)),
  oneLine((lines, index) => lines.splice(index, 0, lines[index] ?? '')),
  oneLine((lines, index) => {
    const [line = '', next = ''] = lines.slice(index, index + 2);
    lines.splice(index, 2, next, line);
  }),
  oneLine((lines, index) => {
    lines[index] = ` ${lines[index] ?? ''}`;
  }),
  oneLine((lines, index) => {
    lines[index] = (lines[index] ?? '').replace(/^ {1,2}/, '');
  }),
  oneLine((lines, index) => {
    lines[index] = (lines[index] ?? '').replace(/^ +/, '\t');
  }),
  wherever((text, offset) => text.slice(0, offset)),
  wherever((text, offset) => splice(text, offset, 1, '')),
  wherever((text, offset) => splice(text, offset, 2, [...text.slice(offset, offset + 2)].reverse().join(''))),
  fc.tuple(place, fc.constantFrom(...signs)).map(
    ([index, sign]): Mutation =>
      (text) =>
        splice(text, at(index, text.length), 0, sign),
  ),
  fc.tuple(place, fc.string({ unit: 'binary', maxLength: 20 })).map(
    ([index, added]): Mutation =>
      (text) =>
        splice(text, at(index, text.length), 0, added),
  ),
  fc.tuple(place, unit).map(
    ([index, other]): Mutation =>
      (text) =>
        changeNth(text, /(?<=\d )(?:kg|mm|m2|m|L|%)/g, index, other),
  ),
  fc.tuple(place, value).map(
    ([index, other]): Mutation =>
      (text) =>
        changeNth(text, /(?<=: )[^\s{[,}\]#][^,}\]\n#]*/g, index, other),
  ),
  fc.tuple(place, value).map(
    ([index, other]): Mutation =>
      (text) =>
        changeNth(text, /[a-z_]+(?=:)/g, index, other),
  ),
  fc.tuple(place, place).map(
    ([index, other]): Mutation =>
      (text) => {
        const numbers = [...text.matchAll(/\d+(?:\.\d+)?/g)].map(([number]) => number);
        return changeNth(text, /\d+(?:\.\d+)?/g, index, numbers[at(other, numbers.length)] ?? '1');
      },
  ),
);

function changeNth(text: string, pattern: RegExp, index: number, replacement: string): string {
  const found = [...text.matchAll(pattern)];
  const match = found[at(index, found.length)];
  return match ? splice(text, match.index, match[0].length, replacement) : text;
}

/** What must hold of any text at all; gives what the check ended with. */
async function checkAnything(text: string): Promise<'report' | 'problems'> {
  const checked = await checkPlan('plan.yaml', text, () => import('../../src/plan/calculator.ts'));
  if (checked.ok) {
    expect(checked.defects).toEqual([]);
    return 'report';
  }
  const { problems, document } = checked;
  expect(problems.length).toBeGreaterThan(0);
  for (const { span, message } of problems) {
    expect(span, message).toBeDefined();
    const { start, end } = span ?? { start: -1, end: -1 };
    expect(start, message).toBeGreaterThanOrEqual(0);
    expect(end, message).toBeGreaterThanOrEqual(start);
    expect(end, message).toBeLessThanOrEqual(text.length);
    const { line, column } = document.positionOf(start);
    expect(line, message).toBeLessThanOrEqual(text.split('\n').length);
    expect(column, message).toBeLessThanOrEqual((text.split('\n')[line - 1] ?? '').length + 1);
  }
  expect(renderProblems('plan.yaml', text, problems, document.positionOf)).not.toMatch(
    /\[object |\{section\}|\n {4}at /,
  );
  return 'problems';
}

describe.each(plans)('%s', (_name, original) => {
  test('is a plan to begin with', async () => {
    expect(await checkAnything(original)).toBe('report');
  });

  test('with one to four mutations ends in a report or in located problems, and quickly', async () => {
    const ends = { report: 0, problems: 0 };
    let slowest = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(mutation, { minLength: 1, maxLength: 4 }), async (mutations) => {
        const text = mutations.reduce((spoilt, mutate) => mutate(spoilt), original);
        const start = performance.now();
        ends[await checkAnything(text)] += 1;
        slowest = Math.max(slowest, performance.now() - start);
      }),
      { numRuns: 60, seed: 20260314 },
    );
    // Both sides of the fence were visited, or the mutations prove nothing.
    expect(ends.problems).toBeGreaterThan(5);
    expect(ends.report).toBeGreaterThan(2);
    expect(slowest).toBeLessThan(5_000);
  });
});

test('any text at all ends in a report or in located problems', async () => {
  const alphabet = fc.constantFrom(
    ...signs,
    ...'abc :\n  -',
    'van',
    'storystick: 1\n',
    'fixtures:\n',
    '3 kg',
  );
  await fc.assert(
    fc.asyncProperty(
      fc.oneof(fc.string({ unit: alphabet, maxLength: 60 }), fc.string({ unit: 'binary', maxLength: 60 })),
      async (text) => {
        await checkAnything(text);
      },
    ),
    { numRuns: 400, seed: 20260314, examples: [['[?'], ['{a: [?'], ["'"], ['"']] },
  );
});
