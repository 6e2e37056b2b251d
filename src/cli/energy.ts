import { readSource } from '../plan/source.ts';
import { renderEnergy } from '../report/energy.ts';
import { renderProblems } from '../report/problems.ts';
import { visible } from '../report/visible.ts';
import { hanging, wrapped } from '../report/wrap.ts';
import { workedYear } from '../rules/energy-facts.ts';
import { energyOverview } from '../rules/energy-overview.ts';
import { checkPlan } from './check-plan.ts';
import type { Surroundings } from './surroundings.ts';

/** Runs `storystick energy` and returns its exit code. It judges nothing: `check` does. */
export async function energy(file: string, around: Surroundings): Promise<number> {
  const source = readSource(file);
  if ('problem' in source) {
    around.complain(renderProblems(file, '', [source.problem], () => ({ line: 1, column: 1 }), 'worked out'));
    return 2;
  }
  const checked = await checkPlan(file, source.text, around.loadCalculator);
  if (!checked.ok) {
    around.complain(
      renderProblems(file, source.text, checked.problems, checked.document.positionOf, 'worked out'),
    );
    return 2;
  }
  const { build } = checked;
  const { width, colour } = around;
  const worked = workedYear(build);
  if (!worked.ok) {
    const keys = worked.missing.map((key) => `\`${key}\``).join(', ');
    const lines = [
      ...wrapped(`${visible(file)}: the year of energy cannot be worked out yet.`, width),
      ...hanging(`  to add: ${visible(keys)}`, 10, width),
    ];
    around.print(`${lines.join('\n')}\n`);
    return 0;
  }
  around.print(renderEnergy(energyOverview(build, worked.value), { width, colour }));
  return 0;
}
