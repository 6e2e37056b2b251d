import { expect, test } from 'vitest';
import { combustionCaution, gasCaution } from '../../../src/rules/cautions.ts';
import { cautionedVerdicts } from '../../support/cautioned.ts';
import { findingOf, only, reportOf } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

const rule = 'gas.exhausts';
const at = (fromFront: string) => `{from_front: ${fromFront}, from_right: 0 mm, above_floor: -100 mm}`;
const vented = `  locker: {thing: locker, vent: ${at('200 mm')}}`;

test.each([
  ['600 mm', 'pass'],
  ['500 mm', 'pass'],
  ['499 mm', 'fail'],
])('an exhaust of the engine at %s, with the vent at 200 mm: %s', async (fromFront, verdict) => {
  // 300 mm are asked for.
  const text = gasPlan({ gas: vented, van: { exhaust: at(fromFront) } });
  expect(await findingOf(text, rule)).toMatchObject({ verdict });
});

test('the exhaust of an appliance keeps away from windows, and one in the bulkhead does not count', async () => {
  const withExhaust = (fromFront: string) =>
    gasPlan({
      hob: `use: cooking, exhaust: {from_front: ${fromFront}, from_right: 0 mm, above_floor: 1 m}`,
      van: {
        energy: 'electric',
        openings:
          '{window: {kind: window, in: right wall, length: 600 mm, height: 400 mm, at: {from_front: 1 m, above_floor: 800 mm}}, hatch: {kind: hatch, in: bulkhead, width: 500 mm, height: 500 mm, at: {centred: true, above_floor: 1 m}}}',
      },
    });
  // The window reaches from 1 m to 1.6 m.
  expect(await findingOf(withExhaust('2.1 m'), rule)).toMatchObject({ verdict: 'pass' });
  const near = only(await reportOf(withExhaust('2 m')), rule);
  expect(near).toMatchObject({ verdict: 'warn', subject: 'the exhaust of hob and window' });
  expect(near.measured?.value).toBeCloseTo(0.4, 9);
});

test('without any exhaust, or a vent without a place, it is not checked', async () => {
  expect(await findingOf(gasPlan({}), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['van.exhaust', 'gas.appliances.NAME.exhaust'],
  });
  expect(
    await findingOf(gasPlan({ gas: '  locker: {thing: locker}', van: { exhaust: at('1 m') } }), rule),
  ).toMatchObject({ missing: ['gas.locker.vent'] });
});

test('every finding carries its cautions, whatever the verdict', async () => {
  const texts = [
    gasPlan({ gas: vented, van: { exhaust: at('600 mm') } }),
    gasPlan({ gas: vented, van: { exhaust: at('499 mm') } }),
    gasPlan({ gas: vented, van: { exhaust: at('499 mm') }, codes: 'us' }),
    gasPlan({}),
  ];
  expect(await cautionedVerdicts(rule, [gasCaution, combustionCaution], texts)).toEqual([
    'fail',
    'not checked',
    'pass',
    'warn',
  ]);
});
