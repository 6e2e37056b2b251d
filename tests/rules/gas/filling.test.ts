import { expect, test } from 'vitest';
import { renderPhrase } from '../../../src/report/format-measure.ts';
import { gasCaution } from '../../../src/rules/cautions.ts';
import { cautionedVerdicts } from '../../support/cautioned.ts';
import { findingOf } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

const rule = 'gas.filling';
const tank = (keys: string) =>
  gasPlan({
    cylinder: '',
    tanks: `  tank: {contents: propane, holds: 30 L${keys}}`,
    gas: '  stored_in: fixed tank',
  });

test('a tank that is filled from outside passes, and counts with four fifths of its inside', async () => {
  const found = await findingOf(tank(', filled_from: outside'), rule);
  expect(found.verdict).toBe('pass');
  // 30 L × 0.8 × 0.512 kg/L = 12.3 kg.
  expect(renderPhrase(found.reason, 'metric')).toContain(
    'tank counts with 12 kg of propane, 80 % of its inside',
  );
});

test('one that is filled from inside does not', async () => {
  expect((await findingOf(tank(', filled_from: inside'), rule)).verdict).toBe('warn');
});

test('what is not said is not checked', async () => {
  expect(await findingOf(tank(''), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['tanks.tank.filled_from'],
  });
});

test('cylinders are filled elsewhere', async () => {
  expect(await findingOf(gasPlan({}), rule)).toMatchObject({ verdict: 'pass', subject: 'cylinders' });
});

test('a plan without gas is not checked', async () => {
  expect((await findingOf('storystick: 1\nvan: {}', rule)).missing).toContain('gas');
});

test('every finding carries its cautions, whatever the verdict', async () => {
  const texts = [tank(', filled_from: outside'), tank(', filled_from: inside'), tank(''), gasPlan({})];
  expect(await cautionedVerdicts(rule, [gasCaution], texts)).toEqual(['not checked', 'pass', 'warn']);
});
