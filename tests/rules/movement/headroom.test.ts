import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const rule = 'movement.headroom';

const bedAt = (height: string, more = '') =>
  `bed: {mass: 20 kg, is: bed, size: {length: 1.9 m, width: 1.3 m, height: ${height}}, at: {from_front: 1 m, from_left: 0 mm}${more}}`;

/** Hangs over the bed's foot: from 2.4 m on, the bed ends at 2.9 m. */
const locker = (above: string, length = '0.5 m', from = '2.4 m', more = '') =>
  `locker: {mass: 5 kg, size: {length: ${length}, width: 1.3 m, height: 0.3 m}, at: {from_front: ${from}, from_left: 0 mm, above_floor: ${above}}${more}}`;

const seatAt = (height: string) =>
  `bench: {mass: 9 kg, is: seat, size: {length: 1 m, width: 0.4 m, height: ${height}}, at: {from_front: 0 m, from_right: 0 mm}}`;

const of = (...fixtures: readonly string[]) => `fixtures: {${fixtures.join(', ')}}`;
const people = (...statures: readonly string[]) =>
  `people: {sleepers: [${statures.map((stature) => `{stature: ${stature}}`).join(', ')}]}\n`;

const ownFindings = async (text: string) =>
  (await reportOf(text)).findings.filter((each) => each.rule === rule);

// The roof is at 2 m; without statures 972 mm are asked for.
describe('sitting up in bed', () => {
  test.each([
    { height: '1000 mm', verdict: 'pass' },
    { height: '1028 mm', verdict: 'pass' },
    { height: '1029 mm', verdict: 'warn' },
  ])('a bed $height high: $verdict', async ({ height, verdict }) => {
    const finding = await findingOf(plan(of(bedAt(height))), rule);
    expect(finding).toMatchObject({ verdict, subject: 'bed', path: ['fixtures', 'bed'] });
    expect(finding.limit?.measure.value).toBeCloseTo(0.972, 12);
  });

  test('says how high, for whom, and what to do', async () => {
    const finding = await findingOf(plan(of(bedAt('1.1 m'))), rule);
    expect(words(finding.reason)).toBe(
      'From bed up to the roof there are 900 mm at the best place; lying, there are 900 mm at the least. To sit up straight a tall person needs 972 mm.',
    );
    expect(words(finding.remedy)).toBe('Lower bed by 72 mm.');
  });

  test('a locker over a part of it leaves the rest', async () => {
    const finding = await findingOf(plan(of(bedAt('0.5 m'), locker('1.2 m'))), rule);
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(1.5, 12);
    expect(words(finding.reason)).toContain('lying, there are 700 mm at the least');
  });

  // The bed is 1.9 m long; a locker of 1.45 m leaves a spot of 450 mm, one of 1.451 m does not.
  test.each([
    { length: '1.45 m', from: '1.45 m', verdict: 'pass' },
    { length: '1.451 m', from: '1.449 m', verdict: 'warn' },
  ])('a locker of $length: $verdict', async ({ length, from, verdict }) => {
    const finding = await findingOf(plan(of(bedAt('0.5 m'), locker('1.2 m', length, from))), rule);
    expect(finding.verdict).toBe(verdict);
    if (verdict === 'warn') {
      expect(measured(finding)).toBeCloseTo(0.7, 12);
      expect(words(finding.remedy)).toBe('Raise locker or lower bed by 272 mm.');
    }
  });

  test('a mattress on it is what one sits on', async () => {
    const mattress =
      'mattress: {mass: 9 kg, size: {length: 1.9 m, width: 1.3 m, height: 0.15 m}, on: bed, at: {from_front: 0 m, from_left: 0 m}}';
    expect(measured(await findingOf(plan(of(bedAt('0.5 m'), mattress)), rule))).toBeCloseTo(1.35, 12);
  });

  // The roof falls from 2 m at the front to 1.6 m at the rear: 0.1 m per metre. A spot at the bed's front end, at 1 m,
  // reaches to 1.45 m, where it is 1.855 m high; its rear end at 2.9 m is 1.71 m high.
  test('a roof that slopes', async () => {
    const sloping = {
      load_bay:
        '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, heights: [{from_front: 0 m, height: 2 m}, {from_front: 4 m, height: 1.6 m}]}',
    };
    const finding = await findingOf(plan(of(bedAt('0.5 m')), sloping), rule);
    expect(measured(finding)).toBeCloseTo(1.355, 12);
    expect(words(finding.reason)).toContain('lying, there are 1210 mm at the least');
  });

  // A ridge of 2 m at 2 m, 1.6 m at both ends: 0.2 m per metre. Astride it, 225 mm either way: 1.955 m.
  test('a roof with a ridge: the best place is astride it', async () => {
    const ridged = {
      load_bay:
        '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, heights: [{from_front: 0 m, height: 1.6 m}, {from_front: 2 m, height: 2 m}, {from_front: 4 m, height: 1.6 m}]}',
    };
    expect(measured(await findingOf(plan(of(bedAt('0.5 m')), ridged), rule))).toBeCloseTo(1.455, 12);
  });

  // An L of a bed: 1.9 m × 0.4 m along the left wall and 0.4 m × 1.3 m across its foot hold no spot of 450 mm × 450 mm;
  // then all of it counts.
  test('a bed with a corner cut out', async () => {
    const cut = bedAt('0.5 m', ', cut_out: {corner: front right, length: 1.5 m, width: 0.9 m}');
    const wide = bedAt('0.5 m', ', cut_out: {corner: front right, length: 1.4 m, width: 0.9 m}');
    const over = locker('1.2 m', '0.5 m', '2.4 m');
    expect(measured(await findingOf(plan(of(cut, over)), rule))).toBeCloseTo(0.7, 12);
    // 0.5 m × 1.3 m across the foot hold one, under the locker.
    expect(measured(await findingOf(plan(of(wide, over)), rule))).toBeCloseTo(0.7, 12);
    // Where the locker leaves 0.45 m of the foot free, there is one beside it.
    const narrow = over.replace('width: 1.3 m', 'width: 0.85 m');
    expect(measured(await findingOf(plan(of(wide, narrow)), rule))).toBeCloseTo(1.5, 12);
  });
});

// 24 in: 609.6 mm.
describe('lying in bed', () => {
  test.each([
    { above: '1110 mm', verdicts: ['pass'] },
    { above: '1109 mm', verdicts: ['warn'] },
  ])('a locker at $above: $verdicts', async ({ above, verdicts }) => {
    const own = await ownFindings(plan(of(bedAt('0.5 m'), locker(above))));
    expect(own.map(({ verdict }) => verdict)).toEqual(verdicts);
  });

  test('warns with what is in the way', async () => {
    const [finding, ...more] = await ownFindings(plan(of(bedAt('0.5 m'), locker('1 m'))));
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ verdict: 'warn', subject: 'bed, lying' });
    expect(words(finding?.reason)).toBe(
      'Over bed there are only 500 mm between the mattress and locker at the lowest place; a berth has 610 mm everywhere.',
    );
    expect(words(finding?.remedy)).toBe('Raise locker or lower bed by 110 mm.');
  });

  test('too low everywhere is said once', async () => {
    const own = await ownFindings(plan(of(bedAt('1.5 m'))));
    expect(own).toMatchObject([{ subject: 'bed, lying', verdict: 'warn' }]);
    expect(words(own[0]?.reason)).toContain('Nobody sits up anywhere on it.');
  });

  test('too low to sit up in and in places to lie in is said apart', async () => {
    const own = await ownFindings(plan(of(bedAt('1.1 m'), locker('1.6 m'))));
    expect(own.map(({ subject }) => subject).sort()).toEqual(['bed', 'bed, lying']);
  });
});

describe('on a seat', () => {
  test('the least over it counts', async () => {
    const own = await findingOf(
      plan(of(seatAt('0.45 m'), locker('1.3 m', '0.2 m', '0.8 m').replace('from_left', 'from_right'))),
      rule,
    );
    expect(own).toMatchObject({ verdict: 'warn', subject: 'bench' });
    expect(measured(own)).toBeCloseTo(0.85, 12);
  });

  test('a table over the lap is no ceiling', async () => {
    const table =
      'table: {mass: 5 kg, is: table, size: {length: 1 m, width: 0.6 m, height: 30 mm}, at: {from_front: 0 m, from_right: 0.3 m, above_floor: 0.7 m}}';
    expect(measured(await findingOf(plan(of(seatAt('0.45 m'), table)), rule))).toBeCloseTo(1.55, 12);
  });

  test('what stands beside it or in the cab is not over it', async () => {
    const cab =
      'swivel chair: {mass: 9 kg, is: seat, size: {length: 0.5 m, width: 0.5 m, height: 0.5 m}, at: {from_front: -0.8 m, from_left: 0 m}}';
    const own = await ownFindings(plan(of(seatAt('0.45 m'), cab, locker('1.2 m', '0.5 m', '1 m'))));
    expect(own.map(({ subject }) => subject)).toEqual(['bench']);
    expect(own[0]?.measured?.value).toBeCloseTo(1.55, 12);
  });
});

describe('with the statures of those who sleep here', () => {
  // 910 / 1740 · 1.9 m = 993.7 mm, and 25 mm: 1018.7, in whole millimetres 1019.
  test('the tallest counts', async () => {
    const finding = await findingOf(plan(people('1.6 m', '1.9 m') + of(bedAt('1 m'))), rule);
    expect(finding.verdict).toBe('warn');
    expect(finding.limit?.measure.value).toBeCloseTo(1.019, 12);
    expect(words(finding.reason)).toContain('the tallest sleeper needs 1019 mm');
  });

  // 910 / 1740 · 1.5 m + 25 mm = 809.5: less than the table's 972.
  test('short people need less than the table', async () => {
    expect((await findingOf(plan(people('1.5 m') + of(bedAt('1.1 m'))), rule)).verdict).toBe('pass');
  });

  test('while one is missing, the table holds', async () => {
    const some = 'people: {sleepers: [{stature: 1.5 m}, {}]}\n';
    const finding = await findingOf(plan(some + of(bedAt('1.1 m'))), rule);
    expect(finding.limit?.measure.value).toBeCloseTo(0.972, 12);
  });

  test('a limit of the plan comes before them', async () => {
    const own = '\nrules: {movement.headroom: {limit: 850 mm, reason: "we slouch"}}';
    const finding = await findingOf(plan(`${people('1.9 m')}${of(bedAt('1.1 m'))}${own}`), rule);
    expect(finding.verdict).toBe('pass');
    expect(finding.limit?.measure.value).toBeCloseTo(0.85, 12);
  });
});

test('without beds and seats it is not checked', async () => {
  expect(await findingOf(plan(of('box: {mass: 1 kg}')), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['fixtures.NAME.is'],
  });
});
