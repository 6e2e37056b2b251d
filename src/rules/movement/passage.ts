import type { Layout } from '../../build/layout.ts';
import { goalsOf, type Way, waysFromDoor } from '../../build/walking.ts';
import { walkingFloor } from '../../build/walking-floor.ts';
import type { Citation } from '../../catalogue/citation.ts';
import { lengthLimit } from '../../catalogue/fit-limits.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type EffectiveLimit, type RuleText } from '../../engine/rule.ts';
import { bodyCaution, fitCaution } from '../cautions.ts';
import { listed } from '../fit-finding.ts';
import { told } from '../told.ts';
import { spotInWords, type Walked, walked, walkingMethod } from '../ways.ts';
import { widened } from '../widening.ts';
import { waysSteps } from '../working/way.ts';

const text: RuleText = {
  id: 'movement.passage',
  topic: 'movement',
  title: 'width of the ways',
  why: 'Where the way to the bed or the cooker is narrower than hips, everyone turns sideways there many times a day, and in a hurry gets stuck.',
  formula:
    'w = the diameter of the widest disc that gets from outside the door to the thing, in m; w ≥ w_least',
  sources: walkingMethod,
  cautions: [fitCaution, bodyCaution],
  fix: 'Move or narrow what stands beside the way.',
  limits: ['passage-width'],
  place: ['van', 'openings'],
};

/** Through less than this nobody gets, however thin. */
const leastWidthM = 0.2;
const leastWidth: Citation = {
  title: 'A way of less than 200 mm is none',
  provenance: 'own choice',
};

export default defineRule({
  ...text,
  override: { limit: 'passage-width', kinds: ['length'] },
  needs: { walked },
  check: ({ facts: { walked: found }, limit }) => {
    const { layout } = found;
    const { narrow, wide, asked } = sorted(found, limit('passage-width'));
    return {
      findings: [
        ...narrow.map((group) => narrowFinding(layout, group, asked)),
        ...wide.map((ways) => wideFinding(layout, ways, asked)),
      ],
    };
  },
  work: ({ facts: { walked: found }, limit }, { subject }) => {
    const { layout } = found;
    const { narrow, wide } = sorted(found, limit('passage-width'));
    const group = narrow.find(({ ways }) => narrowSubject(ways) === subject);
    if (group) return waysSteps(group.ways, group.ways[0], layout, whyNone(group));
    const ways = wide.find(([{ from }]) => wideSubject(from) === subject);
    return ways && waysSteps(ways, narrowestOf(ways), layout);
  },
});

type SomeWays = readonly [Way, ...Way[]];

/** The ways that are too narrow, by their reasons, and the others, by their doors. */
function sorted({ layout, ways: { ways } }: Walked, { value, ...asked }: EffectiveLimit) {
  const leastM = Math.max(value, leastWidthM);
  const isNarrow = ({ widthM }: Way) => exceeds(leastM, widthM);
  const byDoor = new Map<string, SomeWays>();
  for (const way of ways.filter((each) => !isNarrow(each))) {
    const before = byDoor.get(way.from);
    byDoor.set(way.from, before ? [...before, way] : [way]);
  }
  return {
    asked: { ...asked, value: leastM },
    narrow: grouped(ways.filter(isNarrow), layout, leastM),
    wide: [...byDoor.values()],
  };
}

const narrowSubject = ([first, ...others]: SomeWays): string =>
  `way to ${first.to}${others.length > 0 ? ` and ${others.length} more` : ''}`;
const wideSubject = (door: string): string => `ways from ${door}`;

const whyNone = ({ blocker }: Group): Phrase | undefined =>
  blocker && say`${blocker.name} stands in it: without it there would be ${told(blocker.withoutM)}`;

const narrowestOf = ([first, ...others]: SomeWays): Way =>
  others.reduce((least, next) => (next.widthM < least.widthM ? next : least), first);

/** Ways that are too narrow for one and the same reason. */
interface Group {
  readonly ways: SomeWays;
  /** Of things that there is no way to: what stands before them. */
  readonly blocker?: Blocker | undefined;
}

interface Blocker {
  readonly name: string;
  readonly withoutM: number;
}

function grouped(ways: readonly Way[], layout: Layout, wantedM: number): Group[] {
  const groups = new Map<string, Group>();
  for (const way of ways) {
    const blocker = way.narrowest ? undefined : blockerOf(layout, way, wantedM);
    const sides = way.narrowest?.between.map(({ of = '' }) => of).sort() ?? [blocker?.name ?? ''];
    const key = JSON.stringify([way.from, Math.round(way.widthM * 1000), ...sides]);
    const before = groups.get(key);
    groups.set(key, before ? { ...before, ways: [...before.ways, way] } : { ways: [way], blocker });
  }
  return [...groups.values()];
}

/** Among more things than this nobody waits for each to be tried. */
const mostTried = 30;

/** The one thing without which there would be a way. */
function blockerOf(layout: Layout, { to }: Way, wantedM: number): Blocker | undefined {
  const { obstacles } = walkingFloor(layout);
  const goal = goalsOf(layout).find(({ name }) => name === to);
  if (!goal || obstacles.length > mostTried) return undefined;
  const roots = new Set(obstacles.map(({ root }) => root));
  roots.delete(goal.hosts.at(-1) ?? goal.name);
  let best: Blocker | undefined;
  for (const name of roots) {
    const solids = layout.solids
      .filter((solid) => solid.name !== name && !solid.hosts.includes(name))
      // Only the way to the one thing is asked for.
      .map((solid) => (solid === goal ? solid : withoutUse(solid)));
    if (solids.length === layout.solids.length) continue;
    const withoutM = waysFromDoor({ ...layout, solids })?.ways[0]?.widthM ?? 0;
    if (withoutM >= leastWidthM && withoutM > (best?.withoutM ?? 0)) best = { name, withoutM };
    if (withoutM >= wantedM) break;
  }
  return best;
}

const withoutUse = ({ use: _, ...solid }: Layout['solids'][number]) => solid;

const namesOf = (ways: readonly Way[]): Phrase => listed(ways.map(({ to }) => [to]));

function narrowFinding(layout: Layout, { ways, blocker }: Group, limit: EffectiveLimit): Finding {
  const [worst] = ways;
  const { widthM, narrowest } = worst;
  const isNone = widthM < leastWidthM;
  return judge({
    rule: text,
    subject: narrowSubject(ways),
    path: worst.path,
    kind: 'length',
    measured: { value: widthM, standard: 0 },
    limit: limit.value,
    sense: 'at least',
    broken: isNone || limit.failing ? 'fail' : 'warn',
    reason: narrowest
      ? say`${isNone ? 'Nobody gets' : 'The way'} from ${worst.from} to ${namesOf(ways)}${isNone ? ': the way' : ''} is only ${length(widthM)} wide ${spotInWords(narrowest, worst, layout)}.`
      : say`There is no way from ${worst.from} to ${namesOf(ways)}${blocker ? say`: ${blocker.name} stands in it` : ''}.`,
    remedy: () => {
      if (narrowest) return widened(layout, narrowest, ways, limit.value);
      return blocker
        ? say`Find another place for ${blocker.name}: without it the way to ${worst.to} is ${length(blocker.withoutM)} wide.`
        : say`Leave a way at least ${length(limit.value)} wide, from ${worst.from} to where one stands in front of ${worst.to}.`;
    },
    sources: [...limit.citations, ...(isNone ? [leastWidth] : [])],
    cautions: limit.cautions,
  });
}

function wideFinding(layout: Layout, ways: SomeWays, limit: EffectiveLimit): Finding {
  const narrowest = narrowestOf(ways);
  const { from, to, widthM, narrowest: spot } = narrowest;
  const comfortable = lengthLimit('passage-width-comfortable');
  const isTight = exceeds(comfortable.valueM, widthM);
  const where = spot ? say`, ${spotInWords(spot, narrowest, layout)}` : '';
  return judge({
    rule: text,
    subject: wideSubject(from),
    path: ['van', 'openings', from],
    kind: 'length',
    measured: { value: widthM, standard: 0 },
    limit: limit.value,
    sense: 'at least',
    broken: 'warn',
    reason: say`From ${from} to ${namesOf(ways)} the way is nowhere narrower than ${length(widthM)}, on the way to ${to}${where}.${isTight ? say` ${length(comfortable.valueM)} would be comfortable.` : ''}`,
    sources: [...limit.citations, ...(isTight ? comfortable.citations : [])],
    cautions: limit.cautions,
  });
}
