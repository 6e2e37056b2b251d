import type { Layout, Solid, Stowed } from '../../build/layout.ts';
import { type BestFit, extentOf } from '../../calc/space/packing.ts';
import type { Step } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { listed } from '../fit-finding.ts';
import { placePaths, placeText } from './box.ts';

/*
 * How a thing goes into the free room that suits it best, side by side.
 */

export interface Fitting {
  readonly thing: Stowed;
  readonly host: Solid;
  readonly best: BestFit;
  /** Of how many free boxes it is the best. */
  readonly howMany: number;
  readonly room: Layout;
}

/** The free box, what the thing leaves of it on every side, and the side that has least to spare. */
export function stowingSteps({ thing, host, best, howMany, room }: Fitting): readonly Step[] {
  const { free, way, spare, fits } = best;
  const { least, most } = free;
  const box = {
    leastXM: least[0],
    mostXM: most[0],
    leastYM: least[1],
    mostYM: most[1],
    bottomM: least[2],
    topM: most[2],
  };
  const extent = extentOf(free);
  const { neededM, freeM, axis } = tightestOf(best);
  const left = axes.map(
    (name, at) =>
      say`${name} ${length(extent[at] ?? 0)} − ${length(way[at] ?? 0)} = ${length(spare[at] ?? 0)}`,
  );
  const side = axes[axis] ?? '';
  return [
    {
      what: `The free room ${thing.place === 'inside' ? 'in' : 'under'} ${thing.of} that suits ${thing.name} best${howMany > 1 ? `, of all ${howMany} free boxes there` : ''}`,
      sum: placeText(box, room),
      paths: placePaths(host, room),
    },
    {
      what: 'What is left of it with the thing turned to suit it: A − a, B − b, C − c',
      sum: listed(left),
      paths: [[...thing.path, 'size'], thing.path],
    },
    {
      what: `How much is free where least is left, which is its ${side}`,
      result: length(freeM),
    },
    {
      what: `What ${thing.name} needs there${fits ? '' : ', which is more'}`,
      result: length(neededM),
      paths: [thing.path],
    },
  ];
}

const axes = ['length', 'width', 'height'] as const;

interface Tightest {
  readonly axis: number;
  readonly neededM: number;
  readonly freeM: number;
}

/** The side that has least to spare. What a judge takes for equal is finer than what a search takes for room. */
export function tightestOf({ way, spare, fits }: BestFit): Tightest {
  const axis = spare.indexOf(Math.min(...spare));
  const sideM = way[axis] ?? 0;
  const freeM = sideM + (spare[axis] ?? 0);
  return { axis, neededM: fits ? Math.min(sideM, freeM) : sideM, freeM };
}
