import { expect, test } from 'vitest';
import { findingOf, reportOf, words } from '../../support/check.ts';
import { wired } from '../../support/electrical-plan.ts';
import { plan } from '../../support/test-van.ts';

const rule = 'electrical.least-section';
const least = (text: string) => findingOf(text, rule);
const lamp = (conductor: string, length = '2 m') =>
  wired(
    `  voltage: 12 V\n  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 100 Ah}\n  circuits:\n    lamp: {from: battery, to: fridge, load: 1 A, conductor: ${conductor}, length: ${length}}`,
  );

test.each([
  { conductor: '1.5 mm2', verdict: 'pass' },
  // 1.3087 mm² is the limit itself; SAE of that number holds 1.18 mm².
  { conductor: '16 AWG', verdict: 'pass' },
  { conductor: '16 SAE', verdict: 'warn' },
  { conductor: '1 mm2', verdict: 'warn' },
  { conductor: '0.5 mm2', verdict: 'warn' },
])('$conductor: $verdict', async ({ conductor, verdict }) => {
  expect((await least(lamp(conductor))).verdict).toBe(verdict);
});

test('the remedy names a size that passes', async () => {
  expect(words((await least(lamp('1 mm2'))).remedy)).toMatch(/^Use 1\.5 mm² flexible with a fuse of 2\.0 A/);
});

test.each([
  { length: '200 mm', verdict: 'pass' },
  { length: '201 mm', verdict: 'warn' },
  { length: '100 mm, length_back: 300 mm', verdict: 'warn' },
])('0.5 mm² over $length: $verdict', async ({ length, verdict }) => {
  expect((await least(lamp('0.5 mm2', length))).verdict).toBe(verdict);
});

test('a length that is not known lets nothing off', async () => {
  expect((await least(lamp('0.5 mm2').replace(', length: 2 m', ''))).verdict).toBe('warn');
});

test('circuits that pass are one finding, those that lack a conductor another', async () => {
  const text = `${lamp('1.5 mm2')}\n    more: {from: battery, to: pump, load: 1 A, conductor: 4 mm2, length: 2 m}\n    bare: {from: battery, to: sockets}\n    bald: {from: battery, to: sockets}`;
  const found = (await reportOf(text)).findings.filter((each) => each.rule === rule);
  expect(found.map(({ subject, verdict }) => `${subject}: ${verdict}`)).toEqual([
    'bare and bald: not checked',
    'lamp: pass',
  ]);
  expect(words(found[1]?.reason)).toContain('1 more are no thinner');
});

test('without electrics it is not checked', async () => {
  expect(await least(plan())).toMatchObject({ verdict: 'not checked', missing: ['electrical'] });
});
