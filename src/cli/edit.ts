import { identitiesOf } from '../engine/identity.ts';
import type { Report } from '../engine/report.ts';
import { parseDocument } from '../plan/document.ts';
import type { Problem } from '../plan/problem.ts';
import { readSource } from '../plan/source.ts';
import { changedLines, renderChangedLines } from '../report/changed-lines.ts';
import { renderPlaces, renderProblems } from '../report/problems.ts';
import { countsText } from '../report/summary.ts';
import { visible } from '../report/visible.ts';
import { verdictText } from '../report/waiver-text.ts';
import { outdented } from '../report/wrap.ts';
import { type Checked, checkPlan } from './check-plan.ts';
import { defectText } from './defects.ts';
import { replaceFile } from './replace-file.ts';
import type { Surroundings } from './surroundings.ts';

/** What a command makes of a plan's text. */
export type Made =
  | {
      readonly text: string;
      /** What was done, in a line. */
      readonly did: string;
      /** What is worth knowing besides. */
      readonly notes: readonly string[];
    }
  | { readonly problem: Problem }
  /** The plan cannot be understood as it is, and that hinders the change. */
  | { readonly problems: readonly Problem[] };

/**
 * Changes a plan file and returns the exit code. The changed plan is loaded and checked before it is written; it is not
 * written if it cannot be understood. Whether its checks fail decides nothing here: that is for `check`.
 */
export async function edit(
  file: string,
  make: (text: string) => Promise<Made>,
  { dryRun }: { readonly dryRun: boolean },
  around: Surroundings,
): Promise<number> {
  const source = readSource(file);
  if ('problem' in source) {
    around.complain(renderProblems(file, '', [source.problem], nowhere, 'changed'));
    return 2;
  }
  const { text } = source;
  const made = await make(text);
  if ('problem' in made || 'problems' in made) {
    const { positionOf } = parseDocument(text).document;
    around.complain(
      'problems' in made
        ? renderProblems(file, text, made.problems, positionOf, 'changed')
        : `${renderPlaces(file, text, [made.problem], positionOf)}\n\nnothing was changed.\n`,
    );
    return 2;
  }
  if (made.text === text) {
    around.print(`${visible(file)}: ${visible(made.did)}: it is so already, nothing was changed.\n`);
    return 0;
  }
  const now = await checkPlan(file, made.text, around.loadCalculator, around.today?.());
  if (!now.ok) {
    around.complain(
      `${renderPlaces(file, made.text, now.problems, now.document.positionOf)}\n\nnothing was changed, because the plan could not be understood with this change.\n`,
    );
    return 2;
  }
  const before = await checkPlan(file, text, around.loadCalculator, around.today?.());
  const trouble = dryRun ? undefined : replaceFile(file, text, made.text);
  if (trouble) {
    around.complain(`${renderPlaces(file, text, [trouble], nowhere)}\n\nnothing was changed.\n`);
    return 2;
  }
  const said = (line: string): string[] => outdented(line, 2, around.width);
  around.print(
    [
      ...said(`${visible(file)}: ${visible(made.did)}${dryRun ? ' (not written: --dry-run)' : ''}`),
      ...renderChangedLines(changedLines(text, made.text), around.width),
      ...[...made.notes.map(visible), ...countLines(before, now)].flatMap(said),
      '',
    ].join('\n'),
  );
  for (const defect of now.defects) around.complain(defectText(defect));
  return now.defects.length > 0 ? 3 : 0;
}

const nowhere = () => ({ line: 1, column: 1 });

function countLines(before: Checked, now: Checked & { readonly ok: true }): string[] {
  const counts = countsText(now.report.findings);
  if (!before.ok) return ['before: could not be understood', `now:    ${counts}`];
  const counted = countsText(before.report.findings);
  if (counted !== counts) return [`before: ${counted}`, `now:    ${counts}`];
  // One check may have got better and another one worse.
  return verdictsOf(before.report) === verdictsOf(now.report)
    ? [`verdicts as before: ${counts}`]
    : [`as many of each as before, but not of the same checks: ${counts}`];
}

function verdictsOf({ findings }: Report): string {
  const names = identitiesOf(findings);
  return findings
    .map((finding, at) => `${names[at]}\0${verdictText(finding)}`)
    .sort()
    .join('\n');
}
