import { describe, expect, test } from 'vitest';
import { findingOf, measured, only, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const stowage = (text: string, subject = '') => findingOf(text, 'fit.stowage', subject);

/** A chest of 2 × 1 × 0.5 m on the floor, with what it stows and more. */
const chest = (stows: string, more = '', rest = '') =>
  plan(
    `fixtures:
  chest: {mass: 20 kg, size: {length: 2 m, width: 1 m, height: 0.5 m}, at: {from_front: 1 m, from_left: 0.5 m}${more}, stows: {${stows}}}
${rest}`,
  );
const size = (length: string, width: string, height: string, more = '') =>
  `{size: {length: ${length}, width: ${width}, height: ${height}}${more}}`;

describe('inside, one thing', () => {
  test('pass, with the room that is free', async () => {
    const finding = await stowage(chest(`chair: ${size('1.8 m', '0.9 m', '0.2 m')}`));
    expect(finding).toMatchObject({
      verdict: 'pass',
      subject: 'chair in chest',
      path: ['fixtures', 'chest', 'stows', 'chair'],
    });
    expect(words(finding.reason)).toContain('where 2000 mm × 1000 mm × 500 mm is free');
  });

  test('any way round', async () => {
    expect((await stowage(chest(`chair: ${size('0.4 m', '2 m', '1 m')}`))).verdict).toBe('pass');
  });

  test('upright it is 500 mm too high', async () => {
    const finding = await stowage(chest(`chair: ${size('0.4 m', '0.9 m', '1 m', ', upright: true')}`));
    expect(finding.verdict).toBe('fail');
    expect(measured(finding)).toBe(1);
    expect(finding.limit?.measure.value).toBeCloseTo(0.5, 12);
    expect(words(finding.reason)).toContain('would have to be 500 mm higher. It has to stay upright.');
    expect(words(finding.remedy)).toContain('Make that room 500 mm higher');
  });

  test('exactly as large goes, half a millimetre more does not', async () => {
    expect((await stowage(chest(`chair: ${size('0.5 m', '2 m', '1 m')}`))).verdict).toBe('pass');
    expect((await stowage(chest(`chair: ${size('0.5 m', '2.0005 m', '1 m')}`))).verdict).toBe('fail');
  });

  test('10 × 10 does not go into 8 × 8', async () => {
    const text = plan(
      `fixtures: {tray: {mass: 2 kg, size: {length: 0.8 m, width: 0.8 m, height: 0.1 m}, at: {from_front: 1 m, from_left: 1 m}, stows: {plate: ${size('1 m', '1 m', '0.1 m')}}}}`,
    );
    const finding = await stowage(text);
    expect(finding.verdict).toBe('fail');
    expect(words(finding.reason)).toContain('200 mm longer and 200 mm wider');
  });
});

describe('what else stands there', () => {
  const crate = `  crate: {mass: 2 kg, in: chest, size: {length: 0.5 m, width: 1 m, height: 0.5 m}, at: {from_front: 0 m, from_left: 0 m}}`;
  test('takes its room', async () => {
    expect((await stowage(chest(`chair: ${size('1.5 m', '1 m', '0.5 m')}`, '', crate))).verdict).toBe('pass');
    const finding = await stowage(chest(`chair: ${size('1.6 m', '1 m', '0.5 m')}`, '', crate));
    expect(finding.verdict).toBe('fail');
    expect(words(finding.reason)).toContain('100 mm longer');
  });

  test('all of it', async () => {
    const full = crate.replace('length: 0.5 m', 'length: 2 m');
    const finding = await stowage(chest(`chair: ${size('0.1 m', '0.1 m', '0.1 m')}`, '', full));
    expect(finding.verdict).toBe('fail');
    expect(words(finding.reason)).toContain('nothing is free there');
  });

  test('without a place is named, not counted', async () => {
    const text = chest(`chair: ${size('1.5 m', '1 m', '0.5 m')}`, '', '  crate: {mass: 2 kg, in: chest}');
    const finding = await stowage(text);
    expect(finding.verdict).toBe('pass');
    expect(words(finding.reason)).toContain('no place in the plan: crate');
  });

  test('a wheel arch takes its room too', async () => {
    const arch = {
      wheel_arches: '{from_front: 2 m, length: 1 m, width: 0.75 m, height: 0.3 m}',
    };
    const text = (length: string) => chest(`chair: ${size(length, '1 m', '0.5 m')}`);
    const withArch = (length: string) =>
      text(length).replace('van:', `van:\n  wheel_arches: ${arch.wheel_arches}`);
    expect((await stowage(withArch('1 m'))).verdict).toBe('pass');
    expect((await stowage(withArch('1.1 m'))).verdict).toBe('fail');
  });
});

describe('several', () => {
  const cubes = (count: number) =>
    Array.from({ length: count }, (_, index) => `c${index}: ${size('1 m', '0.5 m', '0.25 m')}`).join(', ');
  test('eight that fill the chest: each passes', async () => {
    const report = await reportOf(chest(cubes(8)));
    const found = report.findings.filter(({ rule }) => rule === 'fit.stowage');
    expect(found.map(({ verdict }) => verdict)).toEqual(Array(8).fill('pass'));
  });

  test('a ninth: one warning for all of them', async () => {
    const finding = only(await reportOf(chest(cubes(9))), 'fit.stowage');
    expect(finding).toMatchObject({
      verdict: 'warn',
      subject: 'all in chest',
      path: ['fixtures', 'chest', 'stows'],
    });
    expect(words(finding.reason)).toContain('no way was found for all of them together');
  });

  test('one that does not go alone leaves the others in peace', async () => {
    const report = await reportOf(chest(`${cubes(2)}, pole: ${size('3 m', '0.1 m', '0.1 m')}`));
    expect(only(report, 'fit.stowage', 'pole').verdict).toBe('fail');
    expect(only(report, 'fit.stowage', 'c0').verdict).toBe('pass');
  });
});

describe('underneath', () => {
  const bed = (stows: string, aboveFloor = '0.8 m', rest = '') =>
    plan(
      `fixtures:
  bed: {mass: 20 kg, size: {length: 1.5 m, width: 2 m, height: 0.1 m}, at: {from_front: 1 m, from_left: 0 m, above_floor: ${aboveFloor}}, stows: {${stows}}}
${rest}`,
    );
  const bike = `bike: ${size('1.7 m', '0.5 m', '0.8 m', ', place: underneath')}`;
  test('down to the floor', async () => {
    expect(await stowage(bed(bike))).toMatchObject({ verdict: 'pass', subject: 'bike under bed' });
    // 799 mm above the floor: the bike lies on its side, 0.5 m high.
    expect((await stowage(bed(bike, '0.799 m'))).verdict).toBe('pass');
    expect((await stowage(bed(bike.replace(', place', ', upright: true, place'), '0.799 m'))).verdict).toBe(
      'fail',
    );
  });

  test('less what stands there', async () => {
    const box =
      '  box: {mass: 2 kg, size: {length: 1.1 m, width: 2 m, height: 0.4 m}, at: {from_front: 1 m, from_left: 0 m}}';
    expect((await stowage(bed(bike, '0.8 m', box))).verdict).toBe('fail');
  });

  test('a bed on the floor has nothing underneath', async () => {
    const finding = await stowage(bed(bike, '0 m'));
    expect(finding.verdict).toBe('fail');
    expect(words(finding.remedy)).toContain('by 500 mm at least');
  });

  test('down to what it stands on', async () => {
    const shelf = (above: string) =>
      plan(
        `fixtures:
  bench: {mass: 20 kg, size: {length: 1.5 m, width: 1 m, height: 0.5 m}, at: {from_front: 1 m, from_left: 0 m}}
  shelf: {mass: 2 kg, on: bench, size: {length: 1 m, width: 0.5 m, height: 0.02 m}, at: {from_front: 0 m, from_left: 0 m, above_floor: ${above}}, stows: {box: ${size('1 m', '0.5 m', '0.3 m', ', place: underneath, upright: true')}}}`,
      );
    expect((await stowage(shelf('0.3 m'))).verdict).toBe('pass');
    expect((await stowage(shelf('0.29 m'))).verdict).toBe('fail');
  });
});

// The square in a circle of 1 m has sides of 707 mm; in strips of 20 mm 690 mm of it are certain.
test('a drum holds what its circle holds, not what its box does', async () => {
  const drum = (side: string) =>
    plan(
      `fixtures: {drum: {mass: 2 kg, shape: cylinder, size: {length: 1 m, width: 1 m, height: 1 m}, at: {from_front: 1 m, from_left: 0.5 m}, stows: {box: ${'{size: {length: SIDE, width: SIDE, height: 1 m}, upright: true}'.replaceAll('SIDE', side)}}}}`,
    );
  expect((await stowage(drum('0.68 m'))).verdict).toBe('pass');
  expect((await stowage(drum('0.71 m'))).verdict).toBe('fail');
});

test('a cupboard that leans ends at the wall', async () => {
  const text = (width: string) =>
    plan(
      `fixtures: {cupboard: {mass: 9 kg, leans: true, size: {length: 1 m, width: 0.5 m, height: 1 m}, at: {from_front: 1 m, from_left: 0 m}, stows: {board: ${size('1 m', width, '1 m', ', upright: true')}}}}`,
    ).replace(
      'floor_above_ground: 0.5 m',
      'floor_above_ground: 0.5 m, profile: [{above_floor: 0 m, width: 2 m}, {above_floor: 1 m, width: 1.8 m}]',
    );
  expect((await stowage(text('0.4 m'))).verdict).toBe('pass');
  expect((await stowage(text('0.41 m'))).verdict).toBe('fail');
});

test('nothing to stow: not checked', async () => {
  expect(await stowage(plan())).toMatchObject({ verdict: 'not checked', missing: ['fixtures.NAME.stows'] });
});

test('a host without a place: not checked, with the keys that would say it', async () => {
  const text = plan(
    `fixtures: {chest: {mass: 9 kg, stows: {a: ${size('1 m', '1 m', '1 m')}, b: ${size('1 m', '1 m', '1 m')}}}}`,
  );
  const finding = await stowage(text);
  expect(finding).toMatchObject({ verdict: 'not checked', subject: 'all in chest' });
  expect(finding.missing).toContain('fixtures.chest.size.length');
  expect(finding.missing).toContain('fixtures.chest.at.from_left');
});
