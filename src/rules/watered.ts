import type { Outlet, Water, WaterPipe, WaterTank } from '../build/water.ts';
import { given, missing, type Need } from '../engine/rule.ts';
import { optional } from './needs.ts';

/** What the plan says of its water. */
export const water: Need<Water> = optional('water', (build) => build.water);

/** By their names, so that the order of the plan decides neither what is told first nor what a finding is about. */
export const byName = <T extends { readonly name: string }>(things: readonly T[]): readonly T[] =>
  things.toSorted((a, b) => (a.name < b.name ? -1 : 1));

/** Pipes, tanks or outlets of the water, where the plan names some; `key` is what it would write for it. */
export const someWater =
  <T extends { readonly name: string }>(
    key: string,
    read: (found: Water) => readonly T[],
  ): Need<readonly T[]> =>
  (build) => {
    if (!build.water) return missing('water');
    const found = read(build.water);
    return found.length > 0 ? given(byName(found)) : missing(key);
  };

export const isFresh = ({ contents }: WaterTank): boolean => contents === 'fresh';

/** A waste tank that drains run into; a toilet's is filled by hand. */
export const isForDrains = ({ contents, inToilet }: WaterTank): boolean => contents === 'waste' && !inToilet;

/** What of all that tanks hold can be had of them, or taken in before they must be emptied. */
export const usableOf = (tanks: readonly WaterTank[]): number =>
  tanks.reduce((sum, { holdsM3, usableShare }) => sum + holdsM3 * usableShare, 0);

/** The coldest weather that the plan reckons with. */
export const winterLow: Need<number> = optional('living.winter_low', ({ habits }) => habits.winterLowC);

export const pipes: Need<readonly WaterPipe[]> = someWater('water.pipes', (found) => found.pipes);
export const tanks: Need<readonly WaterTank[]> = someWater('tanks', (found) => found.tanks);
export const outlets: Need<readonly Outlet[]> = someWater('water.outlets', (found) => found.outlets);

export const daysBetweenFills: Need<number> = optional(
  'living.days_between_fills',
  ({ habits }) => habits.daysBetweenFills,
);
