import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Finding, Step } from '../../src/engine/finding.ts';
import type { Kind } from '../../src/engine/measure.ts';
import { gasPlan, hobInput } from '../support/gas-plan.ts';
import { workedBy } from '../support/worked.ts';

/*
 * Workings of gas: in the examples, and where those do not come. The sums are done again from the numbers in them.
 */

const measuring = [
  'gas.cylinders',
  'gas.days',
  'gas.drop-out-distances',
  'gas.drop-outs',
  'gas.exhausts',
  'gas.locker-vents',
  'gas.off-take',
  'gas.pipe-drop',
  'gas.pipes-and-hoses',
  'gas.regulator',
];

/** What they hold it against stands in the step before the last. */
const limitBeforeLast = [
  'gas.cylinders',
  'gas.days',
  'gas.drop-outs',
  'gas.locker-vents',
  'gas.off-take',
  'gas.pipes-and-hoses',
  'gas.regulator',
];
/** The limit comes first: the way to the distance is longer. */
const limitFirst = ['gas.drop-out-distances', 'gas.exhausts'];

const workedOf = workedBy(({ topic }) => topic === 'gas');

const sumOf = ({ sum = [] }: Step): string =>
  sum.map((part) => (typeof part === 'string' ? part : '#')).join('');

const near = (value: number | undefined, wanted: number | undefined, what: string): void => {
  const size = Math.abs(wanted ?? 0) + 1e-12;
  expect((value ?? Number.NaN) / size, what).toBeCloseTo((wanted ?? 0) / size, 9);
};

function isSound({ rule, subject, measured, limit, working = [] }: Finding): void {
  const what = `${rule} ${subject}`;
  expect(working.length, what).toBeGreaterThan(0);
  const last = working.at(-1)?.result;
  expect(last?.kind, what).toBe(measured?.kind);
  near(last?.value, measured?.value, what);
  const compared = limitBeforeLast.includes(rule)
    ? working.at(-2)?.result
    : limitFirst.includes(rule)
      ? working[0]?.result
      : undefined;
  if (limit && compared) near(compared.value, limit.measure.value, `${what}: limit`);
  if (limit && limitBeforeLast.includes(rule)) expect(compared, what).toBeDefined();
  for (const { result, parts } of working) {
    if (!parts) continue;
    near(
      parts.rows.reduce((sum, { adds }) => sum + adds.value, 0),
      result?.value,
      `${what}: parts`,
    );
    for (const { values } of parts.rows) expect(values, what).toHaveLength(parts.columns.length - 1);
  }
}

const examples = ['curlew', 'oak', 'crowded', 'thin-cables', 'tangled', 'winter'] as const;

test.each(examples)('every gas finding of %s that measures shows how', async (example) => {
  const worked = await workedOf(readFileSync(`examples/curlew/${example}.yaml`, 'utf8'));
  expect([...new Set(worked.map(({ rule }) => rule))].sort()).toEqual(measuring);
  for (const finding of worked) isSound(finding);
});

const wordsOf = ({ working = [] }: Finding): string =>
  working.map((step) => `${step.what} ${sumOf(step)}`).join('\n');

const held = (contents: string) => `contents: ${contents}, fixings: {count: 2, each: 100 kg}`;
const pipes = (keys: string, hob?: string) =>
  gasPlan({
    gas: `  pipes: {to hob: {from: regulator, to: hob, ${keys}}}`,
    ...(hob !== undefined && { hob }),
  });
const winter = (low: string, parts: Parameters<typeof gasPlan>[0] = {}) =>
  gasPlan({ ...parts, living: `winter_low: ${low}` });
const place = (fromFront: string, aboveFloor = '0 mm') =>
  `{from_front: ${fromFront}, from_right: 200 mm, above_floor: ${aboveFloor}}`;
const fixedTank = (contents: string) => ({
  cylinder: '',
  tanks: `  tank: {contents: ${contents}, holds: 40 L, size: {length: 800 mm, width: 300 mm, height: 300 mm}, at: {from_front: 1500 mm, from_left: 0 mm, above_floor: -320 mm}}`,
  gas: '  stored_in: fixed tank',
});
const heater = '    heater: {use: room heating, input: 150 g/h}';
const boiler = '    boiler: {use: water heating, input: 1.5 kW, heating_value: gross}';

/** The Curlew, with its air heater on gas. */
const warmedByGas = readFileSync('examples/curlew/curlew.yaml', 'utf8')
  .replace('output: 2 kW, heated_by: diesel', 'output: 2 kW, heated_by: gas')
  .replace(
    /^ {4}water heater: \{thing: water heater, use: water heating/m,
    '    room heater: {thing: air heater, use: room heating, input: 2.5 kW, heating_value: net}\n$&',
  );

const cases: readonly (readonly [string, string, string, RegExp])[] = [
  ['a cylinder too large', 'gas.cylinders', gasPlan({ cylinder: held('propane, holds: 20 kg') }), /in each/],
  [
    'a cylinder in litres',
    'gas.cylinders',
    gasPlan({ cylinder: held('propane, holds: 60 L'), gas: '  stored_in: cylinders' }),
    /V·0\.8·ρ # · # · # of liquid propane/,
  ],
  [
    'three cylinders',
    'gas.cylinders',
    gasPlan({
      cylinder: held('propane, holds: 6 kg'),
      tanks: ['second', 'third']
        .map((name) => `  ${name}: {${held('propane, holds: 6 kg')}, in: locker}`)
        .join('\n'),
    }),
    /cylinder, second and third/,
  ],
  [
    'days of two cylinders',
    'gas.days',
    gasPlan({
      tanks: '  second: {contents: propane, holds: 11 L, in: locker}',
      living: 'cooking: 1 h, days_between_gas_refills: 14',
    }),
    /in all of them together/,
  ],
  [
    'days of a refrigerator and a boiler',
    'gas.days',
    gasPlan({
      appliances: `${boiler}\n    fridge: {use: refrigerator, input: 20 g/h}`,
      living: 'cooking: 1 h, days_between_gas_refills: 14, hot_litres_per_person_day: 10 L',
      rest: `people: {sleepers: [{stature: 1.7 m}]}
water: {cold: 10 degC, heater: {kind: storage, temperature: 60 degC, heated_by: gas}}`,
    }),
    /as usual since the plan does not say[\s\S]*fridge, refrigerator: .*as typed/,
  ],
  [
    'days of a room heater',
    'gas.days',
    warmedByGas,
    /room heater, room heating: m = Q .*the heat of a mean day in [A-Z][a-z]+, the month that takes most/,
  ],
  [
    'days of two that share the heat',
    'gas.days',
    warmedByGas.replace(
      '    room heater: {',
      '    other heater: {use: room heating, input: 1 kW, heating_value: net}\n    room heater: {',
    ),
    /appliances that share it/,
  ],
  [
    'an exhaust too near to a drop-out',
    'gas.drop-out-distances',
    gasPlan({
      gas: `  drop_outs: {low: {in: cupboard, area: 20 cm2, at: ${place('500 mm')}}}`,
      van: { exhaust: place('999 mm', '-200 mm') },
    }),
    /to an exhaust/,
  ],
  [
    'a waste tank beside a drop-out',
    'gas.drop-out-distances',
    gasPlan({
      gas: `  drop_outs: {low: {in: cupboard, area: 20 cm2, at: ${place('500 mm')}}}`,
      tanks:
        '  waste: {contents: waste, holds: 40 L, size: {length: 500 mm, width: 400 mm, height: 200 mm}, at: {from_front: 700 mm, from_right: 0 mm, above_floor: -200 mm}}',
      rest: 'water: {}',
      van: { energy: 'electric' },
    }),
    /lies between its faces/,
  ],
  [
    'a drop-out too high',
    'gas.drop-outs',
    gasPlan({ gas: `  drop_outs: {low: {in: cupboard, area: 20 cm2, at: ${place('500 mm', '21 mm')}}}` }),
    /above the bottom of cupboard/,
  ],
  [
    'an exhaust near the vent of the locker',
    'gas.exhausts',
    gasPlan({
      gas: `  locker: {thing: locker, vent: ${place('200 mm', '-100 mm')}}`,
      van: { exhaust: place('480 mm', '-100 mm') },
    }),
    /down to an exhaust/,
  ],
  [
    'half of the vents high up',
    'gas.locker-vents',
    gasPlan({ gas: '  locker: {thing: locker, low_vent: 60 cm2, high_vent: 55 cm2}' }),
    /the smaller of both counts/,
  ],
  [
    'vents under US codes',
    'gas.locker-vents',
    gasPlan({ gas: '  locker: {thing: locker, low_vent: 200 cm2}', codes: 'us' }),
    /Wanted low, and again high/,
  ],
  [
    'vents under no codes',
    'gas.locker-vents',
    gasPlan({ gas: '  locker: {thing: locker, low_vent: 99 cm2}' }).replace('codes: uk\n', ''),
    /What there is low down/,
  ],
  [
    'butane below its boiling point',
    'gas.off-take',
    winter('-8 degC', { cylinder: held('butane, holds: 6 kg') }),
    /boils/,
  ],
  [
    'butane that starves',
    'gas.off-take',
    winter('3 degC', { cylinder: held('butane, holds: 6 kg') }),
    /feeds the regulator/,
  ],
  [
    'a cylinder smaller than any that is printed',
    'gas.off-take',
    winter('20 degC', { cylinder: held('propane, holds: 3 kg') }),
    /of its smallest · # \/ #/,
  ],
  [
    'two cylinders for hours',
    'gas.off-take',
    winter('-8 degC', {
      appliances: `${heater}\n${boiler}`,
      tanks: '  second: {contents: propane, holds: 6 kg, in: locker}',
      gas: '  in_use: 2',
      hob: 'use: cooking, input: 1 g/h',
    }),
    /without a pause[\s\S]*half of the time[\s\S]*while they burn for hours/,
  ],
  ['a fixed tank', 'gas.off-take', winter('-8 degC', fixedTank('propane')), /D·L·K/],
  ['a fixed tank in deep frost', 'gas.off-take', winter('-25 degC', fixedTank('propane')), /n·P·k/],
  [
    'a smooth pipe',
    'gas.pipe-drop',
    pipes('material: copper, size: 6 mm, wall: 1 mm, length: 12 m, bends: 1, tees: 2'),
    /bend · #.*tees · #/,
  ],
  [
    'a small flow',
    'gas.pipe-drop',
    pipes('bore: 8 mm, length: 3 m', 'use: cooking, input: 2 g/h'),
    /laminar flow/,
  ],
  [
    'a wide pipe with a large flow',
    'gas.pipe-drop',
    pipes('bore: 30 mm, length: 3 m', 'use: cooking, input: 60 kg/h'),
    /formula of Pole/,
  ],
  [
    'corrugated tube beyond its table',
    'gas.pipe-drop',
    pipes('material: corrugated stainless steel, size: 12 mm, length: 10 m, bends: 100'),
    /where the table ends/,
  ],
  [
    'a wall from its bore',
    'gas.pipes-and-hoses',
    pipes('material: copper, size: 8 mm, bore: 6.6 mm'),
    /between outside and inside/,
  ],
  [
    'another pressure',
    'gas.regulator',
    gasPlan({
      gas: '  regulator: {pressure: 30 mbar, capacity: 200 g/h}',
      hob: `use: cooking, ${hobInput}, pressure: 50 mbar`,
    }),
    /of the higher lie between them/,
  ],
  [
    'an unusual pressure',
    'gas.regulator',
    gasPlan({ gas: '  regulator: {pressure: 60 mbar}' }),
    /What new vehicles have/,
  ],
];

describe.each(cases)('%s', (_, rule, text, words) => {
  test(`${rule} shows how`, async () => {
    const worked = (await workedOf(text)).filter((each) => each.rule === rule);
    expect(worked.length).toBeGreaterThan(0);
    expect(worked.map(wordsOf).join('\n')).toMatch(words);
    for (const finding of worked) isSound(finding);
  });
});

/** The steps of all examples and cases together. */
async function allSteps(): Promise<readonly Step[]> {
  const texts = [
    readFileSync('examples/curlew/curlew.yaml', 'utf8'),
    readFileSync('examples/curlew/winter.yaml', 'utf8'),
    ...cases.map(([, , text]) => text),
  ];
  const found = await Promise.all(texts.map(workedOf));
  return found.flat().flatMap(({ working = [] }) => working);
}

const stepsThat = async (pattern: RegExp): Promise<readonly Step[]> => {
  const steps = (await allSteps()).filter(({ what }) => pattern.test(what));
  expect(steps.length).toBeGreaterThan(0);
  return steps;
};

const numbersIn = ({ sum = [] }: Step, kind?: Kind): readonly number[] =>
  sum.flatMap((part) =>
    typeof part === 'string' || (kind !== undefined && part.kind !== kind) ? [] : [part.value],
  );
describe('by hand, from the numbers that are printed', () => {
  test('what is lost in a tube', async () => {
    const laws = new Set<string>();
    for (const step of await stepsThat(/k·L·Q\^a/)) {
      const [taken = 0, litres = 0, flowM3S = 0, k = 0, longMm = 0, litresAMinute = 0, boreMm = 0] =
        numbersIn(step);
      const [, flowPower = '', borePower = '', by = ''] =
        /#\^([\d.]+) \/ #\^([\d.]+) Pa.*by the ([a-z- P]+),/.exec(sumOf(step)) ?? [];
      laws.add(by);
      near(taken * litres, flowM3S, 'the volume of the vapour');
      near(flowM3S * 60_000, litresAMinute, 'litres a minute');
      const lostPa = (k * longMm * litresAMinute ** Number(flowPower)) / boreMm ** Number(borePower);
      expect(lostPa / (step.result?.value ?? 0)).toBeCloseTo(1, 3);
    }
    expect([...laws].sort()).toEqual(['formula of Pole', 'laminar flow', 'low-pressure equation']);
  });

  test('what is lost in corrugated tube', async () => {
    for (const step of await stepsThat(/corrugated tube of/)) {
      const [tablePa = 0] = numbersIn(step, 'pressure');
      const [, flowM3S = 0, capacityM3S = 1] = numbersIn(step, 'flow');
      const [longM = 1, printedM = 1] = numbersIn(step, 'length');
      near(tablePa * (flowM3S / capacityM3S) ** 2 * (longM / printedM), step.result?.value, 'drop');
    }
  });

  test('a length with its fittings', async () => {
    for (const step of await stepsThat(/^The length of/)) {
      const [tubeM = 0, ...addedM] = numbersIn(step, 'length');
      const counts = numbersIn(step, 'count');
      near(
        addedM.reduce((sum, each, at) => sum + each * (counts[at] ?? 0), tubeM),
        step.result?.value,
        'length',
      );
    }
  });

  test('what the cold leaves, and what the cylinders give', async () => {
    for (const step of await stepsThat(/^What the cold leaves/)) {
      const [ambient = 0, boils = 0, table = 0] = numbersIn(step);
      const k = Math.max(0, Math.min(1, (ambient - boils) / (table - boils)));
      near(k, step.result?.value, 'k');
    }
    for (const step of await stepsThat(/n·ṁ·k/)) {
      const [n = 0, each = 0, k = 0] = numbersIn(step);
      near(n * each * k, step.result?.value, 'off-take');
    }
    for (const step of await stepsThat(/P = D·L·K/)) {
      const [across = 0, along = 0, filling = 0] = numbersIn(step);
      near(across * along * filling * 0.293071, step.result?.value, 'heat of a tank');
    }
    for (const step of await stepsThat(/n·P·k/)) {
      const [n = 0, heatW = 0, k = 0, joules = 1] = numbersIn(step);
      near((n * heatW * k) / joules, step.result?.value, 'gas of a tank');
    }
    for (const step of await stepsThat(/above the boiling point/)) {
      const [low = 0, boils = 0] = numbersIn(step);
      near(low - boils, step.result?.value, 'above boiling');
    }
  });

  test('what burns for hours takes its part of what is given', async () => {
    for (const { parts } of await stepsThat(/for as long as it burns/))
      for (const { values, adds } of parts?.rows ?? [])
        near((values[0]?.value ?? 0) / (values[1]?.value ?? 1), adds.value, 'part');
    for (const step of await stepsThat(/^What is given for so long/)) {
      const [takes = 0, part = 1] = numbersIn(step);
      near(takes / part, step.result?.value, 'given');
    }
  });

  test('what an appliance takes by its plate', async () => {
    for (const step of await stepsThat(/^What (?:all|the) appliances .*ṁ = P/)) {
      const joules = numbersIn(step, 'energy');
      for (const { values, adds } of step.parts?.rows ?? []) {
        const [typed] = values;
        const candidates =
          typed?.kind === 'power' ? joules.map((each) => typed.value / each) : [typed?.value ?? 0];
        expect(Math.min(...candidates.map((each) => Math.abs(each / adds.value - 1)))).toBeLessThan(1e-9);
      }
    }
  });

  test('the gas of a day, and the days', async () => {
    for (const step of await stepsThat(/m = ṁ·t/)) {
      const [rate = 0, seconds = 0] = numbersIn(step);
      near(rate * seconds, step.result?.value, step.what);
    }
    for (const step of await stepsThat(/m = Q \/ \(η·h\)/)) {
      const [heatJ = 0, efficiency = 1, joules = 1, sharedBy = 1] = numbersIn(step);
      near(heatJ / (efficiency * joules) / sharedBy, step.result?.value, step.what);
    }
    for (const step of await stepsThat(/Q = m·c·ΔT/)) {
      const [massKg = 0, , wattHours = 0, degrees = 0] = numbersIn(step);
      near(massKg * wattHours * 3600 * degrees, step.result?.value, step.what);
    }
    for (const step of await stepsThat(/^How many days/)) {
      const [heldKg = 0, burntKg = 1] = numbersIn(step);
      near(heldKg / burntKg, step.result?.value, step.what);
    }
    for (const step of await stepsThat(/V·0\.8·ρ/)) {
      const [insideM3 = 0, fill = 0, liquid = 0] = numbersIn(step);
      near(insideM3 * fill * liquid, step.result?.value, step.what);
    }
  });

  test('a distance: each gap, then the straight line', async () => {
    const gaps = await stepsThat(/along the van|^Across the van|^In height/);
    for (const step of gaps) {
      const [one = 0, other = 0] = numbersIn(step);
      near(sumOf(step).includes('between') ? 0 : one - other, step.result?.value, step.what);
    }
    for (const step of await stepsThat(/^In a straight line/))
      near(Math.hypot(...numbersIn(step)), step.result?.value, step.what);
  });

  test('areas and walls', async () => {
    for (const step of await stepsThat(/^The floor of the locker/)) {
      const [along = 0, across = 0] = numbersIn(step);
      near(along * across, step.result?.value, step.what);
    }
    for (const step of await stepsThat(/^Wanted low/)) {
      const [part = 0, floorM2 = 0, , leastM2 = 0] = numbersIn(step);
      near(Math.max(part * floorM2, leastM2), step.result?.value, step.what);
    }
    for (const step of await stepsThat(/^The wall that is asked for/)) {
      const [part = 0, outsideMm = 0] = numbersIn(step);
      near((part * outsideMm) / 1000, step.result?.value, step.what);
    }
    for (const step of await stepsThat(/^The wall that is left/)) {
      const [outsideMm = 0, insideMm = 0] = numbersIn(step);
      near((outsideMm - insideMm) / 2000, step.result?.value, step.what);
    }
  });
});

test('every working names a place of the plan', async () => {
  const text = readFileSync('examples/curlew/curlew.yaml', 'utf8');
  for (const { working = [], rule } of await workedOf(text))
    expect(
      working.some(({ paths = [] }) => paths.length > 0),
      rule,
    ).toBe(true);
});
