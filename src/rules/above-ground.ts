import type { PlacedBody } from '../build/body.ts';
import { errorsOf } from '../build/errors.ts';
import type { Quantity } from '../plan/quantity.ts';

/**
 * The same bodies with their heights counted from the ground. Everything stands on the floor, so what is unsure of the
 * floor's height lifts all of it together; the empty van's own centre was given above ground and is not touched by it.
 */
export function aboveGround(bodies: readonly PlacedBody[], floor: Quantity): readonly PlacedBody[] {
  const errors = errorsOf(floor, 'van.load_bay.floor_above_ground');
  return bodies.map((body) => {
    const { x, y, z } = body.position;
    return {
      ...body,
      position: { x, y, z: { valueM: z.valueM + floor.value, errors: [...z.errors, ...errors] } },
    };
  });
}
