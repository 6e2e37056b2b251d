import * as z from 'zod';
import { plated } from './nameplates.ts';
import { nearest } from './nearest.ts';
import {
  examplesOf,
  type Measured,
  ofKind,
  type Quantity,
  type Reading,
  type Refusal,
  refused,
  unknownUnit,
} from './quantity.ts';
import { quote, quoteValue, unseenIn } from './quote.ts';
import type { DimensionName } from './units.ts';

// Otherwise zod compiles a function for every section, which takes longer than to check the sections of one plan.
z.config({ jitless: true });

/** Reads the text of a quantity; where expressions come in, it knows the plan's parameters. */
export type ReadQuantity = (text: string) => Reading<Measured>;

/** Stands in a message for the section that it is about; the section's path is not known here. */
export const thisSection = '{section}';

/** The message about a key that is not there. */
export const isMissing = 'is missing';

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
  const schema = z.strictObject(shape, {
    error: (issue) => {
      if (issue.code !== 'unrecognized_keys') return packRefusal(notASection(issue.input, example));
      return issue.keys.map((key) => packRefusal(unknownKey(key, known))).join(betweenKeys);
    },
  });
  return plated(schema, { takes: 'section', example });
}

function unknownKey(key: string, known: readonly string[]): Refusal {
  const unseen = unseenIn(key);
  if (unseen !== undefined) {
    return {
      message: `has a character that cannot be seen (${unseen})`,
      expected: 'the name typed anew, with the usual space key for its spaces',
    };
  }
  const [, name = '', value = ''] = /^([^:]+):(\S.*)$/s.exec(key) ?? [];
  if (known.includes(name)) {
    return { message: 'has no space after the colon', expected: quote(`${name}: ${value}`) };
  }
  if (key === '<<') {
    return {
      message: 'does not merge sections: it is not part of YAML 1.2',
      expected: 'the keys written out; `params` hold what several things share',
    };
  }
  if (/^\d/.test(key)) {
    return {
      message: `is not a key of ${thisSection}`,
      expected: 'a decimal point, if the comma before it was meant as one: `1.5 kg`, not `1,5 kg`',
    };
  }
  const meant = nearest(key, known);
  return {
    message: `is not a key of ${thisSection}`,
    expected: `${known.length > 1 ? 'one of ' : ''}${known.join(', ')}`,
    ...(meant === undefined ? {} : { meant }),
  };
}

/** A section whose keys are names of the user's own. */
export function named<Value extends z.core.SomeType>(value: Value, example: string) {
  const record = z.record(nameOfThing, value, {
    error: (issue) =>
      packRefusal(
        issue.code === 'invalid_key' ? badName(String(issue.input)) : notASection(issue.input, example),
      ),
  });
  return plated(record, { takes: 'section', example }).transform(withoutInheritance);
}

/** So that a thing called `toString` is found where there is one, and only there. */
function withoutInheritance<T extends object>(entries: T): T {
  const bare: T = Object.create(null);
  return Object.assign(bare, entries);
}

export const longestName = 60;
export const longestText = 500;

const isName = (name: string): boolean =>
  name.trim() === name && name !== '' && name.length <= longestName && unseenIn(name) === undefined;

const nameOfThing = plated(z.string().refine(isName), { takes: 'name' });

function badName(name: string): Refusal {
  const expected = 'a name in plain letters, such as `fresh tank`';
  const unseen = unseenIn(name);
  if (unseen !== undefined)
    return { message: `this name has a character that cannot be seen (${unseen})`, expected };
  if (name.trim() === '') return { message: 'this name is empty', expected };
  if (name.length > longestName) {
    return { message: `this name has ${name.length} characters`, expected: `at most ${longestName}` };
  }
  return { message: 'this name begins or ends with a space', expected: quote(name.trim()) };
}

const notASection = (input: unknown, example: string): Refusal =>
  input === undefined
    ? { message: isMissing, expected: `a section, such as \`${example}\`` }
    : input === null
      ? { message: 'has nothing in it', expected: `something, such as \`${example}\`, or no such key` }
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
  return plated(z.unknown(), { takes: 'filling' }).transform((raw, context): Filling => {
    if (raw === 'aboard') return { value: 1, halfWidth: 0, shared: [], kind: 'share' };
    if (raw === 'absent') return { value: 0, halfWidth: 0, shared: [], kind: 'share' };
    const reading = readAs(raw, read, ['share', 'mass', 'volume']);
    if (reading.ok && reading.value.value >= 0) return reading.value;
    const refusal = reading.ok ? { message: `${quoteValue(raw)} is negative` } : reading.refusal;
    const word = typeof raw === 'string' ? nearest(raw, ['aboard', 'absent']) : undefined;
    context.issues.push(
      customIssue(raw, {
        ...refusal,
        ...(refusal.unit === undefined && {
          expected:
            'a filling, such as `100 %` for full, `0 %` for empty, `20 L`, `15 kg`, `aboard` or `absent`',
        }),
        ...(word !== undefined && { meant: word }),
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
    params: { needsCalculator: refusal.needsCalculator === true, follows: refusal.follows === true },
  };
}

/** Nothing in a van is longer or farther off, cables included: a metre was probably written for a millimetre. */
const longestM = 30;

/** Colder than any place on earth, and hotter than any insulation bears, K. */
const coldestK = 273.15 - 100;
const hottestK = 273.15 + 300;

/** What no van has: a slip of the unit or of the decimal point. */
function beyondAll({ kind, value }: Filling, raw: unknown): Refusal | undefined {
  if (kind === 'length' && Math.abs(value) > longestM)
    return { message: `${quoteValue(raw)} is more than any van is long`, expected: `at most ${longestM} m` };
  if (kind === 'temperature' && (value < coldestK || value > hottestK))
    return {
      message: `${quoteValue(raw)} is no temperature that a van meets`,
      expected: 'from -100 to 300 degrees Celsius',
    };
  return undefined;
}

function bounded(read: ReadQuantity, kinds: readonly DimensionName[], least: number) {
  return plated(z.unknown(), { takes: 'quantity', kinds, least }).transform((raw, context): Filling => {
    const reading = readAs(raw, read, kinds);
    const beyond = reading.ok ? beyondAll(reading.value, raw) : undefined;
    if (reading.ok && reading.value.value >= least && !beyond) return reading.value;
    const refusal =
      beyond ??
      (reading.ok
        ? {
            message: `${quoteValue(raw)} is ${reading.value.value < 0 ? 'negative' : 'zero'}`,
            expected: `${least > 0 ? 'more than zero' : 'zero or more'}: ${examplesOf(kinds)}`,
          }
        : reading.refusal);
    context.issues.push(customIssue(raw, refusal));
    return z.NEVER;
  });
}

function readAs(
  raw: unknown,
  read: ReadQuantity,
  kinds: readonly DimensionName[],
): Reading<Quantity & { kind: DimensionName }> {
  const expected = examplesOf(kinds);
  if (raw === undefined || raw === null) return refused({ message: absence(raw), expected });
  if (typeof raw !== 'string') {
    return refused({ message: 'should be one value, not a section, a list or true/false', expected });
  }
  const measured = read(raw);
  if (measured.ok) return ofKind(measured.value, raw, kinds);
  const { unit } = measured.refusal;
  return refused({ expected, ...(unit === undefined ? measured.refusal : unknownUnit(unit, kinds)) });
}

/** Undefined is a key that is not there; null is a key with nothing after its colon. */
const absence = (input: unknown): string => (input === null ? 'has no value' : isMissing);

/** One of a few words. */
export function oneOf<const Words extends readonly [string, ...string[]]>(words: Words) {
  return z.enum(words, {
    error: ({ input }) => {
      const meant = typeof input === 'string' ? nearest(input, words) : undefined;
      return packRefusal({
        message: isAbsent(input) ? absence(input) : `${quoteValue(input)} is not a word that is known here`,
        expected: `one of ${words.join(', ')}`,
        ...(meant === undefined ? {} : { meant }),
      });
    },
  });
}

const isAbsent = (input: unknown): boolean => input === undefined || input === null;

/** A text in one line. */
export const words = (example: string) =>
  plated(
    z.string({
      error: ({ input }) =>
        packRefusal({
          message: isAbsent(input) ? absence(input) : 'should be text',
          expected: `text, such as \`${example}\``,
        }),
    }),
    { takes: 'words', example },
  ).superRefine((text, context) => {
    const refusal = refusalOfText(text, example);
    if (refusal) context.addIssue({ code: 'custom', message: packRefusal(refusal) });
  });

function refusalOfText(text: string, example: string): Refusal | undefined {
  const unseen = unseenIn(text);
  if (text.trim() === '') return { message: 'is empty', expected: `text, such as \`${example}\`` };
  if (text.includes('\n')) return { message: 'runs over several lines', expected: 'text in one line' };
  if (unseen !== undefined) {
    return {
      message: `has a character that cannot be seen (${unseen})`,
      expected: 'the text typed anew, with the usual space key for its spaces',
    };
  }
  if (text.length > longestText)
    return { message: `has ${text.length} characters`, expected: `at most ${longestText}` };
  return undefined;
}

export const trueOrFalse = z.boolean({
  error: ({ input }) =>
    packRefusal({
      message: isAbsent(input) ? absence(input) : `${quoteValue(input)} is neither true nor false`,
      expected: '`true` or `false`',
    }),
});

/** A calendar day, as ISO 8601 writes it. */
export const day = plated(z.unknown(), { takes: 'day' }).transform((raw, context): string => {
  if (typeof raw === 'string' && isDay(raw)) return raw;
  context.issues.push({
    code: 'custom',
    input: raw,
    message: packRefusal({
      message: isAbsent(raw) ? absence(raw) : `${quoteValue(raw)} is not a day of the calendar`,
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

interface Entries {
  readonly least: number;
  readonly most?: number;
  readonly refusal: Refusal;
}

/** A list, perhaps of so many entries. */
export function listOf<Value extends z.core.SomeType>(value: Value, example: string, entries?: Entries) {
  const list = z.array(value, {
    error: ({ input }) =>
      packRefusal({
        message: isAbsent(input) ? absence(input) : 'should be a list',
        expected: `such as \`${example}\``,
      }),
  });
  if (!entries) return plated(list, { takes: 'list', example });
  const { least, most = Infinity, refusal } = entries;
  return plated(
    list.refine(({ length }) => length >= least && length <= most, { error: packRefusal(refusal) }),
    { takes: 'list', example, least, most },
  );
}
