import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const rule = 'movement.heights';

const people = (...statures: readonly string[]) =>
  `people: {sleepers: [${statures.map((stature) => `{stature: ${stature}}`).join(', ')}]}\n`;
const of = (...fixtures: readonly string[]) => `fixtures: {${fixtures.join(', ')}}`;

const seat = (height: string, depth = '400 mm', width = '900 mm') =>
  `bench: {mass: 9 kg, is: seat, size: {length: ${width}, width: ${depth}, height: ${height}}, at: {from_front: 1 m, from_left: 0 m}}`;

/** A top without legs. The bench ends 400 mm from the left wall. */
const table = (above: string, fromLeft = '0.5 m', thick = '30 mm') =>
  `table: {mass: 5 kg, is: table, size: {length: 0.9 m, width: 0.6 m, height: ${thick}}, at: {from_front: 1 m, from_left: ${fromLeft}, above_floor: ${above}}}`;

const worktop = (height: string) =>
  `counter: {mass: 9 kg, is: worktop, size: {length: 1 m, width: 0.5 m, height: ${height}}, at: {from_front: 0 m, from_right: 0 m}}`;

const ownFindings = async (text: string) =>
  (await reportOf(text)).findings.filter((each) => each.rule === rule);
const subjectsOf = async (text: string) =>
  (await ownFindings(text)).map(({ subject, verdict }) => `${subject}: ${verdict}`).sort();

// Without statures: 355 mm high, 435 mm deep, 465 mm wide.
describe('a seat', () => {
  test.each([
    { height: '350 mm', subjects: ['bench: pass'] },
    { height: '355 mm', subjects: ['bench: pass'] },
    { height: '356 mm', subjects: ['bench, height: warn'] },
  ])('$height high: $subjects', async ({ height, subjects }) => {
    expect(await subjectsOf(plan(of(seat(height))))).toEqual(subjects);
  });

  test.each([
    { depth: '435 mm', subjects: ['bench: pass'] },
    { depth: '436 mm', subjects: ['bench, depth: warn'] },
  ])('$depth deep: $subjects', async ({ depth, subjects }) => {
    expect(await subjectsOf(plan(of(seat('350 mm', depth))))).toEqual(subjects);
  });

  test.each([
    { width: '465 mm', subjects: ['bench: pass'] },
    { width: '464 mm', subjects: ['bench, width: warn'] },
  ])('$width wide: $subjects', async ({ width, subjects }) => {
    expect(await subjectsOf(plan(of(seat('350 mm', '400 mm', width))))).toEqual(subjects);
  });

  test('that is fine says its three measures', async () => {
    const finding = await findingOf(plan(of(seat('350 mm'))), rule);
    expect(words(finding.reason)).toBe(
      'bench suits people: the top is 350 mm above the floor; it is 400 mm deep; and 900 mm wide.',
    );
  });

  test('each measure that is off is said, with the figure that suits', async () => {
    const own = await ownFindings(plan(of(seat('450 mm', '445 mm', '450 mm'))));
    expect(own.map(({ subject }) => subject).sort()).toEqual([
      'bench, depth',
      'bench, height',
      'bench, width',
    ]);
    expect(own.map(({ remedy }) => words(remedy)).sort()).toEqual([
      'Make bench 355 mm high or lower, with its cushion pressed down, or keep a footrest of 95 mm.',
      'Make bench 435 mm deep or less, or put a cushion of 10 mm behind the back.',
      'Make bench at least 465 mm wide.',
    ]);
  });

  test('a cushion on it counts', async () => {
    const cushion =
      'cushion: {mass: 1 kg, size: {length: 0.9 m, width: 0.38 m, height: 50 mm}, on: bench, at: {from_front: 0 m, from_left: 0 m}}';
    const finding = await findingOf(plan(of(seat('350 mm'), cushion)), rule);
    expect(finding.subject).toBe('bench, height');
    expect(measured(finding)).toBeCloseTo(0.4, 12);
  });

  // Popliteal height 400 / 1610 · 1.65 m = 409.9 mm; buttock to knee 480 / 1610 · 1.65 m = 491.9 mm.
  test.each([
    { size: seat('410 mm', '492 mm'), subjects: ['bench: pass'] },
    { size: seat('411 mm', '492 mm'), subjects: ['bench, height: warn'] },
    { size: seat('410 mm', '493 mm'), subjects: ['bench, depth: warn'] },
  ])('for people who are known: $subjects', async ({ size, subjects }) => {
    expect(await subjectsOf(plan(people('1.86 m', '1.65 m') + of(size)))).toEqual(subjects);
  });

  test('an own limit is for the height alone', async () => {
    const own = '\nrules: {movement.heights: {limit: 450 mm, reason: "we like to sit high"}}';
    const fine = plan(`${people('1.65 m')}${of(seat('450 mm', '492 mm'))}${own}`);
    expect(await subjectsOf(fine)).toEqual(['bench: pass']);
  });

  test('in the cab is not held to it', async () => {
    const cab =
      'swivel chair: {mass: 9 kg, is: seat, size: {length: 0.5 m, width: 0.5 m, height: 0.5 m}, at: {from_front: -0.8 m, from_left: 0 m}}';
    expect(await subjectsOf(plan(of(cab, seat('350 mm'))))).toEqual(['bench: pass']);
  });
});

// 10 to 12 in above the seat: 254 to 304.8 mm.
describe('a table with a seat', () => {
  test.each([
    { above: '574 mm', subjects: ['bench: pass', 'table: pass'] },
    { above: '573 mm', subjects: ['bench: pass', 'table, height: warn'] },
    { above: '624 mm', subjects: ['bench: pass', 'table: pass'] },
    { above: '625 mm', subjects: ['bench: pass', 'table, height: warn'] },
  ])('a top of 30 mm at $above over a bench of 350 mm: $subjects', async ({ above, subjects }) => {
    expect(await subjectsOf(plan(of(seat('350 mm'), table(above))))).toEqual(subjects);
  });

  test('too high says what suits', async () => {
    const finding = await findingOf(plan(of(seat('350 mm'), table('700 mm'))), rule, 'table');
    expect(finding.limit).toMatchObject({ sense: 'at most' });
    expect(words(finding.reason)).toBe('The top of table is 380 mm above bench, too high to eat at.');
    expect(words(finding.remedy)).toBe('With bench 350 mm high, a table 604 mm to 654 mm high suits.');
  });

  test('too low', async () => {
    const finding = await findingOf(plan(of(seat('350 mm'), table('500 mm'))), rule, 'table');
    expect(finding.limit).toMatchObject({ sense: 'at least' });
    expect(words(finding.reason)).toContain('180 mm above bench, too low');
  });

  test('the nearest of two seats counts', async () => {
    const stool =
      'stool: {mass: 3 kg, is: seat, size: {length: 0.5 m, width: 0.4 m, height: 300 mm}, at: {from_front: 1 m, from_left: 1.3 m}}';
    const finding = await findingOf(plan(of(seat('350 mm'), stool, table('574 mm', '0.5 m'))), rule, 'table');
    // The bench is 100 mm away, the stool 200 mm.
    expect(words(finding.reason)).toContain('254 mm above bench');
  });

  // The bench ends at 0.4 m: a table from 1.0 m on is 600 mm away.
  test.each([
    { fromLeft: '1.0 m', said: 'above bench' },
    { fromLeft: '1.001 m', said: 'above the floor' },
  ])('from $fromLeft: $said', async ({ fromLeft, said }) => {
    const finding = await findingOf(
      plan(of(seat('350 mm'), table('500 mm', fromLeft))),
      rule,
      'table, height',
    );
    expect(words(finding.reason)).toContain(said);
  });
});

// Alone: 28 to 34 in, 711.2 to 863.6 mm; 27 in, 685.8 mm, clear under it.
describe('a table without a seat', () => {
  test.each([
    { above: '690 mm', subjects: ['table: pass'] },
    { above: '680 mm', subjects: ['table, height: warn', 'table, knee space: warn'] },
    { above: '834 mm', subjects: ['table, height: warn'] },
    { above: '833 mm', subjects: ['table: pass'] },
  ])('a top of 30 mm at $above: $subjects', async ({ above, subjects }) => {
    expect(await subjectsOf(plan(of(table(above))))).toEqual(subjects);
  });

  test('knees under a thick top', async () => {
    const finding = await findingOf(plan(of(table('650 mm', '0.5 m', '80 mm'))), rule);
    expect(finding).toMatchObject({ verdict: 'warn', subject: 'table, knee space' });
    expect(measured(finding)).toBeCloseTo(0.65, 12);
    expect(words(finding.remedy)).toBe('Raise table by 36 mm, or make its top that much thinner.');
  });

  test('with legs in its box nobody knows what is under it', async () => {
    expect(await subjectsOf(plan(of(table('0 mm', '0.5 m', '720 mm'))))).toEqual(['table: pass']);
  });
});

// A bench of 410 mm: a table up to 714.8 mm; 685.8 mm and a top of 29 mm are 714.8 mm.
describe('knees beside a bench', () => {
  const beside = (thick: string) =>
    plan(people('1.65 m') + of(seat('410 mm'), table('670 mm', '0.5 m', thick)));

  test('held where both can be had', async () => {
    expect(await subjectsOf(beside('29 mm'))).toEqual(['bench: pass', 'table, knee space: warn']);
  });

  test('not where a table as thick would be too high for the bench', async () => {
    expect(await subjectsOf(beside('30 mm'))).toEqual(['bench: pass', 'table: pass']);
  });
});

describe('a worktop', () => {
  // 28 in to 900 mm.
  test.each([
    { height: '711 mm', verdict: 'counter, height: warn' },
    { height: '712 mm', verdict: 'counter: pass' },
    { height: '900 mm', verdict: 'counter: pass' },
    { height: '901 mm', verdict: 'counter, height: warn' },
  ])('$height without statures: $verdict', async ({ height, verdict }) => {
    expect(await subjectsOf(plan(of(worktop(height))))).toEqual([verdict]);
  });

  // Elbow of 1.74 m: 1090 mm, with shoes 1115 mm: 965 to 1015 mm.
  test.each([
    { height: '964 mm', verdict: 'counter, height: warn' },
    { height: '965 mm', verdict: 'counter: pass' },
    { height: '1015 mm', verdict: 'counter: pass' },
    { height: '1016 mm', verdict: 'counter, height: warn' },
  ])('$height for 1.74 m: $verdict', async ({ height, verdict }) => {
    expect(await subjectsOf(plan(people('1.74 m') + of(worktop(height))))).toEqual([verdict]);
  });

  // Elbow of 1.65 m: 1033.6 mm, with shoes 1058.6 mm: 909 to 959 mm.
  test('between a short and a tall sleeper, and what suits each', async () => {
    const both = people('1.74 m', '1.65 m');
    expect(await subjectsOf(plan(both + of(worktop('962 mm'))))).toEqual(['counter: pass']);
    const finding = await findingOf(plan(both + of(worktop('900 mm'))), rule);
    expect(finding).toMatchObject({ verdict: 'warn', limit: { sense: 'at least' } });
    expect(words(finding.reason)).toBe(
      'The top of counter is 900 mm above the floor, too low for the elbows of those who live there. A worktop of 909 mm to 959 mm suits 1650 mm; 965 mm to 1015 mm suits 1740 mm.',
    );
    expect(words(finding.remedy)).toBe('Make counter 909 mm to 1015 mm high.');
  });

  test('people of one stature are named once', async () => {
    const finding = await findingOf(plan(people('1.74 m', '1.74 m') + of(worktop('900 mm'))), rule);
    expect(words(finding.reason)).toMatch(/A worktop of 965 mm to 1015 mm suits 1740 mm\.$/);
  });
});

test('every finding carries its row and what it rests on, once', async () => {
  for (const { sources, cautions } of await ownFindings(plan(of(seat('350 mm'), table('574 mm'))))) {
    expect(sources.length).toBeGreaterThan(1);
    expect(new Set(sources).size).toBe(sources.length);
    expect(new Set(cautions).size).toBe(cautions.length);
  }
});

test('without such things it is not checked', async () => {
  expect(await findingOf(plan(of('box: {mass: 1 kg}')), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['fixtures.NAME.is'],
  });
});

describe('a bench round a corner', () => {
  // 2 m by 1.8 m, with arms 400 mm deep along the left wall and 430 mm along the rear.
  const bench =
    'bench: {mass: 9 kg, is: seat, size: {length: 2 m, width: 1.8 m, height: 300 mm}, cut_out: {corner: front right, length: 1.57 m, width: 1.4 m}, at: {from_front: 2 m, from_left: 0 m}}';
  const cushions =
    'long cushion: {mass: 1 kg, size: {length: 2 m, width: 0.4 m, height: 50 mm}, on: bench, at: {from_front: 0 m, from_left: 0 m}}, short cushion: {mass: 1 kg, size: {length: 0.43 m, width: 1.4 m, height: 50 mm}, on: bench, at: {from_front: 1.57 m, from_left: 0.4 m}}';

  test('is as deep as its arms', async () => {
    const finding = await findingOf(plan(of(bench)), rule);
    expect(finding.verdict).toBe('pass');
    expect(words(finding.reason)).toContain('it is 430 mm deep; and 2000 mm wide.');
  });

  test('and so are its cushions, which count by what they cover of it', async () => {
    const finding = await findingOf(plan(of(bench, cushions)), rule);
    expect(words(finding.reason)).toContain('the top is 350 mm above the floor; it is 430 mm deep');
  });

  test('that is too deep for the one sleeper says so in good words', async () => {
    const deep = bench.replace('length: 1.57 m, width: 1.4 m', 'length: 1.4 m, width: 1.2 m');
    const finding = await findingOf(plan(people('1.61 m') + of(deep)), rule, 'bench, depth');
    expect(words(finding.reason)).toBe(
      'bench is 600 mm deep; the shortest sleeper has the backrest and the knees over the edge up to 480 mm.',
    );
  });
});
