import { describe, expect, test } from 'vitest';
import { findingOf, measured, problemsOf, reportOf, words } from '../../support/check.ts';
import { floorPlan, rearDoors, type Standing, sideDoor } from '../../support/floor-plan.ts';

const rule = 'movement.passage';
const door = { 'side door': sideDoor };
const bed: Standing = { at: [2500, 0], size: [1500, 2000, 500], more: 'is: bed' };
const kitchen: Standing = { at: [1600, 0], size: [600, 900, 900] };
/** Against the right wall behind the door, and leaves so much beside the kitchen. */
const wardrobe = (gap: number): Standing => ({ at: [1600, 900 + gap], size: [600, 1100 - gap, 1800] });

const findingsIn = async (text: string) =>
  (await reportOf(text)).findings.filter((finding) => finding.rule === rule);

describe('an aisle', () => {
  test.each([
    { gap: 499, verdict: 'warn' },
    { gap: 500, verdict: 'pass' },
    { gap: 501, verdict: 'pass' },
    { gap: 200, verdict: 'warn' },
    { gap: 199, verdict: 'fail' },
  ])('of $gap mm: $verdict', async ({ gap, verdict }) => {
    const finding = await findingOf(floorPlan(door, { bed, kitchen, wardrobe: wardrobe(gap) }), rule);
    expect(finding.verdict).toBe(verdict);
    expect(measured(finding)).toBe(gap / 1000);
    expect(finding.limit?.measure.value).toBe(0.5);
  });

  // The bed begins 300 mm behind both, so that a move to the rear is no help; the wardrobe stands at the wall.
  test('too narrow says where, between what, and what to move by how much', async () => {
    const finding = await findingOf(floorPlan(door, { bed, kitchen, wardrobe: wardrobe(320) }), rule);
    expect(finding).toMatchObject({ subject: 'way to bed', path: ['fixtures', 'bed'] });
    expect(words(finding.reason)).toMatch(
      /^The way from side door to bed is only 320 mm wide between kitchen and wardrobe, 1\.?[67]\d+ mm from the front, 60 mm right of the centre line\.$/,
    );
    expect(words(finding.remedy)).toBe(
      'Make 180 mm more room there, with a smaller kitchen or wardrobe or another place for one of them.',
    );
  });

  test('with room beside it names the move, which is enough', async () => {
    const post = (left: number): Standing => ({ at: [1600, left], size: [600, 400, 900] });
    const between = (left: number) => floorPlan(door, { bed, kitchen, post: post(left) });
    const finding = await findingOf(between(1300), rule);
    expect(finding.verdict).toBe('warn');
    expect(measured(finding)).toBe(0.4);
    expect(words(finding.remedy)).toBe(
      'Move post 100 mm to the right, or make it as much smaller on that side.',
    );
    expect((await findingOf(between(1400), rule)).verdict).toBe('pass');
  });

  test('what a thing holds moves with it', async () => {
    const unit: Standing = { at: [1600, 1300], size: [600, 400, 900] };
    const sink: Standing = { at: [100, 50, 700], size: [300, 300, 150], more: 'is: sink, in: unit' };
    const finding = await findingOf(floorPlan(door, { bed, kitchen, unit, sink }), rule, 'way to');
    expect(words(finding.remedy)).toContain('Move unit 100 mm to the right');
  });
});

describe('several things', () => {
  const seat: Standing = { at: [2400, 900], size: [100, 400, 450], more: 'is: seat' };

  test('behind one narrow spot are one finding', async () => {
    const far: Standing = { ...bed, at: [3000, 0], size: [1000, 2000, 500] };
    const near: Standing = { ...seat, at: [2900, 900] };
    const findings = await findingsIn(
      floorPlan(door, { bed: far, seat: near, kitchen, wardrobe: wardrobe(300) }),
    );
    expect(findings.map(({ subject, verdict }) => [subject, verdict])).toEqual([
      ['way to bed and 1 more', 'warn'],
    ]);
    expect(words(findings[0]?.reason)).toContain('to bed and seat is only 300 mm wide');
  });

  test('that are reached are one pass a door, with the narrowest', async () => {
    const sink: Standing = { at: [1600, 900], size: [300, 50, 900], more: 'is: sink' };
    const findings = await findingsIn(floorPlan(door, { bed, kitchen, sink, wardrobe: wardrobe(600) }));
    expect(findings.map(({ subject, verdict }) => [subject, verdict])).toEqual([
      ['ways from side door', 'pass'],
    ]);
    expect(findings[0]?.path).toEqual(['van', 'openings', 'side door']);
    expect(measured(findings[0] ?? (await findingOf('', rule)))).toBe(0.55);
    expect(words(findings[0]?.reason)).toMatch(
      /^From side door to bed and sink the way is nowhere narrower than 550 mm, on the way to bed, between .*600 mm would be comfortable\.$/,
    );
  });

  test('comfort is no matter where it is wide', async () => {
    expect(words((await findingOf(floorPlan(door, { bed }), rule)).reason)).toBe(
      'From side door to bed the way is nowhere narrower than 1000 mm, on the way to bed, in the opening of side door, 1000 mm from the front, 1000 mm left of the centre line.',
    );
  });
});

describe('no way at all', () => {
  test('names what stands in it', async () => {
    const table: Standing = { at: [1700, 0], size: [400, 2000, 700] };
    const seat: Standing = { at: [2400, 900], size: [100, 400, 450], more: 'is: seat' };
    const findings = await findingsIn(floorPlan(door, { bed, seat, table }));
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ verdict: 'fail', subject: 'way to bed and 1 more' });
    expect(words(findings[0]?.reason)).toBe(
      'There is no way from side door to bed and seat: table stands in it.',
    );
    expect(words(findings[0]?.remedy)).toBe(
      'Find another place for table: without it the way to bed is 1000 mm wide.',
    );
  });

  test('through two walls says how wide it has to be', async () => {
    const wall = (front: number): Standing => ({ at: [front, 0], size: [50, 2000, 1800] });
    const finding = await findingOf(floorPlan(door, { bed, one: wall(1700), other: wall(1900) }), rule);
    expect(finding.verdict).toBe('fail');
    expect(words(finding.remedy)).toContain('at least 500 mm wide');
  });

  test('to a bed that fills the only doorway', async () => {
    const finding = await findingOf(floorPlan({ 'rear doors': rearDoors }, { bed }), rule);
    expect(finding).toMatchObject({ verdict: 'fail', subject: 'way to bed' });
  });
});

describe('a limit of the plan', () => {
  const own = (limit: string, gap: number) =>
    floorPlan(
      door,
      { bed, kitchen, wardrobe: wardrobe(gap) },
      {},
      `rules: {${rule}: {limit: ${limit}, reason: "we are slim, tried with boxes"}}`,
    );

  test.each([
    { limit: '400 mm', gap: 420, verdict: 'pass' },
    { limit: '600 mm', gap: 520, verdict: 'warn' },
    // Nobody gets through that, whatever the plan says.
    { limit: '100 mm', gap: 150, verdict: 'fail' },
  ])('$limit with $gap mm: $verdict', async ({ limit, gap, verdict }) => {
    const finding = await findingOf(own(limit, gap), rule);
    expect(finding.verdict).toBe(verdict);
    expect(finding.sources[0]?.title).toContain('we are slim');
  });

  test('is a length', async () => {
    expect(await problemsOf(own('5 kg', 500))).toHaveLength(1);
  });
});

test.each([
  { lacks: 'door', text: floorPlan({}, { bed }), missing: ['van.openings.NAME.kind'] },
  {
    lacks: 'place of the door',
    text: floorPlan({ 'side door': 'in: left wall, kind: door, length: 1 m, height: 1.8 m' }, { bed }),
    missing: ['van.openings.side door.at.from_front'],
  },
  { lacks: 'use', text: floorPlan(door, { kitchen }), missing: ['fixtures.NAME.is'] },
  {
    lacks: 'both',
    text: floorPlan({}, { kitchen }),
    missing: ['van.openings.NAME.kind', 'fixtures.NAME.is'],
  },
])('without a $lacks it is not checked', async ({ text, missing }) => {
  expect(await findingOf(text, rule)).toMatchObject({ verdict: 'not checked', missing });
});
