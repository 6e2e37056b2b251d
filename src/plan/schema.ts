import * as z from 'zod';
import { codes } from '../catalogue/codes.ts';
import { fluidNames } from '../catalogue/fluids.ts';
import {
  amount,
  day,
  filling,
  listOf,
  named,
  oneOf,
  packRefusal,
  positive,
  quantity,
  type ReadQuantity,
  section,
  trueOrFalse,
  words,
} from './fields.ts';
import { plated } from './nameplates.ts';
import { placeField } from './place-field.ts';
import { airSchema, protectionSchema } from './schema-air.ts';
import { electricalSchema } from './schema-electrical.ts';
import { gasSchema } from './schema-gas.ts';
import { heatSchema } from './schema-heat.ts';
import { livingSchema } from './schema-living.ts';
import { waiversSchema } from './schema-waivers.ts';
import { waterSchema, wrapSchema } from './schema-water.ts';

export const surfaces = [
  'floor',
  'ceiling',
  'walls',
  'left wall',
  'right wall',
  'bulkhead',
  'rear doors',
] as const;
export const openingSurfaces = [
  'floor',
  'ceiling',
  'left wall',
  'right wall',
  'bulkhead',
  'rear doors',
] as const;
/** Surfaces that have ribs behind their lining. */
export const ribbedSurfaces = ['left wall', 'right wall', 'ceiling', 'floor'] as const;
export const openingKinds = ['door', 'window', 'vent', 'hatch'] as const;
/** What a thing is to those who live with it. */
export const uses = [
  'bed',
  'seat',
  'table',
  'worktop',
  'cooker',
  'sink',
  'toilet',
  'shower',
  'wardrobe',
] as const;
export const sides = ['front', 'rear', 'left', 'right'] as const;
export const corners = ['front left', 'front right', 'rear left', 'rear right'] as const;
/** What runs through a chase. */
export const carried = ['cable', 'water', 'gas', 'duct'] as const;
export const chaseRuns = ['inside', 'heated', 'under floor', 'outside'] as const;
/** What a chase goes through on its way. */
export const drilled = ['rib', 'member', 'floor', 'roof', 'bulkhead', 'wall'] as const;
export const energies = ['diesel', 'petrol', 'hybrid', 'electric', 'hydrogen'] as const;

/**
 * The plan's format, version 1. It is a function of how quantities are read, because an expression in one place
 * refers to `params` in another.
 */
export function planSchema(read: ReadQuantity) {
  const mass = amount(read, 'mass');
  const size = positive(read, 'length');
  const distance = quantity(read, 'length');

  const box = section(
    { length: size.optional(), width: size.optional(), height: size.optional() },
    '{length: 600 mm, width: 450 mm, height: 850 mm}',
  );

  const place = placeField(read);

  const standing = {
    size: box.optional(),
    at: place.optional(),
    in: words('wardrobe').optional(),
    on: words('floor').optional(),
  };

  /** How the room it takes differs from its box, and whether it takes any. */
  const room = {
    ...standing,
    shape: oneOf(['box', 'cylinder']).optional(),
    outline: listOf(
      section({ from_front: distance, from_left: distance }, '{from_front: 0 mm, from_left: 300 mm}'),
      '[{from_front: 0 mm, from_left: 0 mm}, {from_front: 600 mm, from_left: 0 mm}, {from_front: 0 mm, from_left: 450 mm}]',
      { least: 3, refusal: { message: 'has fewer than three corners', expected: 'at least three' } },
    ).optional(),
    cut_out: section(
      { corner: oneOf(corners), length: size, width: size },
      '{corner: rear left, length: 400 mm, width: 300 mm}',
    ).optional(),
    leans: trueOrFalse.optional(),
    solid: trueOrFalse.optional(),
    combustible: trueOrFalse.optional(),
    service_from: words('rear doors').optional(),
    fixings: section(
      { count: positive(read, 'number'), each: positive(read, 'mass') },
      '{count: 6, each: 120 kg}',
    ).optional(),
  };

  const opening = section(
    {
      kind: oneOf(['door', 'drawer', 'lid']),
      side: oneOf(sides),
      hinge: oneOf(['left', 'right']).optional(),
      width: size.optional(),
      from_left: distance.optional(),
      height: size.optional(),
      above_floor: distance.optional(),
      travel: size.optional(),
      depth: size.optional(),
    },
    '{kind: door, side: left, hinge: right, width: 400 mm}',
  );
  const around = {
    front: size.optional(),
    rear: size.optional(),
    left: size.optional(),
    right: size.optional(),
  };

  const layer = section(
    {
      material: words('birch plywood').optional(),
      thickness: positive(read, 'length').optional(),
      areal_mass: positive(read, 'arealMass').optional(),
      name: words('carpet').optional(),
      share: amount(read, 'share').optional(),
      conductivity: positive(read, 'thermalConductivity').optional(),
      vapour_resistance: positive(read, 'number').optional(),
      vapour_air_layer: positive(read, 'airLayer').optional(),
    },
    '{material: birch plywood, thickness: 6 mm}',
  );

  const fill = filling(read);
  const fills = named(fill, '{fresh tank: 100 %, passenger: aboard}');

  const van = section(
    {
      max_mass: positive(read, 'mass').optional(),
      axle_limits: section(
        { front: positive(read, 'mass'), rear: positive(read, 'mass') },
        '{front: 1850 kg, rear: 2240 kg}',
      ).optional(),
      unladen: section(
        {
          front: mass.optional(),
          rear: mass.optional(),
          front_left: mass.optional(),
          front_right: mass.optional(),
          rear_left: mass.optional(),
          rear_right: mass.optional(),
          mass: mass.optional(),
          behind_front_axle: distance.optional(),
          centre_height: positive(read, 'length').optional(),
          from: oneOf(['weighbridge', 'brochure']).optional(),
          includes: section(
            { driver: trueOrFalse.optional(), fuel: amount(read, 'share').optional() },
            '{driver: false, fuel: 90 %}',
          ).optional(),
        },
        '{front: 1190 kg, rear: 870 kg, from: weighbridge}',
      ).optional(),
      wheelbase: size.optional(),
      track: size.optional(),
      rear_track: size.optional(),
      overall_length: size.optional(),
      overall_width: size.optional(),
      exhaust: place.optional(),
      energy: oneOf(energies).optional(),
      load_bay: section(
        {
          behind_front_axle: distance,
          length: size,
          width: size,
          height: size,
          floor_above_ground: positive(read, 'length').optional(),
          profile: listOf(
            section({ above_floor: distance, width: size }, '{above_floor: 1200 mm, width: 1690 mm}'),
            '[{above_floor: 0 mm, width: 1760 mm}, {above_floor: 1800 mm, width: 1560 mm}]',
          )
            .min(1, { error: packRefusal({ message: 'has no width', expected: 'at least one' }) })
            .optional(),
          heights: listOf(
            section({ from_front: distance, height: size }, '{from_front: 3000 mm, height: 1860 mm}'),
            '[{from_front: 0 mm, height: 1900 mm}, {from_front: 3200 mm, height: 1840 mm}]',
          )
            .min(1, { error: packRefusal({ message: 'has no height', expected: 'at least one' }) })
            .optional(),
          rear_door_thickness: size.optional(),
          ribs: listOf(
            section(
              { in: oneOf(ribbedSurfaces), from_front: distance, width: size },
              '{in: left wall, from_front: 980 mm, width: 60 mm}',
            ),
            '[{in: left wall, from_front: 980 mm, width: 60 mm}]',
          ).optional(),
        },
        '{behind_front_axle: 1130 mm, length: 3270 mm, width: 1760 mm, height: 1890 mm}',
      ).optional(),
      wheel_arches: section(
        { from_front: distance, length: size, width: size, height: size.optional() },
        '{from_front: 1900 mm, length: 800 mm, width: 180 mm, height: 300 mm}',
      ).optional(),
      openings: named(
        section(
          {
            in: oneOf(openingSurfaces),
            length: size.optional(),
            width: size.optional(),
            height: size.optional(),
            kind: oneOf(openingKinds).optional(),
            at: place.optional(),
            escape: trueOrFalse.optional(),
          },
          '{in: right wall, length: 1050 mm, height: 1600 mm}',
        ),
        '{side door: {in: right wall, length: 1050 mm, height: 1600 mm}}',
      ).optional(),
      obstructions: named(
        section(
          { size: box, at: place, walkable: trueOrFalse.optional() },
          '{size: {length: 300 mm, width: 100 mm, height: 1400 mm}, at: {from_front: 0 mm, from_left: 0 mm}}',
        ),
        '{belt pillar: {size: {length: 120 mm, width: 90 mm, height: 1400 mm}, at: {from_front: 0 mm, from_left: 0 mm}}}',
      ).optional(),
      fuel_tank: section(
        {
          holds: positive(read, 'volume'),
          fuel: oneOf(['diesel', 'petrol']).optional(),
          at: place.optional(),
        },
        '{holds: 75 L, fuel: diesel}',
      ).optional(),
      centre_limits: section(
        { height: positive(read, 'length').optional(), sideways: positive(read, 'length').optional() },
        '{height: 900 mm, sideways: 40 mm}',
      ).optional(),
    },
    '{max_mass: 3500 kg}',
  );

  const seat = section(
    { mass: mass.optional(), at: place.optional(), swivel_radius: size.optional() },
    '{at: {from_front: -750 mm, from_left: 1250 mm}}',
  );
  const people = section(
    {
      mass: positive(read, 'mass').optional(),
      licence: section(
        { category: words('C1').optional(), test_passed: day.optional() },
        '{category: C1, test_passed: 2004-05-17}',
      ).optional(),
      seats: named(seat, '{driver: {mass: 82 kg}, passenger: {mass: 64 kg}}').optional(),
      sleepers: listOf(
        section({ stature: positive(read, 'length').optional() }, '{stature: 1.78 m}'),
        '[{stature: 1.78 m}]',
      ).optional(),
    },
    '{seats: {driver: {mass: 82 kg}}}',
  );

  const fixture = section(
    {
      mass: mass.optional(),
      material: words('birch plywood').optional(),
      count: positive(read, 'number').optional(),
      each: mass.optional(),
      ...room,
      is: oneOf(uses).optional(),
      opens: named(opening, '{door: {kind: door, side: left, hinge: right}}').optional(),
      needs_space: section(around, '{left: 600 mm}').optional(),
      stows: named(
        section(
          {
            size: section(
              { length: size, width: size, height: size },
              '{length: 1100 mm, width: 450 mm, height: 650 mm}',
            ),
            place: oneOf(['inside', 'underneath']).optional(),
            upright: trueOrFalse.optional(),
          },
          '{size: {length: 1100 mm, width: 450 mm, height: 650 mm}}',
        ),
        '{folding chair: {size: {length: 900 mm, width: 550 mm, height: 120 mm}}}',
      ).optional(),
      heat_clearance: section(
        { ...around, above: size.optional() },
        '{left: 150 mm, above: 400 mm}',
      ).optional(),
    },
    '{mass: 24 kg, at: {from_front: 1200 mm, from_left: 0 mm}}',
  );

  const buildUp = section(
    {
      of: oneOf(surfaces).optional(),
      area: positive(read, 'area').optional(),
      at: place.optional(),
      layers: listOf(layer, '[{material: birch plywood, thickness: 6 mm}]').min(1, {
        error: packRefusal({
          message: 'has no layers',
          expected: 'at least one, such as `{material: birch plywood, thickness: 6 mm}`',
        }),
      }),
    },
    '{of: walls, layers: [{material: birch plywood, thickness: 6 mm}]}',
  );

  const store = section(
    { full: mass, empty: mass.optional(), ...room },
    '{full: 60 kg, empty: 10 kg, in: wardrobe}',
  );

  const tank = section(
    {
      contents: oneOf(fluidNames),
      holds: positive(read, 'volume', 'mass'),
      mass: mass.optional(),
      ...room,
      usable: amount(read, 'share').optional(),
      vent: size.optional(),
      inspection: size.optional(),
      baffles: amount(read, 'number').optional(),
      drinking_water: trueOrFalse.optional(),
      insulation: wrapSchema(read).optional(),
      heated: trueOrFalse.optional(),
      filled_from: oneOf(['outside', 'inside']).optional(),
      overflows_to: oneOf(['outside', 'inside']).optional(),
      fill_rate: positive(read, 'flow').optional(),
    },
    '{contents: fresh, holds: 70 L}',
  );

  const chase = section(
    {
      between: listOf(words('battery side'), '[battery side, kitchen low]', {
        least: 2,
        most: 2,
        refusal: { message: 'does not lie between two points', expected: 'two names of points' },
      }),
      carries: listOf(oneOf(carried), '[cable, water]').min(1, {
        error: packRefusal({ message: 'carries nothing', expected: `some of ${carried.join(', ')}` }),
      }),
      runs: oneOf(chaseRuns).optional(),
      bore: size.optional(),
      through: listOf(oneOf(drilled), '[rib]').optional(),
      length: size.optional(),
    },
    '{between: [battery side, kitchen low], carries: [cable]}',
  );
  const run = section(
    {
      carries: oneOf(carried),
      from: words('electrical cupboard'),
      to: words('fridge'),
      from_point: words('battery side').optional(),
      to_point: words('kitchen low').optional(),
      diameter: size.optional(),
      count: positive(read, 'number').optional(),
      linear_mass: positive(read, 'linearMass').optional(),
      length: size.optional(),
    },
    '{carries: cable, from: electrical cupboard, to: fridge, diameter: 4 mm, count: 2}',
  );
  const routes = section(
    {
      slack: amount(read, 'share').optional(),
      points: named(
        section({ at: place }, '{at: {from_front: 1800 mm, from_left: 20 mm, above_floor: 60 mm}}'),
        '{kitchen low: {at: {from_front: 300 mm, from_right: 20 mm, above_floor: 60 mm}}}',
      ).optional(),
      chases: named(
        chase,
        '{left chase: {between: [battery side, kitchen low], carries: [cable]}}',
      ).optional(),
      runs: named(run, '{fridge supply: {carries: cable, from: electrical cupboard, to: fridge}}').optional(),
    },
    '{points: {kitchen low: {at: {from_front: 300 mm}}}}',
  );

  const ticket = section(
    {
      date: day,
      front: mass.optional(),
      rear: mass.optional(),
      total: mass.optional(),
      state: z.union([words('going away'), fills]).optional(),
      without: listOf(words('fridge'), '[fridge, bed]').optional(),
    },
    '{date: 2026-03-14, front: 1410 kg, rear: 1530 kg}',
  );

  const override = section(
    {
      limit: amount(read, 'mass', 'length', 'share', 'number', 'duration'),
      reason: words('the maker allows 6 %'),
    },
    '{limit: 5 %, reason: "the maker\'s guide, page 14"}',
  );

  return section(
    {
      storystick: z.literal('1', {
        error: ({ input }) =>
          packRefusal(
            input === undefined
              ? { message: 'the format version is missing', expected: '`storystick: 1` as the first line' }
              : { message: 'this format version is not known', expected: '`storystick: 1`' },
          ),
      }),
      name: words('Curlew, revision 4').optional(),
      codes: oneOf(codes).optional(),
      units: oneOf(['metric', 'imperial']).optional(),
      params: plated(z.unknown(), { takes: 'params' }).optional(),
      van,
      people: people.optional(),
      fixtures: named(fixture, '{bed: {mass: 24 kg}}').optional(),
      build_ups: named(
        buildUp,
        '{floor: {of: floor, layers: [{material: birch plywood, thickness: 12 mm}]}}',
      ).optional(),
      stores: named(store, '{clothes: {full: 30 kg}}').optional(),
      tanks: named(tank, '{fresh tank: {contents: fresh, holds: 70 L}}').optional(),
      routes: routes.optional(),
      water: waterSchema(read).optional(),
      gas: gasSchema(read, place).optional(),
      air: airSchema(read, place).optional(),
      heat: heatSchema(read, place).optional(),
      protection: protectionSchema(read, place).optional(),
      electrical: electricalSchema(read).optional(),
      living: livingSchema(read).optional(),
      load_states: named(fills, '{going shopping: {fresh tank: 50 %}}').optional(),
      weighed: named(ticket, '{spring: {date: 2026-03-14, total: 2940 kg}}').optional(),
      rules: named(override, '{balance.sides: {limit: 5 %, reason: "the maker allows it"}}').optional(),
      waivers: waiversSchema().optional(),
    },
    '{storystick: 1, van: {max_mass: 3500 kg}}',
  );
}

export type Plan = z.infer<ReturnType<typeof planSchema>>;
export type Place = NonNullable<NonNullable<Plan['fixtures']>[string]['at']>;
export type Box = NonNullable<NonNullable<Plan['fixtures']>[string]['size']>;
export type Fills = NonNullable<Plan['load_states']>[string];
