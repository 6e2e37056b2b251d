import type { Build } from '../../build/build.ts';
import type { DropOut } from '../../build/gas.ts';
import type { Box3 } from '../../build/layout.ts';
import type { GasLimitId } from '../../catalogue/gas/limits.ts';
import type { Finding, PlanPath } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { boxAt, metresToBox } from '../apart.ts';
import { combustionCaution, gasCaution } from '../cautions.ts';
import { exhaustsOf, withoutPlace } from '../exhausts.ts';
import { foldPasses } from '../fold-passes.ts';
import { asked, gasLimit } from '../gas-facts.ts';
import { ignitionUnderFloor } from '../ignition-under-floor.ts';
import { observed } from '../observed.ts';
import { pairOf } from '../pair.ts';
import { keyAt, silentAbout } from '../silent-about.ts';
import { upToMillimetre } from '../whole-millimetres.ts';
import { distanceSteps } from '../working/distance.ts';

const text: RuleText = {
  id: 'gas.drop-out-distances',
  topic: 'gas',
  title: 'drop-outs clear of heat and drains',
  why: 'Gas that falls out beside a hot exhaust burns under the van; beside a drain it gathers in the tank, and fumes come up the same hole.',
  formula:
    'd ≥ d_least, in a straight line; from each drop-out to exhausts, flames, electrical things and waste tanks below the floor, m',
  sources: [],
  cautions: [gasCaution, combustionCaution],
  fix: 'Move the drop-out to another low corner of its space, or what is too near away from it.',
  lifeSafety: true,
  limits: ['drop-out-from-exhaust', 'drop-out-from-ignition', 'drop-out-from-drain'],
  place: ['gas', 'drop_outs'],
};

const dropOuts: Need<readonly DropOut[]> = ({ gas }) => {
  if (!gas) return missing('gas');
  return gas.dropOuts.length > 0 ? given(gas.dropOuts) : missing('gas.drop_outs');
};

/** Something below the floor that a drop-out keeps away from. */
interface Threat {
  readonly name: string;
  readonly path: PlanPath;
  readonly limit: GasLimitId;
  /** Without extent where it is a place and no thing. */
  readonly box: Box3;
  readonly why: string;
}

export default defineRule({
  ...text,
  needs: { dropOuts },
  check: ({ build, facts }) => {
    const threats = threatsOf(build);
    const placed = facts.dropOuts.filter(({ place }) => place !== undefined);
    const findings = placed.flatMap((dropOut) => threats.map((threat) => judged(dropOut, threat, build)));
    return {
      findings: [
        ...foldPasses(findings, 'pair'),
        ...silentAbout(
          text,
          facts.dropOuts.filter(({ place }) => place === undefined),
          'where it is',
          keyAt('at'),
        ),
        ...(placed.length === 0 ? [] : threats.length === 0 ? [nothingKnown] : withoutPlace(text, build)),
      ],
    };
  },
  work: ({ build, facts }, { subject }) => {
    for (const { name, path, place } of facts.dropOuts)
      for (const threat of threatsOf(build))
        if (place && pairOf(name, threat.name) === subject) {
          const limit = gasLimit(threat.limit, build);
          return [
            { what: `Asked for at least: ${limit.of}`, result: length(limit.value) },
            ...distanceSteps({
              from: name,
              place,
              to: threat.name,
              box: threat.box,
              paths: [[...path, 'at'], threat.path],
            }),
          ];
        }
    return undefined;
  },
});

const nothingKnown: Finding = observed(text, {
  verdict: 'not checked',
  subject: 'below the floor',
  path: text.place,
  reason: say`The plan gives no place of an exhaust, a flame or a waste tank below the floor.`,
  missing: ['van.exhaust', 'heat.heater.exhaust'],
});

function threatsOf(build: Build): readonly Threat[] {
  const { heat, water } = build;
  const heater = heat?.heater;
  return [
    ...exhaustsOf(build).map(
      ({ name, path, place }): Threat => ({
        name,
        path,
        limit: 'drop-out-from-exhaust',
        box: boxAt(place),
        why: 'what falls out must not meet hot fumes, nor fumes come up through it',
      }),
    ),
    ...ignitionUnderFloor(build).map(({ name, path, box }) => ignition(name, path, box)),
    ...(heater?.combustionAir
      ? [
          ignition(
            'the combustion air of the heater',
            [...heater.path, 'combustion_air'],
            boxAt(heater.combustionAir),
          ),
        ]
      : []),
    ...(water?.tanks ?? []).flatMap(({ name, path, contents, whereabouts, box }): Threat[] =>
      contents === 'waste' && whereabouts === 'under the floor' && box
        ? [{ name, path, limit: 'drop-out-from-drain', box, why: 'gas must not gather in it' }]
        : [],
    ),
  ];
}

const ignition = (name: string, path: PlanPath, box: Box3): Threat => ({
  name,
  path,
  limit: 'drop-out-from-ignition',
  box,
  why: 'it may light what falls out',
});

function judged({ name, path, place }: DropOut, threat: Threat, build: Build): Finding {
  const limit = gasLimit(threat.limit, build);
  const edition = asked('no-floor-opening-over-exhaust', build);
  const isExhaust = threat.limit === 'drop-out-from-exhaust';
  const apartM = place ? metresToBox(place, threat.box) : 0;
  return judge({
    rule: text,
    subject: pairOf(name, threat.name),
    path: [...path, 'at'],
    kind: 'length',
    measured: { value: apartM, standard: 0 },
    limit: limit.value,
    sense: 'at least',
    broken: limit.broken,
    reason: say`The drop-out ${name} is ${length(apartM)} from ${threat.name}: ${threat.why}.`,
    remedy: (shortM) =>
      say`Move it ${length(upToMillimetre(shortM))} further away, to another low corner of its space, or move ${threat.name}.`,
    sources: [...limit.sources, ...(isExhaust ? edition.sources : [])],
    cautions: [...limit.cautions, ...(isExhaust ? edition.cautions : [])],
  });
}
