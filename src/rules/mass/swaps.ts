import type { BuiltBuildUp } from '../../build/build.ts';
import { mass } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { lighterSwaps } from '../swaps.ts';

const text: RuleText = {
  id: 'mass.swaps',
  topic: 'mass',
  title: 'lighter materials',
  why: 'Linings are where a conversion loses most of its payload without anyone noticing.',
  formula:
    'saving = A · share · t · (ρ − ρ_other), in kg; A area in m², t thickness in m, ρ density in kg/m³',
  sources: [{ title: 'Densities of the catalogue, each with its own source', provenance: 'read' }],
  cautions: [
    'The same thickness of another material is not as stiff, as warm or as hard to set alight. Ask whoever answers for the structure before a load-bearing board is changed.',
  ],
  fix: 'Choose a lighter material from the table.',
  place: ['build_ups'],
  informationOnly: true,
};

const buildUps: Need<readonly BuiltBuildUp[]> = ({ buildUps: all }) =>
  all.length > 0 ? given(all) : missing('build_ups');

export default defineRule({
  ...text,
  needs: { buildUps },
  check: ({ build }) => {
    const swaps = lighterSwaps(build);
    return {
      findings: [],
      notes: [
        {
          rule: text.id,
          topic: text.topic,
          title: 'What lighter materials of the same purpose would save',
          detailOnly: true,
          columns: ['build-up', 'now', 'instead', 'density', 'saves'],
          rows: swaps.map(({ buildUp, from, to, material, savesKg }) => [
            say`${buildUp}`,
            say`${from}`,
            say`${to}`,
            say`${{ kind: 'density', value: material.densityKgM3 }}`,
            say`${mass(savesKg)}`,
          ]),
          ...(swaps.length === 0 && { text: say`The catalogue has nothing lighter for these build-ups.` }),
          sources: text.sources,
          cautions: text.cautions,
        },
      ],
    };
  },
});
