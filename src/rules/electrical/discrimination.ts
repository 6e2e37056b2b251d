import { discriminationRatio, greatestFuse, smallestFuse } from '../../calc/electrical/protection.ts';
import { discrimination, fuseMargin } from '../../catalogue/electrical/fuses.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { current, factor } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { electricalCaution } from '../cautions.ts';
import { type CircuitFigures, figuresOf } from '../circuits.ts';
import { closestOf, type FusedCircuit, fusesBefore, withFuses } from '../fused.ts';
import { observed } from '../observed.ts';

const text: RuleText = {
  id: 'electrical.discrimination',
  topic: 'electrical',
  title: 'the nearest fuse opens first',
  why: 'Where a fuse nearer to the battery opens first, one bad pump darkens the whole van, and nobody finds out which.',
  formula:
    'k = I_up / I_down ≥ 1.6; I_up rating of the fuse nearer to the battery, I_down of the next behind it, A',
  sources: [...discrimination.citations],
  cautions: [
    electricalCaution,
    'In a short circuit fuses may open together whatever their ratings: only the makers’ curves tell.',
  ],
  fix: 'Take a larger fuse nearer to the battery or a smaller one behind it, as far as cables and loads allow.',
  place: ['electrical', 'circuits'],
};

export default defineRule({
  ...text,
  needs: { electrical: withFuses },
  check: ({ facts: { electrical } }) => {
    const figures = figuresOf(electrical);
    const pairs = pairsOf(figures).map(([before, behind]) => judgePair(before, behind, figures));
    if (pairs.length === 0) return { findings: [alone()] };
    return {
      findings: [
        ...pairs.filter(({ verdict }) => verdict !== 'pass'),
        ...closestOf(
          pairs.filter(({ verdict }) => verdict === 'pass'),
          (howMany) => say`${howMany} more pairs lie at least as far apart.`,
        ),
      ],
    };
  },
  work: ({ facts: { electrical } }, finding) => {
    const pairs = pairsOf(figuresOf(electrical));
    const pair = pairs.find((each) => subjectOf(each) === finding.subject);
    if (!finding.measured || !pair) return undefined;
    const [{ circuit, fuse: up }, { circuit: behind, fuse: down }] = pair;
    return [
      {
        what: `How many times larger the fuse of ${circuit.name} is than that of ${behind.name} behind it: k = I_up / I_down${pairs.length > 1 ? `, one of ${pairs.length} such pairs` : ''}`,
        sum: say`${current(up.ratingA)} / ${current(down.ratingA)}`,
        result: factor(discriminationRatio(up.ratingA, down.ratingA)),
        paths: [
          [...up.path, 'rating'],
          [...down.path, 'rating'],
        ],
      },
    ];
  },
});

type Pair = readonly [upstream: FusedCircuit, downstream: FusedCircuit];

/** Every fuse with the next one before it. */
const pairsOf = (figures: Figures): readonly Pair[] =>
  [...figures.values()].flatMap((each): Pair[] => {
    const { circuit } = each;
    const before = fusesBefore(each).at(-1);
    return circuit.fuse && before ? [[before, { circuit, fuse: circuit.fuse }]] : [];
  });

const subjectOf = ([upstream, downstream]: Pair): string =>
  `${downstream.circuit.name} behind ${upstream.circuit.name}`;

const alone = (): Finding =>
  observed(text, {
    verdict: 'pass',
    subject: 'fuses',
    path: text.place,
    reason: say`No fuse lies behind another: none can open in place of another.`,
  });

type Figures = ReadonlyMap<string, CircuitFigures>;

function judgePair(upstream: FusedCircuit, downstream: FusedCircuit, figures: Figures): Finding {
  const [upA, downA] = [upstream.fuse.ratingA, downstream.fuse.ratingA];
  const [up, down] = [upstream.circuit.name, downstream.circuit.name];
  const fuses = say`the ${current(downA)} fuse of ${down}`;
  const upFirst = !exceeds(upA, downA);
  return judge({
    rule: text,
    subject: subjectOf([upstream, downstream]),
    path: [...downstream.fuse.path, 'rating'],
    kind: 'factor',
    measured: { value: discriminationRatio(upA, downA), standard: 0 },
    limit: discrimination.least,
    sense: 'at least',
    broken: 'warn',
    reason: upFirst
      ? say`The ${current(upA)} fuse of ${up} is no larger than ${fuses} behind it: it goes first, and takes all that hangs on ${up} with it.`
      : say`The ${current(upA)} fuse of ${up} is ${factor(upA / downA)} times ${fuses} behind it.`,
    remedy: () => remedyFor(upstream, downstream, figures),
  });
}

/** A larger fuse before, as far as its cable bears it, or a smaller one behind, as far as its load lets it. */
function remedyFor(upstream: FusedCircuit, downstream: FusedCircuit, figures: Figures): Phrase {
  const [upA, downA] = [upstream.fuse.ratingA, downstream.fuse.ratingA];
  const [up, down] = [upstream.circuit.name, downstream.circuit.name];
  const largerA = smallestFuse(upstream.fuse.family.ratingsA, downA, discrimination.least);
  const ownA = figures.get(down)?.ampacity?.deratedA ?? Number.POSITIVE_INFINITY;
  const atMostA = Math.min(upA / discrimination.least, ownA);
  const smallerA = atMostA > 0 ? greatestFuse(downstream.fuse.family.ratingsA, atMostA) : undefined;
  const bearsA = figures.get(up)?.ampacity?.deratedA;
  const designA = figures.get(down)?.designA;
  const larger = largerA !== undefined && bearsA !== undefined && !exceeds(largerA, bearsA);
  const smaller =
    smallerA !== undefined && designA !== undefined && !exceeds(designA * fuseMargin.value, smallerA);
  const before = say`${current(largerA ?? downA * discrimination.least)} in ${up}`;
  const behind = say`${current(smallerA ?? upA / discrimination.least)} in ${down}`;
  if (larger && smaller)
    return say`Fit ${before}, which its cable bears, or ${behind}, which its load allows.`;
  if (larger) return say`Fit ${before}, which its cable bears.`;
  if (smaller) return say`Fit ${behind}, which its load allows.`;
  return say`Fit ${before} or more, on a cable that carries as much, or take ${down} from a point nearer to the battery.`;
}
