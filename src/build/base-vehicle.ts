import { fluids } from '../catalogue/fluids.ts';
import { limitFor } from '../catalogue/limits.ts';
import type { Assumption } from '../engine/finding.ts';
import { share } from '../engine/measure.ts';
import { say } from '../engine/phrase.ts';
import type { Quantity } from '../plan/quantity.ts';
import type { Plan } from '../plan/schema.ts';
import { alreadyWeighed } from './already-weighed.ts';
import type { Body, Coordinate, Position } from './body.ts';
import type { Vehicle } from './build.ts';
import { anywhere, errorsOf } from './errors.ts';
import { placeIn, spaceOfBay } from './placing.ts';

type Unladen = NonNullable<Plan['van']['unladen']>;

export function vehicleOf({ van }: Plan): Vehicle {
  const bay = van.load_bay;
  const unladen = van.unladen;
  return {
    ...(van.max_mass && { maxMass: van.max_mass }),
    ...(van.axle_limits && { frontLimit: van.axle_limits.front, rearLimit: van.axle_limits.rear }),
    ...(van.wheelbase && { wheelbaseM: van.wheelbase.value }),
    ...(van.track && { frontTrackM: van.track.value, rearTrackM: (van.rear_track ?? van.track).value }),
    ...(van.overall_length && { overallLengthM: van.overall_length.value }),
    ...energyOf(van),
    ...(bay && {
      bay: {
        behindFrontAxleM: bay.behind_front_axle.value,
        startErrors: errorsOf(bay.behind_front_axle, 'van.load_bay.behind_front_axle'),
        lengthM: bay.length.value,
        widthM: bay.width.value,
        heightM: bay.height.value,
      },
    }),
    ...(bay?.floor_above_ground && { floorAboveGround: bay.floor_above_ground }),
    ...(van.centre_limits?.height && { centreHeightLimitM: van.centre_limits.height.value }),
    ...(van.centre_limits?.sideways && { centreSidewaysLimitM: van.centre_limits.sideways.value }),
    ...(unladen && {
      unladen: {
        ...(unladen.from && { from: unladen.from }),
        ...(unladen.includes?.driver !== undefined && { driverIncluded: unladen.includes.driver }),
        ...(unladen.includes?.fuel && { fuelIncluded: unladen.includes.fuel.value }),
        centreHeightGiven: unladen.centre_height !== undefined,
        sidesGiven: unladen.front_left !== undefined,
      },
    }),
  };
}

function energyOf(van: Plan['van']): Pick<Vehicle, 'energy'> {
  const energy = van.energy ?? van.fuel_tank?.fuel;
  return energy ? { energy } : {};
}

export interface BaseVehicle {
  readonly bodies: readonly Body[];
  readonly assumptions: readonly Assumption[];
}

/** The van as it comes, as masses at its axles (or at its centre), less the fuel that was in it on the scale. */
export function baseVehicle(plan: Plan, vehicle: Vehicle): BaseVehicle {
  const assumptions: Assumption[] = [];
  const unladen = plan.van.unladen;
  const bodies = [
    ...(unladen ? unladenBodies(unladen, vehicle, assumptions) : []),
    ...fuelBodies(plan, vehicle, assumptions),
  ];
  return { bodies, assumptions };
}

function unladenBodies(unladen: Unladen, vehicle: Vehicle, assumptions: Assumption[]): Body[] {
  const path = ['van', 'unladen'];
  const z = heightOf(unladen, vehicle);
  const tolerance = limitFor('base-mass-tolerance', 'eu');
  const uncertain = unladen.from === 'brochure';
  let toleranceAssumed = false;
  const body = (
    label: string,
    key: string,
    quantity: Quantity,
    x: Coordinate | undefined,
    y: number,
  ): Body => {
    const assumeTolerance = uncertain && quantity.halfWidth === 0 && quantity.shared.length === 0;
    toleranceAssumed ||= assumeTolerance;
    // The halves of one brochure mass are wrong together, so they share their source.
    const massErrors = assumeTolerance
      ? errorsOf({ value: 0, halfWidth: tolerance.value * quantity.value, shared: [] }, 'van.unladen')
      : errorsOf(quantity, `van.unladen.${key}`);
    return {
      label,
      path: [...path, key],
      sort: 'van',
      origin: 'typed',
      massKg: quantity.value,
      massErrors,
      ...(x && { position: { x, y: fixedAt(y), z } }),
    };
  };
  const { wheelbaseM, frontTrackM = 0, rearTrackM = 0 } = vehicle;
  const frontAxle = wheelbaseM === undefined ? undefined : fixedAt(0);
  const rearAxle = wheelbaseM === undefined ? undefined : fixedAt(wheelbaseM);
  const bodies: Body[] = [];
  if (unladen.front && unladen.rear) {
    bodies.push(body('empty van, front axle', 'front', unladen.front, frontAxle, 0));
    bodies.push(body('empty van, rear axle', 'rear', unladen.rear, rearAxle, 0));
  }
  const { front_left, front_right, rear_left, rear_right } = unladen;
  if (front_left && front_right && rear_left && rear_right) {
    bodies.push(body('empty van, front left wheel', 'front_left', front_left, frontAxle, -frontTrackM / 2));
    bodies.push(body('empty van, front right wheel', 'front_right', front_right, frontAxle, frontTrackM / 2));
    bodies.push(body('empty van, rear left wheel', 'rear_left', rear_left, rearAxle, -rearTrackM / 2));
    bodies.push(body('empty van, rear right wheel', 'rear_right', rear_right, rearAxle, rearTrackM / 2));
  }
  if (unladen.mass) {
    const behind = unladen.behind_front_axle;
    const x = behind && { valueM: behind.value, errors: errorsOf(behind, 'van.unladen.behind_front_axle') };
    bodies.push(body('empty van', 'mass', unladen.mass, x, 0));
  }
  if (toleranceAssumed) {
    assumptions.push({
      path,
      text: say`empty van: within ± ${share(tolerance.value)} of the brochure mass`,
      ...(tolerance.citations[0] && { source: tolerance.citations[0] }),
    });
  }
  if (!front_left) {
    assumptions.push({
      path,
      text: say`empty van: as heavy on the left as on the right (no wheel loads are given)`,
    });
  }
  return bodies;
}

const fixedAt = (valueM: number): Coordinate => ({ valueM, errors: [] });

/** Heights count from the load bay's floor, so the van's own needs the floor's height above ground. */
function heightOf(unladen: Unladen, vehicle: Vehicle): Coordinate {
  const centre = unladen.centre_height;
  const floor = vehicle.floorAboveGround;
  if (!centre || !floor) return fixedAt(0);
  return {
    valueM: centre.value - floor.value,
    errors: [
      ...errorsOf(centre, 'van.unladen.centre_height'),
      ...errorsOf(floor, 'van.load_bay.floor_above_ground', -1),
    ],
  };
}

function fuelBodies(plan: Plan, vehicle: Vehicle, assumptions: Assumption[]): Body[] {
  const tank = plan.van.fuel_tank;
  if (!tank) {
    if (plan.van.unladen?.includes?.fuel === undefined && plan.van.energy !== 'electric') {
      assumptions.push({
        path: ['van'],
        text: say`fuel: all that the van carries is in its unladen mass (no fuel tank is given)`,
      });
    }
    return [];
  }
  const path = ['van', 'fuel_tank'];
  const named = tank.fuel ?? (plan.van.energy === 'petrol' ? 'petrol' : 'diesel');
  if (!tank.fuel) assumptions.push({ path, text: say`fuel tank: holds ${named}` });
  const fluid = fluids[named];
  const massKg = tank.holds.value * fluid.densityKgM3;
  const massErrors = [
    ...errorsOf(tank.holds, 'van.fuel_tank.holds', fluid.densityKgM3),
    ...errorsOf(
      { value: 0, halfWidth: ((fluid.highKgM3 - fluid.lowKgM3) / 2) * tank.holds.value, shared: [] },
      `fluid ${named}`,
    ),
  ];
  const position = fuelPosition(tank.at, vehicle, assumptions);
  const full: Body = {
    label: 'fuel',
    path,
    sort: 'fuel',
    origin: 'catalogue',
    massKg,
    massErrors,
    ...(position && { position }),
    variable: {
      group: 'fuel',
      name: 'fuel',
      leastKg: 0,
      mostKg: massKg,
      countedIn: 'volume',
      densityKgM3: fluid.densityKgM3,
    },
  };
  const weighed = plan.van.unladen?.includes?.fuel;
  if (weighed === undefined) {
    assumptions.push({
      path: ['van', 'unladen'],
      text: say`empty van: weighed without fuel, so a full tank comes on top`,
    });
  }
  if (!weighed?.value) return [full];
  const before = alreadyWeighed(full, weighed.value, 'fuel');
  const howFull = errorsOf(weighed, 'van.unladen.includes.fuel', -massKg);
  return [full, { ...before, massErrors: [...before.massErrors, ...howFull] }];
}

function fuelPosition(
  at: NonNullable<Plan['van']['fuel_tank']>['at'],
  vehicle: Vehicle,
  assumptions: Assumption[],
): Position | undefined {
  const { bay, wheelbaseM } = vehicle;
  if (!bay || wheelbaseM === undefined) return undefined;
  const source = 'van.fuel_tank';
  if (at) {
    const { position, assumed } = placeIn(spaceOfBay(bay), {
      name: 'fuel',
      source,
      size: undefined,
      at,
      onTop: false,
      onFloor: at.above_floor === undefined,
    });
    const below = at.above_floor ? [] : ['under the floor'];
    assumptions.push({
      path: ['van', 'fuel_tank'],
      text: say`fuel tank: ${[...assumed, ...below].join('; ')}`,
    });
    return at.above_floor ? position : { ...position, z: underFloor() };
  }
  assumptions.push({
    path: ['van', 'fuel_tank'],
    text: say`fuel tank: under the floor, somewhere between the axles`,
  });
  return {
    x: anywhere(0, wheelbaseM, `${source}.lengthways`),
    y: anywhere(-bay.widthM / 2, bay.widthM / 2, `${source}.sideways`),
    z: underFloor(),
  };
}

/** Under the floor, within a fifth of a metre either way: common practice, no source. */
const underFloor = (): Coordinate => anywhere(-0.4, 0, 'van.fuel_tank.upwards');
