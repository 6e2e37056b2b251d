import { day, named, oneOf, positive, type ReadQuantity, section, trueOrFalse, words } from './fields.ts';
import type { PlaceField } from './place-field.ts';
import { alarmKinds } from './schema-electrical.ts';

export const ventSurfaces = [
  'ceiling',
  'left wall',
  'right wall',
  'floor',
  'bulkhead',
  'rear doors',
] as const;
export const ventLevels = ['high', 'low'] as const;
export const fanDirections = ['intake', 'exhaust'] as const;
export const extinguisherKinds = ['dry powder', 'foam', 'water mist', 'carbon dioxide'] as const;

/** How the air of the living space is changed. */
export function airSchema(read: ReadQuantity, place: PlaceField) {
  const vent = section(
    {
      opening: words('roof fan').optional(),
      in: oneOf(ventSurfaces).optional(),
      free_area: positive(read, 'area'),
      level: oneOf(ventLevels).optional(),
      closes: trueOrFalse.optional(),
      serves: words('wardrobe').optional(),
      at: place.optional(),
    },
    '{in: ceiling, free_area: 120 cm2, level: high}',
  );
  const fan = section(
    {
      thing: words('roof fan').optional(),
      vent: words('roof vent').optional(),
      blows: oneOf(fanDirections).optional(),
      flow: positive(read, 'flow').optional(),
      pressure: positive(read, 'pressure').optional(),
      serves: words('wardrobe').optional(),
    },
    '{vent: roof vent, blows: exhaust, flow: 600 m3/h, pressure: 60 Pa}',
  );
  return section(
    {
      vents: named(vent, '{roof vent: {in: ceiling, free_area: 120 cm2, level: high}}').optional(),
      fans: named(fan, '{roof fan: {vent: roof vent, blows: exhaust, flow: 600 m3/h}}').optional(),
    },
    '{vents: {roof vent: {in: ceiling, free_area: 120 cm2, level: high}}}',
  );
}

/** What warns of gas, carbon monoxide and fire, and what puts a fire out. */
export function protectionSchema(read: ReadQuantity, place: PlaceField) {
  return section(
    {
      alarms: named(
        section(
          {
            kind: oneOf(alarmKinds),
            thing: words('alarms').optional(),
            at: place.optional(),
            replace_by: day.optional(),
          },
          '{kind: carbon monoxide alarm, at: {from_front: 1900 mm, from_left: 60 mm, above_floor: 1250 mm}}',
        ),
        '{carbon monoxide: {kind: carbon monoxide alarm}}',
      ).optional(),
      extinguisher: section(
        {
          kind: oneOf(extinguisherKinds).optional(),
          holds: positive(read, 'mass').optional(),
          thing: words('fire extinguisher').optional(),
        },
        '{kind: dry powder, holds: 2 kg, thing: fire extinguisher}',
      ).optional(),
      fire_blanket: section(
        { thing: words('fire blanket').optional(), at: place.optional() },
        '{at: {from_front: 1300 mm, from_right: 0 mm, above_floor: 1200 mm}}',
      ).optional(),
    },
    '{alarms: {carbon monoxide: {kind: carbon monoxide alarm}}}',
  );
}
