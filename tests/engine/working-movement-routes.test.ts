import { readFileSync } from 'node:fs';
import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import type { Finding, Step } from '../../src/engine/finding.ts';
import { floorPlan, rearDoors, type Standing, sideDoor } from '../support/floor-plan.ts';
import { plan } from '../support/test-van.ts';
import { workedBy } from '../support/worked.ts';

/*
 * Workings of movement and routes: what they come to, and that a reader who does the printed sums comes to the same.
 */

/** Rules whose limit is always worked out by the plan. */
const withWorkedLimit = ['movement.bed-length', 'movement.standing-height'];

const workedOf = workedBy(({ topic }) => topic === 'movement' || topic === 'routes');

/** Lengths are whole micrometres in a sum. */
const printedWithinM = 3e-6;
const nearestMillimetreM = 0.0005;
/** Who touches something stands up to half a millimetre away from it. */
const touchingWithinM = 0.001;

/** The sum as a calculator takes it: names and remarks left out; undefined where nothing is to be worked out. */
function arithmeticOf({ sum = [] }: Step): string | undefined {
  const written = sum.map((part) => (typeof part === 'string' ? part : `(${part.value})`)).join('');
  const [first = ''] = written.split(/[,;:]| along and across| along it and up| at the floor/);
  const plain = first
    .replaceAll(/ \([^()]*[a-z][^()]*\)/gi, '')
    .replaceAll(
      /the (lesser|shorter|greater|longer) of (\([^()]*\)) and (\([^()]*\))/g,
      (_, which: string, a: string, b: string) =>
        `${which === 'lesser' || which === 'shorter' ? 'min' : 'max'}(${a}, ${b})`,
    )
    .replaceAll(' of shoes', '')
    .replaceAll(' above the head', '')
    .replaceAll(' beyond feet and head', '')
    .replaceAll('²', '^2')
    .replaceAll('√', 'sqrt')
    .replaceAll('·', '*')
    .replaceAll('−', '-');
  const isSum = /[-+*/]|sqrt|min|max/.test(plain.replaceAll(/\(-?[\d.e-]+\)/g, ''));
  return isSum && !/[a-z]/i.test(plain.replaceAll(/sqrt|min|max|e-/g, '')) ? plain : undefined;
}

/** How many sums could be done again by hand. */
function redone({ rule, subject, working = [] }: Finding): number {
  let done = 0;
  for (const step of working) {
    const arithmetic = arithmeticOf(step);
    if (arithmetic === undefined) continue;
    const words = (step.sum ?? []).filter((part) => typeof part === 'string').join('');
    const off = words.includes('nearest millimetre')
      ? nearestMillimetreM
      : /√/.test(words) && rule !== 'routes.separation'
        ? touchingWithinM
        : printedWithinM;
    const isAtLeastNothing = `${step.what} ${words}`.includes('nothing at the least');
    const byHand: unknown = evaluate(isAtLeastNothing ? `max(0, ${arithmetic})` : arithmetic);
    const where = `${rule} ${subject}: ${step.what} ${arithmetic}`;
    expect(typeof byHand, where).toBe('number');
    expect(Math.abs(Number(byHand) - (step.result?.value ?? Number.NaN)), where).toBeLessThanOrEqual(off);
    done += 1;
  }
  return done;
}

function expectChain({ rule, subject, measured, limit, working = [] }: Finding): void {
  const which = `${rule} ${subject}`;
  expect(working.length, which).toBeGreaterThan(0);
  const last = working.at(-1)?.result;
  expect(last?.kind, which).toBe(measured?.kind);
  const scale = Math.abs(measured?.value ?? 0) + 1e-9;
  expect((last?.value ?? Number.NaN) / scale, which).toBeCloseTo((measured?.value ?? 0) / scale, 9);
  if (limit && withWorkedLimit.includes(rule))
    expect(
      working.some(({ result }) => Math.abs((result?.value ?? 0) - limit.measure.value) < 1e-9),
      which,
    ).toBe(true);
  for (const { what, sum = [], result, parts } of working) {
    // Equal lengths that differ by rounding would be printed with six decimals.
    const shown = sum.flatMap((part) =>
      typeof part === 'string' || part.kind !== 'length' ? [] : part.value,
    );
    for (const value of shown) expect(value, `${which}: ${what}`).toBe(Math.round(value * 1e6) / 1e6);
    if (!parts) continue;
    for (const row of parts.rows) expect(row.values).toHaveLength(parts.columns.length - 1);
    const total = parts.rows.reduce((all, { adds }) => all + adds.value, 0);
    expect(total, `${which}: ${what}`).toBeCloseTo(result?.value ?? Number.NaN, 9);
  }
}

const wordsOf = ({ working = [] }: Finding): string =>
  working
    .map(
      ({ what, sum = [] }) =>
        `${what} ${sum.map((part) => (typeof part === 'string' ? part : '#')).join('')}`,
    )
    .join('\n');

describe.each(['curlew', 'oak', 'crowded', 'tangled', 'thin-cables', 'winter'])('%s', (example) => {
  test('every figure has a working that comes to it', async () => {
    const worked = await workedOf(readFileSync(`examples/curlew/${example}.yaml`, 'utf8'));
    expect(worked.length).toBeGreaterThan(15);
    for (const finding of worked) expectChain(finding);
    expect(worked.reduce((done, finding) => done + redone(finding), 0)).toBeGreaterThan(20);
  });
});

const sleepers = (...statures: readonly string[]) =>
  `people: {sleepers: [${statures.map((stature) => `{stature: ${stature}}`).join(', ')}]}\n`;
const fixtures = (...all: readonly string[]) => `fixtures: {${all.join(', ')}}\n`;
const thing = (
  name: string,
  [long, wide, high]: readonly [number, number, number],
  [front, left, above = 0]: readonly [number, number, number?],
  more = '',
) =>
  `${name}: {mass: 9 kg, size: {length: ${long} mm, width: ${wide} mm, height: ${high} mm}, at: {from_front: ${front} mm, from_left: ${left} mm, above_floor: ${above} mm}${more}}`;
const bay = (more: string) => ({
  load_bay: `{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, ${more}}`,
});
const leaning = bay('profile: [{above_floor: 0 m, width: 2 m}, {above_floor: 2 m, width: 1.6 m}]');
const sloping = bay(
  'heights: [{from_front: 0 m, height: 1.6 m}, {from_front: 2 m, height: 2 m}, {from_front: 4 m, height: 1.6 m}]',
);
const isA = (use: string) => `, is: ${use}`;
const bed: Standing = { at: [2500, 0], size: [1500, 2000, 500], more: 'is: bed' };
const windowAt = (front: number) =>
  `in: right wall, kind: window, escape: true, length: 700 mm, height: 500 mm, at: {from_front: ${front} mm, above_floor: 800 mm}`;

const at = (front: string, above: string, left = '0 m') =>
  `{at: {from_front: ${front}, from_left: ${left}, above_floor: ${above}}}`;
const gasAndWires = (c: string, d: string, wires = '[c, d]', more = '') =>
  plan(`fixtures: {${thing('fridge', [200, 200, 200], [3000, 0])}}
routes:
  points: {a: ${at('1 m', '0.1 m')}, b: ${at('3 m', '0.1 m')}, c: ${c}, d: ${d}}
  chases: {pipe: {between: [a, b], carries: [gas], bore: 20 mm}, wires: {between: ${wires}, carries: [cable]}}
  runs: {burner: {carries: gas, from: a, to: b}, light: {carries: cable, from: ${wires.slice(1, 2)}, to: ${wires.slice(4, 5)}, diameter: 8 mm}${more}}
`);
const chase = (runs: string, more = ', bore: 20 mm') =>
  plan(`routes:
  points: {a: ${at('1 m', '0.1 m')}, b: ${at('3 m', '0.4 m')}}
  chases: {left: {between: [a, b], carries: [cable, water]${more}}}
  runs: {${runs}}
`);

const cases: readonly (readonly [string, string, string, RegExp])[] = [
  [
    'a bed between walls that lean in',
    'movement.bed-length',
    plan(sleepers('1.8 m') + fixtures(thing('bed', [1200, 2000, 400], [1000, 0, 500], isA('bed'))), leaning),
    /Clear between the walls where the body lies[^\n]*straight between what the plan says/,
  ],
  [
    'a bed so cut that its other side is longer',
    'movement.bed-length',
    plan(sleepers('1.5 m') + fixtures(thing('bed', [1850, 1990, 400], [1000, 5, 1000], isA('bed'))), leaning),
    /Its other side is longer/,
  ],
  [
    'a bed to lie in across its corners',
    'movement.bed-length',
    plan(sleepers('1.95 m') + fixtures(thing('bed', [1800, 1800, 400], [1000, 0], isA('bed')))),
    /The longest body, p,/,
  ],
  [
    'a bed too short even there',
    'movement.bed-length',
    plan(sleepers('2.05 m') + fixtures(thing('bed', [1800, 1800, 400], [1000, 0], isA('bed')))),
    /The longest body, p,[^\n]*$/,
  ],
  [
    'a bed narrower than shoulders',
    'movement.bed-length',
    plan(sleepers('1.9 m') + fixtures(thing('bed', [1800, 480, 400], [1000, 0], isA('bed')))),
    /The length of bed/,
  ],
  [
    'a bed too narrow for two',
    'movement.bed-length',
    plan(sleepers('1.8 m', '1.7 m') + fixtures(thing('bed', [2000, 1000, 400], [1000, 0], isA('bed')))),
    /# · #\n.*The width of bed/,
  ],
  [
    'a bed under a roof that slopes',
    'movement.headroom',
    plan(sleepers('1.7 m') + fixtures(thing('bed', [1900, 1300, 1000], [300, 0], isA('bed'))), sloping),
    /straight between what the plan says/,
  ],
  [
    'a seat, and nobody known',
    'movement.headroom',
    plan(fixtures(thing('bench', [1000, 400, 450], [0, 0], isA('seat')))),
    /The height over bench/,
  ],
  [
    'a bed under a pillar of the van',
    'movement.headroom',
    plan(sleepers('1.7 m') + fixtures(thing('bed', [1900, 1300, 700], [1000, 0], isA('bed'))), {
      obstructions:
        '{beam: {size: {length: 300 mm, width: 2000 mm, height: 200 mm}, at: {from_front: 1500 mm, from_left: 0 mm, above_floor: 1200 mm}}}',
    }),
    /the underside of beam as the plan places it/,
  ],
  [
    'a bench too high, too deep and too narrow',
    'movement.heights',
    plan(sleepers('1.5 m') + fixtures(thing('bench', [460, 455, 500], [1000, 0], isA('seat')))),
    /The leg of the shortest sleeper, from the back/,
  ],
  [
    'a bench round a corner',
    'movement.heights',
    plan(
      `fixtures: {bench: {mass: 9 kg, is: seat, outline: [{from_front: 0 mm, from_left: 0 mm}, {from_front: 1500 mm, from_left: 0 mm}, {from_front: 1500 mm, from_left: 450 mm}, {from_front: 450 mm, from_left: 450 mm}, {from_front: 450 mm, from_left: 1500 mm}, {from_front: 0 mm, from_left: 1500 mm}], size: {length: 1500 mm, width: 1500 mm, height: 350 mm}, at: {from_front: 0 m, from_left: 0 m}}}`,
    ),
    /of the greatest rectangles/,
  ],
  [
    'a table too high for its bench',
    'movement.heights',
    plan(
      fixtures(
        thing('bench', [900, 400, 350], [1000, 0], isA('seat')),
        thing('table', [900, 600, 30], [1000, 500, 850], isA('table')),
      ),
    ),
    /How high table is above bench, the nearest seat/,
  ],
  [
    'a table before a bench, and no room for knees',
    'movement.heights',
    plan(
      fixtures(
        thing('bench', [900, 400, 420], [1000, 0], isA('seat')),
        thing('table', [900, 600, 30], [1000, 500, 650], isA('table')),
      ),
    ),
    /How high it is under table/,
  ],
  [
    'a worktop too high for the tallest',
    'movement.heights',
    plan(
      sleepers('1.6 m', '1.7 m') + fixtures(thing('counter', [1000, 500, 1100], [0, 1500], isA('worktop'))),
    ),
    /The highest worktop/,
  ],
  [
    'a tray to shower in',
    'movement.standing-height',
    plan(sleepers('1.95 m') + fixtures(thing('tray', [700, 700, 60], [1000, 0, 100], isA('shower')))),
    /the foot of tray/,
  ],
  [
    'a wall across the way',
    'movement.passage',
    floorPlan({ 'side door': sideDoor }, { bed, wall: { at: [1600, 0], size: [50, 2000, 1800] } }),
    /stands in it: without it there would be #/,
  ],
  [
    'a narrow aisle',
    'movement.passage',
    floorPlan(
      { 'side door': sideDoor },
      {
        bed,
        kitchen: { at: [1600, 0], size: [600, 900, 900] },
        wardrobe: { at: [1600, 1220], size: [600, 780, 1800] },
      },
    ),
    /from kitchen at # from the front|from wardrobe at # from the front/,
  ],
  [
    'things on all sides of the room before them',
    'movement.use-space',
    plan(
      fixtures(
        thing(
          'stove',
          [600, 600, 900],
          [1500, 700],
          ', needs_space: {front: 0.6 m, rear: 0.6 m, left: 0.6 m, right: 0.6 m}',
        ),
        thing('one', [300, 600, 900], [800, 700]),
        thing('two', [300, 600, 900], [2500, 700]),
        thing('three', [600, 300, 900], [1500, 0]),
        thing('four', [600, 300, 900], [1500, 1600]),
      ),
    ),
    /stove stands from|it stands from # to #/,
  ],
  [
    'the wall of the van in the room before it',
    'movement.use-space',
    plan(fixtures(thing('stove', [600, 600, 900], [1500, 0], ', needs_space: {right: 1.6 m}'))),
    /How far the right wall reaches/,
  ],
  [
    'a door of the van in the room before it, and something in the face',
    'movement.use-space',
    floorPlan(
      { 'side door': sideDoor },
      {
        stove: { at: [700, 400], size: [600, 600, 900], more: 'needs_space: {left: 0.6 m, rear: 0.5 m}' },
        post: { at: [1250, 500], size: [100, 400, 1800] },
      },
    ),
    /Where the room inside the van ends, at side door/,
  ],
  [
    'a door and a hatch past the cooker',
    'movement.ways-out',
    floorPlan(
      {
        'side door': sideDoor,
        hatch:
          'in: ceiling, kind: hatch, escape: true, length: 700 mm, width: 500 mm, at: {from_front: 800 mm, from_left: 200 mm}',
      },
      { bed, stove: { at: [1700, 800], size: [400, 400, 900], more: 'is: cooker' } },
    ),
    /count as one: one fire closes both both lead within # of a cooker/,
  ],
  [
    'two windows that one fire closes',
    'movement.ways-out',
    floorPlan({ 'side door': sideDoor, window: windowAt(2500), other: windowAt(3250) }, { bed }),
    /are apart in one wall; they count as one/,
  ],
  [
    'a window away from the bed, and doors past the cooker',
    'movement.ways-out',
    floorPlan(
      { 'side door': sideDoor, window: windowAt(800) },
      { bed, stove: { at: [1500, 0], size: [400, 500, 900], more: 'is: cooker' } },
    ),
    /How wide the way is between bed and window[^\n]*√/,
  ],
  [
    'no way out at all',
    'movement.ways-out',
    floorPlan(
      { 'rear doors': rearDoors },
      {
        bed: { at: [500, 0], size: [1500, 2000, 500], more: 'is: bed' },
        wall: { at: [2600, 0], size: [50, 2000, 1800] },
      },
    ),
    /none of the openings is one/,
  ],
  [
    'pipes that do not go into the chase',
    'routes.fill',
    chase(
      'hot: {carries: water, from: a, to: b, diameter: 12 mm}, cold: {carries: water, from: a, to: b, diameter: 9.5 mm}',
    ),
    /of the two thickest pipes/,
  ],
  [
    'a hole without a bore',
    'routes.holes',
    chase(
      'pump: {carries: cable, from: a, to: b, diameter: 6 mm}, lights: {carries: cable, from: a, to: b, diameter: 3.5 mm, count: 2}',
      ', through: [rib]',
    ),
    /the greatest of # diameters[^\n]*: pump/,
  ],
  [
    'a chase longer than between its points, and a length that is typed',
    'routes.path',
    chase(
      'pump: {carries: cable, from: a, to: b}, lights: {carries: cable, from: a, to: b, length: 7 m}',
      ', length: 3.1 m',
    ),
    /The length of pump with slack/,
  ],
  [
    'gas over cables, askew',
    'routes.separation',
    gasAndWires(at('1.2 m', '0.3 m', '0.4 m'), at('2.9 m', '0.5 m', '0 m')),
    /comes to that of wires/,
  ],
  [
    'gas across cables, which it nearly touches',
    'routes.separation',
    gasAndWires(at('2 m', '0.11 m', '0 m'), at('2 m', '0.11 m', '1 m')),
    /and nothing at the least/,
  ],
  [
    'gas and cables that part at a point',
    'routes.separation',
    gasAndWires(at('1 m', '0.6 m'), at('3 m', '0.2 m', '0.7 m'), '[a, d]'),
    /they meet at a point/,
  ],
  [
    'gas and cables between the same points',
    'routes.separation',
    gasAndWires(at('1 m', '0.6 m'), at('3 m', '0.6 m'), '[a, b]'),
    /they meet at a point/,
  ],
];

describe.each(cases)('%s', (_, rule, text, words) => {
  test(`${rule}: every step comes to its result`, async () => {
    const worked = (await workedOf(text)).filter((finding) => finding.rule === rule);
    expect(worked.length).toBeGreaterThan(0);
    expect(worked.map(wordsOf).join('\n')).toMatch(words);
    for (const finding of worked) {
      expectChain(finding);
      redone(finding);
    }
  });
});

test('the printed sums of every rule are done again', async () => {
  const plans = [...cases.map(([, , text]) => text), readFileSync('examples/curlew/curlew.yaml', 'utf8')];
  const counted = new Map<string, number>();
  for (const text of plans)
    for (const finding of await workedOf(text))
      counted.set(finding.rule, (counted.get(finding.rule) ?? 0) + redone(finding));
  const without = [...counted].filter(([, done]) => done < 2).map(([rule]) => rule);
  expect(without).toEqual(['routes.holes']);
  expect(counted.size).toBe(12);
});

/** What a builder does with the formula: put p in, and see that the bed is as wide as that asks for. */
test('the longest body across the corners just fits', async () => {
  const text = plan(sleepers('1.95 m') + fixtures(thing('bed', [1900, 1700, 400], [1000, 0], isA('bed'))));
  const [finding] = (await workedOf(text)).filter(({ rule }) => rule === 'movement.bed-length');
  const sum = finding?.working?.find(({ what }) => what.startsWith('The longest body'))?.sum ?? [];
  const [p = 0, q = 0, l = 0, w = 0] = sum.flatMap((part) => (typeof part === 'string' ? [] : part.value));
  expect(p).toBeGreaterThan(1.95);
  const needs = (2 * p * q * l + (p ** 2 - q ** 2) * Math.sqrt(p ** 2 + q ** 2 - l ** 2)) / (p ** 2 + q ** 2);
  expect(needs).toBeCloseTo(w, 5);
});

/** By hand from the table: Σ d² over D², and a length piece by piece. */
test('a chase by its diameters, a way by its pieces', async () => {
  const worked = await workedOf(readFileSync('examples/curlew/curlew.yaml', 'utf8'));
  const filled = worked.filter(({ rule }) => rule === 'routes.fill');
  expect(filled.length).toBeGreaterThan(5);
  for (const { working = [], measured } of filled) {
    const rows = working[0]?.parts?.rows ?? [];
    const squares = rows.reduce((sum, { values: [many, square] }) => {
      return sum + (many?.value ?? 0) * (square?.value ?? 0);
    }, 0);
    const [, , ...rest] = working.at(-1)?.sum ?? [];
    const bore = rest.find((part) => typeof part !== 'string' && part.kind === 'length');
    const boreM = typeof bore === 'object' ? bore.value : Number.NaN;
    expect(squares / boreM ** 2).toBeCloseTo(measured?.value ?? Number.NaN, 9);
  }
  const [longest] = worked.find(({ rule }) => rule === 'routes.path')?.working ?? [];
  expect(longest?.parts?.rows.length).toBeGreaterThan(2);
  for (const { values, adds } of longest?.parts?.rows ?? [])
    expect(values.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(adds.value, 9);
});

/** The lines of the plan that a reader is sent to. */
test('the steps name the keys that come in', async () => {
  const text = plan(sleepers('1.8 m') + fixtures(thing('bed', [1900, 1300, 500], [1000, 0], isA('bed'))));
  const worked = await workedOf(text);
  const pathsOf = (rule: string) =>
    worked
      .filter((finding) => finding.rule === rule)
      .flatMap(({ working = [] }) =>
        working.flatMap(({ paths = [] }) => paths.map((path) => path.join('.'))),
      );
  expect(pathsOf('movement.bed-length')).toEqual([
    'people.sleepers',
    'fixtures.bed.size.length',
    'fixtures.bed.size.width',
  ]);
  expect(pathsOf('movement.headroom')).toEqual([
    'fixtures.bed.size.height',
    'van.load_bay.height',
    'people.sleepers',
  ]);
});
