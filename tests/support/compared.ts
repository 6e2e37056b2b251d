import { checkPlan } from '../../src/cli/check-plan.ts';
import { comparedOf } from '../../src/cli/comparing/compared.ts';
import { type Compared, compare } from '../../src/engine/compare/compare.ts';
import type { Comparison } from '../../src/engine/compare/comparison.ts';

/** A plan's text as one side of a comparison; one that cannot be understood is an error of the test. */
export async function comparedText(text: string, label = 'plan.yaml'): Promise<Compared> {
  const checked = await checkPlan(label, text, () => import('../../src/plan/calculator.ts'));
  if (!checked.ok) throw new Error(`the plan has problems: ${JSON.stringify(checked.problems)}\n${text}`);
  if (checked.defects.length > 0) throw new Error(`defects: ${JSON.stringify(checked.defects)}\n${text}`);
  return comparedOf(label, checked);
}

export const comparisonOf = async (before: string, after: string): Promise<Comparison> =>
  compare(await comparedText(before, 'before.yaml'), await comparedText(after, 'after.yaml'));

/** What a run of the command line printed. */
export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command line within the test. */
export async function storystick(args: readonly string[], width = 100): Promise<Ran> {
  const { run } = await import('../../src/cli/program.ts');
  let [out, err] = ['', ''];
  const code = await run(args, {
    version: 'test',
    width,
    colour: false,
    print: (text) => {
      out += text;
    },
    complain: (text) => {
      err += text;
    },
    loadCalculator: () => import('../../src/plan/calculator.ts'),
  });
  return { code, out, err };
}
