import type { Drilled } from '../../build/layout.ts';
import type { RoutedRun } from '../../build/routes.ts';
import type { Finding } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { installationCaution, structureCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { chasesInUse, counted, namesOf, plannedRoutes, type UsedChase } from '../routed.ts';
import { holeSteps } from '../working/chase.ts';

const text: RuleText = {
  id: 'routes.holes',
  topic: 'routes',
  title: 'holes in ribs and members',
  why: 'A hole in the wrong place of a rib or pillar weakens the body, and its edge cuts what runs through it.',
  formula: 'every rib, member, wall or bulkhead that a chase in use goes through',
  sources: [
    {
      title: "The base vehicle maker's body-building guide shows where it may be drilled; no source",
      provenance: 'common practice',
    },
  ],
  cautions: [structureCaution, installationCaution],
  fix: 'Lead the chase where nothing that carries the van is drilled, or ask the maker of the base vehicle.',
  place: ['routes', 'chases'],
};

const carrying: readonly Drilled[] = ['rib', 'member', 'wall', 'bulkhead'];

/** Chases that something takes, where the plan says of any of them what it goes through. */
const usedChases: Need<readonly UsedChase[]> = (build) => {
  const planned = plannedRoutes(build);
  if (!planned.ok) return planned;
  const used = chasesInUse(planned.value).filter(({ runs }) => runs.length > 0);
  if (used.length === 0) return missing('routes.chases');
  return used.some(({ chase }) => chase.through) ? given(used) : missing('routes.chases.NAME.through');
};

export default defineRule({
  ...text,
  needs: { used: usedChases },
  check: ({ facts: { used } }) => {
    const holes = used.flatMap((each) => holesOf(each));
    return { findings: holes.length > 0 ? holes : [noHoles(used.length)] };
  },
  work: ({ facts: { used } }, { subject }) => {
    const drilled = used.find(({ chase }) => chase.id === subject);
    if (!drilled) return undefined;
    const widthM = holeWidth(drilled);
    return widthM === undefined ? undefined : holeSteps(drilled.chase, drilled.runs, widthM);
  },
});

const noHoles = (howMany: number): Finding =>
  observed(text, {
    verdict: 'pass',
    subject: 'chases',
    path: text.place,
    reason: say`By the plan, ${howMany === 1 ? 'the chase' : `none of the ${howMany} chases`} in use goes through ${howMany === 1 ? 'no' : 'a'} rib, member, wall or bulkhead.`,
  });

const holeWidth = ({ chase, runs }: UsedChase): number | undefined => chase.boreM ?? thickest(runs);

function holesOf(used: UsedChase): readonly Finding[] {
  const { chase, runs } = used;
  const drilled = (chase.through ?? []).filter((part) => carrying.includes(part));
  if (drilled.length === 0) return [];
  const parts = namesOf([...new Set(drilled)].map((part) => howMany(part, drilled)));
  const widthM = holeWidth(used);
  const hole = widthM === undefined ? say`` : say` of ${length(widthM)}`;
  return [
    observed(text, {
      verdict: 'warn',
      subject: chase.id,
      path: [...chase.path, 'through'],
      ...(widthM !== undefined && { measured: length(widthM) }),
      reason: say`${namesOf(runs.map(({ name }) => name))} ${runs.length === 1 ? 'goes' : 'go'} through ${parts}.`,
      remedy: say`Look for holes that are there already. Before ${counted(drilled.length, 'hole')}${hole} ${drilled.length === 1 ? 'is' : 'are'} drilled, see where the maker's guide allows it; deburr and paint the edge and line it with a grommet.`,
    }),
  ];
}

const howMany = (part: Drilled, all: readonly Drilled[]): string =>
  counted(all.filter((each) => each === part).length, part);

const thickest = (runs: readonly RoutedRun[]): number | undefined => {
  const diameters = runs.flatMap(({ diameterM }) => (diameterM === undefined ? [] : [diameterM]));
  return diameters.length > 0 ? Math.max(...diameters) : undefined;
};
