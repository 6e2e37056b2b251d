import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Finding, Step } from '../../src/engine/finding.ts';
import type { Measure } from '../../src/engine/measure.ts';
import type { Phrase } from '../../src/engine/phrase.ts';
import { words } from '../support/check.ts';
import { electricalVan } from '../support/electrical-plan.ts';
import { energyPlan } from '../support/energy-plan.ts';
import { floorPlan } from '../support/floor-plan.ts';
import { plan } from '../support/test-van.ts';
import { workedBy } from '../support/worked.ts';

/*
 * The workings of everything electrical: that each comes to what was measured, and that the sums it prints are the ones
 * that lead there, done again from the printed words alone.
 */

const examples = ['curlew', 'oak', 'crowded', 'tangled', 'thin-cables', 'winter'] as const;
const exampleText = (name: string): string => readFileSync(`examples/curlew/${name}.yaml`, 'utf8');
const curlew = exampleText('curlew');

/** The Curlew with some of its words replaced. */
const changed = (...changes: readonly (readonly [string, string])[]): string =>
  changes.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`the Curlew has no "${from}"`);
    return text.replace(from, to);
  }, curlew);

const workedOf = workedBy(({ topic }) => topic === 'electrical');

// --- The sums, done by hand ---

/** In what a pocket calculator is fed with: ampere-hours, watt-hours, hours, °C, mm²; the others in SI. */
function typedIn({ kind, value }: Measure): number {
  if (kind === 'charge' || kind === 'energy' || kind === 'duration') return value / 3600;
  if (kind === 'temperature') return value - 273.15;
  if (kind === 'cross-section') return value * 1e6;
  return value;
}

/** What is calculated in a sum, in figures and signs alone: without its words, what stands before “=” and after “;” or “,”. */
function calculationOf(sum: Phrase): string {
  const values = sum.flatMap((part) => (typeof part === 'string' ? [] : [typedIn(part)]));
  const text = sum.map((part) => (typeof part === 'string' ? part : '#')).join('');
  const bare = text
    .replace(/\([^#\d()]*\)/g, '')
    .replace(/[;,].*$/s, '')
    .replace(/^.*=/s, '')
    .replace(/([\d.]+) mV/g, '($1 / 1000)')
    .replace(/\p{L}+/gu, '')
    .replaceAll('/ ·', '·')
    .replaceAll('−', '-')
    .replaceAll('·', '*')
    .replace(/\s+/g, '');
  const given = values.values();
  // Twelve digits, and none of them an exponent.
  return bare.replace(/#/g, () => `(${(given.next().value ?? Number.NaN).toFixed(12)})`);
}

/** Sums of products with brackets; undefined for what is no calculation. */
function calculated(text: string): number | undefined {
  let at = 0;
  const next = (sign: string): boolean => {
    if (text.at(at) !== sign) return false;
    at += 1;
    return true;
  };
  const value = (): number => {
    if (next('-')) return -value();
    if (next('(')) {
      const inner = sum();
      return next(')') ? inner : Number.NaN;
    }
    const [digits = ''] = /^[\d.]+/.exec(text.slice(at)) ?? [];
    at += digits.length;
    return digits === '' ? Number.NaN : Number(digits);
  };
  const product = (): number => {
    let result = value();
    for (;;)
      if (next('*')) result *= value();
      else if (next('/')) result /= value();
      else return result;
  };
  const sum = (): number => {
    let result = product();
    for (;;)
      if (next('+')) result += product();
      else if (next('-')) result -= product();
      else return result;
  };
  const found = sum();
  return at === text.length && Number.isFinite(found) ? found : undefined;
}

const isCalculation = (text: string): boolean => /[\d)][-+*/]/.test(text);

interface Redone {
  readonly rule: string;
  readonly what: string;
  readonly said: string;
  readonly byHand: number;
  readonly shown: number;
}

function redone({ rule, working = [] }: Finding): readonly Redone[] {
  return working.flatMap(({ what, sum, result, parts }: Step): Redone[] => {
    if (!sum || !result || parts) return [];
    const calculation = calculationOf(sum);
    const byHand = isCalculation(calculation) ? calculated(calculation) : undefined;
    return byHand === undefined ? [] : [{ rule, what, said: words(sum), byHand, shown: typedIn(result) }];
  });
}

/** A month has 30.436875 days; the words have 30.44. */
const precisionOf = ({ said }: Redone): number => (said.includes('30.44') ? 2e-4 : 1e-9);

// --- The contract of every working ---

/** What they are held against is no figure of the plan: half of all energy, nothing short, two fuses 1.6 times apart. */
const withoutLimitStep = [
  'electrical.alternator-dependence',
  'electrical.autonomy',
  'electrical.discrimination',
  'electrical.energy-year',
  'electrical.voltage-drop',
];

function expectSound(finding: Finding): void {
  const { rule, subject, measured, limit, working = [] } = finding;
  const name = `${rule}, ${subject}`;
  expect(working.length, name).toBeGreaterThan(0);
  const last = working.at(-1)?.result;
  expect(last?.kind, name).toBe(measured?.kind);
  const scale = Math.abs(measured?.value ?? 0) + 1e-12;
  expect((last?.value ?? 0) / scale, name).toBeCloseTo((measured?.value ?? 0) / scale, 9);
  if (limit && !withoutLimitStep.includes(rule)) {
    const { kind, value } = limit.measure;
    const before = working
      .slice(0, -1)
      .flatMap(({ result }) => (result?.kind === kind ? [result.value] : []));
    expect(
      before.some((each) => Math.abs(each - value) <= 1e-9 * Math.abs(value)),
      `${name} comes to its limit of ${value}: ${before.join(', ')}`,
    ).toBe(true);
  }
  for (const { result, parts } of working) {
    if (!parts) continue;
    const size = parts.rows.reduce((total, { adds }) => total + Math.abs(adds.value), 1e-12);
    const sum = parts.rows.reduce((total, { adds }) => total + adds.value, 0);
    expect(sum / size, name).toBeCloseTo((result?.value ?? 0) / size, 9);
    for (const row of parts.rows) {
      expect(row.values, name).toHaveLength(parts.columns.length - 1);
      expect(row.adds.kind, name).toBe(result?.kind);
    }
  }
  for (const each of redone(finding)) {
    const off = Math.abs(each.byHand - each.shown) / (Math.abs(each.shown) + 1e-9);
    expect(
      off,
      `${each.rule}, ${each.what}: ${each.said} makes ${each.byHand}, not ${each.shown}`,
    ).toBeLessThan(precisionOf(each));
  }
}

describe.each(examples)('every electrical working of %s', (example) => {
  test('is sound', async () => {
    const worked = await workedOf(exampleText(example));
    expect(worked.length).toBeGreaterThan(15);
    for (const finding of worked) expectSound(finding);
  });
});

// --- Other branches ---

const lead = [
  'chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 200 Ah, internal_resistance: 16 mohm, charge_limit: 100 A, discharge_limit: 150 A, surge_limit: 250 A, charges_from: -20 degC',
  'chemistry: AGM, voltage: 6 V, in_series: 2, capacity: 200 Ah, rating_time: 20 h',
] as const;
const twoBatteries = [
  'capacity: 200 Ah, internal_resistance: 16 mohm, charge_limit: 100 A, discharge_limit: 150 A, surge_limit: 250 A, charges_from: -20 degC',
  'capacity: 100 Ah, in_parallel: 2, internal_resistance: 16 mohm, charge_limit: 50 A, discharge_limit: 40 A, surge_limit: 70 A',
] as const;
const switching = ['kind: MPPT, current_limit: 40 A', 'kind: PWM, current_limit: 40 A'] as const;
const noCoefficient = [', voltage_per_kelvin: -65 mV/K', ''] as const;
const wet = (fromFront: number, fromLeft: number) =>
  floorPlan(
    {},
    {
      shower: { at: [0, 0], size: [800, 800, 1900], more: 'is: shower' },
      cupboard: { at: [fromFront, fromLeft], size: [300, 300, 100] },
    },
    {},
    `electrical:
  voltage: 12 V
  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 200 Ah, thing: cupboard}
`,
  );
const withMains = (shore: string, circuit: string, codes = 'uk') =>
  plan(
    `fixtures: {box: {mass: 1 kg}}
electrical:
  voltage: 12 V
  circuits: {feed: {from: battery, to: box}}
  shore: {current: 10 A, residual_current: 30 mA, double_pole: true, ${shore}}
  mains_circuits: {sockets: {to: box, from: shore, residual_current: 30 mA, ${circuit}}}`,
    {},
    codes,
  );
const withArray = (watts: number) =>
  `  solar: {roof: {modules: 1, power: ${watts} W, open_circuit: 22 V, short_circuit: 6.3 A}}`;
const cold = (at: string, chargers = 20) =>
  plan(`electrical:
  voltage: 12 V
  coldest: ${at}
  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 100 Ah}
  shore: {current: 10 A, charger: {current: ${chargers} A}}`);

const branches: readonly (readonly [name: string, rule: string, text: string, words: RegExp])[] = [
  ['guidance for lead', 'battery-current', changed(lead), /All that is on at once/],
  ['charging by guidance', 'charge-current', changed(lead), /A for each Ah of AGM/],
  ['two batteries', 'battery-current', changed(twoBatteries), /#.*·.*in parallel/],
  ['two batteries', 'charge-current', changed(twoBatteries), /in parallel/],
  ['two batteries', 'fuse-breaking', changed(twoBatteries), /in series \/.*in parallel/],
  ['resistance from the catalogue', 'fuse-breaking', changed(lead), /least that the catalogue has/],
  [
    'a charger too large alone',
    'charge-current',
    changed(['charge_limit: 100 A', 'charge_limit: 25 A']),
    /What the charger brings/,
  ],
  ['too much for the cold', 'cold-charging', cold('2 degC'), /What the table allows/],
  ['no charge in the cold', 'cold-charging', cold('-5 degC'), /What the charger brings/],
  [
    'chargers through a point',
    'distribution',
    changed(
      ['kind: busbar, rating: 250 A', 'kind: busbar, rating: 80 A'],
      ['power: 1000 W, surge', 'power: 300 W, surge'],
    ),
    /chargers push through busbar/,
  ],
  [
    'a fuse too large for its point',
    'distribution',
    changed(['kind: fuse box, rating: 100 A', 'kind: fuse box, rating: 50 A']),
    /fuse of panel feed before it lets through/,
  ],
  [
    'a fuse that its feeder asks for',
    'fuse-rating',
    changed(['type: large bolt-in, rating: 125 A', 'type: large bolt-in, rating: 100 A']),
    /What the fuse should have/,
  ],
  [
    'a fuse for what hangs behind it',
    'fuse-rating',
    changed(['type: class T, rating: 200 A', 'type: class T, rating: 110 A']),
    /carries in steady use, by what hangs behind it/,
  ],
  [
    'a fuse for chargers',
    'fuse-rating',
    changed(
      ['type: class T, rating: 200 A', 'type: class T, rating: 110 A'],
      ['power: 1000 W, surge: 1600 W', 'power: 300 W, surge: 400 W'],
    ),
    /chargers push through main lead/,
  ],
  [
    'a fuse that its cable does not bear',
    'fuse-rating',
    changed([
      'load: 48 W, hours: 7 h, hours_at: 25 degC, conductor: 4 mm2',
      'load: 48 W, hours: 7 h, hours_at: 25 degC, conductor: 0.75 mm2',
    ]),
    /What fridge may carry/,
  ],
  [
    'no fuse of its own',
    'fuse-rating',
    changed([', run: fridge supply, fuse: {type: blade, rating: 10 A}', ', run: fridge supply']),
    /which has none of its own/,
  ],
  [
    'a small gauge',
    'fuse-rating',
    changed([
      ', conductor: 1.5 mm2, run: light supply, fuse: {type: blade, rating: 5 A}',
      ', conductor: 18 AWG, run: light supply, fuse: {type: blade, rating: 10 A}',
    ]),
    /What US rules let|may carry/,
  ],
  [
    'a fuse in a sheath',
    'fuse-distance',
    changed(['rating: 200 A, from_source: 100 mm', 'rating: 200 A, from_source: 950 mm, sheathed: true']),
    /in a sheath all the way/,
  ],
  [
    'too much voltage for its fuses',
    'fuse-breaking',
    changed(
      ['voltage: 12.8 V, capacity: 200 Ah', 'voltage: 12.8 V, in_series: 4, capacity: 200 Ah'],
      ['  voltage: 12 V\n', '  voltage: 48 V\n'],
    ),
    /is made for/,
  ],
  [
    'a coiled lead',
    'hook-up',
    changed(
      ['lead: {length: 25 m', 'lead: {coiled: true, length: 25 m'],
      ['shore: {current: 10 A', 'shore: {current: 16 A'],
    ),
    /four layers/,
  ],
  ['a long lead', 'hook-up', changed(['lead: {length: 25 m', 'lead: {length: 28 m']), /How long it is/],
  [
    'a lead too thin',
    'hook-up',
    changed(['lead: {length: 25 m, conductor: 2.5 mm2', 'lead: {length: 25 m, conductor: 1.5 mm2']),
    /row for plugs/,
  ],
  [
    'an inverter far away',
    'inverter',
    changed([
      'conductor: 35 mm2, insulation: 90 degC, length: 0.7 m',
      'conductor: 10 mm2, insulation: 90 degC, length: 3 m',
    ]),
    /What is left at its terminals/,
  ],
  [
    'an inverter that cannot start',
    'inverter',
    changed([
      'conductor: 35 mm2, insulation: 90 degC, length: 0.7 m',
      'conductor: 2.5 mm2, insulation: 90 degC, length: 1 m',
    ]),
    /The most that can come through it/,
  ],
  [
    'bonding too thin',
    'mains',
    withMains('breaker: 10 A, bonding: 2.5 mm2', 'conductor: 1.5 mm2, breaker: 10 A'),
    /bonding the van/,
  ],
  [
    'bonding in the US',
    'mains',
    withMains('breaker: 10 A, bonding: 4 mm2', 'conductor: 1.5 mm2, breaker: 10 A', 'us'),
    /bonding the van/,
  ],
  [
    'a breaker above the supply',
    'mains',
    withMains('breaker: 16 A, bonding: 4 mm2', 'conductor: 2.5 mm2, breaker: 10 A'),
    /What the supply gives/,
  ],
  [
    'mains too thin',
    'mains',
    withMains('breaker: 10 A, bonding: 4 mm2', 'conductor: 1 mm2, breaker: 6 A'),
    /least for mains/,
  ],
  [
    'a breaker too large',
    'mains',
    withMains('breaker: 10 A, bonding: 4 mm2', 'conductor: 1.5 mm2, breaker: 16 A'),
    /carries at 30 °C/,
  ],
  [
    'a breaker far too large',
    'mains',
    withMains('breaker: 10 A, bonding: 4 mm2', 'conductor: 1.5 mm2, breaker: 40 A'),
    /in conduit/,
  ],
  [
    'the breaker of the inlet',
    'mains',
    withMains('breaker: 10 A, bonding: 4 mm2', 'conductor: 1.5 mm2'),
    /which is the one before sockets/,
  ],
  ['a controller that switches', 'solar-current', changed(switching), /In the brightest light/],
  [
    'the cable of one that switches',
    'solar-current',
    changed(
      switching,
      ['conductor: 10 mm2, insulation: 90 degC, length: 0.8 m', 'conductor: 2.5 mm2, length: 0.8 m'],
      ['kind: PWM, current_limit: 40 A', 'kind: PWM, current_limit: 20 A'],
    ),
    /1\.25 times that/,
  ],
  [
    'the cable of one that tracks',
    'solar-current',
    changed([
      'conductor: 10 mm2, insulation: 90 degC, length: 0.8 m',
      'conductor: 6 mm2, insulation: 90 degC, length: 0.8 m',
    ]),
    /1\.25 · I_max/,
  ],
  [
    'modules without a coefficient',
    'solar-voltage',
    changed(noCoefficient, ['modules: 2, power', 'modules: 2, in_series: 2, power']),
    /by the table for silicon/,
  ],
  [
    'an inverter that is never off',
    'standing-loss',
    changed(['idle: 8 W', 'idle: 8 W, always_on: true']),
    /watts are divided/,
  ],
  ['energy short on usual days', 'energy-year', energyPlan(), /on the usual days of December/],
  [
    'energy short on dull days',
    'energy-year',
    energyPlan({
      battery: '{chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 60 Ah}',
      more: withArray(1000),
    }),
    /on the dull days/,
  ],
  [
    'a battery that only falls',
    'energy-year',
    energyPlan({ more: '', fridge: 'load: 1 W, hours: 24 h', lamps: 'load: 1 W, hours: 1 h' }),
    /falls by from day to day/,
  ],
  ['enough all year', 'energy-year', energyPlan({ more: withArray(2000) }), /in each month/],
  ['an empty battery', 'charge-state', energyPlan(), /holds at its lowest/],
  [
    'a battery that nothing draws',
    'charge-state',
    energyPlan({ fridge: 'load: 45 W, hours: 0 h', lamps: 'load: 20 W, hours: 0 h' }),
    /holds at its lowest/,
  ],
  ['a shower near by', 'wet-zone', wet(1100, 1000), /along the van/],
  ['something of everything', 'solar-voltage', electricalVan, /by the table for silicon/],
];

const wordsOf = ({ working = [] }: Finding): string =>
  working
    .map(
      ({ what, sum = [] }) =>
        `${what} ${sum.map((part) => (typeof part === 'string' ? part : '#')).join('')}`,
    )
    .join('\n');

describe.each(branches)('%s', (_, rule, text, expected) => {
  test(`electrical.${rule} is sound`, async () => {
    const worked = await workedOf(text);
    for (const finding of worked) expectSound(finding);
    const own = worked.filter((finding) => finding.rule === `electrical.${rule}`);
    expect(own.map(wordsOf).join('\n')).toMatch(expected);
  });
});

// --- That the sums are not for show ---

test('sums of these checks can be done again from their words', async () => {
  const all = (
    await Promise.all([curlew, changed(lead), changed(switching, noCoefficient)].map(workedOf))
  ).flat();
  const done = new Set(all.flatMap(redone).map(({ rule }) => rule.replace('electrical.', '')));
  expect([...done].sort()).toEqual([
    'alternator',
    'alternator-dependence',
    'ampacity',
    'autonomy',
    'battery-current',
    'charge-current',
    'charge-state',
    'discrimination',
    'distribution',
    'fuse-breaking',
    'fuse-rating',
    'hook-up',
    'inverter',
    'solar-current',
    'solar-voltage',
    'standing-loss',
    'voltage-drop',
  ]);
});

test('each load draws its power over the voltage left, as far as it is on at once', async () => {
  const worked = await workedOf(curlew);
  const rows = worked
    .filter(({ rule }) => rule === 'electrical.battery-current' || rule === 'electrical.distribution')
    .flatMap(({ working = [] }) => working.flatMap(({ parts }) => parts?.rows ?? []));
  expect(rows.length).toBeGreaterThan(20);
  for (const { values, adds } of rows) {
    const [asks, left, part] = values;
    const wholeA = asks?.kind === 'power' ? asks.value / (left?.value ?? 0) : (asks?.value ?? 0);
    expect(wholeA * (part?.value ?? 0)).toBeCloseTo(adds.value, 6);
  }
});

test('what hangs behind a feeder draws what the whole tree lets it have', async () => {
  const worked = await workedOf(changed(['type: class T, rating: 200 A', 'type: class T, rating: 110 A']));
  const steps = worked.flatMap(({ working = [] }) =>
    working.filter(({ what }) => /by what hangs behind it/.test(what)),
  );
  expect(steps.length).toBeGreaterThan(0);
  for (const { parts } of steps)
    for (const { values, adds } of parts?.rows ?? []) {
      const [asks, left, part] = values;
      const wholeA = asks?.kind === 'power' ? asks.value / (left?.value ?? 0) : (asks?.value ?? 0);
      expect(wholeA * (part?.value ?? 0)).toBeCloseTo(adds.value, 6);
    }
});

test('a cable is as long as so much of 1 mm², and the way to an inverter loses R·I', async () => {
  const worked = await workedOf(curlew);
  const rowsOf = (rule: string, column: string) =>
    worked
      .filter((finding) => finding.rule === rule)
      .flatMap(({ working = [] }) => working)
      .flatMap(({ parts }) => (parts?.columns.includes(column) ? parts.rows : []));
  const cables = rowsOf('electrical.fuse-breaking', 'of 1 mm²');
  const losses = rowsOf('electrical.inverter', 'lost');
  expect([cables.length, losses.length]).toEqual([3, 3]);
  for (const { values, adds } of cables) {
    const [long, copper] = values.map(typedIn);
    expect((long ?? 0) / (copper ?? 1)).toBeCloseTo(adds.value, 12);
  }
  for (const { values, adds } of losses) {
    const [ohm, amperes] = values.map(typedIn);
    expect((ohm ?? 0) * (amperes ?? 0)).toBeCloseTo(adds.value, 12);
  }
});

test('what is left of a way apart by Pythagoras', async () => {
  const [near] = (await workedOf(wet(1100, 1000))).filter(({ rule }) => rule === 'electrical.wet-zone');
  const [along, across] = (near?.working?.at(-1)?.sum ?? []).flatMap((part) =>
    typeof part === 'string' ? [] : [part.value],
  );
  expect(Math.hypot(along ?? 0, across ?? 0)).toBeCloseTo(near?.measured?.value ?? 0, 9);
  expect([along, across].map((each) => Number((each ?? 0).toFixed(6)))).toEqual([0.3, 0.2]);
});
