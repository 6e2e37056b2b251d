import { amount, listOf, positive, quantity, type ReadQuantity, section } from './fields.ts';

/** How and where its people live in the van: what the electrical year is worked out for. */
export function livingSchema(read: ReadQuantity) {
  const degrees = quantity(read, 'number');
  return section(
    {
      nights_off_grid: positive(read, 'number').optional(),
      place: section(
        { latitude: degrees, longitude: degrees },
        '{latitude: 54.6, longitude: -3.1}',
      ).optional(),
      sun: listOf(amount(read, 'irradiation'), '[0.5 kWh/m2, 1.1 kWh/m2, 2.2 kWh/m2]', {
        least: 12,
        most: 12,
        refusal: {
          message: 'does not have one value for each month',
          expected: 'twelve, January first: the mean of a day in each month',
        },
      }).optional(),
      driving: amount(read, 'duration').optional(),
      shore_nights: amount(read, 'number').optional(),
      winter_low: quantity(read, 'temperature').optional(),
      cold_spell: positive(read, 'duration').optional(),
      summer_high: quantity(read, 'temperature').optional(),
      parking_slope: amount(read, 'share').optional(),
      days_between_fills: positive(read, 'number').optional(),
      litres_per_person_day: positive(read, 'volume').optional(),
      hot_litres_per_person_day: amount(read, 'volume').optional(),
      showers_per_person_day: amount(read, 'number').optional(),
      litres_per_shower: positive(read, 'volume').optional(),
      cooking: amount(read, 'duration').optional(),
      asleep: positive(read, 'duration').optional(),
      wet_clothes: amount(read, 'volume').optional(),
      days_between_gas_refills: positive(read, 'number').optional(),
    },
    '{nights_off_grid: 3, place: {latitude: 54.6, longitude: -3.1}}',
  );
}
