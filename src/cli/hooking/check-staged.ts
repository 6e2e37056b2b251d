import type { Verdict } from '../../engine/finding.ts';
import { exitCodeOf } from '../../report/exit-code.ts';
import { renderProblems } from '../../report/problems.ts';
import { renderShort } from '../../report/short.ts';
import { visible } from '../../report/visible.ts';
import { wrapped } from '../../report/wrap.ts';
import { checkPlan } from '../check-plan.ts';
import { defectText } from '../defects.ts';
import { repositoryOf } from '../git.ts';
import type { Surroundings } from '../surroundings.ts';
import { type StagedPlan, stagedPlans } from './staged-plans.ts';

export interface StagedOptions {
  /** Warnings stop a commit too. */
  readonly strict: boolean;
}

/** Runs `storystick hook run` and returns its exit code: the worst of all staged plans. */
export async function checkStaged(
  folder: string,
  options: StagedOptions,
  around: Surroundings,
): Promise<number> {
  const found = repositoryOf(folder);
  if ('problem' in found) {
    around.complain(`${visible(found.problem)}\n`);
    return 2;
  }
  const plans = stagedPlans(found.repository);
  if (plans.length === 0) {
    around.print('No plan is staged: nothing was checked.\n');
    return 0;
  }
  const codes: number[] = [];
  for (const plan of plans) codes.push(await checkOne(plan, options, around));
  const worst = Math.max(...codes);
  if (worst > 0) {
    const edited = plans.filter(({ isEdited }, at) => isEdited && codes[at] !== 0);
    const lines = [
      whyStopped(worst, options),
      ...edited.map(
        ({ path }) =>
          `${visible(path)} on disk is not what is staged. If it is mended there: \`git add\` it.`,
      ),
      'To commit without the check: `git commit --no-verify`.',
    ];
    around.complain(`${lines.flatMap((line) => wrapped(line, around.width)).join('\n')}\n`);
  }
  return worst;
}

async function checkOne(
  { path, source, isEdited: _ }: StagedPlan,
  { strict }: StagedOptions,
  around: Surroundings,
): Promise<number> {
  if ('problem' in source) {
    around.complain(renderProblems(path, '', [source.problem], () => ({ line: 1, column: 1 })));
    return 2;
  }
  const checked = await checkPlan(path, source.text, around.loadCalculator, around.today?.());
  if (!checked.ok) {
    around.complain(renderProblems(path, source.text, checked.problems, checked.document.positionOf));
    return 2;
  }
  const { report, defects } = checked;
  const shown: readonly Verdict[] = strict ? ['fail', 'warn'] : ['fail'];
  const { width, colour } = around;
  around.print(renderShort(report, { width, colour, shown, remark: 'as staged' }));
  for (const defect of defects) around.complain(defectText(defect));
  return defects.length > 0 ? 3 : exitCodeOf(report, { strict });
}

const whyStopped = (exitCode: number, { strict }: StagedOptions): string =>
  exitCode === 1
    ? `This stops the commit: a check of a staged plan failed${strict ? ' or warned' : ''}.`
    : exitCode === 2
      ? 'This stops the commit: a staged plan could not be understood, so it was not checked.'
      : 'This stops the commit: not every check of a staged plan could be run.';
