import type { Body } from '../../build/body.ts';
import type { Build } from '../../build/build.ts';
import { totalMass } from '../../build/quantities.ts';
import { minimumPayMass } from '../../calc/pay-mass.ts';
import { judge } from '../../engine/judge.ts';
import { count, factor, length, mass } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { vehicleLawCaution } from '../cautions.ts';
import { codes, maxMass, overallLength, unladen } from '../needs.ts';
import { loseMass } from '../remedies.ts';
import { greatest } from '../states.ts';
import { massOfEverything } from '../working/parts.ts';

const text: RuleText = {
  id: 'mass.personal-effects',
  topic: 'mass',
  title: 'room for personal effects',
  why: 'A van that is full before anyone has packed is overloaded on its first journey.',
  formula:
    'M_max − M without stores ≥ 10 kg × (n + L); n people aboard with the driver, L overall length in m',
  sources: [],
  cautions: [vehicleLawCaution],
  fix: 'Leave mass out until what people bring has room.',
  limits: ['minimum-pay-mass'],
  place: ['van'],
};

export default defineRule({
  ...text,
  needs: { codes, maxMass, overallLength, unladen },
  check: ({ build, facts, limit }) => {
    const regional = limit('minimum-pay-mass');
    const required = minimumPayMass(build.persons, facts.overallLength);
    const worst = greatest(build, withoutBelongings(build), totalMass);
    const roomKg = facts.maxMass.value - worst.value;
    return {
      findings: [
        judge({
          rule: text,
          subject: 'personal effects',
          path: ['van', 'overall_length'],
          kind: 'mass',
          measured: { ...worst, value: roomKg },
          limit: required,
          sense: 'at least',
          broken: regional.failing ? 'fail' : 'warn',
          state: worst.state,
          reason: say`With everything but belongings aboard, ${mass(Math.max(0, roomKg))} are left for them; the regulation asks for ${mass(required)} for ${String(build.persons)} aboard and ${length(facts.overallLength)}.`,
          remedy: (shortfall) => loseMass(build, worst.filling, shortfall),
          sources: regional.citations,
          cautions: regional.cautions,
        }),
      ],
    };
  },
  work: ({ build, facts, limit }) => {
    const bodies = withoutBelongings(build);
    const worst = greatest(build, bodies, totalMass);
    const limitKg = facts.maxMass.value;
    return [
      massOfEverything(
        bodies,
        worst.filling,
        'Everything aboard but the belongings in `stores`, in the heaviest state: M = Σ m',
      ),
      {
        what: 'What the regulation asks to be left: 10 kg × (n + L)',
        sum: say`${mass(limit('minimum-pay-mass').value)} · (${count(build.persons)} + ${factor(facts.overallLength)}); n people aboard with the driver, L the overall length in metres`,
        result: mass(minimumPayMass(build.persons, facts.overallLength)),
        paths: [
          ['people', 'seats'],
          ['van', 'overall_length'],
        ],
      },
      {
        what: 'What is left for belongings: M_max − M',
        sum: say`${mass(limitKg)} − ${mass(worst.value)}`,
        result: mass(limitKg - worst.value),
        paths: [['van', 'max_mass']],
      },
    ];
  },
});

/** Everything but what people pack. */
const withoutBelongings = ({ bodies }: Build): readonly Body[] =>
  bodies.filter(({ variable }) => variable?.group !== 'stores');
