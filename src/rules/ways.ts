import type { Layout } from '../build/layout.ts';
import {
  goalsOf,
  type NarrowSpot,
  type Way,
  type WaySide,
  type Ways,
  waysFromDoor,
} from '../build/walking.ts';
import { bodyBand, rearEndM } from '../build/walking-floor.ts';
import type { Citation } from '../catalogue/citation.ts';
import { length } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import { type Given, given, missing, type Need } from '../engine/rule.ts';

/** What all checks of ways on the floor rest on. */
export const walkingMethod: readonly Citation[] = [
  {
    title: 'The widest disc that gets there on the plan; own derivation, compared with a flood fill',
    provenance: 'computed',
  },
  {
    title: `In the way is what stands between ${1000 * bodyBand.bottomM} and ${1000 * bodyBand.topM} mm above the floor; the walls are where they are narrowest between the two`,
    provenance: 'common practice',
  },
];

export interface Walked {
  readonly layout: Layout;
  readonly ways: Ways;
}

/** The ways of a plan that has a placed door and things to go to. */
export const walked: Need<Walked> = ({ layout }) => {
  if (!layout) return missing('van.load_bay');
  const ways = waysFromDoor(layout);
  const keys = [
    ...(ways ? [] : openingKeys(layout, 'kind')),
    ...(goalsOf(layout).length > 0 ? [] : ['fixtures.NAME.is']),
  ];
  return ways && keys.length === 0 ? given({ layout, ways }) : missing(...keys);
};

/** The keys that an opening of a known kind lacks for a place, or the one that says what an opening is. */
export function openingKeys({ unplacedOpenings }: Layout, key: 'kind' | 'escape'): readonly string[] {
  const begun = unplacedOpenings.filter((opening) => !opening.missing.includes('kind'));
  const keys = begun.flatMap(({ path, missing: absent }) => absent.map((each) => [...path, each].join('.')));
  return keys.length > 0 ? keys : [`van.openings.NAME.${key}`];
}

export const missingKeys = <T>(found: readonly T[], ...keys: readonly string[]): Given<readonly T[]> =>
  found.length > 0 ? given(found) : missing(...keys);

/** "1.2 m from the front, 300 mm right of the centre line" */
export function placeInWords({ at: { xM, yM } }: Pick<WaySide, 'at'>): Phrase {
  const from = say`${length(Math.max(0, xM))} from the front`;
  if (Math.abs(yM) < 0.0005) return say`${from}, on the centre line`;
  return say`${from}, ${length(Math.abs(yM))} ${yM > 0 ? 'right' : 'left'} of the centre line`;
}

/** "between wardrobe and kitchen unit, 1.2 m from the front, 300 mm right of the centre line" */
export function spotInWords(spot: NarrowSpot, { from }: Pick<Way, 'from'>, layout: Layout): Phrase {
  const [one, other] = spot.between.map((side) => sideInWords(side, layout));
  const where = placeInWords(spot);
  if (one !== other) return say`between ${one ?? ''} and ${other ?? ''}, ${where}`;
  const isWall = spot.between.every(({ of }) => of === undefined);
  return isWall ? say`in the opening of ${from}, ${where}` : say`beside ${one ?? ''}, ${where}`;
}

/** A thing by its name, a wall by its place. */
export function sideInWords({ of, at }: WaySide, layout: Layout): string {
  if (of !== undefined) return of;
  const nearM = 0.002;
  if (at.xM < nearM) return 'the bulkhead';
  if (at.xM > rearEndM(layout) - nearM) return 'the rear doors';
  return at.yM < 0 ? 'the left wall' : 'the right wall';
}
