import { judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { keyAt, silentAbout } from '../silent-about.ts';
import { isFresh, tanks } from '../watered.ts';

const text: RuleText = {
  id: 'water.inspection',
  topic: 'water',
  title: 'tanks can be cleaned',
  why: 'What nobody can reach nobody cleans: slime grows on the walls of every tank of drinking water.',
  formula: 'd ≥ 100 mm; d the opening of a fresh tank through which an arm with a brush goes, m',
  sources: [
    {
      title: 'An arm with a brush goes through 100 mm; no published figure for small tanks was found',
      provenance: 'own choice',
    },
  ],
  cautions: [waterCaution],
  fix: 'Take a tank with a lid wide enough for an arm and a brush, where it can be reached.',
  place: ['tanks'],
};

const leastM = 0.1;

export default defineRule({
  ...text,
  needs: { tanks },
  work: ({ facts }, { subject, measured }) => {
    const tank = facts.tanks.find((each) => isFresh(each) && each.name === subject);
    if (!tank || !measured) return undefined;
    return [
      {
        what: 'The opening d that the plan gives it',
        sum: say`as typed, held against the ${length(leastM)} that an arm with a brush takes`,
        result: length(tank.inspectionM ?? 0),
        paths: [[...tank.path, 'inspection']],
      },
    ];
  },
  check: ({ facts }) => {
    const fresh = facts.tanks.filter(isFresh);
    return {
      findings: [
        ...foldPasses(
          fresh.flatMap(({ name, path, inspectionM }) =>
            inspectionM === undefined
              ? []
              : [
                  judge({
                    rule: text,
                    subject: name,
                    path: [...path, 'inspection'],
                    kind: 'length',
                    measured: { value: inspectionM, standard: 0 },
                    limit: leastM,
                    sense: 'at least',
                    broken: 'warn',
                    reason: say`${name} has an opening of ${length(inspectionM)} to be cleaned through.`,
                    remedy: () =>
                      say`Take a tank with a lid of ${length(leastM)} or more, or have one fitted, on a side that is reached.`,
                  }),
                ],
          ),
          'tank',
        ),
        ...silentAbout(
          text,
          fresh.filter(({ inspectionM }) => inspectionM === undefined),
          'how wide the opening is through which it is cleaned',
          keyAt('inspection'),
        ),
      ],
    };
  },
});
