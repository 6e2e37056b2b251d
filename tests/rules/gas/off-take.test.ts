import { expect, test } from 'vitest';
import { cylinderOffTake } from '../../../src/catalogue/gas/off-take.ts';
import { combustionCaution, gasCaution } from '../../../src/rules/cautions.ts';
import { cautionedVerdicts } from '../../support/cautioned.ts';
import { findingOf, only, reportOf, words } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

const rule = 'gas.off-take';
const at = (low: string, changes: Parameters<typeof gasPlan>[0] = {}) =>
  gasPlan({ ...changes, living: `winter_low: ${low}` });

test('propane gives a hob what it takes for some minutes, in frost too', async () => {
  const found = await findingOf(at('-8 degC'), rule);
  expect(found.verdict).toBe('pass');
  const { kgPerS } = cylinderOffTake({
    gas: 'propane',
    holdsKg: 6,
    duty: 'bursts of 20 minutes',
    ambientC: -8,
  });
  expect(found.limit?.measure.value).toBeCloseTo(kgPerS, 12);
  expect(found.measured?.value).toBeCloseTo(3600 / 46.1e6, 12);
});

test('butane gives nothing below its boiling point, and too little up to where it feeds the regulator', async () => {
  const cylinder = 'contents: butane, holds: 6 kg';
  const cold = await findingOf(at('-8 degC', { cylinder }), rule);
  expect(cold).toMatchObject({ verdict: 'fail', subject: 'cylinder' });
  // It boils at -0.5 °C and starves below 6.5 °C.
  expect((await findingOf(at('-0.6 degC', { cylinder }), rule)).verdict).toBe('fail');
  expect((await findingOf(at('3 degC', { cylinder }), rule)).verdict).toBe('fail');
  // A little above that hardly any flows.
  expect((await findingOf(at('6.7 degC', { cylinder }), rule)).verdict).toBe('fail');
  expect((await findingOf(at('15 degC', { cylinder }), rule)).verdict).toBe('pass');
});

test('more than a cylinder gives at once fails, exactly', async () => {
  const { kgPerS } = cylinderOffTake({
    gas: 'propane',
    holdsKg: 6,
    duty: 'bursts of 20 minutes',
    ambientC: -8,
  });
  const taking = (gramsPerHour: number) =>
    findingOf(at('-8 degC', { hob: `use: cooking, input: ${gramsPerHour} g/h` }), rule);
  expect((await taking(kgPerS * 3.6e6)).verdict).toBe('pass');
  const over = await taking(kgPerS * 3.6e6 * 1.01);
  expect(over.verdict).toBe('fail');
  expect(over.remedy).toBeDefined();
});

test('a heater that burns for hours warns long before', async () => {
  const long = cylinderOffTake({ gas: 'propane', holdsKg: 6, duty: 'uninterrupted', ambientC: -8 });
  const heater = (gramsPerHour: number) =>
    findingOf(
      at('-8 degC', {
        hob: 'use: cooking, input: 1 g/h',
        appliances: `    heater: {use: room heating, input: ${gramsPerHour} g/h}`,
      }),
      rule,
    );
  expect((await heater(long.kgPerS * 3.6e6 * 0.99)).verdict).toBe('pass');
  expect((await heater(long.kgPerS * 3.6e6 * 1.05)).verdict).toBe('warn');
});

test('two cylinders at once give twice as much', async () => {
  const second = '  second: {contents: propane, holds: 6 kg, in: locker}';
  const one = await findingOf(at('-8 degC', { tanks: second }), rule);
  const two = await findingOf(at('-8 degC', { tanks: second, gas: '  in_use: 2' }), rule);
  expect(two.limit?.measure.value).toBeCloseTo(2 * (one.limit?.measure.value ?? 0), 12);
});

const propane = 'contents: propane, holds: 6 kg';
const second = (contents: string) => `  second: {contents: ${contents}, in: locker}`;

test('a spare does not count for what flows, and says what it gives in its turn', async () => {
  const butane = at('-8 degC', {
    cylinder: propane,
    tanks: second('butane, holds: 6 kg'),
    gas: '  in_use: 1',
  });
  const report = await reportOf(butane);
  const flowing = only(report, rule, 'cylinder');
  expect(flowing).toMatchObject({ verdict: 'pass', subject: 'cylinder' });
  expect(words(flowing.reason)).toContain('second is a spare and does not count');
  const spare = only(report, rule, 'second: spare');
  expect(spare).toMatchObject({ verdict: 'warn', path: ['tanks', 'second', 'contents'] });
  expect(words(spare.reason)).toContain('gives no gas at all');
  // Both at once: then the butane counts.
  expect(only(await reportOf(butane.replace('in_use: 1', 'in_use: 2')), rule, 'second')).toMatchObject({
    verdict: 'fail',
    subject: 'second',
  });
});

test('a spare that is too small says so, one that serves is silent', async () => {
  const spare = async (holds: string) =>
    (await reportOf(at('-8 degC', { tanks: second(`propane, holds: ${holds}`) }))).findings.filter(
      (each) => each.rule === rule,
    );
  expect((await spare('6 kg')).map(({ verdict }) => verdict)).toEqual(['pass']);
  // 1 kg/h · 2/5 · 0.55 are 220 g/h, and the hob takes 281 g/h.
  const small = await spare('2 kg');
  expect(small.map(({ verdict }) => verdict).sort()).toEqual(['pass', 'warn']);
  expect(small.map(({ reason }) => words(reason)).join(' ')).toContain('gives 220 g/h');
});

test('where the butane feeds the regulator, the propane that waits is named as the way out', async () => {
  const text = at('-8 degC', {
    cylinder: 'contents: butane, holds: 6 kg',
    tanks: second('propane, holds: 6 kg'),
  });
  const found = await findingOf(text, rule);
  expect(found).toMatchObject({ verdict: 'fail', subject: 'cylinder' });
  expect(words(found.remedy)).toContain('if second is to feed the regulator, name it first');
});

test('a fixed tank of butane is not checked, and nothing that is given is asked for', async () => {
  const text = at('15 degC', {
    cylinder: '',
    tanks:
      '  tank: {contents: butane, holds: 30 L, size: {length: 800 mm, width: 300 mm, height: 300 mm}, at: {from_front: 1500 mm, from_left: 0 mm, above_floor: -320 mm}}',
    gas: '  stored_in: fixed tank',
  });
  const found = await findingOf(text, rule);
  expect(found).toMatchObject({ verdict: 'not checked', subject: 'tank' });
  expect(found.missing ?? []).toEqual([]);
  expect(words(found.reason)).toContain('No table');
});

test('what is missing is asked for', async () => {
  expect((await findingOf(gasPlan({}), rule)).missing).toEqual(['living.winter_low']);
  expect((await findingOf(at('-8 degC', { hob: 'use: cooking' }), rule)).missing).toEqual([
    'gas.appliances.hob.input',
  ]);
});

test('every finding carries its cautions, whatever the verdict', async () => {
  const texts = [
    at('-8 degC'),
    at('-8 degC', { hob: 'use: cooking, input: 3 kg/h' }),
    at('-8 degC', {
      hob: 'use: cooking, input: 1 g/h',
      appliances: '    heater: {use: room heating, input: 300 g/h}',
    }),
    at('-8 degC', { cylinder: 'contents: butane, holds: 6 kg' }),
    gasPlan({}),
  ];
  expect(await cautionedVerdicts(rule, [gasCaution, combustionCaution], texts)).toEqual([
    'fail',
    'not checked',
    'pass',
    'warn',
  ]);
});
