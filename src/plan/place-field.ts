import { quantity, type ReadQuantity, section, trueOrFalse } from './fields.ts';

export type PlaceField = ReturnType<typeof placeField>;

/** Measured as a builder measures: to the nearest face of the thing, from the inside of the load bay or its host. */
export function placeField(read: ReadQuantity) {
  const distance = quantity(read, 'length');
  return section(
    {
      from_front: distance.optional(),
      from_rear: distance.optional(),
      from_left: distance.optional(),
      from_right: distance.optional(),
      centred: trueOrFalse.optional(),
      above_floor: distance.optional(),
    },
    '{from_front: 1200 mm, from_left: 0 mm, above_floor: 0 mm}',
  );
}
