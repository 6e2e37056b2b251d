import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  flowForPpmAfterM3S,
  flowForSteadyPpm,
  ppmAfter,
  ppmThrough,
  secondsUntilPpm,
  steadyPpm,
} from '../../../src/calc/air/carbon-dioxide.ts';
import {
  dampAfter,
  flowForHumidityM3S,
  steadyDamp,
  vapourPressurePa,
  waterRemovedKgS,
} from '../../../src/calc/air/moisture.ts';
import { flowForHeatM3S, heatCarriedW, riseOfHeatK } from '../../../src/calc/air/rates.ts';
import { dewPointC, saturationPressurePa } from '../../../src/calc/air/saturation.ts';
import { breathedOutAtZeroM3S, sexes } from '../../../src/catalogue/air/carbon-dioxide.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const room = fc.record({
  outsidePpm: number(380, 600),
  generationM3S: number(1e-6, 5e-5),
  flowM3S: number(1e-5, 0.1),
  volumeM3: number(3, 30),
  startPpm: number(380, 6000),
});
const seconds = number(0, 1e5);

describe('carbon dioxide', () => {
  test('tends to the steady value and never overshoots', () => {
    fc.assert(
      fc.property(room, seconds, number(0, 1e4), (filling, time, more) => {
        const steady = steadyPpm(filling);
        const now = ppmAfter(filling, time);
        const later = ppmAfter(filling, time + more);
        const slack = 1e-9 * (steady + filling.startPpm);
        const [low, high] = [Math.min(filling.startPpm, steady), Math.max(filling.startPpm, steady)];
        expect(now).toBeGreaterThanOrEqual(low - slack);
        expect(now).toBeLessThanOrEqual(high + slack);
        expect(Math.abs(later - steady)).toBeLessThanOrEqual(Math.abs(now - steady) + slack);
        const settled = ppmAfter(filling, (40 * filling.volumeM3) / filling.flowM3S);
        expect(Math.abs(settled - steady)).toBeLessThanOrEqual(slack);
      }),
    );
  });

  test('more fresh air never leaves more of it, nor do fewer people', () => {
    fc.assert(
      fc.property(room, seconds, number(1, 4), (filling, time, times) => {
        const start = { ...filling, startPpm: filling.outsidePpm };
        const now = ppmAfter(start, time);
        expect(ppmAfter({ ...start, flowM3S: start.flowM3S * times }, time)).toBeLessThanOrEqual(now + 1e-6);
        expect(
          ppmAfter({ ...start, generationM3S: start.generationM3S * times }, time),
        ).toBeGreaterThanOrEqual(now - 1e-6);
      }),
    );
  });

  test('is at the limit when it is said to be', () => {
    fc.assert(
      fc.property(room, number(600, 8000), (filling, limit) => {
        const time = secondsUntilPpm(filling, limit);
        if (time === 0) expect(filling.startPpm).toBeGreaterThanOrEqual(limit);
        else if (Number.isFinite(time)) expect(ppmAfter(filling, time) / limit).toBeCloseTo(1, 6);
        else expect(steadyPpm(filling)).toBeLessThanOrEqual(limit);
      }),
    );
  });

  test('little fresh air and none are the same', () => {
    fc.assert(
      fc.property(room, number(1, 5e4), (filling, time) => {
        const none = ppmAfter({ ...filling, flowM3S: 0 }, time);
        const hardly = ppmAfter({ ...filling, flowM3S: 1e-14 }, time);
        expect(hardly / none).toBeCloseTo(1, 8);
      }),
    );
  });

  test('the flow for a night keeps the limit, and is no more than that for ever', () => {
    fc.assert(
      fc.property(room, number(700, 5000), number(60, 5e4), (filling, limit, time) => {
        const start = { ...filling, startPpm: Math.min(filling.startPpm, limit) };
        const flowM3S = flowForPpmAfterM3S(start, limit, time);
        expect(flowM3S).toBeLessThanOrEqual(
          flowForSteadyPpm(start.generationM3S, start.outsidePpm, limit) * (1 + 1e-9),
        );
        const end = ppmAfter({ ...start, flowM3S }, time);
        expect(end).toBeLessThanOrEqual(limit * (1 + 1e-6));
        if (flowM3S > 0) expect(end / limit).toBeCloseTo(1, 5);
      }),
    );
  });

  test('a night cut in two ends as one night does', () => {
    fc.assert(
      fc.property(room, number(10, 5e4), number(0.01, 0.99), (filling, time, share) => {
        const { generationM3S, flowM3S } = filling;
        const spells = [share * time, (1 - share) * time].map((part) => ({
          seconds: part,
          generationM3S,
          flowM3S,
        }));
        const parts = ppmThrough(filling, spells);
        const end = ppmAfter(filling, time);
        expect((parts.at(-1)?.endPpm ?? 0) / end).toBeCloseTo(1, 9);
        const greatest = Math.max(...parts.map(({ greatestPpm }) => greatestPpm));
        expect(greatest / Math.max(filling.startPpm, end)).toBeCloseTo(1, 9);
      }),
    );
  });

  test('who works harder breathes out no less; the unknown person most', () => {
    const who = fc.record({ sex: fc.constantFrom(...sexes), ageYears: number(16, 100) });
    fc.assert(
      fc.property(who, number(0.5, 4), number(0, 1), (person, met, share) => {
        const flow = breathedOutAtZeroM3S({ ...person, met });
        expect(breathedOutAtZeroM3S({ ...person, met: met * Math.max(share, 0.01) })).toBeLessThanOrEqual(
          flow * (1 + 1e-9),
        );
        expect(breathedOutAtZeroM3S({ met })).toBeGreaterThanOrEqual(flow);
      }),
    );
  });
});

describe('damp', () => {
  // Less water than a pot plant gives off says nothing.
  const damp = fc.record({
    insideC: number(5, 30),
    outsideC: number(-25, 25),
    outsideHumidity: number(0, 1),
    releaseKgS: number(1e-6, 1e-3),
    flowM3S: number(1e-4, 0.1),
  });

  test('in the end as much water leaves as is set free', () => {
    fc.assert(
      fc.property(damp, (air) => {
        const inside = steadyDamp(air).vapourPressurePa;
        const outside = vapourPressurePa(air.outsideC, air.outsideHumidity);
        expect(waterRemovedKgS(air.flowM3S, inside, outside, air.insideC)).toBeCloseTo(air.releaseKgS, 12);
      }),
    );
  });

  test('tends to the steady damp and never overshoots', () => {
    fc.assert(
      fc.property(damp, number(0, 1), seconds, (air, startHumidity, time) => {
        const room20 = { ...air, volumeM3: 10, startHumidity };
        const steady = steadyDamp(air).relativeHumidity;
        const now = dampAfter(room20, time).relativeHumidity;
        expect(now).toBeGreaterThanOrEqual(Math.min(startHumidity, steady) - 1e-9);
        expect(now).toBeLessThanOrEqual(Math.max(startHumidity, steady) + 1e-9);
        expect(dampAfter(room20, 1e7).relativeHumidity / (steady + 1)).toBeCloseTo(steady / (steady + 1), 9);
      }),
    );
  });

  test('the flow for a humidity holds it', () => {
    fc.assert(
      fc.property(damp, number(0.2, 1), (air, wanted) => {
        const flowM3S = flowForHumidityM3S(air, wanted);
        if (!Number.isFinite(flowM3S) || flowM3S <= 0) return;
        expect(steadyDamp({ ...air, flowM3S }).relativeHumidity).toBeCloseTo(wanted, 9);
      }),
    );
  });

  test('saturation rises with the temperature, and the dew point brings it back', () => {
    fc.assert(
      fc.property(number(-60, 90), number(0.001, 5), (temperatureC, more) => {
        const pressurePa = saturationPressurePa(temperatureC);
        expect(saturationPressurePa(temperatureC + more)).toBeGreaterThan(pressurePa);
        expect(Math.abs(dewPointC(pressurePa) - temperatureC)).toBeLessThan(1e-6);
      }),
    );
  });
});

test('fresh air for heat carries that heat', () => {
  fc.assert(
    fc.property(number(1, 5000), number(0.5, 20), (gainW, riseK) => {
      const flow = flowForHeatM3S(gainW, riseK);
      expect(heatCarriedW(flow, riseK) / gainW).toBeCloseTo(1, 9);
      expect(riseOfHeatK(gainW, flow) / riseK).toBeCloseTo(1, 9);
    }),
  );
});
