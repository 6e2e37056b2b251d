import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseDocument } from '../../src/plan/document.ts';
import { type Direction, directions, moveThing } from '../../src/plan/editing/move-thing.ts';
import { parsePlanPath, writtenPath } from '../../src/plan/editing/plan-path.ts';
import { typedValue } from '../../src/plan/editing/scalar-text.ts';
import { setValue } from '../../src/plan/editing/set-value.ts';
import { loadPlan } from '../../src/plan/load.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { changedLines } from '../../src/report/changed-lines.ts';

const examples = readdirSync('examples', { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => readFileSync(`examples/${name}`, 'utf8'));

/** The same plan with other line breaks, with or without one at its end. */
const styles: readonly ((text: string) => string)[] = [
  (text) => text,
  (text) => text.replaceAll('\n', '\r\n'),
  (text) => text.trimEnd(),
];
const plans = examples.flatMap((text) => styles.map((style) => style(text)));

type Path = readonly (string | number)[];

function* valuesIn(data: unknown, path: Path = []): Generator<Path> {
  if (Array.isArray(data))
    for (const [index, each] of data.entries()) yield* valuesIn(each, [...path, index]);
  else if (typeof data === 'object' && data !== null)
    for (const [key, each] of Object.entries(data)) yield* valuesIn(each, [...path, key]);
  else yield path;
}

const targets = plans.flatMap((text) =>
  [...valuesIn(parseDocument(text).document.data)].map((path) => ({ text, path })),
);

function set(text: string, path: Path, value: string): string {
  const parsed = parsePlanPath(writtenPath(path));
  if (!('steps' in parsed)) throw new Error(parsed.problem.message);
  const edit = setValue(text, parsed.steps, typedValue(value));
  if ('problem' in edit) throw new Error(`${writtenPath(path)}: ${edit.problem.message}`);
  return edit.text;
}

const value = fc.oneof(
  fc.constantFrom('26 kg', '1.25 m ± 5 mm', '-40 mm', '2 * shelf_mass', 'true', '[cable]', '{a: b}', '12'),
  fc.string({ maxLength: 20 }),
);

describe('set', () => {
  test('changes the one line of the value, and there nothing but the value; set back, the file is as it was', () => {
    fc.assert(
      fc.property(fc.constantFrom(...targets), value, ({ text, path }, typed) => {
        const edited = set(text, path, typed);
        const { document } = parseDocument(text);
        const span = document.spanOf(path);
        const by = edited.slice(span.start, edited.length - (text.length - span.end));
        expect(edited).toBe(text.slice(0, span.start) + by + text.slice(span.end));
        expect(by).not.toContain('\n');
        for (const { number } of changedLines(text, edited))
          expect(number).toBe(document.positionOf(span.start).line);
        // A section or a list is not put away for one value.
        if (/^[[{]/.test(by)) return;
        // Quotes that the new value needed stay when the old one comes back.
        const back = set(edited, path, text.slice(span.start, span.end));
        if (/^["']/.test(by)) expect(parseDocument(back).document.data).toEqual(document.data);
        else expect(back).toBe(text);
      }),
      { numRuns: 60 },
    );
  });

  test('adds a key by one line or within one, and takes nothing away', () => {
    const sections = targets.filter(({ path }) => path.length > 1 && typeof path.at(-1) === 'string');
    fc.assert(
      fc.property(fc.constantFrom(...sections), ({ text, path }) => {
        const added = [...path.slice(0, -1), 'entirely new'];
        const edited = set(text, added, '5 kg');
        const lines = changedLines(text, edited).filter(({ sign }) => sign === '-');
        expect(lines.length).toBeLessThanOrEqual(1);
        // What was there is there in the same order: the new text only goes in between.
        let at = 0;
        for (const character of edited) if (character === text[at]) at += 1;
        expect(at).toBe(text.length);
        expect(edited.length - text.length).toBeLessThan(80);
        expect(edited.includes('\r\n')).toBe(text.includes('\r\n'));
      }),
      { numRuns: 60 },
    );
  });
});

const loadCalculator = () => import('../../src/plan/calculator.ts');

async function load(text: string) {
  const { document, plan, problems } = await loadPlan(text, loadCalculator);
  if (!plan) throw new Error(problems.map(({ message }) => message).join('\n'));
  return { document, plan };
}

const opposite: Readonly<Record<Direction, Direction>> = {
  rearwards: 'forwards',
  forwards: 'rearwards',
  left: 'right',
  right: 'left',
  up: 'down',
  down: 'up',
};

const placeOf = (plan: Plan, name: string) => (plan.fixtures?.[name] ?? plan.tanks?.[name])?.at;

describe('move', () => {
  const curlew = examples.find((text) => text.includes('Curlew, revision 4')) ?? '';
  const unit = fc.constantFrom(
    { unit: 'mm', metres: 0.001 },
    { unit: 'cm', metres: 0.01 },
    { unit: 'in', metres: 0.0254 },
  );

  test('changes one line by the distance in its sense, keeps the key and the unit, and is undone by its opposite', async () => {
    const { plan, document } = await load(curlew);
    const names = [...Object.keys(plan.fixtures ?? {}), ...Object.keys(plan.tanks ?? {})];
    let moved = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...names),
        fc.constantFrom(...directions),
        fc.integer({ min: 1, max: 60 }),
        unit,
        async (name, direction, number, { unit: symbol, metres }) => {
          const by = { written: `${number} ${symbol}`, lengthM: number * metres };
          const done = moveThing(curlew, plan, document, name, [{ direction, by }]);
          if ('problem' in done) {
            expect(done.problem.message).toMatch(/its place is still open/);
            return;
          }
          moved += 1;
          const lines = changedLines(curlew, done.text);
          expect(lines.map(({ sign }) => sign)).toEqual(['-', '+']);
          const now = await load(done.text);
          const [before, after] = [placeOf(plan, name), placeOf(now.plan, name)];
          const along = direction === 'rearwards' || direction === 'right' || direction === 'up' ? 1 : -1;
          const change = (key: 'from_front' | 'from_rear' | 'from_left' | 'from_right' | 'above_floor') =>
            after?.[key] && before?.[key] ? after[key].value - before[key].value : 0;
          const shift =
            change('from_front') -
            change('from_rear') +
            change('from_left') -
            change('from_right') +
            change('above_floor');
          const fresh = before?.centred || (before && !before.above_floor && after?.above_floor);
          if (!fresh) expect(shift).toBeCloseTo(along * by.lengthM, 9);
          const back = moveThing(done.text, now.plan, now.document, name, [
            { direction: opposite[direction], by },
          ]);
          if ('problem' in back) throw new Error(back.problem.message);
          if (!fresh) expect(withoutZeros(back.text)).toBe(withoutZeros(curlew));
        },
      ),
      { numRuns: 40 },
    );
    expect(moved).toBeGreaterThan(15);
  });
});

/** `1.20 m` there and back may end with more decimals than it began with. */
const withoutZeros = (text: string): string => text.replace(/(\.\d*?)0+(?= )/g, '$1').replace(/\.(?= )/g, '');
