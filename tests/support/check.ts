import { assemble } from '../../src/build/assemble.ts';
import type { Body, PlacedBody } from '../../src/build/body.ts';
import type { Build } from '../../src/build/build.ts';
import { routingFor } from '../../src/build/routing.ts';
import { simulationFor } from '../../src/build/simulating.ts';
import { checkPlan } from '../../src/cli/check-plan.ts';
import type { Finding, Note } from '../../src/engine/finding.ts';
import type { Phrase } from '../../src/engine/phrase.ts';
import type { Report } from '../../src/engine/report.ts';
import { loadPlan } from '../../src/plan/load.ts';
import { renderPhrase } from '../../src/report/format-measure.ts';

const loadCalculator = () => import('../../src/plan/calculator.ts');

/** The whole of `check` on a plan's text. A plan with problems, or a rule that throws, is an error of the test. */
export async function reportOf(text: string, today = '2026-06-01'): Promise<Report> {
  const checked = await checkPlan('plan.yaml', text, loadCalculator, today);
  if (!checked.ok) throw new Error(`the plan has problems: ${JSON.stringify(checked.problems)}\n${text}`);
  if (checked.defects.length > 0) throw new Error(`defects: ${JSON.stringify(checked.defects)}\n${text}`);
  return checked.report;
}

/** What is wrong with a plan that cannot be understood. */
export async function problemsOf(text: string): Promise<readonly string[]> {
  const checked = await checkPlan('plan.yaml', text, loadCalculator);
  return checked.ok ? [] : checked.problems.map(({ message }) => message);
}

export async function buildOf(text: string): Promise<Build> {
  const { plan, problems } = await loadPlan(text, loadCalculator);
  if (!plan) throw new Error(`the plan has problems: ${JSON.stringify(problems)}\n${text}`);
  return assemble(plan, await routingFor(plan), await simulationFor(plan));
}

/** The one finding of a rule, or the one about a subject that begins with these words. */
export function only(report: Report, rule: string, subject = ''): Finding {
  const found = report.findings.filter((each) => each.rule === rule && each.subject.startsWith(subject));
  const [finding] = found;
  if (!finding || found.length > 1)
    throw new Error(`${found.length} findings of ${rule} about "${subject}", not one`);
  return finding;
}

export const findingOf = async (text: string, rule: string, subject = ''): Promise<Finding> =>
  only(await reportOf(text), rule, subject);

export async function noteOf(text: string, rule: string): Promise<Note | undefined> {
  return (await reportOf(text)).notes.find((note) => note.rule === rule);
}

/** The bodies of one name: a tank has two, its shell and what it holds. */
export const bodiesOf = (build: Build, label: string): readonly Body[] =>
  build.bodies.filter((body) => body.label === label);

/** The one body of a name, which has a place. */
export function bodyOf(build: Build, label: string): PlacedBody {
  const [body, ...more] = bodiesOf(build, label);
  if (!body?.position || more.length > 0) throw new Error(`not one placed body is called ${label}`);
  return { ...body, position: body.position };
}

/** Where a body is, in metres: behind the front axle, right of the centre line, above the floor. */
export function placeOf(build: Build, label: string): readonly [number, number, number] {
  const { x, y, z } = bodyOf(build, label).position;
  return [x.valueM, y.valueM, z.valueM];
}

/** A phrase as a reader of metric units sees it. */
export const words = (phrase: Phrase | undefined): string => (phrase ? renderPhrase(phrase, 'metric') : '');

export const assumptionsOf = (build: Build): readonly string[] =>
  build.assumptions.map(({ text }) => words(text));

/** The value of what a finding measured; an error where it has none. */
export function measured({ measured: measure, rule }: Finding): number {
  if (!measure) throw new Error(`${rule} has measured nothing`);
  return measure.value;
}
