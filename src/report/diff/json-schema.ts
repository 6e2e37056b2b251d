import { z } from 'zod';
import { finding, measure, topic, total, verdict } from '../json-schema.ts';

// What `diff --json` prints, field by field. Version 1 is frozen like that of `check --json`: a field may be added, none
// may be taken away or change its meaning without a new version. Every key is always there; what has no value is null.

const keys = z
  .array(z.union([z.string(), z.number().int()]))
  .describe('Keys in the plan, one by one; numbers count list entries from 0.');

const line = z.number().int().min(1).nullable();

const side = z.strictObject({
  label: z.string().describe('What the plan is called: a path, or a file of a revision with its commit.'),
  file: z.string().describe('What places in it are called by: a path, or "REVISION:path" as git writes it.'),
  name: z.string().describe("The plan's own name."),
  codes: z.string().describe('Whose limits it is held to.'),
  units: z.enum(['metric', 'imperial']).describe('The units that it asks for.'),
  summary: z
    .strictObject({
      fail: total,
      warn: total,
      notChecked: total,
      pass: total,
      waived: total,
      acknowledged: total,
    })
    .describe('Findings of each verdict, and how many of them a waiver covers.'),
});

const identity = z
  .string()
  .describe('What the finding is known by: its rule and its subject, and a counter if there are more.');

const verdictChange = z
  .strictObject({
    identity,
    turn: z
      .enum(['worse', 'new', 'better', 'gone'])
      .describe(
        'What became of it. From good to bad: pass, not checked, what a waiver makes stand aside, warn, fail. "new" and "gone" are findings that only one plan has.',
      ),
    stepBack: z
      .boolean()
      .describe('Whether it makes the second plan worse: a worse verdict, or a new failure or warning.'),
    rule: z.string().describe('Stable identifier of the rule.'),
    topic: topic.describe('The part of the conversion that the rule belongs to.'),
    subject: z.string().describe("What the finding is about, in the plan's words."),
    from: verdict.nullable().describe('The verdict before; null if it is new.'),
    to: verdict.nullable().describe('The verdict after; null if it is gone.'),
    before: finding.nullable().describe('The finding of the first plan.'),
    after: finding.nullable().describe('The finding of the second plan.'),
  })
  .describe('A finding whose verdict changed, or that only one of the plans has.');

const moved = z
  .strictObject({
    identity,
    rule: z.string().describe('Stable identifier of the rule.'),
    topic: topic.describe('The part of the conversion that the rule belongs to.'),
    title: z.string().describe('What the rule checks.'),
    subject: z.string().describe("What the value is of, in the second plan's words."),
    verdict: verdict.describe('The verdict in the second plan.'),
    from: measure.describe('The value in the first plan.'),
    to: measure.describe('The value in the second plan.'),
    change: measure.describe('The second less the first; 0 where only the limit moved.'),
    margin: z
      .strictObject({
        from: measure.describe('In the first plan.'),
        to: measure.describe('In the second plan; negative where the limit is broken.'),
        change: measure.describe('The second less the first.'),
        turn: z.enum(['less', 'more', 'the same']).describe('What the change did to the margin.'),
      })
      .nullable()
      .describe('The distance to the limit; null where one of the plans has no limit.'),
    cautions: z.array(z.string()).describe('What the value must not be taken for. To be shown with it.'),
  })
  .describe('A measured value that is another one than before, or whose limit is.');

const edit = z
  .strictObject({
    kind: z.enum(['added', 'removed', 'renamed', 'moved', 'changed']).describe('What was done.'),
    entry: keys.describe('The entry or section that it is about, as the second plan calls it.'),
    key: keys.describe('The keys below the entry; empty where it is about the whole of it.'),
    was: z.string().nullable().describe('What something that was renamed was called before.'),
    before: z.string().nullable().describe('As it was written; null where it was not there.'),
    after: z.string().nullable().describe('As it is written; null where it is not there.'),
    change: measure.nullable().describe('How much greater a quantity has become.'),
    moves: z
      .array(
        z.strictObject({
          direction: z.enum(['rearward', 'forward', 'to the right', 'to the left', 'up', 'down']),
          by: measure,
        }),
      )
      .describe('How far it was moved, as seen from what it stands in or on.'),
    lineBefore: line.describe('Its line in the first plan, from 1.'),
    lineAfter: line.describe('Its line in the second plan, from 1.'),
  })
  .describe('One thing that was edited in the plan. Comments, order and layout are none.');

export const jsonDiffSchema = z
  .strictObject({
    schemaVersion: z.literal(1).describe('Version of this structure.'),
    kind: z.literal('diff').describe('What this is.'),
    tool: z
      .strictObject({ name: z.literal('storystick'), version: z.string() })
      .describe('What wrote the comparison.'),
    before: side.describe('The first plan.'),
    after: side.describe('The second plan, whose units all texts are in.'),
    summary: z
      .strictObject({
        same: z.boolean().describe('Whether nothing differs.'),
        worse: z.boolean().describe('Whether there is a step back.'),
        stepsBack: total.describe('Verdict changes that are steps back.'),
        failOn: z.enum(['worse', 'changed', 'never']).describe('What exits with 1.'),
        exitCode: z.number().int().describe('The exit code of the command that wrote this.'),
      })
      .describe('The comparison in a few words.'),
    verdicts: z.array(verdictChange).describe('Worse first, then new, better and gone.'),
    moved: z.array(moved).describe('By topic.'),
    edits: z.array(edit).describe('In the order of the second plan.'),
  })
  .describe('A comparison of two plans by storystick, version 1.');

export type JsonDiff = z.infer<typeof jsonDiffSchema>;
