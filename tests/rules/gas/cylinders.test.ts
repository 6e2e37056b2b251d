import { expect, test } from 'vitest';
import { gasCaution } from '../../../src/rules/cautions.ts';
import { cautionedVerdicts } from '../../support/cautioned.ts';
import { only, reportOf, words } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

const rule = 'gas.cylinders';
const held = (count: number) => `contents: propane, holds: 6 kg, fixings: {count: ${count}, each: 100 kg}`;
const verdictsOf = async (text: string) =>
  (await reportOf(text)).findings.filter((each) => each.rule === rule).map(({ verdict }) => verdict);
const gas = '  upright: true\n  locker: {thing: locker}';

test('upright, held twice, one of them, in the locker: passes', async () => {
  expect(await verdictsOf(gasPlan({ gas, cylinder: held(2) }))).toEqual(['pass', 'pass']);
});

test('lying down fails', async () => {
  const text = gasPlan({ gas: '  upright: false', cylinder: held(2) });
  expect(await verdictsOf(text)).toContain('fail');
});

test('held once only is too little', async () => {
  const found = only(await reportOf(gasPlan({ gas, cylinder: held(1) })), rule, 'cylinder: fixings');
  expect(found).toMatchObject({ verdict: 'fail', limit: { measure: { value: 2 } } });
});

test('three cylinders are one too many', async () => {
  const another = (name: string) =>
    `  ${name}: {contents: propane, holds: 6 kg, in: locker, fixings: {count: 2, each: 100 kg}}`;
  const two = gasPlan({ gas, cylinder: held(2), tanks: another('second') });
  expect((await verdictsOf(two)).includes('fail')).toBe(false);
  const three = gasPlan({ gas, cylinder: held(2), tanks: `${another('second')}\n${another('third')}` });
  expect(only(await reportOf(three), rule, 'number of cylinders')).toMatchObject({ verdict: 'fail' });
});

test.each([
  ['16 kg', 'uk', false],
  ['16.1 kg', 'uk', true],
  ['20 kg', 'us', false],
])('a cylinder of %s in %s: too heavy is %s', async (holds, codes, isTooHeavy) => {
  const cylinder = `contents: propane, holds: ${holds}, fixings: {count: 2, each: 100 kg}`;
  const found = (await reportOf(gasPlan({ gas, cylinder, codes }))).findings.filter(
    (each) => each.rule === rule && each.subject === 'cylinder: contents' && each.verdict === 'fail',
  );
  expect(found.length > 0).toBe(isTooHeavy);
});

test('a cylinder in the room and not in the locker fails', async () => {
  const cylinder = '';
  const tanks =
    '  loose: {contents: propane, holds: 6 kg, size: {length: 300 mm, width: 300 mm, height: 500 mm}, at: {from_front: 2 m, from_left: 0 mm, above_floor: 0 mm}, fixings: {count: 2, each: 100 kg}}';
  expect(only(await reportOf(gasPlan({ gas, cylinder, tanks })), rule, 'loose: place')).toMatchObject({
    verdict: 'fail',
  });
});

test('what is not said is not checked', async () => {
  const found = (await reportOf(gasPlan({ gas: '  locker: {thing: locker}' }))).findings.filter(
    (each) => each.rule === rule && each.verdict === 'not checked',
  );
  expect(found.flatMap(({ missing = [] }) => missing).sort()).toEqual([
    'gas.upright',
    'tanks.cylinder.fixings',
  ]);
});

test('all that is not said is one finding', async () => {
  const text = gasPlan({
    gas: '  locker: {sealed: true}',
    cylinder: '',
    tanks: '  loose: {contents: propane, holds: 6 kg}',
  });
  const found = (await reportOf(text)).findings.filter(
    (each) => each.rule === rule && each.verdict === 'not checked',
  );
  expect(found).toMatchObject([
    {
      subject: 'loose and the locker',
      missing: ['gas.upright', 'tanks.loose.fixings', 'gas.locker.thing'],
    },
  ]);
  expect(words(found[0]?.reason)).toBe(
    'The plan does not say whether loose stands upright, what holds loose and which thing the locker is.',
  );
});

test('a fixed tank is no cylinder', async () => {
  const text = gasPlan({
    cylinder: '',
    tanks: '  tank: {contents: propane, holds: 30 L}',
    gas: '  stored_in: fixed tank',
  });
  expect(await verdictsOf(text)).toEqual(['pass']);
});

test.each([
  [
    'a locker that is no thing of the plan',
    '  upright: true\n  locker: {sealed: true}',
    held(2),
    '',
    'gas.locker.thing',
  ],
  [
    'a cylinder without a place',
    gas,
    '',
    '  loose: {contents: propane, holds: 6 kg, fixings: {count: 2, each: 100 kg}}',
    'tanks.loose.in',
  ],
])('%s does not pass unasked', async (_, keys, cylinder, tanks, missing) => {
  const found = (await reportOf(gasPlan({ gas: keys, cylinder, tanks }))).findings.filter(
    (each) => each.rule === rule && each.verdict === 'not checked',
  );
  expect(found.flatMap((each) => each.missing ?? [])).toContain(missing);
});

test('every finding carries its cautions, whatever the verdict', async () => {
  const texts = [gasPlan({ gas, cylinder: held(2) }), gasPlan({ gas, cylinder: held(1) }), gasPlan({})];
  expect(await cautionedVerdicts(rule, [gasCaution], texts)).toEqual(['fail', 'not checked', 'pass']);
});
