import { type Body, isPlaced, type PlacedBody } from '../build/body.ts';
import type { Build } from '../build/build.ts';
import type { Codes } from '../catalogue/codes.ts';
import { given, missing, type Need } from '../engine/rule.ts';
import type { Quantity } from '../plan/quantity.ts';

const optional =
  <T>(key: string, read: (build: Build) => T | undefined): Need<T> =>
  (build) => {
    const value = read(build);
    return value === undefined ? missing(key) : given(value);
  };

export const codes: Need<Codes> = optional('codes', (build) => build.codes);
export const maxMass: Need<Quantity> = optional('van.max_mass', ({ vehicle }) => vehicle.maxMass);
export const overallLength: Need<number> = optional(
  'van.overall_length',
  ({ vehicle }) => vehicle.overallLengthM,
);
export const bay = optional('van.load_bay', ({ vehicle }) => vehicle.bay);
export const frontLimit: Need<Quantity> = optional('van.axle_limits', ({ vehicle }) => vehicle.frontLimit);
export const rearLimit: Need<Quantity> = optional('van.axle_limits', ({ vehicle }) => vehicle.rearLimit);

/** The mass of the van as it comes; without it no sum means anything. */
export const unladen: Need<NonNullable<Build['vehicle']['unladen']>> = optional(
  'van.unladen',
  ({ vehicle }) => vehicle.unladen,
);

export interface Placed {
  readonly wheelbaseM: number;
  readonly bodies: readonly PlacedBody[];
}

/** Every mass with its place: what all balance rests on. */
export const placed: Need<Placed> = ({ vehicle, bodies }) => {
  const { wheelbaseM } = vehicle;
  const placedBodies = bodies.filter(isPlaced);
  const unplaced = bodies.filter((body) => !isPlaced(body));
  const keys = [
    ...(wheelbaseM === undefined ? ['van.wheelbase'] : []),
    ...(vehicle.unladen ? [] : ['van.unladen']),
    ...(unplaced.some(isVanAlone) && wheelbaseM !== undefined ? ['van.unladen.behind_front_axle'] : []),
    ...(unplaced.some((body) => body.sort !== 'van') && !vehicle.bay ? ['van.load_bay'] : []),
  ];
  if (keys.length > 0 || wheelbaseM === undefined) return missing(...keys);
  return given({ wheelbaseM, bodies: placedBodies });
};

const isVanAlone = (body: Body): boolean => body.sort === 'van';

export interface Tracks {
  readonly frontM: number;
  readonly rearM: number;
}

export const tracks: Need<Tracks> = ({ vehicle: { frontTrackM, rearTrackM } }) =>
  frontTrackM === undefined || rearTrackM === undefined
    ? missing('van.track')
    : given({ frontM: frontTrackM, rearM: rearTrackM });

/** How high the load bay's floor is, given that the empty van's centre of mass is known too. */
export const floorHeight: Need<Quantity> = ({ vehicle }) => {
  const keys = [
    ...(vehicle.floorAboveGround ? [] : ['van.load_bay.floor_above_ground']),
    ...(vehicle.unladen?.centreHeightGiven ? [] : ['van.unladen.centre_height']),
  ];
  return keys.length > 0 || !vehicle.floorAboveGround ? missing(...keys) : given(vehicle.floorAboveGround);
};
