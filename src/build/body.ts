import type { Kind } from '../engine/measure.ts';

/** A part of a value's uncertainty. Errors of the same source are the same error: they add with their signs. */
export interface ErrorTerm {
  readonly source: string;
  /** Standard uncertainty in the value's own unit, signed by the direction in which the source moves the value. */
  readonly standard: number;
}

/** Where a value comes from. */
export type Origin = 'typed' | 'catalogue' | 'computed' | 'assumed';

/** One coordinate with its errors. */
export interface Coordinate {
  readonly valueM: number;
  readonly errors: readonly ErrorTerm[];
}

/**
 * Where a mass acts. Users never see these axes: `x` is behind the front axle's centre, `y` right of the centre
 * line (facing forward), `z` above the load bay's floor. Right-handed, ISO 8855 turned half round about z.
 */
export interface Position {
  readonly x: Coordinate;
  readonly y: Coordinate;
  readonly z: Coordinate;
}

/** What makes a mass vary in use. Fresh and waste water share one supply: what was carried aboard. */
export type VariableGroup = 'fresh' | 'waste' | 'fuel' | 'gas' | 'stores' | 'people';

export interface Variable {
  readonly group: VariableGroup;
  /** The thing's name in the plan. */
  readonly name: string;
  readonly leastKg: number;
  readonly mostKg: number;
  /** Litres or kilograms, as a tank's owner counts. */
  readonly countedIn: Extract<Kind, 'volume' | 'mass'>;
  /** For tanks: kilograms a cubic metre. */
  readonly densityKgM3?: number;
}

export type BodySort =
  | 'van'
  | 'person'
  | 'fixture'
  | 'build-up'
  | 'store'
  | 'tank'
  | 'contents'
  | 'fuel'
  | 'run';

/** A mass at a place. */
export interface Body {
  /** The name a reader knows it by. */
  readonly label: string;
  readonly path: readonly (string | number)[];
  readonly sort: BodySort;
  readonly origin: Origin;
  /** The mass; for a variable body the greatest. */
  readonly massKg: number;
  readonly massErrors: readonly ErrorTerm[];
  readonly position?: Position | undefined;
  /** The name of the thing it stands in or on. */
  readonly host?: string | undefined;
  readonly variable?: Variable | undefined;
}

/** A body whose place is known, as every balance needs it. */
export type PlacedBody = Body & { readonly position: Position };

export const isPlaced = (body: Body): body is PlacedBody => body.position !== undefined;
