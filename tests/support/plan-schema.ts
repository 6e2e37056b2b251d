import { Ajv, type ErrorObject } from 'ajv';
import { parseDocument as parseYaml } from 'yaml';
import type { PlanDocument } from '../../src/plan/document.ts';
import type { JsonSchema } from '../../src/plan/json-schema.ts';
import type { Problem } from '../../src/plan/problem.ts';

/** A validator that knows nothing of us. Whether a day is in the calendar is left to `storystick check`. */
export const validatorOf = (schema: JsonSchema) =>
  new Ajv({ allErrors: true, strict: true, allowUnionTypes: true, formats: { date: true } }).compile(schema);

/** A plan's data as an editor reads them; undefined where the text is no YAML. */
export function asAnEditorReads(text: string): { readonly data: unknown } | undefined {
  const document = parseYaml(text, { uniqueKeys: false, logLevel: 'silent' });
  if (document.errors.length > 0) return undefined;
  try {
    return { data: document.toJS({ maxAliasCount: -1 }) };
  } catch {
    return undefined;
  }
}

/**
 * The spans that errors of a validator point at. Where a value may be one of two things, the one that got furthest is the
 * one that was meant, and that neither fits is not said once more.
 */
export function spansOf(
  errors: readonly ErrorObject[],
  document: PlanDocument,
): ReadonlyMap<string, ErrorObject> {
  const choices = errors.filter(({ keyword }) => keyword === 'anyOf').map(({ instancePath }) => instancePath);
  const meant = errors.filter(
    ({ keyword, instancePath: at }) =>
      keyword !== 'anyOf' &&
      !(choices.includes(at) && keyword === 'type' && errors.some((other) => isWithin(other, at))),
  );
  return new Map(meant.map((error) => [spanOf(error, document), error] as const));
}

const isWithin = ({ instancePath, keyword }: ErrorObject, path: string): boolean =>
  instancePath.startsWith(`${path}/`) || (instancePath === path && keyword === 'additionalProperties');

function spanOf(
  { instancePath, keyword, params, propertyName }: ErrorObject,
  document: PlanDocument,
): string {
  const path = instancePath
    .split('/')
    .slice(1)
    .map((part) => part.replaceAll('~1', '/').replaceAll('~0', '~'))
    .map((part) => (/^\d+$/.test(part) ? Number(part) : part));
  const named: unknown = params.additionalProperty ?? params.propertyName ?? propertyName;
  if (typeof named === 'string') return textOf(document.keySpanOf([...path, named]));
  if (keyword === 'required') return textOf(document.spanOf([...path, String(params.missingProperty)]));
  return textOf(document.spanOf(path));
}

export const textOf = (span: Problem['span']): string => (span ? `${span.start}-${span.end}` : 'nowhere');
