import { existsSync } from 'node:fs';
import { explanationOf } from '../engine/explanation.ts';
import { withWorking } from '../engine/working.ts';
import { nearest } from '../plan/nearest.ts';
import { quote } from '../plan/quote.ts';
import { readSource } from '../plan/source.ts';
import type { Explained } from '../report/explain/explained.ts';
import { renderProblems } from '../report/problems.ts';
import { distinct } from '../report/summary.ts';
import { visible } from '../report/visible.ts';
import { rules } from '../rules/index.ts';
import { checkPlan } from './check-plan.ts';
import { defectText } from './defects.ts';
import { isWrittenIn, typedFor } from './explaining/typed.ts';
import type { Surroundings } from './surroundings.ts';

export interface ExplainOptions {
  readonly format: 'table' | 'json' | 'markdown';
}

/** Runs `storystick explain` and returns its exit code. */
export async function explain(
  check: string | undefined,
  file: string | undefined,
  options: ExplainOptions,
  around: Surroundings,
): Promise<number> {
  const rule = rules.find(({ id }) => id === check);
  if (check !== undefined && !rule) {
    around.complain(unknownCheck(check));
    return 2;
  }
  const explained: Explained = { checks: (rule ? [rule] : rules).map(explanationOf) };
  if (file === undefined || !rule) {
    around.print(await rendered(explained, options, around));
    return 0;
  }
  const source = readSource(file);
  if ('problem' in source) {
    around.complain(renderProblems(file, '', [source.problem], () => ({ line: 1, column: 1 }), 'worked out'));
    return 2;
  }
  const checked = await checkPlan(file, source.text, around.loadCalculator, around.today?.());
  if (!checked.ok) {
    const { problems, document } = checked;
    around.complain(renderProblems(file, source.text, problems, document.positionOf, 'worked out'));
    return 2;
  }
  const { report, build, document, defects } = checked;
  const findings = report.findings
    .filter((finding) => finding.rule === rule.id)
    .map((finding) => withWorking(rules, build, finding))
    .map((finding) => ({ finding, typed: typedFor(document.data, finding) }));
  const inPlan = { report, findings, isWritten: isWrittenIn(document.data) };
  around.print(await rendered({ ...explained, inPlan }, options, around));
  const own = defects.filter((defect) => defect.rule === rule.id);
  for (const defect of own) around.complain(defectText(defect));
  return own.length > 0 ? 3 : 0;
}

async function rendered(
  explained: Explained,
  { format }: ExplainOptions,
  { width, colour, version }: Surroundings,
): Promise<string> {
  switch (format) {
    case 'json': {
      const { renderJsonExplained } = await import('../report/explain/json.ts');
      return renderJsonExplained(explained, { version });
    }
    case 'markdown': {
      const { renderChecksMarkdown } = await import('../report/explain/markdown.ts');
      return renderChecksMarkdown(explained.checks);
    }
    case 'table': {
      const { renderCheckList, renderExplained } = await import('../report/explain/terminal.ts');
      return explained.checks.length > 1
        ? renderCheckList(explained.checks, { width, colour })
        : renderExplained(explained, { width, colour });
    }
  }
}

/** As many as one takes in at a glance. */
const mostMeant = 3;

function unknownCheck(written: string): string {
  const ids = rules.map(({ id }) => id);
  const first = nearest(written, ids) ?? nearest(written, ids.map(nameIn));
  const folded = written.toLowerCase().replace(/[\s_]+/g, '-');
  const meant = distinct([
    ...ids.filter((id) => id === first || nameIn(id) === first),
    ...ids.filter((id) => folded.length >= 3 && id.includes(folded)),
  ]).slice(0, mostMeant);
  const plan = existsSync(written)
    ? 'a check before the plan: `storystick explain CHECK plan.yaml`'
    : undefined;
  return [
    `${visible(quote(written))} is not a check`,
    ...(meant.length > 0 && plan === undefined ? [`  did you mean: ${meant.join(', ')}`] : []),
    `  expected: ${plan ?? 'the id of a check; `storystick explain` lists them all'}`,
    '',
  ].join('\n');
}

const nameIn = (id: string): string => id.slice(id.indexOf('.') + 1);
