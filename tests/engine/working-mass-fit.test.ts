import { readFileSync } from 'node:fs';
import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import type { Finding, Step } from '../../src/engine/finding.ts';
import type { Measure } from '../../src/engine/measure.ts';
import { rules } from '../../src/rules/index.ts';
import { floorPlan, sideDoor } from '../support/floor-plan.ts';
import { fixtureAt, fixtureAtHeight, fixtureOnRight, plan } from '../support/test-van.ts';
import { workedBy } from '../support/worked.ts';

/*
 * Workings of mass, balance and fit: each comes to what was measured, and its printed sums come to their results.
 */

const topics = ['mass', 'balance', 'fit'];
const exampleOf = (name: string): string => readFileSync(`examples/curlew/${name}.yaml`, 'utf8');
const curlew = exampleOf('curlew');

/** All findings of these topics that measure something, with their working. */
const workedOf = workedBy(({ topic }) => topics.includes(topic));

type Three = readonly [number, number, number];

/** A box of so many millimetres, at so many from the front, from the left wall and above the floor. */
const box = (name: string, [length, width, height]: Three, [x, y, z]: Three, more = ''): string =>
  `  ${name}: {mass: 10 kg, size: {length: ${length} mm, width: ${width} mm, height: ${height} mm}, at: {from_front: ${x} mm, from_left: ${y} mm, above_floor: ${z} mm}${more}}`;
/** The test van, 4 m long, 2 m wide and 2 m high inside, with these things in it. */
const things = (...all: readonly string[]): string => `fixtures:\n${all.join('\n')}`;
const bench = (opens: string, at: Three = [0, 0, 0]): string =>
  box('bench', [1000, 500, 400], at, `, opens: {lid: {${opens}}}`);
const cupboard = (opens: string): string =>
  box('cupboard', [500, 500, 1000], [0, 0, 0], `, opens: {door: {${opens}}}`);
/** Walls that lean in by 100 mm a metre from 1 m up, and a roof that falls to the rear. */
const leaning = {
  load_bay:
    '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, floor_above_ground: 0.5 m, profile: [{above_floor: 1 m, width: 2 m}, {above_floor: 2 m, width: 1.8 m}], heights: [{from_front: 0 m, height: 2 m}, {from_front: 4 m, height: 1.6 m}]}',
};
const stove = (clearance: string, ...others: readonly string[]): string =>
  things(box('stove', [400, 400, 400], [2000, 1000, 0], `, heat_clearance: {${clearance}}`), ...others);
const stowing = (stows: string, ...others: readonly string[]): string =>
  things(box('chest', [2000, 1000, 500], [1000, 0, 0], `, stows: {${stows}}`), ...others);
const tank = (from: string, at: string): string =>
  `tanks:\n  tank: {contents: waste, holds: 40 L, size: {length: 0.4 m, width: 0.4 m, height: 0.4 m}, at: {${at}}, service_from: ${from}}`;
const heights = {
  unladen:
    '{front: 1000 kg, rear: 1000 kg, from: weighbridge, includes: {driver: true}, centre_height: 0.7 m}',
};
const weighed = (ticket: string): string =>
  `fixtures: {bed: {mass: 100 kg, at: {from_front: 1 m, centred: true, above_floor: 0 m}}}\nweighed: {spring: {date: 2026-03-14, ${ticket}}}`;
const states = (states: string): string =>
  `tanks: {water: {contents: fresh, holds: 300 L, at: {from_front: 3.5 m, from_left: 0.2 m, above_floor: 0 m}}}\nload_states: {${states}}`;

/** 100 mm from the stove on each side. */
const besideStove: Readonly<Record<'front' | 'rear' | 'left' | 'right' | 'above', Three>> = {
  front: [1500, 1000, 0],
  rear: [2500, 1000, 0],
  left: [2000, 500, 0],
  right: [2000, 1500, 0],
  above: [2000, 1000, 500],
};

/** Plans that reach other branches than the examples do: the finding that each is there for, and words of its steps. */
const variants: readonly (readonly [what: string, rule: string, text: string, says: RegExp])[] = [
  ['a plate above the car licence', 'mass.licence', plan('', { max_mass: '4000 kg' }), /class C1 covers/],
  [
    'an electric van',
    'mass.licence',
    plan('', { max_mass: '4000 kg', energy: 'electric' }),
    /class B covers/,
  ],
  ['a lorry', 'mass.licence', plan('', { max_mass: '8000 kg' }), /no upper limit/],
  [
    'no room for belongings',
    'mass.personal-effects',
    plan(fixtureAt('1 m', '950 kg ± 20 kg')),
    /What is left for belongings/,
  ],
  ['a ticket of a total', 'mass.weighbridge', plan(weighed('total: 2150 kg ± 5 kg')), /\(total\)/],
  [
    'a ticket of two axles',
    'mass.weighbridge',
    plan(weighed('front: 1100 kg ± 5 kg, rear: 980 kg ± 5 kg')),
    /\(front axle, the worst of 3/,
  ],
  [
    'a centre of mass with no limit',
    'balance.centre-height',
    plan(fixtureAtHeight('1 m', '500 kg'), heights),
    /height of the centre/,
  ],
  [
    'a centre below the ground',
    'balance.stability',
    plan(fixtureAtHeight('-25 m', '500 kg'), heights),
    /height of the centre/,
  ],
  [
    'a narrower rear track',
    'balance.stability',
    plan(fixtureAtHeight('1 m', '500 kg'), { ...heights, rear_track: '1.8 m' }),
    /T the narrower track/,
  ],
  ['a load on the left', 'balance.lateral-centre', plan(fixtureOnRight('1.8 m', '500 kg')), /to the left/],
  ['a load on the right', 'balance.lateral-centre', plan(fixtureOnRight('0.2 m', '500 kg')), /to the right/],
  [
    'a heavier left wheel',
    'balance.wheel-load',
    plan(fixtureOnRight('1.8 m', '500 kg')),
    /on the left wheel/,
  ],
  ['a front axle off the ground', 'balance.wheel-load', plan(fixtureAt('6 m', '1600 kg')), /carries least/],
  [
    'equipment behind the rear axle',
    'balance.equipment-centre',
    plan(fixtureAt('3.8 m', '300 kg')),
    /no further than the rear axle/,
  ],
  ['a light front axle', 'balance.steered-share', plan(fixtureAt('3.9 m', '500 kg')), /carries least/],
  [
    'a state that loads the rear axle',
    'balance.load-states',
    plan(states('full: {water: 100 %}'), { axle_limits: '{front: 1500 kg, rear: 1300 kg}' }),
    /closest to its limit: the rear axle/,
  ],
  [
    'a state that loads the front axle',
    'balance.load-states',
    plan(states('empty: {water: 0 %}'), { axle_limits: '{front: 1050 kg, rear: 1800 kg}' }),
    /closest to its limit: the front axle/,
  ],
  [
    'a door onto a post',
    'fit.swing',
    plan(
      things(cupboard('kind: door, side: right, hinge: right'), box('post', [400, 400, 1000], [298, 898, 0])),
    ),
    /quarter of a disc/,
  ],
  [
    'a drawer onto two things',
    'fit.swing',
    plan(
      things(
        cupboard('kind: drawer, side: right'),
        box('bed', [1000, 600, 1000], [0, 900, 0]),
        box('bin', [100, 100, 100], [0, 960, 1000]),
        box('tub', [300, 100, 300], [100, 850, 0]),
      ),
    ),
    /goes furthest into tub/,
  ],
  [
    'a drawer out through the wall',
    'fit.swing',
    plan(things(cupboard('kind: drawer, side: left'))),
    /left wall is at that height/,
  ],
  [
    'a drawer out of the rear',
    'fit.swing',
    plan(things(cupboard('kind: drawer, side: front'))),
    /load bay begins/,
  ],
  [
    'a lid below a shelf',
    'fit.swing',
    plan(things(bench('kind: lid, side: left'), box('shelf', [1000, 300, 50], [0, 350, 700]))),
    /on its arc: depth/,
  ],
  [
    'a lid below a shelf at the wall',
    'fit.swing',
    plan(things(bench('kind: lid, side: left'), box('shelf', [1000, 300, 50], [0, 0, 700]))),
    /lifted by/,
  ],
  [
    'a lid at a leaning wall',
    'fit.swing',
    plan(things(bench('kind: lid, side: right', [0, 20, 900])), leaning),
    /furthest on its arc/,
  ],
  [
    'a lid at the roof',
    'fit.swing',
    plan(things(bench('kind: lid, side: front', [2900, 300, 800])), leaning),
    /furthest on its arc|roof/,
  ],
  [
    'a lid under luggage',
    'fit.swing',
    plan(things(bench('kind: lid, side: left'), box('cushion', [900, 400, 100], [50, 50, 0], ', on: bench'))),
    /goes into cushion/,
  ],
  [
    'two doors that meet',
    'fit.swing',
    plan(
      things(
        cupboard('kind: door, side: right, hinge: right'),
        box(
          'locker',
          [500, 500, 1000],
          [300, 1000, 0],
          ', opens: {flap: {kind: door, side: left, hinge: left}}',
        ),
      ),
    ),
    /go into each other/,
  ],
  [
    'a seat that turns',
    'fit.swing',
    plan(
      `${things(box('unit', [500, 1000, 1000], [50, 0, 0]))}\npeople: {seats: {passenger: {mass: 70 kg, at: {from_front: -0.3 m, from_left: 0.5 m}, swivel_radius: 0.4 m}}}`,
    ),
    /a disc of/,
  ],
  [
    'out at the front and on the left',
    'fit.shell',
    plan(things(box('bed', [1000, 1000, 1000], [-20, -50, 0]))),
    /on 2 sides, most out of the left wall/,
  ],
  [
    'out at the rear',
    'fit.shell',
    plan(things(box('bed', [1000, 1000, 1000], [3060, 0, 0]))),
    /load bay ends/,
  ],
  [
    'out at the front',
    'fit.shell',
    plan(things(box('bed', [1000, 1000, 1000], [-60, 0, 0]))),
    /load bay begins/,
  ],
  [
    'out of a leaning wall on the right',
    'fit.shell',
    plan(things(box('bed', [500, 500, 1300], [0, 1480, 0])), leaning),
    /right wall is at that height/,
  ],
  [
    'out of a leaning wall on the left',
    'fit.shell',
    plan(things(box('bed', [500, 500, 1300], [0, 0, 0])), leaning),
    /left wall is at that height/,
  ],
  [
    'out of a sloping roof',
    'fit.shell',
    plan(things(box('bed', [500, 500, 1000], [2000, 600, 800])), leaning),
    /How high the roof/,
  ],
  [
    'below the floor',
    'fit.shell',
    plan(things(box('bed', [1000, 1000, 1000], [0, 0, -60]))),
    /below the floor/,
  ],
  ...(['front', 'rear', 'left', 'right', 'above'] as const).map(
    (side) =>
      [
        `something that burns, ${side} of a stove`,
        'fit.heat-clearance',
        plan(
          stove(`${side}: 150 mm`, box('crate', [400, 400, 400], besideStove[side], ', combustible: true')),
        ),
        /How far they are apart/,
      ] as const,
  ),
  [
    'a wall of plywood near a stove',
    'fit.heat-clearance',
    plan(
      `${stove('right: 700 mm')}\nbuild_ups: {wall: {of: walls, layers: [{material: birch plywood, thickness: 6 mm}]}}`,
    ),
    /the room that it needs less/,
  ],
  [
    'a cupboard that burns about a hob',
    'fit.heat-clearance',
    plan(
      things(
        box('kitchen', [1000, 1000, 900], [1000, 500, 0], ', combustible: true'),
        box('hob', [400, 400, 100], [300, 300, 500], ', in: kitchen, heat_clearance: {left: 350 mm}'),
      ),
    ),
    /kitchen about it ends/,
  ],
  ...(
    [
      [-60, 0, 0],
      [560, 0, 0],
      [0, -60, 0],
      [0, 260, 0],
      [0, 0, 460],
      [-20, 0, 450],
    ] as const
  ).map(
    (at) =>
      [
        `in a unit at ${at.join(', ')}`,
        'fit.contents',
        plan(
          things(
            box('unit', [1000, 600, 900], [1000, 100, 0]),
            box('fridge', [500, 400, 500], at, ', in: unit'),
          ),
        ),
        /How far it sticks out/,
      ] as const,
  ),
  [
    'into a corner that is cut off',
    'fit.contents',
    plan(
      things(
        box(
          'unit',
          [1000, 600, 900],
          [1000, 100, 0],
          ', cut_out: {corner: rear left, length: 300 mm, width: 200 mm}',
        ),
        box('fridge', [750, 600, 500], [0, 0, 0], ', in: unit'),
      ),
    ),
    /outside the shape of unit/,
  ],
  [
    'into both wheel arches',
    'fit.obstruction',
    plan(things(box('platform', [1000, 1900, 100], [2100, 0, 0])), {
      wheel_arches: '{from_front: 2 m, length: 1 m, width: 200 mm, height: 300 mm}',
    }),
    /in 2 parts of the van/,
  ],
  [
    'into an arch',
    'fit.obstruction',
    plan(things(box('chest', [800, 500, 500], [1260, 0, 0])), {
      wheel_arches: '{from_front: 2 m, length: 1 m, width: 200 mm, height: 300 mm}',
    }),
    /left wheel arch/,
  ],
  [
    'a thing with a corner cut off in another',
    'fit.overlap',
    plan(
      things(
        box(
          'tub',
          [400, 400, 400],
          [1000, 500, 0],
          ', cut_out: {corner: rear left, length: 100 mm, width: 100 mm}',
        ),
        box('bin', [400, 400, 400], [1350, 300, 0]),
      ),
    ),
    /since one of them is no rectangle/,
  ],
  [
    'a pole longer than the chest',
    'fit.stowage',
    plan(stowing('pole: {size: {length: 3 m, width: 0.1 m, height: 0.1 m}}')),
    /which is more/,
  ],
  [
    'a bag between crates',
    'fit.stowage',
    plan(
      stowing(
        'bag: {size: {length: 0.4 m, width: 0.3 m, height: 0.3 m}}',
        box('crate', [500, 600, 300], [700, 200, 0], ', in: chest'),
      ),
    ),
    /free boxes there/,
  ],
  [
    'a bicycle under a bed',
    'fit.stowage',
    plan(
      things(
        box(
          'bed',
          [1500, 2000, 100],
          [1000, 0, 800],
          ', stows: {bike: {size: {length: 1.7 m, width: 0.5 m, height: 0.8 m}, place: underneath}}',
        ),
      ),
    ),
    /under bed/,
  ],
  [
    'no free floor',
    'fit.service',
    plan(
      `${tank('inside', 'from_front: 1 m, from_left: 0.8 m')}\n${things(box('wall', [900, 100, 1500], [700, 700, 0]), box('partition', [900, 100, 1500], [700, 1200, 0]), box('fore', [90, 600, 1500], [910, 700, 0]), box('aft', [90, 600, 1500], [1400, 700, 0]))}`,
    ),
    /none begins within/,
  ],
  [
    'free floor',
    'fit.service',
    plan(tank('inside', 'from_front: 1 m, from_left: 0.8 m')),
    /Where free floor begins/,
  ],
  [
    'through a hatch in the floor',
    'fit.service',
    plan(tank('underneath', 'from_front: 1 m, from_left: 0.8 m, above_floor: 0.5 m'), {
      openings:
        '{hatch: {in: floor, kind: hatch, length: 500 mm, width: 500 mm, at: {from_front: 0.95 m, from_left: 0.75 m}}}',
    }),
    /place of hatch in the floor/,
  ],
  [
    'through a hatch on the left',
    'fit.service',
    plan(tank('hatch', 'from_front: 1 m, from_left: 0.7 m'), {
      openings:
        '{hatch: {in: left wall, kind: hatch, length: 500 mm, height: 500 mm, at: {from_front: 0.95 m, above_floor: 0 m}}}',
    }),
    /place of hatch in the left wall/,
  ],
  [
    'a window over a rib',
    'fit.rib',
    plan('', {
      load_bay:
        '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, ribs: [{in: left wall, from_front: 1000 mm, width: 60 mm}, {in: left wall, from_front: 2000 mm, width: 60 mm}]}',
      openings:
        '{w: {in: left wall, kind: window, length: 1000 mm, height: 400 mm, at: {from_front: 1050 mm, above_floor: 1 m}}}',
    }),
    /cuts into most, of 2/,
  ],
  [
    'a window that touches a rib',
    'fit.rib',
    plan('', {
      load_bay:
        '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, ribs: [{in: left wall, from_front: 1000 mm, width: 60 mm}]}',
      openings:
        '{w: {in: left wall, kind: window, length: 500 mm, height: 400 mm, at: {from_front: 1060 mm, above_floor: 1 m}}}',
    }),
    /touch at most/,
  ],
  [
    'two things before a window',
    'fit.covered-opening',
    plan(
      things(box('locker', [500, 300, 300], [800, 0, 1200]), box('shelf', [600, 200, 100], [1000, 0, 1150])),
      {
        openings:
          '{w: {in: left wall, kind: window, length: 1000 mm, height: 500 mm, at: {from_front: 700 mm, above_floor: 1 m}}}',
      },
    ),
    /only what that leaves/,
  ],
  [
    'a thing before a door',
    'fit.covered-opening',
    floorPlan({ door: sideDoor }, { chest: { at: [600, 0], size: [400, 400, 500] } }),
    /area of door/,
  ],
  [
    'too few fixings',
    'fit.restraint',
    plan(
      things(
        box('kitchen', [1000, 500, 900], [0, 0, 0], ', fixings: {count: 2, each: 8 kg}'),
        box('hob', [300, 300, 100], [100, 100, 0], ', on: kitchen'),
      ),
    ),
    /with all that stands in or on it/,
  ],
];

const plans: readonly (readonly [string, string])[] = [
  ...['curlew', 'oak', 'crowded', 'tangled', 'thin-cables', 'winter'].map(
    (name) => [name, exampleOf(name)] as const,
  ),
  ...variants.map(([name, , text]) => [name, text] as const),
];

const measuresOf = ({ sum = [] }: Step): readonly Measure[] =>
  sum.filter((part): part is Measure => typeof part !== 'string');
const valuesOf = (step: Step): readonly number[] => measuresOf(step).map(({ value }) => value);
const wordsOf = ({ working = [] }: Finding): string =>
  working
    .map(
      ({ what, sum = [] }) =>
        `${what} ${sum.map((part) => (typeof part === 'string' ? part : '#')).join('')}`,
    )
    .join('\n');

describe.each(plans)('%s', (_, text) => {
  test('every finding that measures comes to it in steps, by parts that add up', async () => {
    for (const { rule, subject, measured, working = [] } of await workedOf(text)) {
      const of = `${rule} ${subject}`;
      const last = working.at(-1)?.result;
      expect(last?.kind, of).toBe(measured?.kind);
      const scale = Math.abs(measured?.value ?? 0) + 1e-9;
      expect((last?.value ?? Number.NaN) / scale, of).toBeCloseTo((measured?.value ?? 0) / scale, 9);
      for (const { result, parts } of working) {
        if (!parts) continue;
        const sum = parts.rows.reduce((total, { adds }) => total + adds.value, 0);
        const size = parts.rows.reduce((total, { adds }) => total + Math.abs(adds.value), 1);
        expect(sum / size, of).toBeCloseTo((result?.value ?? Number.NaN) / size, 9);
        for (const row of parts.rows) expect(row.values, of).toHaveLength(parts.columns.length - 1);
      }
    }
  });
});

/** A sum as printed, with SI values for its measures, as arithmetic: the longest run of it that has an operation. */
function arithmeticOf({ sum = [] }: Step): number | undefined {
  const text = sum.map((part) => (typeof part === 'string' ? part : `(${part.value.toFixed(15)})`)).join('');
  const run = (text.match(/[\d.()|√²·×−+/ -]+/g) ?? [])
    .filter((each) => /[·×−+/]/.test(each))
    .sort((a, b) => b.length - a.length)[0];
  if (run === undefined) return undefined;
  const expression = run
    .replaceAll(/\|([^|]*)\|/g, 'abs($1)')
    .replaceAll('²', '^2')
    .replaceAll('√', 'sqrt')
    .replaceAll(/[·×]/g, '*')
    .replaceAll('−', '-');
  return Number(evaluate(expression));
}

/** What the words make of it: the greater or the least of several, or nothing where they say it is less than that. */
function reckoned(step: Step): number | undefined {
  const words = (step.sum ?? []).filter((part) => typeof part === 'string').join('#');
  const values = valuesOf(step);
  const result = arithmeticOf(step);
  if (words.startsWith('the larger of')) return Math.max(values[0] ?? 0, result ?? 0);
  if (/the (least|lesser) of/.test(words)) return Math.min(...values);
  if (result !== undefined && /less than nothing|lie apart|touch at most/.test(words))
    return Math.max(0, result < 0.0005 ? 0 : result);
  return result;
}

/** Rules whose sums are done again from their words alone. */
const reckonedRules = [
  'balance.equipment-centre',
  'balance.sides',
  'balance.stability',
  'balance.steered-share',
  'balance.wheel-load',
  'fit.contents',
  'fit.covered-opening',
  'fit.heat-clearance',
  'fit.obstruction',
  'fit.overlap',
  'fit.restraint',
  'fit.rib',
  'fit.service',
  'fit.shell',
  'fit.swing',
  'mass.payload',
  'mass.personal-effects',
  'mass.weighbridge',
];

test('the printed sums come to their results', async () => {
  const done = new Map<string, number>();
  for (const [name, text] of plans)
    for (const { rule, subject, working = [] } of await workedOf(text))
      for (const step of working) {
        const byHand = step.result && !step.parts ? reckoned(step) : undefined;
        if (byHand === undefined) continue;
        expect(byHand, `${name}: ${rule} ${subject}: ${step.what}`).toBeCloseTo(step.result?.value ?? 0, 9);
        done.set(rule, (done.get(rule) ?? 0) + 1);
      }
  expect([...done.keys()].sort()).toEqual(reckonedRules);
});

describe.each(variants)('%s', (_, rule, text, says) => {
  test(`shows in the steps of ${rule}`, async () => {
    const own = (await workedOf(text)).filter((finding) => finding.rule === rule);
    expect(own.length).toBeGreaterThan(0);
    expect(own.map(wordsOf).join('\n')).toMatch(says);
  });
});

/** What they hold it against is worked out as well: the step before the last comes to it. */
test.each([
  'mass.personal-effects',
  'mass.weighbridge',
  'mass.licence',
  'balance.equipment-centre',
  'fit.restraint',
  'fit.stowage',
])('the steps of %s come to its limit too', async (rule) => {
  let seen = 0;
  for (const [name, text] of plans)
    for (const { working = [], limit, subject, ...finding } of await workedOf(text)) {
      if (finding.rule !== rule || !limit) continue;
      seen += 1;
      expect(working.at(-2)?.result?.value, `${name} ${subject}`).toBeCloseTo(limit.measure.value, 9);
    }
  expect(seen).toBeGreaterThan(2);
});

test('the list of plans reaches every rule that measures', async () => {
  const speaking = new Set<string>();
  for (const [, text] of plans) for (const { rule } of await workedOf(text)) speaking.add(rule);
  expect([...speaking].sort()).toEqual(
    rules
      .filter(({ topic, work }) => topics.includes(topic) && work)
      .map(({ id }) => id)
      .sort(),
  );
});

/** By hand, from the columns alone. */
describe('tables', () => {
  const rowsOf = async (text: string, rule: string, what: RegExp) => {
    const found = (await workedOf(text)).filter((finding) => finding.rule === rule);
    const tables = found.flatMap(({ working = [] }) =>
      working.filter((step) => step.parts && what.test(step.what)),
    );
    expect(tables.length).toBeGreaterThan(0);
    return tables.map((step) => ({ step, rows: step.parts?.rows ?? [] }));
  };
  const number = (measure: Measure | undefined): number => measure?.value ?? Number.NaN;

  test.each([
    'balance.centre-height',
    'balance.equipment-centre',
    'balance.lateral-centre',
    'balance.stability',
  ])('%s: each mass by its distance over the whole', async (rule) => {
    for (const { step, rows } of await rowsOf(curlew, rule, /adds to/)) {
      const totalKg = rows.reduce((sum, { values }) => sum + number(values[0]), 0);
      expect(number(measuresOf(step).find(({ kind }) => kind === 'mass'))).toBeCloseTo(totalKg, 9);
      for (const { values, adds } of rows)
        expect((number(values[0]) * number(values[1])) / totalKg).toBeCloseTo(adds.value, 9);
    }
  });

  test.each(['balance.wheel-load'])('%s: each mass by its two levers', async (rule) => {
    const loaded = plan(fixtureOnRight('1.8 m', '500 kg'));
    for (const text of [curlew, loaded])
      for (const { step, rows } of await rowsOf(text, rule, /wheel: P/)) {
        const [wheelbaseM = 0, trackM = 0] = valuesOf(step);
        const isFront = step.what.includes('front axle');
        const side = step.what.includes('½ +') ? 1 : -1;
        for (const { values, adds } of rows) {
          const [massKg, x, onAxle, y] = values.map(({ value }) => value);
          const share = (x ?? 0) / wheelbaseM;
          expect((massKg ?? 0) * (isFront ? 1 - share : share)).toBeCloseTo(onAxle ?? Number.NaN, 9);
          expect((onAxle ?? 0) * (0.5 + (side * (y ?? 0)) / trackM)).toBeCloseTo(adds.value, 9);
        }
      }
  });

  test.each(['balance.steered-share', 'mass.weighbridge'])('%s: each mass by its lever', async (rule) => {
    for (const { step, rows } of await rowsOf(curlew, rule, /axle: m/)) {
      const [wheelbaseM = 0] = valuesOf(step);
      for (const { values, adds } of rows) {
        const share = number(values[1]) / wheelbaseM;
        const part = step.what.includes('front axle') ? 1 - share : share;
        expect(number(values[0]) * part).toBeCloseTo(adds.value, 9);
      }
    }
  });

  test('what covers an opening counts once', async () => {
    const [, , text] = variants.find(([what]) => what === 'two things before a window') ?? ['', '', ''];
    const [table] = await rowsOf(text, 'fit.covered-opening', /covers of it/);
    // The locker covers 500 mm by 300 mm, the shelf 600 mm by 100 mm, of which 300 mm by 50 mm is behind the locker.
    expect(table?.rows.map(({ adds }) => adds.value)).toEqual([
      expect.closeTo(0.15, 9),
      expect.closeTo(0.045, 9),
    ]);
  });

  test('the side of a stowed thing that has least to spare is the one told', async () => {
    for (const [, text] of plans)
      for (const { rule, working = [] } of await workedOf(text)) {
        if (rule !== 'fit.stowage') continue;
        const [, left, free, needs] = working;
        const sides = left ? valuesOf(left) : [];
        const spare = [0, 1, 2].map((at) => {
          const [wholeM = 0, ownM = 0, spareM = 0] = sides.slice(3 * at, 3 * at + 3);
          expect(wholeM - ownM).toBeCloseTo(spareM, 9);
          return spareM;
        });
        expect((free?.result?.value ?? 0) - (needs?.result?.value ?? 0)).toBeCloseTo(Math.min(...spare), 6);
      }
  });
});
