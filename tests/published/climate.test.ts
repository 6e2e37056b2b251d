import { describe, expect, test } from 'vitest';
import {
  type ArrayPlane,
  arrayDay,
  clockOfLongitude,
  lightDay,
  sunDay,
  typicalDiffuseShare,
} from '../../src/calc/energy/design-day.ts';
import { daysOfMonths, ofMonth } from '../../src/calc/energy/months.ts';
import { nearestPlace } from '../../src/calc/energy/nearest-place.ts';
import { type ClimatePlace, climatePlaces } from '../../src/catalogue/electrical/climate.ts';
import { expectPublished } from './agreement.ts';

const place = (start: string): ClimatePlace => {
  const found = climatePlaces.find(({ name }) => name.startsWith(start));
  if (!found) throw new Error(`No place ${start}.`);
  return found;
};
const yearKwh = (daily: readonly number[]): number =>
  daysOfMonths.reduce((sum, days, month) => sum + (days * ofMonth(daily, month)) / 1000, 0);

describe('the tables hold what was printed', () => {
  test.each([
    ['Munich', 1124],
    ['Hamburg', 956],
    ['Berlin', 986],
    ['Paris', 1068],
    ['Zurich', 1164],
    ['Bologna', 1546],
    ['Amsterdam', 982],
    ['Piedmont', 1436],
    ['Golden', 1620],
    ['Phoenix', 2094],
    ['Chicago', 1406],
    ['New York', 1472],
    ['Yellowknife', 1058],
  ])('%s: %d kWh/m² a year', (name, value) => {
    const { globalWhM2, citation } = place(name);
    expectPublished(
      yearKwh(globalWhM2),
      { value, within: 2.4, because: 'months to 0.01 kWh/m² a day (365 · 0.005) and the year to 1' },
      citation,
    );
  });

  // The table's UK average is its East Pennines, printed there in kWh/m² a day as well.
  test('UK average', () => {
    const { globalWhM2, citation } = place('East Pennines');
    const printed = [0.62, 1.3, 2.3, 3.6, 4.61, 4.8, 4.54, 3.77, 2.76, 1.58, 0.79, 0.5];
    for (const [month, value] of printed.entries())
      expectPublished(
        ofMonth(globalWhM2, month) / 1000,
        { value, within: 0.005, because: 'two places' },
        citation,
      );
    expectPublished(yearKwh(globalWhM2), { value: 951, within: 0.5, because: 'to 1' }, citation);
  });

  test.each(climatePlaces.map((row) => [row.name, row] as const))('%s makes sense', (_name, row) => {
    expect(row.globalWhM2).toHaveLength(12);
    expect(row.airC).toHaveLength(12);
    expect(row.citation.provenance).toBe('read');
    expect(row.citation.caution).toBeDefined();
    for (const [month, global] of row.globalWhM2.entries()) {
      const sun = sunDay({ ...row, clockAheadOfUtcHours: clockOfLongitude(row.longitudeDeg) }, month);
      expect(global).toBeGreaterThan(0);
      // More than that comes through no month's air; a slip of units would.
      expect(global / sun.extraterrestrialWhM2).toBeLessThan(0.75);
      if (row.diffuseWhM2) expect(ofMonth(row.diffuseWhM2, month)).toBeLessThanOrEqual(global);
    }
  });

  test('no name twice', () => {
    expect(new Set(climatePlaces.map(({ name }) => name)).size).toBe(climatePlaces.length);
  });
});

describe('the nearest place', () => {
  test.each([
    [48.2, 11.6, 'Munich', 15e3],
    [51.45, -2.6, 'Severn', 20e3],
    [60.4, -1.3, 'Shetland', 30e3],
    [41.9, -87.6, 'Chicago', 30e3],
  ])('%d, %d', (latitude, longitude, name, withinM) => {
    const found = nearestPlace(climatePlaces, latitude, longitude);
    expect(found.place.name).toMatch(new RegExp(`^${name}`));
    expect(found.distanceM).toBeLessThan(withinM);
  });
  test('says how far, and how much further north', () => {
    const found = nearestPlace(climatePlaces, 69.65, 18.96);
    expect(found.distanceM).toBeGreaterThan(1e6);
    expect(found.northOfPlaceDeg).toBeGreaterThan(9);
  });
});

const flat: ArrayPlane = {
  peakW: 1000,
  tiltDeg: 0,
  azimuthDeg: 180,
  losses: [],
  shadedShare: 0,
  temperatureCoefficient: 0,
  noctC: 45,
};

function planeOf(row: ClimatePlace, month: number, tiltDeg: number): number {
  const sun = sunDay({ ...row, clockAheadOfUtcHours: clockOfLongitude(row.longitudeDeg) }, month);
  const global = ofMonth(row.globalWhM2, month);
  const diffuse = row.diffuseWhM2 && ofMonth(row.diffuseWhM2, month);
  const light = lightDay(sun, global, typicalDiffuseShare(sun, global, diffuse));
  return arrayDay(light, { ...flat, tiltDeg }, ofMonth(row.airC, month)).planeWhM2;
}

describe('what tilting gains', () => {
  const table = {
    title: 'International Journal of Photoenergy 2017, article 7540250, table 2',
    readAt: 'https://www.hindawi.com/journals/ijp/2017/7540250/tab2/',
    provenance: 'read' as const,
  };
  // Other years of weather and another sky: the gain of a year agrees within 4 %.
  test('Zurich, 45° to the south, over the year', () => {
    const row = place('Zurich');
    const tilted = yearKwh(daysOfMonths.map((_, month) => planeOf(row, month, 45)));
    expectPublished(
      tilted / yearKwh(row.globalWhM2),
      { value: 1237 / 1105, within: 0.045, because: 'other years, other model of the sky' },
      table,
    );
  });
  // Milano and Genova of that table lie about Bologna: 1.130 and 1.131. The long sunny series of Piedmont gains more.
  test('Bologna, 45° to the south, over the year', () => {
    const row = place('Bologna');
    const tilted = yearKwh(daysOfMonths.map((_, month) => planeOf(row, month, 45)));
    expectPublished(
      tilted / yearKwh(row.globalWhM2),
      { value: 1.13, within: 0.065, because: 'places 170 km off, other years' },
      table,
    );
  });

  // At 42° a flat panel has about half of a tilted one's December, and further north less; in June it has more.
  test('flat in winter', () => {
    const flatShare = (name: string, month: number) =>
      planeOf(place(name), month, 0) / planeOf(place(name), month, 60);
    expect(flatShare('Chicago', 11)).toBeGreaterThan(0.5);
    expect(flatShare('Chicago', 11)).toBeLessThan(0.65);
    expect(flatShare('Golden', 11)).toBeLessThan(0.65);
    expect(flatShare('Yellowknife', 11)).toBeLessThan(0.3);
    expect(flatShare('Chicago', 5)).toBeGreaterThan(1);
  });
});

/**
 * Where the source has the diffuse part, the correlation comes near it. It is lower throughout, by 0.08 in the dull months of
 * the European IWEC files (whose diffuse part is itself modelled) and by 0.01 in the measured ones of the south-west of the
 * US: without a stated diffuse part a tilted panel looks a little too good.
 */
test('the diffuse part by the clearness index against the tables', () => {
  const off: number[] = [];
  for (const row of climatePlaces) {
    if (!row.diffuseWhM2) continue;
    for (const [month, stated] of row.diffuseWhM2.entries()) {
      const sun = sunDay({ ...row, clockAheadOfUtcHours: 0 }, month);
      const global = ofMonth(row.globalWhM2, month);
      off.push(typicalDiffuseShare(sun, global) - stated / global);
    }
  }
  expect(off.length).toBe(13 * 12);
  const mean = off.reduce((sum, each) => sum + each, 0) / off.length;
  expect(mean).toBeLessThan(0);
  expect(mean).toBeGreaterThan(-0.075);
  // Erbs and others give a standard error of 0.06 to 0.1 for a month.
  expect(Math.sqrt(off.reduce((sum, each) => sum + each ** 2, 0) / off.length)).toBeLessThan(0.1);
});
