import { expect, test } from 'vitest';
import { findingOf, reportOf } from '../../support/check.ts';
import { waterPlan } from '../../support/water-plan.ts';

const rule = 'water.frost-pipes';

const routes = (runs: string) => `routes:
  points:
    a: {at: {from_front: 3.1 m, from_right: 100 mm, above_floor: 50 mm}}
    b: {at: {from_front: 1.2 m, from_right: 100 mm, above_floor: 50 mm}}
  chases: {along: {between: [a, b], carries: [water], runs: ${runs}}}
  runs: {cold run: {carries: water, from: a, to: b}}`;

interface Cold {
  readonly runs?: string;
  readonly pipe?: string;
  readonly size?: string;
  readonly low?: string;
  readonly more?: string;
  readonly spell?: string;
}
const withPipe = ({
  runs = 'under floor',
  pipe = '',
  size = 'bore: 10 mm, size: 15 mm',
  low = '-10 degC',
  more = '',
  spell = '10 h',
}: Cold) =>
  waterPlan({
    water: `cold: 10 degC, pump: {thing: pump}, outlets: {sink: {thing: sink}}, pipes: {cold: {from: pump, to: sink, run: cold run, ${size}${pipe && `, ${pipe}`}}}${more && `, ${more}`}`,
    living: `winter_low: ${low}, cold_spell: ${spell}`,
    rest: routes(runs),
  });

test('a bare pipe under the floor freezes within minutes, and fails', async () => {
  const found = await findingOf(withPipe({}), rule);
  expect(found).toMatchObject({ verdict: 'fail', subject: 'cold' });
  // ρc·π/4·D₁² = 4.185e6·7.854e-5 = 328.7 J/(m·K); R = 0.04/(π·0.015) = 0.849 m·K/W; ln(20/10) = 0.693: 193 s.
  expect(found.measured?.value).toBeGreaterThan(190);
  expect(found.measured?.value).toBeLessThan(197);
});

test('insulation holds it off by what the handbook says, and a short cold spell passes', async () => {
  const wrap = 'insulation: {material: elastomeric foam, thickness: 13 mm}';
  const found = await findingOf(withPipe({ pipe: wrap, spell: '15 min' }), rule);
  // R = ln(41/15)/(2π·0.05) + 0.04/(π·0.041) = 3.20 + 0.311 m·K/W: 328.7·3.51·0.693 = 800 s.
  expect(found.measured?.value).toBeGreaterThan(750);
  expect(found.measured?.value).toBeLessThan(850);
  expect(found.verdict).toBe('fail');
  expect(await findingOf(withPipe({ pipe: wrap, spell: '12 min' }), rule)).toMatchObject({ verdict: 'pass' });
});

test('the remedy is a thickness that is enough, where there is one', async () => {
  const found = await findingOf(withPipe({ spell: '10 min' }), rule);
  const thickness = found.remedy?.find((part) => typeof part !== 'string');
  if (!thickness || typeof thickness === 'string') throw new Error('no thickness');
  const wrapped = `insulation: {material: elastomeric foam, thickness: ${thickness.value * 1000} mm}`;
  expect((await findingOf(withPipe({ spell: '10 min', pipe: wrapped }), rule)).verdict).toBe('pass');
  const long = await findingOf(withPipe({}), rule);
  expect(JSON.stringify(long.remedy)).toContain('No insulation up to 50 mm');
});

test.each<[string, Cold]>([
  ['in a heated chase', { runs: 'heated' }],
  ['inside', { runs: 'inside' }],
  ['heated itself', { pipe: 'heated: true' }],
  ['where there is no frost', { low: '0 degC' }],
])('a pipe %s passes', async (_, cold) => {
  expect(await findingOf(withPipe(cold), rule)).toMatchObject({ verdict: 'pass' });
});

test('one that can be emptied warns', async () => {
  const found = await findingOf(withPipe({ more: 'valves: {low: {kind: drain, pipe: cold}}' }), rule);
  expect(found.verdict).toBe('warn');
  expect(
    await findingOf(withPipe({ more: 'valves: {stop: {kind: isolating, pipe: cold}}' }), rule),
  ).toMatchObject({ verdict: 'fail' });
});

test('a waste pipe that falls is empty', async () => {
  const text = waterPlan({
    water:
      'outlets: {sink: {thing: sink}}, pipes: {waste: {from: sink, to: waste tank, bore: 30 mm, length: 1 m}}',
    living: 'winter_low: -10 degC',
  });
  expect(await findingOf(text, rule)).toMatchObject({ verdict: 'pass' });
});

test('water colder than ice is none', async () => {
  const text = withPipe({}).replace('cold: 10 degC', 'cold: -5 degC');
  expect(await findingOf(text, rule)).toMatchObject({ verdict: 'fail', measured: { value: 0 } });
});

test('a waste pipe that climbs keeps its water, and freezes', async () => {
  const text = waterPlan({
    water:
      'outlets: {sink: {thing: sink}}, pipes: {waste: {from: sink, to: waste tank, bore: 30 mm, length: 1 m, rise: 10 mm}}',
    living: 'winter_low: -10 degC',
  });
  expect(await findingOf(text, rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['water.pipes.waste.run'],
  });
});

test('what the plan lacks is asked for in one finding', async () => {
  const found = (await reportOf(withPipe({ size: 'size: 15 mm' }))).findings.filter(
    (each) => each.rule === rule,
  );
  expect(found).toMatchObject([{ verdict: 'not checked', missing: ['water.pipes.cold.material'] }]);
  const lost = waterPlan({
    water: 'pump: {}, outlets: {sink: {}}, pipes: {cold: {from: pump, to: sink}}',
    living: 'winter_low: -10 degC',
  });
  expect(await findingOf(lost, rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['water.pipes.cold.run'],
  });
  expect(await findingOf(waterPlan({}), rule)).toMatchObject({
    verdict: 'not checked',
    missing: ['water.pipes', 'living.winter_low'],
  });
});
