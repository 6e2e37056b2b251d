import { parse } from 'yaml';
import * as z from 'zod';
import { describedAt, ownExample } from './descriptions.ts';
import { longestName, longestText } from './fields.ts';
import { type Nameplate, nameplates } from './nameplates.ts';
import { refused } from './quantity.ts';
import { planSchema } from './schema.ts';
import { type DimensionName, dimensions } from './units.ts';

export type JsonSchema = z.core.JSONSchema.BaseSchema;

/**
 * The plan's format as a JSON Schema, for completion, hover and errors in editors. It says what can be said of each key
 * by itself; units, arithmetic, references and what keys say together are left to `storystick check`. Draft 7, because
 * editors know it best.
 */
export function planJsonSchema(): JsonSchema {
  const bare = z.toJSONSchema(
    planSchema(() => refused({ message: '' })),
    {
      io: 'input',
      target: 'draft-7',
      override: ({ zodSchema, jsonSchema }) => {
        const nameplate = nameplates.get(zodSchema);
        if (nameplate) Object.assign(jsonSchema, saysOf(nameplate));
        if (jsonSchema.const === '1') versionAsTyped(jsonSchema);
      },
    },
  );
  return {
    $schema: 'http://json-schema.org/draft-07/schema#',
    // No title: editors would print it above every key.
    description: 'A plan of storystick, format 1.',
    ...described(bare, ''),
  };
}

const someText = { type: 'string', minLength: 1 } as const;

/** What is told of a plain number where the whole text of a quantity may be one: the editor reads `4` as a number. */
const number = (least: number): JsonSchema =>
  least > 0 ? { exclusiveMinimum: 0 } : least === 0 ? { minimum: 0 } : {};

function saysOf(nameplate: Nameplate): JsonSchema {
  switch (nameplate.takes) {
    case 'quantity':
      return quantityOf(nameplate.kinds, nameplate.least);
    case 'filling':
      return {
        anyOf: [{ enum: ['aboard', 'absent'] }, someText, { const: 0 }],
        description:
          'How full: `100 %`, `20 L` or `15 kg`; of a seat, `aboard` or `absent`. Arithmetic over `params` will do.',
        examples: ['100 %', '20 L', 'aboard'],
      };
    case 'conductor':
      return {
        ...someText,
        description:
          'A size of conductor: the cross-section of its copper in `mm2`, or a gauge with its system, `AWG` or `SAE`.',
        examples: ['2.5 mm2', '10 AWG'],
      };
    case 'day':
      return {
        type: 'string',
        format: 'date',
        pattern: '^\\d{4}-\\d{2}-\\d{2}$',
        description: 'A date as year-month-day.',
        examples: ['2026-03-14'],
      };
    case 'name':
      return { type: 'string', minLength: 1, maxLength: longestName, pattern: '^\\S([\\s\\S]*\\S)?$' };
    case 'words':
      // An editor reads `name: 2026` as a number; a plan reads it as text.
      return {
        type: ['string', 'number'],
        maxLength: longestText,
        pattern: '^.*\\S.*$',
        examples: [nameplate.example],
      };
    case 'params':
      return {
        type: 'object',
        propertyNames: { type: 'string', pattern: '^[\\p{L}_][\\p{L}\\d_]{0,59}$' },
        additionalProperties: {
          type: ['string', 'number'],
          minLength: 1,
          description: 'A quantity or a number: its name stands for it in any quantity of the plan.',
          examples: ['2.4 kg ± 0.3 kg', '2 * panel_thickness + 3 mm', 4],
        },
        examples: [{ shelf_mass: '2.4 kg ± 0.3 kg' }],
      };
    case 'section':
      return { examples: [parse(nameplate.example)] };
    case 'list':
      return {
        ...(nameplate.least !== undefined && { minItems: nameplate.least }),
        ...(nameplate.most !== undefined && nameplate.most < Infinity && { maxItems: nameplate.most }),
        examples: [parse(nameplate.example)],
      };
  }
}

function quantityOf(kinds: readonly DimensionName[], least: number): JsonSchema {
  const examples = kinds.map((kind) => dimensions[kind].example);
  const bound = least > 0 ? ', more than zero' : least === 0 ? ', zero or more' : '';
  const called = kinds.map((kind) => {
    const { called: name, units } = dimensions[kind];
    return units.length > 0 && kind !== 'share' ? `${name} (${units.join(', ')})` : name;
  });
  const tolerance = kinds.includes('temperature') ? '± 2 K' : '± 5 %';
  const description = `${sentence(called.join(', or '))}${bound}. A tolerance (\`${examples[0]} ${tolerance}\`) and arithmetic over \`params\` will do.`;
  if (kinds.includes('number'))
    return {
      type: ['string', 'number'],
      minLength: 1,
      ...number(least),
      description,
      examples: examples.map((example) =>
        example === dimensions.number.example ? Number(example) : example,
      ),
    };
  // Of all bare numbers, only nothing at all is a share too.
  if (kinds.includes('share')) return { anyOf: [someText, { const: 0 }], description, examples };
  return { ...someText, description, examples };
}

/** A plan says `1`, which is text to us and a number to an editor. */
function versionAsTyped(schema: JsonSchema): void {
  delete schema.const;
  delete schema.type;
  schema.enum = [1, '1'];
}

/**
 * The schema with the words for each key: what it is, then what it takes. A key that stands in the example of its section
 * has its own example from there.
 */
function described(schema: JsonSchema, path: string, shown?: unknown): JsonSchema {
  const { $schema: _, description: takes, ...rest } = schema;
  const description = [describedAt(path), takes].filter((text) => text !== undefined).join(' ');
  // A few words to choose from need no example.
  const example = rest.enum || rest.type === 'boolean' ? undefined : (ownExample(path) ?? shown);
  return {
    ...(description !== '' && { description }),
    ...rest,
    ...(example !== undefined && { examples: [example] }),
    ...withinOf(rest, path, example ?? rest.examples?.[0]),
  };
}

/** The branches of a choice share their path: what it is stands above them. */
const branch = (schema: JsonSchema, path: string): JsonSchema => ({
  ...schema,
  ...withinOf(schema, path, schema.examples?.[0]),
});

function withinOf(
  { properties, additionalProperties, items, anyOf }: JsonSchema,
  path: string,
  example: unknown,
): JsonSchema {
  return {
    ...(properties && {
      properties: Object.fromEntries(
        Object.entries(properties).map(([key, each]) => [
          key,
          within(each, path === '' ? key : `${path}.${key}`, entryOf(example, key)),
        ]),
      ),
    }),
    ...(additionalProperties !== undefined && {
      additionalProperties: within(additionalProperties, `${path}.*`, entryOf(example)),
    }),
    ...(items !== undefined &&
      !Array.isArray(items) && { items: within(items, `${path}[]`, entryOf(example)) }),
    ...(anyOf && { anyOf: anyOf.map((each) => branch(each, path)) }),
  };
}

const within = (schema: JsonSchema | boolean, path: string, shown: unknown): JsonSchema | boolean =>
  typeof schema === 'boolean' ? schema : described(schema, path, shown);

/** What an example holds under a key; without one, the first thing that it holds. */
function entryOf(example: unknown, key?: string): unknown {
  if (typeof example !== 'object' || example === null) return undefined;
  const entries = Object.entries(example);
  return (key === undefined ? entries[0] : entries.find(([name]) => name === key))?.[1];
}

const sentence = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** The schema as it is written into files. */
export const planSchemaText = (): string => `${JSON.stringify(planJsonSchema(), undefined, 2)}\n`;
