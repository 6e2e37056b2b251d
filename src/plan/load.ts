import type { core } from 'zod';
import { crossCheck } from './cross-check.ts';
import { type PlanDocument, parseDocument } from './document.ts';
import { betweenKeys, unpackRefusal } from './fields.ts';
import { type Calculator, evaluateParameters } from './parameters.ts';
import type { Problem } from './problem.ts';
import { type Calculate, needsCalculator, readMeasured } from './quantity.ts';
import { type Removed, without } from './salvage.ts';
import { type Plan, planSchema } from './schema.ts';

export interface Loaded {
  readonly document: PlanDocument;
  /** The plan in SI, unless there are problems. */
  readonly plan?: Plan;
  /** Everything that cannot be understood, in the order of the text. */
  readonly problems: readonly Problem[];
}

/** Reads a plan's text. The calculator is asked for only when the plan contains an expression. */
export async function loadPlan(text: string, loadCalculator: () => Promise<Calculator>): Promise<Loaded> {
  const { document, problems } = parseDocument(text);
  if (problems.length > 0) return { document, problems: inOrder(problems) };
  const first = validate(document, undefined);
  if (!first.needsCalculator) return first;
  return validate(document, await loadCalculator());
}

function validate(
  document: PlanDocument,
  calculator: Calculator | undefined,
): Loaded & { readonly needsCalculator: boolean } {
  const evaluated = evaluateParameters(document, calculator);
  const calculate: Calculate = calculator ? calculator.calculatorOver(evaluated.parameters) : needsCalculator;
  const schema = planSchema((text) => readMeasured(text, calculate));
  const result = schema.safeParse(document.data);
  const issues = (result.error?.issues ?? []).flatMap((issue) => leaves(issue, []));
  const wanted =
    evaluated.needsCalculator ||
    issues.some(({ issue }) => 'params' in issue && issue.params?.needsCalculator === true);
  const problems = [...evaluated.problems, ...issues.flatMap((leaf) => problemsOf(leaf, document))];
  if (result.success) {
    problems.push(...crossCheck(result.data, document, []));
    if (problems.length === 0) return { document, plan: result.data, problems: [], needsCalculator: wanted };
  } else if (!wanted) {
    problems.push(...problemsOfTheRest(document, schema, issues));
  }
  return { document, problems: inOrder(problems), needsCalculator: wanted };
}

/** What the plan's checks say of the part that can be read, so that one run shows everything. */
function problemsOfTheRest(
  document: PlanDocument,
  schema: ReturnType<typeof planSchema>,
  issues: readonly Leaf[],
): Problem[] {
  let data = document.data;
  let broken = issues;
  const removed: Removed[] = [];
  while (broken.length > 0) {
    const paths = broken.flatMap(({ issue, path }) =>
      issue.code === 'unrecognized_keys' ? issue.keys.map((key) => [...path, key]) : [path],
    );
    const rest = without(data, paths);
    if (!rest) return [];
    removed.push(...rest.removed);
    data = rest.data;
    const result = schema.safeParse(data);
    if (result.success) return crossCheck(result.data, document, removed);
    broken = result.error.issues.flatMap((issue) => leaves(issue, []));
  }
  return [];
}

interface Leaf {
  readonly issue: core.$ZodIssue;
  readonly path: readonly PropertyKey[];
}

/** Where a value may be one of two things, the branch that got furthest is the one that was meant. */
function leaves(issue: core.$ZodIssue, above: readonly PropertyKey[]): Leaf[] {
  const path = [...above, ...issue.path];
  if (issue.code !== 'invalid_union' || issue.errors.length === 0) return [{ issue, path }];
  const depth = (branch: readonly core.$ZodIssue[]) => Math.max(...branch.map((each) => each.path.length));
  const furthest = issue.errors.reduce((best, branch) => (depth(branch) > depth(best) ? branch : best));
  return furthest.flatMap((each) => leaves(each, path));
}

function problemsOf({ issue, path }: Leaf, document: PlanDocument): Problem[] {
  if (issue.code === 'unrecognized_keys') {
    const texts = issue.message.split(betweenKeys);
    return issue.keys.map((key, index) => ({
      ...unpackRefusal(texts[index] ?? ''),
      span: document.keySpanOf([...path, key]),
    }));
  }
  const refusal = unpackRefusal(issue.message);
  const key = path.at(-1);
  const subject =
    typeof key === 'number'
      ? `entry ${key + 1} of ${String(path.at(-2) ?? 'the list')}`
      : String(key ?? 'the plan');
  // A message that begins with a quoted part of the text, or is a sentence of its own, needs no subject.
  const message = /^(is|are|has|should|goes)\b/.test(refusal.message)
    ? `${subject} ${refusal.message}`
    : refusal.message.startsWith('`')
      ? `${subject}: ${refusal.message}`
      : refusal.message;
  const span = issue.code === 'invalid_key' ? document.keySpanOf(path) : document.spanOf(path);
  return [{ ...refusal, message, span }];
}

const inOrder = (problems: readonly Problem[]): Problem[] =>
  [...problems].sort((a, b) => (a.span?.start ?? 0) - (b.span?.start ?? 0));
