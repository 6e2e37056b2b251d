import type { RoutedRun, Routes } from '../../build/routes.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { installationCaution, structureCaution } from '../cautions.ts';
import { chasesInUse, counted, namesOf } from '../routed.ts';

const text: RuleText = {
  id: 'routes.penetrations',
  topic: 'routes',
  title: 'holes in the floor and roof',
  why: 'Every hole in the floor or roof lets in water, fumes and cold unless it is sealed.',
  formula: 'every chase that goes through the floor or the roof',
  sources: [{ title: 'The chases of the plan', provenance: 'computed' }],
  cautions: [structureCaution, installationCaution],
  fix: 'Seal every hole in the table on both sides.',
  place: ['routes', 'chases'],
  informationOnly: true,
};

/** Also of chases that nothing takes yet: the hole is planned all the same. */
const withChases: Need<Routes> = ({ routes }) =>
  routes && routes.chases.length > 0 ? given(routes) : missing('routes.chases');

export default defineRule({
  ...text,
  needs: { routes: withChases },
  check: ({ facts: { routes } }) => {
    const rows = chasesInUse(routes).flatMap(({ chase, runs }) =>
      (chase.through ?? [])
        .filter((part) => part === 'floor' || part === 'roof')
        .map((part): Phrase[] => [
          say`${chase.id}`,
          say`${part}`,
          say`${runs.length > 0 ? namesOf(runs.map(labelled), 8) : 'nothing yet'}`,
          thickest(runs),
        ]),
    );
    const none = say`No chase of the plan is said to go through the floor or the roof.`;
    const some = say`${counted(rows.length, 'hole')}: deburr and paint each edge, line it with a grommet or a gland, and seal it so that no water, exhaust gas or vermin comes in.`;
    return {
      findings: [],
      notes: [
        {
          rule: text.id,
          topic: text.topic,
          title: 'Holes through the floor and the roof',
          detailOnly: rows.length === 0,
          columns: ['chase', 'through', 'what runs there', 'thickest'],
          rows,
          text: rows.length > 0 ? some : none,
          sources: text.sources,
          cautions: text.cautions,
        },
      ],
    };
  },
});

const labelled = ({ name, carries }: RoutedRun): string => `${name} (${carries})`;

function thickest(runs: readonly RoutedRun[]): Phrase {
  const diameters = runs.flatMap(({ diameterM }) => (diameterM === undefined ? [] : [diameterM]));
  return diameters.length > 0 ? say`${length(Math.max(...diameters))}` : say`not given`;
}
