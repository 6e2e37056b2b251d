import type { Leg, RoutedChase, RoutedRun } from '../../build/routes.ts';
import type { Part, Step } from '../../engine/finding.ts';
import { count, crossSectionMm2, length, type Measure, share } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { told } from '../told.ts';

/*
 * How full chases are, and how long the ways are that run through them.
 */

export type SizedRun = RoutedRun & { readonly diameterM: number };

/** A diameter squared, in mm². */
const squareOf = (areaM2: number): Measure => crossSectionMm2(areaM2 * 1e6);

/** Two lengths that differ by less are one: a micrometre. */
const sameWithinM = 1e-6;

/** The bore that things go through at all, and the two thickest pipes, which do not give. */
interface LeastBore {
  readonly leastM: number;
  readonly pipesM: readonly [number, number];
}

/** What runs there, squared and added up, over the bore squared. */
export function fillSteps(
  { id, path }: RoutedChase,
  runs: readonly SizedRun[],
  { boreM, taken }: { readonly boreM: number; readonly taken: number },
  least: LeastBore | undefined,
): readonly Step[] {
  const rows = runs.map((run): Part => {
    const { name, diameterM } = run;
    return {
      name,
      path: [...run.path, 'diameter'],
      origin: 'typed',
      values: [count(run.count), squareOf(diameterM ** 2)],
      adds: squareOf(run.count * diameterM ** 2),
    };
  });
  const sumM2 = rows.reduce((sum, { adds }) => sum + adds.value, 0);
  return [
    {
      what: `What runs through ${id}: Σ d², d across each cable or pipe`,
      result: squareOf(sumM2),
      parts: { columns: ['side by side', 'd²', 'together'], rows },
    },
    ...(least ? [leastBoreStep(runs, sumM2, least)] : []),
    {
      what: `The share of ${id} that they fill: Σ d² / D², D its bore`,
      sum: say`${squareOf(sumM2)} / ${squareOf(boreM ** 2)}, which is the square of ${told(boreM)}`,
      result: share(taken),
      paths: [[...path, 'bore']],
    },
  ];
}

function leastBoreStep(
  runs: readonly SizedRun[],
  sumM2: number,
  { leastM, pipesM: [first, second] }: LeastBore,
): Step {
  const thickestM = Math.max(...runs.map(({ diameterM }) => diameterM));
  const pipes: Phrase =
    second > 0 ? say`, ${told(first)} + ${told(second)} of the two thickest pipes side by side` : [];
  return {
    what: 'The least bore that they go through at all',
    sum: say`the greatest of √(${squareOf(sumM2)}) = ${told(Math.sqrt(sumM2))}${pipes} and ${told(thickestM)} of the thickest`,
    result: length(leastM),
  };
}

const alongAxes = ([a, b]: Leg['ends']): readonly [number, number, number] => [
  Math.abs(b.xM - a.xM),
  Math.abs(b.yM - a.yM),
  Math.abs(b.zM - a.zM),
];

/** Along the van, across it, up or down, and together; a chase may have a length of its own. */
function legRow({ kind, id, lengthM, ends }: Leg, run: RoutedRun): Part {
  const axes = alongAxes(ends);
  const isTyped = Math.abs(axes[0] + axes[1] + axes[2] - lengthM) > sameWithinM;
  return {
    name: kind === 'chase' ? id : `spur to ${id}`,
    path: kind === 'chase' ? ['routes', 'chases', id] : run.path,
    origin: isTyped ? 'typed' : 'computed',
    values: axes.map(length),
    adds: length(lengthM),
  };
}

/** Of the longest of them piece by piece, then of all. */
export function waysLengthSteps(passing: readonly RoutedRun[]): readonly Step[] {
  const known = passing.flatMap((run) =>
    run.lengthM === undefined ? [] : [{ ...run, lengthM: run.lengthM }],
  );
  const [longest] = known.filter(({ lengthIsTyped }) => !lengthIsTyped).sort((a, b) => b.lengthM - a.lengthM);
  const rows = known.map((run): Part => {
    const { name, path, lengthM, lengthIsTyped } = run;
    return {
      name,
      path: lengthIsTyped ? [...path, 'length'] : path,
      origin: lengthIsTyped ? 'typed' : 'computed',
      values: [length(lengthIsTyped ? lengthM : withoutSlackM(run)), share(run.slackShare)],
      adds: length(lengthM),
    };
  });
  return [
    ...(longest ? longestSteps(longest) : []),
    {
      what: 'All ways through the chases together',
      result: length(rows.reduce((sum, { adds }) => sum + adds.value, 0)),
      parts: { columns: ['way', 'slack', 'length'], rows },
    },
  ];
}

const withoutSlackM = ({ legs }: RoutedRun): number => legs.reduce((sum, { lengthM }) => sum + lengthM, 0);

function longestSteps(run: RoutedRun & { readonly lengthM: number }): readonly Step[] {
  const { name, legs, lengthM, slackShare } = run;
  return [
    {
      what: `The longest of the ways that are worked out, that of ${name}, piece by piece`,
      result: length(withoutSlackM(run)),
      parts: {
        columns: ['along', 'across', 'up or down', 'length'],
        rows: legs.map((leg) => legRow(leg, run)),
      },
      paths: [run.path],
    },
    {
      what: `The length of ${name} with slack: L · (1 + slack)`,
      sum: say`${told(withoutSlackM(run))} · (1 + ${share(slackShare)})`,
      result: length(lengthM),
      paths: [['routes', 'slack']],
    },
  ];
}

/** How wide the hole of a chase is: its bore, or else the thickest of what runs there. */
export function holeSteps(
  { id, boreM, path }: RoutedChase,
  runs: readonly RoutedRun[],
  widthM: number,
): readonly Step[] {
  const sized = runs.flatMap(({ name, diameterM }) => (diameterM === undefined ? [] : [{ name, diameterM }]));
  const thickest: Phrase = say`the greatest of ${count(sized.length)} diameters, since the plan gives no bore: ${sized.find(({ diameterM }) => diameterM === widthM)?.name ?? ''}`;
  return [
    {
      what: `How wide a hole for ${id} is at the least`,
      sum: boreM === undefined ? thickest : say`the bore of the chase`,
      result: length(widthM),
      paths: boreM === undefined ? runs.map((run) => [...run.path, 'diameter']) : [[...path, 'bore']],
    },
  ];
}
