import { describe, expect, test } from 'vitest';
import { parsePlanPath } from '../../../src/plan/editing/plan-path.ts';
import { scalarText, typedValue } from '../../../src/plan/editing/scalar-text.ts';
import { setValue } from '../../../src/plan/editing/set-value.ts';
import { changedLines } from '../../../src/report/changed-lines.ts';

const plan = `# head
storystick: 1
van: {max_mass: 3500 kg, axle_limits: {front: 1 t, rear: 2 t}} # plate
fixtures:
  # bed
  bed: {mass: "24 kg", at: {from_front: 1 m}}   # comment
  kitchen unit:
    mass: 31 kg ± 3 kg # weighed
    at: {
      from_front: 80 mm, # measured
      from_right: 0 mm # also
    }

  a.b: &s {mass: 2 kg}
  other: *s
  "quoted, key": {mass: '1 kg', "in": bed}
  spread: {
    mass: 2 kg,
    on: floor,
  }
  marked: {mass: &m 4 kg, each: *m}
  bare: {leans, mass: }
# tail comment
people:
  sleepers: [{stature: 1.78 m}, {stature: 1.66 m}]
  seats: {}
rules:
  balance.sides: {limit: 5 %, reason: maker}
empty:
name: >-
  over
  lines
living:
  nights_off_grid: 3
  # the last comment`;

function set(path: string, value: string, { text = plan, asNew = false } = {}) {
  const parsed = parsePlanPath(path);
  if (!('steps' in parsed)) throw new Error(parsed.problem.message);
  return setValue(text, parsed.steps, typedValue(value), { asNew });
}

function lines(path: string, value: string, options = {}) {
  const edit = set(path, value, options);
  if ('problem' in edit) throw new Error(edit.problem.message);
  return changedLines(plan, edit.text).map(({ sign, text }) => `${sign}${text}`);
}

const refusal = (path: string, value = '1 kg') => {
  const edit = set(path, value);
  return 'problem' in edit ? edit.problem : undefined;
};

describe('a value that is there', () => {
  test.each([
    [
      'fixtures.bed.mass',
      '26 kg',
      '-  bed: {mass: "24 kg", at: {from_front: 1 m}}   # comment',
      '+  bed: {mass: "26 kg", at: {from_front: 1 m}}   # comment',
    ],
    [
      'fixtures.kitchen unit.mass',
      '32 kg',
      '-    mass: 31 kg ± 3 kg # weighed',
      '+    mass: 32 kg # weighed',
    ],
    [
      'fixtures."quoted, key".mass',
      '2 kg',
      `-  "quoted, key": {mass: '1 kg', "in": bed}`,
      `+  "quoted, key": {mass: '2 kg', "in": bed}`,
    ],
    ['fixtures.other', '{mass: 5 kg}', '-  other: *s', '+  other: {mass: 5 kg}'],
    [
      'people.sleepers[2].stature',
      '1.7 m',
      '-  sleepers: [{stature: 1.78 m}, {stature: 1.66 m}]',
      '+  sleepers: [{stature: 1.78 m}, {stature: 1.7 m}]',
    ],
    [
      'rules.balance.sides.limit',
      '6 %',
      '-  balance.sides: {limit: 5 %, reason: maker}',
      '+  balance.sides: {limit: 6 %, reason: maker}',
    ],
    [
      'rules.balance.sides.reason',
      'the maker: "ok", # yes',
      '-  balance.sides: {limit: 5 %, reason: maker}',
      '+  balance.sides: {limit: 5 %, reason: "the maker: \\"ok\\", # yes"}',
    ],
    [
      'fixtures.marked.each',
      '5 kg',
      '-  marked: {mass: &m 4 kg, each: *m}',
      '+  marked: {mass: &m 4 kg, each: 5 kg}',
    ],
    ['fixtures.bare.mass', '5 kg', '-  bare: {leans, mass: }', '+  bare: {leans, mass: 5 kg}'],
    ['fixtures.bare.leans', 'true', '-  bare: {leans, mass: }', '+  bare: {leans: true, mass: }'],
    ['empty', '5 kg', '-empty:', '+empty: 5 kg'],
    ['living.nights_off_grid', '4', '-  nights_off_grid: 3', '+  nights_off_grid: 4'],
  ])('%s: %s', (path, value, ...expected) => {
    expect(lines(path, value)).toEqual(expected);
  });

  test('a text over several lines becomes one of one line', () => {
    expect(lines('name', 'Curlew: 5')).toEqual(['-name: >-', '-  over', '-  lines', '+name: "Curlew: 5"']);
  });

  test('keeps line breaks of another system', () => {
    const text = plan.replaceAll('\n', '\r\n');
    const edit = set('fixtures.kitchen unit.on', 'floor', { text });
    const unix = set('fixtures.kitchen unit.on', 'floor');
    expect('text' in edit && 'text' in unix && edit.text === unix.text.replaceAll('\n', '\r\n')).toBe(true);
  });
});

describe('a key that is not there is written as its neighbours are', () => {
  test.each([
    [
      'van.wheelbase',
      '3 m',
      [
        '-van: {max_mass: 3500 kg, axle_limits: {front: 1 t, rear: 2 t}} # plate',
        '+van: {max_mass: 3500 kg, axle_limits: {front: 1 t, rear: 2 t}, wheelbase: 3 m} # plate',
      ],
    ],
    [
      'fixtures.kitchen unit.at.above_floor',
      '-5 mm',
      ['-      from_right: 0 mm # also', '+      from_right: 0 mm, # also', '+      above_floor: -5 mm'],
    ],
    ['fixtures.spread.is', 'bed', ['+    is: bed,']],
    ['fixtures.kitchen unit.on', 'floor', ['+    on: floor']],
    ['fixtures.shelf.at.from_rear', '1 m', ['+  shelf: {at: {from_rear: 1 m}}']],
    ['people.seats.driver.mass', '82 kg', ['-  seats: {}', '+  seats: {driver: {mass: 82 kg}}']],
    ['empty.x.y', '1', ['-empty:', '+empty: {x: {y: 1}}']],
    [
      'fixtures."quoted, key".is',
      'bed',
      [
        `-  "quoted, key": {mass: '1 kg', "in": bed}`,
        `+  "quoted, key": {mass: '1 kg', "in": bed, "is": bed}`,
      ],
    ],
  ])('%s: %s', (path, value, expected) => {
    expect(lines(path, value)).toEqual(expected);
  });

  test('a new section of the plan has lines of its own, at the end', () => {
    const edit = set('electrical.battery.voltage', '12.8 V');
    expect('text' in edit && edit.text.slice(plan.indexOf('living:'))).toBe(
      'living:\n  nights_off_grid: 3\n  # the last comment\nelectrical:\n  battery: {voltage: 12.8 V}',
    );
  });

  test('in a file without a line break at its end', () => {
    const edit = set('van.track', '1.7 m', { text: 'van:\n  wheelbase: 3 m' });
    expect('text' in edit && edit.text).toBe('van:\n  wheelbase: 3 m\n  track: 1.7 m');
  });

  test('after a text over several lines', () => {
    const text = 'a:\n  b: |+\n    one\n\n    two\n\n\nc: 1\n';
    const edit = set('a.d', '2', { text });
    expect('text' in edit && edit.text).toBe('a:\n  b: |+\n    one\n\n    two\n\n\n  d: 2\nc: 1\n');
  });

  test('a name that is almost there is asked about, unless it is said to be new', () => {
    expect(refusal('fixtures.bde.mass')).toMatchObject({
      message: '`fixtures.bde` is not in the plan',
      meant: 'fixtures.bed',
    });
    expect(lines('fixtures.bde.mass', '1 kg', { asNew: true })).toEqual(['+  bde: {mass: 1 kg}']);
  });
});

describe('what cannot be set', () => {
  test.each([
    [
      'fixtures.other.mass',
      '`fixtures.other` is `*s`: it repeats what stands at `&s`, and has no keys of its own to change',
    ],
    [
      'fixtures."a.b".mass',
      '`fixtures."a.b".mass` is repeated by `*s` in line 15, and would change there too',
    ],
    [
      'fixtures.marked.mass',
      '`fixtures.marked.mass` is repeated by `*m` in line 21, and would change there too',
    ],
    ['fixtures.bed', '`fixtures.bed` is a section, not one value'],
    ['fixtures.kitchen unit', '`fixtures.kitchen unit` is a section, not one value'],
    ['people.sleepers', '`people.sleepers` is a list, not one value'],
    ['people.sleepers[3].stature', '`people.sleepers` has 2 entries'],
    ['people.sleepers.stature', '`people.sleepers` is a list, and has no key `stature`'],
    ['van.max_mass.x', '`van.max_mass` is one value, and has no key `x`'],
    ['van[1]', '`van` is no list'],
    ['new[1]', '`new` is not in the plan'],
    ['fixtures.bed.stows[1].x', '`fixtures.bed.stows` is not in the plan'],
  ])('%s', (path, message) => {
    expect(refusal(path)?.message).toBe(message);
  });

  test('a section in braces may be replaced by another', () => {
    expect(refusal('fixtures.bed.at', '{from_front: 2 m}')).toBeUndefined();
  });
});

describe('a value as it is typed', () => {
  test.each([
    ['26 kg', '26 kg', '26 kg'],
    ['4', '4', '4'],
    ['true', 'true', true],
    ['[cable, water]', '[cable, water]', ['cable', 'water']],
    ['"5 kg"', '"5 kg"', '5 kg'],
    ['*mark', '"*mark"', '*mark'],
    ['a: b', '"a: b"', 'a: b'],
    ['5 kg # weighed', '"5 kg # weighed"', '5 kg # weighed'],
    ['[a', '"[a"', '[a'],
    ['', '""', ''],
    ['a\nb', '"a\\nb"', 'a\nb'],
  ])('%j', (written, text, data) => {
    expect(typedValue(written)).toMatchObject({ text, data });
  });

  test.each([
    ['My van', 'My van'],
    ['true', '"true"'],
    ['a: b', '"a: b"'],
    ['"a"', '"\\"a\\""'],
    ['[a]', '"[a]"'],
    ['2026', '2026'],
    ['# a', '"# a"'],
  ])('a text %j is written %s', (text, written) => {
    expect(scalarText(text)).toBe(written);
  });
});
