import type { PlaceInVan } from '../calc/space/route.ts';
import type { Place } from '../plan/schema.ts';
import type { Layout, Solid } from './layout.ts';
import { type LoadBay, placeIn, spaceOfBay } from './placing.ts';

/** Finds places in the load bay's own axes; undefined where the plan does not say enough. */
export interface Locating {
  readonly solid: (thing: string | undefined) => Solid | undefined;
  /** The middle of a thing's box. */
  readonly middle: (thing: string | undefined) => PlaceInVan | undefined;
  /** A place of its own, measured from the inside of the load bay. It needs a place along the van and one across it. */
  readonly at: (place: Place | undefined) => PlaceInVan | undefined;
}

export function locatingIn(layout: Layout | undefined, bay: LoadBay | undefined): Locating {
  const solids = new Map((layout?.solids ?? []).map((solid) => [solid.name, solid]));
  const solid = (thing: string | undefined) => (thing === undefined ? undefined : solids.get(thing));
  return {
    solid,
    middle: (thing) => {
      const box = solid(thing)?.box;
      return (
        box && {
          xM: (box.leastXM + box.mostXM) / 2,
          yM: (box.leastYM + box.mostYM) / 2,
          zM: (box.bottomM + box.topM) / 2,
        }
      );
    },
    at: (place) => {
      if (!place || !bay) return undefined;
      const standing = {
        name: '',
        source: '',
        size: undefined,
        at: place,
        onTop: false,
        onFloor: place.above_floor === undefined,
      };
      const { position, missing } = placeIn(spaceOfBay(bay), standing);
      if (missing.includes('at.from_front') || missing.includes('at.from_left')) return undefined;
      return { xM: position.x.valueM - bay.behindFrontAxleM, yM: position.y.valueM, zM: position.z.valueM };
    },
  };
}
