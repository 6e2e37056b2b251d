import { describe, expect, test } from 'vitest';
import { buildOf, findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const scale = (text: string, ticket = '') =>
  findingOf(text, 'mass.weighbridge', ticket && `ticket ${ticket}`);

const van = { unladen: '{front: 1000 kg, rear: 1000 kg, from: weighbridge, includes: {driver: false}}' };

/** 2000 kg empty, a bed of 100 kg over the middle of the wheelbase, and a driver of 80 kg who got out to be weighed. */
const weighed = (ticket: string, rest = '') =>
  plan(
    `people: {seats: {driver: {mass: 80 kg, at: {from_front: -1 m, centred: true, above_floor: 0.6 m}}}}
fixtures: {bed: {mass: 100 kg, at: {from_front: 1 m, centred: true, above_floor: 0 m}}}
weighed: {spring: {date: 2026-03-14, ${ticket}}}
${rest}`,
    van,
  );

/**
 * Computed for the ticket: 2000 + 100 = 2100 kg. Nothing has a tolerance, so 0.5 % of 3000 kg = 15 kg is allowed.
 * At the heaviest 2000 + 100 + 80 = 2180 kg: 820 kg left by the plan.
 */
describe('the total', () => {
  test.each([
    // 2110 − 2100 = 10 kg; counted from the scale 820 − 10 = 810 kg are left.
    { scaleKg: 2110, verdict: 'pass', differenceKg: 10, leftKg: '810 kg', words: '10 kg more than' },
    { scaleKg: 2115, verdict: 'pass', differenceKg: 15, leftKg: '805 kg', words: '15 kg more than' },
    { scaleKg: 2115.1, verdict: 'warn', differenceKg: 15.1, leftKg: '805 kg', words: '15 kg more than' },
    { scaleKg: 2150, verdict: 'warn', differenceKg: 50, leftKg: '770 kg', words: '50 kg more than' },
    { scaleKg: 2085, verdict: 'pass', differenceKg: 15, leftKg: '835 kg', words: '15 kg less than' },
    { scaleKg: 2040, verdict: 'warn', differenceKg: 60, leftKg: '880 kg', words: '60 kg less than' },
  ])(
    '$scaleKg kg on the scale: $verdict',
    async ({ scaleKg, verdict, differenceKg, leftKg, words: says }) => {
      const finding = await scale(weighed(`total: ${scaleKg} kg`));
      expect(finding.verdict).toBe(verdict);
      expect(measured(finding)).toBeCloseTo(differenceKg, 9);
      expect(finding.limit?.measure.value).toBeCloseTo(15, 9);
      expect(words(finding.reason)).toContain(says);
      expect(words(finding.reason)).toContain(`payload left is ${leftKg}`);
    },
  );

  // U = 2 · 30 / √3 = 34.64 kg is more than 15 kg, and 30 kg are within it.
  test('a coarse scale allows as much as it can be out', async () => {
    const finding = await scale(weighed('total: 2130 kg ± 30 kg'));
    expect(finding.verdict).toBe('pass');
    expect(finding.limit?.measure.value).toBeCloseTo(60 / Math.sqrt(3), 9);
  });

  test('says which way to look', async () => {
    expect(words((await scale(weighed('total: 2150 kg'))).remedy)).toContain(
      'in the van and not in the plan: 50 kg',
    );
    expect(words((await scale(weighed('total: 2040 kg'))).remedy)).toContain(
      'in the plan and was not in the van: 60 kg',
    );
  });
});

/** The bed is at x = 2 m of 4 m: 50 kg to each axle. Computed: 1050 kg in front, 1050 kg at the rear. */
describe('the axles', () => {
  test('the one that is furthest out is shown', async () => {
    const finding = await scale(weighed('front: 1040 kg, rear: 1100 kg'));
    expect(finding).toMatchObject({ subject: 'ticket spring, rear axle', verdict: 'warn' });
    expect(measured(finding)).toBeCloseTo(50, 9);
    // The payload follows the total: 2140 − 2100 = 40 kg more, 820 − 40 = 780 kg.
    expect(words(finding.reason)).toContain('payload left is 780 kg');
  });

  // The total agrees to 0 kg, but 20 kg stand on the other axle.
  test('a total that agrees does not hide axles that do not', async () => {
    const finding = await scale(weighed('front: 1070 kg, rear: 1030 kg'));
    expect(finding).toMatchObject({ verdict: 'warn' });
    expect(finding.subject).toMatch(/axle$/);
    expect(measured(finding)).toBeCloseTo(20, 9);
  });

  test('with a thing that has no place only the total is compared', async () => {
    const text = weighed('front: 1070 kg, rear: 1030 kg').replace(/ {2}load_bay:.*\n/, '');
    expect(await scale(text)).toMatchObject({ verdict: 'pass', subject: 'ticket spring, total' });
  });
});

describe('the state of the ticket', () => {
  const things = `tanks: {fresh tank: {contents: fresh, holds: 100 L, mass: 5 kg, in: wardrobe}}
stores: {clothes: {full: 40 kg, empty: 12 kg, in: drawer}}`;
  const nested = (ticket: string, rest = '') =>
    plan(
      `people: {seats: {driver: {mass: 80 kg}, passenger: {mass: 60 kg}}}
fixtures:
  wardrobe: {mass: 30 kg, size: {length: 0.5 m, width: 0.5 m, height: 1.8 m}, at: {from_front: 1 m, from_left: 0 m}}
  drawer: {mass: 4 kg, in: wardrobe}
  shelf: {mass: 7 kg}
build_ups: {floor: {area: 10 m2, layers: [{name: boards, areal_mass: 2 kg/m2}]}}
${things}
weighed: {spring: {date: 2026-03-14, ${ticket}}}
${rest}`,
      van,
    );

  // 2000 + 30 + 4 + 7 + 20 + 5 + 12 = 2078 kg: what is not named was empty or not aboard, but a store keeps its least.
  test('what is not named was not aboard', async () => {
    const finding = await scale(nested('total: 2078 kg'));
    expect(measured(finding)).toBeCloseTo(0, 9);
    const { assumptions } = await buildOf(nested('total: 2078 kg'));
    expect(assumptions.map(({ text }) => words(text)).join()).toContain(
      'ticket spring: empty or not aboard when weighed: driver, passenger, clothes, fresh tank',
    );
  });

  // + 50 % of 100 L + 60 kg of passenger + 12 + 50 % of (40 − 12) = 26 kg of clothes instead of 12.
  test('in percentages, and aboard', async () => {
    const state = 'state: {fresh tank: 50 %, passenger: aboard, clothes: 50 %}';
    expect(measured(await scale(nested(`total: 2202 kg, ${state}`)))).toBeCloseTo(0, 9);
  });

  // + 30 L + 20 kg of clothes instead of 12.
  test('in litres and kilograms', async () => {
    const state = 'state: {fresh tank: 30 L, clothes: 20 kg}';
    expect(measured(await scale(nested(`total: 2116 kg, ${state}`)))).toBeCloseTo(0, 9);
  });

  // A named state has what it does not name full: 2000 + 41 + 20 + 5 + 80 + 60 + 40 + 25 L = 2271 kg.
  test('by the name of a load state', async () => {
    const states = 'load_states: {going: {fresh tank: 25 %}}';
    expect(measured(await scale(nested('total: 2271 kg, state: going', states)))).toBeCloseTo(0, 9);
  });

  // Without the wardrobe: no drawer, no clothes in it, no tank and no water: 2000 + 7 + 20 = 2027 kg.
  test('what was left out takes everything in it along', async () => {
    const ticket = 'total: 2027 kg, state: {fresh tank: 100 %, clothes: 100 %}, without: [wardrobe]';
    expect(measured(await scale(nested(ticket)))).toBeCloseTo(0, 9);
  });

  // Without the drawer only the clothes go: 2078 − 4 − 12 = 2062 kg.
  test('a host that stays keeps the rest', async () => {
    expect(measured(await scale(nested('total: 2062 kg, without: [drawer]')))).toBeCloseTo(0, 9);
  });

  // A build-up can be missing too: 2078 − 20 = 2058 kg.
  test('without a build-up', async () => {
    expect(measured(await scale(nested('total: 2058 kg, without: [floor]')))).toBeCloseTo(0, 9);
  });
});

/** The driver sat in the van when it was weighed empty: 80 kg of the 2000 kg are his. */
describe('a driver in the unladen mass', () => {
  const inside = (ticket: string) =>
    weighed(ticket).replace('includes: {driver: false}', 'includes: {driver: true}');

  test.each([
    // 2000 − 80 + 100: he got out for this ticket.
    { ticket: 'total: 2020 kg' },
    { ticket: 'total: 2020 kg, state: {driver: absent}' },
    // 2000 + 100: he stayed in.
    { ticket: 'total: 2100 kg, state: {driver: aboard}' },
  ])('$ticket agrees', async ({ ticket }) => {
    expect(measured(await scale(inside(ticket)))).toBeCloseTo(0, 9);
  });

  // At x = 0 m he sits over the front axle: 1000 − 80 + 50 = 970 kg in front, 1050 kg at the rear.
  test('is taken off where he sat', async () => {
    const finding = await scale(inside('front: 970 kg, rear: 1050 kg'));
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(0, 9);
  });
});

test('several tickets are each compared', async () => {
  const text = weighed('total: 2100 kg}, summer: {date: 2026-07-01, total: 2300 kg');
  const findings = (await reportOf(text)).findings.filter(({ rule }) => rule === 'mass.weighbridge');
  expect(findings.map(({ subject, verdict }) => [subject, verdict])).toEqual([
    ['ticket summer, total', 'warn'],
    ['ticket spring, total', 'pass'],
  ]);
});

// Both lines of the sources: the method, and the threshold for weighing anew.
test('says where the allowance comes from', async () => {
  expect((await scale(weighed('total: 2100 kg'))).sources.length).toBeGreaterThan(1);
});

test.each([
  { lacks: 'tickets', text: plan('', van), missing: ['weighed'] },
  {
    lacks: 'max_mass',
    text: plan('weighed: {spring: {date: 2026-03-14, total: 2000 kg}}', { ...van, max_mass: undefined }),
    missing: ['van.max_mass'],
  },
  {
    lacks: 'unladen',
    text: plan('weighed: {spring: {date: 2026-03-14, total: 2000 kg}}', { unladen: undefined }),
    missing: ['van.unladen'],
  },
])('without $lacks it is not checked', async ({ text, missing }) => {
  expect(await scale(text)).toMatchObject({ verdict: 'not checked', missing });
});
