import type { Build } from '../../build/build.ts';
import type { Appliance, Gas } from '../../build/gas.ts';
import { gasUseOf } from '../../build/gas-use.ts';
import { type SupplyPressure, supplyPressuresFor } from '../../catalogue/gas/requirements.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { massFlow, pressure, share } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { combustionCaution, gasCaution } from '../cautions.ts';
import { appliances, asked, keyOf } from '../gas-facts.ts';
import { observed } from '../observed.ts';
import { counted, joined, namesOf } from '../routed.ts';
import { ratesStep } from '../working/gas-rate.ts';

const text: RuleText = {
  id: 'gas.regulator',
  topic: 'gas',
  title: 'the gas regulator',
  why: 'A regulator that is too small lets flames shrink and go out; one with another pressure than the appliances makes them burn badly, with carbon monoxide.',
  formula: 'ṁ_regulator ≥ Σ ṁ of all appliances, g/h; p_regulator = p of each appliance, mbar',
  sources: [
    {
      title: 'Pressures within 3 % of each other are the same: mbar, inches of water and kPa are rounded',
      provenance: 'own choice',
    },
  ],
  cautions: [gasCaution, combustionCaution],
  fix: 'Take a regulator of the pressure on the plates that gives enough for all appliances at once.',
  lifeSafety: true,
  place: ['gas', 'regulator'],
};

type Regulator = NonNullable<Gas['regulator']>;

const regulator: Need<Regulator> = ({ gas }) =>
  gas?.regulator ? given(gas.regulator) : missing('gas.regulator.pressure');

export default defineRule({
  ...text,
  needs: { appliances, regulator },
  check: ({ build, facts }) => {
    const { rateMissing, fullRateKgPerS } = gasUseOf(build);
    const { regulator: fitted, appliances: all } = facts;
    const lacking = [
      ...rateMissing,
      ...(fitted.capacityKgPerS === undefined ? [keyOf(fitted.path, 'capacity')] : []),
      ...all.filter(({ pressurePa }) => pressurePa === undefined).map(({ path }) => keyOf(path, 'pressure')),
    ];
    const known = all.filter(({ pressurePa }) => pressurePa !== undefined);
    const unlike = known.filter(({ pressurePa }) => !isSame(pressurePa ?? 0, fitted.pressurePa));
    return {
      findings: [
        ...(fullRateKgPerS === undefined || fitted.capacityKgPerS === undefined
          ? []
          : [capacity(fitted, fullRateKgPerS, fitted.capacityKgPerS, build)]),
        ...unlike.map((appliance) => otherPressure(fitted, appliance, build)),
        ...usualPressure(fitted, known.length === all.length && unlike.length === 0, build),
        ...(lacking.length > 0 ? [notSaid(fitted, lacking)] : []),
      ],
    };
  },
  work: ({ build, facts: { regulator: fitted, appliances: all } }, { subject }) => {
    if (subject === 'capacity') return capacitySteps(fitted, all, build);
    const alone = all.find(({ name }) => ofPressure(name) === subject);
    return alone ? otherPressureSteps(fitted, alone) : usualPressureSteps(fitted, all, build);
  },
});

const ofPressure = (name: string): string => `${name}: pressure`;

const sameWithin = 0.03;

const isSame = (onePa: number, otherPa: number): boolean =>
  Math.abs(onePa - otherPa) <= sameWithin * Math.max(onePa, otherPa);

const notSaid = ({ path }: Regulator, lacking: readonly string[]): Finding =>
  observed(text, {
    verdict: 'not checked',
    subject: 'what the plates say',
    path,
    reason: say`Of the regulator and the appliances, the plan does not say all of the pressures, inputs and capacity.`,
    remedy: say`Add ${namesOf(
      lacking.map((key) => `\`${key}\``),
      8,
    )}.`,
    missing: lacking,
  });

function capacity({ path }: Regulator, needKgPerS: number, givesKgPerS: number, build: Build): Finding {
  const { broken, sources, cautions } = asked('working-pressure', build);
  return judge({
    rule: text,
    subject: 'capacity',
    path: [...path, 'capacity'],
    kind: 'mass flow',
    measured: { value: needKgPerS, standard: 0 },
    limit: givesKgPerS,
    sense: 'at most',
    broken,
    reason: say`All appliances together take ${massFlow(needKgPerS)} with everything lit; the regulator gives ${massFlow(givesKgPerS)}.`,
    remedy: () => say`Take a regulator for ${massFlow(Math.ceil(needKgPerS * 36_000) / 36_000)} or more.`,
    sources,
    cautions,
  });
}

function otherPressure(
  { pressurePa }: Regulator,
  { name, path, pressurePa: own }: Appliance,
  build: Build,
): Finding {
  const { words, broken, sources, cautions } = asked('fixed-regulator', build);
  return observed(text, {
    verdict: broken,
    subject: ofPressure(name),
    path: [...path, 'pressure'],
    measured: pressure(own ?? 0),
    reason: say`${name} is made for ${pressure(own ?? 0)}, and the regulator gives ${pressure(pressurePa)}. What is asked for: ${words}.`,
    remedy: say`Take ${name} in its version for ${pressure(pressurePa)}; only its maker may change it.`,
    sources,
    cautions,
  });
}

const usualPressures = ({ codes }: Build): readonly SupplyPressure[] =>
  supplyPressuresFor(codes).filter(({ forNew }) => forNew);

/** The pressure of new vehicles where the plan's codes hold. */
function usualPressure({ path, pressurePa }: Regulator, allAlike: boolean, build: Build): readonly Finding[] {
  const rows = usualPressures(build);
  const row = rows.find((each) => isSame(each.pressurePa, pressurePa));
  const { sources, cautions } = asked('fixed-regulator', build);
  if (row)
    return allAlike
      ? [
          observed(text, {
            verdict: 'pass',
            subject: 'pressure',
            path: [...path, 'pressure'],
            measured: pressure(pressurePa),
            reason: say`The regulator and ${counted(build.gas?.appliances.length ?? 0, 'appliance')} have ${pressure(pressurePa)}: ${row.of}.`,
            sources: [...row.citations, ...sources],
            cautions,
          }),
        ]
      : [];
  const usual = joined(
    rows.map((each) => say`${pressure(each.pressurePa)} (${each.of})`),
    ' or ',
  );
  return [
    observed(text, {
      verdict: 'warn',
      subject: 'pressure',
      path: [...path, 'pressure'],
      measured: pressure(pressurePa),
      reason: say`The regulator gives ${pressure(pressurePa)}; new vehicles have ${usual}.`,
      remedy: say`Take regulator and appliances for ${usual}.`,
      sources: [...rows.flatMap(({ citations }) => citations), ...sources],
      cautions,
    }),
  ];
}

const capacitySteps = (
  { path, capacityKgPerS }: Regulator,
  all: readonly Appliance[],
  build: Build,
): readonly Step[] => [
  ...(capacityKgPerS === undefined
    ? []
    : [
        {
          what: 'What the regulator gives at most, as its plate and the plan say',
          result: massFlow(capacityKgPerS),
          paths: [[...path, 'capacity']],
        },
      ]),
  ratesStep('What all appliances take at once with everything lit', all, build),
];

const otherPressureSteps = (
  { path, pressurePa }: Regulator,
  { name, path: own, pressurePa: ownPa = 0 }: Appliance,
): readonly Step[] => [
  {
    what: 'The pressure that the regulator gives',
    result: pressure(pressurePa),
    paths: [[...path, 'pressure']],
  },
  {
    what: `The pressure that ${name} is made for; up to ${sameWithin * 100} % apart would count as the same`,
    sum: say`${share(Math.abs(ownPa - pressurePa) / Math.max(ownPa, pressurePa))} of the higher lie between them`,
    result: pressure(ownPa),
    paths: [[...own, 'pressure']],
  },
];

function usualPressureSteps(
  { path, pressurePa }: Regulator,
  all: readonly Appliance[],
  build: Build,
): readonly Step[] {
  const usual = usualPressures(build);
  const said = all.filter((each) => each.pressurePa !== undefined);
  return [
    {
      what: `What new vehicles have; up to ${sameWithin * 100} % apart counts as the same`,
      sum: joined(
        usual.map((each) => say`${pressure(each.pressurePa)} for ${each.of}`),
        '; ',
      ),
    },
    ...(said.length === 0
      ? []
      : [
          {
            what: 'What the appliances are made for',
            sum: joined(said.map(({ name, pressurePa: own = 0 }) => say`${name} ${pressure(own)}`)),
            paths: said.map((each) => [...each.path, 'pressure']),
          },
        ]),
    {
      what: 'The pressure that the regulator gives, as the plan says',
      result: pressure(pressurePa),
      paths: [[...path, 'pressure']],
    },
  ];
}
