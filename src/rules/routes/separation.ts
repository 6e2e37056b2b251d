import type { Carried } from '../../build/layout.ts';
import type { Leg, RoutedRun, Routes } from '../../build/routes.ts';
import { distanceOfLines, distanceToLine, straightDistance } from '../../calc/space/lines.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type EffectiveLimit, type RuleText } from '../../engine/rule.ts';
import { installationCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { chasesInUse, namesOf, plannedRoutes, type UsedChase } from '../routed.ts';
import { upToMillimetre } from '../whole-millimetres.ts';
import { apartSteps, type Course, type Neighbours } from '../working/apart.ts';

const text: RuleText = {
  id: 'routes.separation',
  topic: 'routes',
  title: 'gas apart from cables',
  why: 'A chafed cable heats and sparks; beside a gas pipe that is a hole in the pipe and a flame at it.',
  formula: 'clear = distance of the straight lines between points − half bores (or half diameters), in m',
  sources: [],
  cautions: [installationCaution],
  fix: 'Give the gas pipe a way of its own, away from the cables.',
  limits: ['cable-gas-separation'],
  lifeSafety: true,
  place: ['routes'],
};

export default defineRule({
  ...text,
  override: { limit: 'cable-gas-separation', kinds: ['length'] },
  needs: { routes: plannedRoutes },
  check: ({ build, facts, limit }) => {
    const { routes } = facts;
    const apart = limit('cable-gas-separation');
    const shared = chasesInUse(routes).flatMap((used) => sharedChase(used, apart));
    const gasAboard = build.bodies.some(({ variable }) => variable?.group === 'gas');
    const [gas, cables] = [runsOf(routes, 'gas'), runsOf(routes, 'cable')];
    if (gas.length === 0)
      return { findings: [...shared, gasAboard ? notThere('gas', apart) : noGas(shared, apart)].flat() };
    if (cables.length === 0) return { findings: [...shared, notThere('cable', apart)] };
    const [gasLines, cableLines] = [linesOf(routes, gas), linesOf(routes, cables)];
    if (gasLines.length === 0 || cableLines.length === 0)
      return { findings: [...shared, withoutWays(gasLines.length === 0 ? gas : cables, apart)] };
    return { findings: [...shared, ...keepingApart(gasLines, cableLines, shared, apart)] };
  },
  work: ({ build, facts: { routes }, limit }, { subject, measured }) => {
    if (!measured) return undefined;
    const apart = limit('cable-gas-separation');
    const gas = linesOf(routes, runsOf(routes, 'gas')).filter(({ name }) => name === subject);
    const [found] = nearestOfEach(gas, linesOf(routes, runsOf(routes, 'cable')), apart.value);
    return found && apartSteps(found.pair, found.pairs.length, routes, (build.layout?.widthM ?? 0) / 2);
  },
});

const runsOf = ({ runs }: Routes, carries: Carried): readonly RoutedRun[] =>
  runs.filter((run) => run.carries === carries);

/** Both in one chase, or both allowed there. */
function sharedChase({ chase, runs }: UsedChase, limit: EffectiveLimit): readonly Finding[] {
  const namesOfKind = (carries: Carried) =>
    namesOf(runs.filter((run) => run.carries === carries).map(({ name }) => name));
  const [gas, cables] = [namesOfKind('gas'), namesOfKind('cable')];
  const common = {
    subject: chase.id,
    sources: limit.citations,
    cautions: limit.cautions,
    remedy: say`Give the gas pipe a chase of its own, at least ${length(limit.value)} clear of the cables, and take gas out of what ${chase.id} carries.`,
  };
  if (gas !== '' && cables !== '')
    return [
      observed(text, {
        ...common,
        verdict: 'fail',
        path: chase.path,
        reason: say`Gas (${gas}) and cables (${cables}) run in one chase.`,
      }),
    ];
  if (!chase.carries.includes('gas') || !chase.carries.includes('cable')) return [];
  return [
    observed(text, {
      ...common,
      verdict: 'warn',
      path: [...chase.path, 'carries'],
      reason: say`It may carry both gas and cables, which share no chase; so far they do not meet there.`,
    }),
  ];
}

const noGas = (shared: readonly Finding[], { citations }: EffectiveLimit): readonly Finding[] =>
  shared.length > 0
    ? []
    : [
        observed(text, {
          verdict: 'pass',
          subject: 'gas',
          path: text.place,
          reason: say`No run carries gas, and no tank holds it.`,
          sources: citations,
        }),
      ];

const notThere = (carries: 'gas' | 'cable', { citations, cautions }: EffectiveLimit): Finding =>
  observed(text, {
    verdict: 'not checked',
    subject: text.title,
    path: ['routes', 'runs'],
    reason:
      carries === 'gas'
        ? say`There is gas aboard, but the plan has no run that carries gas.`
        : say`Gas pipes run, but the plan has no run that carries a cable.`,
    missing: ['routes.runs.NAME.carries'],
    sources: citations,
    cautions,
  });

const withoutWays = (runs: readonly RoutedRun[], { citations, cautions }: EffectiveLimit): Finding =>
  observed(text, {
    verdict: 'not checked',
    subject: text.title,
    path: runs[0]?.path ?? text.place,
    reason: say`No way is known of ${namesOf(runs.map(({ name }) => name))}.`,
    missing: [...new Set(runs.flatMap(({ missing, way }) => (way === 'none' ? ['routes.chases'] : missing)))],
    sources: citations,
    cautions,
  });

/** A spur that departs from one axis by more turns corners that the plan does not know of, m: own choice. */
const straightWithinM = 0.03;

/** The chases that these runs take, each once, and those of their spurs that are straight. */
function linesOf({ chases }: Routes, runs: readonly RoutedRun[]): readonly Course[] {
  const boreOf = new Map(chases.map(({ id, boreM }) => [id, boreM]));
  const byChase = new Map<string, Course>();
  const spurs: Course[] = [];
  for (const { name, path, legs, diameterM = 0 } of runs) {
    for (const { kind, id, ends, lengthM } of legs) {
      const across = kind === 'chase' ? (boreOf.get(id) ?? diameterM) : diameterM;
      const radiusM = Math.max(across / 2, byChase.get(id)?.radiusM ?? 0);
      if (kind === 'chase')
        byChase.set(id, { name: id, path: ['routes', 'chases', id], kind, line: ends, id, radiusM });
      else if (lengthM - longestSide(ends) <= straightWithinM)
        spurs.push({ name: `the spur of ${name} to ${id}`, path, kind, line: ends, id, radiusM: across / 2 });
    }
  }
  return [...byChase.values(), ...spurs];
}

const longestSide = ([a, b]: Leg['ends']): number =>
  Math.max(Math.abs(b.xM - a.xM), Math.abs(b.yM - a.yM), Math.abs(b.zM - a.zM));

const nearestOfEach = (gasLines: readonly Course[], cableLines: readonly Course[], leastM: number) =>
  gasLines.flatMap((gas) => {
    const pairs = cableLines.flatMap((cable) => neighboursOf(gas, cable, leastM));
    const [first, ...others] = pairs;
    if (!first) return [];
    return [{ pair: others.reduce((best, pair) => (pair.clearM < best.clearM ? pair : best), first), pairs }];
  });

/** For every piece of gas pipe the nearest piece of cable, where that is too near; else the least distance of all. */
function keepingApart(
  gasLines: readonly Course[],
  cableLines: readonly Course[],
  shared: readonly Finding[],
  limit: EffectiveLimit,
): readonly Finding[] {
  const nearest = nearestOfEach(gasLines, cableLines, limit.value);
  const near = nearest.filter(({ pair }) => exceeds(limit.value, pair.clearM));
  if (near.length > 0) return near.map(({ pair, pairs }) => judged(pair, pairs, limit));
  if (shared.some(({ verdict }) => verdict === 'fail')) return [];
  const [first, ...others] = nearest.map(({ pair }) => pair);
  if (!first)
    return [
      observed(text, {
        verdict: 'pass',
        subject: 'gas and cables',
        path: text.place,
        reason: say`Gas pipes and cables take different chases, and only meet at points.`,
        sources: limit.citations,
        cautions: limit.cautions,
      }),
    ];
  return [
    judged(
      others.reduce((best, pair) => (pair.clearM < best.clearM ? pair : best), first),
      [],
      limit,
    ),
  ];
}

const samePlaceWithinM = 1e-6;

/**
 * How far apart two pieces are, less what they take up across. Pieces that meet at a point are as far apart as the
 * shorter one's other end comes; nothing is said of those too short to tell, and of the spurs to one and the same
 * thing, whose maker says how it is connected.
 */
function neighboursOf(gas: Course, cable: Course, leastM: number): readonly Neighbours[] {
  if (gas.kind === 'chase' && cable.kind === 'chase' && gas.id === cable.id) return [];
  if (gas.kind === 'spur' && cable.kind === 'spur' && gas.id === cable.id) return [];
  const [a, b] = [gas.line, cable.line];
  const across = gas.radiusM + cable.radiusM;
  const meets = [a[0], a[1]].map((end) => b.map((other) => straightDistance(end, other) < samePlaceWithinM));
  const [start = [], finish = []] = meets;
  const meeting = [...start, ...finish].filter(Boolean).length;
  if (meeting === 0) {
    const distanceM = distanceOfLines(a, b);
    return [{ gas, cable, distanceM, clearM: Math.max(0, distanceM - across), coincide: false }];
  }
  if (Math.min(straightDistance(...a), straightDistance(...b)) <= leastM + across) return [];
  const otherOfA = start.includes(true) ? a[1] : a[0];
  const otherOfB = start[0] || finish[0] ? b[1] : b[0];
  const [gasM, cableM] = [distanceToLine(otherOfA, b), distanceToLine(otherOfB, a)];
  const distanceM = Math.min(gasM, cableM);
  const clearM = Math.max(0, distanceM - across);
  const end: Neighbours['end'] = gasM <= cableM ? { of: 'gas', at: otherOfA } : { of: 'cable', at: otherOfB };
  return [{ gas, cable, distanceM, clearM, coincide: meeting > 1, end }];
}

function judged(
  { gas, cable, clearM, coincide }: Neighbours,
  pairs: readonly Neighbours[],
  limit: EffectiveLimit,
): Finding {
  const more = pairs.filter((pair) => exceeds(limit.value, pair.clearM)).length - 1;
  const others: Phrase =
    more > 0 ? say` So ${more === 1 ? 'does 1 more piece' : `do ${more} more pieces`} of cable.` : [];
  return judge({
    rule: text,
    subject: gas.name,
    path: gas.path,
    kind: 'length',
    measured: { value: clearM, standard: 0 },
    limit: limit.value,
    sense: 'at least',
    broken: limit.failing ? 'fail' : 'warn',
    reason: coincide
      ? say`Its gas and the cables of ${cable.name} run between the same two points, so nothing keeps them apart.${others}`
      : say`Its gas comes within ${length(clearM)} of the cables of ${cable.name}.${others}`,
    remedy: (shortfall) =>
      coincide
        ? say`Draw the gas pipe between points of its own, at least ${length(limit.value)} clear of ${cable.name}.`
        : say`Move one of them ${length(upToMillimetre(shortfall))} further away.`,
    sources: limit.citations,
    cautions: limit.cautions,
  });
}
