import type { Build } from '../../build/build.ts';
import type { Duct, Heater } from '../../build/heat.ts';
import type { Citation } from '../../catalogue/citation.ts';
import { ductPracticeFor } from '../../catalogue/heat/heating.ts';
import type { Finding, Part, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { count, length, type Measure, power } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { combustionCaution, heatCaution, warmthCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { observed } from '../observed.ts';
import { heater } from '../warmth.ts';
import { upToMillimetre } from '../whole-millimetres.ts';

const text: RuleText = {
  id: 'heat.ducts',
  topic: 'heat',
  title: 'warm-air ducts',
  why: 'A heater that blows into ducts too long, too narrow or too many runs hot and switches itself off when it is needed most.',
  formula:
    'Σ L ≤ L_max over all ducts, Σ outlets ≤ n_max, bore ≥ d_min; L m, d m; limits of the heater, else practice by its output in W',
  sources: [],
  cautions: [heatCaution, combustionCaution, warmthCaution],
  fix: 'Shorten the duct, take out an outlet, or take a heater that is made for more.',
  place: ['heat', 'ducts'],
};

const ducts: Need<readonly Duct[]> = ({ heat }: Build) =>
  heat && heat.ducts.length > 0 ? given(heat.ducts) : missing('heat.ducts');

/** A limit of the heater that the plan gives fails, practice warns. */
interface DuctLimit {
  readonly value: number;
  readonly typed: boolean;
  readonly citations: readonly Citation[];
}

export default defineRule({
  ...text,
  needs: { heater, ducts },
  check: ({ facts: { heater, ducts } }) => {
    const findings: Finding[] = [];
    const lacking: string[] = [];
    const practice = heater.outputW === undefined ? undefined : ductPracticeFor(heater.outputW);
    const limitOf = (typed: number | undefined, usual: number | undefined): DuctLimit | undefined => {
      if (typed !== undefined) return { value: typed, typed: true, citations: [makersLimit] };
      if (usual === undefined) return undefined;
      return { value: usual, typed: false, citations: practice?.citations ?? [] };
    };
    addLength(ducts, limitOf(heater.ductLimitM, practice?.greatestLengthM), findings, lacking);
    addOutlets(ducts, limitOf(heater.ductOutletsLimit, practice?.greatestOutlets), findings, lacking);
    if (practice) addBores(ducts, heater, practice.leastBoreM, practice.citations, findings, lacking);
    return { findings: [...foldPasses(findings, 'figure'), ...notKnown(lacking)] };
  },
  work: ({ facts: { heater, ducts } }, { path, subject, limit }) => {
    const duct = path.at(-1) === 'bore' ? ducts.find(({ name }) => name === subject) : undefined;
    const isOutlets = subject === outletsSubject;
    return [
      ...(limit ? [limitStep(limit.measure, heater, duct ? 'bore' : isOutlets ? 'outlets' : 'length')] : []),
      duct ? boreStep(duct) : isOutlets ? outletsStep(ducts) : lengthStep(ducts),
    ];
  },
});

const outletsSubject = 'outlets';

const limitedBy = {
  bore: { what: 'The bore that is usual for a heater of its size', key: undefined },
  length: { what: 'How long all ducts may be together', key: 'duct_limit' },
  outlets: { what: 'How many outlets there may be', key: 'duct_outlets_limit' },
} as const;

/** As the plan gives it for the heater, else by the row of its size. */
function limitStep(result: Measure, heater: Heater, which: keyof typeof limitedBy): Step {
  const { what, key } = limitedBy[which];
  const { outputW, ductLimitM, ductOutletsLimit } = heater;
  const typed = which === 'length' ? ductLimitM : which === 'outlets' ? ductOutletsLimit : undefined;
  const practice = outputW === undefined ? undefined : ductPracticeFor(outputW);
  if (key !== undefined && typed !== undefined)
    return { what, sum: say`as typed for this heater`, result, paths: [['heat', 'heater', key]] };
  return {
    what,
    ...(outputW !== undefined &&
      practice && {
        sum: say`the row of heaters up to ${power(practice.outputUpToW)}, for ${power(outputW)}`,
      }),
    result,
    paths: [['heat', 'heater', 'output']],
  };
}

const boreStep = ({ boreM = 0, path, name }: Duct): Step => ({
  what: `The bore of ${name}, as typed`,
  result: length(boreM),
  paths: [[...path, 'bore']],
});

function sumStep(what: string, columns: string, ducts: readonly Duct[], addsOf: (duct: Duct) => Part): Step {
  const rows = ducts.map(addsOf);
  const [first] = rows;
  return {
    what,
    result: {
      kind: first?.adds.kind ?? 'count',
      value: rows.reduce((sum, { adds }) => sum + adds.value, 0),
    },
    parts: { columns: [columns], rows },
    paths: ducts.map(({ path }) => path),
  };
}

const lengthStep = (ducts: readonly Duct[]): Step =>
  sumStep(
    'All ducts one after the other: Σ L',
    'length',
    ducts,
    ({ name, path, lengthM = 0, lengthFrom }) => ({
      name,
      path,
      origin: lengthFrom === 'route' ? 'computed' : 'typed',
      values: [],
      adds: length(lengthM),
    }),
  );

const outletsStep = (ducts: readonly Duct[]): Step =>
  sumStep('Outlets of all ducts', 'outlets', ducts, ({ name, path, outlets = 0 }) => ({
    name,
    path,
    origin: 'typed',
    values: [],
    adds: count(outlets),
  }));

const makersLimit: Citation = {
  title: 'The limit of the heater, as the plan gives it',
  provenance: 'computed',
};

const by = ({ typed }: DuctLimit): string =>
  typed ? 'the plan gives for this heater' : 'is usual for its size';

function addLength(
  ducts: readonly Duct[],
  limit: DuctLimit | undefined,
  findings: Finding[],
  lacking: string[],
): void {
  const unknown = ducts.filter(({ lengthM }) => lengthM === undefined);
  lacking.push(...unknown.map(({ name }) => `heat.ducts.${name}.length`));
  if (!limit) lacking.push('heat.heater.duct_limit');
  if (!limit || unknown.length > 0) return;
  const sumM = ducts.reduce((sum, { lengthM }) => sum + (lengthM ?? 0), 0);
  findings.push(
    judge({
      rule: text,
      subject: 'length of the ducts',
      path: ['heat', 'ducts'],
      kind: 'length',
      measured: { value: sumM, standard: 0 },
      limit: limit.value,
      sense: 'at most',
      broken: limit.typed ? 'fail' : 'warn',
      reason: say`The ducts are ${length(sumM)} long together; ${length(limit.value)} is what ${by(limit)}.`,
      remedy: (shortfallM) =>
        say`Shorten the ducts by ${length(upToMillimetre(shortfallM))}: bring the heater nearer, or leave an outlet out.`,
      sources: limit.citations,
    }),
  );
}

function addOutlets(
  ducts: readonly Duct[],
  limit: DuctLimit | undefined,
  findings: Finding[],
  lacking: string[],
): void {
  const unknown = ducts.filter(({ outlets }) => outlets === undefined);
  lacking.push(...unknown.map(({ name }) => `heat.ducts.${name}.outlets`));
  if (!limit) lacking.push('heat.heater.duct_outlets_limit');
  if (!limit || unknown.length > 0) return;
  const sum = ducts.reduce((all, { outlets }) => all + (outlets ?? 0), 0);
  const path = ['heat', 'ducts'];
  if (sum === 0) {
    findings.push(
      observed(text, {
        verdict: 'fail',
        subject: outletsSubject,
        path,
        measured: count(0),
        reason: say`No outlet is left for the warm air: the heater would run hot.`,
        remedy: say`Plan at least 1 outlet that cannot be shut.`,
      }),
    );
    return;
  }
  findings.push(
    judge({
      rule: text,
      subject: outletsSubject,
      path,
      kind: 'count',
      measured: { value: sum, standard: 0 },
      limit: limit.value,
      sense: 'at most',
      broken: limit.typed ? 'fail' : 'warn',
      reason: say`The ducts have ${count(sum)} ${sum === 1 ? 'outlet' : 'outlets'}; ${count(limit.value)} is what ${by(limit)}.`,
      remedy: (shortfall) => say`Leave out ${count(Math.ceil(shortfall - 1e-9))}.`,
      sources: limit.citations,
    }),
  );
}

function addBores(
  ducts: readonly Duct[],
  { outputW }: Heater,
  leastM: number,
  citations: readonly Citation[],
  findings: Finding[],
  lacking: string[],
): void {
  const heaterText: Phrase = outputW === undefined ? [] : say` of ${power(outputW)}`;
  for (const { name, path, boreM } of ducts) {
    if (boreM === undefined) {
      lacking.push(`heat.ducts.${name}.bore`);
      continue;
    }
    findings.push(
      judge({
        rule: text,
        subject: name,
        path: [...path, 'bore'],
        kind: 'length',
        measured: { value: boreM, standard: 0 },
        limit: leastM,
        sense: 'at least',
        broken: 'warn',
        reason: say`${name} has a bore of ${length(boreM)}; a heater${heaterText} usually has ${length(leastM)}.`,
        remedy: () => say`Take a duct of ${length(leastM)}, or what the maker of the heater asks for.`,
        sources: citations,
      }),
    );
  }
}

function notKnown(keys: readonly string[]): Finding[] {
  if (keys.length === 0) return [];
  return [
    observed(text, {
      verdict: 'not checked',
      subject: 'warm-air ducts',
      path: ['heat', 'ducts'],
      reason: say`Not everything about the ducts is known.`,
      remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
      missing: keys,
    }),
  ];
}
