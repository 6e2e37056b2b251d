// Inverter currents, surges and idle draw against published figures.
import { describe, expect, test } from 'vitest';
import { inverterCurrents, inverterInputA, startingPowerW } from '../../src/calc/electrical/inverter.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import {
  inverterEfficiency,
  inverterIdleRange,
  inverterIdleRows,
  startFactors,
} from '../../src/catalogue/electrical/inverter-guidance.ts';
import {
  inverterDesignEfficiency,
  inverterIdleMeasured,
  inverterSurge,
} from '../../src/catalogue/electrical/supply-sources.ts';
import { exactly, expectPublished } from './agreement.ts';

describe('direct current', () => {
  test.each([
    [1000, 12, 0.9, 92.59, 115.7],
    [2000, 12, 0.9, 185.19, 231.5],
    [2000, 10.5, 0.85, 224.09, 280.1],
    [2000, 24, 0.9, 92.59, 115.7],
    [3000, 12.8, 0.92, 254.76, 318.4],
    [3000, 25.6, 0.92, 127.38, 159.2],
    [3000, 51.2, 0.92, 63.69, 79.6],
  ])('%d W at %d V and %d: %d A, × 1.25 %d A', (outputW, lowestVoltageV, efficiency, currentA, cableA) => {
    const actual = inverterInputA(outputW, { lowestVoltageV, efficiency });
    const source = inverterDesignEfficiency;
    expectPublished(actual, { value: currentA, within: 0.005, because: 'printed to 0.01 A' }, source);
    expectPublished(1.25 * actual, { value: cableA, within: 0.05, because: 'printed to 0.1 A' }, source);
  });

  test('1000 W at 12 V with a tenth for losses: 91.67 A', () => {
    const manual: Citation = {
      title: 'inverter maker’s manual p. 5: 1000 / 12 × 1.1',
      readAt: 'https://www.manualshelf.com (cut: the rest of the address carries the maker’s name)',
      provenance: 'read',
    };
    const actual = inverterInputA(1000, { lowestVoltageV: 12, efficiency: 1 / 1.1 });
    expectPublished(actual, { value: 91.67, within: 0.005, because: 'printed to 0.01 A' }, manual);
  });

  // One maker's table: amperes are watts over ten at 12 V. It holds 85 % at 11.8 V, not 10.5 V.
  test.each([
    [350, 35, 43.75],
    [600, 60, 75],
    [1000, 100, 125],
    [2000, 200, 250],
  ])('%d W: %d A, × 1.25 %d A', (outputW, currentA, cableA) => {
    const table: Citation = {
      title: 'inverter maker’s manual, table 4.1',
      readAt: 'https://www.manualshelf.com (cut: the rest of the address carries the maker’s name)',
      provenance: 'read',
    };
    const actual = inverterInputA(outputW, { lowestVoltageV: 11.8, efficiency: 0.85 });
    const published = { value: currentA, within: 0.004 * currentA, because: '0.85 × 11.8 is 10.03, not 10' };
    expectPublished(actual, published, table);
    expectPublished(1.25 * actual, { ...published, value: cableA, within: 0.004 * cableA }, table);
    const atLowest = inverterInputA(outputW, { lowestVoltageV: 10.5, efficiency: 0.85 });
    expect(atLowest).toBeGreaterThan(1.1 * currentA);
  });
});

describe('starts', () => {
  test('1200 W that start fourfold: 4800 W', () => {
    const load = { runningW: 1200, startFactor: startFactors.refrigeratorExample };
    expectPublished(startingPowerW([load]), exactly(4800), inverterSurge);
  });

  test('18 W, 60 W and a motor of 75 W that starts fourfold: 378 W', () => {
    const lecture: Citation = {
      title: 'lecture on the design of a photovoltaic system, house with three loads',
      readAt: 'https://electricalengineeringnotes.com/off-grid-solar-system-design-step-by-step',
      provenance: 'read',
    };
    const loads = [
      { runningW: 18, startFactor: 1 },
      { runningW: 60, startFactor: 1 },
      { runningW: 75, startFactor: 4 },
    ];
    expectPublished(startingPowerW(loads), exactly(378), lecture);
  });

  test('surge and idle at the battery', () => {
    const loads = { continuousW: 1020, surgeW: 2040, idleW: 12 };
    const currents = inverterCurrents(loads, { lowestVoltageV: 12, efficiency: inverterEfficiency.value });
    expect(currents.continuousA).toBeCloseTo(100, 9);
    expect(currents.surgeA).toBeCloseTo(200, 9);
    expect(currents.idleA).toBe(1);
  });
});

describe('idle draw', () => {
  test.each([
    [60, 1.46, 2.45],
    [400, 5.2, 1.3],
    [700, 11.8, 1.7],
  ])('%d W: %d W, %d %%', (ratedW, idleW, percent) => {
    const row = inverterIdleRows.find(
      (each) => each.ratedW === ratedW && each.citation === inverterIdleMeasured,
    );
    expectPublished(row?.idleW ?? Number.NaN, exactly(idleW), inverterIdleMeasured);
    const printed = { value: percent, within: 0.05, because: 'printed to 0.1 % of rounded powers' };
    expectPublished((100 * (row?.idleW ?? Number.NaN)) / ratedW, printed, inverterIdleMeasured);
  });

  test.each([
    [300, 0.2],
    [400, 0.3],
    [600, 0.6],
    [1000, 0.8],
    [2000, 0.8],
  ])('%d W: %d A at 12 V', (ratedW, currentA) => {
    const row = inverterIdleRows.find(
      (each) => each.ratedW === ratedW && each.citation !== inverterIdleMeasured,
    );
    const source = row?.citation ?? inverterIdleMeasured;
    expectPublished((row?.idleW ?? Number.NaN) / 12, exactly(currentA), source);
  });

  test('every row lies within the printed range', () => {
    for (const { idleW } of inverterIdleRows) {
      expect(idleW).toBeGreaterThanOrEqual(inverterIdleRange.lowW);
      expect(idleW).toBeLessThanOrEqual(inverterIdleRange.highW);
    }
  });
});
