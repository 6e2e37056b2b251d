import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  airFlow,
  area,
  arealMass,
  closeC,
  concentration,
  condensate,
  conductance,
  count,
  current,
  density,
  draught,
  duration,
  factor,
  flow,
  freeArea,
  type Kind,
  kelvins,
  length,
  type Measure,
  mass,
  massFlow,
  pressure,
  resistance,
  resistancePerMetre,
  share,
  smallVolume,
  temperatureC,
  transmittance,
  volume,
  wait,
} from '../../src/engine/measure.ts';
import { say } from '../../src/engine/phrase.ts';
import {
  formatMeasure,
  formatNonZero,
  formatPair,
  formatRow,
  formatStep,
  formatTypedStep,
  looksAlike,
  renderPhrase,
  type Units,
} from '../../src/report/format-measure.ts';

describe('formatMeasure', () => {
  test.each<[Measure, string, string]>([
    [mass(3412.4), '3,412 kg', '7,523 lb'],
    [mass(1234567), '1,234,567 kg', '2,721,754 lb'],
    [mass(999.4), '999 kg', '2,203 lb'],
    [mass(10), '10 kg', '22 lb'],
    [mass(9.94), '9.9 kg', '22 lb'],
    [mass(9.96), '10 kg', '22 lb'],
    [mass(0.45359237), '0.5 kg', '1.0 lb'],
    [mass(0), '0.0 kg', '0.0 lb'],
    // A column of 1 in of water is 249 Pa; 14.5038 psi are 1 bar.
    [pressure(12.34), '12.3 Pa', '12.3 Pa'],
    [pressure(250), '2.50 mbar', '2.50 mbar'],
    [pressure(240_000), '2.40 bar', '34.8 psi'],
    [flow(0.01 / 60), '10 L/min', '10 L/min'],
    // 1 m³/h is 0.5886 ft³/min.
    [airFlow(100 / 3600), '100 m³/h', '59 ft³/min'],
    [massFlow(0.45359237 / 3600), '454 g/h', '1.00 lb/h'],
    [wait(32.4), '32 s', '32 s'],
    [duration(3096), '52 min', '52 min'],
    [duration(3569), '59 min', '59 min'],
    [duration(3571), '1.0 h', '1.0 h'],
    [duration(-1800), '-30 min', '-30 min'],
    [duration(0), '0.0 h', '0.0 h'],
    [kelvins(10), '10.0 K', '18.0 °F apart'],
    [transmittance(1.234), '1.23 W/m²K', '1.23 W/m²K'],
    [conductance(45.6), '45.6 W/K', '45.6 W/K'],
    [freeArea(0.01), '100 cm²', '16 in²'],
    [concentration(0.001234), '1,234 ppm', '1,234 ppm'],
    // 1 oz/ft² is 305.15 g/m².
    [condensate(0.30515), '305 g/m²', '1.000 oz/ft²'],
    [mass(-112.4), '-112 kg', '-248 lb'],
    [mass(-0.01), '0.0 kg', '0.0 lb'],
    [length(1.37), '1370 mm', '4 ft 5.9 in'],
    [length(0.0254), '25 mm', '1.0 in'],
    [length(0.0008), '0.8 mm', '0.0 in'],
    [length(-0.0016), '-1.6 mm', '-0.1 in'],
    [length(0.0065), '7 mm', '0.3 in'],
    [length(0.00996), '10 mm', '0.4 in'],
    [length(0.00203), '2 mm', '0.1 in'],
    [length(0), '0 mm', '0.0 in'],
    [length(9.9994), '9999 mm', '32 ft 9.7 in'],
    [length(9.9996), '10.00 m', '32 ft 9.7 in'],
    [length(12.345), '12.35 m', '40 ft 6.0 in'],
    [length(0.9118), '912 mm', '35.9 in'],
    [length(0.9144), '914 mm', '3 ft 0.0 in'],
    // 47.96 in: rounding to a tenth must carry into the foot.
    [length(1.218184), '1218 mm', '4 ft 0.0 in'],
    [length(-0.0254), '-25 mm', '-1.0 in'],
    [area(14.2), '14.20 m²', '152.8 ft²'],
    [volume(0.07), '70 L', '70 L'],
    [volume(0.0045), '4.5 L', '4.5 L'],
    [arealMass(9.75), '9.8 kg/m²', '2.00 lb/ft²'],
    [density(680), '680 kg/m³', '42 lb/ft³'],
    [share(0.9621), '96 %', '96 %'],
    [share(0.034), '3.4 %', '3.4 %'],
    [factor(1.08), '1.08', '1.08'],
    [count(3), '3', '3'],
    // Water for 3.69 days does not last for 4.
    [count(3.69), '3.7', '3.7'],
    [count(29.96), '30', '30'],
    [closeC(11.42), '11.4 °C', '52.6 °F'],
    [closeC(-8), '-8 °C', '17.6 °F'],
    [resistancePerMetre(0.000386), '0.386 mohm a metre', '0.386 mohm a metre'],
    [resistancePerMetre(0.00798), '7.98 mohm a metre', '7.98 mohm a metre'],
    [resistancePerMetre(0.0133), '13.3 mohm a metre', '13.3 mohm a metre'],
    [smallVolume(0.000166), '0.17 L', '0.17 L'],
    [smallVolume(0.0012), '1.2 L', '1.2 L'],
    [draught(0.68), '0.68 Pa', '0.68 Pa'],
    [draught(41.7), '41.7 Pa', '41.7 Pa'],
    [conductance(0.3), '0.30 W/K', '0.30 W/K'],
  ])('writes %o as "%s" or "%s"', (measure, metric, imperial) => {
    expect(formatMeasure(measure, 'metric')).toBe(metric);
    expect(formatMeasure(measure, 'imperial')).toBe(imperial);
  });

  test('takes as many digits as it is told', () => {
    expect(formatMeasure(mass(2240.025), 'metric', 2)).toBe('2,240.03 kg');
    expect(formatMeasure(length(1.37), 'metric', 1)).toBe('1370.0 mm');
    expect(formatMeasure(length(1.218184), 'imperial', 2)).toBe('3 ft 11.96 in');
  });
});

describe('formatPair', () => {
  test.each<[Measure, Measure, string, string]>([
    [mass(2155), mass(2240), '2,155 kg', '2,240 kg'],
    [mass(2240), mass(2240), '2,240 kg', '2,240 kg'],
    [mass(2240.02), mass(2240), '2,240.02 kg', '2,240.00 kg'],
    [mass(2239.6), mass(2240), '2,239.6 kg', '2,240.0 kg'],
    [share(0.5304), share(0.53), '53.04 %', '53.00 %'],
    [length(9.9996), length(10), '9.9996 m', '10.0000 m'],
    [factor(0.7996), factor(0.8), '0.7996', '0.8000'],
    // Apart by less than six decimals show: as short as if they were equal.
    [mass(2240.0000001), mass(2240), '2,240 kg', '2,240 kg'],
  ])('writes %o against %o as "%s" and "%s"', (measured, limit, first, second) => {
    expect(formatPair(measured, limit, 'metric')).toEqual({ measured: first, limit: second });
  });

  test('does not compare different kinds', () => {
    expect(formatPair(share(0.5), volume(0.05), 'metric')).toEqual({ measured: '50 %', limit: '50 L' });
  });

  const kinds: readonly Kind[] = [
    'mass',
    'length',
    'area',
    'volume',
    'areal mass',
    'density',
    'share',
    'factor',
    'count',
  ];

  /** The number that a reader takes from a text, in the smaller of the units that its kind has. */
  const read = (text: string): number => {
    const plain = text.replaceAll(',', '').replace(/^-/, '');
    const feet = /^(\d+) ft ([\d.]+) in$/.exec(plain);
    const size = feet ? 12 * Number(feet[1]) + Number(feet[2]) : Number.parseFloat(plain);
    const scaled = /\d m$/.test(plain) ? 1000 * size : size;
    return text.startsWith('-') ? -scaled : scaled;
  };

  test('never contradicts which of the two is greater', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.constantFrom<Units>('metric', 'imperial'),
        fc.double({ min: -20_000, max: 20_000, noNaN: true }),
        fc.oneof(
          fc.double({ min: -1e4, max: 1e4, noNaN: true }),
          fc.integer({ min: 0, max: 7 }).map((power) => 10 ** -power),
          fc.integer({ min: 0, max: 7 }).map((power) => -(10 ** -power)),
        ),
        (kind, units, limit, distance) => {
          const measured = limit + distance;
          const pair = formatPair({ kind, value: measured }, { kind, value: limit }, units);
          const seen = Math.sign(read(pair.measured) - read(pair.limit));
          const real = Math.sign(measured - limit);
          // Six decimals of the largest unit (areal mass in lb/ft² has 1/4.9 of its SI number).
          const tooClose = Math.abs(measured - limit) < 2e-5;
          expect(seen === real || (tooClose && seen === 0), `${pair.measured} / ${pair.limit}`).toBe(true);
        },
      ),
      { numRuns: 3000 },
    );
  });
});

describe('formatNonZero', () => {
  test('shows a small number as something', () => {
    expect(formatNonZero(mass(-0.02), 'metric')).toBe('-0.02 kg');
    expect(formatNonZero(mass(85), 'metric')).toBe('85 kg');
    expect(formatNonZero(mass(0), 'metric')).toBe('0.0 kg');
  });
});

describe('formatStep', () => {
  const step = (from: Measure, to: Measure, units: Units = 'metric') => {
    const {
      from: before,
      to: after,
      change,
    } = formatStep(from, to, { kind: to.kind, value: to.value - from.value }, units);
    return [before, after, change];
  };

  // What a step is from, to and by is written in one unit, whatever each would be written in by itself.
  test.each<[string, Measure, Measure, readonly string[]]>([
    [
      'bar, though the second is less than 0.1 bar',
      pressure(40_000),
      pressure(8000),
      ['0.40 bar', '0.08 bar', '-0.32 bar'],
    ],
    [
      'bar, though the change is less than 0.1 bar',
      pressure(240_000),
      pressure(244_000),
      ['2.40 bar', '2.44 bar', '0.04 bar'],
    ],
    [
      'millibar, though the change is in pascals',
      pressure(68),
      pressure(51),
      ['0.68 mbar', '0.51 mbar', '-0.17 mbar'],
    ],
    [
      'hours, though the first is half an hour',
      duration(1320),
      duration(-8280),
      ['0.4 h', '-2.3 h', '-2.7 h'],
    ],
    [
      'hours, though the change is minutes',
      duration(243_360),
      duration(245_100),
      ['67.6 h', '68.1 h', '0.5 h'],
    ],
    [
      'metres, though the change is millimetres',
      length(52.36),
      length(52.61),
      ['52.36 m', '52.61 m', '0.25 m'],
    ],
    ['metres on both sides of ten', length(9.99), length(10.02), ['9.99 m', '10.02 m', '0.03 m']],
  ])('is in %s', (_, from, to, texts) => {
    expect(step(from, to)).toEqual(texts);
    const [first, second, change = ''] = texts;
    expect(step(to, from)).toEqual([second, first, change.startsWith('-') ? change.slice(1) : `-${change}`]);
  });

  test('has as many decimals in its change as it takes to tell the two apart', () => {
    expect(step(length(0.8373), length(0.8367))).toEqual(['837.3 mm', '836.7 mm', '-0.6 mm']);
    expect(step(mass(2240.02), mass(2240))).toEqual(['2,240.02 kg', '2,240.00 kg', '-0.02 kg']);
  });

  test('never makes something look like nothing', () => {
    expect(step(pressure(150_000), pressure(100))).toEqual(['1.50 bar', '0.001 bar', '-1.499 bar']);
    expect(step(mass(0), mass(0.02))).toEqual(['0.00 kg', '0.02 kg', '0.02 kg']);
    expect(step(duration(0), duration(7200))).toEqual(['0.0 h', '2.0 h', '2.0 h']);
  });

  test('in the units of the other system, too', () => {
    expect(step(pressure(240_000), pressure(8000), 'imperial')).toEqual(['34.8 psi', '1.2 psi', '-33.6 psi']);
    expect(step(length(0.9), length(1), 'imperial')).toEqual(['35.4 in', '3 ft 3.4 in', '3.9 in']);
  });
});

test.each<[Measure, Measure, string]>([
  [mass(24), mass(24.05), '0.05 kg'],
  [mass(38), mass(52), '14 kg'],
  [length(0.05), length(0.0525), '2.5 mm'],
  [length(9.9), length(10.25), '0.35 m'],
  [length(0.0254), length(0.0269875), '1.59 mm'],
  [pressure(240_000), pressure(235_000), '-0.05 bar'],
  [temperatureC(-8), temperatureC(-7.5), '0.5 °C'],
  [temperatureC(20), temperatureC(15), '-5 °C'],
  [mass(0.4), mass(0.4 + 1e-12), '0 kg'],
])('what was typed as %o and then %o was changed by %s', (from, to, by) => {
  const change = { kind: to.kind, value: to.value - from.value };
  expect(formatTypedStep(from, to, change, 'metric')).toBe(by);
});

test('what was typed in metric has the usual digits in the other system', () => {
  expect(formatTypedStep(mass(31), mass(58), mass(27), 'imperial')).toBe('60 lb');
  expect(
    formatTypedStep(temperatureC(0), temperatureC(5), { kind: 'temperature', value: 5 }, 'imperial'),
  ).toBe('9 °F');
});

test('values in one row are in one unit', () => {
  const { usual, apart } = formatRow([duration(1320), duration(15_480), duration(100)], 'metric');
  expect(usual).toEqual(['0.4 h', '4.3 h', '0.03 h']);
  expect(apart).toEqual(['0.4 h', '4.3 h', '0.03 h']);
  expect(looksAlike(length(9.9996), length(10), 'metric')).toBe(true);
  expect(looksAlike(length(9.99), length(10), 'metric')).toBe(false);
});

describe('renderPhrase', () => {
  test('joins texts and measures in the reader’s units', () => {
    const phrase = say`The rear axle carries ${mass(1980)}, ${length(1.37)} behind it.`;
    expect(renderPhrase(phrase, 'metric')).toBe('The rear axle carries 1,980 kg, 1370 mm behind it.');
    expect(renderPhrase(phrase, 'imperial')).toBe('The rear axle carries 4,365 lb, 4 ft 5.9 in behind it.');
  });

  test('tells apart measures that would look alike, in the phrase or beside it', () => {
    expect(renderPhrase(say`${mass(2240.2)} is more than ${mass(2240)}`, 'metric')).toBe(
      '2,240.2 kg is more than 2,240.0 kg',
    );
    expect(renderPhrase(say`It carries ${share(0.531)}.`, 'metric', [share(0.53)])).toBe(
      'It carries 53.1 %.',
    );
  });
});

test('a small current and a small resistance keep digits that say something', () => {
  const shown = (measure: Measure): string => formatMeasure(measure, 'metric');
  expect(shown(current(0.06))).toBe('0.060 A');
  expect(shown(current(0))).toBe('0.0 A');
  expect(shown(current(0.8))).toBe('0.8 A');
  expect(shown(current(-0.02))).toBe('-0.020 A');
  expect(shown(resistance(0.00035))).toBe('0.35 mohm');
  expect(shown(resistance(0.0021))).toBe('2.1 mohm');
});
