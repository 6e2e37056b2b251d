import { totalMass } from '../../build/quantities.ts';
import { expandedUncertainty, probabilityAbove } from '../../calc/uncertainty.ts';
import { uncertaintyMethod } from '../../catalogue/methods.ts';
import { exceeds, sourceInWords } from '../../engine/judge.ts';
import { mass, share } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { vehicleLawCaution } from '../cautions.ts';
import { maxMass, unladen } from '../needs.ts';
import { loseMass } from '../remedies.ts';
import { greatest } from '../states.ts';
import { massOfEverything } from '../working/parts.ts';

/** A chance of being overloaded that is worth a warning: own choice, the usual one in twenty. */
const noticeableChance = 0.05;

const text: RuleText = {
  id: 'mass.payload',
  topic: 'mass',
  title: 'payload left',
  why: 'Everything that is not in the plan yet has to fit into what is left, and the plan itself is only as good as its masses.',
  formula:
    'payload left = M_max − M; u(M)² = Σ u(m)², errors of one source added first; chance = Φ((M − M_max) / u)',
  sources: [uncertaintyMethod, { title: 'Warning at a chance of 5 % or more', provenance: 'own choice' }],
  cautions: [vehicleLawCaution],
  fix: 'Leave mass out, or weigh what is not certain.',
  place: ['van'],
};

export default defineRule({
  ...text,
  needs: { maxMass, unladen },
  check: ({ build, facts }) => {
    const worst = greatest(build, build.bodies, totalMass);
    const leftKg = facts.maxMass.value - worst.value;
    const isOver = exceeds(worst.value, facts.maxMass.value);
    const tolerance = expandedUncertainty(worst.standard);
    const probability = probabilityAbove(facts.maxMass.value, worst.value, worst.standard);
    const doubtful = tolerance > 0 && probability >= noticeableChance;
    const verdict = isOver || doubtful ? 'warn' : 'pass';
    const chance = say`the chance of an overload is ${share(probability)}`;
    const where =
      worst.dominant === undefined
        ? ''
        : `; most of the tolerance comes from ${sourceInWords(worst.dominant)}`;
    const reason = isOver
      ? say`Nothing is left: the plan is ${mass(-leftKg)} over.`
      : tolerance === 0
        ? say`${mass(leftKg)} are left; no mass in the plan has a tolerance, so nothing can be said of the chance of an overload.`
        : say`${mass(leftKg)} are left, give or take ${mass(tolerance)}: ${chance}${where}.`;
    return {
      findings: [
        {
          rule: text.id,
          topic: text.topic,
          title: text.title,
          verdict,
          subject: 'whole van',
          path: ['van', 'max_mass'],
          measured: mass(leftKg),
          limit: { measure: mass(0), sense: 'at least' },
          margin: mass(leftKg),
          ...(tolerance > 0 && { tolerance: mass(tolerance), probability }),
          worstState: worst.state,
          reason,
          // An overload has its remedy in the check of the total mass.
          ...(verdict === 'warn' &&
            !isOver && { remedy: loseMass(build, worst.filling, tolerance - leftKg) }),
          sources: text.sources,
          cautions: text.cautions,
        },
      ],
    };
  },
  work: ({ build, facts }) => {
    const worst = greatest(build, build.bodies, totalMass);
    const limitKg = facts.maxMass.value;
    return [
      massOfEverything(build.bodies, worst.filling, 'Everything aboard in the heaviest state: M = Σ m'),
      {
        what: 'What is left: M_max − M',
        sum: say`${mass(limitKg)} − ${mass(worst.value)}`,
        result: mass(limitKg - worst.value),
        paths: [['van', 'max_mass']],
      },
    ];
  },
});
