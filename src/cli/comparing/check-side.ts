import type { Compared } from '../../engine/compare/compare.ts';
import type { Defect } from '../../engine/run.ts';
import { renderProblems } from '../../report/problems.ts';
import { checkPlan } from '../check-plan.ts';
import type { Surroundings } from '../surroundings.ts';
import { comparedOf } from './compared.ts';
import type { SideText } from './sides.ts';

export interface CheckedSide {
  readonly compared: Compared;
  readonly defects: readonly Defect[];
}

/** Checks one side of a comparison; complains, with the side in each place, where it cannot be understood. */
export async function checkSide(
  { name, label, source }: SideText,
  around: Surroundings,
): Promise<CheckedSide | undefined> {
  if ('problem' in source) {
    around.complain(renderProblems(name, '', [source.problem], () => ({ line: 1, column: 1 }), 'compared'));
    return undefined;
  }
  const checked = await checkPlan(name, source.text, around.loadCalculator, around.today?.());
  if (!checked.ok) {
    const { problems, document } = checked;
    around.complain(renderProblems(name, source.text, problems, document.positionOf, 'compared'));
    return undefined;
  }
  return { compared: comparedOf(label, checked), defects: checked.defects };
}
