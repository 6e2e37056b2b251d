import { type Body, isPlaced, type PlacedBody } from '../build/body.ts';
import type { Build } from '../build/build.ts';
import type { Layout } from '../build/layout.ts';
import type { Codes } from '../catalogue/codes.ts';
import { given, missing, type Need } from '../engine/rule.ts';
import type { Quantity } from '../plan/quantity.ts';

export const optional =
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

type Unladen = NonNullable<Build['vehicle']['unladen']>;

/** What the plan says of the empty van, be it possible or not. */
export const unladenAsGiven: Need<Unladen> = optional('van.unladen', ({ vehicle }) => vehicle.unladen);

/** What is left of the empty van without the fuel and the driver that were in it. */
export const emptyKg = ({ bodies }: Build): number =>
  bodies
    .filter(({ path }) => path[0] === 'van' && path[1] === 'unladen')
    .reduce((sum, { massKg }) => sum + massKg, 0);

/** The mass of the van as it comes; without it, or with one that is less than nothing, no sum means anything. */
export const unladen: Need<Unladen> = optional('van.unladen', (build) =>
  emptyKg(build) > 0 ? build.vehicle.unladen : undefined,
);

export interface Placed {
  readonly wheelbaseM: number;
  readonly bodies: readonly PlacedBody[];
}

/** Every mass with its place: what all balance rests on. */
export const placed: Need<Placed> = (build) => {
  const { vehicle, bodies } = build;
  const { wheelbaseM } = vehicle;
  const placedBodies = bodies.filter(isPlaced);
  const unplaced = bodies.filter((body) => !isPlaced(body));
  const keys = [
    ...(wheelbaseM === undefined ? ['van.wheelbase'] : []),
    ...(unladen(build).ok ? [] : ['van.unladen']),
    ...(unplaced.some(hasMassAlone) ? ['van.unladen.behind_front_axle'] : []),
    ...(unplaced.some((body) => body.sort !== 'van') && !vehicle.bay ? ['van.load_bay'] : []),
  ];
  if (keys.length > 0 || wheelbaseM === undefined) return missing(...keys);
  return given({ wheelbaseM, bodies: placedBodies });
};

/** The empty van given as one mass, which has no place of its own as axle and wheel loads have. */
const hasMassAlone = ({ sort, path }: Body): boolean => sort === 'van' && path.at(-1) === 'mass';

/** Wheel loads say how the empty van's mass lies sideways, but only with the track between them. */
export const sideways: Need<true> = ({ vehicle }) =>
  vehicle.unladen?.sidesGiven && vehicle.frontTrackM === undefined ? missing('van.track') : given(true);

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

/** The room that everything takes. */
export const layout: Need<Layout> = optional('van.load_bay', (build) => build.layout);

/** A list of the layout, where the plan gives any of it; `key` is what it would write for it. */
export const some =
  <T>(key: string, read: (layout: Layout) => readonly T[]): Need<readonly T[]> =>
  (build) => {
    if (!build.layout) return missing('van.load_bay');
    const found = read(build.layout);
    return found.length > 0 ? given(found) : missing(key);
  };
