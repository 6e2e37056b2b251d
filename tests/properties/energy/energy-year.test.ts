import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dischargeHours } from '../../../src/calc/electrical/peukert.ts';
import { type EnergyYearInput, energyYear, imbalanceWh } from '../../../src/calc/energy/year.ts';
import { energyInput } from '../../support/energy-year.ts';

/** Evenly between two values: doubles drawn by their bits would nearly all be next to nothing. */
const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 10_000 }).map((part) => min + ((max - min) * part) / 10_000);
const share = between(0, 1);
const months = (min: number, max: number) => fc.array(between(min, max), { minLength: 12, maxLength: 12 });
const hourly = fc.array(fc.oneof(fc.constant(0), between(0, 400)), { minLength: 24, maxLength: 24 });

const solar = fc.record({
  peakW: between(0, 1500),
  tiltDeg: between(0, 90),
  azimuthDeg: between(0, 360),
  losses: fc.array(between(0, 0.3), { maxLength: 3 }),
  shadedShare: share,
  skyHiddenShare: between(0, 0.5),
  temperatureCoefficient: between(-0.006, 0),
  noctC: between(40, 60),
  hotterK: between(0, 20),
  controllerEfficiency: between(0.5, 1),
  controllerMostW: between(0, 1500),
});

const battery = fc
  .record({
    windowWh: fc.oneof(fc.constant(0), between(0, 10_000)),
    mostChargeW: between(0, 2000),
    mostDischargeW: between(0, 3000),
    roundTripEfficiency: between(0.5, 1),
    selfDischargeAMonth: between(0, 0.2),
    standingW: fc.oneof(fc.constant(0), between(0, 30)),
    cellC: months(-15, 30),
    chargeSteps: fc.constantFrom(
      [],
      [{ fromC: 0, share: 1 }],
      [
        { fromC: -10, share: 0.1 },
        { fromC: 0, share: 0.3 },
        { fromC: 10, share: 1 },
      ],
    ),
    capacityShares: months(0.5, 1),
  })
  .chain((plain) =>
    fc
      .option(fc.record({ exponent: between(1, 1.5), ratedPowerW: between(5, 200) }), { nil: undefined })
      .map((peukert) => ({ ...plain, ...(peukert && { peukert }) })),
  );

const input: fc.Arbitrary<EnergyYearInput> = fc.record({
  site: fc.record({
    latitudeDeg: between(-90, 90),
    longitudeDeg: between(-180, 180),
    clockAheadOfUtcHours: fc.integer({ min: -11, max: 13 }),
  }),
  climate: fc.record({ globalWhM2: months(0, 8000), airC: months(-30, 35) }),
  arrays: fc.array(solar, { maxLength: 2 }),
  driving: fc.record({
    powerW: between(0, 600),
    startHour: between(0, 24),
    hours: months(0, 6),
    daysPerWeek: between(0, 7),
  }),
  shore: fc.record({
    powerW: between(0, 800),
    nights: months(0, 28),
    span: fc.record({ startHour: between(0, 24), hours: between(0, 24) }),
  }),
  loads: fc.array(fc.record({ hourlyW: hourly, monthFactors: months(0, 2) }), { maxLength: 3 }),
  battery,
  dullDays: fc.integer({ min: 0, max: 28 }),
  dullShare: share,
  startShare: share,
});

const runs = { numRuns: 40 };
/** What sums of 744 hours of up to some kilowatts gather of rounding, Wh. */
const roundingWh = 1e-6;
const unmet = (each: EnergyYearInput): number[] => energyYear(each).months.map(({ unmetWh }) => unmetWh);

const neverMore = (less: readonly number[], more: readonly number[]): void => {
  for (const [month, value] of less.entries())
    expect(value, `month ${month}`).toBeLessThanOrEqual((more[month] ?? Number.NaN) + roundingWh);
};

describe('a year of energy', () => {
  test('every hour closes, and nothing is below 0', () => {
    fc.assert(
      fc.property(input, (each) => {
        const { ledger, months: summaries } = energyYear(each);
        let worst = 0;
        let least = 0;
        let over = 0;
        for (let hour = 0; hour < 8760; hour += 1) {
          worst = Math.max(worst, Math.abs(imbalanceWh(ledger, hour)));
          for (const column of Object.values(ledger)) least = Math.min(least, column[hour] ?? Number.NaN);
          const window = summaries[ledger.month[hour] ?? 0]?.windowWh ?? Number.NaN;
          over = Math.max(over, (ledger.stateWh[hour] ?? Number.NaN) - window);
          const served = (ledger.usedWh[hour] ?? 0) + (ledger.unmetWh[hour] ?? 0);
          worst = Math.max(worst, Math.abs(served - (ledger.wantedWh[hour] ?? 0)));
          // No hour both charges and discharges.
          worst = Math.max(worst, Math.min(ledger.chargedWh[hour] ?? 0, ledger.dischargedWh[hour] ?? 0));
        }
        expect(worst).toBeLessThanOrEqual(1e-9);
        expect(least).toBeGreaterThanOrEqual(-1e-9);
        expect(over).toBeLessThanOrEqual(1e-9);
      }),
      runs,
    );
  });

  test('more array never leaves more unmet', () => {
    fc.assert(
      fc.property(input, between(1, 4), (each, factor) => {
        const more = each.arrays.map((array) => ({ ...array, peakW: array.peakW * factor }));
        neverMore(unmet({ ...each, arrays: more }), unmet(each));
      }),
      runs,
    );
  });

  test('more load never leaves less unmet', () => {
    fc.assert(
      fc.property(input, hourly, (each, hourlyW) => {
        neverMore(unmet(each), unmet({ ...each, loads: [...each.loads, { hourlyW }] }));
      }),
      runs,
    );
  });

  test('a larger battery never leaves more unmet', () => {
    fc.assert(
      fc.property(input, between(1, 4), (each, factor) => {
        const larger = { ...each.battery, windowWh: each.battery.windowWh * factor };
        neverMore(unmet({ ...each, battery: larger }), unmet(each));
      }),
      runs,
    );
  });

  test('duller dull days never leave less unmet', () => {
    fc.assert(
      fc.property(input, share, (each, factor) => {
        // Flat: a tilted plane may gain a little direct light where the diffuse share changes.
        const arrays = each.arrays.map((array) => ({ ...array, tiltDeg: 0, shadedShare: 0, glass: 0 }));
        const flat = {
          ...each,
          arrays: arrays.map((array) => ({ ...array, temperatureCoefficient: 0, skyHiddenShare: 0 })),
        };
        neverMore(unmet(flat), unmet({ ...flat, dullShare: flat.dullShare * factor }));
      }),
      runs,
    );
  });

  test('no load, nothing unmet, endless autonomy', () => {
    fc.assert(
      fc.property(input, (each) => {
        for (const month of energyYear({ ...each, loads: [] }).months) {
          expect(month.unmetWh).toBe(0);
          expect(month.unmetHours).toBe(0);
          expect(month.autonomyDays).toBe(Number.POSITIVE_INFINITY);
        }
      }),
      runs,
    );
  });

  test('a flat array sees what falls on the ground, wherever it looks', () => {
    fc.assert(
      fc.property(input, between(0, 360), (each, azimuthDeg) => {
        const flat = {
          ...energyInput().arrays[0],
          peakW: 100,
          tiltDeg: 0,
          azimuthDeg,
          losses: [],
          shadedShare: 0,
          temperatureCoefficient: 0,
          noctC: 45,
          controllerEfficiency: 1,
          glass: 0,
        };
        for (const month of energyYear({ ...each, arrays: [flat] }).months) {
          const [planeWhM2 = Number.NaN] = month.planeWhM2;
          expect(Math.abs(planeWhM2 - month.globalWhM2)).toBeLessThanOrEqual(1e-9 * (1 + month.globalWhM2));
          expect(Math.abs(month.typicalDayWh - planeWhM2 * 0.1)).toBeLessThanOrEqual(1e-9 * (1 + planeWhM2));
        }
      }),
      runs,
    );
  });

  test('the same input gives the same year', () => {
    fc.assert(
      fc.property(input, (each) => {
        expect(energyYear(each)).toEqual(energyYear(each));
      }),
      { numRuns: 5 },
    );
  });

  test('a steady load empties a lead battery as fast as Peukert says', () => {
    fc.assert(
      fc.property(between(40, 400), between(1, 1.5), between(10, 400), (capacityAh, exponent, powerW) => {
        const windowWh = capacityAh * 12;
        const [first] = energyYear({
          ...energyInput(),
          arrays: [],
          loads: [{ hourlyW: Array.from({ length: 24 }, () => powerW) }],
          battery: {
            ...energyInput().battery,
            windowWh,
            roundTripEfficiency: 1,
            selfDischargeAMonth: 0,
            peukert: { exponent, ratedPowerW: windowWh / 20 },
          },
        }).months;
        const hours = dischargeHours({ capacityAh, ratingHours: 20, exponent }, powerW / 12);
        const simulated = (first?.autonomyDays ?? Number.NaN) * 24;
        // In its last hour the simulation draws what is left over the whole hour, more gently than the law, and then
        // counts the share of the hour's need: less than an hour apart, and never less than the law.
        expect(simulated).toBeGreaterThanOrEqual(hours - 1e-6);
        expect(simulated - hours).toBeLessThan(0.5);
      }),
      { numRuns: 100 },
    );
  });
});
