import type { Build } from '../../build/build.ts';
import type { Appliance, Gas } from '../../build/gas.ts';
import { gasUseOf } from '../../build/gas-use.ts';
import { supplyPressuresFor } from '../../catalogue/gas/requirements.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { massFlow, pressure } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { combustionCaution, gasCaution } from '../cautions.ts';
import { appliances, asked, keyOf } from '../gas-facts.ts';
import { observed } from '../observed.ts';
import { counted, joined, namesOf } from '../routed.ts';

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
});

const isSame = (onePa: number, otherPa: number): boolean =>
  Math.abs(onePa - otherPa) <= 0.03 * Math.max(onePa, otherPa);

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
    subject: `${name}: pressure`,
    path: [...path, 'pressure'],
    measured: pressure(own ?? 0),
    reason: say`${name} is made for ${pressure(own ?? 0)}, and the regulator gives ${pressure(pressurePa)}. What is asked for: ${words}.`,
    remedy: say`Take ${name} in its version for ${pressure(pressurePa)}; only its maker may change it.`,
    sources,
    cautions,
  });
}

/** The pressure of new vehicles where the plan's codes hold. */
function usualPressure({ path, pressurePa }: Regulator, allAlike: boolean, build: Build): readonly Finding[] {
  const rows = supplyPressuresFor(build.codes).filter(({ forNew }) => forNew);
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
