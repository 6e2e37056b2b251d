import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const contents = (text: string) => findingOf(text, 'fit.contents');

type Three = readonly [number, number, number];

const box = ([length, width, height]: Three, [x, y, z]: Three, more = ''): string =>
  `{mass: 1 kg, size: {length: ${length} mm, width: ${width} mm, height: ${height} mm}, at: {from_front: ${x} mm, from_left: ${y} mm, above_floor: ${z} mm}${more}}`;

/** In a unit of 1000 × 600 × 900 mm. */
const inUnit = (size: Three, at: Three, unit = '') =>
  plan(
    `fixtures: {fridge: ${box(size, at, ', in: unit')}, unit: ${box([1000, 600, 900], [1000, 100, 0], unit)}}`,
  );

test('pass: exactly as large as its host', async () => {
  const finding = await contents(inUnit([1000, 600, 900], [0, 0, 0]));
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toBe('1 thing in or on others: it lies within or over what holds it.');
});

describe('sticking out', () => {
  test.each([
    { at: [-60, 0, 0] as const, says: '60 mm outside at the front', mends: '60 mm rearward' },
    { at: [560, 0, 0] as const, says: '60 mm outside at the rear', mends: '60 mm forward' },
    { at: [0, -60, 0] as const, says: '60 mm outside on the left', mends: '60 mm to the right' },
    { at: [0, 260, 0] as const, says: '60 mm outside on the right', mends: '60 mm to the left' },
    { at: [0, 0, 460] as const, says: '60 mm outside at the top', mends: '60 mm down' },
    { at: [0, 0, -60] as const, says: '60 mm outside at the bottom', mends: '60 mm up' },
  ])('$says', async ({ at, says, mends }) => {
    const finding = await contents(inUnit([500, 400, 500], at));
    expect(finding).toMatchObject({ verdict: 'fail', subject: 'fridge', path: ['fixtures', 'fridge'] });
    expect(measured(finding)).toBeCloseTo(0.06, 9);
    expect(words(finding.reason)).toBe(`Not all of fridge is within unit: ${says}.`);
    expect(words(finding.remedy)).toBe(`Move fridge ${mends}.`);
  });

  test.each([
    { by: 0.4, verdict: 'pass' },
    { by: 0.6, verdict: 'fail' },
  ])('half a millimetre touches: $by mm $verdict', async ({ by, verdict }) => {
    expect((await contents(inUnit([500, 400, 500], [-by, 0, 0]))).verdict).toBe(verdict);
    expect((await contents(inUnit([500, 400, 500], [0, 0, 400 + by]))).verdict).toBe(verdict);
  });

  test('on several sides is one finding, the worst first', async () => {
    const finding = await contents(inUnit([500, 400, 500], [-20, 0, 450]));
    expect(measured(finding)).toBeCloseTo(0.05, 9);
    expect(words(finding.reason)).toContain('50 mm outside at the top and 20 mm outside at the front');
    expect(words(finding.remedy)).toBe('Move fridge 20 mm rearward and 50 mm down.');
  });
});

describe('too large', () => {
  test('cannot fit at all', async () => {
    const finding = await contents(inUnit([500, 400, 950], [0, 0, 0]));
    expect(words(finding.reason)).toContain(
      'It cannot fit at all: its height is 950 mm, and unit has 900 mm.',
    );
    expect(words(finding.remedy)).toBe('Make fridge at most 900 mm high.');
  });

  test('unless it is turned', async () => {
    const finding = await contents(inUnit([500, 650, 500], [0, 0, 0]));
    expect(words(finding.reason)).toContain(
      'It cannot fit this way round: its width is 650 mm, and unit has 600 mm.',
    );
    expect(words(finding.remedy)).toBe(
      'Turn fridge a quarter round, so that it is 650 mm long and 500 mm wide. Or else: Make fridge at most 600 mm wide.',
    );
  });

  test('in one direction and out in another', async () => {
    const finding = await contents(inUnit([1100, 700, 500], [0, 0, 450]));
    expect(words(finding.remedy)).toBe(
      'Move fridge 50 mm down, and make it at most 1000 mm long and 600 mm wide.',
    );
  });
});

describe('a host with a corner cut off', () => {
  const cut = ', cut_out: {corner: rear left, length: 300 mm, width: 200 mm}';

  test('what lies beside the corner is within', async () => {
    expect((await contents(inUnit([700, 600, 500], [0, 0, 0], cut))).verdict).toBe('pass');
    expect((await contents(inUnit([1000, 400, 500], [0, 200, 0], cut))).verdict).toBe('pass');
  });

  test('what reaches into it is not', async () => {
    const finding = await contents(inUnit([750, 600, 500], [0, 0, 0], cut));
    expect(finding.verdict).toBe('fail');
    expect(measured(finding)).toBeCloseTo(0.05, 6);
    expect(words(finding.reason)).toContain('50 mm by 200 mm of its plan, from 1700 mm behind the front');
    expect(words(finding.remedy)).toContain('at least 50 mm');
  });
});

test('what lies on another thing may be larger than that', async () => {
  const text = plan(
    `fixtures: {unit: ${box([1000, 600, 900], [1000, 100, 0])}, worktop: ${box([1000, 700, 30], [0, -50, 0], ', on: unit')}}`,
  );
  expect(await contents(text)).toMatchObject({ verdict: 'pass' });
});

test('each is held to the nearest thing about it', async () => {
  const text = plan(
    `fixtures: {unit: ${box([1000, 600, 900], [1000, 100, 0])}, drawer: ${box([400, 400, 200], [0, 0, 0], ', in: unit')}, pan: ${box([500, 300, 100], [0, 0, 0], ', in: drawer')}}`,
  );
  expect(words((await contents(text)).reason)).toContain('Not all of pan is within drawer');
});

test('without a load bay it is not checked', async () => {
  expect(await contents(plan('', { load_bay: undefined }))).toMatchObject({
    verdict: 'not checked',
    missing: ['van.load_bay'],
  });
});

describe('what stands on something', () => {
  const pot = (at: string) =>
    plan(`fixtures:
  table: {mass: 5 kg, size: {length: 0.6 m, width: 0.4 m, height: 0.7 m}, at: {from_front: 1 m, from_left: 0.5 m}}
  pot: {mass: 1 kg, size: {length: 0.2 m, width: 0.2 m, height: 0.2 m}, on: table, at: {from_front: ${at}, from_left: 0 m}}`);

  test('may hang over its edge, but not stand beside it', async () => {
    expect((await findingOf(pot('0.4 m'), 'fit.contents')).verdict).toBe('pass');
    expect((await findingOf(pot('0.59 m'), 'fit.contents')).verdict).toBe('pass');
    const beside = await findingOf(pot('0.6 m'), 'fit.contents');
    expect(beside).toMatchObject({ verdict: 'fail', subject: 'pot', path: ['fixtures', 'pot', 'on'] });
    expect(words(beside.reason)).toContain('nothing of pot is over table');
  });
});
