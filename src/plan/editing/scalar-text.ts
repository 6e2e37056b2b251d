import { isScalar, parse, Scalar } from 'yaml';

/** A value as it was typed on the command line: how it is written in YAML, and the data that it is. */
export interface TypedValue {
  readonly text: string;
  readonly data: unknown;
  readonly isCollection: boolean;
}

/**
 * Reads what was typed as a builder means it: `26 kg`, `true`, `[cable, water]`, `{length: 600 mm}`. What is no YAML of
 * one line is text to be put in quotes.
 */
export function typedValue(written: string): TypedValue {
  const text = written.trim();
  try {
    const data: unknown = parse(text, {
      stringKeys: true,
      // A number stays as it was written, as in a plan.
      customTags: (tags) => tags.filter((tag) => typeof tag === 'string' || !/:(?:int|float)$/.test(tag.tag)),
    });
    const isCollection = typeof data === 'object' && data !== null;
    const whole = isCollection ? /^[[{]/.test(text) : /^["']/.test(text) || String(data) === text;
    if (whole && !/[\r\n]/.test(text)) return { text, data, isCollection };
  } catch {
    // No YAML: text.
  }
  return { text: JSON.stringify(text), data: text, isCollection: false };
}

/** The same value in the quotes that stood round the value before it. */
export function inQuotesOf(before: Scalar | undefined, value: TypedValue): string {
  const plain = typeof value.data === 'string' && value.text === value.data;
  if (!plain || !before) return value.text;
  if (before.type === Scalar.QUOTE_DOUBLE) return JSON.stringify(value.text);
  if (before.type === Scalar.QUOTE_SINGLE) return `'${value.text.replaceAll("'", "''")}'`;
  return value.text;
}

/** The same value in quotes, where it would be read as something else without. */
export const quoted = ({ data, text }: TypedValue): string =>
  typeof data === 'string' ? JSON.stringify(data) : text;

/** A key as it is written: in quotes where it needs them, or where its neighbour has them. */
export function keyText(key: string, neighbour: unknown): string {
  const quotes = isScalar(neighbour) && neighbour.type === Scalar.QUOTE_DOUBLE;
  return !quotes && /^[\p{L}_][\p{L}\p{N} _.-]*$/u.test(key) && parse(key) === key
    ? key
    : JSON.stringify(key);
}

/** A text as a plan writes it: in quotes where it would be read as something else without. */
export function scalarText(text: string): string {
  const { data, isCollection } = typedValue(text);
  return !isCollection && data === text && !/^["']|: |:$| #/.test(text) && typedValue(text).text === text
    ? text
    : JSON.stringify(text);
}
