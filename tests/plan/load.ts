import { type Loaded, loadPlan } from '../../src/plan/load.ts';
import type { Plan } from '../../src/plan/schema.ts';

/** Reads a plan with the calculator at hand. */
export const load = (text: string): Promise<Loaded> =>
  loadPlan(text, () => import('../../src/plan/calculator.ts'));

/** The plan in a text that has no problems. */
export async function planIn(text: string): Promise<Plan> {
  const { plan, problems } = await load(text);
  if (!plan) throw new Error(`${problems.map(({ message }) => message).join('; ')}\n${text}`);
  return plan;
}

/** `line:column` and message of each problem. */
export async function problemsIn(text: string): Promise<string[]> {
  const { document, problems } = await load(text);
  return problems.map(({ message, span }) => {
    const { line, column } = document.positionOf(span?.start ?? 0);
    return `${line}:${column} ${message}`;
  });
}
