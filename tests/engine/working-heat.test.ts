import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Finding, Step } from '../../src/engine/finding.ts';
import type { Measure } from '../../src/engine/measure.ts';
import { formatMeasure, renderPhrase } from '../../src/report/format-measure.ts';
import { linings, warmVan } from '../support/warm-van.ts';
import { workedBy } from '../support/worked.ts';

/*
 * Every working of heat comes to what was measured, over the examples and over vans that reach its other branches; and the
 * sums that are printed are done again by hand, from nothing but the numbers in them.
 */

const worked = [
  'heat.ducts',
  'heat.fuel',
  'heat.heater-exhaust',
  'heat.interstitial',
  'heat.loss',
  'heat.panes',
  'heat.ribs',
  'heat.summer',
  'heat.surfaces',
  'heat.warm-up',
];

/** The limit is worked out too: the step before the last. */
const withWorkedLimit = ['heat.loss', 'heat.panes', 'heat.ribs', 'heat.summer', 'heat.surfaces'];

const allWorkedOf = workedBy(({ rule }) => worked.includes(rule));

const workedOf = async (text: string, wanted: readonly string[] = worked): Promise<readonly Finding[]> =>
  (await allWorkedOf(text)).filter(({ rule }) => wanted.includes(rule));

const examples = ['curlew', 'oak', 'crowded', 'tangled', 'thin-cables', 'winter'].map(
  (name) => [name, readFileSync(`examples/curlew/${name}.yaml`, 'utf8')] as const,
);
const curlew = examples[0]?.[1] ?? '';
const changed = (...changes: readonly (readonly [string, string])[]): string =>
  changes.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`the Curlew has no "${from}"`);
    return text.replace(from, to);
  }, curlew);

const sunny = 'winter_low: -10 degC, summer_high: 35 degC';
const ribbedBay =
  '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, ribs: [{in: left wall, from_front: 1 m, width: 50 mm}, {in: right wall, from_front: 1 m, width: 50 mm}]}';
const skylight = '{skylight: {kind: window, in: ceiling, length: 600 mm, width: 500 mm}}';
const battery =
  'electrical: {voltage: 12 V, battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 200 Ah}}';
const battened = linings.replace(
  '{of: walls, layers: [{material: XPS, thickness: 36 mm}]}',
  '{of: walls, layers: [{material: sheep wool, thickness: 50 mm, share: 90 %}, {material: spruce, thickness: 30 mm, share: 10 %}, {material: XPS, thickness: 20 mm, share: 80 %}]}',
);

/** What reaches the branches that no example reaches; each says in which rule. */
const others: readonly (readonly [string, string, string])[] = [
  ['a heater too small', 'heat.loss', changed(['output: 2 kW', 'output: 1 kW'])],
  ['leaks that count', 'heat.loss', changed(['air_changes_per_hour: 0.8', 'air_changes_per_hour: 9'])],
  ['a heater that never gets there', 'heat.warm-up', changed(['output: 2 kW', 'output: 1 kW'])],
  ['gas for heat', 'heat.fuel', changed(['heated_by: diesel, efficiency: 80 %', 'heated_by: gas'])],
  ['heat of the engine', 'heat.fuel', changed(['heated_by: diesel', 'heated_by: engine'])],
  ['heat of the hook-up', 'heat.fuel', changed(['heated_by: diesel', 'heated_by: mains'])],
  ['heat of the battery', 'heat.fuel', changed(['heated_by: diesel', 'heated_by: battery'])],
  ['heat of a battery alone', 'heat.fuel', warmVan({ heat: 'heater: {heated_by: battery}', rest: battery })],
  ['no tank', 'heat.fuel', warmVan({ heat: 'heater: {heated_by: diesel}' })],
  ['a duct too long', 'heat.ducts', changed(['duct_limit: 5 m', 'duct_limit: 1 m'])],
  [
    'usual ducts',
    'heat.ducts',
    warmVan({
      heat: 'heater: {output: 2 kW}, ducts: {one: {length: 3 m, bore: 50 mm, outlets: 3}, other: {length: 3 m, bore: 60 mm, outlets: 1}}',
    }),
  ],
  [
    'no outlet',
    'heat.ducts',
    warmVan({ heat: 'heater: {output: 2 kW}, ducts: {one: {length: 3 m, bore: 60 mm, outlets: 0}}' }),
  ],
  [
    'an exhaust beside a vent',
    'heat.heater-exhaust',
    warmVan({
      heat: 'heater: {heated_by: diesel, exhaust: {from_front: 3 m, from_left: 0 m, above_floor: 0 mm}}',
      van: {
        openings:
          '{window: {kind: window, in: left wall, length: 500 mm, height: 500 mm, at: {from_front: 3.2 m, above_floor: 0.2 m}}}',
      },
      rest: 'air: {vents: {floor vent: {in: floor, free_area: 50 cm2, at: {from_front: 3 m, from_left: 300 mm, above_floor: 0 mm}}}}',
    }),
  ],
  [
    'a pane in the roof',
    'heat.panes',
    warmVan({ heat: 'panes: {skylight: {kind: single glass}}', van: { openings: skylight } }),
  ],
  [
    'a hatch in the roof',
    'heat.panes',
    warmVan({ heat: 'panes: {skylight: {kind: double acrylic}}', van: { openings: skylight } }),
  ],
  [
    'a pane that is all film',
    'heat.panes',
    warmVan({ heat: 'panes: {skylight: {u_value: 20 W/m2/K}}', van: { openings: skylight } }),
  ],
  [
    'bare ribs',
    'heat.ribs',
    warmVan({ heat: 'ribs: {depth: 30 mm, metal: 1.2 mm}', van: { load_bay: ribbedBay } }),
  ],
  ['mould on walls', 'heat.surfaces', warmVan({ living: sunny })],
  ['battens and two planes', 'heat.surfaces', warmVan({ living: sunny, linings: battened })],
  [
    'bare metal',
    'heat.surfaces',
    warmVan({ living: sunny, linings: linings.replace(/ {2}ceiling.*\n/, '') }),
  ],
  ['no fan', 'heat.summer', warmVan({ living: sunny })],
  ['leaks in summer', 'heat.summer', changed(['air_changes_per_hour: 0.8', 'air_changes_per_hour: 9'])],
  [
    'a fan of which too little is known',
    'heat.summer',
    warmVan({ living: sunny, rest: 'air: {fans: {roof: {flow: 900 m3/h}}}' }),
  ],
  ['a heater too slow', 'heat.warm-up', warmVan({ heat: 'heater: {output: 1 kW}, warms_up_in: 5 min' })],
];

function expectSound({ rule, subject, measured, limit, working = [] }: Finding): void {
  const name = `${rule} ${subject}`;
  const last = working.at(-1)?.result;
  expect(last?.kind, name).toBe(measured?.kind);
  const scale = Math.abs(measured?.value ?? 0) + 1e-9;
  expect((last?.value ?? Number.NaN) / scale, name).toBeCloseTo((measured?.value ?? 0) / scale, 9);
  if (limit && withWorkedLimit.includes(rule))
    expect(working.at(-2)?.result?.value, name).toBeCloseTo(limit.measure.value, 9);
  for (const { result, parts, what } of working) {
    if (!parts) continue;
    const sum = parts.rows.reduce((total, { adds }) => total + adds.value, 0);
    expect(sum, `${name}: ${what}`).toBeCloseTo(result?.value ?? Number.NaN, 6);
    for (const row of parts.rows) expect(row.values).toHaveLength(parts.columns.length - 1);
  }
}

describe.each(examples)('%s', (_, text) => {
  test('every measured finding of heat is worked out', async () => {
    const found = await workedOf(text);
    expect(found.filter(({ working }) => !working).map(({ rule, subject }) => `${rule} ${subject}`)).toEqual(
      [],
    );
    for (const finding of found) expectSound(finding);
  });
});

test('all rules of heat that measure do so in the Curlew', async () => {
  const rulesFound = new Set((await workedOf(curlew)).map(({ rule }) => rule));
  expect([...rulesFound].sort()).toEqual(worked);
});

test.each(others)('%s (%s)', async (_, rule, text) => {
  const found = await workedOf(text);
  const those = found.filter((each) => each.rule === rule);
  expect(those.length).toBeGreaterThan(0);
  for (const finding of found) {
    expect(finding.working, `${finding.rule} ${finding.subject}`).toBeDefined();
    expectSound(finding);
  }
});

// --- By hand ---

const measuresIn = ({ sum = [] }: Step): readonly number[] =>
  sum.filter((part): part is Measure => typeof part !== 'string').map(({ value }) => value);

const allSteps = async (): Promise<readonly (Step & { readonly rule: string })[]> => {
  const texts = [...examples.map(([, text]) => text), ...others.map(([, , text]) => text)];
  const found = (await Promise.all(texts.map((text) => workedOf(text)))).flat();
  return found.flatMap(({ rule, working = [] }) => working.map((step) => ({ ...step, rule })));
};

/** What a step's sum says, done from its numbers alone; by how the step begins. */
const byHand: readonly (readonly [
  begins: RegExp,
  hand: (numbers: readonly number[], film: number) => number,
])[] = [
  [
    /^What warmth draws through the fixed vents/,
    ([lowM2 = 0, heightM = 0, low = 0, high = 0, inK = 0, outK = 0, differenceK = 0, warmK = 0]) =>
      0.65 *
      lowM2 *
      Math.sqrt(((2 * 9.81 * heightM) / (1 + ((low / high) ** 2 * inK) / outK)) * (differenceK / warmK)),
  ],
  [/^Changes of air in an hour/, ([flow = 0, room = 0]) => (flow * 3600) / room],
  [/^What leaves with the air/, ([n = 0, room = 0]) => (n * room * 1200) / 3600],
  [/^What is lost for each kelvin in all/, ([walls = 0, air = 0]) => walls + air],
  [/^What is lost (in the coldest night|once it is warm)/, ([h = 0, inK = 0, outK = 0]) => h * (inK - outK)],
  [/^With the margin/, ([lost = 0, margin = 0]) => lost * (1 + margin)],
  [/^On the mean of the day/, ([a = 0, t = 0, b = 0, u = 0, day = 0]) => (a * t + b * u) / day],
  [/^What the heater gets of a full tank/, ([tank = 0, left = 0]) => tank * (1 - left)],
  [/^What the full battery gives/, ([charge = 0, volts = 0, usable = 0]) => charge * volts * usable],
  [/^So much goes through(?: there)?: U/, ([r = 0]) => 1 / r],
  [/^The mean of both/, ([straightU = 0, spreadR = 0]) => 1 / ((1 / straightU + spreadR) / 2)],
  [/^So much warmer than outside the face must be/, ([t = 0, outK = 0]) => t - outK],
  [
    /^So much warmer than outside the face of/,
    ([u = 0, inK = 0, outK = 0], film) => (1 - u * film) * (inK - outK),
  ],
  [/^As warm as it would get/, ([outK = 0, watts = 0, h = 0]) => outK + watts / h],
  [
    /^How long it takes: t = C/,
    ([c = 0, h = 0, endK = 0, startK = 0, alsoEndK = 0, wantedK = 0]) =>
      (c / h) * Math.log((endK - startK) / (alsoEndK - wantedK)),
  ],
  [/^All that warms up/, ([room = 0, lined = 0]) => room * 1200 + lined],
  [
    /^The air that it takes/,
    ([sun = 0, people = 0, rise = 0, h = 0]) => Math.max(0, ((sun + people) / rise - h) / 1200),
  ],
  [/^The air that comes: the larger/, (both) => Math.max(...both)],
  [/^How much warmer than the air the sun/, ([a = 0, sun = 0, sky = 0]) => a * sun * 0.04 - sky],
  [/^In a straight line/, (sides) => Math.hypot(...sides)],
];

/** The film of air is a figure of the tables and stands in the words: 0.13 upright, 0.25 in still air. */
const filmIn = ({ sum = [] }: Step): number =>
  Number(/· ([\d.]+) m²K\/W/.exec(sum.filter((part) => typeof part === 'string').join(''))?.[1]);

test('the sums that are printed come to their results', async () => {
  const steps = await allSteps();
  for (const [begins, hand] of byHand) {
    const those = steps.filter(({ what, sum, result }) => begins.test(what) && sum && result);
    expect(those.length, String(begins)).toBeGreaterThan(0);
    for (const step of those) {
      const numbers = measuresIn(step);
      // Sums that say "nothing" in words have no numbers to redo.
      if (numbers.length === 0) continue;
      const value = hand(numbers, filmIn(step));
      const result = step.result?.value ?? Number.NaN;
      expect(value / (Math.abs(result) + 1e-12), `${step.rule}: ${step.what}`).toBeCloseTo(
        result / (Math.abs(result) + 1e-12),
        6,
      );
    }
  }
});

/** In every row of a table its values make what it adds. */
test('rows of tables add what their values make', async () => {
  const steps = await allSteps();
  const products = steps.filter(({ what }) => /Σ U·A|Σ A·m·c|skins U·A·ΔT/.test(what));
  expect(new Set(products.map(({ rule }) => rule)).size).toBeGreaterThan(3);
  for (const { parts, what } of products)
    for (const { values, adds, name } of parts?.rows ?? [])
      expect(
        values.reduce((product, { value }) => product * value, 1),
        `${what}: ${name}`,
      ).toBeCloseTo(adds.value, 6);
  const ways = steps.filter(({ what }) => what.startsWith('If heat goes straight'));
  expect(ways.length).toBeGreaterThan(0);
  for (const { parts } of ways) {
    const rows = parts?.rows ?? [];
    expect(rows.reduce((sum, { values }) => sum + (values[0]?.value ?? 0), 0)).toBeCloseTo(1, 9);
    for (const { values, adds } of rows)
      expect((values[0]?.value ?? 0) / (values[1]?.value ?? 0)).toBeCloseTo(adds.value, 9);
  }
});

/** The heat of a day by its parts, from the loss for each kelvin that was worked out before. */
test('a day of heating by hand', async () => {
  const [fuel] = await workedOf(curlew, ['heat.fuel']);
  const { working = [] } = fuel ?? {};
  const perKelvin = working.find(({ what }) => what.startsWith('What is lost for each kelvin in all'));
  const awake = working.find(({ what }) => what.includes('while people are awake'));
  const [h = 0, inK = 0, outK = 0, personW = 0] = measuresIn(awake ?? { what: '' });
  expect(h).toBe(perKelvin?.result?.value);
  expect(h * (inK - outK) - 2 * personW).toBeCloseTo(awake?.result?.value ?? 0, 6);
  const mean = working.find(({ what }) => what.startsWith('On the mean of the day'))?.result?.value ?? 0;
  const perDay = working.find(({ what }) => what.startsWith('What that takes in a day'));
  // 9.905 kWh in a litre, of which 80 % reach the room.
  expect((mean * 24) / (0.8 * 9905) / 1000).toBeCloseTo(perDay?.result?.value ?? 0, 9);
});

/** Vapour pressure inside from water and air alone: kg/s of water as a gas in m³/s of air. */
test('damp air by hand', async () => {
  const [panes] = await workedOf(curlew, ['heat.panes']);
  const inside = panes?.working?.find(({ what }) => what.startsWith('The same inside'));
  const [outsidePa = 0, waterKgS = 0, warmK = 0, flowM3S = 0] = measuresIn(inside ?? { what: '' });
  expect(outsidePa + (waterKgS * 461.524 * warmK) / flowM3S).toBeCloseTo(inside?.result?.value ?? 0, 6);
});

/** What a reader takes from what is printed: a difference of tenths is no difference of whole degrees. */
test('temperatures are printed closely enough to be taken from each other', async () => {
  const steps = (await allSteps()).filter(({ what }) => /T_d − T_e$|T − T_e$/.test(what));
  expect(new Set(steps.map(({ rule }) => rule)).size).toBeGreaterThan(2);
  for (const { sum = [], result, rule } of steps) {
    const printed = renderPhrase(sum, 'metric');
    const [warm = Number.NaN, cold = Number.NaN] = [...printed.matchAll(/(-?[\d.]+) °C/g)].map(([, digits]) =>
      Number(digits),
    );
    const apart = result ? Number.parseFloat(formatMeasure(result, 'metric')) : Number.NaN;
    // Each of the three is rounded to a tenth.
    expect(Math.abs(warm - cold - apart), `${rule}: ${printed} is not ${apart} K`).toBeLessThanOrEqual(0.151);
  }
});
