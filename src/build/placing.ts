import type { Quantity } from '../plan/quantity.ts';
import type { Box, Place } from '../plan/schema.ts';
import type { Coordinate, ErrorTerm, Position } from './body.ts';
import { anywhere, errorsOf } from './errors.ts';

/** The inside of the load bay. */
export interface LoadBay {
  readonly behindFrontAxleM: number;
  /** Of where it begins; everything in it is out by the same. */
  readonly startErrors: readonly ErrorTerm[];
  readonly lengthM: number;
  readonly widthM: number;
  readonly heightM: number;
}

/** One dimension of a thing: its near face, its extent where known, and the errors of where the face is. */
interface Extent {
  readonly startM: number;
  readonly lengthM: number | undefined;
  readonly errors: readonly ErrorTerm[];
}

/** A space that things stand in: the load bay, or a thing that holds others. */
export interface Space {
  /** Undefined for the load bay itself. */
  readonly name?: string;
  readonly x: Extent;
  readonly y: Extent;
  readonly z: Extent;
}

export interface Placed {
  readonly position: Position;
  readonly space: Space;
  /** What had to be assumed, in words that follow the thing's name. */
  readonly assumed: readonly string[];
  /** Keys of the thing that the plan would have to give for its room to be known. */
  readonly missing: readonly string[];
}

export const spaceOfBay = (bay: LoadBay): Space => ({
  x: { startM: bay.behindFrontAxleM, lengthM: bay.lengthM, errors: bay.startErrors },
  y: { startM: -bay.widthM / 2, lengthM: bay.widthM, errors: [] },
  z: { startM: 0, lengthM: bay.heightM, errors: [] },
});

interface Standing {
  readonly name: string;
  readonly source: string;
  readonly size: Box | undefined;
  readonly at: Place | undefined;
  /** It stands on top of the space rather than inside it. */
  readonly onTop: boolean;
  /** The plan says that it stands on the floor. */
  readonly onFloor?: boolean;
}

/** Places a thing in a space. Where the plan is silent, the thing may be anywhere the space allows. */
export function placeIn(space: Space, standing: Standing): Placed {
  const { size, at, source } = standing;
  const assumed: string[] = [];
  const x = along(
    space.x,
    size?.length,
    { fromStart: at?.from_front, fromEnd: at?.from_rear, centred: false },
    `${source}.lengthways`,
  );
  const y = along(
    space.y,
    size?.width,
    { fromStart: at?.from_left, fromEnd: at?.from_right, centred: at?.centred === true },
    `${source}.sideways`,
  );
  const z = upwards(space, standing);
  if (x.guessed && y.guessed) assumed.push(`somewhere in ${nameOf(space)}, taken at its middle`);
  else if (x.guessed) assumed.push('somewhere along the length, taken at the middle');
  else if (y.guessed) assumed.push('somewhere across the width, taken at the middle');
  if (z.guessed !== undefined) assumed.push(z.guessed);
  if (!size && (at?.from_front ?? at?.from_rear ?? at?.from_left ?? at?.from_right)) {
    assumed.push('a point at the place given, since it has no size');
  }
  return {
    position: { x: x.centre, y: y.centre, z: z.centre },
    space: { name: standing.name, x: x.extent, y: y.extent, z: z.extent },
    assumed,
    missing: [
      ...(['length', 'width', 'height'] as const)
        .filter((side) => size?.[side] === undefined)
        .map((side) => `size.${side}`),
      ...(x.guessed ? ['at.from_front'] : []),
      ...(y.guessed ? ['at.from_left'] : []),
    ],
  };
}

/** Anywhere in a space, for what has no place of its own. */
export const somewhereIn = (space: Space, source: string): Position =>
  placeIn(space, { name: '', source, size: undefined, at: undefined, onTop: false }).position;

const nameOf = (space: Space): string => space.name ?? 'the load bay';

interface Offsets {
  readonly fromStart: Quantity | undefined;
  readonly fromEnd: Quantity | undefined;
  readonly centred: boolean;
}

interface OneAxis {
  readonly centre: Coordinate;
  readonly extent: Extent;
  readonly guessed: boolean;
}

function along(
  host: Extent,
  size: Quantity | undefined,
  { fromStart, fromEnd, centred }: Offsets,
  source: string,
): OneAxis {
  const lengthM = size?.value;
  const halfM = (lengthM ?? 0) / 2;
  const half = size ? errorsOf(size, `${source}.size`, 0.5) : [];
  const placed = (centreM: number, errors: readonly ErrorTerm[], guessed: boolean): OneAxis => ({
    centre: { valueM: centreM, errors },
    extent: { startM: centreM - halfM, lengthM, errors },
    guessed,
  });
  if (fromStart) {
    return placed(
      host.startM + fromStart.value + halfM,
      [...host.errors, ...errorsOf(fromStart, source), ...half],
      false,
    );
  }
  if (fromEnd && host.lengthM !== undefined) {
    const centreM = host.startM + host.lengthM - fromEnd.value - halfM;
    const away = [
      ...errorsOf(fromEnd, source, -1),
      ...half.map((term) => ({ ...term, standard: -term.standard })),
    ];
    return placed(centreM, [...host.errors, ...away], false);
  }
  const hostLengthM = host.lengthM ?? 0;
  const middleM = host.startM + hostLengthM / 2;
  if (centred) return placed(middleM, host.errors, false);
  const spare = anywhere(0, Math.max(0, hostLengthM - halfM * 2), source);
  return placed(middleM, [...host.errors, ...spare.errors], true);
}

function upwards(
  space: Space,
  { size, at, source, onTop, onFloor }: Standing,
): Omit<OneAxis, 'guessed'> & { readonly guessed: string | undefined } {
  const heightM = size?.height?.value;
  const baseM = space.z.startM + (onTop ? (space.z.lengthM ?? 0) : 0);
  const placed = (bottomM: number, errors: readonly ErrorTerm[], guessed: string | undefined) => ({
    centre: { valueM: bottomM + (heightM ?? 0) / 2, errors },
    extent: { startM: bottomM, lengthM: heightM, errors },
    guessed,
  });
  const above = `${source}.upwards`;
  if (at?.above_floor) {
    return placed(
      baseM + at.above_floor.value,
      [...space.z.errors, ...errorsOf(at.above_floor, above)],
      undefined,
    );
  }
  if (onTop || onFloor) return placed(baseM, space.z.errors, undefined);
  if (heightM !== undefined) {
    return placed(baseM, space.z.errors, space.name === undefined ? 'standing on the floor' : undefined);
  }
  const height = anywhere(baseM, baseM + (space.z.lengthM ?? 0), above);
  return placed(height.valueM, [...space.z.errors, ...height.errors], 'at any height, taken at the middle');
}
