import { z } from 'zod';
import { finding, measure, place, source, topic } from '../json-schema.ts';

// What `explain --json` prints, field by field; version 1 is frozen as that of `check --json` is.

const limit = z.strictObject({
  id: z.string().describe('The row of the catalogue.'),
  value: measure,
  sense: z.enum(['at most', 'at least']).describe('On which side of it the plan must stay.'),
  of: z.string().describe('What the value is a share, length or number of.'),
  force: z.string().describe('What stands behind it; only law can fail a check.'),
  codes: z.array(z.string()).describe('The regions that it holds in; empty for all.'),
  sources: z.array(source).describe('Where it comes from.'),
  caution: z.string().nullable().describe('What to keep in mind about it.'),
});

const check = z
  .strictObject({
    id: z.string().describe('Stable identifier of the rule.'),
    topic,
    title: z.string().describe('What it checks.'),
    why: z.string().describe('Why it matters.'),
    formula: z.string().describe('How it is worked out, with symbols and units.'),
    fix: z.string().nullable().describe('What to do about it, in general.'),
    limits: z.array(limit).describe('Rows of the catalogue that it takes its limits from.'),
    settable: z.string().nullable().describe('The row that a plan may replace by a limit of its own.'),
    waivable: z
      .enum(['waivable', 'acknowledged only', 'not at all'])
      .describe('What a waiver can do about it; life and limb are acknowledged only.'),
    informationOnly: z.boolean().describe('Whether it gives a table and no verdict.'),
    sources: z.array(source).describe('Where the method comes from.'),
    cautions: z.array(z.string()).describe('What it must not be taken for. To be shown with it.'),
  })
  .describe('What a check says of itself.');

const step = z.strictObject({
  what: z.string().describe('What is worked out.'),
  sum: z.string().nullable().describe('The formula with its numbers.'),
  result: measure.nullable().describe('What it comes to.'),
  places: z.array(z.strictObject(place)).describe('What the plan says for it.'),
  parts: z
    .strictObject({
      columns: z
        .array(z.string())
        .describe('The headings of the values; the last column adds up to the result.'),
      rows: z.array(
        z.strictObject({
          name: z.string().describe('The part.'),
          ...place,
          origin: z.string().describe('Where its value comes from: typed, catalogue, computed, assumed.'),
          values: z.array(measure).describe('One for each column.'),
        }),
      ),
    })
    .nullable()
    .describe('What is added up.'),
});

const explained = finding.extend({
  typed: z
    .array(z.strictObject({ ...place, text: z.string().describe('As the plan writes it.') }))
    .describe('What the plan says that it rests on.'),
  working: z.array(step).describe('Step by step; empty where the check shows no steps.'),
});

export const jsonExplainedSchema = z
  .strictObject({
    schemaVersion: z.literal(1).describe('Version of this structure.'),
    kind: z.literal('explain').describe('What this is.'),
    tool: z.strictObject({ name: z.literal('storystick'), version: z.string() }).describe('What wrote it.'),
    units: z.enum(['metric', 'imperial']).describe('The units of every text.'),
    checks: z.array(check).describe('The check that was asked for, or all of them.'),
    plan: z
      .strictObject({ file: z.string(), name: z.string(), codes: z.string() })
      .nullable()
      .describe('The plan, if one was named.'),
    findings: z.array(explained).nullable().describe('What the check finds in the plan; null without one.'),
  })
  .describe('Checks explained by storystick, version 1.');

export type JsonExplained = z.infer<typeof jsonExplainedSchema>;
