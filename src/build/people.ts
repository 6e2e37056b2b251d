import { type Codes, personMass } from '../catalogue/codes.ts';
import type { Assumption, PlanPath } from '../engine/finding.ts';
import { length, mass } from '../engine/measure.ts';
import { say } from '../engine/phrase.ts';
import { placedThings } from '../plan/cross-check.ts';
import type { Place, Plan } from '../plan/schema.ts';
import { alreadyWeighed } from './already-weighed.ts';
import type { Body, Position } from './body.ts';
import { anywhere, errorsOf } from './errors.ts';
import { type LoadBay, placeIn, spaceOfBay } from './placing.ts';

interface Seat {
  readonly name: string;
  readonly path: PlanPath;
  readonly mass: NonNullable<NonNullable<Plan['people']>['seats']>[string]['mass'];
  readonly at: Place | undefined;
}

export interface Aboard {
  readonly bodies: readonly Body[];
  readonly persons: number;
  readonly assumptions: readonly Assumption[];
}

/** Height of a seated person's centre of mass above the floor: common practice, no source; wide on purpose. */
const seatedCentreM = { lowest: 0.4, highest: 0.9 };

/** The driver, always aboard, and everyone else who may ride along. */
export function peopleAboard(plan: Plan, bay: LoadBay | undefined): Aboard {
  const assumptions: Assumption[] = [];
  const seats = seatsOf(plan, assumptions);
  const usual = plan.people?.mass;
  const region = personMass[plan.codes ?? 'eu'];
  const driverIncluded = plan.van.unladen?.includes?.driver === true;
  if (plan.van.unladen && plan.van.unladen.includes?.driver === undefined) {
    assumptions.push({ path: ['van', 'unladen'], text: say`empty van: weighed without the driver` });
  }
  const bodies = seats.flatMap((seat): Body[] => {
    const isDriver = seat.name === 'driver';
    // A driver who sat in the van on the scale is in the unladen mass, and counts only where he may be missing.
    if (isDriver && driverIncluded && !driverMayBeAbsent(plan)) return [];
    const given = seat.mass ?? usual;
    if (!given) {
      assumptions.push({
        path: seat.path,
        text: say`${seat.name}: ${mass(region.massKg)}, since no mass is given`,
        source: region.citation,
      });
    }
    const massKg = given?.value ?? region.massKg;
    const position = bay && seatPosition(seat, bay, plan.codes, assumptions);
    const body: Body = {
      label: seat.name,
      path: seat.path,
      sort: 'person',
      origin: given ? 'typed' : 'assumed',
      massKg,
      massErrors: given ? errorsOf(given, sourceOf(seat)) : [],
      ...(position ? { position } : {}),
      variable: {
        group: 'people',
        name: seat.name,
        leastKg: isDriver ? massKg : 0,
        mostKg: massKg,
        countedIn: 'mass',
      },
    };
    return isDriver && driverIncluded ? [body, alreadyWeighed(body, 1, 'driver')] : [body];
  });
  return { bodies, persons: seats.length, assumptions };
}

/** On a weighbridge the driver may have got out; on the road he is always there. */
const driverMayBeAbsent = (plan: Plan): boolean =>
  plan.weighed !== undefined ||
  Object.values(plan.load_states ?? {}).some((fills) => Object.hasOwn(fills, 'driver'));

/** Where the errors of a seat come from, by the name of who sits there. */
const sourceOf = ({ name }: Seat): string => `people.seats.${name}`;

function seatsOf(plan: Plan, assumptions: Assumption[]): readonly Seat[] {
  const given = Object.entries(plan.people?.seats ?? {}).map(
    ([name, seat]): Seat => ({ name, path: ['people', 'seats', name], mass: seat.mass, at: seat.at }),
  );
  const seats = given.some((seat) => seat.name === 'driver')
    ? given
    : [{ name: 'driver', path: ['people', 'seats'], mass: undefined, at: undefined }, ...given];
  const sleepers = plan.people?.sleepers?.length ?? 0;
  if (given.length > 0 || sleepers <= 1) return seats;
  const riders = Array.from({ length: sleepers - 1 }, (_, index): Seat => {
    const name = unused(index === 0 ? 'passenger' : `passenger ${index + 1}`, plan);
    return { name, path: ['people', 'sleepers', index + 1], mass: undefined, at: undefined };
  });
  assumptions.push({
    path: ['people', 'sleepers'],
    text: say`everyone who sleeps in the van also rides in it (no seats are given)`,
  });
  return [...seats, ...riders];
}

/** A load state goes by names, so what the plan does not name may not be called after something that it does. */
function unused(name: string, plan: Plan): string {
  const taken = placedThings(plan).some((thing) => thing.name === name);
  return taken ? unused(`unnamed ${name}`, plan) : name;
}

/** Seats are placed like anything else, from the front of the load bay; the cab lies at negative distances. */
function seatPosition(
  seat: Seat,
  bay: LoadBay,
  codes: Codes | undefined,
  assumptions: Assumption[],
): Position {
  const source = sourceOf(seat);
  const { position } = placeIn(spaceOfBay(bay), {
    name: seat.name,
    source,
    size: undefined,
    at: seat.at,
    onTop: false,
  });
  const alongGiven = seat.at?.from_front ?? seat.at?.from_rear;
  const sideGiven = seat.at?.from_left ?? seat.at?.from_right ?? (seat.at?.centred ? true : undefined);
  const guesses: string[] = [];
  if (!alongGiven) guesses.push('between the front axle and the load bay');
  const side = cabSide(seat.name, codes);
  if (!sideGiven) guesses.push(side === 0 ? 'across the middle' : `on the ${side > 0 ? 'right' : 'left'}`);
  if (guesses.length > 0) {
    assumptions.push({
      path: seat.path,
      text: say`${seat.name}: sits ${guesses.join(', ')} (no place is given)`,
    });
  }
  if (!seat.at?.above_floor) {
    const { lowest, highest } = seatedCentreM;
    assumptions.push({
      path: seat.path,
      text: say`${seat.name}: centre of mass ${length(lowest)} to ${length(highest)} above the floor`,
    });
  }
  return {
    x: alongGiven ? position.x : anywhere(0, bay.behindFrontAxleM, `${source}.lengthways`),
    y: sideGiven
      ? position.y
      : anywhere((side - 0.5) * (bay.widthM / 4), (side + 0.5) * (bay.widthM / 4), `${source}.sideways`),
    z: seat.at?.above_floor
      ? position.z
      : anywhere(seatedCentreM.lowest, seatedCentreM.highest, `${source}.upwards`),
  };
}

/** The driver sits on the right where the traffic keeps left. */
function cabSide(name: string, codes: Codes | undefined): -1 | 0 | 1 {
  if (codes === undefined) return 0;
  const driver = codes === 'uk' || codes === 'au' ? 1 : -1;
  if (name === 'driver') return driver;
  return name === 'passenger' ? (driver === 1 ? -1 : 1) : 0;
}
