import type { Carried } from '../../build/layout.ts';
import type { RoutedChase, RoutedRun, Routes } from '../../build/routes.ts';
import { opposed } from '../../build/routes-network.ts';
import type { Finding } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { installationCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { counted, joined, namesOf, plannedRoutes, whatRuns } from '../routed.ts';
import { waysLengthSteps } from '../working/chase.ts';

const text: RuleText = {
  id: 'routes.path',
  topic: 'routes',
  title: 'a way for every run',
  why: 'A cable or pipe that has no way is found out when the walls are closed.',
  formula:
    'L = (Σ L_chases + Σ spurs) · (1 + slack), the least over all ways through chases that may carry it, in m',
  sources: [
    {
      title:
        'E. W. Dijkstra, A note on two problems in connexion with graphs, Numerische Mathematik 1 (1959)',
      provenance: 'memory',
    },
  ],
  cautions: [installationCaution],
  fix: 'Add the chase that is missing, or let one carry this kind of run.',
  place: ['routes'],
};

export default defineRule({
  ...text,
  needs: { routes: plannedRoutes },
  check: ({ facts }) => {
    const { runs } = facts.routes;
    const lost = runs.filter(({ way }) => way === 'none').map((run) => withoutWay(facts.routes, run));
    const unknown = runs.filter(({ way }) => way === 'unplaced' || way === 'typed');
    const passing = runs.filter(throughChases);
    return {
      findings: [
        ...lost,
        ...(unknown.length > 0 ? [unplaced(unknown)] : []),
        ...(passing.length > 0 ? [found(passing, runs.length)] : []),
      ],
    };
  },
  work: ({ facts }, { measured }) => measured && waysLengthSteps(facts.routes.runs.filter(throughChases)),
});

const throughChases = ({ way }: RoutedRun): boolean => way === 'chases';

function found(passing: readonly RoutedRun[], all: number): Finding {
  const totalM = passing.reduce((sum, { lengthM }) => sum + (lengthM ?? 0), 0);
  const partly = passing.some(({ lengthM }) => lengthM === undefined) ? 'at least ' : '';
  const runs = passing.length < all ? `${passing.length} of ${counted(all, 'run')}` : counted(all, 'run');
  return observed(text, {
    subject: 'routes',
    path: ['routes', 'runs'],
    verdict: 'pass',
    measured: length(totalM),
    reason: say`${runs} ${passing.length === 1 ? 'has its way' : 'have their ways'} through the chases, ${partly}${length(totalM)} in all with spurs and slack.`,
  });
}

const unplaced = (runs: readonly RoutedRun[]): Finding =>
  observed(text, {
    subject: namesOf(runs.map(({ name }) => name).sort()),
    path: runs[0]?.path ?? text.place,
    verdict: 'not checked',
    reason: say`Where it begins or ends is not known, and so neither is its way.`,
    missing: [...new Set(runs.flatMap(({ missing }) => missing))],
  });

function withoutWay({ chases }: Routes, run: RoutedRun): Finding {
  const { name, path, carries, from, to, noWay } = run;
  const kind = whatRuns[carries];
  const anyCarries = chases.some((chase) => chase.carries.includes(carries));
  const blockers = chases.filter(({ id }) => noWay?.blockers.includes(id));
  const reason = anyCarries
    ? say`There is no chase for ${kind} from ${from} to ${to}${unlessBy(blockers)}. From ${from} it comes to ${namesOf(noWay?.fromReach ?? [])}, from ${to} to ${namesOf(noWay?.toReach ?? [])}.`
    : say`There is no chase for ${kind} from ${from} to ${to}: no chase of the plan carries ${kind}.`;
  return observed(text, {
    subject: name,
    path,
    verdict: 'fail',
    reason,
    remedy: anyCarries ? wayOut(carries, blockers, noWay?.gap) : firstOfKind(run),
  });
}

const unlessBy = (blockers: readonly RoutedChase[]): string =>
  blockers.length === 0 ? '' : ` except by way of ${namesOf(blockers.map(described))}`;

/** "sill (carries cable, under floor, through a rib)" */
function described({ id, carries, through = [], runs }: RoutedChase): string {
  const told = [
    `carries ${carries.join(' and ')}`,
    ...(runs ? [runs] : []),
    ...(through.length > 0 ? [`through ${namesOf(through.map((part) => `a ${part}`))}`] : []),
  ];
  return `${id} (${told.join(', ')})`;
}

function firstOfKind({ carries, from, to, apartM }: RoutedRun): Phrase {
  const far: Phrase = apartM === undefined ? [] : say`, ${length(apartM)} along, across and up or down`;
  return say`Add chases for ${whatRuns[carries]} from ${from} to ${to}${far}, with points where they turn.`;
}

function wayOut(
  carries: Carried,
  blockers: readonly RoutedChase[],
  gap: NonNullable<RoutedRun['noWay']>['gap'],
): Phrase {
  const kind = whatRuns[carries];
  const anew = gap
    ? say`a chase for ${kind} from ${gap.from} to ${gap.to}, ${length(gap.distanceM)}`
    : say`a chase for ${kind} between two points of its own`;
  if (blockers.length === 0) return say`Add ${anew}.`;
  const opposite = opposed[carries];
  const apart = blockers.filter((chase) => opposite !== undefined && chase.carries.includes(opposite));
  if (apart.length > 0)
    return say`Gas and cables share no chase: add ${anew}, or one beside ${namesOf(apart.map(({ id }) => id))} and away from it.`;
  const each = blockers.map(({ id, lengthM = 0 }) => say`${id} (${length(lengthM)})`);
  return say`If it may run there, add \`${carries}\` to what ${joined(each, ' and ')} carries; else add ${anew}.`;
}
