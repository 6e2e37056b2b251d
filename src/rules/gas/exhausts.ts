import type { Build } from '../../build/build.ts';
import type { Locker } from '../../build/gas.ts';
import type { Box3, ShellOpening } from '../../build/layout.ts';
import type { Finding, PlanPath } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { boxAt, metresToBox } from '../apart.ts';
import { combustionCaution, gasCaution } from '../cautions.ts';
import { type Exhaust, exhaustsOf, withoutPlace } from '../exhausts.ts';
import { foldPasses } from '../fold-passes.ts';
import { type Asked, gasLimit } from '../gas-facts.ts';
import { observed } from '../observed.ts';
import { pairOf } from '../pair.ts';
import { upToMillimetre } from '../whole-millimetres.ts';
import { distanceSteps } from '../working/distance.ts';

const text: RuleText = {
  id: 'gas.exhausts',
  topic: 'gas',
  title: 'exhausts clear of vents',
  why: 'A hot exhaust lights gas that falls out of the locker, and fumes that come in by a window kill asleep.',
  formula:
    'd ≥ d_least, in a straight line; from each exhaust to the vent of the locker, and from the exhausts of gas appliances to openings of the van, m',
  sources: [
    {
      title: 'Beside and above: the greater of both distances counts in every direction',
      provenance: 'own choice',
    },
  ],
  cautions: [gasCaution, combustionCaution],
  fix: 'Lead the exhaust further away from vents, windows and the locker.',
  lifeSafety: true,
  limits: ['locker-vent-above-exhaust', 'locker-vent-beside-exhaust', 'flue-terminal-from-opening'],
  place: ['gas'],
};

interface Facts {
  readonly exhausts: readonly Exhaust[];
  readonly locker: Locker | undefined;
  readonly openings: readonly ShellOpening[];
}

const places: Need<Facts> = (build) => {
  const { gas, layout } = build;
  if (!gas) return missing('gas');
  if (!layout) return missing('van.load_bay');
  const exhausts = exhaustsOf(build);
  const { locker } = gas;
  const keys = [
    ...(exhausts.length === 0 ? ['van.exhaust', 'gas.appliances.NAME.exhaust'] : []),
    ...(locker && !locker.ventPlace ? ['gas.locker.vent'] : []),
  ];
  return keys.length > 0 ? missing(...keys) : given({ exhausts, locker, openings: layout.openings });
};

/** Two that must be apart, and by how much. */
interface Pair {
  readonly subject: string;
  readonly exhaust: Exhaust;
  readonly to: string;
  readonly toPath: PlanPath;
  /** Without extent where it is a place and no thing. */
  readonly box: Box3;
  readonly limit: Asked & { readonly value: number; readonly of: string };
  readonly opening?: ShellOpening;
}

export default defineRule({
  ...text,
  needs: { places },
  check: ({ build, facts: { places: found } }) => {
    const findings = pairsOf(found, build).map(judged);
    return {
      findings: [
        ...(findings.length > 0 ? foldPasses(findings, 'pair') : [nothingToHold(found.exhausts)]),
        ...withoutPlace(text, build),
      ],
    };
  },
  work: ({ build, facts: { places: found } }, { subject }) => {
    const pair = pairsOf(found, build).find((each) => each.subject === subject);
    if (!pair) return undefined;
    const { exhaust, to, toPath, box, limit } = pair;
    return [
      { what: `Asked for at least: ${limit.of}`, result: length(limit.value) },
      ...distanceSteps({
        from: exhaust.name,
        place: exhaust.place,
        to,
        box,
        paths: [exhaust.path, toPath],
      }),
    ];
  },
});

/** Every exhaust and the vent of the locker, the exhausts of gas appliances and every opening to the outside. */
function pairsOf({ exhausts, locker, openings }: Facts, build: Build): readonly Pair[] {
  const ofGas = exhausts.filter(({ path }) => path[0] === 'gas');
  const outer = openings.filter(({ surface }) => surface !== 'bulkhead');
  return [
    ...exhausts.flatMap((exhaust) => fromVent(exhaust, locker, build)),
    ...ofGas.flatMap((exhaust) => outer.map((opening) => fromOpening(exhaust, opening, build))),
  ];
}

const nothingToHold = (exhausts: readonly Exhaust[]): Finding =>
  observed(text, {
    verdict: 'pass',
    subject: 'exhausts',
    path: exhausts[0]?.path ?? text.place,
    reason: say`By the plan no exhaust is near a vent of a gas locker or an opening of the van: there is neither of them.`,
  });

function fromVent(exhaust: Exhaust, locker: Locker | undefined, build: Build): readonly Pair[] {
  if (!locker?.ventPlace) return [];
  const above = gasLimit('locker-vent-above-exhaust', build);
  const beside = gasLimit('locker-vent-beside-exhaust', build);
  const limit = above.value > beside.value ? above : beside;
  const to = 'the vent of the gas locker';
  return [
    {
      subject: pairOf(exhaust.name, to),
      exhaust,
      to,
      toPath: [...locker.path, 'vent'],
      box: boxAt(locker.ventPlace),
      limit: { ...limit, sources: [...above.sources, ...beside.sources] },
    },
  ];
}

const fromOpening = (exhaust: Exhaust, opening: ShellOpening, build: Build): Pair => ({
  subject: pairOf(exhaust.name, opening.name),
  exhaust,
  to: opening.name,
  toPath: opening.path,
  box: opening.box,
  limit: gasLimit('flue-terminal-from-opening', build),
  opening,
});

function judged({ subject, exhaust, to, box, limit, opening }: Pair): Finding {
  const { name, path, place } = exhaust;
  const apartM = metresToBox(place, box);
  return judge({
    rule: text,
    subject,
    path,
    kind: 'length',
    measured: { value: apartM, standard: 0 },
    limit: limit.value,
    sense: 'at least',
    broken: limit.broken,
    reason: opening
      ? say`${capital(name)} ends ${length(apartM)} from ${to}.`
      : say`${capital(name)} is ${length(apartM)} from ${to}.`,
    remedy: (shortM) =>
      opening
        ? say`Move it ${length(upToMillimetre(shortM))} further away, or keep ${to} shut while it burns with a switch that shuts it off.`
        : say`Move one of them ${length(upToMillimetre(shortM))} away from the other, or lead the exhaust further.`,
    sources: limit.sources,
    cautions: limit.cautions,
  });
}

const capital = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);
