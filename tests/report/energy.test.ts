import { stripVTControlCharacters } from 'node:util';
import stringWidth from 'fast-string-width';
import { describe, expect, test } from 'vitest';
import type { EnergyOverview, OverviewMonth } from '../../src/engine/energy-overview.ts';
import { energyWh } from '../../src/engine/measure.ts';
import { say } from '../../src/engine/phrase.ts';
import { barOf, renderEnergy } from '../../src/report/energy.ts';

const month = (changes: Partial<OverviewMonth> = {}): OverviewMonth => ({
  name: 'September',
  sunKWhM2: 3.14,
  arrayWh: 12_345,
  otherWh: 1_234,
  loadsWh: 10_000,
  shortWh: 0,
  dullOnly: true,
  runsDown: false,
  lowest: 0.42,
  nights: 2.39,
  ...changes,
});

const overview = (changes: Partial<EnergyOverview> = {}): EnergyOverview => ({
  name: 'Curlew',
  units: 'metric',
  place: say`Sun and air of a place, 11 km away.`,
  months: [
    month(),
    month({
      name: 'November',
      arrayWh: 200,
      otherWh: 0,
      loadsWh: 400,
      shortWh: 210,
      runsDown: true,
      lowest: 1,
    }),
    month({
      name: 'December',
      arrayWh: 0,
      otherWh: 0,
      shortWh: 123_456,
      dullOnly: false,
      nights: Number.POSITIVE_INFINITY,
    }),
  ],
  loads: [
    {
      name: 'a load with a name that is as long as names of loads in plans may ever become',
      when: 'evening',
      summerWh: 80,
      winterWh: 120,
    },
    { name: 'fr\u001bidge', when: 'always', summerWh: 20, winterWh: 20 },
  ],
  outcome: say`The worst month is December: the loads go short of ${energyWh(123_456)}.`,
  changes: [say`less load: ${energyWh(100)} a day less`],
  assumptions: [say`roof: lies flat`],
  cautions: ['A planning aid.', 'Keep something in hand.'],
  ...changes,
});

describe('the year of energy as text', () => {
  test.each([60, 61, 72, 80, 89, 90, 100, 132, 200])('fits %i columns', (width) => {
    const text = renderEnergy(overview(), { width, colour: false });
    for (const line of text.split('\n')) expect(stringWidth(line), line).toBeLessThanOrEqual(width);
    expect(text).toContain('- A planning aid.');
    expect(text).toContain('- Keep something in hand.');
    expect(text).toMatch(/^(?:Nov|November) .* 210\* .*$/m);
  });
  test('says everything without colour, and colour changes no word', () => {
    const plain = renderEnergy(overview(), { width: 100, colour: false });
    const painted = renderEnergy(overview(), { width: 100, colour: true });
    expect(plain).not.toContain('\u001b');
    expect(painted).toContain('\u001b');
    expect(stripVTControlCharacters(painted)).toBe(plain);
  });
  test('marks what is short in dull days only, and what falls', () => {
    const text = renderEnergy(overview(), { width: 100, colour: false }).replace(/\s+/g, ' ');
    expect(text).toContain('100 % ↓');
    expect(text).toContain('* only in the dull days at the end of the month.');
    expect(text).toContain('↓ the battery falls from one usual day to the next.');
    const calm = renderEnergy({ ...overview(), months: [month()] }, { width: 100, colour: false });
    expect(calm).not.toContain('↓');
    expect(calm).not.toContain('*');
    expect(calm).toMatch(/^September .* – /m);
  });
  test('nights are rounded down, endless ones are many', () => {
    const text = renderEnergy(overview(), { width: 100, colour: false });
    expect(text).toMatch(/^September .* 2\.3 {2}/m);
    expect(text).toMatch(/^December .* > 99 {2}/m);
  });
  test('sums the loads', () => {
    expect(renderEnergy(overview(), { width: 100, colour: false })).toMatch(/^all +100 +140$/m);
  });
});

describe('a bar', () => {
  test('is the part of the loads that a usual day brings, and full only if that is all', () => {
    expect(barOf(month({ arrayWh: 40, otherWh: 10, loadsWh: 100 }), 10)).toBe('█████░░░░░');
    expect(barOf(month({ arrayWh: 99, otherWh: 0, loadsWh: 100 }), 10)).toBe('█████████░');
    expect(barOf(month({ arrayWh: 100, otherWh: 0, loadsWh: 100 }), 10)).toBe('██████████');
    expect(barOf(month({ arrayWh: 900, otherWh: 0, loadsWh: 100 }), 4)).toBe('████');
    expect(barOf(month({ arrayWh: 0, otherWh: 0, loadsWh: 0 }), 2)).toBe('██');
    expect(barOf(undefined, 4)).toBe('');
  });
});
