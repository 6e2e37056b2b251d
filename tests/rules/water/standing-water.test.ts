import { expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const found = (water: string, rest = '') =>
  findingOf(plan(`water: {${water}}\n${rest}`), 'water.standing-water');

test.each([
  { water: 'cold: 10 degC', subject: 'water', verdict: 'pass' },
  { water: 'cold: 20 degC', subject: 'water', verdict: 'pass' },
  { water: 'cold: 20.5 degC', subject: 'cold water', verdict: 'warn' },
  { water: 'heater: {kind: storage, temperature: 60 degC}', subject: 'water', verdict: 'pass' },
  { water: 'heater: {kind: storage, temperature: 59 degC}', subject: 'hot store', verdict: 'warn' },
  // Nothing stands in it.
  { water: 'heater: {kind: instant, temperature: 40 degC}', subject: 'water', verdict: 'pass' },
  { water: 'heater: {kind: storage}', subject: 'hot store', verdict: 'not checked' },
])('$water: $verdict', async ({ water, subject, verdict }) => {
  expect(await found(water)).toMatchObject({ subject, verdict });
});

test('both cold and hot water may be lukewarm', async () => {
  const { findings } = await reportOf(
    plan('water: {cold: 24 degC, heater: {kind: storage, temperature: 45 degC}}'),
  );
  const warned = findings.filter(({ rule }) => rule === 'water.standing-water');
  expect(warned.map(measured).sort((a, b) => a - b)).toEqual([expect.closeTo(4, 9), expect.closeTo(15, 9)]);
});

test('below 45 °C germs multiply in the store', async () => {
  const says = 'legionella multiplies in it';
  const store = (temperature: string) => found(`heater: {kind: storage, temperature: ${temperature}}`);
  expect(words((await store('44 degC')).reason)).toContain(says);
  expect(words((await store('45 degC')).reason)).not.toContain(says);
});

test('in a warm summer the tank is as warm as the van', async () => {
  const says = 'the tank becomes as warm as the van';
  expect(words((await found('cold: 10 degC', 'living: {summer_high: 28 degC}')).reason)).toContain(says);
  expect(words((await found('cold: 10 degC', 'living: {summer_high: 20 degC}')).reason)).not.toContain(says);
});

test('without water it is not checked', async () => {
  expect(await findingOf(plan(''), 'water.standing-water')).toMatchObject({
    verdict: 'not checked',
    missing: ['water'],
  });
});
