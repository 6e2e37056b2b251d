import type { Build } from '../../build/build.ts';
import type { Electrical, MainsCircuit, Shore } from '../../build/electrical.ts';
import { ampacityOf, ampacityTable } from '../../catalogue/electrical/ampacity.ts';
import { leastSize } from '../../catalogue/electrical/least-sizes.ts';
import {
  doublePoleBreakers,
  leastBondingConductor,
  leastMainsConductor,
  residualCurrentDevice,
} from '../../catalogue/electrical/leisure-mains.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { crossSectionMm2, current, type Measure } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { electricalCaution, mainsCaution } from '../cautions.ts';
import { electrical } from '../circuits.ts';
import { observed } from '../observed.ts';
import { counted, namesOf } from '../routed.ts';

const text: RuleText = {
  id: 'electrical.mains',
  topic: 'electrical',
  title: 'protection of mains circuits',
  why: 'In a metal van on wet grass a fault of the mains goes through whoever touches it; these devices end it before it kills.',
  formula:
    'I_Δ ≤ 30 mA; I_n ≤ I_supply; I_n ≤ I_z; A ≥ 1.5 mm²; I_Δ residual current that trips, I_n rating of the breaker, I_z what the conductor carries at 30 °C, not bundled, all in A; A conductor in mm²',
  sources: [...residualCurrentDevice.citations],
  cautions: [electricalCaution, mainsCaution],
  fix: 'Fit the protective devices that are named, and have the work done and tested by a licensed person.',
  lifeSafety: true,
  place: ['electrical', 'shore'],
};

/** Shore, or circuits that carry mains voltage. */
const mains: Need<Electrical> = (build) => {
  const found = electrical(build);
  if (!found.ok) return found;
  const { shore, inverter, mains: circuits } = found.value;
  if (shore || circuits.length > 0) return found;
  return inverter
    ? missing('electrical.mains_circuits')
    : missing('electrical.shore', 'electrical.mains_circuits');
};

export default defineRule({
  ...text,
  needs: { mains },
  check: ({ build, facts }) => {
    const { shore, mains: circuits } = facts.mains;
    const broken = [
      ...(shore ? ofShore(shore, circuits, build) : []),
      ...circuits.flatMap((circuit) => ofCircuit(circuit, shore)),
      ...withoutChangeover(facts.mains),
    ];
    const keys = missingKeys(facts.mains);
    const unknown = keys.length > 0 ? [notChecked(keys)] : [];
    return {
      findings: broken.length + unknown.length > 0 ? [...broken, ...unknown] : [asAsked(facts.mains)],
    };
  },
  work: ({ build, facts }, { subject, measured, path }) => {
    if (!measured) return undefined;
    const { shore, mains: circuits } = facts.mains;
    if (shore && subject === bondingSubject) return bondingSteps(shore, build);
    if (shore && subject === breakerSubject)
      return [
        {
          what: 'What the supply gives',
          result: current(shore.currentA),
          paths: [[...shore.path, 'current']],
        },
        breakerStep('the shore supply', shore.breakerA ?? 0, shore),
      ];
    const circuit = circuits.find((each) => each.path.every((key, at) => path[at] === key));
    if (!circuit) return undefined;
    return subject === thinSubject(circuit) ? thinSteps(circuit) : protectedSteps(circuit, shore, measured);
  },
});

const breakerStep = (of: string, breakerA: number, { path }: Pick<Shore, 'path'>): Step => ({
  what: `The breaker of ${of}: I_n`,
  result: current(breakerA),
  paths: [[...path, 'breaker']],
});

function bondingSteps({ bondingMm2 = 0, path }: Shore, { codes }: Build): readonly Step[] {
  const { areaMm2 } = bondingRowOf(codes);
  return [
    { what: `The least for bonding the van's metal, from the table`, result: crossSectionMm2(areaMm2) },
    {
      what: 'What it is bonded with: A',
      result: crossSectionMm2(bondingMm2),
      paths: [[...path, 'bonding']],
    },
  ];
}

const thinSteps = ({ name, areaMm2 = 0, path }: MainsCircuit): readonly Step[] => [
  {
    what: 'The least for mains in a vehicle, from the table',
    result: crossSectionMm2(leastMainsConductor.areaMm2),
  },
  {
    what: `The copper of ${name}: A`,
    result: crossSectionMm2(areaMm2),
    paths: [[...path, 'conductor']],
  },
];

/** The table that the breaker is held against: the mild one where it goes beyond even that. */
function protectedSteps(circuit: MainsCircuit, shore: Shore | undefined, breaker: Measure): readonly Step[] {
  const { name, areaMm2 = 0, path, breakerA } = circuit;
  const { currentA, table } = heldAgainst(areaMm2, breaker.value);
  return [
    {
      what: `What the conductor of ${name} carries at 30 °C, not bundled: I_z, from the table`,
      sum: say`${crossSectionMm2(areaMm2)}, ${table === 'flexible cord' ? 'as a flexible cord' : table}`,
      result: current(currentA),
      paths: [[...path, 'conductor']],
    },
    breakerA === undefined && shore
      ? breakerStep(`the shore supply, which is the one before ${name}`, breaker.value, shore)
      : breakerStep(name, breaker.value, circuit),
  ];
}

/** In milliamperes: amperes would round 30 of them to nothing. */
const milliamperes = (currentA: number): string => `${Number((currentA * 1000).toFixed(1))} mA`;

const least = milliamperes(residualCurrentDevice.tripA);

const bondingSubject = 'bonding';
const breakerSubject = 'breaker of the shore supply';

const bondingRowOf = (codes: Build['codes']) =>
  codes === 'us' ? leastSize('chassis bonding, US') : { ...leastBondingConductor, of: 'bonding' };

function ofShore(shore: Shore, circuits: readonly MainsCircuit[], { codes }: Build): readonly Finding[] {
  const bondingRow = bondingRowOf(codes);
  const unsaid = [
    ...(shore.breakerA === undefined ? [{ what: 'an overcurrent breaker', key: 'breaker' }] : []),
    ...(shore.doublePole === undefined
      ? [{ what: 'that switch and breakers open both poles', key: 'double_pole' }]
      : []),
    ...(shore.bonding === undefined
      ? [
          {
            what: `the bonding of the van's metal (at least ${Number(bondingRow.areaMm2.toFixed(1))} mm²)`,
            key: 'bonding',
          },
        ]
      : []),
  ];
  return [
    ...residualOfShore(shore, circuits),
    ...(unsaid.length > 0
      ? [
          observed(text, {
            verdict: 'warn',
            subject: 'shore supply',
            path: shore.path,
            reason: say`The plan does not state ${namesOf(unsaid.map(({ what }) => what))}.`,
            remedy: say`Have ${unsaid.length === 1 ? 'it' : 'them'} fitted, and state ${unsaid.map(({ key }) => `\`electrical.shore.${key}\``).join(', ')}.`,
            sources: [...doublePoleBreakers.citations, ...bondingRow.citations],
          }),
        ]
      : []),
    ...(shore.doublePole === false
      ? [
          observed(text, {
            verdict: 'warn',
            subject: 'both poles',
            path: [...shore.path, 'double_pole'],
            reason: say`The breakers open one pole only: on a pitch that is wired the other way round, the van stays live.`,
            remedy: say`Take a main switch and breakers that open all 2 live conductors.`,
            sources: doublePoleBreakers.citations,
          }),
        ]
      : []),
    ...(shore.breakerA !== undefined && exceeds(shore.breakerA, shore.currentA)
      ? [breakerAboveSupply(shore, shore.breakerA)]
      : []),
    ...(shore.bondingMm2 !== undefined && isBelow(shore.bondingMm2, bondingRow.areaMm2)
      ? [
          judge({
            rule: text,
            subject: bondingSubject,
            path: [...shore.path, 'bonding'],
            kind: 'cross-section',
            measured: { value: shore.bondingMm2 * 1e-6, standard: 0 },
            limit: bondingRow.areaMm2 * 1e-6,
            sense: 'at least',
            broken: 'warn',
            reason: say`The metal of the van is bonded with ${crossSectionMm2(shore.bondingMm2)}; ${crossSectionMm2(bondingRow.areaMm2)} is the least.`,
            remedy: () => say`Bond it with ${crossSectionMm2(bondingRow.areaMm2)} or more.`,
            sources: bondingRow.citations,
            cautions: codes === 'us' ? [] : [leastBondingConductor.caution],
          }),
        ]
      : []),
  ];
}

/** Areas of gauges are listed to six digits. */
const isBelow = (areaMm2: number, leastMm2: number): boolean => areaMm2 < leastMm2 * (1 - 1e-5);

const onShore = ({ from }: MainsCircuit): boolean => from !== 'inverter';

/**
 * At the inlet, unless every circuit that hangs on it has its own; a charger counts as one without. A circuit that the
 * inverter feeds too needs its own anyway, and says so itself.
 */
function residualOfShore(shore: Shore, circuits: readonly MainsCircuit[]): readonly Finding[] {
  const fed = circuits.filter(onShore);
  if (shore.residualCurrentA !== undefined)
    return tooCoarse(shore.residualCurrentA, 'shore supply', [...shore.path, 'residual_current']);
  const covered =
    fed.length > 0 &&
    !shore.charger &&
    fed.every(({ from, residualCurrentA }) => from === 'both' || residualCurrentA !== undefined);
  return covered ? [] : [withoutResidual('shore supply', [...shore.path, 'residual_current'], '')];
}

function ofCircuit(circuit: MainsCircuit, shore: Shore | undefined): readonly Finding[] {
  const { name, path, from, areaMm2, residualCurrentA } = circuit;
  const residualPath = [...path, 'residual_current'];
  // What protects the inlet protects nothing that the inverter feeds; on shore it is the inlet's own finding.
  const residual =
    residualCurrentA !== undefined
      ? tooCoarse(residualCurrentA, name, residualPath)
      : from === 'shore'
        ? []
        : [
            withoutResidual(
              name,
              residualPath,
              from === 'both' && shore?.residualCurrentA !== undefined
                ? ' The one of the shore supply does not help while the inverter feeds it, unless it sits behind the changeover.'
                : '',
            ),
          ];
  return [
    ...residual,
    ...(areaMm2 !== undefined && isBelow(areaMm2, leastMainsConductor.areaMm2)
      ? [tooThin(circuit, areaMm2)]
      : []),
    ...ofBreaker(circuit, shore),
  ];
}

/** The breaker in front of a circuit: its own, or on shore alone that of the inlet. */
const breakerOf = ({ breakerA, from }: MainsCircuit, shore: Shore | undefined): number | undefined =>
  breakerA ?? (from === 'shore' ? shore?.breakerA : undefined);

function ofBreaker(circuit: MainsCircuit, shore: Shore | undefined): readonly Finding[] {
  const { name, path, areaMm2, from } = circuit;
  const breakerA = breakerOf(circuit, shore);
  if (breakerA === undefined)
    // Without one at the inlet either, that is said there.
    return from === 'shore' && shore
      ? []
      : [
          observed(text, {
            verdict: 'warn',
            subject: name,
            path: [...path, 'breaker'],
            reason: say`The plan states no overcurrent breaker for ${name}.`,
            remedy: say`Fit one of 2 poles for no more than its conductor carries${areaMm2 === undefined ? [] : say` (${current(carries(areaMm2).flexible.currentA)})`}, and state it as \`${[...path, 'breaker'].join('.')}\`.`,
            sources: doublePoleBreakers.citations,
          }),
        ];
  if (areaMm2 === undefined) return [];
  const { flexible, trunking } = carries(areaMm2);
  if (!exceeds(breakerA, flexible.currentA)) return [];
  const isHopeless = exceeds(breakerA, trunking.currentA);
  const limit = heldAgainst(areaMm2, breakerA);
  return [
    judge({
      rule: text,
      subject: name,
      path: [...path, 'conductor'],
      kind: 'current',
      measured: { value: breakerA, standard: 0 },
      limit: limit.currentA,
      sense: 'at most',
      broken: isHopeless ? 'fail' : 'warn',
      reason: say`The breaker of ${current(breakerA)} does not protect ${crossSectionMm2(areaMm2)}: ${limit.table === 'flexible cord' ? 'as a flexible cord' : 'in conduit or trunking'} it carries ${current(limit.currentA)}.`,
      remedy: () => say`Fit a breaker of at most ${current(flexible.currentA)}${thickerFor(breakerA)}.`,
      sources: limit.citations,
      cautions: limit.caution === undefined ? [] : [limit.caution],
    }),
  ];
}

/** What a mains conductor carries by the strict and by the mild one of two tables, at 30 °C and not bundled. */
function carries(areaMm2: number) {
  const enclosed = ampacityOf('in conduit on a wall or in trunking', areaMm2, 70);
  const cord = areaMm2 <= largestCordMm2 ? ampacityOf('flexible cord', areaMm2, 60) : undefined;
  const trunking = {
    table: 'in conduit on a wall or in trunking',
    currentA: Math.max(enclosed?.currentA ?? 0, cord?.currentA ?? 0),
    citations: (enclosed ?? cord)?.citations ?? [],
    caution: undefined,
  };
  if (!cord) return { flexible: trunking, trunking };
  const flexible = {
    table: 'flexible cord',
    currentA: cord.currentA,
    citations: cord.citations,
    caution: ampacityTable('flexible cord').caution,
  };
  return { flexible, trunking };
}

/** The strict table, and the mild one for a breaker that is too large even by that. */
function heldAgainst(areaMm2: number, breakerA: number) {
  const { flexible, trunking } = carries(areaMm2);
  return exceeds(breakerA, trunking.currentA) ? trunking : flexible;
}

const largestCordMm2 = Math.max(...ampacityTable('flexible cord').rows.map(({ areaMm2 }) => areaMm2));
const mainsSizesMm2 = [1.5, 2.5, 4, 6, 10, 16] as const;

function thickerFor(breakerA: number) {
  const size = mainsSizesMm2.find((areaMm2) => !exceeds(breakerA, carries(areaMm2).flexible.currentA));
  return size === undefined ? [] : say`, or a conductor of ${crossSectionMm2(size)}`;
}

const thinSubject = ({ name }: MainsCircuit): string => `conductor of ${name}`;

const tooThin = (circuit: MainsCircuit, areaMm2: number): Finding => {
  const { name, path } = circuit;
  return judge({
    rule: text,
    subject: thinSubject(circuit),
    path: [...path, 'conductor'],
    kind: 'cross-section',
    measured: { value: areaMm2 * 1e-6, standard: 0 },
    limit: leastMainsConductor.areaMm2 * 1e-6,
    sense: 'at least',
    broken: 'warn',
    reason: say`${name} is wired with ${crossSectionMm2(areaMm2)}; ${crossSectionMm2(leastMainsConductor.areaMm2)} is the least for mains in a vehicle.`,
    remedy: () => say`Take ${crossSectionMm2(leastMainsConductor.areaMm2)} or more.`,
    sources: leastMainsConductor.citations,
  });
};

const breakerAboveSupply = (shore: Shore, breakerA: number): Finding =>
  judge({
    rule: text,
    subject: breakerSubject,
    path: [...shore.path, 'breaker'],
    kind: 'current',
    measured: { value: breakerA, standard: 0 },
    limit: shore.currentA,
    sense: 'at most',
    broken: 'warn',
    reason: say`The breaker of ${current(breakerA)} lets more flow than the ${current(shore.currentA)} that the supply gives: the pitch trips first, and the lead is protected by chance.`,
    remedy: () => say`Take a breaker of at most ${current(shore.currentA)}.`,
    sources: doublePoleBreakers.citations,
  });

const withoutResidual = (subject: string, path: readonly (string | number)[], more: string): Finding =>
  observed(text, {
    verdict: 'fail',
    subject,
    path,
    reason: say`The plan states no residual-current device for ${subject === 'shore supply' ? 'the shore supply' : subject}.${more}`,
    remedy: say`Fit one of at most ${least} that opens all live conductors, and state it as \`${path.join('.')}\`.`,
  });

function tooCoarse(
  residualCurrentA: number,
  subject: string,
  path: readonly (string | number)[],
): readonly Finding[] {
  if (!exceeds(residualCurrentA, residualCurrentDevice.tripA)) return [];
  return [
    observed(text, {
      verdict: 'fail',
      subject,
      path,
      reason: say`A residual-current device of ${milliamperes(residualCurrentA)} does not protect people: it trips after a current that kills.`,
      remedy: say`Take one of at most ${least}.`,
    }),
  ];
}

/** Two sources on one circuit, with nothing that keeps them apart. */
function withoutChangeover({ inverter, mains: circuits }: Electrical): readonly Finding[] {
  const shared = circuits.filter(({ from }) => from === 'both').map(({ name }) => name);
  if (shared.length === 0 || !inverter || inverter.changeover) return [];
  return [
    observed(text, {
      verdict: 'fail',
      subject: 'changeover',
      path: [...inverter.path, 'changeover'],
      reason: say`Shore and inverter both feed ${namesOf(shared)}, and the plan states nothing that keeps them apart: joined, they destroy the inverter, or the plug of the lead is live in the hand.`,
      remedy: say`Fit a changeover that joins only 1 of the 2 at a time, all live conductors, and state it as \`electrical.inverter.changeover\`.`,
      sources: [
        {
          title: 'Two sources of alternating current are never joined unless they are made for it',
          provenance: 'common practice',
        },
      ],
    }),
  ];
}

function missingKeys({ shore, inverter, mains: circuits }: Electrical): readonly string[] {
  const uses = (from: MainsCircuit['from']) =>
    circuits.some((circuit) => circuit.from === from || circuit.from === 'both');
  return [
    ...(uses('shore') && !shore ? ['electrical.shore'] : []),
    ...(uses('inverter') && !inverter ? ['electrical.inverter'] : []),
    ...(inverter && circuits.length === 0 ? ['electrical.mains_circuits'] : []),
    ...circuits.filter(({ size }) => !size).map(({ path }) => [...path, 'conductor'].join('.')),
  ];
}

const notChecked = (keys: readonly string[]): Finding =>
  observed(text, {
    verdict: 'not checked',
    subject: 'mains circuits',
    path: ['electrical', 'mains_circuits'],
    reason: say`What feeds every mains circuit, and what its conductor carries, is not known.`,
    remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
    missing: keys,
  });

/** Everything asked for is stated; the circuit whose breaker is nearest to what its conductor carries is named. */
function asAsked({ shore, mains: circuits }: Electrical): Finding {
  const protectedBy = circuits.flatMap((circuit) => {
    const breakerA = breakerOf(circuit, shore);
    return breakerA === undefined || circuit.areaMm2 === undefined
      ? []
      : [{ ...circuit, breakerA, areaMm2: circuit.areaMm2, limit: carries(circuit.areaMm2).flexible }];
  });
  const closest = protectedBy.reduce<(typeof protectedBy)[number] | undefined>(
    (most, each) =>
      most === undefined || each.breakerA / each.limit.currentA > most.breakerA / most.limit.currentA
        ? each
        : most,
    undefined,
  );
  const stated = say`Residual current, breakers${shore ? ', both poles and bonding' : ''} are stated as asked`;
  if (!closest)
    return observed(text, { verdict: 'pass', subject: 'mains', path: text.place, reason: say`${stated}.` });
  return judge({
    rule: text,
    subject: closest.name,
    path: [...closest.path, 'breaker'],
    kind: 'current',
    measured: { value: closest.breakerA, standard: 0 },
    limit: closest.limit.currentA,
    sense: 'at most',
    broken: 'warn',
    reason: say`${stated}, with ${counted(circuits.length, 'mains circuit')}; closest is ${closest.name}, ${current(closest.breakerA)} on ${crossSectionMm2(closest.areaMm2)}, which carries ${current(closest.limit.currentA)}.`,
    sources: [...closest.limit.citations, ...doublePoleBreakers.citations],
  });
}
