import { expect, test } from 'vitest';
import { findingOf, reportOf } from '../../support/check.ts';
import { waterPlan } from '../../support/water-plan.ts';

const rule = 'water.frost-tanks';
const cold = (waste: string, spell: string, more = '', low = '-10 degC') =>
  waterPlan({
    waste,
    water: `cold: 10 degC${more && `, ${more}`}`,
    living: `winter_low: ${low}, cold_spell: ${spell}`,
  });

test('a bare tank below the floor freezes after so many hours as its walls let through', async () => {
  const found = await findingOf(cold('', '10 h'), rule, 'waste tank');
  // 25 kg, 105 kJ/K; walls 2·(0.25 + 0.1 + 0.1) = 0.9 m² over 0.04: 22.5 W/K; 4667 s · ln 2 = 3235 s.
  expect(found.verdict).toBe('fail');
  expect(found.measured?.value).toBeCloseTo(3234.7, 0);
});

test('exactly as long as the cold spell passes', async () => {
  const seconds = (await findingOf(cold('', '10 h'), rule, 'waste tank')).measured?.value ?? 0;
  const found = (await reportOf(cold('', `${seconds} s`))).findings.filter((each) => each.rule === rule);
  expect(found.map(({ verdict }) => verdict)).toEqual(['pass']);
});

test('insulation slows it, and the remedy is a thickness that is enough', async () => {
  const found = await findingOf(cold('', '4 h'), rule, 'waste tank');
  const thickness = found.remedy?.find((part) => typeof part !== 'string');
  if (!thickness || typeof thickness === 'string') throw new Error('no thickness');
  const wrapped = `insulation: {material: elastomeric foam, thickness: ${thickness.value * 1000} mm}`;
  const after = (await reportOf(cold(wrapped, '4 h'))).findings.filter((each) => each.rule === rule);
  expect(after.map(({ verdict }) => verdict)).toEqual(['pass']);
});

test.each([
  ['heated', 'heated: true', '', '-10 degC'],
  ['without frost', '', '', '1 degC'],
])('a tank below the floor %s passes', async (_, waste, more, low) => {
  const found = (await reportOf(cold(waste, '10 h', more, low))).findings.filter(
    (each) => each.rule === rule,
  );
  expect(found.map(({ verdict }) => verdict)).toEqual(['pass']);
});

test('one that can be emptied warns', async () => {
  const text = cold('', '10 h', 'valves: {dump: {kind: drain, thing: waste tank}}');
  expect((await findingOf(text, rule, 'waste tank')).verdict).toBe('warn');
});

test('a plan without a winter is not checked', async () => {
  expect(await findingOf(waterPlan({}), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['living.winter_low'],
  });
});
