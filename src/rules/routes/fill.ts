import type { RoutedRun } from '../../build/routes.ts';
import { fillFraction } from '../../calc/space/chase-fill.ts';
import { chaseFillFor } from '../../catalogue/fit-limits.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { length, share } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { installationCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { chasesInUse, counted, namesOf, plannedRoutes, type UsedChase } from '../routed.ts';
import { upToMillimetre } from '../whole-millimetres.ts';
import { fillSteps, type SizedRun } from '../working/chase.ts';

const text: RuleText = {
  id: 'routes.fill',
  topic: 'routes',
  title: 'room in the chases',
  why: 'Cables that are forced into a full chase tear, heat each other, and cannot be drawn again.',
  formula: 's = Σ d² / D²; d outer diameter of each cable or pipe, D bore of the chase, both in m',
  sources: [
    {
      title:
        'Share of the inside area that round cables take; a flat one counts as a circle of its greater width',
      provenance: 'computed',
    },
  ],
  cautions: [installationCaution],
  fix: 'Take a chase of larger bore, or lead some of the runs another way.',
  place: ['routes', 'chases'],
};

/** Chases that something takes. */
const inUse: Need<readonly UsedChase[]> = (build) => {
  const planned = plannedRoutes(build);
  if (!planned.ok) return planned;
  const used = chasesInUse(planned.value).filter(({ runs }) => runs.length > 0);
  return used.length > 0 ? given(used) : missing('routes.chases');
};

export default defineRule({
  ...text,
  needs: { used: inUse },
  check: ({ facts: { used } }) => {
    const unknown = used.filter((each) => !isKnown(each));
    return {
      findings: [
        ...used.flatMap((each) => filledBy(each)),
        ...(unknown.length > 0 ? [withoutSizes(unknown)] : []),
      ],
    };
  },
  work: ({ facts: { used } }, { subject }) => {
    const filled = used.find(({ chase }) => chase.id === subject);
    const filling = filled && fillingOf(filled);
    if (!filling) return undefined;
    const { sized, boreM, taken, leastM } = filling;
    const least = { leastM, pipesM: thickestPipes(sized) };
    return fillSteps(filled.chase, sized, { boreM, taken }, exceeds(leastM, boreM) ? least : undefined);
  },
});

const isSized = (run: RoutedRun): run is SizedRun => run.diameterM !== undefined;
const isKnown = ({ chase, runs }: UsedChase): boolean => chase.boreM !== undefined && runs.every(isSized);

/** How full a chase is with what is known of it; undefined where that is nothing. */
function fillingOf({ chase: { boreM }, runs }: UsedChase) {
  const sized = runs.filter(isSized);
  if (boreM === undefined || sized.length === 0) return undefined;
  const areaM2 = sized.reduce((sum, { diameterM, count }) => sum + count * diameterM ** 2, 0);
  const taken = sized.reduce(
    (sum, { diameterM, count }) => sum + count * fillFraction([diameterM], boreM),
    0,
  );
  return { boreM, sized, areaM2, taken, leastM: Math.max(leastBore(sized), Math.sqrt(areaM2)) };
}

/** What is known of a chase, where that is all, or already too much. */
function filledBy(used: UsedChase): readonly Finding[] {
  const filling = fillingOf(used);
  if (!filling) return [];
  const { boreM, sized, areaM2, taken, leastM } = filling;
  if (exceeds(leastM, boreM)) return [tooNarrow(used, sized, boreM, taken, leastM)];
  const finding = roomLeft(used, sized, taken, areaM2);
  return isKnown(used) || finding.verdict !== 'pass' ? [finding] : [];
}

/** The bore that the thickest go through: of pipes, which do not give, the two thickest side by side. */
function leastBore(runs: readonly SizedRun[]): number {
  const [first, second] = thickestPipes(runs);
  return Math.max(first + second, ...runs.map(({ diameterM }) => diameterM));
}

function thickestPipes(runs: readonly SizedRun[]): readonly [number, number] {
  const [first = 0, second = 0] = runs
    .filter(({ carries }) => carries !== 'cable')
    .flatMap(({ diameterM, count }) => (count > 1 ? [diameterM, diameterM] : [diameterM]))
    .sort((a, b) => b - a);
  return [first, second];
}

/** How many of a list of runs, and which: "3 cables and pipes (a, b)". */
const contentsOf = (runs: readonly RoutedRun[]): string => {
  const howMany = runs.reduce((sum, { count }) => sum + count, 0);
  const kinds = new Set(runs.map(({ carries }) => (carries === 'cable' ? 'cable' : 'pipe')));
  const kind = kinds.size > 1 ? 'cables and pipes' : counted(howMany, kinds.has('cable') ? 'cable' : 'pipe');
  return `${kinds.size > 1 ? `${howMany} ${kind}` : kind} (${namesOf(runs.map(({ name }) => name))})`;
};

const limitFor = (runs: readonly RoutedRun[]) => {
  const cables = runs.reduce((sum, { carries, count }) => sum + (carries === 'cable' ? count : 0), 0);
  return cables > 0 ? chaseFillFor(cables) : undefined;
};

function tooNarrow(
  { chase, runs }: UsedChase,
  sized: readonly SizedRun[],
  boreM: number,
  taken: number,
  leastM: number,
): Finding {
  const areaM = Math.sqrt(taken) * boreM;
  const wantedM = Math.max(leastM, areaM / Math.sqrt(limitFor(runs)?.share ?? 1));
  return observed(text, {
    verdict: 'fail',
    subject: chase.id,
    path: [...chase.path, 'bore'],
    measured: share(taken),
    reason: say`${contentsOf(sized)} cannot go into a bore of ${length(boreM)}: they need at least ${length(upToMillimetre(leastM))}.`,
    remedy: say`Take a bore of ${length(upToMillimetre(wantedM))} or more, or lead some of them through another chase.`,
  });
}

function roomLeft(
  { chase, runs }: UsedChase,
  sized: readonly SizedRun[],
  taken: number,
  areaM2: number,
): Finding {
  const limit = limitFor(runs);
  const boreM = chase.boreM ?? 0;
  return judge({
    rule: text,
    subject: chase.id,
    path: [...chase.path, 'bore'],
    kind: 'share',
    measured: { value: taken, standard: 0 },
    limit: limit?.share ?? 1,
    sense: 'at most',
    broken: limit ? 'warn' : 'fail',
    reason: say`${contentsOf(sized)} fill ${share(taken)} of a bore of ${length(boreM)}.`,
    remedy: () =>
      say`Take a bore of ${length(upToMillimetre(Math.sqrt(areaM2 / (limit?.share ?? 1))))} or more, or lead some of them through another chase.`,
    sources: limit?.citations ?? [],
    cautions: limit?.caution === undefined ? [] : [limit.caution],
  });
}

function withoutSizes(unknown: readonly UsedChase[]): Finding {
  const bores = unknown.filter(({ chase }) => chase.boreM === undefined).map(({ chase }) => chase.id);
  const thicknesses = [
    ...new Set(unknown.flatMap(({ runs }) => runs.filter((run) => !isSized(run)).map(({ name }) => name))),
  ];
  return observed(text, {
    verdict: 'not checked',
    subject: namesOf(unknown.map(({ chase }) => chase.id).sort()),
    path: unknown[0]?.chase.path ?? text.place,
    reason: say`How full ${unknown.length === 1 ? 'it is' : 'they are'} follows from the bore and from the diameters of what runs there.`,
    missing: [
      ...bores.map((id) => `routes.chases.${id}.bore`),
      ...thicknesses.map((name) => `routes.runs.${name}.diameter`),
    ],
  });
}
