import { type Topic, topics } from '../engine/finding.ts';
import type { Report } from '../engine/report.ts';
import { readSource } from '../plan/source.ts';
import { renderAssumptions } from '../report/assumptions.ts';
import { exitCodeOf } from '../report/exit-code.ts';
import type { Format } from '../report/format.ts';
import { renderProblems } from '../report/problems.ts';
import { renderTerminal } from '../report/terminal.ts';
import { checkPlan } from './check-plan.ts';
import { defectText } from './defects.ts';
import type { Surroundings } from './surroundings.ts';

export interface CheckOptions {
  readonly only?: readonly Topic[];
  readonly detail: boolean;
  readonly quiet: boolean;
  /** How the report is written: on a terminal as a table, unless another format is asked for. */
  readonly format?: Format;
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
  const checked = await checkPlan(file, source.text, around.loadCalculator, around.today?.());
  if (!checked.ok) {
    around.complain(renderProblems(file, source.text, checked.problems, checked.document.positionOf));
    return 2;
  }
  const { report, defects } = checked;
  const exitCode = defects.length > 0 ? 3 : exitCodeOf(report, options);
  const { width, colour } = around;
  if (options.assumptions) around.print(renderAssumptions(report, { width, colour }));
  else around.print(await rendered(report, options, around, exitCode));
  for (const defect of defects) around.complain(defectText(defect));
  return exitCode;
}

/** The report in the format that is asked for; a format loads what it needs, so that the others start no slower. */
async function rendered(
  report: Report,
  { format = 'table', detail, quiet, strict, only }: CheckOptions,
  { width, colour, version }: Surroundings,
  exitCode: number,
): Promise<string> {
  switch (format) {
    case 'json': {
      const { renderJson } = await import('../report/json.ts');
      return renderJson(report, { version, exitCode, strict });
    }
    case 'sarif': {
      const { renderSarif } = await import('../report/sarif.ts');
      const { rules } = await import('../rules/index.ts');
      return renderSarif(report, { version, exitCode, rules });
    }
    case 'junit': {
      const { renderJunit } = await import('../report/junit.ts');
      return renderJunit(report, { strict });
    }
    case 'markdown': {
      const { renderMarkdown } = await import('../report/markdown.ts');
      return renderMarkdown(report, only && { only });
    }
    case 'table':
      return renderTerminal(report, { width, colour, detail, quiet, ...(only && { only }) });
  }
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
