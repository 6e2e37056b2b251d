import fc from 'fast-check';
import { expect, test } from 'vitest';
import { converterInputA } from '../../../src/calc/electrical/alternator.ts';
import { leadDropByTableV, leadDropV } from '../../../src/calc/electrical/hook-up-lead.ts';
import { inverterInputA, startingPowerW } from '../../../src/calc/electrical/inverter.ts';
import { controllerOutputs, controllersFor } from '../../../src/calc/electrical/solar-current.ts';
import {
  coldFactor,
  moduleVoltageByShareV,
  moduleVoltageByVoltsV,
  mostInSeries,
  stringVoltageV,
} from '../../../src/calc/electrical/solar-voltage.ts';
import { coldVoltageRows } from '../../../src/catalogue/electrical/cold-voltage.ts';

// Ranges start above the numbers so small that their rounding is no longer relative.
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test('the power into an inverter is the power out and its loss', () => {
  fc.assert(
    fc.property(number(0.001, 5000), number(9, 60), number(0.5, 1), (outputW, lowestVoltageV, efficiency) => {
      const inputW = inverterInputA(outputW, { lowestVoltageV, efficiency }) * lowestVoltageV;
      const lostW = inputW * (1 - efficiency);
      expect(Math.abs(inputW - lostW - outputW)).toBeLessThanOrEqual(1e-9 * outputW);
    }),
  );
});

test('a lower battery voltage never takes less current', () => {
  fc.assert(
    fc.property(number(1, 5000), number(9, 60), number(0, 5), (outputW, voltageV, lower) => {
      const at = (lowestVoltageV: number) => inverterInputA(outputW, { lowestVoltageV, efficiency: 0.85 });
      expect(at(voltageV - lower)).toBeGreaterThanOrEqual(at(voltageV));
    }),
  );
});

const loads = fc.array(fc.record({ runningW: number(0, 2000), startFactor: number(1, 7) }), {
  maxLength: 12,
});
test('a start never takes less than running nor more than all starting at once', () => {
  fc.assert(
    fc.property(loads, (all) => {
      const runningW = all.reduce((sum, load) => sum + load.runningW, 0);
      const atOnceW = all.reduce((sum, load) => sum + load.runningW * load.startFactor, 0);
      const startingW = startingPowerW(all);
      expect(startingW).toBeGreaterThanOrEqual(runningW * (1 - 1e-12));
      expect(startingW).toBeLessThanOrEqual(atOnceW * (1 + 1e-12) + 1e-9);
    }),
  );
});

test('a module gives no less voltage when it is colder', () => {
  fc.assert(
    fc.property(number(-40, 40), number(-40, 40), number(0, 0.004), (oneC, otherC, fall) => {
      const [colderC, warmerC] = oneC <= otherC ? [oneC, otherC] : [otherC, oneC];
      const byShare = (temperatureC: number) => moduleVoltageByShareV(40, -fall, temperatureC);
      expect(byShare(colderC)).toBeGreaterThanOrEqual(byShare(warmerC) * (1 - 1e-12));
      expect(coldFactor(coldVoltageRows, colderC)).toBeGreaterThanOrEqual(
        coldFactor(coldVoltageRows, warmerC),
      );
    }),
  );
});

test('a coefficient in volts is the one in shares times the rated voltage', () => {
  fc.assert(
    fc.property(number(10, 60), number(0, 0.004), number(-40, 80), (ratedV, fall, temperatureC) => {
      const byShare = moduleVoltageByShareV(ratedV, -fall, temperatureC);
      expect(moduleVoltageByVoltsV(ratedV, -fall * ratedV, temperatureC)).toBeCloseTo(byShare, 9);
    }),
  );
});

test('the longest string keeps the limit and one module more does not', () => {
  fc.assert(
    fc.property(number(30, 500), number(10, 60), (limitV, moduleV) => {
      const inSeries = mostInSeries(limitV, moduleV);
      if (inSeries > 0) expect(stringVoltageV(moduleV, inSeries)).toBeLessThanOrEqual(limitV * (1 + 1e-8));
      expect(stringVoltageV(moduleV, inSeries + 1)).toBeGreaterThan(limitV);
    }),
  );
});

test('the three practices keep their order and controllers are enough', () => {
  fc.assert(
    fc.property(number(1, 5000), number(10, 100), (arrayW, ratingA) => {
      const out = controllerOutputs(arrayW, { nominalV: 12, lowestV: 10.5, chargeV: 14.4 }, 1.25);
      expect(out.byNominalA).toBeGreaterThan(out.byLowestA);
      expect(out.byLowestA).toBeGreaterThan(out.byChargeA);
      expect(controllersFor(out.byNominalA, ratingA) * ratingA).toBeGreaterThanOrEqual(
        out.byNominalA * (1 - 1e-8),
      );
    }),
  );
});

test('a converter never gives more power than it takes', () => {
  fc.assert(
    fc.property(
      number(0.001, 100),
      number(12, 15),
      number(9, 15),
      number(0.5, 1),
      (outputA, outputV, inputV, efficiency) => {
        const takenW = converterInputA({ outputA, outputV, inputV, efficiency }) * inputV;
        expect(takenW).toBeGreaterThanOrEqual(outputA * outputV * (1 - 1e-12));
      },
    ),
  );
});

test('a lead’s drop is proportional to length and current, both ways of reckoning alike', () => {
  fc.assert(
    fc.property(number(0, 63), number(0, 100), number(1e-4, 0.05), (currentA, lengthM, conductorOhmPerM) => {
      const dropV = leadDropV(currentA, { lengthM, conductorOhmPerM });
      expect(leadDropByTableV(currentA, lengthM, 2 * conductorOhmPerM)).toBeCloseTo(dropV, 9);
      expect(leadDropV(2 * currentA, { lengthM, conductorOhmPerM })).toBeCloseTo(2 * dropV, 9);
      expect(leadDropV(currentA, { lengthM: 2 * lengthM, conductorOhmPerM })).toBeCloseTo(2 * dropV, 9);
    }),
  );
});
