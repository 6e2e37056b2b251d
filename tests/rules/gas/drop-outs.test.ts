import { expect, test } from 'vitest';
import { gasCaution } from '../../../src/rules/cautions.ts';
import { cautionedVerdicts } from '../../support/cautioned.ts';
import { findingOf, only, reportOf, words } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

const rule = 'gas.drop-outs';
const drops = (text: string) => `  drop_outs: {${text}}`;

test.each([
  ['20 cm2', 'pass'],
  ['13 cm2', 'pass'],
  ['12 cm2', 'warn'],
])('a drop-out of %s under the cupboard with the hob: %s', async (area, verdict) => {
  expect(await findingOf(gasPlan({ gas: drops(`low: {in: cupboard, area: ${area}}`) }), rule)).toMatchObject({
    verdict,
    subject: 'low',
  });
});

test('a space with fittings and without a drop-out fails', async () => {
  const text = gasPlan({
    fixtures:
      '  boiler: {mass: 9 kg, size: {length: 300 mm, width: 300 mm, height: 300 mm}, at: {from_front: 3 m, from_left: 0 mm, above_floor: 0 mm}}',
    appliances: '    boiler: {thing: boiler, use: water heating}',
    gas: drops('low: {in: cupboard, area: 20 cm2}'),
  });
  expect(only(await reportOf(text), rule, 'the living space')).toMatchObject({ verdict: 'fail' });
  const both = gasPlan({
    fixtures:
      '  boiler: {mass: 9 kg, size: {length: 300 mm, width: 300 mm, height: 300 mm}, at: {from_front: 3 m, from_left: 0 mm, above_floor: 0 mm}}',
    appliances: '    boiler: {thing: boiler, use: water heating}',
    gas: drops('low: {in: cupboard, area: 20 cm2}, floor: {area: 20 cm2}'),
  });
  expect(await findingOf(both, rule)).toMatchObject({ verdict: 'pass' });
});

test('a drop-out elsewhere does not drain the cupboard', async () => {
  const found = only(await reportOf(gasPlan({ gas: drops('low: {area: 20 cm2}') })), rule, 'cupboard');
  expect(found).toMatchObject({ verdict: 'fail', subject: 'cupboard' });
});

test.each([
  ['20 mm', 'pass'],
  ['21 mm', 'fail'],
  ['700 mm', 'fail'],
])('a drop-out that begins %s above the bottom of its cupboard: %s', async (height, verdict) => {
  const at = `{from_front: 500 mm, from_right: 200 mm, above_floor: ${height}}`;
  const text = gasPlan({ gas: drops(`low: {in: cupboard, area: 20 cm2, at: ${at}}`) });
  const found = (await reportOf(text)).findings.filter((each) => each.rule === rule);
  expect(found.map((each) => each.verdict)).toContain(verdict);
  expect(found.some((each) => each.verdict === 'fail')).toBe(verdict === 'fail');
});

test('the manifold counts too', async () => {
  const text = gasPlan({
    fixtures:
      '  valves: {mass: 1 kg, size: {length: 100 mm, width: 100 mm, height: 100 mm}, at: {from_front: 3 m, from_left: 0 mm, above_floor: 0 mm}}',
    gas: `  manifold: {thing: valves}\n${drops('low: {in: cupboard, area: 20 cm2}')}`,
  });
  expect(only(await reportOf(text), rule, 'the living space').verdict).toBe('fail');
});

test('where the plan says nothing of drop-outs, it is told which spaces hold fittings', async () => {
  const found = await findingOf(gasPlan({}), rule);
  expect(found).toMatchObject({ verdict: 'not checked', subject: 'cupboard', missing: ['gas.drop_outs'] });
  expect(words(found.reason)).toContain('from a space without one gas cannot leave');
  expect(words(found.reason)).toContain('Gas fittings are in cupboard (hob)');
});

test('where the plan says that there are none, each space fails', async () => {
  expect(await findingOf(gasPlan({ gas: '  drop_outs: {}' }), rule)).toMatchObject({
    verdict: 'fail',
    subject: 'cupboard',
  });
});

test('what is missing is asked for', async () => {
  expect(await findingOf(gasPlan({}), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.drop_outs'],
  });
  expect(await findingOf(gasPlan({ gas: drops('low: {in: cupboard}') }), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.drop_outs.low.area'],
  });
});

test('every finding carries its cautions, whatever the verdict', async () => {
  const texts = [
    gasPlan({ gas: drops('low: {in: cupboard, area: 20 cm2}') }),
    gasPlan({ gas: drops('low: {in: cupboard, area: 12 cm2}') }),
    gasPlan({ gas: drops('low: {area: 20 cm2}') }),
    gasPlan({}),
  ];
  expect(await cautionedVerdicts(rule, [gasCaution], texts)).toEqual(['fail', 'not checked', 'pass', 'warn']);
});
