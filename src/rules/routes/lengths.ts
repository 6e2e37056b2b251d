import type { RoutedRun, Routes } from '../../build/routes.ts';
import type { Finding } from '../../engine/finding.ts';
import { count, length, mass, share } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { carried } from '../../plan/schema.ts';
import { installationCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { joined, namesOf, whatRuns } from '../routed.ts';

const text: RuleText = {
  id: 'routes.lengths',
  topic: 'routes',
  title: 'lengths and masses of runs',
  why: 'Copper and hoses are bought by the metre, and nobody weighs them before they are in the walls.',
  formula:
    'L = (Σ L_chases + Σ spurs) · (1 + slack), in m; m = n · L · m_metre, in kg; without chases L = (|Δx| + |Δy| + |Δz|) · (1 + allowance)',
  sources: [
    {
      title: 'Along the van, across it and up or down between the ends of chases and spurs',
      provenance: 'computed',
    },
  ],
  cautions: [installationCaution],
  fix: 'Give the points and chases that runs take, and their lengths follow.',
  place: ['routes', 'runs'],
  informationOnly: true,
};

const withRuns: Need<Routes> = ({ routes }) =>
  routes && routes.runs.length > 0 ? given(routes) : missing('routes.runs');

export default defineRule({
  ...text,
  needs: { routes: withRuns },
  check: ({ facts: { routes } }) => ({
    findings: gapsOf(routes),
    notes: [
      {
        rule: text.id,
        topic: text.topic,
        title: 'Cables, pipes and ducts',
        detailOnly: false,
        columns: ['run', 'carries', 'number', 'way', 'length of one', 'mass of all'],
        rows: routes.runs.map((run): Phrase[] => [
          say`${run.name}`,
          say`${run.carries}`,
          say`${count(run.count)}`,
          wayOf(run),
          run.lengthM === undefined ? say`not known` : say`${length(run.lengthM)}`,
          run.massKg === undefined ? say`not known` : say`${mass(run.massKg)}`,
        ]),
        text: say`${totalsOf(routes.runs)}${allowancesOf(routes.runs)}`,
        sources: text.sources,
        cautions: text.cautions,
      },
    ],
  }),
});

function wayOf({ way, chases, legs, lengthIsTyped }: RoutedRun): Phrase {
  const typed = lengthIsTyped ? ' (length as typed)' : '';
  if (way === 'none') return say`no way${typed}`;
  if (way === 'unplaced') return say`its ends have no place`;
  if (way === 'typed') return say`length as typed`;
  if (way === 'straight') return say`no chases: along, across, up or down${typed}`;
  const spurs = legs.filter(({ kind }) => kind === 'spur');
  const spursM = spurs.reduce((sum, { lengthM }) => sum + lengthM, 0);
  const through = chases.length > 0 ? chases.join(', ') : 'no chase';
  const ends: Phrase = spurs.length > 0 ? say`; spurs ${length(spursM)}` : [];
  return say`${through}${ends}${typed}`;
}

/** Metres to buy and kilograms to carry, kind by kind. */
function totalsOf(runs: readonly RoutedRun[]): Phrase {
  const kinds = carried.flatMap((carries): Phrase[] => {
    const ofKind = runs.filter((run) => run.carries === carries && run.lengthM !== undefined);
    if (ofKind.length === 0) return [];
    const lengthM = ofKind.reduce((sum, run) => sum + run.count * (run.lengthM ?? 0), 0);
    const weighed = ofKind.filter(({ massKg }) => massKg !== undefined);
    const massKg = weighed.reduce((sum, run) => sum + (run.massKg ?? 0), 0);
    const least = weighed.length < ofKind.length ? 'at least ' : '';
    const weight: Phrase = weighed.length > 0 ? say`${least}${mass(massKg)}` : say`mass not known`;
    return [say`${whatRuns[carries]} ${length(lengthM)}, ${weight}`];
  });
  return kinds.length > 0 ? say`In all: ${joined(kinds, '; ')}.` : say`No length is known.`;
}

function allowancesOf(runs: readonly RoutedRun[]): Phrase {
  const shareOf = (wanted: RoutedRun['way']) =>
    runs.find(({ way, lengthIsTyped, lengthM }) => way === wanted && !lengthIsTyped && lengthM !== undefined)
      ?.slackShare;
  const [slack, allowance] = [shareOf('chases'), shareOf('straight')];
  return [
    ...(slack === undefined ? [] : say` ${share(slack)} slack is in the lengths.`),
    ...(allowance === undefined
      ? []
      : say` Without chases the ways are assumed: the least along edges and ${share(allowance)} more.`),
  ];
}

/** What is missing from the sums; where a way is not known at all, `routes.path` says so. */
function gapsOf({ runs, chases }: Routes): readonly Finding[] {
  const weightless = runs.filter(({ lengthM, massKg }) => lengthM !== undefined && massKg === undefined);
  const endless = runs.filter(
    ({ lengthM, way, missing: keys }) =>
      lengthM === undefined && keys.length > 0 && (way === 'chases' || chases.length === 0),
  );
  const all = [...endless, ...weightless];
  const [first] = all;
  if (!first) return [];
  const reasons = [
    ...(endless.length > 0
      ? [`It is not known where ${namesOf(endless.map(({ name }) => name))} ${begins(endless.length)}.`]
      : []),
    ...(weightless.length > 0
      ? [`It is not known what a metre of ${namesOf(weightless.map(({ name }) => name))} weighs.`]
      : []),
  ];
  return [
    observed(text, {
      verdict: 'not checked',
      subject: all.length === 1 ? first.name : `${all.length} runs`,
      path: first.path,
      reason: say`${reasons.join(' ')} The mass of the van is without ${all.length === 1 ? 'it' : 'them'}.`,
      missing: [
        ...new Set([
          ...endless.flatMap((run) => run.missing),
          ...weightless.map(({ name }) => `routes.runs.${name}.linear_mass`),
        ]),
      ],
    }),
  ];
}

const begins = (howMany: number): string => (howMany === 1 ? 'begins or ends' : 'begin or end');
