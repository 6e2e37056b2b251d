import type { Body } from '../../build/body.ts';
import type { Build } from '../../build/build.ts';
import type { Fixings } from '../../build/layout.ts';
import { totalMass } from '../../build/quantities.ts';
import type { Citation } from '../../catalogue/citation.ts';
import {
  type RestraintDirection,
  restraintCaution,
  restraintFor,
  restraintOwnLawCaution,
} from '../../catalogue/restraint.ts';
import type { Finding, PlanPath, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { count, factor, type Measure, mass } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { holdCaution } from '../cautions.ts';
import { layout } from '../needs.ts';
import { greatest, type Worst } from '../states.ts';
import { massOfEverything } from '../working/parts.ts';

const text: RuleText = {
  id: 'fit.restraint',
  topic: 'fit',
  title: 'heavy things held',
  why: 'When the van brakes hard, whatever is not held flies on at the speed it had, into whoever sits in front of it.',
  formula:
    'H ≥ c·m; H: number of fixings × what one holds, kg; c: coefficient of the worst direction; m: the thing at its fullest with all that stands in or on it, kg. The force is F = c·m·9.81 N',
  sources: [
    { title: 'What weighs 10 kg or more counts as heavy', provenance: 'own choice' },
    {
      title: 'What stands in or on a thing pulls on the fixings of that thing',
      provenance: 'common practice',
    },
  ],
  cautions: [holdCaution, restraintCaution],
  fix: 'Fix it with more or stronger fixings, into something that holds them.',
  place: ['fixtures'],
};

const heavyKg = 10;
/** How many things without fixings are named. */
const named = 8;

/** A thing of the plan with everything that stands in or on it. */
interface Load {
  readonly name: string;
  readonly path: PlanPath;
  /** What pulls: the thing, and what is in or on it. */
  readonly bodies: readonly Body[];
  readonly worst: Worst;
  readonly holdsMore: boolean;
  readonly varies: boolean;
  /** A seat or a tank is in it, or it is one. */
  readonly ownLaw: boolean;
  readonly fixings: Fixings | undefined;
  /** Something else holds it: it stands inside a thing that is counted itself. */
  readonly isHeld: boolean;
}

/** All heavy things, and whatever the plan gives fixings for, in its order. */
const heavy: Need<readonly Load[]> = (build) => {
  const loads = loadsOf(build).filter(({ fixings, isHeld, worst }) =>
    fixings ? true : !isHeld && worst.value >= heavyKg,
  );
  return loads.length > 0 ? given(loads) : missing('fixtures.NAME.fixings');
};

export default defineRule({
  ...text,
  needs: { layout, heavy },
  check: ({ build, facts }) => {
    const ways = directionsFor(build.vehicle.maxMass?.value);
    const loose = facts.heavy.filter(({ fixings }) => !fixings);
    return {
      findings: [
        ...facts.heavy.flatMap((load) => (load.fixings ? [held(load, load.fixings, ways)] : [])),
        ...(loose.length > 0 ? [notSaid(loose, ways)] : []),
      ],
    };
  },
  work: ({ build, facts }, finding) => {
    const load = facts.heavy.find(({ name, fixings }) => fixings && name === finding.subject);
    return load?.fixings && stepsOf(load, load.fixings, directionsFor(build.vehicle.maxMass?.value));
  },
});

const thingSorts: ReadonlySet<Body['sort']> = new Set(['fixture', 'store', 'tank', 'contents']);

function loadsOf(build: Build): readonly Load[] {
  const byName = new Map<string, Body[]>();
  for (const body of build.bodies) {
    // An allowance for what people bring along is not a thing that could be fixed.
    if (!thingSorts.has(body.sort) || body.origin === 'assumed') continue;
    byName.set(body.label, [...(byName.get(body.label) ?? []), body]);
  }
  const guests = new Map<string, string[]>();
  for (const [name, [body]] of byName) {
    if (body?.host !== undefined) guests.set(body.host, [...(guests.get(body.host) ?? []), name]);
  }
  const solids = new Map((build.layout?.solids ?? []).map((solid) => [solid.name, solid]));
  const fixings = new Map((build.layout?.fixings ?? []).map((each) => [each.of, each]));
  return [...byName].flatMap(([name, own]): Load[] => {
    const [first] = own;
    if (!first) return [];
    const all = withGuests(name, guests);
    const bodies = all.flatMap((each) => byName.get(each) ?? []);
    const solid = solids.get(name);
    return [
      {
        name,
        path: first.path.slice(0, 2),
        bodies,
        worst: greatest(build, bodies, totalMass),
        holdsMore: all.length > 1,
        varies: bodies.some(({ variable }) => variable !== undefined),
        ownLaw:
          bodies.some(({ sort }) => sort === 'tank' || sort === 'contents') ||
          all.some((each) => solids.get(each)?.use === 'seat'),
        fixings: fixings.get(name),
        // What stands on top of another thing is held by nothing.
        isHeld: first.host !== undefined && (solid === undefined || solid.isInside),
      },
    ];
  });
}

/** A thing and what stands in or on it, and in or on that. The plan's checks refuse circles. */
function withGuests(name: string, guests: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const all = [name];
  for (const each of all) all.push(...(guests.get(each) ?? []));
  return all;
}

interface Way {
  readonly direction: RestraintDirection;
  readonly words: string;
  readonly when: string;
  readonly coefficient: number;
  readonly sources: readonly Citation[];
}

/** What pulls on fixings, by the way it pulls; the figures for what would tip need the height of its fixings. */
function directionsFor(maximumMassKg: number | undefined): readonly [Way, ...Way[]] {
  const way = (direction: RestraintDirection, words: string, when: string): Way => {
    const { strictest, others } = restraintFor(direction, maximumMassKg);
    const forThisVan = others.find(({ forVansOf }) => forVansOf !== undefined);
    return {
      direction,
      words,
      when,
      coefficient: strictest.coefficient,
      sources: [...new Set([...strictest.citations, ...(forThisVan?.citations ?? [])])],
    };
  };
  return [
    way('forward', 'forward', 'when the van brakes hard'),
    way('sideways', 'sideways', 'in a fast bend'),
    way('rearward', 'rearward', 'when the van sets off or backs into something'),
    way('upward', 'upward', 'over a bump'),
  ];
}

const withAll = ({ name, holdsMore }: Load): string => (holdsMore ? `${name} with all it holds` : name);

function held(
  load: Load,
  { count: number, eachHoldsKg, path }: Fixings,
  ways: readonly [Way, ...Way[]],
): Finding {
  const { worst } = load;
  const way = hardest(ways);
  const requiredKg = way.coefficient * worst.value;
  const heldKg = number * eachHoldsKg;
  return judge({
    rule: text,
    subject: load.name,
    path,
    kind: 'mass',
    // The hold is as declared; what is uncertain is the mass that pulls.
    measured: {
      value: heldKg,
      standard: way.coefficient * worst.standard,
      ...(worst.dominant !== undefined && { dominant: worst.dominant }),
    },
    limit: requiredKg,
    sense: 'at least',
    broken: 'warn',
    ...(load.varies && { state: worst.state }),
    reason: say`${withAll(load)} weighs up to ${mass(worst.value)}. It pulls hardest ${way.words}, ${way.when}: as much as ${mass(requiredKg)} hanging on its fixings. ${manyFixings(number, eachHoldsKg)} hold ${mass(heldKg)}.`,
    remedy: (shortKg) => {
      const more = Math.ceil(shortKg / eachHoldsKg - 1e-9);
      const eachKg = Math.ceil((heldKg + shortKg) / number - 1e-9);
      return say`Fix it with ${count(more)} more of them, or with fixings that hold ${mass(eachKg)} each, in something that holds as much.`;
    },
    sources: way.sources,
    cautions: load.ownLaw ? [restraintOwnLawCaution] : [],
  });
}

const hardest = (ways: readonly [Way, ...Way[]]): Way =>
  ways.reduce((most, each) => (each.coefficient > most.coefficient ? each : most));

/** What pulls, how hard the worst of all ways pulls with it, and what its fixings hold. */
function stepsOf(
  { bodies, worst, holdsMore, path }: Load,
  { count: number, eachHoldsKg, path: fixed }: Fixings,
  ways: readonly [Way, ...Way[]],
): readonly Step[] {
  const { words, when, coefficient } = hardest(ways);
  const others = ways
    .filter((each) => each.words !== words)
    .map((each) => say`${factor(each.coefficient)} ${each.words}`);
  return [
    {
      ...massOfEverything(
        bodies,
        worst.filling,
        holdsMore
          ? 'What pulls, at its fullest, with all that stands in or on it: m'
          : 'What pulls, at its fullest: m',
      ),
      paths: [path],
    },
    {
      what: `How hard it pulls ${words}, ${when}, the worst of ${ways.length} ways: c·m, c in times its own weight`,
      sum: say`${factor(coefficient)} · ${mass(worst.value)}; c of the others: ${joined(others)}`,
      result: mass(coefficient * worst.value),
      paths: [['van', 'max_mass']],
    },
    {
      what: 'What its fixings hold: H = number × what one holds',
      sum: say`${count(number)} × ${mass(eachHoldsKg)}`,
      result: mass(number * eachHoldsKg),
      paths: [
        [...fixed, 'count'],
        [...fixed, 'each'],
      ],
    },
  ];
}

const manyFixings = (number: number, eachKg: number): Phrase => say`${count(number)} × ${mass(eachKg)}`;

/** One finding for all that the plan gives no fixings for: many alike would hide the rest. */
function notSaid(loose: readonly Load[], ways: readonly Way[]): Finding {
  const sorted = [...loose].sort((a, b) => b.worst.value - a.worst.value);
  const shown = sorted.slice(0, named);
  const [next] = sorted.slice(named);
  const [forward, sideways] = ways;
  const pulls = shown.map((load) => {
    const { value } = load.worst;
    return say`${withAll(load)} ${pull(forward, value)} forward and ${pull(sideways, value)} sideways`;
  });
  const rest = next
    ? say`; and ${count(sorted.length - shown.length)} more of up to ${mass(next.worst.value)}`
    : say``;
  const keys = shown.map(({ path }) => `${path.join('.')}.fixings`);
  return {
    rule: text.id,
    topic: text.topic,
    title: text.title,
    verdict: 'not checked',
    subject: 'heavy things',
    path: shown[0]?.path ?? text.place,
    reason: say`The plan does not say what holds them. When the van brakes hard and in a fast bend each pulls on its fixings as much as this hanging on them: ${joined(pulls)}${rest}.`,
    remedy: say`Add what holds them, such as \`fixings: {count: 4, each: 80 kg}\`: ${keys.map((key) => `\`${key}\``).join(', ')}.`,
    missing: keys,
    sources: [...new Set([...(forward?.sources ?? []), ...(sideways?.sources ?? []), ...text.sources])],
    cautions: [...text.cautions, ...(loose.some(({ ownLaw }) => ownLaw) ? [restraintOwnLawCaution] : [])],
  };
}

/** Whole kilograms, rounded up: nobody knows it better. */
const pull = (way: Way | undefined, massKg: number): Measure =>
  mass(Math.ceil((way?.coefficient ?? 0) * massKg - 1e-9));

const joined = (phrases: readonly Phrase[]): Phrase =>
  phrases.flatMap((phrase, index) => (index === 0 ? phrase : ['; ', ...phrase]));
