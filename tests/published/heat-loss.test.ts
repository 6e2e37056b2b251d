// Worked examples of heat loss.
import { describe, expect, test } from 'vitest';
import { airHeatJPerM3K, heatNeed, lossPerKelvin } from '../../src/calc/heat/heat-loss.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { airByTheHour } from '../../src/catalogue/heat/heat-sources.ts';
import { airChanges, sleeperSensibleW } from '../../src/catalogue/heat/heating.ts';
import { exactly, expectPublished } from './agreement.ts';

const need = (lossWPerK: number, differenceK: number) =>
  heatNeed({ lossWPerK, insideC: differenceK, outsideC: 0, gainsW: 0, margin: 0 }).lossW;

test('two changes of 300 m³ an hour at 15 K: 2970 W by the rule of 0.33', () => {
  const { ventilationWPerK } = lossPerKelvin({ surfaces: [], volumeM3: 300, airChangesPerHour: 2 });
  expectPublished(
    need(ventilationWPerK, 15),
    { value: 2970, within: 0.0102 * 2970, because: '0.33 is 1200 / 3600 cut off' },
    {
      title: 'Engineering reference page: ventilation heat loss 0.33 · n · V · ΔT',
      readAt: 'https://calculator.academy/ventilation-heat-loss-calculator/',
      provenance: 'read',
      caution: 'The excerpt stops before its result, which is the product of its inputs.',
    },
  );
});

describe('a room of a house', () => {
  const source: Citation = {
    title: 'Home owners’ page on heat loss: air 15.03, glass 17.4, wall 20.7, floor 9.9, in all 63.03 W/°C',
    readAt: 'https://www.ukhomeowners.com/homeimprovement/central_heating/heatloss_calculations.html',
    provenance: 'read',
  };
  const loss = lossPerKelvin({
    surfaces: [
      { areaM2: 3 * 2, uValue: 2.9 },
      { areaM2: 6 * 2.3, uValue: 1.5 },
      { areaM2: 3.3 * 3, uValue: 1 },
    ],
    volumeM3: 3.3 * 3 * 2.3,
    airChangesPerHour: 2,
  });
  const because = '0.33 for 0.3333: 1 % of the share of the air';
  test('air 15.03 W/K', () => {
    expectPublished(loss.ventilationWPerK, { value: 15.03, within: 0.16, because }, source);
  });
  test('fabric 48.0 W/K', () => {
    expectPublished(loss.transmissionWPerK, exactly(17.4 + 20.7 + 9.9), source);
  });
  test('in all 63.03 W/K, at 22 K', () => {
    expectPublished(loss.totalWPerK, { value: 63.03, within: 0.16, because }, source);
    expectPublished(need(loss.totalWPerK, 22), { value: 63.03 * 22, within: 0.16 * 22, because }, source);
  });
});

describe('rows of a British house, in Btu/h', () => {
  const source: Citation = {
    title: 'DIY page with the workings of a heat loss in Btu/h, ft² and °F',
    readAt: 'http://www.diydata.com/planning/ch_design/calculations.php',
    provenance: 'read',
  };
  const wattsOfBtuPerHour = 1055.05585262 / 3600;
  const m2OfFt2 = 0.09290304;
  // W/(m²·K) from Btu/(h·ft²·°F).
  const metricU = (imperial: number) => (imperial * wattsOfBtuPerHour) / m2OfFt2 / (5 / 9);
  test.each([
    [72, 40, 0.18, 518],
    [40, 40, 0.51, 816],
    [136, 5, 0.38, 258],
    [238, 40, 0.12, 1142],
    [95.75, 35, 0.18, 603],
    [231.5, 30, 0.18, 1250],
  ])('%d ft² at %d °F, U %d: %d Btu/h', (areaFt2, differenceF, imperialU, published) => {
    const { transmissionWPerK } = lossPerKelvin({
      surfaces: [{ areaM2: areaFt2 * m2OfFt2, uValue: metricU(imperialU) }],
      volumeM3: 0,
      airChangesPerHour: 0,
    });
    const btuPerHour = need(transmissionWPerK, differenceF * (5 / 9)) / wattsOfBtuPerHour;
    expectPublished(
      btuPerHour,
      { value: published, within: 1, because: 'whole Btu/h, some cut off' },
      source,
    );
  });
});

test('MacKay: 1.2 kJ/m³K, changes of air by the room', () => {
  expectPublished(airHeatJPerM3K, exactly(1200), airByTheHour);
  for (const [id, published] of [
    ['bedroom', 0.5],
    ['lounge', 1],
    ['kitchen', 2],
    ['bathroom', 2],
    ['draughty', 3],
  ] as const)
    expectPublished(
      airChanges.find((row) => row.id === id)?.perHour ?? Number.NaN,
      exactly(published),
      airByTheHour,
    );
});

test('a sleeper warms the room by less than 40 W/m² of 1.8 m²', () => {
  expect(sleeperSensibleW).toBeLessThan(40 * 1.8);
  expect(sleeperSensibleW).toBeGreaterThan(0.7 * 40 * 1.8);
});
