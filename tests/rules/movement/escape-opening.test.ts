import { describe, expect, test } from 'vitest';
import { findingOf, reportOf, words } from '../../support/check.ts';
import { floorPlan } from '../../support/floor-plan.ts';

const rule = 'movement.escape-opening';
const windowOf = (length: string, height: string, more = 'escape: true') =>
  `in: left wall, kind: window, length: ${length}, height: ${height}, at: {from_front: 1 m, above_floor: 800 mm}, ${more}`;
const finding = (length: string, height: string) =>
  findingOf(floorPlan({ 'bed window': windowOf(length, height) }, {}), rule);

describe('an opening to get out through', () => {
  // 450 mm × 24 in, which is 609.6 mm.
  test.each([
    { length: '609.6 mm', height: '450 mm', verdict: 'pass' },
    { length: '450 mm', height: '609.6 mm', verdict: 'pass' },
    { length: '609 mm', height: '450 mm', verdict: 'warn' },
    { length: '609.6 mm', height: '449 mm', verdict: 'warn' },
    { length: '2000 mm', height: '300 mm', verdict: 'warn' },
  ])('of $length × $height: $verdict', async ({ length, height, verdict }) => {
    expect(await finding(length, height)).toMatchObject({
      verdict,
      subject: 'bed window',
      path: ['van', 'openings', 'bed window'],
    });
  });

  test('too small says both sizes, and what to fit', async () => {
    const { reason, remedy, cautions } = await finding('600 mm', '350 mm');
    expect(words(reason)).toBe(
      'bed window is 350 mm × 600 mm clear; as a way out it should be at least 450 mm × 610 mm, either way up.',
    );
    expect(words(remedy)).toBe(
      'Fit one that opens to 450 mm × 610 mm or more, or mark another opening as a way out.',
    );
    expect(cautions.join(' ')).toContain('Nothing here shows that people will get out of a fire');
  });

  test('what the strictest guide asks is a remark, where it is not kept', async () => {
    expect(words((await finding('700 mm', '500 mm')).reason)).toContain(
      'The strictest guide asks for 500 mm × 1000 mm.',
    );
    const large = await finding('1300 mm', '500 mm');
    expect(large.verdict).toBe('pass');
    expect(words(large.reason)).not.toContain('strictest');
    expect(large.sources.length).toBeLessThan((await finding('700 mm', '500 mm')).sources.length);
  });
});

test('each one by itself, in the order of the plan, and others not', async () => {
  const openings = {
    vent: windowOf('200 mm', '200 mm', 'escape: false'),
    one: windowOf('700 mm', '500 mm'),
    other: windowOf('400 mm', '400 mm'),
  };
  const { findings } = await reportOf(floorPlan(openings, {}));
  const found = findings.filter((each) => each.rule === rule);
  expect(found.map(({ subject, verdict }) => [subject, verdict])).toEqual([
    ['other', 'warn'],
    ['one', 'pass'],
  ]);
});

test.each([
  { lacks: 'one', openings: {}, missing: ['van.openings.NAME.escape'] },
  {
    lacks: 'one that is marked',
    openings: { 'bed window': windowOf('700 mm', '500 mm', 'escape: false') },
    missing: ['van.openings.NAME.escape'],
  },
  {
    lacks: 'a place',
    openings: { hatch: 'in: ceiling, kind: hatch, length: 700 mm, width: 500 mm, escape: true' },
    missing: ['van.openings.hatch.at.from_front', 'van.openings.hatch.at.from_left'],
  },
])('without $lacks it is not checked', async ({ openings, missing }) => {
  expect(await findingOf(floorPlan(openings, {}), rule)).toMatchObject({ verdict: 'not checked', missing });
});
