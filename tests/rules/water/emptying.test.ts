import { expect, test } from 'vitest';
import { findingOf, reportOf } from '../../support/check.ts';
import { waterPlan } from '../../support/water-plan.ts';

const rule = 'water.emptying';
const system =
  'pump: {thing: pump}, heater: {thing: boiler, kind: storage}, outlets: {sink: {thing: sink}}, pipes: {cold: {from: pump, to: sink}}';
const withValves = (valves: string) => waterPlan({ water: `${system}, valves: {${valves}}` });

test('a drain valve on a pipe and one on the heater let the water out', async () => {
  const text = withValves('low: {kind: drain, pipe: cold}, heater drain: {kind: frost, thing: boiler}');
  expect(await findingOf(text, rule)).toMatchObject({ verdict: 'pass' });
});

test('a heater that nothing empties warns, and so do pipes', async () => {
  expect(await findingOf(withValves('low: {kind: drain, pipe: cold}'), rule)).toMatchObject({
    verdict: 'warn',
    subject: 'water heater',
  });
  expect(await findingOf(withValves('heater drain: {kind: drain, thing: boiler}'), rule)).toMatchObject({
    verdict: 'warn',
    subject: 'pipes',
  });
});

test('an isolating valve lets nothing out', async () => {
  const found = (await reportOf(withValves('stop: {kind: isolating, pipe: cold}'))).findings.filter(
    (each) => each.rule === rule,
  );
  expect(found.map(({ verdict }) => verdict)).toEqual(['warn', 'warn']);
});

test('an instant heater holds next to nothing', async () => {
  const text = waterPlan({
    water:
      'heater: {kind: instant, thing: boiler}, pump: {}, outlets: {sink: {}}, pipes: {cold: {from: pump, to: sink}}, valves: {low: {kind: drain, pipe: cold}}',
  });
  expect(await findingOf(text, rule)).toMatchObject({ verdict: 'pass' });
});

test('without pipes, or without a word of valves, it is not checked', async () => {
  expect(await findingOf(waterPlan({}), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['water.pipes'],
  });
  expect(await findingOf(waterPlan({ water: system }), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['water.valves.NAME: {kind: drain, pipe: NAME}'],
  });
});
