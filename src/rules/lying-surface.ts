import type { Box3, Layout, Solid } from '../build/layout.ts';
import { boundsOf, type Outline, rectangle } from '../calc/space/plane.ts';

/** What one sits or lies on: the thing itself, or the mattress or cushions on it. */
export interface Surface {
  readonly outline: Outline;
  readonly box: Box3;
  /** The mattress or cushions, where the plan has any. */
  readonly cushions: readonly Solid[];
}

/** What stands on a bed or seat and covers this part of it is its mattress or a cushion, not a pillow: own choice. */
const leastCovered = 0.3;

const sidesOf = ({ leastXM, leastYM, mostXM, mostYM }: Box3): readonly [number, number] => [
  mostXM - leastXM,
  mostYM - leastYM,
];

const footprintM2 = (box: Box3): number => {
  const [lengthM, widthM] = sidesOf(box);
  return lengthM * widthM;
};

export function surfaceOf(thing: Solid, { solids }: Layout): Surface {
  const cushions = solids.filter(
    ({ hosts, isInside, box }) =>
      hosts[0] === thing.name && !isInside && footprintM2(box) >= leastCovered * footprintM2(thing.box),
  );
  const [first, ...more] = cushions;
  if (!first) return { outline: thing.prism.outline, box: thing.box, cushions };
  const all = boundsOf(cushions.flatMap(({ prism }) => prism.outline));
  // A mattress that hangs over its frame bears nobody there.
  const [leastXM, mostXM] = [
    Math.max(all.leastXM, thing.box.leastXM),
    Math.min(all.mostXM, thing.box.mostXM),
  ];
  const [leastYM, mostYM] = [
    Math.max(all.leastYM, thing.box.leastYM),
    Math.min(all.mostYM, thing.box.mostYM),
  ];
  if (mostXM <= leastXM || mostYM <= leastYM)
    return { outline: thing.prism.outline, box: thing.box, cushions: [] };
  return {
    outline:
      more.length === 0
        ? first.prism.outline
        : rectangle(leastXM, leastYM, mostXM - leastXM, mostYM - leastYM),
    box: {
      leastXM,
      mostXM,
      leastYM,
      mostYM,
      bottomM: Math.min(...cushions.map(({ box }) => box.bottomM)),
      topM: Math.max(...cushions.map(({ box }) => box.topM)),
    },
    cushions,
  };
}

/** The longer and the shorter side. */
export function longAndShortM(box: Box3): readonly [number, number] {
  const [lengthM, widthM] = sidesOf(box);
  return [Math.max(lengthM, widthM), Math.min(lengthM, widthM)];
}
