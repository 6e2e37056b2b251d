import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const at = (fromFront: string) => `{at: {from_front: ${fromFront}, from_left: 0 m, above_floor: 0.1 m}}`;
const text = (runs: string, bore = ', bore: 20 mm', more = '') =>
  plan(`routes:
  points: {a: ${at('1 m')}, b: ${at('3 m')}}
  chases: {left: {between: [a, b], carries: [cable, water, duct]${bore}}${more}}
  runs: {${runs}}`);
const cable = (name: string, diameter: string, count = 1) =>
  `${name}: {carries: cable, from: a, to: b, diameter: ${diameter}, count: ${count}}`;
const pipe = (name: string, diameter: string, count = 1) =>
  cable(name, diameter, count).replace('cable', 'water');
const fill = (runs: string, bore?: string) => findingOf(text(runs, bore), 'routes.fill');

describe('cables', () => {
  // One may fill 45 %, two 31 %, three and more 35 % of 400 mm².
  test.each([
    { count: 1, diameter: '13.4 mm', verdict: 'pass' },
    { count: 1, diameter: '13.5 mm', verdict: 'warn' },
    { count: 2, diameter: '7.8 mm', verdict: 'pass' },
    { count: 2, diameter: '7.9 mm', verdict: 'warn' },
    { count: 3, diameter: '6.8 mm', verdict: 'pass' },
    { count: 3, diameter: '6.9 mm', verdict: 'warn' },
  ])('$count of $diameter: $verdict', async ({ count, diameter, verdict }) => {
    const finding = await fill(cable('lights', diameter, count));
    expect(finding).toMatchObject({ verdict, subject: 'left', path: ['routes', 'chases', 'left', 'bore'] });
    expect(measured(finding)).toBeCloseTo((count * Number.parseFloat(diameter) ** 2) / 400, 12);
    expect(finding.sources.length).toBeGreaterThan(1);
  });

  // 5 · 4² + 15 · 2² = 140 of 400: 35 %.
  test('exactly at the limit is kept', async () => {
    const finding = await fill(`${cable('lights', '4 mm', 5)}, ${cable('pump', '2 mm', 15)}`);
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(0.35, 12);
    expect(words(finding.reason)).toBe('20 cables (lights and pump) fill 35 % of a bore of 20 mm.');
  });

  test('the remedy is enough', async () => {
    const finding = await fill(cable('lights', '10 mm', 3));
    expect(words(finding.remedy)).toMatch(/^Take a bore of 30 mm or more/);
    expect((await fill(cable('lights', '10 mm', 3), ', bore: 30 mm')).verdict).toBe('pass');
    expect((await fill(cable('lights', '10 mm', 3), ', bore: 29 mm')).verdict).toBe('warn');
  });

  test('more than there is room for cannot go in', async () => {
    const finding = await fill(cable('lights', '10 mm', 5));
    expect(finding.verdict).toBe('fail');
    expect(words(finding.reason)).toBe(
      '5 cables (lights) cannot go into a bore of 20 mm: they need at least 23 mm.',
    );
    expect(words(finding.remedy)).toMatch(/^Take a bore of 38 mm or more/);
    expect((await fill(cable('lights', '10 mm', 4))).verdict).toBe('warn');
    expect((await fill(cable('thick', '21 mm'))).verdict).toBe('fail');
  });
});

describe('pipes', () => {
  test.each([
    { runs: pipe('feed', '20 mm'), verdict: 'pass' },
    { runs: pipe('feed', '20.1 mm'), verdict: 'fail' },
    // Two stiff round pipes lie side by side.
    { runs: `${pipe('feed', '12 mm')}, ${pipe('drain', '8 mm')}`, verdict: 'pass' },
    { runs: `${pipe('feed', '12 mm')}, ${pipe('drain', '8.1 mm')}`, verdict: 'fail' },
    { runs: pipe('feed', '10 mm', 2), verdict: 'pass' },
    { runs: pipe('feed', '10.1 mm', 2), verdict: 'fail' },
    // Three of 9 mm side by side in pairs, and 243 of 400 mm².
    { runs: pipe('feed', '9 mm', 3), verdict: 'pass' },
  ])('$runs: $verdict', async ({ runs, verdict }) => {
    expect((await fill(runs)).verdict).toBe(verdict);
  });

  test('with cables, all that is there counts', async () => {
    const finding = await fill(`${pipe('feed', '12 mm')}, ${cable('pump', '6 mm')}`);
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(180 / 400, 12);
    expect(words(finding.reason)).toContain('2 cables and pipes (feed and pump)');
    expect((await fill(`${pipe('feed', '12 mm')}, ${cable('pump', '6.1 mm')}`)).verdict).toBe('warn');
  });
});

describe('sizes that are not given', () => {
  test('are listed in one finding, and the rest is checked', async () => {
    const bare = 'lamp: {carries: cable, from: a, to: b}, fan: {carries: cable, from: b, to: c}';
    const more = `, right: {between: [b, c], carries: [cable]}`;
    const plan = text(`${bare}, ${cable('pump', '5 mm')}`, undefined, more).replace(
      `b: ${at('3 m')}`,
      `b: ${at('3 m')}, c: ${at('4 m')}`,
    );
    const { findings } = await reportOf(plan);
    expect(findings.filter(({ rule }) => rule === 'routes.fill')).toMatchObject([
      {
        verdict: 'not checked',
        subject: 'left and right',
        missing: ['routes.chases.right.bore', 'routes.runs.lamp.diameter', 'routes.runs.fan.diameter'],
      },
    ]);
  });

  test.each([
    { diameter: '21 mm', verdicts: ['fail', 'not checked'] },
    { diameter: '15 mm', verdicts: ['warn', 'not checked'] },
    { diameter: '5 mm', verdicts: ['not checked'] },
  ])('what is known may be too much already: $diameter', async ({ diameter, verdicts }) => {
    const { findings } = await reportOf(
      text(`lamp: {carries: cable, from: a, to: b}, ${cable('pump', diameter)}`),
    );
    expect(findings.filter(({ rule }) => rule === 'routes.fill').map(({ verdict }) => verdict)).toEqual(
      verdicts,
    );
  });
});

test('a chase that nothing takes is not spoken of', async () => {
  const spare = ', spare: {between: [a, b], carries: [gas], bore: 1 mm}';
  expect(await findingOf(text(cable('lights', '4 mm'), undefined, spare), 'routes.fill')).toMatchObject({
    subject: 'left',
  });
});

test('not checked without routes, and where no run takes a chase', async () => {
  expect(await findingOf(plan(), 'routes.fill')).toMatchObject({
    verdict: 'not checked',
    missing: ['routes'],
  });
  const lost = text('lights: {carries: gas, from: a, to: b}');
  expect(await findingOf(lost, 'routes.fill')).toMatchObject({
    verdict: 'not checked',
    missing: ['routes.chases'],
  });
});
