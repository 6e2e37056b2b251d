import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const rule = 'movement.bed-length';

const bay = (more: string) => ({
  load_bay: `{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, ${more}}`,
});

/** A bed that lies lengthways at the left wall. */
const bedOf = (length: string, width: string, more = '') =>
  `bed: {mass: 20 kg, is: bed, size: {length: ${length}, width: ${width}, height: 400 mm}, at: {from_front: 1 m, from_left: 0 mm}${more}}`;

const sleepers = (...statures: readonly string[]) =>
  `people: {sleepers: [${statures.map((stature) => (stature === '' ? '{}' : `{stature: ${stature}}`)).join(', ')}]}`;

const text = (people: string, ...fixtures: readonly string[]) =>
  `${people}\nfixtures: {${fixtures.join(', ')}}`;

const bedFor = (people: string, ...fixtures: readonly string[]) =>
  findingOf(plan(text(people, ...fixtures)), rule, 'bed');

// 1.80 m and 15 mm for lying: 1815 mm; 50 mm of room beyond: 1865 mm.
describe('straight in the bed', () => {
  test('pass, with the figures', async () => {
    const finding = await bedFor(sleepers('1.8 m'), bedOf('1.9 m', '0.7 m'));
    expect(finding).toMatchObject({ verdict: 'pass', subject: 'bed', path: ['fixtures', 'bed', 'size'] });
    expect(measured(finding)).toBeCloseTo(1.9, 12);
    expect(finding.limit?.measure.value).toBeCloseTo(1.865, 12);
    expect(words(finding.reason)).toBe(
      'Someone of 1800 mm lies straight in bed: 1900 mm long, 85 mm more than the 1815 mm that the body takes. A bed in a house has 229 mm more than the body.',
    );
  });

  test.each([
    { length: '1865 mm', verdict: 'pass' },
    { length: '1864 mm', verdict: 'warn' },
    { length: '1815 mm', verdict: 'warn' },
  ])('$length: $verdict', async ({ length, verdict }) => {
    expect((await bedFor(sleepers('1.8 m'), bedOf(length, '0.7 m'))).verdict).toBe(verdict);
  });

  test('just long enough says so and how much more is good', async () => {
    const finding = await bedFor(sleepers('1.8 m'), bedOf('1820 mm', '0.7 m'));
    expect(words(finding.reason)).toContain('just lies straight in bed: 1815 mm of 1820 mm');
    expect(words(finding.remedy)).toBe('Make bed 45 mm longer.');
  });

  test('a long bed is not told of beds in houses', async () => {
    expect(words((await bedFor(sleepers('1.8 m'), bedOf('2.1 m', '0.7 m'))).reason)).not.toContain('house');
  });
});

describe('across the corners', () => {
  // Carver's condition for 1.8 m × 0.52 m in 1.75 m × 1.5 m: (3.276 + 2.9696 · √0.4479) / 3.5104 = 1.4994 ≤ 1.5, so
  // that 1.80 m lie there; for the 1.815 m of someone of 1.80 m it is 1.528 > 1.5.
  test('a bed nearly square helps a little, and not enough', async () => {
    const finding = await bedFor(sleepers('1.8 m'), bedOf('1750 mm', '1.5 m'));
    expect(finding.verdict).toBe('fail');
    expect(measured(finding)).toBeCloseTo(1.8, 3);
    expect(words(finding.reason)).toContain('1750 mm straight and 1800.3 mm across its corners');
  });

  // 1.8 m square: 1.8·√2 − 0.52 = 2.0256 m across the corners.
  test('warn, and what the other has left', async () => {
    const finding = await bedFor(sleepers('1.85 m', '1.6 m'), bedOf('1.8 m', '1.8 m'));
    expect(finding).toMatchObject({ verdict: 'warn', subject: 'bed' });
    expect(words(finding.reason)).toContain('straight it is 1800 mm, on the diagonal 2026 mm');
    // 1.865 · 0.52 / 1.8² = 29.9 %.
    expect(words(finding.reason)).toContain('That takes 30 % of the other half of the bed.');
  });

  test('alone, nobody loses a half', async () => {
    const finding = await bedFor(sleepers('1.85 m'), bedOf('1.8 m', '1.8 m'));
    expect(words(finding.reason)).not.toContain('other half');
  });

  // 1.8·√2 − 0.52 = 2.02558 m; 2.0105 m + 15 mm = 2.0255 m lies there, 2.011 m does not.
  test.each([
    { stature: '2010.5 mm', verdict: 'warn' },
    { stature: '2011 mm', verdict: 'fail' },
  ])('$stature: $verdict', async ({ stature, verdict }) => {
    expect((await bedFor(sleepers(stature), bedOf('1.8 m', '1.8 m'))).verdict).toBe(verdict);
  });

  test('fail against the body itself, and the remedy lets them lie straight', async () => {
    const finding = await bedFor(sleepers('1.86 m'), bedOf('1.7 m', '0.7 m'));
    expect(finding.verdict).toBe('fail');
    expect(finding.limit?.measure.value).toBeCloseTo(1.875, 12);
    expect(words(finding.reason)).toContain('1700 mm straight and no more across its corners');
    expect(words(finding.remedy)).toBe('Make bed 225 mm longer.');
    expect((await bedFor(sleepers('1.86 m'), bedOf('1925 mm', '0.7 m'))).verdict).toBe('pass');
  });

  test('a bed narrower than shoulders has no diagonal', async () => {
    const report = await reportOf(plan(text(sleepers('1.86 m'), bedOf('1.86 m', '0.5 m'))));
    const own = report.findings.filter((each) => each.rule === rule);
    expect(own.map(({ subject, verdict }) => [subject, verdict])).toEqual([
      ['bed', 'fail'],
      ['bed, width', 'warn'],
    ]);
  });
});

describe('a mattress on the bed', () => {
  const mattress = (size: string, more = 'is: bed, ') =>
    `mattress: {mass: 8 kg, ${more}size: ${size}, on: bed, at: {from_front: 0 mm, from_left: 0 mm}}`;

  test('counts where it is shorter, and is no bed of its own', async () => {
    const { findings } = await reportOf(
      plan(
        text(
          sleepers('1.8 m'),
          bedOf('1.9 m', '0.7 m'),
          mattress('{length: 1.84 m, width: 0.65 m, height: 0.1 m}'),
        ),
      ),
    );
    const own = findings.filter((each) => each.rule === rule);
    expect(own).toMatchObject([{ subject: 'bed', verdict: 'warn' }]);
    expect(own[0]?.measured?.value).toBeCloseTo(1.84, 12);
  });

  test('that hangs over the frame is as long as the frame', async () => {
    const finding = await bedFor(
      sleepers('1.8 m'),
      bedOf('1.9 m', '0.7 m'),
      mattress('{length: 2 m, width: 0.7 m, height: 0.1 m}', ''),
    );
    expect(measured(finding)).toBeCloseTo(1.9, 12);
  });

  // 0.5 m × 0.4 m of 1.9 m × 0.7 m: 15 %.
  test('a pillow is none', async () => {
    const finding = await bedFor(
      sleepers('1.8 m'),
      bedOf('1.9 m', '0.7 m'),
      mattress('{length: 0.4 m, width: 0.5 m, height: 0.1 m}', ''),
    );
    expect(measured(finding)).toBeCloseTo(1.9, 12);
  });

  test('two halves are one mattress', async () => {
    const half = (name: string, from: string) =>
      `${name}: {mass: 4 kg, size: {length: 0.94 m, width: 0.7 m, height: 0.1 m}, on: bed, at: {from_front: ${from}, from_left: 0 mm}}`;
    const finding = await bedFor(
      sleepers('1.8 m'),
      bedOf('1.9 m', '0.7 m'),
      half('head', '0 m'),
      half('foot', '0.94 m'),
    );
    expect(measured(finding)).toBeCloseTo(1.88, 12);
  });
});

describe('across the van', () => {
  // 2 m at the floor, 1.6 m at the height of 2 m: 0.2 m per metre of height.
  const leaning = bay('profile: [{above_floor: 0 m, width: 2 m}, {above_floor: 2 m, width: 1.6 m}]');
  const across =
    'bed: {mass: 20 kg, is: bed, leans: true, size: {length: 1.2 m, width: 1.95 m, height: 0.2 m}, at: {from_front: 1 m, centred: true}}';

  // On the bed's top at 0.2 m up to 0.5 m: 2 − 0.1 = 1.9 m clear.
  test('walls that lean in cap the length', async () => {
    const finding = await findingOf(plan(text(sleepers('1.8 m'), across), leaning), rule);
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(1.9, 12);
    expect(words(finding.reason)).toContain(
      'The walls lean in over the ends of bed and take 50 mm of its length.',
    );
  });

  // A mattress of 0.1 m on it begins at 0.2 m as well: the same. Raised to 0.7 m: 2 − 0.2 = 1.8 m.
  test('higher up they take more, and only turning it helps', async () => {
    const raised = across.replace('centred: true', 'centred: true, above_floor: 0.5 m');
    const finding = await findingOf(plan(text(sleepers('1.8 m'), raised), leaning), rule);
    expect(finding.verdict).toBe('fail');
    expect(measured(finding)).toBeCloseTo(1.8, 12);
    expect(words(finding.remedy)).toBe(
      'Turn bed lengthways and make it 1865 mm long and 1200 mm wide: across the van there are only 1800 mm clear at that height.',
    );
  });

  test('straight walls take nothing', async () => {
    const finding = await findingOf(plan(text(sleepers('1.8 m'), across)), rule);
    expect(measured(finding)).toBeCloseTo(1.95, 12);
    expect(words(finding.reason)).not.toContain('lean');
  });

  test('nor do leaning walls of a bed that lies lengthways', async () => {
    const finding = await findingOf(plan(text(sleepers('1.8 m'), bedOf('1.9 m', '0.7 m')), leaning), rule);
    expect(words(finding.reason)).not.toContain('lean');
  });
});

describe('several sleepers and beds', () => {
  const small =
    'bunk: {mass: 9 kg, is: bed, size: {length: 1.5 m, width: 0.65 m, height: 0.3 m}, at: {from_front: 1 m, from_right: 0 mm}}';

  test('the tall one is put in the long bed', async () => {
    const report = await reportOf(plan(text(sleepers('1.3 m', '1.8 m'), small, bedOf('1.9 m', '0.7 m'))));
    const own = report.findings.filter((each) => each.rule === rule);
    expect(own.map(({ subject, verdict }) => [subject, verdict])).toEqual(
      expect.arrayContaining([
        ['bed', 'pass'],
        ['bunk', 'pass'],
      ]),
    );
    expect(own).toHaveLength(2);
  });

  test('a bed that nobody needs is not judged', async () => {
    const report = await reportOf(plan(text(sleepers('1.8 m'), small, bedOf('1.9 m', '0.7 m'))));
    expect(report.findings.filter((each) => each.rule === rule)).toMatchObject([{ subject: 'bed' }]);
  });

  // 24 in each: 1219.2 mm for two.
  test.each([
    { width: '1220 mm', count: 1 },
    { width: '1219 mm', count: 2 },
  ])('two in $width: $count findings', async ({ width, count }) => {
    const report = await reportOf(plan(text(sleepers('1.8 m', '1.7 m'), bedOf('1.9 m', width))));
    const own = report.findings.filter((each) => each.rule === rule);
    expect(own).toHaveLength(count);
  });

  test('too narrow for two warns with the width of each', async () => {
    const finding = await bedWidth(sleepers('1.8 m', '1.7 m'), '1 m');
    expect(finding.verdict).toBe('warn');
    expect(words(finding.reason)).toBe(
      'bed is 1000 mm wide for 2 sleepers, who have 500 mm each; a berth has 610 mm for each.',
    );
    expect(words(finding.remedy)).toBe('Make bed 220 mm wider, or plan another bed.');
  });

  test('too narrow for one', async () => {
    expect(words((await bedWidth(sleepers('1.8 m'), '0.6 m')).reason)).toContain('for one sleeper');
  });

  // Three: one in each, and the third in the wider bed.
  test('the third sleeps where it is wide', async () => {
    const report = await reportOf(
      plan(text(sleepers('1.7 m', '1.8 m', '1.3 m'), small, bedOf('1.9 m', '1.3 m'))),
    );
    const own = report.findings.filter((each) => each.rule === rule);
    expect(own.map(({ verdict }) => verdict)).toEqual(['pass', 'pass']);
    expect(words(own.find(({ subject }) => subject === 'bunk')?.reason)).toContain('Someone of 1300 mm');
  });

  const bedWidth = (people: string, width: string) =>
    findingOf(plan(text(people, bedOf('1.9 m', width))), rule, 'bed, width');
});

test('a stature that is missing is said', async () => {
  const finding = await bedFor(sleepers('1.8 m', ''), bedOf('1.9 m', '1.4 m'));
  expect(words(finding.reason)).toContain('How tall one sleeper is is not known.');
});

test.each([
  { lacks: 'a stature', people: sleepers(''), beds: bedOf('1.9 m', '1 m'), missing: ['people.sleepers'] },
  { lacks: 'sleepers', people: '', beds: bedOf('1.9 m', '1 m'), missing: ['people.sleepers'] },
  { lacks: 'a bed', people: sleepers('1.8 m'), beds: 'box: {mass: 1 kg}', missing: ['fixtures.NAME.is'] },
])('without $lacks it is not checked', async ({ people, beds, missing }) => {
  expect(await findingOf(plan(text(people, beds)), rule)).toMatchObject({ verdict: 'not checked', missing });
});

test('the plan may ask for more room', async () => {
  const rules = 'rules: {movement.bed-length: {limit: 200 mm, reason: "we like to stretch out"}}';
  const text1 = `${text(sleepers('1.8 m'), bedOf('1.9 m', '0.7 m'))}\n${rules}`;
  expect((await findingOf(plan(text1), rule)).verdict).toBe('warn');
});
