import { describe, expect, test } from 'vitest';
import { installationCaution } from '../../../src/rules/cautions.ts';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const things = `fixtures:
  tank: {mass: 5 kg, size: {length: 20 cm, width: 20 cm, height: 20 cm}, at: {from_front: 90 cm, from_left: 0 m}}
  heater: {mass: 5 kg, size: {length: 20 cm, width: 20 cm, height: 20 cm}, at: {from_front: 290 cm, from_left: 0 m}}
  lamp: {mass: 1 kg}`;
const at = (fromFront: string) => `{at: {from_front: ${fromFront}, from_left: 10 cm, above_floor: 10 cm}}`;
const points = `{first: ${at('1 m')}, door: ${at('1.8 m')}, step: ${at('2.2 m')}, last: ${at('3 m')}}`;

const routes = (chases: string, runs: string): string =>
  plan(`${things}\nroutes: {points: ${points}, chases: ${chases}, runs: ${runs}}`);
const whole =
  '{front: {between: [first, door], carries: [water]}, middle: {between: [door, step], carries: [water]}, rear: {between: [step, last], carries: [water]}}';
const feed = '{feed: {carries: water, from: tank, to: heater}}';
const found = (chases: string, runs = feed, subject = '') =>
  findingOf(routes(chases, runs), 'routes.path', subject);

// 2 m without spurs: both things are at their points. 10 % slack.
test('pass: all runs in one finding, with their length', async () => {
  const finding = await found(whole, `${feed.slice(0, -1)}, back: {carries: water, from: last, to: step}}`);
  expect(finding).toMatchObject({ verdict: 'pass', subject: 'routes', path: ['routes', 'runs'] });
  expect(measured(finding)).toBeCloseTo(2.2 + 0.88, 12);
  expect(words(finding.reason)).toBe(
    '2 runs have their ways through the chases, 3080 mm in all with spurs and slack.',
  );
  expect(finding.cautions).toContain(installationCaution);
});

describe('no way fails at the run', () => {
  test('which chase would do, and what it is', async () => {
    const sill = whole.replace(
      'carries: [water]}, rear',
      'carries: [cable], runs: under floor, through: [floor]}, rear',
    );
    const finding = await found(sill);
    expect(finding).toMatchObject({
      verdict: 'fail',
      subject: 'feed',
      path: ['routes', 'runs', 'feed'],
    });
    expect(words(finding.reason)).toBe(
      'There is no chase for water from tank to heater except by way of middle (carries cable, under floor, through a floor). From tank it comes to first and door, from heater to step and last.',
    );
    expect(words(finding.remedy)).toBe(
      'If it may run there, add `water` to what middle (400 mm) carries; else add a chase for water from door to step, 400 mm.',
    );
  });

  test('doing what it says is enough', async () => {
    expect((await found(whole.replace(/middle: .*?\}, /, ''))).verdict).toBe('fail');
    expect((await found(whole)).verdict).toBe('pass');
  });

  test('where nothing joins the parts, how far they are apart', async () => {
    const finding = await found(whole.replace(/middle: .*?\}, /, ''));
    expect(words(finding.reason)).toContain('from tank to heater. From tank it comes to first and door');
    expect(words(finding.remedy)).toBe('Add a chase for water from door to step, 400 mm.');
  });

  test('gas is not sent through a chase that holds cables', async () => {
    const gas = whole.replaceAll('water', 'gas').replace('carries: [gas]}, rear', 'carries: [cable]}, rear');
    const finding = await found(gas, feed.replace('water', 'gas'));
    expect(words(finding.remedy)).toBe(
      'Gas and cables share no chase: add a chase for gas from door to step, 400 mm, or one beside middle and away from it.',
    );
  });

  test('a kind that no chase carries', async () => {
    const finding = await found(whole, feed.replace('water', 'duct'));
    expect(finding.verdict).toBe('fail');
    expect(words(finding.reason)).toContain('no chase of the plan carries ducts');
    expect(words(finding.remedy)).toBe(
      'Add chases for ducts from tank to heater, 2000 mm along, across and up or down, with points where they turn.',
    );
  });

  test('also where its length is typed', async () => {
    const typed = feed.replace('to: heater', 'to: heater, length: 3 m').replace('water', 'gas');
    expect((await found(whole, typed)).verdict).toBe('fail');
  });

  test('one finding a run, and one for those that have theirs', async () => {
    const runs = `${feed.slice(0, -1)}, gas: {carries: gas, from: tank, to: heater}, air: {carries: duct, from: tank, to: heater}}`;
    const { findings } = await reportOf(routes(whole, runs));
    expect(
      findings
        .filter(({ rule }) => rule === 'routes.path')
        .map(({ verdict, subject }) => `${verdict} ${subject}`),
    ).toEqual(['fail air', 'fail gas', 'pass routes']);
    expect(words((await found(whole, runs, 'routes')).reason)).toMatch(/^1 of 3 runs has its way/);
  });
});

test('an end without a place is not checked, with the keys that it takes', async () => {
  const runs =
    '{light: {carries: water, from: tank, to: lamp}, other: {carries: water, from: lamp, to: tank}}';
  const finding = await found(whole, runs);
  expect(finding).toMatchObject({
    verdict: 'not checked',
    subject: 'light and other',
    path: ['routes', 'runs', 'light'],
    missing: ['from_front', 'from_left', 'above_floor'].map((key) => `fixtures.lamp.at.${key}`),
  });
});

test('a length that is known in part is "at least"', async () => {
  const named = '{light: {carries: water, from: tank, to: lamp, to_point: last}}';
  const runs = `${named.slice(0, -1)}, ${feed.slice(1)}`;
  expect(words((await found(whole, runs)).reason)).toContain('at least 2200 mm');
});

test.each([
  { text: plan(things), missing: ['routes'] },
  { text: plan(`${things}\nroutes: {}`), missing: ['routes.points', 'routes.chases', 'routes.runs'] },
  { text: plan(`${things}\nroutes: {runs: ${feed}}`), missing: ['routes.points', 'routes.chases'] },
  {
    text: plan(`${things}\nroutes: {points: ${points}, chases: ${whole}, runs: ${feed}}`, {
      load_bay: undefined,
    }),
    missing: ['van.load_bay'],
  },
])('not checked without $missing', async ({ text, missing }) => {
  expect(await findingOf(text, 'routes.path')).toMatchObject({ verdict: 'not checked', missing });
});
