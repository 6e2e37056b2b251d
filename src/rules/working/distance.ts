import type { Box3 } from '../../build/layout.ts';
import type { PlaceInVan } from '../../calc/space/route.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { gapsTo } from '../apart.ts';

/*
 * How far a place is from the nearest point of something: the gap in each direction, then the straight line.
 */

export interface Distance {
  /** "under the hob", and "the exhaust of the engine". */
  readonly from: string;
  readonly place: PlaceInVan;
  readonly to: string;
  /** Without extent where it is a place and no thing. */
  readonly box: Box3;
  readonly paths: readonly PlanPath[];
}

export function distanceSteps({ from, place, to, box, paths }: Distance): readonly Step[] {
  const gaps = gapsTo(place, box);
  const { xM, yM, zM } = gaps;
  return [
    {
      what: `How far ${from} is from ${to} along the van, counted from the front of the load bay`,
      sum: gapText(place.xM, box.leastXM, box.mostXM),
      result: length(xM),
      paths,
    },
    {
      what: 'Across the van, counted to the right from its middle (to the left with a minus)',
      sum: gapText(place.yM, box.leastYM, box.mostYM),
      result: length(yM),
    },
    {
      what: 'In height, counted from the floor of the load bay (below it with a minus)',
      sum: gapText(place.zM, box.bottomM, box.topM),
      result: length(zM),
    },
    {
      what: 'In a straight line: d = √(along² + across² + height²)',
      sum: say`√((${length(xM)})² + (${length(yM)})² + (${length(zM)})²)`,
      result: length(Math.hypot(xM, yM, zM)),
    },
  ];
}

/** The greater less the smaller; of a thing with extent its nearer face. */
function gapText(valueM: number, leastM: number, mostM: number): Phrase {
  const isThing = mostM > leastM;
  if (isThing && valueM >= leastM && valueM <= mostM)
    return say`${length(valueM)} lies between its faces at ${length(leastM)} and ${length(mostM)}`;
  const face = isThing ? ' of its nearer face' : '';
  return valueM > mostM
    ? say`${length(valueM)} − ${inBrackets(mostM)}${face}`
    : say`${length(leastM)}${face} − ${inBrackets(valueM)}`;
}

/** Nobody reads "100 mm − -20 mm". */
const inBrackets = (valueM: number): Phrase =>
  valueM < 0 ? say`(${length(valueM)})` : say`${length(valueM)}`;
