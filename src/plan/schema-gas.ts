import {
  amount,
  day,
  listOf,
  named,
  oneOf,
  positive,
  type ReadQuantity,
  section,
  trueOrFalse,
  words,
} from './fields.ts';
import type { PlaceField } from './place-field.ts';

export const gasStores = ['cylinders', 'fixed tank'] as const;
export const gasPipeMaterials = [
  'copper',
  'steel',
  'stainless steel',
  'corrugated stainless steel',
  'hose',
] as const;
/** Where an appliance takes its air from and gives its products to. */
export const flues = ['room-sealed', 'open-flued', 'flueless'] as const;
export const heatingValues = ['net', 'gross'] as const;
export const applianceUses = ['cooking', 'water heating', 'room heating', 'refrigerator'] as const;

/** The gas installation of a plan. The gas itself stands under `tanks`, with `contents: propane` or `butane`. */
export function gasSchema(read: ReadQuantity, place: PlaceField) {
  const length = positive(read, 'length');
  const area = positive(read, 'area');
  const appliance = section(
    {
      thing: words('hob').optional(),
      use: oneOf(applianceUses).optional(),
      input: positive(read, 'power', 'massFlow').optional(),
      heating_value: oneOf(heatingValues).optional(),
      flue: oneOf(flues).optional(),
      flame_failure: trueOrFalse.optional(),
      isolating_valve: trueOrFalse.optional(),
      pressure: positive(read, 'pressure').optional(),
      exhaust: place.optional(),
    },
    '{thing: hob, use: cooking, input: 3.2 kW, heating_value: gross, flue: flueless, flame_failure: true, isolating_valve: true}',
  );
  const pipe = section(
    {
      from: words('regulator'),
      to: words('manifold'),
      run: words('gas to hob').optional(),
      length: length.optional(),
      material: oneOf(gasPipeMaterials).optional(),
      size: length.optional(),
      wall: length.optional(),
      bore: length.optional(),
      bends: amount(read, 'number').optional(),
      tees: amount(read, 'number').optional(),
      hidden_joints: amount(read, 'number').optional(),
    },
    '{from: regulator, to: manifold, run: gas to hob, material: copper, size: 8 mm, wall: 1 mm}',
  );
  const locker = section(
    {
      thing: words('gas locker').optional(),
      sealed: trueOrFalse.optional(),
      opens: oneOf(['outside', 'inside']).optional(),
      low_vent: area.optional(),
      high_vent: area.optional(),
      vent: place.optional(),
      source_of_ignition: trueOrFalse.optional(),
    },
    '{thing: gas locker, sealed: true, opens: outside, low_vent: 100 cm2}',
  );
  return section(
    {
      stored_in: oneOf(gasStores).optional(),
      in_use: positive(read, 'number').optional(),
      upright: trueOrFalse.optional(),
      locker: locker.optional(),
      regulator: section(
        {
          pressure: positive(read, 'pressure'),
          capacity: positive(read, 'massFlow').optional(),
          dated: day.optional(),
        },
        '{pressure: 30 mbar, capacity: 1.5 kg/h, dated: 2025-04-01}',
      ).optional(),
      hoses: named(
        section({ length: length.optional(), dated: day.optional() }, '{length: 450 mm, dated: 2025-04-01}'),
        '{cylinder hose: {length: 450 mm, dated: 2025-04-01}}',
      ).optional(),
      manifold: section({ thing: words('gas valves').optional() }, '{thing: gas valves}').optional(),
      tees: listOf(words('tee at the hob'), '[tee at the hob]').optional(),
      pipes: named(
        pipe,
        '{to the hob: {from: regulator, to: hob, material: copper, size: 8 mm, wall: 1 mm}}',
      ).optional(),
      appliances: named(appliance, '{hob: {thing: hob, use: cooking, input: 3.2 kW}}').optional(),
      drop_outs: named(
        section(
          { in: words('kitchen unit').optional(), area: area.optional(), at: place.optional() },
          '{in: kitchen unit, area: 20 cm2}',
        ),
        '{under the hob: {in: kitchen unit, area: 20 cm2}}',
      ).optional(),
      filled_from: oneOf(['outside', 'inside']).optional(),
      tightness_test: trueOrFalse.optional(),
    },
    '{regulator: {pressure: 30 mbar}, appliances: {hob: {thing: hob, use: cooking, input: 3.2 kW}}}',
  );
}
