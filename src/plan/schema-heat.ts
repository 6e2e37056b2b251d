import {
  amount,
  named,
  oneOf,
  positive,
  quantity,
  type ReadQuantity,
  section,
  trueOrFalse,
  words,
} from './fields.ts';
import type { PlaceField } from './place-field.ts';
import { flues } from './schema-gas.ts';
import { heatSources } from './schema-water.ts';

export const paneKinds = ['single glass', 'double glass', 'single acrylic', 'double acrylic'] as const;
export const cabKinds = ['open', 'curtain', 'insulated cover', 'bulkhead'] as const;

/** What keeps the living space warm, and where it loses what it is given. The layers stand under `build_ups`. */
export function heatSchema(read: ReadQuantity, place: PlaceField) {
  const uValue = positive(read, 'thermalTransmittance');
  const length = positive(read, 'length');
  const heater = section(
    {
      thing: words('air heater').optional(),
      output: positive(read, 'power').optional(),
      heated_by: oneOf(heatSources).optional(),
      efficiency: amount(read, 'share').optional(),
      flue: oneOf(flues).optional(),
      exhaust: place.optional(),
      combustion_air: place.optional(),
      circuit: words('air heater').optional(),
      duct_limit: length.optional(),
      duct_outlets_limit: positive(read, 'number').optional(),
    },
    '{thing: air heater, output: 2 kW, heated_by: diesel, efficiency: 85 %, flue: room-sealed}',
  );
  return section(
    {
      inside: quantity(read, 'temperature').optional(),
      asleep: quantity(read, 'temperature').optional(),
      air_changes_per_hour: amount(read, 'number').optional(),
      skin: section(
        { material: words('steel').optional(), thickness: length.optional() },
        '{material: steel, thickness: 1 mm}',
      ).optional(),
      ribs: section(
        {
          depth: length.optional(),
          metal: length.optional(),
          covered_by: section(
            { material: words('elastomeric foam'), thickness: length },
            '{material: elastomeric foam, thickness: 10 mm}',
          ).optional(),
        },
        '{depth: 45 mm, metal: 1.2 mm}',
      ).optional(),
      panes: named(
        section(
          { kind: oneOf(paneKinds).optional(), u_value: uValue.optional(), cover: trueOrFalse.optional() },
          '{kind: double acrylic}',
        ),
        '{kitchen window: {kind: double acrylic}}',
      ).optional(),
      cab: section(
        { closed_by: oneOf(cabKinds), area: positive(read, 'area').optional(), u_value: uValue.optional() },
        '{closed_by: insulated cover}',
      ).optional(),
      heater: heater.optional(),
      ducts: named(
        section(
          {
            run: words('warm air duct').optional(),
            length: length.optional(),
            bore: length.optional(),
            outlets: amount(read, 'number').optional(),
          },
          '{run: warm air duct, bore: 60 mm, outlets: 1}',
        ),
        '{warm air: {run: warm air duct, bore: 60 mm, outlets: 1}}',
      ).optional(),
      warms_up_in: positive(read, 'duration').optional(),
    },
    '{inside: 20 degC, heater: {output: 2 kW, heated_by: diesel}}',
  );
}
