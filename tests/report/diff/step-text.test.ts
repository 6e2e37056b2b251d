import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  energyWh,
  length,
  type Measure,
  mass,
  pressure,
  share,
  temperatureC,
} from '../../../src/engine/measure.ts';
import { stepText } from '../../../src/report/diff/step-text.ts';

const step = (from: Measure, to: Measure, units: 'metric' | 'imperial' = 'metric') => {
  const texts = stepText(from, to, { kind: to.kind, value: to.value - from.value }, units);
  return [texts.from, texts.to, texts.change];
};

test.each<[string, Measure, Measure, readonly string[]]>([
  ['rounded away from each other', length(2.5323), length(2.5597), ['2532.3 mm', '2559.7 mm', '27.4 mm']],
  ['rounded towards each other', length(0.8374), length(0.8846), ['837.4 mm', '884.6 mm', '47.2 mm']],
  ['less than before', mass(1000.4), mass(899.6), ['1,000.4 kg', '899.6 kg', '-100.8 kg']],
  [
    'a change with a decimal that the values lack',
    mass(120.4),
    mass(125.6),
    ['120.4 kg', '125.6 kg', '5.2 kg'],
  ],
  ['a decimal on one side only', mass(9.8), mass(12.2), ['9.8 kg', '12.2 kg', '2.4 kg']],
  ['per cent', share(0.4576), share(0.4602), ['45.76 %', '46.02 %', '0.26 %']],
  ['thousands', energyWh(12_000.4), energyWh(19_999.6), ['12,000.4 Wh', '19,999.6 Wh', '7,999.2 Wh']],
  [
    'degrees, which do not begin at nothing',
    temperatureC(17.6),
    temperatureC(20.4),
    ['17.6 °C', '20.4 °C', '2.8 °C'],
  ],
])('has a decimal more where the printed digits would not add up: %s', (_, from, to, texts) => {
  expect(step(from, to)).toEqual(texts);
});

test.each<[Measure, Measure, readonly string[]]>([
  [mass(31), mass(58), ['31 kg', '58 kg', '27 kg']],
  [mass(120), mass(125.2), ['120 kg', '125 kg', '5.2 kg']],
  [pressure(40_000), pressure(8000), ['0.40 bar', '0.08 bar', '-0.32 bar']],
  [share(0), share(0.26), ['0.0 %', '26 %', '26 %']],
  [length(9.99), length(10.02), ['9.99 m', '10.02 m', '0.03 m']],
])('leaves alone what adds up', (from, to, texts) => {
  expect(step(from, to)).toEqual(texts);
});

test('in a unit that a value by itself would not have, the change is that of the printed digits', () => {
  expect(step(length(9.994), length(10.026))).toEqual(['9.99 m', '10.03 m', '0.04 m']);
});

test('feet and inches stay as they are', () => {
  expect(step(length(0.9), length(1), 'imperial')).toEqual(['35.4 in', '3 ft 3.4 in', '3.9 in']);
});

test('a reader who takes one value from the other gets the change', () => {
  const number = (text = '') => Number(text.replace(/ .*/, '').replaceAll(',', ''));
  const decimals = (text = '') => /\.(\d+)/.exec(text)?.[1]?.length ?? 0;
  const value = fc.double({ min: -5000, max: 5000, noNaN: true });
  fc.assert(
    fc.property(value, value, (one, other) => {
      const [from, to, change] = step(mass(one), mass(other));
      const unit = 10 ** -Math.min(Math.max(decimals(from), decimals(to)), decimals(change));
      expect(Math.abs(number(to) - number(from) - number(change))).toBeLessThanOrEqual(unit / 2 + 1e-9);
      expect(Math.abs(number(change) - (other - one))).toBeLessThanOrEqual(unit);
    }),
  );
});
