import { nearestPlace } from '../calc/energy/nearest-place.ts';
import { alongYear, yearBetween } from '../calc/heat/year-of-cold.ts';
import type { Citation } from '../catalogue/citation.ts';
import { climatePlaces } from '../catalogue/electrical/climate.ts';
import {
  meanFromExtremeCitation,
  meanFromExtremeK,
  outsideHumidity,
  outsideHumidityCitation,
} from '../catalogue/heat/vapour-layers.ts';
import type { Build } from './build.ts';
import { airAt, farthestM, kilometres } from './energy-of.ts';

/** The air outside in the twelve months, January first. */
export interface OutsideYear {
  readonly airC: readonly number[];
  /** 0 to 1. */
  readonly humidity: readonly number[];
  /** Whose air it is, in words. */
  readonly of: string;
  readonly citations: readonly Citation[];
}

/** The air of the nearest place of the tables; too far from all of them, a wave between the plan's own extremes. */
export function outsideYearOf({ habits }: Build): OutsideYear | { readonly missing: readonly string[] } {
  const { place, winterLowC, summerHighC } = habits;
  const isSouth = place !== undefined && place.latitudeDeg < 0;
  const turned = <T>(months: readonly T[]): readonly T[] =>
    isSouth ? [...months.slice(6), ...months.slice(0, 6)] : months;
  const humidity = turned(alongYear(outsideHumidity.january, outsideHumidity.july));
  if (place) {
    const nearest = nearestPlace(climatePlaces, place.latitudeDeg, place.longitudeDeg);
    if (nearest.distanceM <= farthestM)
      return {
        airC: airAt(nearest.place, place.latitudeDeg),
        humidity,
        of: `${nearest.place.name}, ${kilometres(nearest.distanceM)} away`,
        citations: [nearest.place.citation, outsideHumidityCitation],
      };
  }
  if (winterLowC === undefined || summerHighC === undefined)
    return {
      missing: place
        ? [
            ...(winterLowC === undefined ? ['living.winter_low'] : []),
            ...(summerHighC === undefined ? ['living.summer_high'] : []),
          ]
        : ['living.place'],
    };
  return {
    airC: turned(yearBetween(winterLowC, summerHighC, meanFromExtremeK)),
    humidity,
    of: 'a year between the winter low and the summer high of the plan',
    citations: [meanFromExtremeCitation, outsideHumidityCitation],
  };
}
