import type { Leg, Routes } from '../../build/routes.ts';
import { distanceToLine, type Line, straightDistance } from '../../calc/space/lines.ts';
import type { PlaceInVan } from '../../calc/space/route.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { told } from '../told.ts';

/** A piece of way that is taken as a straight line. */
export interface Course {
  readonly name: string;
  readonly path: PlanPath;
  readonly kind: Leg['kind'];
  readonly line: Leg['ends'];
  /** The chase, or the thing at the end of a spur. */
  readonly id: string;
  /** Half of what it takes up across. */
  readonly radiusM: number;
}

/** A piece of gas pipe and one of cable. */
export interface Neighbours {
  readonly gas: Course;
  readonly cable: Course;
  /** Between their middles. */
  readonly distanceM: number;
  readonly clearM: number;
  readonly coincide: boolean;
  /** Of pieces that meet at a point: the other end of one of them, which comes nearest to the other. */
  readonly end?: { readonly of: 'gas' | 'cable'; readonly at: PlaceInVan };
}

/** So often a third of the line is left out that what remains is shorter than any rounding. */
const thirds = 120;

const onward = ([from, to]: Line, part: number): PlaceInVan => ({
  xM: from.xM + part * (to.xM - from.xM),
  yM: from.yM + part * (to.yM - from.yM),
  zM: from.zM + part * (to.zM - from.zM),
});

/** The place of a straight line that is nearest to something straight: along it the distance has one lowest place. */
export function nearestPlace(line: Line, awayM: (place: PlaceInVan) => number): PlaceInVan {
  let [from, to] = [0, 1];
  for (let round = 0; round < thirds; round += 1) {
    const [first, second] = [from + (to - from) / 3, to - (to - from) / 3];
    if (awayM(onward(line, first)) <= awayM(onward(line, second))) to = second;
    else from = first;
  }
  const ends = [0, (from + to) / 2, 1].map((part) => onward(line, part));
  return ends.reduce((best, next) => (awayM(next) < awayM(best) ? next : best));
}

/** Where the two come nearest, the gas first. */
function nearestPlaces({ gas, cable, end }: Neighbours): readonly [PlaceInVan, PlaceInVan] {
  const to = (line: Line, place: PlaceInVan) => nearestPlace(line, (at) => straightDistance(at, place));
  if (end?.of === 'gas') return [end.at, to(cable.line, end.at)];
  if (end?.of === 'cable') return [to(gas.line, end.at), end.at];
  const onGas = nearestPlace(gas.line, (at) => distanceToLine(at, cable.line));
  return [onGas, to(cable.line, onGas)];
}

/** "1360 mm from the front, 1740 mm from the left and 60 mm above the floor" */
const placeInWords = ({ xM, yM, zM }: PlaceInVan, halfWidthM: number): Phrase =>
  say`${told(xM)} from the front, ${told(yM + halfWidthM)} from the left and ${told(zM)} above the floor`;

/** The points of the plan that a piece lies between, or else the run that it belongs to. */
function pathsOf({ kind, id, path }: Course, { chases }: Routes): readonly PlanPath[] {
  const chase = kind === 'chase' ? chases.find((each) => each.id === id) : undefined;
  if (!chase) return [path];
  return [
    [...path, 'bore'],
    ['routes', 'points', chase.from],
    ['routes', 'points', chase.to],
  ];
}

/** From the nearest places to what is clear between them. */
export function apartSteps(
  pair: Neighbours,
  among: number,
  routes: Routes,
  halfWidthM: number,
): readonly Step[] {
  const { gas, cable, distanceM, clearM, end } = pair;
  const [onGas, onCable] = nearestPlaces(pair);
  const side = (a: number, b: number) => told(Math.abs(a - b));
  const meets = end ? ': they meet at a point, so the other end of the shorter one counts' : '';
  const acrossM = gas.radiusM + cable.radiusM;
  return [
    {
      what: `How near the middle of ${gas.name} comes to that of ${cable.name}${among > 1 ? `, the nearest of ${among} pieces of cable` : ''}${meets}`,
      sum: say`√((${side(onGas.xM, onCable.xM)})² + (${side(onGas.yM, onCable.yM)})² + (${side(onGas.zM, onCable.zM)})²), the gas ${placeInWords(onGas, halfWidthM)}, the cable ${placeInWords(onCable, halfWidthM)}`,
      result: length(distanceM),
      paths: [...pathsOf(gas, routes), ...pathsOf(cable, routes)],
    },
    {
      what: 'Half of what each takes up across',
      sum: say`${told(2 * gas.radiusM)} / 2 + ${told(2 * cable.radiusM)} / 2`,
      result: length(acrossM),
    },
    {
      what: `Clear between them${clearM === 0 ? ', and nothing at the least' : ''}`,
      sum: say`${told(distanceM)} − ${told(acrossM)}`,
      result: length(clearM),
    },
  ];
}
