import fc from 'fast-check';
import { expect, test } from 'vitest';
import { heatDemandOf } from '../../src/build/heat-demand.ts';
import { airy, twoVents } from '../support/air-plan.ts';
import { buildOf, measured, only, reportOf } from '../support/check.ts';
import { spoiltText } from '../support/spoilt-curlew.ts';
import { waterPlan } from '../support/supply-plan.ts';

/*
 * What nobody would believe of a check: that more people keep the air fresher, or a longer pipe brings more water.
 */

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const slack = 1 + 1e-9;

const nightPlan = (people: number, lowCm2: number, highCm2: number, lowC: number): string =>
  airy(
    twoVents(lowCm2, highCm2),
    `people: {sleepers: [${Array.from({ length: people }, () => '{stature: 1.7 m}').join(', ')}]}
heat: {inside: 20 degC, asleep: 15 degC}
living: {winter_low: ${lowC} degC}`,
  );

const airRules = [
  ['air.night', 'night'],
  ['air.humidity', 'humidity'],
  ['air.humidity', 'mild night'],
] as const;

const airOf = async (text: string): Promise<readonly number[]> => {
  const report = await reportOf(text);
  return airRules.map(([rule, subject]) => measured(only(report, rule, subject)));
};

test('more people, or less vent, never make the air of a night better', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.integer({ min: 1, max: 5 }),
      real(1, 400),
      real(1, 400),
      real(0.1, 0.95),
      fc.integer({ min: -30, max: 8 }),
      async (people, lowCm2, highCm2, shut, lowC) => {
        const before = await airOf(nightPlan(people, lowCm2, highCm2, lowC));
        const worse = [
          await airOf(nightPlan(people + 1, lowCm2, highCm2, lowC)),
          await airOf(nightPlan(people, lowCm2 * shut, highCm2, lowC)),
          await airOf(nightPlan(people, lowCm2, highCm2 * shut, lowC)),
        ];
        for (const each of worse)
          for (const [at, value] of each.entries())
            expect(value * slack).toBeGreaterThanOrEqual(before[at] ?? Number.NaN);
      },
    ),
    { numRuns: 10 },
  );
});

const pipes = { size: '12 mm', material: 'PEX' };
const wayOf = async (coldM: number, hotM: number) => {
  const pipe = (lengthM: number) => `material: ${pipes.material}, size: ${pipes.size}, length: ${lengthM} m`;
  const report = await reportOf(
    waterPlan({
      outlets: '{sink: {use: tap, flow: 5 L/min, pressure: 1 bar, above_floor: 0.5 m}}',
      pipes: `{suction: {from: fresh tank, to: pump, ${pipe(1)}}, to heater: {from: pump, to: heater, ${pipe(coldM)}}, hot: {from: heater, to: sink, ${pipe(hotM)}}}`,
      more: 'heater: {kind: storage, holds: 10 L, temperature: 60 degC}',
    }),
  );
  const wait = only(report, 'water.hot-wait');
  return { flow: measured(only(report, 'water.flow')), wait: wait.measured };
};

test('a longer pipe never brings more water, nor hot water sooner', async () => {
  await fc.assert(
    fc.asyncProperty(real(0.1, 9.9), real(0.1, 9.9), real(1.01, 3), async (coldM, hotM, times) => {
      const before = await wayOf(coldM, hotM);
      for (const after of [await wayOf(coldM * times, hotM), await wayOf(coldM, hotM * times)]) {
        expect(after.flow).toBeLessThanOrEqual(before.flow * slack);
        if (before.wait && after.wait && before.wait.kind === after.wait.kind)
          expect(after.wait.value * slack).toBeGreaterThanOrEqual(before.wait.value);
      }
    }),
    { numRuns: 10 },
  );
});

test('more insulation and a warmer night never raise the heat that the Curlew loses', async () => {
  const text = spoiltText({ example: 'curlew', without: ['routes', 'electrical'], slips: [] });
  const lossOf = async (floorMm: number, wallsMm: number, outsideC: number): Promise<number> => {
    const thicker = text
      .replace(
        'material: XPS\n          thickness: 25 mm',
        `material: XPS\n          thickness: ${floorMm} mm`,
      )
      .replaceAll('thickness: 50 mm', `thickness: ${wallsMm} mm`);
    return heatDemandOf(await buildOf(thicker)).worked?.lossW(outsideC) ?? Number.NaN;
  };
  await fc.assert(
    fc.asyncProperty(
      real(5, 80),
      real(5, 120),
      real(1, 60),
      real(-30, 15),
      async (floor, walls, more, outsideC) => {
        const before = await lossOf(floor, walls, outsideC);
        expect(await lossOf(floor + more, walls, outsideC)).toBeLessThanOrEqual(before * slack);
        expect(await lossOf(floor, walls + more, outsideC)).toBeLessThanOrEqual(before * slack);
        expect(await lossOf(floor, walls, outsideC - more)).toBeGreaterThanOrEqual(before);
      },
    ),
    { numRuns: 4 },
  );
});
