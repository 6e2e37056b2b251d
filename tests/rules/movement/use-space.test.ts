import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const rule = 'movement.use-space';
const of = (text: string, subject = '') => findingOf(text, rule, subject);

/** The load bay is 4 m long, 2 m wide and 2 m high. Sizes and places in metres: from front, from left, above floor. */
const thing = (
  name: string,
  [length, width, height]: readonly [number, number, number],
  [front, left, above]: readonly [number, number, number],
  more = '',
) =>
  `  ${name}: {mass: 10 kg, size: {length: ${length} m, width: ${width} m, height: ${height} m}, at: {from_front: ${front} m, from_left: ${left} m, above_floor: ${above} m}${more}}`;
const withThings = (all: readonly string[], van = {}) => plan(`fixtures:\n${all.join('\n')}`, van);

/** 1 m long against the left wall, with 600 mm wanted before it: to 1.1 m from the left. */
const sink = thing('sink', [1, 0.5, 0.9], [1, 0, 0], ', needs_space: {right: 0.6 m}');
const bed = (
  left: number,
  more: Partial<{ height: number; above: number; front: number; length: number }> = {},
) => thing('bed', [more.length ?? 2, 0.5, more.height ?? 0.5], [more.front ?? 0.5, left, more.above ?? 0]);

describe('the room before a sink', () => {
  test.each([
    // The edge of the room is at 1.1 m; 0.7 m is 200 mm before the sink.
    { left: 1.1, verdict: 'pass', leaves: 0.6 },
    { left: 1.099, verdict: 'warn', leaves: 0.599 },
    { left: 0.9, verdict: 'warn', leaves: 0.4 },
    { left: 0.7, verdict: 'warn', leaves: 0.2 },
    { left: 0.698, verdict: 'fail', leaves: 0.198 },
  ])('with a bed $left m from the left: $verdict, $leaves m left', async ({ left, verdict, leaves }) => {
    const finding = await of(withThings([sink, bed(left)]));
    expect(finding).toMatchObject({
      verdict,
      subject: 'sink, right side',
      path: ['fixtures', 'sink', 'needs_space', 'right'],
    });
    expect(measured(finding)).toBeCloseTo(leaves, 9);
    expect(finding.limit?.measure.value).toBeCloseTo(0.6, 9);
  });

  test('says what takes it and what to do', async () => {
    const finding = await of(withThings([sink, bed(0.9)]));
    expect(words(finding.reason)).toBe(
      'bed leaves 400 mm of the 600 mm that sink needs free on its right side.',
    );
    expect(words(finding.remedy)).toBe(
      'Move bed 200 mm to the right. If what is left is enough for you, write `right` as 400 mm.',
    );
  });

  test('of which only a corner is taken says over what width, and somebody still stands there', async () => {
    // From 1.85 m on: 150 mm of its 1 m, right at its face.
    const finding = await of(withThings([sink, bed(0.5, { front: 1.85, length: 1 })]));
    expect(finding.verdict).toBe('warn');
    expect(measured(finding)).toBeCloseTo(0, 9);
    expect(words(finding.reason)).toContain('bed leaves 0 mm of');
    expect(words(finding.reason)).toContain('over 150 mm of its 1000 mm width');
  });

  test('of which no more than 100 mm at one end is taken is only narrowed', async () => {
    const taken = (front: number) => of(withThings([sink, bed(0.5, { front, length: 1 })]));
    expect((await taken(1.9)).verdict).toBe('pass');
    expect((await taken(1.899)).verdict).toBe('warn');
  });

  test('is not left by a post in its middle, however thin', async () => {
    const finding = await of(withThings([sink, bed(0.9, { front: 1.5, length: 0.05 })]));
    expect(finding.verdict).toBe('warn');
  });

  test.each([
    // From 0.1 m to 1.6 m a person is in the way.
    { above: 0, height: 0.1, verdict: 'pass' },
    { above: 0, height: 0.11, verdict: 'warn' },
    { above: 1.6, height: 0.1, verdict: 'pass' },
    { above: 1.5, height: 0.3, verdict: 'warn' },
  ])('with something from $above m, $height m high: $verdict', async ({ above, height, verdict }) => {
    expect((await of(withThings([sink, bed(0.9, { above, height })]))).verdict).toBe(verdict);
  });

  test('may be shared with that of another thing', async () => {
    const hob = thing('hob', [1, 0.5, 0.9], [1, 1.2, 0], ', needs_space: {left: 0.6 m}');
    const found = (await reportOf(withThings([sink, hob]))).findings.filter((each) => each.rule === rule);
    expect(found.map(({ verdict }) => verdict)).toEqual(['pass', 'pass']);
  });

  test('is not taken by what is in or on the sink, or by what something else holds', async () => {
    const finding = await of(
      withThings([
        sink,
        '  worktop: {mass: 5 kg, on: sink, size: {length: 1 m, width: 0.55 m, height: 0.03 m}, at: {from_front: 0 m, from_left: 0 m}}',
        bed(0.9),
        '  drawer: {mass: 5 kg, in: bed, size: {length: 1 m, width: 0.4 m, height: 0.3 m}, at: {from_front: 0.5 m, from_left: 0 m}}',
      ]),
    );
    expect(words(finding.reason)).toBe(
      'bed leaves 400 mm of the 600 mm that sink needs free on its right side.',
    );
  });

  test('names all that stand in it, the nearest first', async () => {
    const finding = await of(withThings([sink, bed(0.9), thing('post', [0.1, 0.1, 1], [1.5, 0.8, 0])]));
    expect(words(finding.reason)).toMatch(/^post leaves 300 mm .*In it stands also bed\.$/);
    expect(words(finding.remedy)).toContain(' Then see to bed.');
  });
});

describe('the four sides', () => {
  test.each([
    ['front', [0.3, 0.2, 1], [0.5, 0.9, 0], 0.2],
    ['rear', [0.3, 0.2, 1], [1.8, 0.9, 0], 0.3],
    ['left', [0.2, 0.2, 1], [1.2, 0.3, 0], 0.3],
    ['right', [0.2, 0.2, 1], [1.2, 1.4, 0], 0.2],
  ] as const)('%s', async (side, size, at, leaves) => {
    // From 1 m to 1.5 m along and 0.8 m to 1.2 m across.
    const table = thing('table', [0.5, 0.4, 0.7], [1, 0.8, 0], `, needs_space: {${side}: 0.5 m}`);
    expect(measured(await of(withThings([table, thing('post', size, at)])))).toBeCloseTo(leaves, 9);
  });
});

describe('the van itself', () => {
  test('its wall takes what is beyond it', async () => {
    const far = thing('sink', [1, 0.5, 0.9], [1, 1.1, 0], ', needs_space: {right: 0.6 m}');
    const finding = await of(withThings([far]));
    expect(finding.verdict).toBe('warn');
    expect(measured(finding)).toBeCloseTo(0.4, 9);
    expect(words(finding.reason)).toContain('the right wall leaves 400 mm');
  });

  test('a door of the van lets people stand outside, while it is open', async () => {
    const galley = thing('galley', [1, 0.5, 0.9], [1, 1.5, 0], ', needs_space: {right: 0.6 m}');
    expect((await of(withThings([galley]))).verdict).toBe('fail');
    const openings =
      '{side door: {in: right wall, kind: door, length: 1 m, height: 1.6 m, at: {from_front: 1 m}}}';
    const finding = await of(withThings([galley], { openings }));
    expect(finding.verdict).toBe('warn');
    expect(words(finding.reason)).toContain('outside side door: it is there only with that open');
  });

  test('that a pillar takes too is not won by moving the bed', async () => {
    const obstructions =
      '{pillar: {size: {length: 0.3 m, width: 0.3 m, height: 1.5 m}, at: {from_front: 1.2 m, from_left: 0.9 m}}}';
    const finding = await of(withThings([sink, bed(0.7)], { obstructions }));
    expect(words(finding.remedy)).toMatch(
      /^Turn sink round or find another place for it: pillar cannot give way\./,
    );
  });

  test('a pillar takes room, a step does not', async () => {
    const van = (walkable: boolean) => ({
      obstructions: `{step: {size: {length: 0.3 m, width: 0.3 m, height: 0.3 m}, at: {from_front: 1 m, from_left: 0.8 m}, walkable: ${walkable}}}`,
    });
    expect((await of(withThings([sink], van(false)))).verdict).toBe('warn');
    expect((await of(withThings([sink], van(true)))).verdict).toBe('pass');
  });
});

test.each([
  { text: plan(''), missing: ['fixtures.NAME.needs_space'] },
  { text: plan('', { load_bay: undefined }), missing: ['van.load_bay'] },
])('without any it is not checked: $missing', async ({ text, missing }) => {
  expect(await of(text)).toMatchObject({ verdict: 'not checked', missing });
});

describe('slips of a tired hand', () => {
  test.each([
    {
      slip: 'a thing as wide as a street',
      thing: thing('bed', [0.06, 30, 0.6], [0.6, 0, 0], ', needs_space: {front: 1.056 m}'),
    },
    {
      slip: 'a thing thinner than paper',
      thing: thing('foil', [0.25, 1e-9, 1.5], [0.6, -0.05, 0], ', needs_space: {front: 0.21 m}'),
    },
    {
      slip: 'no depth to speak of',
      thing: thing('bench', [3, 0.01, 0.4], [-1.9, 0, 0], ', needs_space: {left: 0.00001 mm}'),
    },
    {
      slip: 'metres for decimetres',
      thing: thing('unit', [1, 1, 1], [12, 0, 0], ', needs_space: {rear: 30 m}'),
    },
  ])('$slip stops no check', async ({ thing: slipped }) => {
    // `reportOf` throws where a check stops.
    const { findings } = await reportOf(withThings([slipped]));
    expect(findings.some((finding) => finding.rule === rule)).toBe(true);
  });
});
