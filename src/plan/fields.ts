import * as z from 'zod';
import { nearest } from './nearest.ts';
import { type Measured, ofKind, type Quantity, type Reading, type Refusal, refused } from './quantity.ts';
import { type DimensionName, dimensions } from './units.ts';

/** Reads the text of a quantity; where expressions come in, it knows the plan's parameters. */
export type ReadQuantity = (text: string) => Reading<Measured>;

/** An issue's message carries more than a sentence: what was expected, and what was perhaps meant. */
export const packRefusal = ({ message, expected, meant }: Refusal): string =>
  [message, expected ?? '', meant ?? ''].join('\u0000');

export function unpackRefusal(packed: string): Refusal {
  const [message = '', expected = '', meant = ''] = packed.split('\u0000');
  return { message, ...(expected === '' ? {} : { expected }), ...(meant === '' ? {} : { meant }) };
}

/** Separates the words for several unknown keys within one issue, in the order of its `keys`. */
export const betweenKeys = '\u0001';

/** A section with just these keys. A key that is not among them is an error that names the nearest one. */
export function section<Shape extends z.core.$ZodLooseShape>(shape: Shape, example: string) {
  const known = Object.keys(shape);
  return z.strictObject(shape, {
    error: (issue) => {
      if (issue.code !== 'unrecognized_keys') return packRefusal(notASection(issue.input, example));
      return issue.keys
        .map((key) => {
          const meant = nearest(key, known);
          return packRefusal({
            message: `\`${key}\` is not a key of this section`,
            expected: `one of ${known.join(', ')}`,
            ...(meant === undefined ? {} : { meant }),
          });
        })
        .join(betweenKeys);
    },
  });
}

/** A section whose keys are names of the user's own. */
export function named<Value extends z.core.SomeType>(value: Value, example: string) {
  return z.record(nameOfThing, value, {
    error: (issue) => packRefusal(issue.code === 'invalid_key' ? badName : notASection(issue.input, example)),
  });
}

const badName: Refusal = {
  message: 'this name cannot be used',
  expected: 'a name of 1 to 60 printable characters, such as `fresh tank`',
};

const nameOfThing = z.string().regex(/^[^\p{C}\p{Zl}\p{Zp}]{1,60}$/u);

const notASection = (input: unknown, example: string): Refusal =>
  input === undefined
    ? { message: 'is missing', expected: `a section, such as \`${example}\`` }
    : { message: 'should be a section with keys of its own', expected: `such as \`${example}\`` };

/** A quantity of one of these kinds, read into SI. */
export function quantity(read: ReadQuantity, ...kinds: readonly DimensionName[]) {
  return bounded(read, kinds, -Infinity);
}

/** A quantity that cannot be negative. */
export function amount(read: ReadQuantity, ...kinds: readonly DimensionName[]) {
  return bounded(read, kinds, 0);
}

/** A quantity that must be more than nothing. */
export function positive(read: ReadQuantity, ...kinds: readonly DimensionName[]) {
  return bounded(read, kinds, Number.MIN_VALUE);
}

/** How full a tank or store is, or whether a seat is taken. */
export function filling(read: ReadQuantity) {
  return z.unknown().transform((raw, context): Filling => {
    if (raw === 'aboard') return { value: 1, halfWidth: 0, shared: [], kind: 'share' };
    if (raw === 'absent') return { value: 0, halfWidth: 0, shared: [], kind: 'share' };
    const reading = readAs(raw, read, ['share', 'mass', 'volume']);
    if (reading.ok && reading.value.value >= 0) return reading.value;
    const refusal = reading.ok ? { message: `\`${String(raw)}\` is negative` } : reading.refusal;
    context.issues.push(
      customIssue(raw, {
        ...refusal,
        expected: 'a filling, such as `50 %`, `20 L`, `15 kg`, `aboard` or `absent`',
      }),
    );
    return z.NEVER;
  });
}

export type Filling = Quantity & { kind: DimensionName };

function customIssue(raw: unknown, refusal: Refusal) {
  return {
    code: 'custom' as const,
    input: raw,
    message: packRefusal(refusal),
    params: { needsCalculator: refusal.needsCalculator === true },
  };
}

function bounded(read: ReadQuantity, kinds: readonly DimensionName[], least: number) {
  return z.unknown().transform((raw, context): Filling => {
    const reading = readAs(raw, read, kinds);
    if (reading.ok && reading.value.value >= least) return reading.value;
    const refusal = reading.ok
      ? {
          message: `\`${String(raw)}\` is ${least === 0 ? 'negative' : 'not more than nothing'}`,
          expected: examples(kinds),
        }
      : reading.refusal;
    context.issues.push(customIssue(raw, refusal));
    return z.NEVER;
  });
}

function readAs(
  raw: unknown,
  read: ReadQuantity,
  kinds: readonly DimensionName[],
): Reading<Quantity & { kind: DimensionName }> {
  if (raw === undefined || raw === null) return refused({ message: 'is missing', expected: examples(kinds) });
  if (typeof raw !== 'string' && typeof raw !== 'number') {
    return refused({
      message: 'should be one value, not a section, a list or true/false',
      expected: examples(kinds),
    });
  }
  const text = String(raw);
  const measured = read(text);
  return measured.ok ? ofKind(measured.value, text, kinds) : measured;
}

const examples = (kinds: readonly DimensionName[]): string =>
  kinds.map((kind) => `${dimensions[kind].called}, such as \`${dimensions[kind].example}\``).join(', or ');

/** One of a few words. */
export function oneOf<const Words extends readonly [string, ...string[]]>(words: Words) {
  return z.enum(words, {
    error: (issue) => {
      const meant = typeof issue.input === 'string' ? nearest(issue.input, words) : undefined;
      return packRefusal({
        message:
          issue.input === undefined
            ? 'is missing'
            : `\`${String(issue.input)}\` is not a word that is known here`,
        expected: `one of ${words.join(', ')}`,
        ...(meant === undefined ? {} : { meant }),
      });
    },
  });
}

/** A text in one line. */
export const words = (example: string) =>
  z.string({
    error: (issue) =>
      packRefusal({
        message: issue.input === undefined || issue.input === null ? 'is missing' : 'should be text',
        expected: `text, such as \`${example}\` (in quotes if it looks like a number)`,
      }),
  });

export const trueOrFalse = z.boolean({
  error: (issue) =>
    packRefusal({
      message:
        issue.input === undefined ? 'is missing' : `\`${String(issue.input)}\` is neither true nor false`,
      expected: '`true` or `false`',
    }),
});

/** A calendar day, as ISO 8601 writes it. */
export const day = z.unknown().transform((raw, context): string => {
  if (typeof raw === 'string' && isDay(raw)) return raw;
  context.issues.push({
    code: 'custom',
    input: raw,
    message: packRefusal({
      message:
        raw === undefined || raw === null ? 'is missing' : `\`${String(raw)}\` is not a day of the calendar`,
      expected: 'a date as year-month-day, such as `2026-03-14`',
    }),
  });
  return z.NEVER;
});

function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const date = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text);
}

/** A list. */
export const listOf = <Value extends z.core.SomeType>(value: Value, example: string) =>
  z.array(value, {
    error: () => packRefusal({ message: 'should be a list', expected: `such as \`${example}\`` }),
  });
