import type { DrivingCharger, Electrical } from '../../build/electrical.ts';
import { converterInputA, hotAlternatorA } from '../../calc/electrical/alternator.ts';
import { alternatorHotLoss, alternatorShareGuide } from '../../catalogue/electrical/charging-practice.ts';
import { controllerChargeVoltage } from '../../catalogue/electrical/supply-sources.ts';
import { judge } from '../../engine/judge.ts';
import { current, share, voltage } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { electricalCaution } from '../cautions.ts';
import { chargeVoltageOf } from '../chargers.ts';
import { electrical } from '../circuits.ts';

/** What is left of the alternator's voltage in a van of 12 V where the charger is joined. */
const inputV = 13.5;

const text: RuleText = {
  id: 'electrical.alternator',
  topic: 'electrical',
  title: 'charging from the alternator',
  why: 'An alternator that gives nearly all it can for hours gets too hot, and what it gives to the living battery is missing for lights, brakes and the starter battery.',
  formula:
    'I_in = I · U_ch / (U_in · η) ≤ s · I_a · (1 − d); I output of the charger and I_a rated current of the alternator in A, U_ch charge voltage and U_in = 13.5 V in V, η efficiency, s = 0.5, d = 0.25 lost hot',
  sources: [
    { title: '13.5 V at the input of the charger, in a van of 12 V', provenance: 'common practice' },
    {
      title: 'The share is taken of the hot output, where the remembered guide has the rated current',
      provenance: 'own choice',
    },
    controllerChargeVoltage,
  ],
  cautions: [electricalCaution],
  fix: 'Set the charger to less current, or fit an alternator that gives more.',
  place: ['electrical', 'charging_while_driving'],
};

const driving: Need<DrivingCharger & { readonly alternatorA: number }> = (build) => {
  const found = electrical(build);
  if (!found.ok) return found;
  const { drivingCharger } = found.value;
  if (!drivingCharger) return missing('electrical.charging_while_driving');
  const { alternatorA } = drivingCharger;
  return alternatorA === undefined
    ? missing('electrical.charging_while_driving.alternator')
    : given({ ...drivingCharger, alternatorA });
};

export default defineRule({
  ...text,
  needs: { electrical, driving },
  check: ({ facts }) => {
    const { currentA, efficiency, alternatorA, path } = facts.driving;
    const { outputV, takenA, hotA, limitA } = figuresOf(facts.driving, facts.electrical);
    return {
      findings: [
        judge({
          rule: text,
          subject: 'the charger while driving',
          path: [...path, 'current'],
          kind: 'current',
          measured: { value: takenA, standard: 0 },
          limit: limitA,
          sense: 'at most',
          broken: 'warn',
          reason: say`To give ${current(currentA)} at ${voltage(outputV)} with an efficiency of ${share(efficiency)}, the charger takes ${current(takenA)} at ${voltage(inputV)}. The alternator of ${current(alternatorA)} gives about ${current(hotA)} when hot, and about half of that is for charging.`,
          remedy: () =>
            say`Set or choose the charger for at most ${current(downToWhole((currentA * limitA) / takenA))}, or have an alternator of at least ${current(Math.ceil((alternatorA * takenA) / limitA - 1e-9))}; the base vehicle's maker says what may be taken.`,
          sources: [...alternatorShareGuide.citations, ...alternatorHotLoss.citations],
        }),
      ],
    };
  },
  work: ({ facts }) => {
    const { currentA, efficiency, alternatorA, path } = facts.driving;
    const { outputV, takenA, hotA, limitA } = figuresOf(facts.driving, facts.electrical);
    return [
      {
        what: 'What the alternator gives when it is hot: I_a · (1 − d)',
        sum: say`${current(alternatorA)} · (1 − ${share(alternatorHotLoss.share)})`,
        result: current(hotA),
        paths: [[...path, 'alternator']],
      },
      {
        what: 'What of that is for charging: s · I_a · (1 − d)',
        sum: say`${share(alternatorShareGuide.share)} · ${current(hotA)}`,
        result: current(limitA),
      },
      {
        what: 'What the charger takes from it: I · U_ch / (U_in · η), more than it gives, since it lifts the voltage and gets warm',
        sum: say`${current(currentA)} · ${voltage(outputV)} / (${voltage(inputV)} · ${share(efficiency)})`,
        result: current(takenA),
        paths: [
          [...path, 'current'],
          [...path, 'efficiency'],
        ],
      },
    ];
  },
});

/** What the charger takes at its input, and what of the alternator is for it. */
function figuresOf(
  { currentA, efficiency, alternatorA }: DrivingCharger & { readonly alternatorA: number },
  { nominalV }: Electrical,
) {
  const outputV = chargeVoltageOf(nominalV);
  const hotA = hotAlternatorA(alternatorA, alternatorHotLoss.share);
  return {
    outputV,
    takenA: converterInputA({ outputA: currentA, outputV, inputV, efficiency }),
    hotA,
    limitA: alternatorShareGuide.share * hotA,
  };
}

/** Whole amperes, unless that leaves nothing. */
const downToWhole = (currentA: number): number => Math.floor(currentA + 1e-9) || currentA;
