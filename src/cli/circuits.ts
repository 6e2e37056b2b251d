import { readSource } from '../plan/source.ts';
import { renderCircuits } from '../report/circuits.ts';
import { renderProblems } from '../report/problems.ts';
import { visible } from '../report/visible.ts';
import { wrapped } from '../report/wrap.ts';
import { scheduleOf } from '../rules/schedule.ts';
import { checkPlan } from './check-plan.ts';
import { defectText } from './defects.ts';
import type { Surroundings } from './surroundings.ts';

/** To be copied into a plan as it stands; no line is wider than the narrowest terminal. */
const firstCircuit = [
  'electrical:',
  '  voltage: 12 V',
  '  battery:',
  '    chemistry: lithium iron phosphate',
  '    voltage: 12.8 V',
  '    capacity: 200 Ah',
  '  circuits:',
  '    fridge: {from: battery, to: fridge, load: 4 A}',
];

/** Runs `storystick circuits` and returns its exit code. It judges nothing anew: what `check` says stands in the table. */
export async function circuits(file: string, around: Surroundings): Promise<number> {
  const source = readSource(file);
  if ('problem' in source) {
    around.complain(renderProblems(file, '', [source.problem], () => ({ line: 1, column: 1 }), 'listed'));
    return 2;
  }
  const checked = await checkPlan(file, source.text, around.loadCalculator, around.today?.());
  if (!checked.ok) {
    around.complain(
      renderProblems(file, source.text, checked.problems, checked.document.positionOf, 'listed'),
    );
    return 2;
  }
  const { build, report, defects } = checked;
  for (const defect of defects) around.complain(defectText(defect));
  if (!build.electrical) {
    const said = `${visible(file)}: there are no circuits to list yet, since the plan has no electrical part. To add, for a start, with the name of a thing of yours in place of \`fridge\`:`;
    around.print([...wrapped(said, around.width), '', ...firstCircuit].map((line) => `${line}\n`).join(''));
    return 0;
  }
  const { width, colour } = around;
  around.print(renderCircuits(scheduleOf(build.electrical, report), { width, colour }));
  return defects.length > 0 ? 3 : 0;
}
