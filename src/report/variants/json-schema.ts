import { z } from 'zod';
import { measure, topic, total, verdict } from '../json-schema.ts';

// What `compare --json` prints, field by field; version 1 is frozen as that of `check --json` is.

const variant = z.strictObject({
  file: z.string().describe('The file as it was named to the tool.'),
  name: z.string().describe("The plan's own name."),
  codes: z.string().describe('Whose limits it is held to.'),
  summary: z
    .strictObject({
      fail: total,
      warn: total,
      notChecked: total,
      pass: total,
      waived: total,
      acknowledged: total,
    })
    .describe('Findings of each verdict; waived and acknowledged ones are among them.'),
});

const cell = z
  .strictObject({
    verdict,
    waived: z
      .enum(['waived', 'acknowledged'])
      .nullable()
      .describe('What a waiver of the variant makes of it; the verdict stays what it is.'),
    measured: measure.nullable().describe('What the variant comes to.'),
    margin: measure.nullable().describe('Distance to the limit, negative when it is broken.'),
    best: z.boolean().describe('Whether none of the others is better, and one is worse.'),
  })
  .nullable()
  .describe('What the check says of the variant; null where it has no such finding.');

export const jsonVariantsSchema = z
  .strictObject({
    schemaVersion: z.literal(1).describe('Version of this structure.'),
    kind: z.literal('compare').describe('What this is.'),
    tool: z
      .strictObject({ name: z.literal('storystick'), version: z.string() })
      .describe('What wrote the comparison.'),
    units: z.enum(['metric', 'imperial']).describe('The units of every text: those of the first variant.'),
    variants: z.array(variant).min(2).describe('The plans, in the order they were given.'),
    rows: z
      .array(
        z.strictObject({
          identity: z.string().describe('What the finding is known by: its rule and its subject.'),
          rule: z.string().describe('Stable identifier of the rule.'),
          topic,
          title: z.string().describe('What the rule checks.'),
          subject: z.string().describe("What the finding is about, in the plan's words."),
          same: z.boolean().describe('Whether verdict, value and margin are the same in all.'),
          cells: z.array(cell).describe('One for each variant, in their order.'),
          cautions: z.array(z.string()).describe('What these must not be taken for. To be shown with them.'),
        }),
      )
      .describe('All findings, by topic, the worst first.'),
  })
  .describe('Variants of a plan side by side, by storystick, version 1.');

export type JsonVariants = z.infer<typeof jsonVariantsSchema>;
