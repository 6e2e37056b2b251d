import type { Citation } from '../citation.ts';
import {
  burningWater,
  humidityClasses,
  humidityClassFive,
  moistureCaravan,
  moistureGerman,
  moistureNewZealand,
  moistureTable,
  moistureUs,
} from './sources.ts';

/*
 * Water vapour that living sets free. Sources differ by a factor of two and more, for cooking by thirty; the range is
 * kept, and the value is a middle or the stricter one, as each row says.
 */

export const moistureIds = [
  'person-asleep',
  'person-sitting',
  'person-active',
  'person-at-hard-work',
  'cooking',
  'cooking-day',
  'dishwashing-day',
  'showering',
  'shower',
  'washing-dripping',
  'washing-spun',
  'washing-load',
  'plant',
  'pet',
  'propane-burnt',
  'butane-burnt',
] as const;
export type MoistureId = (typeof moistureIds)[number];

export interface MoistureRow {
  /** kg/s while it lasts; kg each time, each day for each person, or for each kg of gas. */
  readonly unit: 'kg/s' | 'kg each' | 'kg a day and person' | 'kg/kg';
  readonly low: number;
  readonly value: number;
  readonly high: number;
  readonly citations: readonly Citation[];
  readonly caution?: string;
}

/** g/h to kg/s. */
const gramsAnHour = (grams: number): number => grams / 1000 / 3600;

const hourly = (
  [low, value, high]: readonly [number, number, number],
  citations: readonly Citation[],
  caution?: string,
): MoistureRow => ({
  unit: 'kg/s',
  low: gramsAnHour(low),
  value: gramsAnHour(value),
  high: gramsAnHour(high),
  citations,
  ...(caution !== undefined && { caution }),
});

export const moistureRows: Readonly<Record<MoistureId, MoistureRow>> = {
  'person-asleep': hourly(
    [30, 50, 50],
    [moistureNewZealand, moistureGerman, moistureCaravan],
    'The stricter end: one code of practice has 50 g/h, German pages and caravan handbooks 30 to 35.',
  ),
  'person-sitting': hourly([35, 50, 60], [moistureTable, moistureGerman, moistureCaravan]),
  'person-active': hourly([60, 90, 120], [moistureTable], 'The middle of the printed range.'),
  'person-at-hard-work': hourly([120, 160, 200], [moistureTable, moistureGerman]),
  cooking: hourly(
    [50, 600, 1500],
    [moistureTable, moistureGerman],
    'While it cooks. The sources part by thirty: lids, how long it boils, and whether the flame counts.',
  ),
  'cooking-day': {
    unit: 'kg a day and person',
    low: 0.12,
    value: 3 / 2.5,
    high: 3 / 2.5,
    citations: [moistureNewZealand, moistureGerman],
    caution:
      'Printed for 2.5 people without a hood, gas or electric not said; the low end is a German page, an event.',
  },
  'dishwashing-day': {
    unit: 'kg a day and person',
    low: 1 / 2.5,
    value: 1 / 2.5,
    high: 1 / 2.5,
    citations: [moistureNewZealand],
  },
  showering: hourly([1500, 2500, 3000], [moistureTable, moistureGerman], 'While the water runs.'),
  shower: {
    unit: 'kg each',
    low: 0.47,
    value: 0.6,
    high: 2.6,
    citations: [moistureNewZealand, moistureUs, moistureGerman],
    caution:
      'The German 2.6 L are an hour of shower by its own hourly figure; 0.6 is a day’s bathing of one of 2.5 people. For a known time use the hourly row.',
  },
  'washing-dripping': hourly([100, 300, 500], [moistureTable, moistureGerman], 'A drum of 4.5 kg.'),
  'washing-spun': hourly([50, 125, 200], [moistureTable], 'A drum of 4.5 kg.'),
  'washing-load': {
    unit: 'kg each',
    low: 2.4,
    value: 5,
    high: 5,
    citations: [moistureNewZealand, moistureUs],
    caution: 'A machine full. What a few things hold is less: weigh them wet and dry.',
  },
  plant: hourly([7, 11, 15], [moistureTable]),
  pet: hourly([10, 25, 40], [moistureGerman]),
  'propane-burnt': {
    unit: 'kg/kg',
    low: 1.634,
    value: 1.634,
    high: 1.634,
    citations: [burningWater, moistureNewZealand],
    caution: 'Only where the flame has no flue. The code of practice rounds to 1.6.',
  },
  'butane-burnt': {
    unit: 'kg/kg',
    low: 1.55,
    value: 1.55,
    high: 1.55,
    citations: [burningWater],
    caution: 'Only where the flame has no flue.',
  },
};

export const humidityClassIds = [1, 2, 3, 4, 5] as const;
export type HumidityClassId = (typeof humidityClassIds)[number];

export interface HumidityClassRow {
  readonly id: HumidityClassId;
  /** Upper edge of the class: vapour inside above outside, at or below 0 °C outside. */
  readonly excessPa: number;
  readonly of: string;
  readonly citations: readonly Citation[];
}

/** A small vehicle that is lived in through the winter belongs to class 4 or 5 (own judgement). */
export const humidityClassRows: readonly HumidityClassRow[] = [
  { id: 1, excessPa: 270, of: 'stores', citations: [humidityClasses] },
  { id: 2, excessPa: 540, of: 'offices, shops', citations: [humidityClasses] },
  { id: 3, excessPa: 810, of: 'homes with few people', citations: [humidityClasses] },
  { id: 4, excessPa: 1080, of: 'homes with many people, kitchens', citations: [humidityClasses] },
  { id: 5, excessPa: 1350, of: 'laundries, pools', citations: [humidityClassFive] },
];

/** Which class is assumed for a van where its moisture is not known. */
export const vanHumidityClass = {
  id: 4,
  citations: [
    humidityClasses,
    {
      title: 'Class 4 for a van that is lived in through the winter',
      provenance: 'own choice',
    },
  ],
} as const;
