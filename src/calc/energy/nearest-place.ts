import { cosDeg, latitude, longitude, sinDeg } from './angle.ts';

interface Place {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

/** Mean radius of the earth, m (definition R1 of the IUGG, rounded to 1 km). */
const earthRadiusM = 6_371_000;

/**
 * Distance over a round earth.
 *
 *     d = 2R · asin √(sin²(Δφ/2) + cos φ₁ · cos φ₂ · sin²(Δλ/2))
 *
 * Latitudes −90 to 90, longitudes −180 to 180, degrees. Result in m, within 0.6 % of that on the ellipsoid.
 * Throws RangeError if a place is off the earth. Source: haversine formula (computed).
 */
export function distanceBetweenM(a: Place, b: Place): number {
  const half =
    sinDeg((latitude(b.latitudeDeg) - latitude(a.latitudeDeg)) / 2) ** 2 +
    cosDeg(a.latitudeDeg) *
      cosDeg(b.latitudeDeg) *
      sinDeg((longitude(b.longitudeDeg) - longitude(a.longitudeDeg)) / 2) ** 2;
  return 2 * earthRadiusM * Math.asin(Math.sqrt(Math.min(1, half)));
}

export interface Nearest<P> {
  readonly place: P;
  readonly distanceM: number;
  /** How much further north the asked place lies; the sun of another latitude is another sun. */
  readonly northOfPlaceDeg: number;
}

/**
 * The place of a list that lies nearest to another; the earlier of two at one distance.
 *
 * Throws RangeError if the list is empty or a place is off the earth.
 */
export function nearestPlace<P extends Place>(
  places: readonly P[],
  latitudeDeg: number,
  longitudeDeg: number,
): Nearest<P> {
  const here = { latitudeDeg, longitudeDeg };
  let nearest: Nearest<P> | undefined;
  for (const place of places) {
    const distanceM = distanceBetweenM(here, place);
    if (nearest === undefined || distanceM < nearest.distanceM) {
      nearest = { place, distanceM, northOfPlaceDeg: latitudeDeg - place.latitudeDeg };
    }
  }
  if (!nearest) throw new RangeError('There must be at least one place to choose from.');
  return nearest;
}
