import type { Build } from '../../build/build.ts';
import type { Codes } from '../../catalogue/codes.ts';
import {
  type LicenceClass,
  type LicenceEnergy,
  licenceCautions,
  licenceClassesFor,
  lowestClassFor,
} from '../../catalogue/licences.ts';
import type { Finding } from '../../engine/finding.ts';
import { mass } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { codes, maxMass } from '../needs.ts';

const text: RuleText = {
  id: 'mass.licence',
  topic: 'mass',
  title: 'driving licence',
  why: 'Driving a van that the licence does not cover is an offence and voids most insurance.',
  formula:
    'the lowest class whose greatest permissible mass covers M_max; the plate counts, not what the van weighs',
  sources: [],
  cautions: [
    "Licence law changes and has exceptions. Look at the categories on every driver's licence and ask the licensing authority.",
  ],
  fix: 'Get the licence that covers the plate, or a van with a lower plate.',
  place: ['van'],
};

export default defineRule({
  ...text,
  needs: { codes, maxMass },
  check: ({ build, facts }) => {
    const massKg = facts.maxMass.value;
    const { category } = build.licence;
    const { energy, needed, covered, used } = classesFor(build, facts.codes, massKg);
    // Whoever holds another class, or an old test's rights, holds the ordinary car licence too.
    const passes = covered !== undefined || (needed !== undefined && !needed.needsTraining);
    const finding: Finding = {
      rule: text.id,
      topic: text.topic,
      title: text.title,
      verdict: passes ? 'pass' : 'fail',
      subject: used ? `class ${used.category}` : 'no class',
      path: ['van', 'max_mass'],
      measured: mass(massKg),
      ...(used?.maxMassKg !== undefined && {
        limit: { measure: mass(used.maxMassKg), sense: 'at most' },
        margin: mass(used.maxMassKg - massKg),
      }),
      reason: passes
        ? say`A plate of ${mass(massKg)} is covered by class ${used?.category ?? ''} (${used?.note ?? ''}).`
        : category === undefined
          ? say`A plate of ${mass(massKg)} is too heavy for an ordinary car licence: it takes class ${needed?.category ?? 'of heavy vehicles'}.`
          : say`The licence in the plan, class ${category}, does not cover a plate of ${mass(massKg)}: it takes class ${needed?.category ?? 'of heavy vehicles'}.`,
      ...(!passes && {
        remedy: say`If every driver holds class ${needed?.category ?? 'for it'}, say so: \`people: {licence: {category: ${needed?.category ?? '…'}}}\`. Otherwise have the van plated at ${mass(ordinaryLimit(facts.codes, energy, massKg))} or less, and check that the payload still does.`,
      }),
      sources: used?.citations ?? [],
      cautions: [...text.cautions, ...licenceCautions[facts.codes]],
    };
    return { findings: [finding] };
  },
  work: ({ build, facts }) => {
    const massKg = facts.maxMass.value;
    const { used } = classesFor(build, facts.codes, massKg);
    return [
      ...(used
        ? [
            {
              what: `The heaviest plate that class ${used.category} covers`,
              ...(used.maxMassKg === undefined
                ? { sum: say`it has no upper limit (${used.note})` }
                : { sum: say`by the table: ${used.note}`, result: mass(used.maxMassKg) }),
              paths: [
                ['people', 'licence'],
                ['van', 'energy'],
              ],
            },
          ]
        : []),
      {
        what: 'The plate of this van: the licence goes by it, not by the scale',
        sum: say`its greatest permissible mass, as the plan gives it`,
        result: mass(massKg),
        paths: [['van', 'max_mass']],
      },
    ];
  },
});

interface Classes {
  readonly energy: LicenceEnergy;
  /** The lowest class that covers the plate. */
  readonly needed: LicenceClass | undefined;
  /** The one that the plan says is held, if it covers the plate. */
  readonly covered: LicenceClass | undefined;
  readonly used: LicenceClass | undefined;
}

function classesFor(build: Build, codesInForce: Codes, massKg: number): Classes {
  const energy = ['electric', 'hydrogen'].includes(build.vehicle.energy ?? '') ? 'zero emission' : 'any';
  const { category, testPassed } = build.licence;
  const needed = lowestClassFor({
    codes: codesInForce,
    massKg,
    energy,
    ...(testPassed !== undefined && { testPassed }),
  });
  const covered = licenceClassesFor(codesInForce, energy, testPassed)
    .filter((row) => row.category.toLowerCase() === category?.trim().toLowerCase())
    .find((row) => massKg <= (row.maxMassKg ?? Number.POSITIVE_INFINITY));
  return { energy, needed, covered, used: covered ?? needed };
}

/** The greatest plate that needs no further test. */
function ordinaryLimit(
  region: Parameters<typeof licenceClassesFor>[0],
  energy: 'any' | 'zero emission',
  massKg: number,
): number {
  const ordinary = licenceClassesFor(region, energy).filter((row) => !row.needsTraining);
  return Math.max(0, ...ordinary.map((row) => row.maxMassKg ?? massKg));
}
