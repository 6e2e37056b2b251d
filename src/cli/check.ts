import { type Topic, topics } from '../engine/finding.ts';
import { readSource } from '../plan/source.ts';
import { renderAssumptions } from '../report/assumptions.ts';
import { exitCodeOf } from '../report/exit-code.ts';
import { renderJson } from '../report/json.ts';
import { renderProblems } from '../report/problems.ts';
import { renderTerminal } from '../report/terminal.ts';
import { checkPlan } from './check-plan.ts';
import { defectText } from './defects.ts';
import type { Surroundings } from './surroundings.ts';

export interface CheckOptions {
  readonly only?: readonly Topic[];
  readonly detail: boolean;
  readonly quiet: boolean;
  readonly json: boolean;
  readonly assumptions: boolean;
  readonly strict: boolean;
}

/** Runs `storystick check` and returns its exit code. */
export async function check(file: string, options: CheckOptions, around: Surroundings): Promise<number> {
  const source = readSource(file);
  if ('problem' in source) {
    around.complain(renderProblems(file, '', [source.problem], () => ({ line: 1, column: 1 })));
    return 2;
  }
  const checked = await checkPlan(file, source.text, around.loadCalculator);
  if (!checked.ok) {
    around.complain(renderProblems(file, source.text, checked.problems, checked.document.positionOf));
    return 2;
  }
  const { report, defects } = checked;
  const exitCode = defects.length > 0 ? 3 : exitCodeOf(report, options);
  const { width, colour } = around;
  if (options.json)
    around.print(renderJson(report, { version: around.version, exitCode, strict: options.strict }));
  else if (options.assumptions) around.print(renderAssumptions(report, { width, colour }));
  else {
    const { detail, quiet, only } = options;
    around.print(renderTerminal(report, { width, colour, detail, quiet, ...(only && { only }) }));
  }
  for (const defect of defects) around.complain(defectText(defect));
  return exitCode;
}

/** The topics named on the command line, or the words for one that does not exist. */
export function parseTopics(
  written: readonly string[],
): { readonly topics: readonly Topic[] } | { readonly unknown: string } {
  const chosen: Topic[] = [];
  for (const word of written.flatMap((each) => each.split(',')).map((each) => each.trim())) {
    const topic = topics.find((each) => each === word);
    if (!topic) return { unknown: word };
    chosen.push(topic);
  }
  return { topics: chosen };
}
