import type { Circuit, Electrical } from '../../build/electrical.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { crossSectionMm2, length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { electricalCaution } from '../cautions.ts';
import { choiceFor, choiceInWords, choiceMethod } from '../circuit-choice.ts';
import { EXEMPT_M, isLong, leastAreaMm2, leastSingles } from '../circuit-limits.ts';
import { sizeText } from '../conductor-text.ts';
import { closestOf, notKnown, withCircuits } from '../fused.ts';
import { observed } from '../observed.ts';

const text: RuleText = {
  id: 'electrical.least-section',
  topic: 'electrical',
  title: 'least size of cables',
  why: 'A thin conductor breaks where it is crimped, pulled or shaken, however little current it carries.',
  formula: 'A ≥ A_min in mm² of a conductor of its own; the stricter of two practices',
  sources: [choiceMethod],
  cautions: [electricalCaution],
  fix: 'Take the least size that is allowed, or a thicker one.',
  place: ['electrical', 'circuits'],
};

export default defineRule({
  ...text,
  needs: { electrical: withCircuits },
  check: ({ facts: { electrical } }) => {
    const long = electrical.circuits.filter(isLong);
    const judged = long.flatMap((circuit) => {
      const { conductor } = circuit.wire;
      return conductor ? [sizeOf(electrical, circuit, conductor.areaMm2)] : [];
    });
    const unknown = long.filter(({ wire }) => !wire.conductor);
    return {
      findings: [
        ...(long.length === 0 ? [allShort(electrical)] : []),
        ...judged.filter(({ verdict }) => verdict !== 'pass'),
        ...closestOf(
          judged.filter(({ verdict }) => verdict === 'pass'),
          (more) => say`${more} more are no thinner.`,
        ),
        ...notKnown(
          text,
          unknown,
          unknown.map(({ path }) => `${path.join('.')}.conductor`),
          say`The plan does not say which conductor it is.`,
        ),
      ],
    };
  },
  work: ({ facts: { electrical } }, finding) => {
    const circuit = electrical.circuits.find(({ name }) => name === finding.subject);
    const conductor = circuit?.wire.conductor;
    if (!finding.measured || !circuit || !conductor) return undefined;
    const [craft, usBoats] = leastSingles;
    return [
      {
        what: 'The least size of a conductor of its own: A_min',
        sum: say`the greater of ${crossSectionMm2(craft.areaMm2)} and ${crossSectionMm2(usBoats.areaMm2)} (16 AWG); only one of ${length(EXEMPT_M)} or less may be of any size`,
        result: crossSectionMm2(leastAreaMm2(circuit)),
        paths: [[...circuit.path, 'length']],
      },
      {
        what: `The copper of ${circuit.name}: A`,
        sum: circuit.wire.size ? sizeText(circuit.wire.size, conductor) : say`as the plan says`,
        result: crossSectionMm2(conductor.areaMm2),
        paths: [[...circuit.path, 'conductor']],
      },
    ];
  },
});

function sizeOf(electrical: Electrical, circuit: Circuit, areaMm2: number): Finding {
  const { name, path, wire } = circuit;
  const [craft, usBoats] = leastSingles;
  const cable = wire.size ? sizeText(wire.size, wire.conductor) : say`it`;
  return judge({
    rule: text,
    subject: name,
    path: [...path, 'conductor'],
    kind: 'cross-section',
    measured: { value: areaMm2 * 1e-6, standard: 0 },
    limit: leastAreaMm2(circuit) * 1e-6,
    sense: 'at least',
    broken: 'warn',
    reason: say`${name} is ${cable}, ${crossSectionMm2(areaMm2)} of copper. US boats need ${crossSectionMm2(usBoats.areaMm2)} (16 AWG), small craft by the standard ${crossSectionMm2(craft.areaMm2)}, for a conductor of its own longer than ${length(EXEMPT_M)}; a core of a sheathed cable may be thinner.`,
    sources: leastSingles.flatMap(({ citations }) => citations),
    remedy: () => {
      const choice = choiceFor(electrical, circuit);
      return choice
        ? choiceInWords(choice)
        : say`Use at least ${sizeText({ system: 'mm²', size: '1.5' })} or 16 AWG.`;
    },
  });
}

const allShort = ({ circuits: [first], path }: Electrical): Finding =>
  observed(text, {
    verdict: 'pass',
    subject: first?.name ?? 'circuits',
    path: first?.path ?? path,
    reason: say`No circuit is longer than ${length(EXEMPT_M)}; so short a conductor may be of any size.`,
  });
