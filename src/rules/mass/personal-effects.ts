import type { Body } from '../../build/body.ts';
import { totalMass } from '../../build/quantities.ts';
import { minimumPayMass } from '../../calc/pay-mass.ts';
import { judge } from '../../engine/judge.ts';
import { length, mass } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { vehicleLawCaution } from '../cautions.ts';
import { codes, maxMass, overallLength, unladen } from '../needs.ts';
import { loseMass } from '../remedies.ts';
import { greatest } from '../states.ts';

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
    const packed = build.bodies.filter((body: Body) => body.variable?.group !== 'stores');
    const worst = greatest(build, packed, totalMass);
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
});
