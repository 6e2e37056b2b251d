// Carbon dioxide of people: what they breathe out, where it settles, how it gets there, and what a flame adds.
import { describe, expect, test } from 'vitest';
import { burnt, butaneMolecule, flameFlows, propaneMolecule } from '../../src/calc/air/burning.ts';
import {
  breathedOutM3S,
  flowForSteadyPpm,
  generationAtRoomM3S,
  ppmAfter,
  steadyPpm,
} from '../../src/calc/air/carbon-dioxide.ts';
import {
  activities,
  breathedOutAtZeroM3S,
  breathingMets,
  breathingRows,
} from '../../src/catalogue/air/carbon-dioxide.ts';
import { airLimits } from '../../src/catalogue/air/limits.ts';
import {
  breathingTable,
  carbonDioxideGerman,
  carbonDioxideOldGerman,
  carbonDioxideWorkplace,
  freshAirRemembered,
} from '../../src/catalogue/air/sources.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { exactly, expectPublished } from './agreement.ts';

describe('breathed out, by the formula from basal metabolism', () => {
  test.each(breathingRows.map((row) => [row.sex, row.fromYears, row] as const))(
    '%s from %d years: every column of the table',
    (_sex, _years, { basalMJPerDay, litresPerS }) => {
      litresPerS.forEach((value, column) => {
        expectPublished(
          1000 * breathedOutM3S(basalMJPerDay, breathingMets[column] ?? Number.NaN),
          {
            value,
            within: 0.0001,
            because: 'one in the last place: the first column is cut off, not rounded',
          },
          breathingTable,
        );
      });
    },
  );

  test('two rows of the print: a man of 35 cooking gently at 2 met, a woman of 25 at rest', () => {
    const man = breathedOutAtZeroM3S({ sex: 'male', ageYears: 35, met: 2 });
    const woman = breathedOutAtZeroM3S({ sex: 'female', ageYears: 25, met: 1 });
    expectPublished(1000 * man, exactly(0.0076), breathingTable);
    expectPublished(1000 * woman, exactly(0.0031), breathingTable);
  });

  test('a sleeper is 0.95 of the first column, and 7.3 % more at 20 °C', () => {
    const atZero = breathedOutAtZeroM3S({ sex: 'male', ageYears: 25, met: activities.asleep.met });
    expectPublished(1000 * atZero, exactly(0.95 * 0.0039), breathingTable);
    expectPublished(
      generationAtRoomM3S(atZero, 20) / atZero,
      { value: 1.073, within: 0.0005, because: 'half a unit in the last place' },
      breathingTable,
    );
  });
});

describe('settling', () => {
  const page: Citation = {
    title: 'Formula page on carbon dioxide in rooms; figures of ASHRAE 62.1-2016, appendix (memory)',
    provenance: 'read',
  };

  test('0.0052 L/s in 7.5 L/s of fresh air: 693.3 ppm above outside, "about 700"', () => {
    const rise = steadyPpm({ outsidePpm: 0, generationM3S: 5.2e-6, flowM3S: 7.5e-3 });
    expectPublished(rise, { value: 693.3, within: 0.05, because: 'half a unit in the last place' }, page);
    expectPublished(rise, { value: 700, within: 7, because: '"about"' }, freshAirRemembered);
    expectPublished(
      1000 * flowForSteadyPpm(5.2e-6, 0, 693.3),
      { value: 7.5, within: 0.001, because: '693.3 is rounded' },
      page,
    );
  });

  test('the older copy of a page adds the outside air instead of taking it off: a room that starts like outside', () => {
    const room = { outsidePpm: 420, generationM3S: 0, flowM3S: 0.01, volumeM3: 10, startPpm: 420 };
    const printedWrong = (420 + 420) * Math.exp(-1) + 420;
    expect(ppmAfter(room, 1000)).toBeCloseTo(420, 9);
    expect(printedWrong).toBeGreaterThan(700);
  });

  test('the page’s formula with its own letters', () => {
    // q = 0.036 m³/h, n = 0.5 a hour, V = 10 m³, outside 0.0004, start 0.0012, 3 h.
    const printed = (0.036 / 5) * (1 - Math.exp(-1.5)) + (0.0012 - 0.0004) * Math.exp(-1.5) + 0.0004;
    const ours = ppmAfter(
      { outsidePpm: 400, generationM3S: 1e-5, flowM3S: 5 / 3600, volumeM3: 10, startPpm: 1200 },
      3 * 3600,
    );
    expectPublished(ours, exactly(1e6 * printed), {
      title: 'Engineering reference page on pollution of rooms, newer copy',
      readAt: 'http://www.engineeringtoolbox.com/pollution-concentration-rooms-d_692.html',
      provenance: 'read',
    });
  });
});

describe('limits', () => {
  test('1000, 1500, 2000 and 5000 ppm', () => {
    expectPublished(airLimits['carbon-dioxide-good'].value, exactly(1000), carbonDioxideGerman);
    expectPublished(airLimits['carbon-dioxide-mean'].value, exactly(1500), carbonDioxideOldGerman);
    expectPublished(airLimits['carbon-dioxide-unacceptable'].value, exactly(2000), carbonDioxideGerman);
    expectPublished(airLimits['carbon-dioxide-workplace'].value, exactly(5000), carbonDioxideWorkplace);
  });
});

describe('burning', () => {
  const equation: Citation = { title: 'Chemical equation with molar masses', provenance: 'computed' };
  const last = (value: number, place: number) => ({
    value,
    within: place,
    because: 'a unit in the last place: the molar masses have other last digits',
  });

  test.each([
    ['propane', propaneMolecule, 1.634, 2.994, 23.87],
    ['butane', butaneMolecule, 1.55, 3.029, 31.03],
  ] as const)('%s: water, carbon dioxide and air', (_name, molecule, water, carbonDioxide, air) => {
    const { waterPerFuel, carbonDioxidePerFuel, airVolumes } = burnt(molecule);
    expectPublished(waterPerFuel, last(water, 0.001), equation);
    expectPublished(carbonDioxidePerFuel, last(carbonDioxide, 0.001), equation);
    expectPublished(airVolumes, last(air, 0.01), equation);
  });

  test('propane takes 23.86 times its volume of air', () => {
    expectPublished(
      burnt(propaneMolecule).airVolumes,
      { value: 23.86, within: 0.02, because: 'air with another share of oxygen' },
      { title: 'US table of propane, cubic feet of air', provenance: 'read' },
    );
  });

  test('1 kW (net) of propane, 77.7 g/h: 127 g of water and 233 g of carbon dioxide an hour', () => {
    const { waterKgS, carbonDioxideM3S } = flameFlows(propaneMolecule, 0.0777 / 3600, 0);
    expectPublished(waterKgS * 3.6e6, { value: 127, within: 0.5, because: 'whole grams' }, equation);
    // Its density at 0 °C: 44.01 g in 22.414 L.
    expectPublished(
      carbonDioxideM3S * 3.6e6 * (44.01 / 22.414),
      { value: 233, within: 0.5, because: 'whole grams' },
      equation,
    );
  });
});
