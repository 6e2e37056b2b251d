import type { core } from 'zod';
import { crossCheck } from './cross-check.ts';
import { type PlanDocument, parseDocument } from './document.ts';
import { betweenKeys, isMissing, thisSection, unpackRefusal } from './fields.ts';
import { type Calculator, evaluateParameters } from './parameters.ts';
import type { Problem } from './problem.ts';
import { type Refusal, readMeasured, withoutCalculator } from './quantity.ts';
import { quote } from './quote.ts';
import { type Removed, without } from './salvage.ts';
import { type Plan, planSchema } from './schema.ts';
import { sentenceAbout, subjectOf } from './subject.ts';

export interface Loaded {
  readonly document: PlanDocument;
  /** The plan in SI, unless there are problems. */
  readonly plan?: Plan;
  /** Everything that cannot be understood, in the order of the text. */
  readonly problems: readonly Problem[];
}

/** Reads a plan's text. The calculator is asked for only when the plan contains an expression. */
export async function loadPlan(text: string, loadCalculator: () => Promise<Calculator>): Promise<Loaded> {
  const { document, problems, broken } = parseDocument(text);
  if (broken) return { document, problems: inOrder(problems) };
  if (document.data === undefined || document.data === null) {
    return {
      document,
      problems: [
        {
          message: 'there is no plan in the file, only comments or blank lines',
          span: document.spanOf([]),
          expected: '`storystick: 1` as the first line, and a section `van:`',
        },
      ],
    };
  }
  // A plan with `params` uses them in expressions, so it is not worth finding out by a first walk without them.
  let validated = validate(document, hasParams(document.data) ? await loadCalculator() : undefined);
  if (validated.needsCalculator) validated = validate(document, await loadCalculator());
  const all = inOrder([...problems, ...validated.problems]);
  return { document, problems: all, ...(all.length === 0 && validated.plan && { plan: validated.plan }) };
}

const hasParams = (data: unknown): boolean => typeof data === 'object' && data !== null && 'params' in data;

interface Validated {
  readonly plan?: Plan;
  readonly problems: readonly Problem[];
  readonly needsCalculator: boolean;
}

function validate(document: PlanDocument, calculator: Calculator | undefined): Validated {
  const { parameters, spoilt, ...evaluated } = evaluateParameters(document, calculator);
  const expressions = calculator
    ? calculator.calculatorOver(parameters, spoilt)
    : withoutCalculator((name) => parameters.has(name) || spoilt.has(name));
  const schema = planSchema((text) => readMeasured(text, expressions));
  const result = schema.safeParse(document.data);
  const issues = (result.error?.issues ?? []).flatMap((issue) => leaves(issue, []));
  const needsCalculator =
    evaluated.needsCalculator || issues.some(({ issue }) => flag(issue, 'needsCalculator'));
  const problems = [...evaluated.problems, ...problemsOf(issues, document)];
  if (result.success) problems.push(...crossCheck(result.data, document, []));
  else if (!needsCalculator) problems.push(...problemsOfTheRest(document, schema, issues));
  return { problems, needsCalculator, ...(result.success && { plan: result.data }) };
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
  const depth = (branch: readonly core.$ZodIssue[]) =>
    branch.reduce((deepest, each) => Math.max(deepest, each.path.length), 0);
  const furthest = issue.errors.reduce((best, branch) => (depth(branch) > depth(best) ? branch : best));
  return furthest.flatMap((each) => leaves(each, path));
}

const flag = (issue: core.$ZodIssue, name: 'needsCalculator' | 'follows'): boolean =>
  'params' in issue && issue.params?.[name] === true;

/** One problem for each trouble: not for its consequences, and once where an alias repeats it. */
function problemsOf(issues: readonly Leaf[], document: PlanDocument): Problem[] {
  const troubles = issues
    .filter(({ issue }) => !flag(issue, 'follows'))
    .flatMap((leaf) => troublesOf(leaf, document));
  const meant = new Set(
    troubles.map(({ path, refusal }) => keyOf([...path.slice(0, -1), refusal.meant ?? ''])),
  );
  const seen = new Set<string>();
  return troubles.flatMap(({ path, refusal, message, span }) => {
    const same = `${span.start} ${span.end} ${String(path.at(-1))} ${refusal.message}`;
    // A key that is missing because it is misspelt is one trouble, not two.
    if (seen.has(same) || (refusal.message.endsWith(isMissing) && meant.has(keyOf(path)))) return [];
    seen.add(same);
    const { expected, meant: name } = refusal;
    return [
      {
        message,
        span,
        ...(expected !== undefined && { expected }),
        ...(name !== undefined && { meant: name }),
      },
    ];
  });
}

const keyOf = (path: readonly PropertyKey[]): string => path.map(String).join('\u0000');

interface Trouble {
  readonly path: readonly PropertyKey[];
  readonly refusal: Refusal;
  readonly message: string;
  readonly span: NonNullable<Problem['span']>;
}

function troublesOf({ issue, path }: Leaf, document: PlanDocument): Trouble[] {
  if (issue.code === 'unrecognized_keys') {
    const texts = issue.message.split(betweenKeys);
    return issue.keys.map((key, index) => {
      const refusal = unpackRefusal(texts[index] ?? '');
      const at = [...path, key];
      const message = `${quote(key)} ${refusal.message.replace(thisSection, () => subjectOf(path))}`;
      return { path: at, refusal, message, span: document.keySpanOf(at) };
    });
  }
  const refusal = unpackRefusal(issue.message);
  const span = issue.code === 'invalid_key' ? document.keySpanOf(path) : document.spanOf(path);
  return [{ path, refusal, message: sentenceAbout(path, refusal.message), span }];
}

const inOrder = (problems: readonly Problem[]): Problem[] =>
  [...problems].sort((a, b) => (a.span?.start ?? 0) - (b.span?.start ?? 0));
