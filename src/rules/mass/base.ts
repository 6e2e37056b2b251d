import { brochureMassCase } from '../../catalogue/methods.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { vehicleLawCaution } from '../cautions.ts';
import { emptyKg, unladenAsGiven } from '../needs.ts';

const text: RuleText = {
  id: 'mass.base',
  topic: 'mass',
  title: 'mass of the empty van',
  why: 'Every sum starts from it. Brochure masses are off by hundreds of kilograms, and counting the driver or the fuel twice (or not at all) is the commonest slip.',
  formula:
    'the empty van is a pair of weighed axle loads, with the driver and the fuel known to be in it or not',
  sources: [brochureMassCase],
  cautions: [vehicleLawCaution],
  fix: 'Have the empty van weighed, axle by axle, and say whether driver and fuel were in it.',
  place: ['van'],
};

export default defineRule({
  ...text,
  needs: { unladen: unladenAsGiven },
  check: ({ facts, build }) => {
    const { from, driverIncluded, fuelIncluded } = facts.unladen;
    const tank = build.bodies.some((body) => body.sort === 'fuel');
    const isPossible = emptyKg(build) > 0;
    const doubts = [
      ...(isPossible ? [] : ['it is no more than what is said to have been in it']),
      ...(from === 'weighbridge'
        ? []
        : [`it is not said to come from a weighbridge${from === 'brochure' ? ' but from a brochure' : ''}`]),
      ...(driverIncluded === undefined ? ['it is not said whether the driver is in it'] : []),
      ...(tank && fuelIncluded === undefined ? ['it is not said how much fuel is in it'] : []),
    ];
    const keys = [
      ...(isPossible ? [] : ['look at its mass, at the fuel in it and at their units']),
      ...(from === 'weighbridge'
        ? []
        : ['have the empty van weighed, axle by axle, and write `from: weighbridge`']),
      ...(driverIncluded === undefined ? ['`includes: {driver: false}`'] : []),
      ...(tank && fuelIncluded === undefined ? ['`includes: {fuel: 90 %}`'] : []),
    ];
    return {
      findings: [
        {
          rule: text.id,
          topic: text.topic,
          title: text.title,
          verdict: isPossible ? (doubts.length > 0 ? 'warn' : 'pass') : 'fail',
          subject: 'empty van',
          path: ['van', 'unladen'],
          reason:
            doubts.length > 0
              ? say`The mass of the empty van is uncertain: ${doubts.join('; ')}.`
              : say`The empty van was weighed, and it is known what was in it.`,
          ...(doubts.length > 0 && { remedy: say`Under \`van.unladen\`: ${keys.join('; ')}.` }),
          sources: text.sources,
          cautions: text.cautions,
        },
      ],
    };
  },
});
