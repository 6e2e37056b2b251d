import type { Layout, Solid } from '../../build/layout.ts';
import { pairsThatOverlap, prismOverlap } from '../../calc/space/prism.ts';
import { count, length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { fitCaution } from '../cautions.ts';
import { depthOf, type Mend, mender, mendInWords, moved, sharedBox, sizeOf } from '../clearing.ts';
import { fitFinding, piece, shapesMethod, things } from '../fit-finding.ts';
import { layout, some } from '../needs.ts';
import { pairOf } from '../pair.ts';
import { placePaths, sharedSteps } from '../working/box.ts';

const text: RuleText = {
  id: 'fit.overlap',
  topic: 'fit',
  title: 'no two things in one place',
  why: 'Two things cannot be built in the same place; on paper it is a matter of moving a number.',
  formula:
    'shared = outline A ∩ outline B on the plan, from the higher bottom to the lower top; 0.5 mm only touches',
  sources: shapesMethod,
  cautions: [fitCaution],
  fix: 'Move one of the two, or make it smaller.',
  place: ['fixtures'],
};

const solids = some('fixtures.NAME.size', (layout) => layout.solids);

interface Pair {
  readonly first: Solid;
  readonly second: Solid;
}

interface Clash extends Pair {
  /** One of so many that only the worst are told apart. */
  readonly isShown: boolean;
  readonly mend: Mend | undefined;
}

export default defineRule({
  ...text,
  needs: { layout, solids },
  check: ({ facts: { layout, solids } }) => {
    const clashes = clashesIn(layout);
    if (clashes.length === 0)
      return {
        findings: [
          fitFinding(text, {
            subject: 'all things',
            path: text.place,
            verdict: 'pass',
            reason: say`${things(solids.length)} looked at: ${solids.length === 1 ? 'it stands' : 'none stands'} in another.`,
          }),
        ],
      };
    const shown = clashes.filter(({ isShown }) => isShown);
    const rest = clashes.filter(({ isShown }) => !isShown);
    return { findings: [...shown.map(findingOf), ...theRest(rest)] };
  },
  work: ({ facts: { layout } }, finding) => {
    const clash = clashesIn(layout).find(
      ({ first, second, isShown }) => isShown && pairOf(first.name, second.name) === finding.subject,
    );
    if (!clash) return undefined;
    const [first, second] = [clash.first, clash.second].map((solid) => ({
      ...solid,
      paths: placePaths(solid, layout),
    }));
    return first && second && sharedSteps(first, second, layout);
  },
});

/** The pairs that stand in each other, the outermost only: what is in a thing moves with it. */
function clashesIn(layout: Layout): readonly Clash[] {
  const { solids } = layout;
  const known = new Map(solids.map((solid) => [solid.name, solid]));
  const mend = mender(layout);
  const pairs = pairsThatOverlap(solids.map(({ prism }) => prism)).flatMap(
    ({ first, second, overlap }, order) => {
      const [a, b] = [solids[first], solids[second]];
      if (!a || !b || a.hosts.includes(b.name) || b.hosts.includes(a.name)) return [];
      return [{ first: a, second: b, order, volumeM3: overlap.volumeM3 }];
    },
  );
  const areMany = pairs.length > mostShown;
  // Of many the worst come first, whatever the order of the plan.
  const outermostFirst = [...pairs].sort(
    (a, b) =>
      nestingOf(a.first) + nestingOf(a.second) - nestingOf(b.first) - nestingOf(b.second) ||
      (areMany
        ? b.volumeM3 - a.volumeM3 ||
          (keyOf(a.first.name, a.second.name) < keyOf(b.first.name, b.second.name) ? -1 : 1)
        : 0),
  );
  const carried = new Map<string, Pair[]>();
  for (const pair of pairs) {
    for (const { key, isAround } of outerPairs(pair.first, pair.second, known)) {
      if (!isAround) carried.set(key, [...(carried.get(key) ?? []), pair]);
    }
  }
  const found = new Map<string, Clash & { readonly order: number }>();
  for (const { first, second, order } of outermostFirst) {
    const isSaid = outerPairs(first, second, known).some(({ key, isAround }) => {
      const clash = found.get(key);
      return clash !== undefined && (isAround || isMendedBy(clash.mend, first, second));
    });
    if (isSaid) continue;
    if (found.size >= mostShown) {
      found.set(keyOf(first.name, second.name), { first, second, mend: undefined, order, isShown: false });
      continue;
    }
    // What either carries on top must come free as well.
    const along = (carried.get(keyOf(first.name, second.name)) ?? []).map((pair) =>
      goesWith(first, pair.first)
        ? { moving: pair.first.prism, fixed: pair.second.prism }
        : { moving: pair.second.prism, fixed: pair.first.prism },
    );
    const movers = [
      { solid: first, from: [second.prism], along },
      {
        solid: second,
        from: [first.prism],
        along: along.map(({ moving, fixed }) => ({ moving: fixed, fixed: moving })),
      },
    ].sort((a, b) => reluctance(a.solid) - reluctance(b.solid));
    found.set(keyOf(first.name, second.name), { first, second, mend: mend(movers), order, isShown: true });
  }
  return [...found.values()].sort((a, b) => a.order - b.order);
}

/** More than anybody reads: a plan with so many has one slip that makes them all. Own choice. */
const mostShown = 50;

function theRest(clashes: readonly Clash[]) {
  const [first] = clashes;
  if (!first) return [];
  const pairs = clashes.length === 1 ? 'pair' : 'pairs';
  return [
    fitFinding(text, {
      subject: 'further pairs',
      path: text.place,
      verdict: 'fail',
      reason: say`${count(clashes.length)} more ${pairs} of things stand in each other.`,
      remedy: say`Put the ${count(mostShown)} above right first; where so many clash, look for one host or one size that is wrong.`,
    }),
  ];
}

const nestingOf = ({ hosts }: Solid): number => hosts.length;

/** Names are lines of the plan at most, so that none holds a line break. */
const keyOf = (a: string, b: string): string => (a < b ? `${a}\n${b}` : `${b}\n${a}`);

/** The pairs of what two things stand in or on, and themselves, except the two alone. */
const outerPairs = (first: Solid, second: Solid, known: ReadonlyMap<string, Solid>) =>
  [first.name, ...first.hosts].flatMap((outer, outwards) =>
    [second.name, ...second.hosts].flatMap((other, otherwards) =>
      outwards + otherwards === 0
        ? []
        : [
            {
              key: keyOf(outer, other),
              /** Every step on the way there leads out of something that is around it. */
              isAround: isInsideUpTo(first, outwards, known) && isInsideUpTo(second, otherwards, known),
            },
          ],
    ),
  );

const goesWith = (carrier: Solid, { name, hosts }: Solid): boolean =>
  name === carrier.name || hosts.includes(carrier.name);

/** Whether every step from a thing outwards to its nth host leads out of something that is around it. */
const isInsideUpTo = (solid: Solid, steps: number, known: ReadonlyMap<string, Solid>): boolean =>
  [solid.name, ...solid.hosts].slice(0, steps).every((name) => known.get(name)?.isInside !== false);

/** Whether moving what carries one of two things takes them out of each other as well. */
function isMendedBy(mend: Mend | undefined, first: Solid, second: Solid): boolean {
  if (!mend) return false;
  const after = (solid: Solid) => (goesWith(mend.solid, solid) ? moved(solid.prism, mend.move) : solid.prism);
  return prismOverlap(after(first), after(second)) === undefined;
}

/** The smaller of two things gives way; one inside another has its place already. */
const reluctance = ({ box, isInside }: Solid): number => {
  const { lengthM, widthM, heightM } = sizeOf(box);
  return (isInside ? 1e6 : 0) + lengthM * widthM * heightM;
};

function findingOf({ first, second, mend }: Clash) {
  const shared = sharedBox(first.prism, second.prism);
  const where = say`from ${length(shared.leastXM)} behind the front of the load bay and ${length(shared.bottomM)} above the floor`;
  return fitFinding(text, {
    subject: pairOf(first.name, second.name),
    path: mend?.solid.path ?? first.path,
    verdict: 'fail',
    measured: length(depthOf(shared)),
    reason: say`${first.name} and ${second.name} stand in each other: they share a piece ${piece(sizeOf(shared))}, ${where}.`,
    remedy: mend && mendInWords(mend),
  });
}
