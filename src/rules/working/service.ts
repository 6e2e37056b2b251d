import type { Layout, ShellOpening, Solid } from '../../build/layout.ts';
import type { Step } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { floorBeside, type Place } from '../free-floor.ts';
import { distanceTo, spanOf, type Way, wayTo } from '../straight-way.ts';
import { fromLeftWall, inBrackets, placePaths } from './box.ts';

/*
 * How far a thing is from where it is reached: through an opening, or from free floor beside it.
 */

const countedFrom: Readonly<Record<Way['axis'], string>> = {
  x: 'from the front of the load bay',
  y: 'from the left wall at the floor',
  z: 'from the floor',
};

/** The face that looks to the opening, the opening itself, and what is between them. */
export function throughSteps(thing: Solid, opening: ShellOpening, room: Layout): readonly Step[] {
  const way = wayTo[opening.surface];
  const [own, its] = [thing, opening].map(({ box }) => spanOf(fromLeftWall(box, room), way.axis));
  const faceM = own?.[way.forward ? 1 : 0] ?? 0;
  const holeM = its?.[way.forward ? 0 : 1] ?? 0;
  const [greaterM, smallerM] = way.forward ? [holeM, faceM] : [faceM, holeM];
  const distanceM = distanceTo(thing.box, opening.box, way);
  const reaches = greaterM < smallerM ? ', less than nothing: it reaches into the opening' : '';
  return [
    {
      what: `Where the face of ${thing.name} is that looks to ${opening.name}, counted ${countedFrom[way.axis]}`,
      result: length(faceM),
      paths: placePaths(thing, room),
    },
    {
      what: `The place of ${opening.name}${opening.name === opening.surface ? '' : ` in the ${opening.surface}`}, counted likewise`,
      result: length(holeM),
      paths: [opening.path],
    },
    {
      what: 'How far one has to reach: the one less the other',
      sum: say`${inBrackets(greaterM)} − ${inBrackets(smallerM)}${reaches}`,
      result: length(distanceM),
    },
  ];
}

/** The deepest free floor of all that begins within reach: where it begins and ends before the thing. */
export function insideSteps(thing: Solid, room: Layout, reachM: number): readonly Step[] {
  const places = floorBeside(thing, room, reachM);
  const best = deepestOf(places);
  const what = 'How deep the free floor is: where it ends less where it begins';
  const paths = placePaths(thing, room);
  if (!best) {
    const sum = say`none begins within ${length(reachM)}, or something else stands in between`;
    return [{ what: `How deep the free floor beside ${thing.name} is`, sum, result: length(0), paths }];
  }
  const { words, startM, depthM, end } = best;
  return [
    {
      what: `Where free floor begins ${words}, counted from the face of ${thing.name}${places.length > 1 ? `; the deepest of ${places.length} within reach` : ''}`,
      sum: say`what it stands in may lie in between; floor that begins within ${length(reachM)} counts`,
      result: length(startM),
      paths,
    },
    {
      what: `Where it ends, at ${end}`,
      result: length(startM + depthM),
      paths: room.solids.filter(({ name }) => name === end).flatMap((solid) => placePaths(solid, room)),
    },
    {
      what,
      sum: say`${length(startM + depthM)} − ${length(startM)}`,
      result: length(depthM),
    },
  ];
}

/** The first of equal ones. */
export const deepestOf = (places: readonly Place[]): Place | undefined =>
  places.reduce<Place | undefined>(
    (widest, place) => (widest && widest.depthM >= place.depthM - 1e-9 ? widest : place),
    undefined,
  );
