import type { Build } from '../../build/build.ts';
import type { Locker } from '../../build/gas.ts';
import type { ShellOpening } from '../../build/layout.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { metresApart, metresToBox } from '../apart.ts';
import { combustionCaution, gasCaution } from '../cautions.ts';
import { type Exhaust, exhaustsOf, withoutPlace } from '../exhausts.ts';
import { foldPasses } from '../fold-passes.ts';
import { gasLimit } from '../gas-facts.ts';
import { observed } from '../observed.ts';
import { pairOf } from '../pair.ts';

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

export default defineRule({
  ...text,
  needs: { places },
  check: ({ build, facts: { places: found } }) => {
    const { exhausts, locker, openings } = found;
    const ofGas = exhausts.filter(({ path }) => path[0] === 'gas');
    const findings = [
      ...exhausts.flatMap((exhaust) => fromVent(exhaust, locker, build)),
      ...ofGas.flatMap((exhaust) =>
        openings
          .filter(({ surface }) => surface !== 'bulkhead')
          .map((opening) => fromOpening(exhaust, opening, build)),
      ),
    ];
    return {
      findings: [
        ...(findings.length > 0 ? foldPasses(findings, 'pair') : [nothingToHold(exhausts)]),
        ...withoutPlace(text, build),
      ],
    };
  },
});

const nothingToHold = (exhausts: readonly Exhaust[]): Finding =>
  observed(text, {
    verdict: 'pass',
    subject: 'exhausts',
    path: exhausts[0]?.path ?? text.place,
    reason: say`By the plan no exhaust is near a vent of a gas locker or an opening of the van: there is neither of them.`,
  });

function fromVent({ name, path, place }: Exhaust, locker: Locker | undefined, build: Build): Finding[] {
  if (!locker?.ventPlace) return [];
  const above = gasLimit('locker-vent-above-exhaust', build);
  const beside = gasLimit('locker-vent-beside-exhaust', build);
  const limit = above.value > beside.value ? above : beside;
  const apartM = metresApart(place, locker.ventPlace);
  return [
    judge({
      rule: text,
      subject: pairOf(name, 'the vent of the gas locker'),
      path,
      kind: 'length',
      measured: { value: apartM, standard: 0 },
      limit: limit.value,
      sense: 'at least',
      broken: limit.broken,
      reason: say`${capital(name)} is ${length(apartM)} from the vent of the gas locker.`,
      remedy: (shortM) =>
        say`Move one of them ${length(shortM)} away from the other, or lead the exhaust further.`,
      sources: [...above.sources, ...beside.sources],
      cautions: limit.cautions,
    }),
  ];
}

function fromOpening({ name, path, place }: Exhaust, opening: ShellOpening, build: Build): Finding {
  const limit = gasLimit('flue-terminal-from-opening', build);
  const apartM = metresToBox(place, opening.box);
  return judge({
    rule: text,
    subject: pairOf(name, opening.name),
    path,
    kind: 'length',
    measured: { value: apartM, standard: 0 },
    limit: limit.value,
    sense: 'at least',
    broken: limit.broken,
    reason: say`${capital(name)} ends ${length(apartM)} from ${opening.name}.`,
    remedy: (shortM) =>
      say`Move it ${length(shortM)} further away, or keep ${opening.name} shut while it burns with a switch that shuts it off.`,
    sources: limit.sources,
    cautions: limit.cautions,
  });
}

const capital = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);
