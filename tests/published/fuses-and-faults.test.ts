// Fuses, their distance from the source, short-circuit currents and what copper survives.
import { describe, expect, test } from 'vitest';
import { copperK, leastAreaForFault } from '../../src/calc/electrical/fault-heating.ts';
import { fuseShareOfAmpacity, greatestFuse, smallestFuse } from '../../src/calc/electrical/protection.ts';
import {
  bank,
  inParallel,
  internalResistanceFromLoad,
  prospectiveShortCircuit,
} from '../../src/calc/electrical/short-circuit.ts';
import { awgAreaMm2, awgNumber } from '../../src/calc/electrical/wire-gauge.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { ampacityOf } from '../../src/catalogue/electrical/ampacity.ts';
import {
  bladeFuseStandard,
  boatLawFuse,
  boatLawLeastSize,
  boatStandardFuseDistance,
  breakerNeedByCranking,
  hookUpLeadSize,
  largeBankBreaking,
  plugFuseFlex,
} from '../../src/catalogue/electrical/conductor-sources.ts';
import {
  breakerNeed,
  breakingCapacityA,
  fuseAgainstAmpacity,
  fuseDistances,
  fuseFamilies,
  fuseFamily,
  smallGaugeCaps,
} from '../../src/catalogue/electrical/fuses.ts';
import { hookUpLead, leastSize, leastSizes } from '../../src/catalogue/electrical/least-sizes.ts';
import { exactly, expectPublished, type Published } from './agreement.ts';

const printed = (value: number, lastPlace: number): Published => ({
  value,
  within: lastPlace / 2,
  because: 'half a unit in the last printed place',
});

describe('short-circuit current', () => {
  const unit = { emfV: 12, internalOhm: 0.005 };

  test('12 V behind 5 mΩ: 2400 A', () => {
    const source: Citation = {
      title: 'public formula page on the short-circuit current of a battery',
      readAt: 'https://aionlinecalculator.com/battery-short-circuit-current-calculator.html',
      provenance: 'read',
    };
    expectPublished(prospectiveShortCircuit(unit, 0), exactly(2400), source);
  });

  test('six 6 V blocks, three strings of two that give 2400 A each: 7200 A', () => {
    const block = { emfV: 6, internalOhm: 0.0025 };
    expectPublished(prospectiveShortCircuit(bank(block, 2, 1), 0), exactly(2400), largeBankBreaking);
    expectPublished(prospectiveShortCircuit(bank(block, 2, 3), 0), exactly(7200), largeBankBreaking);
    expectPublished(
      prospectiveShortCircuit(inParallel([unit, unit, unit]), 0),
      exactly(7200),
      largeBankBreaking,
    );
  });

  test('E · I / (E − U): the same from a test under load', () => {
    const source: Citation = {
      title: 'electrical formula collection, batteries: R = (E − V) / I',
      readAt: 'https://www.electronicsteacher.com/electrical-circuits-formulae/batteries.php',
      provenance: 'read',
    };
    const internalOhm = internalResistanceFromLoad(12, 11.5, 100);
    expectPublished(internalOhm, exactly(0.005), source);
    expectPublished(prospectiveShortCircuit({ emfV: 12, internalOhm }, 0), exactly((12 * 100) / 0.5), source);
  });

  test('6960 A measured from four golf-cart batteries: what does not break it', () => {
    // C. Freitas, Overcurrent protection for battery-powered systems, Home Power 27 (1992), p. 26, as quoted (read).
    const breaks = fuseFamilies
      .filter((family) => (breakingCapacityA(family, 14.4) ?? 0) >= 6960)
      .map(({ id }) => id);
    expect(breaks).toEqual(['class T', 'industrial gG']);
  });
});

describe('what copper survives', () => {
  const ukTables: Citation = {
    title: 'BS 7671, tables 54.2 to 54.4, in guidance on adiabatic sums',
    readAt: 'https://sparkcerts.co.uk/tools/adiabatic-calculator',
    provenance: 'read',
    caution: '141 and 134 are remembered.',
  };
  test.each([
    [70, 160, 115],
    [90, 250, 143],
    [30, 160, 143],
    [30, 250, 176],
    [60, 200, 141],
    [85, 220, 134],
  ])('from %d to %d °C: k = %d', (initialC, finalC, k) => {
    expectPublished(copperK(initialC, finalC), printed(k, 1), ukTables);
  });

  test('2500 A for 0.1 s in PVC: 6.9 mm²', () => {
    expectPublished(leastAreaForFault(2500, 0.1, 115), printed(6.9, 0.1), ukTables);
  });
});

describe('fuses', () => {
  test('blade fuses: 32 and 58 V, 1000 A, at most 100 A', () => {
    for (const id of ['mini blade', 'blade', 'maxi blade'] as const) {
      const family = fuseFamily(id);
      expectPublished(breakingCapacityA(family, 32) ?? 0, exactly(1000), bladeFuseStandard);
      expect(breakingCapacityA(family, 32.1)).toBeUndefined();
      expect(Math.max(...family.ratingsA)).toBeLessThanOrEqual(100);
    }
    expect(breakingCapacityA(fuseFamily('blade 58 V'), 58)).toBe(1000);
    expect(breakingCapacityA(fuseFamily('blade 58 V'), 58.4)).toBeUndefined();
  });

  test('a large bank asks for 20 kA at 125 V DC: class T (its figure is remembered) has it', () => {
    expectPublished(breakingCapacityA(fuseFamily('class T'), 125) ?? 0, exactly(20_000), largeBankBreaking);
  });

  test('ANL: the 2700 A that was read, not the 6000 A that is quoted', () => {
    expect(breakingCapacityA(fuseFamily('ANL'), 14.4)).toBe(2700);
  });

  test('what breaks falls as the voltage rises, and ratings rise', () => {
    for (const { id, ratingsA, breaking } of fuseFamilies) {
      expect(ratingsA, id).toEqual([...new Set(ratingsA)].sort((one, other) => one - other));
      for (const [index, row] of breaking.entries()) {
        const next = breaking[index + 1];
        if (next !== undefined) {
          expect(next.upToV).toBeGreaterThan(row.upToV);
          expect(next.breakingA).toBeLessThan(row.breakingA);
        }
      }
    }
  });

  test.each([
    [35, 43.75, 50],
    [60, 75, 80],
    [100, 125, 150],
    [200, 250, 300],
  ])('inverter of %d A: 1.25 × is %d A, fuse %d A', (currentA, needed, maker) => {
    const source: Citation = { title: 'an inverter maker’s manual, table 4.1', provenance: 'read' };
    expectPublished(currentA * 1.25, exactly(needed), source);
    const ratings = fuseFamily(currentA < 50 ? 'small bolt-in' : 'large bolt-in').ratingsA;
    const ours = ratings.indexOf(smallestFuse(ratings, currentA) ?? 0);
    // The maker skips a rating that is exactly met.
    expect(ratings.indexOf(maker) - ours).toBe(ratings.includes(needed) ? 1 : 0);
  });

  test.each([
    [50, '6'],
    [80, '4'],
    [150, '2'],
    [300, '2/0'],
  ])('the maker’s fuse of %d A is within the ampacity of the maker’s %s AWG at 105 °C', (fuseA, gauge) => {
    const listed = ampacityOf(
      'boat law, single in free air',
      awgAreaMm2(awgNumber(gauge) ?? Number.NaN),
      105,
    );
    expect(fuseShareOfAmpacity(fuseA, listed?.currentA ?? 0)).toBeLessThanOrEqual(1);
  });

  test.each([
    [70, 80],
    [100, 125],
    [40, 50],
    [60, 80],
    [80, 100],
  ])(
    'charger of %d A: fuse %d A (a charger maker’s table, read), within one rating of 1.25 ×',
    (currentA, maker) => {
      const ratings = fuseFamily('small bolt-in').ratingsA;
      const ours = smallestFuse(ratings, currentA) ?? 0;
      expect(Math.abs(ratings.indexOf(ours) - ratings.indexOf(maker))).toBeLessThanOrEqual(1);
    },
  );

  test('150 % of ampacity below 50 V, 100 % from there', () => {
    const below = fuseAgainstAmpacity.find(({ practice }) => practice === 'boats below 50 V');
    expectPublished(below?.share ?? 0, exactly(1.5), boatLawFuse);
    expect(below?.belowV).toBe(50);
    const { ratingsA } = fuseFamily('small bolt-in');
    expect(greatestFuse(ratingsA, 60)).toBe(60);
    expect(greatestFuse(ratingsA, 60, 1.5)).toBe(80);
  });

  test('small gauges: 15, 20 and 30 A', () => {
    const caps = new Map(smallGaugeCaps.map(({ gauge, mostA }) => [gauge, mostA]));
    expect([caps.get('14'), caps.get('12'), caps.get('10')]).toEqual([15, 20, 30]);
  });

  test.each([
    [650, 1500, 750],
    [651, 3000, 1500],
    [1100, 3000, 1500],
    [1101, 5000, 2500],
  ])('%d A cranking: main breaker %d A, branch %d A', (crankingA, mainA, branchA) => {
    const row = breakerNeed.rows.find(({ upToCrankingA }) => crankingA <= upToCrankingA);
    expectPublished(row?.mainA ?? 0, exactly(mainA), breakerNeedByCranking);
    expectPublished(row?.branchA ?? 0, exactly(branchA), breakerNeedByCranking);
  });
});

describe('distance from the source', () => {
  const row = (id: string) => fuseDistances.find((each) => each.id === id);
  test('7 in and 40 in are 178 and 1016 mm', () => {
    expectPublished((row('US boats')?.openM ?? 0) * 1000, printed(178, 1), boatLawFuse);
    expectPublished((row('US boats')?.sheathedM ?? 0) * 1000, exactly(1016), boatLawFuse);
  });

  test('72 in are 1.83 m, 40 in 1.02 m', () => {
    expectPublished(
      row('boats, standard')?.batterySheathedM ?? 0,
      printed(1.83, 0.01),
      boatStandardFuseDistance,
    );
    expectPublished(row('boats, standard')?.sheathedM ?? 0, printed(1.02, 0.01), boatStandardFuseDistance);
  });
});

describe('least sizes', () => {
  test('16 and 18 AWG', () => {
    expectPublished(
      leastSize('extra-low voltage, single, US boats').areaMm2,
      { value: awgAreaMm2(16), within: 1e-5, because: 'listed to six digits' },
      boatLawLeastSize,
    );
    expectPublished(
      leastSize('extra-low voltage, in a sheath, US boats').areaMm2,
      { value: awgAreaMm2(18), within: 1e-5, because: 'listed to six digits' },
      boatLawLeastSize,
    );
  });

  test('flex behind a plug fuse, and the hook-up lead', () => {
    expectPublished(leastSize('flex behind a 3 A plug fuse').areaMm2, exactly(0.5), plugFuseFlex);
    expectPublished(leastSize('flex behind a 13 A plug fuse').areaMm2, exactly(1.25), plugFuseFlex);
    expectPublished(hookUpLead.leastMm2[0].areaMm2, exactly(2.5), hookUpLeadSize);
    expect(hookUpLead.lengthM).toBe(25);
  });

  test('every row has a source', () => {
    for (const { citations } of leastSizes) expect(citations.length).toBeGreaterThan(0);
  });
});
