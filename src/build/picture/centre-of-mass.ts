import { type Phrase, say } from '../../engine/phrase.ts';
import { type Body, isPlaced } from '../body.ts';
import type { Build, Filling } from '../build.ts';
import { ratioOf } from '../functional.ts';
import { momentBehindFrontAxle, momentOfHeight, momentRightOfCentre, totalMass } from '../quantities.ts';

/** Where the centre of mass is, in the axes of the load bay, and in which state. */
export interface CentreOfMass {
  readonly xM: number;
  readonly yM: number;
  /** Above the floor; unknown where the plan does not say how high the empty van's own is. */
  readonly zM?: number;
  readonly state: Phrase;
}

/** The centre with everything full and everybody aboard, or why there is none. */
export function centreOfMass(build: Build): CentreOfMass | { readonly missing: readonly string[] } {
  const { vehicle } = build;
  const bodies = build.bodies.filter(isPlaced);
  const unplaced = build.bodies.filter((body) => !isPlaced(body));
  const emptyKg = build.bodies.filter(isOfEmptyVan).reduce((sum, { massKg }) => sum + massKg, 0);
  const missing = [
    ...(emptyKg > 0 ? [] : ['van.unladen']),
    ...(unplaced.some(isOfEmptyVan) ? [placeKeyOf(build)] : []),
    ...(vehicle.wheelbaseM === undefined && unplaced.some((body) => !isOfEmptyVan(body))
      ? ['van.wheelbase']
      : []),
  ];
  const { bay } = vehicle;
  const keys = [...new Set(missing)];
  if (keys.length > 0 || unplaced.length > 0 || !bay)
    return { missing: keys.length > 0 ? keys : ['van.load_bay'] };
  const filling = fullOf(bodies);
  const hasWaste = bodies.some(({ variable }) => variable?.group === 'waste');
  const isHeightKnown = vehicle.unladen?.centreHeightGiven === true && vehicle.floorAboveGround !== undefined;
  return {
    xM: ratioOf(bodies, momentBehindFrontAxle, totalMass, filling) - bay.behindFrontAxleM,
    yM: ratioOf(bodies, momentRightOfCentre, totalMass, filling),
    ...(isHeightKnown && { zM: ratioOf(bodies, momentOfHeight, totalMass, filling) }),
    state: hasWaste
      ? say`everything full, waste tanks empty, everybody aboard`
      : say`everything full, everybody aboard`,
  };
}

const isOfEmptyVan = ({ path }: Body): boolean => path[0] === 'van' && path[1] === 'unladen';

/** The empty van given as one mass needs to be told its place; axle loads have theirs, given the wheelbase. */
const placeKeyOf = ({ bodies, vehicle }: Build): string =>
  vehicle.wheelbaseM !== undefined && bodies.some(({ path }) => path.at(-1) === 'mass')
    ? 'van.unladen.behind_front_axle'
    : 'van.wheelbase';

/** As a load state of the plan that names nothing: waste tanks are empty, all else is full. */
const fullOf = (bodies: readonly Body[]): Filling =>
  new Map(
    bodies.flatMap(({ variable }) =>
      variable
        ? [[variable.name, variable.group === 'waste' ? variable.leastKg : variable.mostKg] as const]
        : [],
    ),
  );
