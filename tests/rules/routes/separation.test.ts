import { describe, expect, test } from 'vitest';
import { installationCaution } from '../../../src/rules/cautions.ts';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

/** A gas chase and a cable chase along the left wall, 2 m long, this far above each other. */
interface Drawn {
  readonly apart?: string;
  readonly gas?: string;
  readonly cable?: string;
  readonly chases?: string;
  readonly runs?: string;
  readonly points?: string;
  readonly things?: string;
  readonly rules?: string;
}

const at = (fromFront: string, aboveFloor: string, fromLeft = '0 m') =>
  `{at: {from_front: ${fromFront}, from_left: ${fromLeft}, above_floor: ${aboveFloor}}}`;

const text = ({
  apart = '1 m',
  gas = '',
  cable = '',
  chases = '',
  runs = '',
  points = '',
  things = '',
  rules = '',
}: Drawn) =>
  plan(`fixtures: {fridge: {mass: 9 kg, size: {length: 20 cm, width: 20 cm, height: 20 cm}, at: {from_front: 3 m, from_right: 0 m}}}
${things}
routes:
  points: {a: ${at('1 m', '0.1 m')}, b: ${at('3 m', '0.1 m')}, c: ${at('1 m', `0.1 m + ${apart}`)}, d: ${at('3 m', `0.1 m + ${apart}`)}${points}}
  chases: {pipe: {between: [a, b], carries: [gas]${gas}}, wires: {between: [c, d], carries: [cable]${cable}}${chases}}
  runs: {burner: {carries: gas, from: a, to: b}, light: {carries: cable, from: c, to: d}${runs}}
${rules}`);

const separation = (drawn: Drawn = {}, subject = '') => findingOf(text(drawn), 'routes.separation', subject);
const all = async (drawn: Drawn) =>
  (await reportOf(text(drawn))).findings.filter(({ rule }) => rule === 'routes.separation');

describe('side by side', () => {
  test.each([
    { apart: '1 m', verdict: 'pass' },
    { apart: '30 mm', verdict: 'pass' },
    { apart: '29 mm', verdict: 'warn' },
  ])('$apart: $verdict', async ({ apart, verdict }) => {
    const finding = await separation({ apart });
    expect(finding).toMatchObject({ verdict, subject: 'pipe', path: ['routes', 'chases', 'pipe'] });
    expect(finding.limit?.measure.value).toBe(0.03);
    expect(finding.cautions).toContain(installationCaution);
    expect(finding.sources.length).toBeGreaterThan(0);
  });

  test('what they take up across comes off: half of bores, or of diameters', async () => {
    expect(
      measured(await separation({ apart: '60 mm', gas: ', bore: 20 mm', cable: ', bore: 30 mm' })),
    ).toBeCloseTo(0.035, 12);
    const diameters = text({ apart: '60 mm' })
      .replace('to: b}', 'to: b, diameter: 10 mm}')
      .replace('to: d}', 'to: d, diameter: 20 mm}');
    expect(measured(await findingOf(diameters, 'routes.separation'))).toBeCloseTo(0.045, 12);
    // Together they would be within each other: nothing is left.
    expect(measured(await separation({ apart: '20 mm', gas: ', bore: 60 mm' }))).toBe(0);
  });

  test('the remedy is enough', async () => {
    const finding = await separation({ apart: '22.4 mm' });
    expect(words(finding.reason)).toBe('Its gas comes within 22 mm of the cables of wires.');
    expect(words(finding.remedy)).toBe('Move one of them 8 mm further away.');
    expect((await separation({ apart: '30.4 mm' })).verdict).toBe('pass');
  });

  test('they cross', async () => {
    const crossing = `, up: ${at('2 m', '0 m')}, down: ${at('2 m', '0.12 m', '0.01 m')}`;
    const drawn = {
      points: crossing,
      chases: ', riser: {between: [up, down], carries: [cable]}',
      runs: ', pump: {carries: cable, from: up, to: down}',
    };
    const finding = await separation(drawn);
    expect(finding.verdict).toBe('warn');
    expect(words(finding.reason)).toContain('of the cables of riser');
    expect(measured(finding)).toBeLessThan(0.01);
  });

  test('a chase that nothing takes counts for nothing', async () => {
    const finding = await separation({
      points: `, e: ${at('3 m', '0.11 m')}, f: ${at('1 m', '0.11 m')}`,
      chases: ', spare: {between: [e, f], carries: [cable]}',
    });
    expect(finding.verdict).toBe('pass');
  });

  test('one finding for a piece of gas pipe, however many cables are near', async () => {
    const drawn = {
      apart: '20 mm',
      points: `, e: ${at('3 m', '0.11 m')}, f: ${at('1 m', '0.11 m')}`,
      chases: ', second: {between: [e, f], carries: [cable]}',
      runs: ', pump: {carries: cable, from: e, to: f}',
    };
    const finding = await separation(drawn);
    expect(words(finding.reason)).toBe(
      'Its gas comes within 10 mm of the cables of second. So does 1 more piece of cable.',
    );
  });
});

describe('at the same point', () => {
  const meeting = (end: string) => ({
    chases: `, branch: {between: [a, ${end}], carries: [cable]}`,
    runs: `, pump: {carries: cable, from: a, to: ${end}}`,
  });

  test('the same two points: nothing keeps them apart', async () => {
    const finding = await separation(meeting('b'));
    expect(finding).toMatchObject({ verdict: 'warn', subject: 'pipe' });
    expect(words(finding.reason)).toContain('run between the same two points');
    expect(words(finding.remedy)).toBe(
      'Draw the gas pipe between points of its own, at least 30 mm clear of branch.',
    );
  });

  // At right angles they part at once, and the next nearest is the cable a metre above.
  test('at right angles they only meet', async () => {
    const finding = await separation(meeting('c'));
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(1, 12);
  });

  test.each([
    { aboveFloor: '0.12 m', verdict: 'warn' },
    { aboveFloor: '0.14 m', verdict: 'pass' },
  ])('side by side from there on, $aboveFloor: $verdict', async ({ aboveFloor, verdict }) => {
    const drawn = meeting('near');
    expect((await separation({ ...drawn, points: `, near: ${at('2 m', aboveFloor)}` })).verdict).toBe(
      verdict,
    );
  });

  test('a piece too short to tell', async () => {
    expect(
      (await separation({ ...meeting('near'), points: `, near: ${at('1.02 m', '0.1 m')}` })).verdict,
    ).toBe('pass');
  });

  test('where all they do is meet, nothing is measured', async () => {
    const finding = await findingOf(
      text({ apart: '1 m' })
        .replace('between: [c, d]', 'between: [a, c]')
        .replace('from: c, to: d', 'from: a, to: c'),
      'routes.separation',
    );
    expect(finding.verdict).toBe('pass');
  });
});

describe('spurs', () => {
  // The fridge's middle is at 3.1 m, 0.1 m from the right and 0.1 m above the floor.
  const cable = `, high: ${at('3.1 m', '1 m', '1.9 m')}, higher: ${at('2 m', '1 m', '1.9 m')}`;
  const drawn = (fromFront: string) => ({
    points: `${cable}, low: ${at(fromFront, '0.6 m', '1.9 m')}, lower: ${at(fromFront, '0.6 m', '0.5 m')}`,
    chases:
      ', rise: {between: [high, higher], carries: [cable]}, cross: {between: [low, lower], carries: [gas]}',
    runs: ', cool: {carries: cable, from: higher, to: fridge, to_point: high}, gas two: {carries: gas, from: low, to: lower}',
  });

  test('count where they are straight', async () => {
    const finding = await separation(drawn('3.11 m'), 'cross');
    expect(finding.verdict).toBe('warn');
    expect(words(finding.reason)).toContain('the spur of cool to fridge');
  });

  test('and not where they turn corners', async () => {
    const turned = drawn('2.99 m');
    expect(
      (await all({ ...turned, points: turned.points.replace('3.1 m', '2.9 m') })).map(
        ({ verdict }) => verdict,
      ),
    ).toEqual(['pass']);
  });

  test('to one thing are its maker’s business', async () => {
    const own = {
      points: `, high: ${at('3.1 m', '1 m', '1.9 m')}, higher: ${at('2 m', '1 m', '1.9 m')}, beside: ${at('3.1 m', '1.1 m', '1.9 m')}, back: ${at('3.1 m', '1.9 m', '1.9 m')}`,
      chases:
        ', rise: {between: [high, higher], carries: [cable]}, gas rise: {between: [beside, back], carries: [gas]}',
      runs: ', cool: {carries: cable, from: higher, to: fridge, to_point: high}, gas two: {carries: gas, from: back, to: fridge, to_point: beside}',
    };
    const finding = await all(own);
    expect(finding.map(({ subject }) => subject)).toEqual(['the spur of gas two to fridge']);
    expect(words(finding[0]?.reason)).toBe('Its gas comes within 0 mm of the cables of rise.');
  });
});

describe('one chase for both', () => {
  const together = (runs: string) => ({
    gas: '',
    chases: ', both: {between: [a, c], carries: [gas, cable]}',
    runs,
  });
  test('that both take fails, once', async () => {
    const finding = await separation(
      together(', gas two: {carries: gas, from: a, to: c}, pump: {carries: cable, from: c, to: a}'),
    );
    expect(finding).toMatchObject({ verdict: 'fail', subject: 'both', path: ['routes', 'chases', 'both'] });
    expect(words(finding.reason)).toBe('Gas (gas two) and cables (pump) run in one chase.');
    expect(words(finding.remedy)).toContain('at least 30 mm clear');
    expect(finding.cautions).toContain(installationCaution);
    expect(finding.sources.length).toBeGreaterThan(0);
  });

  test('that may hold both warns', async () => {
    const finding = await separation(together(''), 'both');
    expect(finding).toMatchObject({ verdict: 'warn', path: ['routes', 'chases', 'both', 'carries'] });
  });
});

test('a limit of the plan, with a reason', async () => {
  const rules = 'rules: {routes.separation: {limit: 150 mm, reason: "the gas fitter asks for it"}}';
  expect((await separation({ apart: '149 mm', rules })).verdict).toBe('warn');
  expect((await separation({ apart: '150 mm', rules })).verdict).toBe('pass');
});

describe('one of the two is not there', () => {
  const withoutGas = (things = '') =>
    text({ things }).replace('burner: {carries: gas, from: a, to: b}, ', '');
  test('no gas at all: nothing to keep apart', async () => {
    expect(await findingOf(withoutGas(), 'routes.separation')).toMatchObject({
      verdict: 'pass',
      subject: 'gas',
    });
  });
  test('gas aboard, and no pipe of it', async () => {
    const bottle = 'tanks: {bottle: {contents: propane, holds: 6 kg}}';
    expect(await findingOf(withoutGas(bottle), 'routes.separation')).toMatchObject({
      verdict: 'not checked',
      missing: ['routes.runs.NAME.carries'],
    });
  });
  test('no cables', async () => {
    const pipes = text({}).replace(', light: {carries: cable, from: c, to: d}', '');
    expect(await findingOf(pipes, 'routes.separation')).toMatchObject({
      verdict: 'not checked',
      missing: ['routes.runs.NAME.carries'],
    });
  });
  test('no way is known of them', async () => {
    const lost = text({}).replace(
      'wires: {between: [c, d], carries: [cable]',
      'wires: {between: [c, d], carries: [water]',
    );
    expect(await findingOf(lost, 'routes.separation')).toMatchObject({
      verdict: 'not checked',
      missing: ['routes.chases'],
      path: ['routes', 'runs', 'light'],
    });
  });
  test('no routes', async () => {
    expect(await findingOf(plan(), 'routes.separation')).toMatchObject({
      verdict: 'not checked',
      missing: ['routes'],
    });
  });
});
