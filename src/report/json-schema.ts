import { z } from 'zod';
import { topics } from '../engine/finding.ts';

// What `--json` prints, field by field. Version 1 is frozen: a field may be added, none may be taken away or change
// its meaning without a new version. Fields without a value are null, lists without entries are empty: every key is
// always there.

export const measure = z
  .strictObject({
    value: z.number().describe('The number in the SI unit, unrounded.'),
    unit: z
      .enum([
        'kg',
        'm',
        'm2',
        'm3',
        'kg/m2',
        'kg/m3',
        'A',
        'V',
        'W',
        'J',
        'C',
        'ohm',
        's',
        'K',
        '1',
        'Pa',
        'm3/s',
        'kg/s',
        'W/(m2.K)',
        'W/K',
        'm2.K/W',
        'J/K',
        'J/(kg.K)',
      ])
      .describe('SI unit; "1" for a plain ratio or a count.'),
    text: z.string().describe("The number rounded and in the plan's units, as the terminal shows it."),
  })
  .describe('A number with its unit.');

export const place = {
  path: z.string().describe('The keys that lead to the place in the plan, joined with dots.'),
  keys: z
    .array(z.union([z.string(), z.number().int()]))
    .describe('The same keys one by one; numbers count list entries from 0.'),
  line: z
    .number()
    .int()
    .min(1)
    .nullable()
    .describe('Line in the plan, from 1; null if the plan has no such place.'),
  column: z.number().int().min(1).nullable().describe('Column in the line, from 1; null if line is.'),
};

export const source = z
  .strictObject({
    title: z.string().describe('The document, with edition and clause, table or page where known.'),
    readAt: z.string().nullable().describe('Where the text was read, if it was.'),
    provenance: z
      .enum(['read', 'memory', 'computed', 'common practice', 'own choice'])
      .describe(
        'How the value came into this tool: read in the document, remembered, computed from a definition, a rule of thumb without a source, or chosen by this project.',
      ),
    caution: z.string().nullable().describe('What to keep in mind about this source.'),
  })
  .describe('Where a value or a method comes from.');

const loadState = z
  .strictObject({
    text: z.string().describe('Which tanks are full, who is aboard.'),
    fills: z
      .array(
        z.strictObject({
          name: z.string().describe('The tank, store or seat, by its name in the plan.'),
          massKg: z.number().describe('What it holds in this state, kg.'),
          share: z.number().describe('0 at its least, 1 at its most.'),
        }),
      )
      .describe('Every variable mass and what it does in this state.'),
  })
  .describe('One way the van may be loaded.');

export const verdict = z.enum(['fail', 'warn', 'not checked', 'pass']);
export const topic = z.enum(topics);

export const finding = z
  .strictObject({
    rule: z.string().describe('Stable identifier of the rule.'),
    topic: topic.describe('The part of the conversion that the rule belongs to.'),
    title: z.string().describe('What the rule checks.'),
    verdict: verdict.describe('"not checked" is neither a pass nor a failure: something is missing.'),
    subject: z.string().describe("What the finding is about, in the plan's words."),
    ...place,
    measured: measure
      .nullable()
      .describe('What the plan comes to, in the load state that is worst for this limit.'),
    limit: measure
      .extend({
        sense: z.enum(['at most', 'at least']).describe('On which side of the limit the plan must stay.'),
      })
      .nullable()
      .describe('What the plan must keep to.'),
    margin: measure.nullable().describe('Distance to the limit, negative when it is broken.'),
    utilisation: z
      .number()
      .nullable()
      .describe(
        'Measured over limit, turned round for "at least": the edge is at 1. Null if there is none, or no finite one.',
      ),
    tolerance: measure
      .nullable()
      .describe(
        'Half-width of the band that holds the measured value with about 95 % (two standard uncertainties).',
      ),
    probability: z
      .number()
      .min(0)
      .max(1)
      .nullable()
      .describe('Probability that the limit is broken, given the tolerance.'),
    worstState: loadState.nullable().describe('The load state that the measured value belongs to.'),
    reason: z.string().describe('The result in one sentence.'),
    remedy: z.string().nullable().describe('What to do about it.'),
    waived: z
      .strictObject({
        as: z
          .enum(['waived', 'acknowledged'])
          .describe('Whether it stands aside, or is about life and limb and counts as before.'),
        reason: z.string().describe('Why it may stay so.'),
        by: z.string().describe('Who decided it.'),
        until: z.string().describe('The last day on which it holds, as year-month-day.'),
        ...place,
      })
      .nullable()
      .describe("The plan's waiver that covers it; the verdict stays what it is."),
    missing: z.array(z.string()).describe('Keys to add to the plan so that the check can be made.'),
    assumptions: z.array(z.string()).describe('Assumed values that the result rests on.'),
    sources: z.array(source).describe('Where the limit and the method come from.'),
    cautions: z.array(z.string()).describe('What the result must not be taken for. To be shown with it.'),
  })
  .describe('What one rule says about one subject.');

const note = z
  .strictObject({
    rule: z.string().describe('Stable identifier of the rule that wrote the table.'),
    topic: topic.describe('The part of the conversion that the table belongs to.'),
    title: z.string().describe('What the table shows.'),
    detailOnly: z.boolean().describe('Whether the terminal shows it only with --detail.'),
    columns: z.array(z.string()).describe('The headings of the columns.'),
    rows: z
      .array(
        z.array(
          z.strictObject({
            text: z.string().describe("The cell in words, in the plan's units."),
            measures: z.array(measure).describe('The numbers in the cell, in order.'),
          }),
        ),
      )
      .describe('The rows, each with a cell for each column.'),
    text: z.string().nullable().describe('What there is to say about the table.'),
    sources: z.array(source).describe('Where its values come from.'),
    cautions: z.array(z.string()).describe('What the table must not be taken for. To be shown with it.'),
  })
  .describe('A table of information without a verdict.');

const assumption = z
  .strictObject({
    ...place,
    text: z.string().describe('The value and what it stands for.'),
    source: source.nullable().describe('Where the value comes from.'),
  })
  .describe('A value that the plan does not say and the tool assumed.');

export const total = z.number().int().min(0);

export const jsonReportSchema = z
  .strictObject({
    schemaVersion: z.literal(1).describe('Version of this structure.'),
    tool: z
      .strictObject({
        name: z.literal('storystick').describe('The tool.'),
        version: z.string().describe('Its version.'),
      })
      .describe('What wrote the report.'),
    plan: z
      .strictObject({
        file: z.string().describe('The file as it was named to the tool.'),
        name: z.string().describe("The plan's own name."),
        codes: z.string().describe('Whose limits it is held to.'),
        units: z.enum(['metric', 'imperial']).describe('The units of every text in this report.'),
      })
      .describe('What was checked.'),
    summary: z
      .strictObject({
        fail: total.describe('Findings that failed, waived ones among them.'),
        warn: total.describe('Findings that warn, waived ones among them.'),
        notChecked: total.describe('Findings that could not be checked.'),
        pass: total.describe('Findings that passed.'),
        waived: total.describe(
          'Findings that a waiver of the plan makes stand aside: counted above, and not for the exit code.',
        ),
        acknowledged: total.describe('Findings that a waiver names and that count as before: life and limb.'),
        exitCode: z.number().int().describe('The exit code of the command that wrote this.'),
        strict: z.boolean().describe('Whether warnings counted as failures for the exit code.'),
        closest: z
          .strictObject({
            rule: z.string().describe('Its rule.'),
            subject: z.string().describe('Its subject.'),
            utilisation: z.number().nullable().describe('Its utilisation; null if it is infinite.'),
          })
          .nullable()
          .describe('The finding that uses most of what its limit allows.'),
      })
      .describe('The report in a few numbers.'),
    findings: z
      .array(finding)
      .describe('By topic, then verdict (fail, warn, not checked, pass), then line and rule.'),
    notes: z.array(note).describe('Tables of information, those for --detail too.'),
    assumptions: z.array(assumption).describe('Every assumed value.'),
  })
  .describe('A storystick report, version 1.');

export type JsonReport = z.infer<typeof jsonReportSchema>;
