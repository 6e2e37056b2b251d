import { totalMass } from '../../build/quantities.ts';
import type { Citation } from '../../catalogue/citation.ts';
import { overloadBandFor, overloadCaution, overloadCitations } from '../../catalogue/penalties.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { mass, share } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { vehicleLawCaution } from '../cautions.ts';
import { maxMass, unladen } from '../needs.ts';
import { loseMass } from '../remedies.ts';
import { greatest } from '../states.ts';
import { massOfEverything } from '../working/parts.ts';

const plate: Citation = { title: "The maximum mass on the van's plate", provenance: 'read' };

const text: RuleText = {
  id: 'mass.total',
  topic: 'mass',
  title: 'total mass',
  why: 'A van over its plate is illegal, takes longer to stop, and may not be insured.',
  formula: 'M = Σ m over everything aboard, in kg, with fresh + waste water ≤ what was carried',
  sources: [plate],
  cautions: [vehicleLawCaution],
  fix: 'Leave things out, choose lighter ones, or carry less water.',
  lifeSafety: true,
  place: ['van'],
};

export default defineRule({
  ...text,
  needs: { maxMass, unladen },
  check: ({ build, facts }) => {
    const limit = facts.maxMass.value;
    const worst = greatest(build, build.bodies, totalMass);
    const isOver = exceeds(worst.value, limit);
    const band = build.codes === 'uk' && isOver ? overloadBandFor(worst.value, limit) : undefined;
    return {
      findings: [
        judge({
          rule: text,
          subject: 'whole van',
          path: ['van', 'max_mass'],
          kind: 'mass',
          measured: worst,
          limit,
          sense: 'at most',
          broken: 'fail',
          state: worst.state,
          reason: isOver
            ? overloaded(worst.value, limit, band?.penaltyGbp)
            : say`At its heaviest the van stays ${mass(Math.max(0, limit - worst.value))} below its plate.`,
          remedy: (shortfall) => loseMass(build, worst.filling, shortfall),
          ...(band && { sources: overloadCitations, cautions: [overloadCaution] }),
        }),
      ],
    };
  },
  work: ({ build }) => [
    massOfEverything(
      build.bodies,
      greatest(build, build.bodies, totalMass).filling,
      'Everything aboard in the heaviest state: M = Σ m',
    ),
  ],
});

function overloaded(totalKg: number, limitKg: number, penaltyGbp: number | undefined): Phrase {
  const grade =
    penaltyGbp === undefined ? '' : `; a fixed penalty of ${penaltyGbp} GBP has been usual for that much`;
  return say`At its heaviest the van is ${mass(totalKg - limitKg)} over its plate, ${share(totalKg / limitKg - 1)} too much${grade}.`;
}
