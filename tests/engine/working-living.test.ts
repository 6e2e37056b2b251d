import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/engine/finding.ts';
import { workedBy } from '../support/worked.ts';

/*
 * Workings of water, air and heat where the Curlew itself does not come: other codes, no pump, vents that lack.
 */

const curlew = readFileSync('examples/curlew/curlew.yaml', 'utf8');
const winter = readFileSync('examples/curlew/winter.yaml', 'utf8');

const changed = (...changes: readonly (readonly [string, string])[]): string =>
  changes.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`the Curlew has no "${from}"`);
    return text.replace(from, to);
  }, curlew);

const workedOf = (text: string, wanted: string): Promise<readonly Finding[]> =>
  workedBy(({ rule }) => rule === wanted)(text);

const wordsOf = ({ working = [] }: Finding): string =>
  working
    .map(({ what, sum = [] }) => `${what} ${sum.filter((part) => typeof part === 'string').join('#')}`)
    .join('\n');

const wideHotPipe: readonly [string, string] = [
  'run: hot to sink, material: PEX, size: 12 mm',
  'length: 5 m, material: PEX, size: 22 mm',
];
const roofVent = '    roof vent: {opening: roof fan, free_area: 200 cm2, closes: false}\n';
const lowVent = 'floor vent: {in: floor, free_area: 150 cm2, closes: false';

describe.each([
  ['Australian codes', 'air.fixed-vents', changed(['codes: uk', 'codes: au']), /6\.1 cm²/],
  ['no codes', 'air.fixed-vents', changed(['codes: uk\n', '']), /picks the row|6\.1 cm²/],
  [
    'no low vent',
    'air.fixed-vents',
    changed([lowVent, lowVent.replace('false', 'true')]),
    /none is in the plan/,
  ],
  [
    'vents of which too little is said',
    'air.fixed-vents',
    changed(
      [lowVent, lowVent.replace(', closes: false', '')],
      [roofVent, roofVent.replace(', closes: false', '')],
    ),
    /none is in the plan/,
  ],
  [
    'high vents in a wall',
    'air.fixed-vents',
    changed(
      [
        roofVent,
        '    wall vent: {in: left wall, free_area: 200 cm2, closes: false, level: high, at: {from_front: 900 mm, from_left: 0 mm, above_floor: 1820 mm}}\n',
      ],
      ['vent: roof vent, ', ''],
    ),
    /A_wall/,
  ],
  [
    'leaks that bring more',
    'air.night',
    changed(['air_changes_per_hour: 0.8', 'air_changes_per_hour: 8']),
    /more than the vents give/,
  ],
  [
    'air that gets better',
    'air.night',
    changed(['free_area: 200 cm2', 'free_area: 2000 cm2'], ['free_area: 150 cm2', 'free_area: 1500 cm2']),
    /falls from there/,
  ],
  [
    'nothing that moves air',
    'air.night',
    changed(
      [lowVent, lowVent.replace('false', 'true')],
      ['  air_changes_per_hour: 0.8', '  air_changes_per_hour: 0'],
    ),
    /nothing, without fixed vents/,
  ],
  [
    'a pump too weak',
    'water.flow',
    changed(['cut_out: 2.4 bar, cut_in: 1.7 bar', 'cut_out: 0.05 bar, cut_in: 0.03 bar']),
    /nothing is left/,
  ],
  [
    'a curve of the pump',
    'water.flow',
    changed([
      'flow: 10 L/min, cut_out',
      'curve: [{flow: 0 L/min, pressure: 2.4 bar}, {flow: 6 L/min, pressure: 1.2 bar}, {flow: 10 L/min, pressure: 0 bar}], cut_out',
    ]),
    /along its curve/,
  ],
  [
    'much water that comes soon',
    'water.hot-wait',
    changed(wideHotPipe, ['use: tap, flow: 5 L/min', 'use: tap, flow: 12 L/min']),
    /stands in the hot pipes/,
  ],
  ['a heater too small', 'heat.loss', changed(['output: 2 kW', 'output: 1 kW']), /What the heater gives/],
])('%s', (_, rule, text, words) => {
  test(`${rule} comes to what was measured, by parts that add up`, async () => {
    const worked = await workedOf(text, rule);
    expect(worked.length).toBeGreaterThan(0);
    expect(worked.map(wordsOf).join('\n')).toMatch(words);
    for (const { measured, limit, working = [], subject } of worked) {
      const last = working.at(-1)?.result;
      expect(last?.kind, subject).toBe(measured?.kind);
      expect(last?.value ?? Number.NaN, subject).toBeCloseTo(measured?.value ?? 0, 9);
      if (limit && (rule === 'air.fixed-vents' || rule === 'heat.loss'))
        expect(working.at(-2)?.result?.value, subject).toBeCloseTo(limit.measure.value, 9);
      for (const { result, parts } of working)
        if (parts)
          expect(parts.rows.reduce((sum, { adds }) => sum + adds.value, 0)).toBeCloseTo(
            result?.value ?? 0,
            9,
          );
    }
  });
});

/** The formula of the words, with pressures at the wet faces, comes to what the year's reckoning found. */
test('what gathers in a wall is what comes less what goes on', async () => {
  const worked = await workedOf(winter, 'heat.interstitial');
  const gathered = worked.flatMap(({ working = [] }) =>
    working.filter(({ what }) => what.startsWith('What gathers')),
  );
  expect(gathered.length).toBeGreaterThan(2);
  for (const { parts } of gathered)
    for (const { values, adds } of parts?.rows ?? []) {
      const [comes, goesOn] = values.map(({ value }) => value);
      expect((comes ?? 0) - (goesOn ?? 0)).toBeCloseTo(adds.value, 9);
    }
});

/** From the table alone: the straight line of vapour and temperature through the layers. */
test('a wall goes from the air outside to the air inside', async () => {
  const [floor] = await workedOf(curlew, 'heat.interstitial');
  const [air, through] = floor?.working ?? [];
  const rows = through?.parts?.rows ?? [];
  expect(rows.at(-1)?.values.at(-1)?.value).toBeCloseTo(air?.result?.value ?? 0, 6);
  let reachedK = rows[0]?.values[1]?.value ?? 0;
  for (const { values, adds } of rows) {
    expect(values[1]?.value).toBeCloseTo(reachedK, 6);
    reachedK += adds.value;
  }
});
