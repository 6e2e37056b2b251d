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

  /** Measured as a builder measures: to the nearest face of the thing, from the inside of the load bay or its host. */
  const place = section(
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

  const standing = {
    size: box.optional(),
    at: place.optional(),
    in: words('wardrobe').optional(),
    on: words('floor').optional(),
  };

  const layer = section(
    {
      material: words('birch plywood').optional(),
      thickness: positive(read, 'length').optional(),
      areal_mass: positive(read, 'arealMass').optional(),
      name: words('carpet').optional(),
      share: amount(read, 'share').optional(),
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
      energy: oneOf(energies).optional(),
      load_bay: section(
        {
          behind_front_axle: distance,
          length: size,
          width: size,
          height: size,
          floor_above_ground: positive(read, 'length').optional(),
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
          },
          '{in: right wall, length: 1050 mm, height: 1600 mm}',
        ),
        '{side door: {in: right wall, length: 1050 mm, height: 1600 mm}}',
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
    { mass: mass.optional(), at: place.optional() },
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
      ...standing,
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
    { full: mass, empty: mass.optional(), ...standing },
    '{full: 60 kg, empty: 10 kg, in: wardrobe}',
  );

  const tank = section(
    {
      contents: oneOf(fluidNames),
      holds: positive(read, 'volume', 'mass'),
      mass: mass.optional(),
      ...standing,
    },
    '{contents: fresh, holds: 70 L}',
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
    { limit: amount(read, 'mass', 'length', 'share', 'number'), reason: words('the maker allows 6 %') },
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
      params: z.unknown().optional(),
      van,
      people: people.optional(),
      fixtures: named(fixture, '{bed: {mass: 24 kg}}').optional(),
      build_ups: named(
        buildUp,
        '{floor: {of: floor, layers: [{material: birch plywood, thickness: 12 mm}]}}',
      ).optional(),
      stores: named(store, '{clothes: {full: 30 kg}}').optional(),
      tanks: named(tank, '{fresh tank: {contents: fresh, holds: 70 L}}').optional(),
      load_states: named(fills, '{going shopping: {fresh tank: 50 %}}').optional(),
      weighed: named(ticket, '{spring: {date: 2026-03-14, total: 2940 kg}}').optional(),
      rules: named(override, '{balance.sides: {limit: 5 %, reason: "the maker allows it"}}').optional(),
    },
    '{storystick: 1, van: {max_mass: 3500 kg}}',
  );
}

export type Plan = z.infer<ReturnType<typeof planSchema>>;
export type Place = NonNullable<NonNullable<Plan['fixtures']>[string]['at']>;
export type Box = NonNullable<NonNullable<Plan['fixtures']>[string]['size']>;
export type Fills = NonNullable<Plan['load_states']>[string];
