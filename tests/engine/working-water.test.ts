import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Finding, Step } from '../../src/engine/finding.ts';
import { rules } from '../../src/rules/index.ts';
import { waterPlan as supplyPlan, wide } from '../support/supply-plan.ts';
import { waterPlan } from '../support/water-plan.ts';
import { workedBy } from '../support/worked.ts';

/*
 * Workings of the water: every measured finding has one, it comes to what was measured, and what is printed as a sum is
 * worked out again here from the numbers in it.
 */

const examples = ['curlew', 'oak', 'crowded', 'tangled', 'thin-cables', 'winter'].map(
  (name) => [name, readFileSync(`examples/curlew/${name}.yaml`, 'utf8')] as const,
);
const curlew = examples[0]?.[1] ?? '';

const changed = (...changes: readonly (readonly [string, string])[]): string =>
  changes.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`the Curlew has no "${from}"`);
    return text.replace(from, to);
  }, curlew);

const heater = (keys: string, living = '') =>
  waterPlan({ water: `cold: 10 degC, heater: {kind: storage, ${keys}}`, living });

const twoOutlets = (pipes: string, outlets = ''): string =>
  supplyPlan({
    outlets: `{sink: {use: tap, flow: 5 L/min, pressure: 1 bar, above_floor: 900 mm}, shower: {use: shower, flow: 6 L/min, pressure: 0.5 bar, above_floor: 1700 mm}${outlets}}`,
    pipes: `{suction: {from: fresh tank, to: pump, material: hose, size: 13 mm, length: 1 m}, trunk: {from: pump, to: tee, material: PEX, size: 12 mm, length: 2 m}, ${pipes}}`,
    more: 'tees: [tee]',
  });
const branches =
  'a: {from: tee, to: sink, material: PEX, size: 12 mm, length: 3 m}, b: {from: tee, to: shower, material: PEX, size: 12 mm, length: 1 m}';

const outsidePipe = (keys: string, cold = '8 degC') =>
  waterPlan({
    water: `cold: ${cold}, outlets: {sink: {above_floor: 900 mm}}, pipes: {cold: {from: fresh tank, to: sink, run: cold, ${keys}}}`,
    living: 'winter_low: -10 degC, cold_spell: 12 h',
    rest: 'routes: {slack: 0 %, points: {a: {at: {from_front: 3 m, centred: true, above_floor: -50 mm}}, b: {at: {from_front: 1.5 m, centred: true, above_floor: -50 mm}}}, chases: {under: {between: [a, b], carries: [water], runs: under floor, bore: 50 mm}}, runs: {cold: {from: fresh tank, to: sink, carries: water}}}',
  });

const drain = (keys: string, living = '') =>
  waterPlan({
    water: `outlets: {sink: {thing: sink}}, pipes: {waste: {from: sink, to: waste tank, ${keys}}}`,
    living,
  });

const hotPipe = (pipe: string, flow = '5 L/min') =>
  supplyPlan({
    pump: '{}',
    outlets: `{sink: {use: tap, flow: ${flow}, pressure: 0.3 bar, above_floor: 0 m}}`,
    pipes: `{suction: {from: fresh tank, to: pump, ${wide}}, to heater: {from: pump, to: heater, ${wide}}, hot: {from: heater, to: sink, ${pipe}}}`,
    more: 'heater: {kind: storage, holds: 10 L}',
  });

const instant = (power: string) =>
  supplyPlan({
    outlets:
      '{sink: {use: tap, flow: 5 L/min, pressure: 0.3 bar, above_floor: 0 m}, basin: {use: tap, flow: 5 L/min, above_floor: 0 m}}',
    pipes: `{suction: {from: fresh tank, to: pump, ${wide}}, to heater: {from: pump, to: heater, ${wide}}, hot: {from: heater, to: sink, ${wide}}, more: {from: sink, to: basin, ${wide}}, b: {from: heater, to: basin, ${wide}}}`,
    more: `heater: {kind: instant, power: ${power}}`,
  });

const day = 'litres_per_person_day: 10 L, days_between_fills: 3';

/** Plans that reach branches where no example comes; the rule that they are for, and words of its working. */
const own: readonly (readonly [name: string, rule: string, text: string, words: RegExp])[] = [
  [
    'showers',
    'water.days',
    waterPlan({ living: `${day}, showers_per_person_day: 0.5, litres_per_shower: 8 L` }),
    /showers · #/,
  ],
  [
    'no fresh tank',
    'water.days',
    waterPlan({ living: day }).replace('fresh tank: {contents: fresh', 'other: {contents: waste'),
    /no fresh tank/,
  ],
  [
    'all that was carried',
    'water.waste-capacity',
    waterPlan({
      water: 'outlets: {sink: {thing: sink}}, pipes: {w: {from: sink, to: waste tank}}',
      living: 'litres_per_person_day: 80 L, days_between_fills: 3',
    }),
    /the lesser of the two/,
  ],
  [
    'no waste pipe',
    'water.waste-capacity',
    waterPlan({ water: 'outlets: {sink: {thing: sink, drains: false}}', living: day }),
    /no outlet lets its water down a drain/,
  ],
  [
    'no waste tank',
    'water.waste-capacity',
    waterPlan({
      water: 'outlets: {sink: {thing: sink}}, pipes: {w: {from: sink, to: outside}}',
      living: day,
    }).replace(/ {2}waste tank: .*\n/, ''),
    /there is none for drains/,
  ],
  [
    'a wrapped tank',
    'water.frost-tanks',
    waterPlan({
      waste: 'insulation: {material: elastomeric foam, thickness: 20 mm}',
      living: 'winter_low: -8 degC, cold_spell: 12 h',
    }),
    /W\/\(m·K\)/,
  ],
  [
    'a bare tank',
    'water.frost-tanks',
    waterPlan({ living: 'winter_low: -8 degC, cold_spell: 12 h' }),
    /How slowly/,
  ],
  ['a bare pipe', 'water.frost-pipes', outsidePipe('material: PEX, size: 15 mm'), /without insulation/],
  [
    'a wrapped hose',
    'water.frost-pipes',
    outsidePipe('material: hose, size: 13 mm, insulation: {material: elastomeric foam, thickness: 19 mm}'),
    /ln\(/,
  ],
  ['water at freezing', 'water.frost-pipes', outsidePipe('material: PEX, size: 15 mm', '0 degC'), /ln\(/],
  [
    'a slow heater',
    'water.heater-recovery',
    heater('holds: 10 L, temperature: 60 degC, power: 200 W'),
    /the store weighs/,
  ],
  [
    'a heater too slow for the day',
    'water.heater-recovery',
    heater(
      'holds: 10 L, temperature: 60 degC, power: 100 W',
      'litres_per_person_day: 60 L, hot_litres_per_person_day: 40 L, showers_per_person_day: 0.5, litres_per_shower: 20 L',
    ),
    /a day weighs/,
  ],
  [
    'a store as cold as the water',
    'water.heater-recovery',
    heater('holds: 10 L, temperature: 5 degC, power: 1 kW'),
    /Q \/ P/,
  ],
  [
    'a shower',
    'water.hot-amount',
    heater(
      'holds: 10 L, temperature: 60 degC',
      'litres_per_person_day: 60 L, hot_litres_per_person_day: 4 L, showers_per_person_day: 0.5, litres_per_shower: 20 L',
    ),
    /for one shower/,
  ],
  [
    'a third of a day',
    'water.hot-amount',
    heater('holds: 5 L, temperature: 70 degC', 'litres_per_person_day: 60 L, hot_litres_per_person_day: 9 L'),
    /draws a day/,
  ],
  ['an instant heater', 'water.hot-amount', instant('6 kW'), /What the heater makes/],
  ['a trap too deep', 'water.traps', changed(['trap: 50 mm', 'trap: 120 mm']), /as the plan gives it/],
  [
    'a lid too small',
    'water.inspection',
    changed(['inspection: 100 mm', 'inspection: 60 mm']),
    /an arm with a brush/,
  ],
  ['a tank without baffles', 'water.surge', waterPlan({}), /no baffles are named/],
  [
    'a vent too narrow',
    'water.vents',
    waterPlan({ fresh: 'vent: 8 mm, fill_rate: 100 L/min' }),
    /the faster of filling/,
  ],
  [
    'a vent of which only the bore is known',
    'water.vents',
    waterPlan({ fresh: 'vent: 4 mm' }),
    /how fast it fills is not/,
  ],
  [
    'a drain that climbs',
    'water.drain-fall',
    drain('length: 1 m, rise: 50 mm, size: 32 mm'),
    /on level ground/,
  ],
  [
    'a drain straight down',
    'water.drain-fall',
    drain('length: 1 m, rise: -1 m, size: 32 mm'),
    /straight down/,
  ],
  ['a drain straight up', 'water.drain-fall', drain('length: 1 m, rise: 1 m, size: 32 mm'), /straight up/],
  [
    'a drain that leans',
    'water.drain-fall',
    drain('length: 2 m, rise: -50 mm, size: 32 mm', 'parking_slope: 3 %'),
    /the wrong way/,
  ],
  [
    'a pump that never starts',
    'water.pump-switch',
    supplyPlan({
      pump: '{flow: 10 L/min, cut_out: 1 bar, cut_in: 0.1 bar}',
      outlets: '{sink: {use: tap, flow: 5 L/min, pressure: 1 bar, above_floor: 1.5 m}}',
    }),
    /the highest outlet/,
  ],
  [
    'a pump that runs on',
    'water.pump-switch',
    supplyPlan({ pump: '{flow: 10 L/min, cut_out: 2 bar, cut_in: 1.8 bar}' }),
    /the sum of them/,
  ],
  [
    'no accumulator',
    'water.pump-switch',
    supplyPlan({ pump: '{flow: 20 L/min, cut_out: 2 bar, cut_in: 0.5 bar}' }),
    /without an accumulator/,
  ],
  [
    'an accumulator',
    'water.pump-switch',
    supplyPlan({
      pump: '{flow: 20 L/min, cut_out: 2 bar, cut_in: 0.5 bar}',
      more: 'accumulator: {holds: 1 L, charged_to: 0.8 bar}',
    }),
    /absolute pressures/,
  ],
  [
    'an accumulator charged too high',
    'water.pump-switch',
    supplyPlan({
      pump: '{flow: 20 L/min, cut_out: 2 bar, cut_in: 0.5 bar}',
      more: 'accumulator: {holds: 1 L, charged_to: 2.5 bar}',
    }),
    /takes no water/,
  ],
  [
    'a pump by its curve',
    'water.pump-switch',
    supplyPlan({
      pump: '{curve: [{flow: 0 L/min, pressure: 2 bar}, {flow: 5 L/min, pressure: 1.6 bar}, {flow: 10 L/min, pressure: 0 bar}], cut_out: 2 bar, cut_in: 1.9 bar}',
    }),
    /along its curve/,
  ],
  ['two outlets', 'water.two-outlets', twoOutlets(branches), /Q₁ \+ Q₂/],
  [
    'two outlets, one dry',
    'water.two-outlets',
    twoOutlets(branches).replace('above_floor: 1700 mm', 'above_floor: 16 m'),
    /nothing is left/,
  ],
  [
    'a high, narrow suction',
    'water.suction',
    supplyPlan({
      pipes:
        '{suction: {from: fresh tank, to: pump, rise: 1 m, material: hose, size: 8 mm, length: 3 m, fittings: {elbow: 2}}}',
    }),
    /as height/,
  ],
  [
    'a suction that runs to the pump',
    'water.suction',
    supplyPlan({ pipes: `{suction: {from: fresh tank, to: pump, rise: -0.5 m, ${wide}}}` }),
    /no less than nothing/,
  ],
  [
    'a heater that scalds',
    'water.heater-fittings',
    heater('holds: 10 L, temperature: 60 degC, relief_valve: true, mixing_valve: false'),
    /hotter/,
  ],
  ['warm cold water', 'water.standing-water', waterPlan({ water: 'cold: 24 degC' }), /warmer/],
  ['a lukewarm store', 'water.standing-water', heater('holds: 10 L, temperature: 50 degC'), /cooler/],
  [
    'much water in a wide pipe',
    'water.hot-wait',
    hotPipe('bore: 20 mm, length: 4 m'),
    /stands in the hot pipes/,
  ],
  ['a wait', 'water.hot-wait', hotPipe('bore: 10 mm, length: 8 m', '1 L/min'), /The wait/],
  [
    'two outlets that lack',
    'water.flow',
    twoOutlets(branches.replace('length: 3 m', 'length: 30 m')),
    /What is left/,
  ],
];

const workedOf = workedBy(({ topic }) => topic === 'water');

const wordsOf = ({ what, sum = [] }: Step): string =>
  `${what}\n${sum.map((part) => (typeof part === 'string' ? part : '#')).join('')}`;

/** Which of the limits are worked out from the plan: a step comes to them. */
const withWorkedLimit = ['water.hot-amount', 'water.vents', 'water.waste-capacity'];

function expectSound({ rule, subject, measured, limit, working = [] }: Finding): void {
  const name = `${rule} ${subject}`;
  expect(working.length, name).toBeGreaterThan(0);
  const last = working.at(-1)?.result;
  expect(last?.kind, name).toBe(measured?.kind);
  const size = Math.abs(measured?.value ?? 0) || 1;
  expect((last?.value ?? Number.NaN) / size, name).toBeCloseTo((measured?.value ?? 0) / size, 9);
  if (limit && withWorkedLimit.includes(rule)) {
    expect(working.at(-2)?.result?.value, name).toBeCloseTo(limit.measure.value, 9);
    expect(working.at(-2)?.result?.kind, name).toBe(limit.measure.kind);
  }
  for (const { result, parts } of working) {
    if (!parts) continue;
    const scale = parts.rows.reduce((sum, { adds }) => sum + Math.abs(adds.value), 0) || 1;
    const sum = parts.rows.reduce((total, { adds }) => total + adds.value, 0);
    expect(sum / scale, name).toBeCloseTo((result?.value ?? Number.NaN) / scale, 9);
    for (const { values, adds } of parts.rows) {
      expect(values, name).toHaveLength(parts.columns.length - 1);
      expect(adds.kind, name).toBe(result?.kind);
    }
  }
}

const { PI: pi, log: ln, sqrt, max, min } = Math;

/** Sums as they are printed, worked out again from the numbers in them; by the words that they begin with. */
const byHand: readonly (readonly [words: RegExp, of: (...numbers: number[]) => number])[] = [
  [/^What all use on a day.*\n# · #$/, (n = 0, v = 0) => n * v],
  [
    /^What all use on a day.*\n# · \(# \+ # showers/,
    (n = 0, v = 0, often = 0, each = 0) => n * (v + often * each),
  ],
  [
    /^What runs down the drains.*\n# · \(# − # drunk and eaten\)$/,
    (n = 0, v = 0, eaten = 0) => n * (v - eaten),
  ],
  [/^Between two fillings/, (n = 0, v = 0) => n * v],
  [/^No more can come/, (one = 0, other = 0) => min(one, other)],
  [/^The days that it lasts/, (has = 0, uses = 0) => has / uses],
  [/^How much of mixed water/, (m = 0, c = 0, h = 0, c2 = 0) => (m - c) / (h - c2)],
  [/^Hot water of all.*\n# · #$/, (n = 0, v = 0) => n * v],
  [
    /^Hot water of all.*\n# · \(# \+ # showers · # · #\)$/,
    (n = 0, v = 0, often = 0, each = 0, part = 0) => n * (v + often * each * part),
  ],
  [/^What the water of/, (v = 0, rho = 0) => v * rho],
  [/^The heat that goes into it/, (m = 0, k = 0) => m * 4184 * k],
  [/^How long the heater takes/, (joule = 0, watt = 0) => joule / watt],
  [/^Wanted at once/, (v = 0, part = 0, draws = 0) => v / part / draws],
  [/^What the store makes/, (v = 0, h = 0, m = 0, m2 = 0, c = 0) => (v * (h - m)) / (m2 - c)],
  [/^What the heater makes/, (watt = 0, rho = 0, k = 0) => watt / (rho * 4192 * k)],
  [
    /^What a metre of pipe lets out.*\n1 \/ \(ln/,
    (d3 = 0, d2 = 0, d = 0) => 1 / (ln(d3 / d2) / (2 * pi * 0.05) + 0.04 / (pi * d)),
  ],
  [/^What a metre of pipe lets out.*\nwithout/, (d = 0) => (pi * d) / 0.04],
  [
    /^How slowly the water follows the cold/,
    (rho = 0, d = 0, g = 0) => (rho * 4186.8 * pi * (d / 2) ** 2) / g,
  ],
  [/^Till it is at freezing/, (s = 0, whole = 0, rest = 0) => s * ln(whole / rest)],
  [/^The walls of its box/, (l = 0, w = 0, _l = 0, h = 0) => 2 * (l * w + l * h + w * h)],
  [/^What they let out.*\n# \/ 0\.04 m²K\/W/, (a = 0) => a / 0.04],
  [/^What they let out.*\n# \/ \(0\.04 m²K\/W \+ /, (a = 0, s = 0) => a / (0.04 + s / 0.05)],
  [/^What is in it, half full/, (v = 0, rho = 0) => 0.5 * v * rho],
  [/^How slowly it follows the cold/, (m = 0, g = 0) => (m * 4200) / g],
  [/^The air that must pass/, (one = 0, other = 0) => max(one, other)],
  [/^The bore for that/, (q = 0) => sqrt(((4 * q) / (0.6 * pi)) * sqrt(1.225 / (2 * 500)))],
  [/^What it needs at the least\nthe greater/, (one = 0, other = 0) => max(one, other)],
  [/^The fall of .* on level ground/, (h = 0, l = 0) => h / l],
  [
    /^What is left of it where the ground falls(?!.*\n.*not counted)/,
    (s = 0, p = 0) => (s - p) / (1 + s * p),
  ],
  [/^What the pump sucks up/, (h = 0, lost = 0) => max(0, h + lost)],
  [/^The column up to/, (rho = 0, h = 0) => rho * 9.80665 * h],
  [/^What the height takes/, (rho = 0, h = 0) => rho * 9.80665 * h],
  [/^What the outlet takes/, (p = 0, q = 0, qn = 0) => p * (q / qn) ** 2],
  [/^What the pump keeps up: the sum/, (one = 0, two = 0, three = 0) => one + two + three],
  [
    /^What the accumulator gives.*\n(?!.*takes no water)/,
    (v = 0, pre = 0, a = 0, on = 0, _a = 0, off = 0) => v * (pre + a) * (1 / (on + a) - 1 / (off + a)),
  ],
  [/^From one start to the next/, (v = 0, q = 0) => v / q],
  [/^What is left at the outlet/, (one = 0, two = 0, three = 0) => one - two - three],
  [/lets through at that: .*\n#/, (qn = 0, p = 0, pn = 0) => qn * sqrt(p / pn)],
  [/^What flows from both/, (one = 0, other = 0) => one + other],
  [/^How much of what .* should give/, (q = 0, qn = 0) => q / qn],
  [/^How much (?:hotter|warmer|cooler)/, (one = 0, other = 0) => one - other],
  [/^What runs off/, (v = 0, part = 0) => v * (1 + part)],
  [/^The wait/, (v = 0, q = 0) => v / q],
];

/** How near a sum by hand must come: constants in the words are rounded. */
const nearEnough = 2e-3;

const sumsOf = (findings: readonly Finding[]) =>
  findings.flatMap(({ working = [] }) =>
    working.flatMap((step) => {
      const numbers = (step.sum ?? []).flatMap((part) => (typeof part === 'string' ? [] : [part.value]));
      return byHand.flatMap(([words, of], at) =>
        words.test(wordsOf(step))
          ? [{ at, step, byHand: of(...numbers), result: step.result?.value ?? 0 }]
          : [],
      );
    }),
  );

function expectSums(findings: readonly Finding[]): void {
  for (const { step, byHand, result } of sumsOf(findings)) {
    const size = max(Math.abs(result), 1e-12);
    expect(Math.abs(byHand - result) / size, wordsOf(step)).toBeLessThan(nearEnough);
  }
}

test.each(examples)('every measured water finding of %s has a sound working', async (_, text) => {
  const worked = await workedOf(text);
  expect(worked.length).toBeGreaterThan(8);
  worked.forEach(expectSound);
  expectSums(worked);
});

describe.each(own)('%s', (_, rule, text, words) => {
  test(`${rule} comes to what was measured`, async () => {
    const worked = await workedOf(text);
    worked.forEach(expectSound);
    expectSums(worked);
    const steps = worked.filter((finding) => finding.rule === rule).flatMap(({ working = [] }) => working);
    expect(steps.map(wordsOf).join('\n')).toMatch(words);
  });
});

test('every kind of sum was worked out again, and every kind of finding was seen', async () => {
  const all = (
    await Promise.all(
      [...examples, ...own.map(([, , text]) => ['', text] as const)].map(([, text]) => workedOf(text)),
    )
  ).flat();
  const seen = new Set(sumsOf(all).map(({ at }) => at));
  expect(byHand.filter((_, at) => !seen.has(at)).map(([words]) => String(words))).toEqual([]);
  const speaking = rules.filter(({ topic, work }) => topic === 'water' && work).map(({ id }) => id);
  expect([...new Set(all.map(({ rule }) => rule))].sort()).toEqual(speaking.toSorted());
});

/** From the table alone: friction factor in per cent, length, bore and coefficient, at the flow in the words. */
test('what a pipe loses is what its row says', async () => {
  for (const finding of await workedOf(twoOutlets(branches)))
    for (const { parts, sum = [] } of finding.working ?? []) {
      if (!parts?.columns.includes('ΣK')) continue;
      const numbers = sum.flatMap((part) => (typeof part === 'string' ? [] : [part]));
      const common = numbers.find(({ kind }) => kind === 'flow')?.value;
      for (const { values, adds } of parts.rows) {
        const [q = 0, l = 0, d = 0, f = 0, k = 0] = [
          ...(common === undefined ? [] : [common]),
          ...values.map(({ value }) => value),
        ];
        const speed = (4 * q) / (pi * d ** 2);
        const heads = ((f * l) / d + k) * speed ** 2;
        const perHead = adds.kind === 'length' ? 1 / (2 * 9.80665) : 999.7 / 2;
        expect(heads * perHead).toBeCloseTo(adds.value, adds.kind === 'length' ? 6 : 0);
      }
    }
});

/** One unit in one sum: pressures of water are told in bars however small. */
test('no sum of the water mixes pressures that are told in different units', async () => {
  for (const finding of await workedOf(curlew))
    for (const { sum = [] } of finding.rule === 'water.flow' ? (finding.working ?? []) : [])
      expect(sum.some((part) => typeof part !== 'string' && part.kind === 'pressure')).toBe(false);
});
