import { expect, test } from 'vitest';
import { gasCaution } from '../../../src/rules/cautions.ts';
import { cautionedVerdicts } from '../../support/cautioned.ts';
import { findingOf, reportOf } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

const rule = 'gas.pipes-and-hoses';
const piped = (keys: string, more = '') =>
  gasPlan({ gas: `  pipes: {to hob: {from: regulator, to: hob, ${keys}}}${more}` });
const sound = 'material: copper, size: 10 mm, bore: 8 mm, hidden_joints: 0';

test('metal without hidden joints passes', async () => {
  const found = (await reportOf(piped(sound))).findings.filter((each) => each.rule === rule);
  expect(found.map(({ verdict }) => verdict)).toEqual(['pass', 'pass']);
});

test.each([
  ['uk', 'fail'],
  ['us', 'warn'],
])(
  'a hose in place of a pipe breaks a standard in Europe, and a guide elsewhere: %s',
  async (codes, verdict) => {
    const text = gasPlan({
      gas: '  pipes: {to hob: {from: regulator, to: hob, material: hose, hidden_joints: 0}}',
      codes,
    });
    const found = (await reportOf(text)).findings.filter(
      (each) => each.rule === rule && each.verdict !== 'pass',
    );
    expect(found).toMatchObject([{ verdict, path: ['gas', 'pipes', 'to hob', 'material'] }]);
  },
);

test('a joint out of sight warns', async () => {
  const found = (
    await reportOf(piped('material: copper, size: 10 mm, wall: 1 mm, hidden_joints: 1'))
  ).findings.filter((each) => each.rule === rule && each.verdict !== 'pass');
  expect(found).toMatchObject([{ verdict: 'warn', path: ['gas', 'pipes', 'to hob', 'hidden_joints'] }]);
});

test.each([
  ['1 mm', 'pass'],
  ['0.8 mm', 'pass'],
  ['0.7 mm', 'fail'],
])('a wall of %s at 8 mm: %s', async (wall, verdict) => {
  const text = piped(`material: copper, hidden_joints: 0, size: 8 mm, wall: ${wall}`);
  expect(await findingOf(text, rule, 'to hob: wall')).toMatchObject({ verdict });
});

test.each([
  ['350 mm', 'pass'],
  ['400 mm', 'pass'],
  ['401 mm', 'fail'],
])('a hose of %s: %s', async (length, verdict) => {
  const text = piped(sound, `\n  hoses: {pigtail: {length: ${length}}}`);
  expect(await findingOf(text, rule, 'pigtail')).toMatchObject({ verdict });
});

test('of a wall or a length that the plan does not say it says so', async () => {
  const text = piped('material: copper, hidden_joints: 0, bore: 6 mm', '\n  hoses: {pigtail: {}}');
  const found = (await reportOf(text)).findings.filter(
    (each) => each.rule === rule && each.verdict === 'not checked',
  );
  expect(found.flatMap(({ missing = [] }) => missing)).toEqual([
    'gas.pipes.to hob.size',
    'gas.pipes.to hob.wall',
    'gas.hoses.pigtail.length',
  ]);
});

test('what the plan does not say is not checked', async () => {
  expect(await findingOf(piped('length: 1 m'), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.pipes.to hob.material', 'gas.pipes.to hob.hidden_joints'],
  });
  expect(await findingOf(gasPlan({}), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['gas.pipes'],
  });
});

test('every finding carries its cautions, whatever the verdict', async () => {
  const texts = [piped(sound), piped('material: hose, hidden_joints: 1'), piped('length: 1 m')];
  expect(await cautionedVerdicts(rule, [gasCaution], texts)).toEqual(['fail', 'not checked', 'pass', 'warn']);
});
