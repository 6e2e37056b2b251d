import type { ShellOpening } from '../../build/layout.ts';
import { boundsOf, type Outline } from '../../calc/space/plane.ts';
import type { Part, Step } from '../../engine/finding.ts';
import { area, freeArea, length, type Measure, share } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { areaOf, BEFORE_OPENING_M, type Cover } from '../covering.ts';

/*
 * How much of an opening is covered: thing by thing, nothing counted twice.
 */

/** What stands before an opening, and how much of it that covers. */
export interface Covering {
  readonly hole: Outline;
  /** With what is reached through it. */
  readonly all: readonly Cover[];
  readonly covers: readonly Cover[];
  readonly coveredShare: number;
}

/** The opening's area, what each thing covers of it, and the share. */
export function coveredSteps(
  opening: ShellOpening,
  { hole, all, covers, coveredShare }: Covering,
): readonly Step[] {
  const { name, path, surface } = opening;
  const { leastXM, mostXM, leastYM, mostYM } = boundsOf(hole);
  const holeM2 = areaOf([hole]);
  const coveredM2 = areaOf(covers.flatMap(({ onOpening }) => onOpening));
  // Two decimals of a square metre are too few for a window.
  const shown = holeM2 < 1 ? freeArea : area;
  const leftOut = all.length - covers.length;
  const left = leftOut > 0 ? ` (${leftOut} more ${leftOut === 1 ? 'is' : 'are'} reached through it)` : '';
  return [
    {
      what: `The area of ${name}${name === surface ? '' : `, seen square to the ${surface}`}`,
      sum: say`${length(mostXM - leastXM)} · ${length(mostYM - leastYM)}`,
      result: shown(holeM2),
      paths: [path],
    },
    covers.length === 0
      ? {
          what: 'What stands before it covers of it',
          sum: say`nothing stands within ${length(BEFORE_OPENING_M)} of it${left}`,
          result: shown(0),
        }
      : {
          what: `What stands before it covers of it: wide · high; of a piece behind another only what that leaves${left}`,
          result: shown(coveredM2),
          parts: { columns: ['wide', 'high', 'covers', 'more'], rows: partsOf(covers, shown) },
          paths: covers.map(({ solid }) => solid.path),
        },
    {
      what: 'The share that is covered',
      sum: say`${shown(coveredM2)} / ${shown(holeM2)}`,
      result: share(coveredShare),
    },
  ];
}

/** Each thing with what it covers beyond those before it, so that nothing counts twice. */
const partsOf = (covers: readonly Cover[], shown: (areaM2: number) => Measure): readonly Part[] =>
  covers.map(({ solid, onOpening }, at) => {
    const before = covers.slice(0, at).flatMap((each) => each.onOpening);
    const { leastXM, mostXM, leastYM, mostYM } = boundsOf(onOpening.flat());
    return {
      name: solid.name,
      path: solid.path,
      origin: 'computed',
      values: [length(mostXM - leastXM), length(mostYM - leastYM), shown(areaOf(onOpening))],
      adds: shown(areaOf([...before, ...onOpening]) - areaOf(before)),
    };
  });
