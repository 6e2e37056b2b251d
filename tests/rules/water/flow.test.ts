import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { waterPlan, wide } from '../../support/supply-plan.ts';
import { plan } from '../../support/test-van.ts';

const litresMin = (m3PerS: number): number => m3PerS * 60_000;
const sink = (text: string) => findingOf(text, 'water.flow', 'sink, cold');

const withPipe = (cold: string, suction = wide) =>
  waterPlan({
    pipes: `{suction: {from: fresh tank, to: pump, ${suction}}, cold: {from: pump, to: sink, ${cold}}}`,
    outlets: '{sink: {use: tap, flow: 5 L/min, pressure: 0.3 bar, above_floor: 0 m}}',
  });

/** The pump's line: 2 bar · (1 − Q/10). At 5 L/min it gives 1 bar. */
describe('a pump, wide pipes and an outlet', () => {
  test('exactly what is wanted is kept', async () => {
    const finding = await sink(waterPlan());
    expect(finding.verdict).toBe('pass');
    expect(litresMin(measured(finding))).toBeCloseTo(5, 9);
  });

  // 2 · (1 − Q/10) = 0.0980 + (Q/5)²: Q² + 5·Q − 47.55 = 0, Q = 4.835 L/min for an outlet 1 m up.
  test('an outlet higher up gets less: warn', async () => {
    const finding = await sink(
      waterPlan({ outlets: '{sink: {use: tap, flow: 5 L/min, pressure: 1 bar, above_floor: 1 m}}' }),
    );
    expect(finding.verdict).toBe('warn');
    expect(litresMin(measured(finding))).toBeCloseTo(4.835, 3);
    expect(words(finding.reason)).toContain('1000 mm above the bottom of the tank');
    // 1 bar and the column.
    expect(words(finding.remedy)).toContain('a pump that keeps 1.10 bar at 5.0 L/min');
  });

  // 2 · (1 − Q/10) = 4 · (Q/5)²… a fifth of the flow wanted at 25 bar: Q = 20·√(p/25).
  test('less than half of what the plan wants: fail', async () => {
    const finding = await sink(
      waterPlan({ outlets: '{sink: {use: tap, flow: 20 L/min, pressure: 2 bar, above_floor: 0 m}}' }),
    );
    expect(finding.verdict).toBe('fail');
    // 2·(1 − q/10) = 2·(q/20)²: q² + 40·q − 400 = 0, q = 8.284
    expect(litresMin(measured(finding))).toBeCloseTo(8.284, 3);
  });

  test('an outlet above what the pump lifts gets nothing: fail', async () => {
    const finding = await sink(
      waterPlan({
        pump: '{flow: 10 L/min, cut_out: 0.1 bar}',
        outlets: '{sink: {use: tap, flow: 5 L/min, pressure: 1 bar, above_floor: 1.5 m}}',
      }),
    );
    expect(finding.verdict).toBe('fail');
    expect(measured(finding)).toBe(0);
    expect(words(finding.reason)).toContain('do not lift it there');
  });

  test('what the plan does not say is taken as usual, and only warns', async () => {
    const finding = await sink(
      waterPlan({ pump: '{flow: 2 L/min, cut_out: 2 bar}', outlets: '{sink: {use: tap, above_floor: 0 m}}' }),
    );
    expect(finding.verdict).toBe('warn');
    expect(finding.limit?.measure.value).toBeCloseTo(6 / 60_000, 12);
    expect(words(finding.reason)).toContain('one usual for a tap is taken');
    expect(words(finding.reason)).toContain('0.55 bar');
  });
});

describe('narrow pipes', () => {
  test('lose pressure, and the next size that is enough is the remedy', async () => {
    const narrow = await sink(withPipe('material: PEX, size: 10 mm, length: 8 m, fittings: {elbow: 4}'));
    expect(narrow.verdict).toBe('warn');
    expect(words(narrow.reason)).toContain('most of it in cold');
    expect(words(narrow.remedy)).toBe('Make cold, which loses most, of 12 mm PEX: that is enough.');
    const wider = await sink(withPipe('material: PEX, size: 12 mm, length: 8 m, fittings: {elbow: 4}'));
    expect(wider.verdict).toBe('pass');
  });

  test('15 mm of plastic let less through than 15 mm of copper', async () => {
    const plastic = measured(await sink(withPipe('material: PEX, size: 15 mm, length: 20 m')));
    const copper = measured(await sink(withPipe('material: copper, size: 15 mm, length: 20 m')));
    expect(plastic).toBeLessThan(copper);
  });

  test('the suction side counts, and so does a loss of its own', async () => {
    const pipe = 'material: PEX, size: 15 mm, length: 3 m';
    const free = measured(await sink(withPipe(pipe)));
    expect(measured(await sink(withPipe(pipe, 'material: hose, size: 8 mm, length: 2 m')))).toBeLessThan(
      free,
    );
    expect(measured(await sink(withPipe(`${pipe}, loss: 30`)))).toBeLessThan(free);
  });

  test('a tee to the side is counted where a pipe begins at one', async () => {
    const through = (branch: string) =>
      waterPlan({
        more: 'tees: [tee]',
        pipes: `{suction: {from: fresh tank, to: pump, ${wide}}, trunk: {from: pump, to: tee, ${wide}}, branch: {from: tee, to: sink, material: hose, size: 8 mm, length: 1 m${branch}}}`,
      });
    const counted = measured(await sink(through(', fittings: {"tee, to the side": 1}')));
    expect(measured(await sink(through('')))).toBeCloseTo(counted, 15);
    expect(measured(await sink(through(', fittings: {"tee, straight on": 1}')))).toBeGreaterThan(counted);
  });
});

describe('ways', () => {
  const both = {
    more: 'heater: {kind: storage, holds: 10 L}',
    outlets: '{sink: {use: tap, flow: 5 L/min, pressure: 0.5 bar, above_floor: 0 m}}',
  };
  const pipes = [
    `suction: {from: fresh tank, to: pump, ${wide}}`,
    `cold: {from: pump, to: sink, ${wide}}`,
    `to heater: {from: pump, to: heater, ${wide}}`,
    'hot: {from: heater, to: sink, material: hose, size: 5 mm, length: 20 m}',
  ];

  test('cold and hot water are solved apart', async () => {
    const { findings } = await reportOf(waterPlan({ ...both, pipes: `{${pipes.join(', ')}}` }));
    const found = findings.filter(({ rule }) => rule === 'water.flow');
    expect(found.map(({ subject, verdict }) => [subject, verdict])).toEqual([
      ['sink, hot', 'fail'],
      ['sink, cold', 'pass'],
    ]);
  });

  test('the order of the plan decides nothing', async () => {
    const there = await sink(waterPlan({ ...both, pipes: `{${pipes.join(', ')}}` }));
    const back = await sink(waterPlan({ ...both, pipes: `{${pipes.toReversed().join(', ')}}` }));
    expect(measured(back)).toBe(measured(there));
  });

  // No pump: 0.3 m of water are 0.0294 bar, and Q = 5·√(0.0294) = 0.857 L/min at 1 bar for 5 L/min.
  test('water that falls from a high tank needs no pump', async () => {
    const finding = await sink(
      waterPlan({
        pump: '',
        pipes: `{cold: {from: fresh tank, to: sink, ${wide}}}`,
        outlets: '{sink: {use: tap, flow: 5 L/min, pressure: 1 bar, above_floor: -300 mm}}',
      }),
    );
    expect(litresMin(measured(finding))).toBeCloseTo(0.857, 3);
    expect(words(finding.reason)).toContain('From the height of the tank');
  });

  test('a typed rise comes before the places', async () => {
    const finding = await sink(
      waterPlan({
        pipes: `{suction: {from: fresh tank, to: pump, ${wide}, rise: 0 m}, cold: {from: pump, to: sink, ${wide}, rise: 1 m}}`,
      }),
    );
    expect(litresMin(measured(finding))).toBeCloseTo(4.835, 3);
  });
});

test("a pump's curve above its cut-out does not count", async () => {
  const curve = (cutOut: string) =>
    waterPlan({
      pump: `{${cutOut}curve: [{flow: 0 L/min, pressure: 4 bar}, {flow: 10 L/min, pressure: 0 bar}]}`,
    });
  const free = measured(await sink(curve('')));
  expect(measured(await sink(curve('cut_out: 2 bar, ')))).toBeLessThan(free);
});

describe('missing', () => {
  test.each([
    { text: plan(''), missing: ['water'] },
    { text: plan('water: {}'), missing: ['water.outlets'] },
    { text: waterPlan({ pipes: '' }), missing: ['water.pipes'] },
    { text: waterPlan({ pump: '{}' }), missing: ['water.pump.flow', 'water.pump.cut_out'] },
    {
      text: waterPlan({ pipes: `{suction: {from: fresh tank, to: pump, ${wide}}}` }),
      missing: ['water.pipes.NAME.to'],
    },
    {
      text: waterPlan({
        pipes: `{suction: {from: fresh tank, to: pump}, cold: {from: pump, to: sink, material: PEX, size: 17 mm, length: 1 m}}`,
      }),
      missing: [
        'water.pipes.suction.material',
        'water.pipes.suction.size',
        'water.pipes.suction.length',
        'water.pipes.cold.bore',
      ],
    },
    {
      text: waterPlan({
        outlets: '{sink: {use: outside}}',
        tanks: 'fresh tank: {contents: fresh, holds: 70 L}',
      }),
      missing: [
        'water.outlets.sink.above_floor',
        'tanks.fresh tank.size',
        'tanks.fresh tank.at',
        'water.outlets.sink.flow',
      ],
    },
  ])('$missing', async ({ text, missing }) => {
    const finding = await findingOf(text, 'water.flow');
    expect(finding.verdict).toBe('not checked');
    expect(finding.missing).toEqual(missing);
  });

  test('of one outlet only leaves the other checked', async () => {
    const { findings } = await reportOf(
      waterPlan({
        outlets:
          '{sink: {use: tap, flow: 5 L/min, pressure: 1 bar, above_floor: 0 m}, hose: {use: tap, above_floor: 0 m}}',
      }),
    );
    const found = findings.filter(({ rule }) => rule === 'water.flow');
    expect(found.map(({ subject, verdict }) => [subject, verdict])).toEqual([
      ['other ways to outlets', 'not checked'],
      ['sink, cold', 'pass'],
    ]);
  });

  test('pipes that lead in a ring lead to no outlet', async () => {
    const finding = await findingOf(
      waterPlan({
        more: 'tees: [a, b]',
        pipes: `{one: {from: a, to: b, ${wide}}, two: {from: b, to: a, ${wide}}, three: {from: b, to: sink, ${wide}}}`,
      }),
      'water.flow',
    );
    expect(finding.missing).toEqual(['water.pipes.NAME.to']);
  });
});
