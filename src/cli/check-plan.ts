import { assemble } from '../build/assemble.ts';
import type { Build } from '../build/build.ts';
import { routingFor } from '../build/routing.ts';
import { simulationFor } from '../build/simulating.ts';
import { overrideTroubles } from '../engine/overrides.ts';
import type { Report } from '../engine/report.ts';
import { reviewed } from '../engine/review.ts';
import { type Defect, runRules, sortFindings } from '../engine/run.ts';
import { waiverTroubles } from '../engine/waiver-troubles.ts';
import type { PlanDocument } from '../plan/document.ts';
import { loadPlan } from '../plan/load.ts';
import type { Calculator } from '../plan/parameters.ts';
import type { Problem } from '../plan/problem.ts';
import type { Plan } from '../plan/schema.ts';
import { rules } from '../rules/index.ts';
import { localDay } from './clock.ts';

export type Checked =
  | {
      readonly ok: true;
      readonly report: Report;
      readonly defects: readonly Defect[];
      /** What the report is about, for those who show more of it. */
      readonly build: Build;
      readonly document: PlanDocument;
      readonly plan: Plan;
    }
  | { readonly ok: false; readonly problems: readonly Problem[]; readonly document: PlanDocument };

/** From a plan's text to its report: the whole of `check` without files or a terminal. */
export async function checkPlan(
  file: string,
  text: string,
  loadCalculator: () => Promise<Calculator>,
  /** The day that waivers are held against. */
  today: string = localDay(),
): Promise<Checked> {
  const { document, plan, problems } = await loadPlan(text, loadCalculator);
  if (!plan) return { ok: false, problems, document };
  const build = assemble(plan, await routingFor(plan), await simulationFor(plan));
  const troubles = [...overrideTroubles(rules, build), ...waiverTroubles(rules, build)].map(
    ({ path, onKey, ...words }) => ({
      ...words,
      span: onKey ? document.keySpanOf(path) : document.spanOf(path),
    }),
  );
  if (troubles.length > 0) return { ok: false, problems: troubles, document };
  const { findings, notes, defects } = reviewed(rules, build, runRules(rules, build), today);
  return {
    ok: true,
    report: reportOf(file, document, build, { findings, notes }),
    defects,
    build,
    document,
    plan,
  };
}

function reportOf(
  file: string,
  document: PlanDocument,
  build: Build,
  found: Pick<Report, 'findings' | 'notes'>,
): Report {
  const spot: Report['spot'] = (path) => document.positionOf(document.spanOf(path).start);
  return {
    file,
    name: build.name,
    codes: build.codes ?? 'none given',
    units: build.units,
    findings: sortFindings(found.findings, ({ path }) => spot(path)?.line ?? 0),
    notes: found.notes,
    assumptions: build.assumptions,
    spot,
  };
}
