import { describe, expect, test } from 'vitest';
import { findingOf, words } from '../../support/check.ts';
import { waterPlan as supplyPlan, wide } from '../../support/supply-plan.ts';
import { waterPlan } from '../../support/water-plan.ts';

/*
 * A remedy is typed as it is printed. Each of these is: the number is taken out of the sentence, written into the plan,
 * and the check must then pass.
 */

/** What stands in the sentence, without the commas of its thousands. */
function printed(sentence: string, pattern: RegExp): string {
  const found = pattern.exec(sentence)?.[1];
  if (found === undefined) throw new Error(`"${sentence}" has nothing like ${pattern}`);
  return found.replaceAll(',', '');
}

interface Typed {
  readonly rule: string;
  readonly before: string;
  readonly remedy: RegExp;
  readonly after: (number: string) => string;
}

async function expectCured({ rule, before, remedy, after }: Typed): Promise<void> {
  const finding = await findingOf(before, rule);
  expect(['warn', 'fail']).toContain(finding.verdict);
  const number = printed(words(finding.remedy), remedy);
  expect((await findingOf(after(number), rule)).verdict, `${words(finding.remedy)}, typed as ${number}`).toBe(
    'pass',
  );
}

const people = 'litres_per_person_day: 200 L, showers_per_person_day: 0.5, litres_per_shower: 20 L';
const store = (keys: string, living = '', rest = '') =>
  waterPlan({ water: `cold: 10 degC, heater: {kind: storage, ${keys}}`, living, rest });

describe('water.heater-recovery', () => {
  const rule = 'water.heater-recovery';

  test.each([
    { holds: '3.3 L', hot: '61 degC' },
    { holds: '10 L', hot: '60 degC' },
    { holds: '10 L', hot: '67 degC' },
    { holds: '22 L', hot: '59 degC' },
    { holds: '47 L', hot: '73 degC' },
  ])('a heater of so many watts: $holds at $hot', async ({ holds, hot }) => {
    const plan = (power: string) => store(`holds: ${holds}, temperature: ${hot}, power: ${power}`);
    await expectCured({ rule, before: plan('100 W'), remedy: /A heater of ([\d.,]+ W)/, after: plan });
  });

  test.each([{ power: '80 W' }, { power: '137 W' }, { power: '333 W' }, { power: '421 W' }])(
    'so long between two: $power',
    async ({ power }) => {
      const plan = (rest: string) => store(`holds: 10 L, temperature: 63 degC, power: ${power}`, '', rest);
      await expectCured({
        rule,
        before: plan(''),
        remedy: /plan ([\d.]+ (?:h|min)) between/,
        after: (time) => plan(`rules: {water.heater-recovery: {limit: ${time}, reason: we can wait}}`),
      });
    },
  );

  test.each([{ litres: '41 L' }, { litres: '57 L' }, { litres: '83 L' }])(
    'watts for the hot water of a day: $litres',
    async ({ litres }) => {
      const plan = (power: string) =>
        store(
          `holds: 1 L, temperature: 60 degC, power: ${power}`,
          `${people}, hot_litres_per_person_day: ${litres}`,
        );
      await expectCured({ rule, before: plan('50 W'), remedy: /It takes ([\d.,]+ W) at/, after: plan });
    },
  );
});

describe('water.hot-amount', () => {
  const rule = 'water.hot-amount';
  const showers = (litres: string) =>
    `litres_per_person_day: 60 L, hot_litres_per_person_day: 4 L, showers_per_person_day: 0.5, litres_per_shower: ${litres}`;

  test.each([
    { hot: '60 degC', wanted: '8.3 L' },
    { hot: '57 degC', wanted: '20 L' },
    { hot: '71 degC', wanted: '23.7 L' },
    { hot: '44 degC', wanted: '31 L' },
  ])('a larger store: $hot, $wanted', async ({ hot, wanted }) => {
    const plan = (holds: string) => store(`holds: ${holds}, temperature: ${hot}`, showers(wanted));
    await expectCured({ rule, before: plan('4 L'), remedy: /a store of ([\d.]+ L)/, after: plan });
  });

  test.each([{ holds: '4 L' }, { holds: '13.7 L' }, { holds: '17 L' }])(
    'less at a time: $holds',
    async ({ holds }) => {
      const plan = (litres: string) => store(`holds: ${holds}, temperature: 61 degC`, showers(litres));
      await expectCured({ rule, before: plan('80 L'), remedy: /no more than ([\d.]+ L)/, after: plan });
    },
  );

  test.each([
    { hot: '35 degC', wanted: '8 L', holds: '10 L' },
    { hot: '38 degC', wanted: '11 L', holds: '10 L' },
    { hot: '30 degC', wanted: '16.4 L', holds: '10 L' },
  ])('hotter, where it is no warmer than a shower: $hot, $wanted', async ({ hot, wanted, holds }) => {
    const plan = (degrees: string) => store(`holds: ${holds}, temperature: ${degrees}`, showers(wanted));
    await expectCured({
      rule,
      before: plan(hot),
      remedy: /Heat it to (\d+ °C)/,
      after: (degrees) => plan(degrees.replace('°C', 'degC')),
    });
  });

  test('hotter and larger, where heat alone would boil it', async () => {
    const before = store('holds: 5 L, temperature: 30 degC', showers('41 L'));
    const remedy = words((await findingOf(before, rule)).remedy);
    const degrees = printed(remedy, /Heat it to (\d+) °C/);
    const holds = printed(remedy, /take a store of ([\d.]+ L)/);
    const after = store(`holds: ${holds}, temperature: ${degrees} degC`, showers('41 L'));
    expect((await findingOf(after, rule)).verdict).toBe('pass');
  });

  const instant = (power: string, flow: string) =>
    supplyPlan({
      outlets: `{sink: {use: tap, flow: ${flow}, above_floor: 0 m}}`,
      pipes: `{suction: {from: fresh tank, to: pump, ${wide}}, to heater: {from: pump, to: heater, ${wide}}, hot: {from: heater, to: sink, ${wide}}}`,
      more: `heater: {kind: instant, power: ${power}}`,
    });

  test.each([{ flow: '2.3 L/min' }, { flow: '4.7 L/min' }, { flow: '6 L/min' }])(
    'more power for $flow',
    async ({ flow }) => {
      await expectCured({
        rule,
        before: instant('1.5 kW', flow),
        remedy: /It takes ([\d.,]+ W)/,
        after: (power) => instant(power, flow),
      });
    },
  );

  test.each([{ power: '1.7 kW' }, { power: '3.1 kW' }, { power: '9.3 kW' }])(
    'an outlet that is content: $power',
    async ({ power }) => {
      await expectCured({
        rule,
        before: instant(power, '20 L/min'),
        remedy: /content with ([\d.]+ L\/min)/,
        after: (flow) => instant(power, flow),
      });
    },
  );
});

describe('water.hot-wait', () => {
  const rule = 'water.hot-wait';
  const hot = (pipes: string, flow: string, pump = '{}') =>
    supplyPlan({
      pump,
      outlets: `{sink: {use: tap, flow: ${flow}, pressure: 0.3 bar, above_floor: 0 m}}`,
      pipes: `{suction: {from: fresh tank, to: pump, ${wide}}, to heater: {from: pump, to: heater, ${wide}}, ${pipes}}`,
      more: 'heater: {kind: storage, holds: 10 L}\n  tees: [tee]',
    });
  const one = (pipe: string) => `hot: {from: heater, to: sink, ${pipe}}`;

  test.each([
    { bore: '10 mm', flow: '1 L/min' },
    { bore: '13 mm', flow: '1.3 L/min' },
    { bore: '7.7 mm', flow: '0.9 L/min' },
    { bore: '4 mm', flow: '0.4 L/min' },
    { bore: '20 mm', flow: '12 L/min' },
  ])('no longer than so much: $bore at $flow', async ({ bore, flow }) => {
    const plan = (length: string) => hot(one(`bore: ${bore}, length: ${length}`), flow);
    await expectCured({ rule, before: plan('30 m'), remedy: /no longer than ([\d.]+ m+)/, after: plan });
  });

  test.each([
    { size: '22 mm', length: '8 m' },
    { size: '28 mm', length: '5 m' },
  ])('a narrower pipe: copper of $size, $length', async ({ size, length }) => {
    const plan = (other: string) =>
      hot(
        one(`material: copper, size: ${other}, length: ${length}`),
        '5 L/min',
        '{flow: 10 L/min, cut_out: 2 bar}',
      );
    await expectCured({ rule, before: plan(size), remedy: /Take (\d+ mm) copper/, after: plan });
  });

  // Of a wide and a narrow pipe no one length can be said: together they may hold 0.3 · 5/6 L at 0.6 L/min.
  test('pipes of two bores: what they may hold together', async () => {
    const plan = (wideM: string, narrowM: string) =>
      hot(
        `hot: {from: heater, to: tee, bore: 20 mm, length: ${wideM}}, last: {from: tee, to: sink, bore: 8 mm, length: ${narrowM}}`,
        '0.6 L/min',
      );
    const remedy = words((await findingOf(plan('1 m', '2 m'), rule)).remedy);
    const litres = Number(printed(remedy, /the hot pipes hold no more than ([\d.]+) L together/));
    expect(litres).toBe(0.2);
    const perM = (boreM: number) => ((Math.PI * boreM ** 2) / 4) * 1000;
    const wideM = (litres - 2 * perM(0.008)) / perM(0.02);
    expect((await findingOf(plan(`${wideM} m`, '2 m'), rule)).verdict).toBe('pass');
  });
});

describe('water.suction', () => {
  const rule = 'water.suction';
  const suction = (keys: string, flow = '10 L/min') =>
    supplyPlan({
      pump: `{flow: ${flow}, cut_out: 2 bar}`,
      pipes: `{suction: {from: fresh tank, to: pump, ${keys}}}`,
    });

  test.each([{ riseM: 1.9237 }, { riseM: 2.4 }, { riseM: 11 }])(
    'so much lower: $riseM m',
    async ({ riseM }) => {
      const plan = (rise: number) => suction(`rise: ${rise} m, material: hose, size: 13 mm, length: 1 m`);
      const remedy = words((await findingOf(plan(riseM), rule)).remedy);
      const lowerM = Number(printed(remedy, /at least (\d+) mm lower/)) / 1000;
      expect(lowerM).toBeLessThanOrEqual(riseM);
      expect((await findingOf(plan(riseM - lowerM), rule)).verdict).toBe('pass');
    },
  );

  // 3 m of 8 mm hose at 10 L/min lose 5.8 m: no pump is set four metres below a tank.
  test.each([{ riseM: -0.2 }, { riseM: 0 }, { riseM: 0.6 }, { riseM: 2.5 }])(
    'a suction that loses too much asks for no depth that is not there: $riseM m',
    async ({ riseM }) => {
      const plan = (rise: number, size: string) =>
        suction(`rise: ${rise} m, material: hose, size: ${size}, length: 3 m`);
      const remedy = words((await findingOf(plan(riseM, '8 mm'), rule)).remedy);
      expect(remedy).not.toContain('mm lower');
      const size = printed(remedy, /\((\d+ mm) hose does\)/);
      // Where it says so the pump goes beside the tank.
      expect(remedy.includes('beside fresh tank')).toBe(riseM > 0);
      expect((await findingOf(plan(Math.min(riseM, 0), size), rule)).verdict).toBe('pass');
    },
  );

  test('what it should lose less is enough', async () => {
    const plan = (length: number) => suction(`rise: 0 m, bore: 8 mm, length: ${length} m`);
    const before = await findingOf(plan(3), rule);
    const lessM = Number(printed(words(before.remedy), /loses (\d+) mm less/)) / 1000;
    const lostM = before.measured?.value ?? 0;
    expect(lostM - lessM).toBeLessThanOrEqual(1.8 + 1e-9);
    expect(lostM - lessM).toBeGreaterThan(1.798);
  });
});
