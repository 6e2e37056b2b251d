import { compare } from '../engine/compare/compare.ts';
import { type Comparison, isSame } from '../engine/compare/comparison.ts';
import { isWorse } from '../engine/compare/standing.ts';
import type { Report } from '../engine/report.ts';
import { renderDiff } from '../report/diff/terminal.ts';
import type { Format } from '../report/format.ts';
import { visible } from '../report/visible.ts';
import { checkSide } from './comparing/check-side.ts';
import { sidesInGit, sidesOfFiles } from './comparing/sides.ts';
import { defectText } from './defects.ts';
import type { Surroundings } from './surroundings.ts';

export const failures = ['worse', 'changed', 'never'] as const;
export type FailOn = (typeof failures)[number];

/** What is compared: two files, or one with revisions of itself. */
export type Compare =
  | { readonly before: string; readonly after: string }
  | { readonly file: string; readonly against: string };

export interface DiffOptions {
  readonly format: Format;
  readonly detail: boolean;
  readonly failOn: FailOn;
}

/** Runs `storystick diff` and returns its exit code. */
export async function diff(plans: Compare, options: DiffOptions, around: Surroundings): Promise<number> {
  const sides =
    'file' in plans ? sidesInGit(plans.file, plans.against) : sidesOfFiles(plans.before, plans.after);
  if ('wrong' in sides) {
    around.complain(visibleLines(sides.wrong));
    return 2;
  }
  // Both are looked at, so that one run shows all that is wrong.
  const before = await checkSide(sides.before, around);
  const after = await checkSide(sides.after, around);
  if (!before || !after) return 2;
  const comparison = compare(before.compared, after.compared);
  const defects = [...before.defects, ...after.defects];
  const exitCode = defects.length > 0 ? 3 : exitCodeOf(comparison, options.failOn);
  // Those who mark places in files know of no revisions.
  const report = { ...after.compared.report, file: sides.after.file };
  around.print(await rendered(comparison, report, options, around, exitCode));
  for (const defect of defects) around.complain(defectText(defect));
  return exitCode;
}

function exitCodeOf(comparison: Comparison, failOn: FailOn): 0 | 1 {
  switch (failOn) {
    case 'worse':
      return isWorse(comparison) ? 1 : 0;
    case 'changed':
      return isSame(comparison) ? 0 : 1;
    case 'never':
      return 0;
  }
}

/** The comparison in the format that is asked for; a format loads what it needs, so that the others start no slower. */
async function rendered(
  comparison: Comparison,
  report: Report,
  { format, detail, failOn }: DiffOptions,
  { width, colour, version }: Surroundings,
  exitCode: number,
): Promise<string> {
  switch (format) {
    case 'json': {
      const { renderJsonDiff } = await import('../report/diff/json.ts');
      return renderJsonDiff(comparison, { version, failOn, exitCode });
    }
    case 'markdown': {
      const { renderMarkdownDiff } = await import('../report/diff/markdown.ts');
      return renderMarkdownDiff(comparison);
    }
    case 'sarif': {
      const { stepsBack } = await import('../report/diff/step-back.ts');
      const { renderSarif } = await import('../report/sarif.ts');
      const { rules } = await import('../rules/index.ts');
      return renderSarif(stepsBack(comparison, report), { version, exitCode, rules });
    }
    case 'junit': {
      const { stepsBack } = await import('../report/diff/step-back.ts');
      const { renderJunit } = await import('../report/junit.ts');
      return renderJunit(stepsBack(comparison, report), { strict: true });
    }
    case 'table':
      return renderDiff(comparison, { width, colour, detail });
  }
}

const visibleLines = (text: string): string => text.split('\n').map(visible).join('\n');
