import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { saturationPressurePa } from '../../src/calc/air/saturation.ts';
import type { Finding, Step } from '../../src/engine/finding.ts';
import type { Kind, Measure } from '../../src/engine/measure.ts';
import { airy, fannedPlan, hob, twoAsleep, twoVents } from '../support/air-plan.ts';
import { workedBy } from '../support/worked.ts';

/*
 * Every figure that a check of the air measures is worked out, step by step, and every printed sum is really that sum: it is
 * done again here from the numbers that it shows.
 */

const examples = ['curlew', 'oak', 'crowded', 'tangled', 'thin-cables', 'winter'] as const;

/** What is held against a limit that the plan itself decides. */
const withWorkedLimit = ['air.still-night', 'air.fans', 'air.combustion-air', 'air.vent-heights'];

const workedOf = workedBy(({ topic }) => topic === 'air');

const measures = ({ sum = [] }: Step): readonly Measure[] => sum.filter((part) => typeof part !== 'string');
const values = (step: Step): readonly number[] => measures(step).map(({ value }) => value);
const wordsOf = ({ working = [] }: Finding): string =>
  working
    .flatMap(({ what, sum = [], parts }) => [
      what,
      sum.map((part) => (typeof part === 'string' ? part : '#')).join(''),
      ...(parts?.rows ?? []).map(({ name }) => name),
    ])
    .join('\n');

const metresAndAir = (step: Step, kinds: readonly Kind[]): void =>
  expect(measures(step).map(({ kind }) => kind)).toEqual(kinds);

/** The words of a step, and its sum done again; undefined where it has none to do. */
const again: Readonly<Record<string, (step: Step) => number | undefined>> = {
  'The height that drives': (step) => {
    const [highM = 0, inM2 = 0, outM2 = 0, insideK = 0, outsideK = 0] = values(step);
    return highM / (1 + ((inM2 / outM2) ** 2 * insideK) / outsideK);
  },
  'What warmth draws': (step) => {
    const [inM2, drivingM = 0, apartK = 0, warmK = 0] = values(step);
    if (inM2 === undefined) return 0;
    metresAndAir(step, ['free area', 'length', 'factor', 'factor']);
    return 0.65 * inM2 * Math.sqrt((2 * 9.81 * drivingM * apartK) / warmK);
  },
  'What comes through leaks': (step) => {
    const [perHour = 0, airM3 = 0] = values(step);
    return (perHour * airM3) / 3600;
  },
  'Air in the room': (step) => {
    const [alongM = 0, acrossM = 0, upM = 0, grossM3, furnitureM3 = 0] = values(step);
    expect(alongM * acrossM * upM).toBeCloseTo(grossM3 ?? 0, 9);
    return alongM * acrossM * upM - furnitureM3;
  },
  'What it is held against: n·V': (step) => {
    const [perHour = 0, airM3 = 0] = values(step);
    return (perHour * airM3) / 3600;
  },
  'Fresh air on a still night': (step) => (measures(step).length > 0 ? Math.max(...values(step)) : undefined),
  'Fresh air: Q': (step) => Math.max(...values(step)),
  'What those asleep breathe out in an hour': (step) =>
    values(step).reduce((product, each) => product * each, 1),
  'Water that those asleep': (step) => values(step).reduce((product, each) => product * each, 1),
  'The same spread over the day': (step) => {
    const [kg = 0, seconds = 0] = values(step);
    expect(seconds).toBe(86_400);
    return kg / seconds;
  },
  'Water vapour in the air outside': (step) => {
    const [outside = 0, heldPa = 0, outsideK = 0] = values(step);
    expect(heldPa).toBeCloseTo(saturationPressurePa(outsideK - 273.15), 6);
    return outside * heldPa;
  },
  'What the water adds': (step) => {
    const [kgPerS, insideK = 0, m3PerS = 0] = values(step);
    return kgPerS === undefined ? undefined : (kgPerS * 461.524 * insideK) / m3PerS;
  },
  'Relative humidity inside': (step) => {
    const [outsidePa, addedPa = 0, heldPa = 0, insideK = 0] = values(step);
    if (outsidePa === undefined) return 1;
    expect(heldPa).toBeCloseTo(saturationPressurePa(insideK - 273.15), 6);
    return Math.min(1, (outsidePa + addedPa) / heldPa);
  },
  'What comes in through the openings': (step) => {
    const [openM2, pa = 0] = values(step);
    return openM2 === undefined ? 0 : 0.61 * openM2 * Math.sqrt((2 * pa) / 1.1989);
  },
  'What comes out through the openings': (step) => {
    const [openM2, pa = 0] = values(step);
    return openM2 === undefined ? 0 : -0.61 * openM2 * Math.sqrt((2 * pa) / 1.1989);
  },
  'How far the room is then below': (step) => {
    const [m3PerS, openM2 = 0] = values(step);
    return m3PerS === undefined ? undefined : (1.1989 / 2) * (m3PerS / (0.61 * openM2)) ** 2;
  },
  'Free area that it needs': (step) => {
    const [perKilowattM2 = 0, kilowatt = 0, netW = 0] = values(step);
    expect(perKilowattM2).toBeCloseTo(5e-4, 12);
    return (perKilowattM2 * netW) / kilowatt;
  },
  'How far apart along the van': (step) => {
    const [one = 0, other = 0] = values(step);
    return Math.abs(one - other);
  },
  'How far apart across it': (step) => {
    const [one = 0, other = 0] = values(step);
    return Math.abs(one - other);
  },
  'In a straight line over the floor': (step) => Math.hypot(...values(step)),
  'What roof fan moves': fanAgain,
  'What out moves': fanAgain,
  'What weak moves': fanAgain,
  'What into moves': fanAgain,
  'Carbon dioxide at the end of the night': contentAgain,
  'Carbon dioxide when the cooking ends': contentAgain,
  'What the fans blow out': (step) =>
    (step.parts?.rows ?? []).reduce((sum, { values: columns, adds, name }) => {
      const [open = 0, stall = 1, against = 0] = columns.map(({ value }) => value);
      const moved = open * Math.min(1, Math.max(0, 1 - against / stall));
      const added = name.endsWith(', out') ? moved : -moved;
      expect(adds.value).toBeCloseTo(added, 9);
      return sum + added;
    }, 0),
};

function fanAgain(step: Step): number | undefined {
  const [first, ...more] = measures(step);
  const [against, stall] = more;
  if (first?.kind !== 'air flow') return 0;
  return against && stall ? first.value * (1 - against.value / stall.value) : first.value;
}

function contentAgain(step: Step): number {
  const [m3PerS = 0, seconds = 0, airM3 = 1, changes = 0, kept = 0, anHourM3 = 0, start = 0] = values(step);
  expect((m3PerS * seconds) / airM3).toBeCloseTo(changes, 9);
  expect(Math.exp(-changes)).toBeCloseTo(kept, 9);
  const [outside = 0] = (step.parts?.rows ?? []).map(({ adds }) => adds.value);
  const freed =
    changes === 0
      ? (anHourM3 * seconds) / 3600 / airM3
      : (anHourM3 / 3600 / m3PerS) * (1 - Math.exp(-changes));
  return outside + (start - outside) * kept + freed;
}

const done = new Set<string>();

function expectSameAgain(step: Step, subject: string): void {
  for (const [begins, sumOf] of Object.entries(again)) {
    if (!step.what.startsWith(begins)) continue;
    const found = sumOf(step);
    if (found === undefined) continue;
    done.add(begins);
    const scale = Math.abs(step.result?.value ?? 0) + 1e-9;
    expect(found / scale, `${subject}: ${step.what}`).toBeCloseTo((step.result?.value ?? 0) / scale, 6);
  }
}

function expectWorked({ rule, subject, measured, limit, working = [] }: Finding): void {
  const about = `${rule} ${subject}`;
  expect(working.length, about).toBeGreaterThan(0);
  const last = working.at(-1)?.result;
  expect(last?.kind, about).toBe(measured?.kind);
  const scale = Math.abs(measured?.value ?? 0) + 1e-9;
  expect((last?.value ?? Number.NaN) / scale, about).toBeCloseTo((measured?.value ?? 0) / scale, 9);
  if (limit && withWorkedLimit.includes(rule))
    expect(working.at(-2)?.result?.value, about).toBeCloseTo(limit.measure.value, 9);
  for (const step of working) {
    const { parts, result } = step;
    if (parts) {
      const sum = parts.rows.reduce((total, { adds }) => total + adds.value, 0);
      expect(sum, `${about}: ${step.what}`).toBeCloseTo(result?.value ?? 0, 9);
      for (const row of parts.rows) expect(row.values).toHaveLength(parts.columns.length - 1);
    }
    expectSameAgain(step, about);
  }
}

describe.each(examples)('%s', (example) => {
  test('everything measured of the air is worked out', async () => {
    const worked = await workedOf(readFileSync(`examples/curlew/${example}.yaml`, 'utf8'));
    expect(new Set(worked.map(({ rule }) => rule)).size).toBeGreaterThan(5);
    for (const finding of worked) expectWorked(finding);
  });
});

const gas = (appliances: string) => `gas: {appliances: {${appliances}}}\n`;
const winter = 'living: {winter_low: -10 degC, cooking: 30 min}\n';
const roof = 'roof: {in: ceiling, free_area: 400 cm2, closes: false}';
const floor = 'floor: {in: floor, free_area: 100 cm2, closes: false}';
const out = 'out: {vent: roof, blows: exhaust, flow: 360 m3/h, pressure: 80 Pa}';
const into = 'into: {blows: intake, flow: 500 m3/h, pressure: 30 Pa}';
const boiler = gas('boiler: {use: water heating, input: 4 kW, heating_value: net, flue: open-flued}');
const wet =
  'fixtures: {tray: {is: shower, mass: 9 kg, size: {length: 0.8 m, width: 0.8 m, height: 50 mm}, at: {from_front: 1 m, from_left: 0 m}}}\n';
const leaky = twoAsleep.replace('15 degC', '15 degC, air_changes_per_hour: 5');
const hot = `${twoAsleep}living: {winter_low: 24 degC, cooking: 30 min}\n`;
const wall = (level: string, above: string) =>
  `${level}: {in: left wall, level: ${level}, free_area: 20 cm2, closes: false, at: {from_front: 1 m, above_floor: ${above}}}`;
const cookerAt = (x: number) =>
  `hob: {is: cooker, mass: 3 kg, size: {length: 400 mm, width: 400 mm, height: 100 mm}, at: {from_front: ${x} mm, from_left: 800 mm, above_floor: 800 mm}}`;
const alarm = (name: string, x: number) =>
  `${name}: {kind: carbon monoxide alarm, at: {from_front: ${x} mm, from_left: 300 mm, above_floor: 1200 mm}}`;

describe.each([
  [
    'no vents that work',
    'air.still-night',
    airy(
      'high: {in: ceiling, free_area: 9 cm2, closes: false}, low: {in: floor, free_area: 9 cm2, closes: true}',
      twoAsleep + winter,
    ),
    /nothing, without fixed vents/,
  ],
  ['leaks that bring more', 'air.still-night', airy(twoVents(10, 20), leaky), /more than the vents give/],
  ['warmer outside than in', 'air.humidity', airy(twoVents(10, 20), hot), /comes in high up/],
  ['air that never gets full', 'air.humidity', airy(twoVents(300, 300), twoAsleep + winter), /p_s\(T_i\)/],
  ['air that is full', 'air.humidity', airy(twoVents(5, 5), twoAsleep + winter), /settles as water/],
  [
    'no fresh air at all',
    'air.humidity',
    airy(
      'high: {in: ceiling, free_area: 9 cm2, closes: false}, low: {in: floor, free_area: 9 cm2, closes: true}',
      twoAsleep + winter,
    ),
    /without end/,
  ],
  [
    'a wet day',
    'air.humidity',
    airy(
      twoVents(60, 60),
      `${twoAsleep}living: {winter_low: -10 degC, cooking: 30 min, wet_clothes: 3 L, showers_per_person_day: 2}\n${gas(hob)}`,
    ),
    /over the day/,
  ],
  [
    'cooking of which nothing is said',
    'air.humidity',
    airy(twoVents(60, 60), `${twoAsleep}living: {winter_low: -10 degC, wet_clothes: 3 L}\n`),
    /spread over the day/,
  ],
  ['a fan in a shut room', 'air.fans', fannedPlan(roof, out), /nothing is open/],
  ['a fan through a vent', 'air.fans', fannedPlan(`${roof}, ${floor}`, out), /kitchen/],
  [
    'more in than out',
    'air.fans',
    fannedPlan(`${roof}, ${floor}`, `${out}, ${into}`),
    /comes out through the openings[\s\S]*nothing stands against it/,
  ],
  [
    'a fan that another stalls',
    'air.fans',
    fannedPlan(`${roof}, ${floor}`, `${out}, weak: {blows: exhaust, flow: 100 m3/h, pressure: 5 Pa}`),
    /it stalls: it moves nothing/,
  ],
  [
    'a fan of a locker',
    'air.fans',
    fannedPlan(
      `${roof}, ${floor}`,
      `${out}, own: {blows: exhaust, flow: 20 m3/h, pressure: 20 Pa, serves: box}`,
      `${twoAsleep}fixtures: {box: {mass: 1 kg}}\n`,
    ),
    /for a thing of its own/,
  ],
  [
    'a pair that sits close',
    'air.fans',
    fannedPlan(
      'one: {in: ceiling, free_area: 400 cm2, closes: false, at: {from_front: 1 m, centred: true}}, other: {in: ceiling, free_area: 400 cm2, closes: false, at: {from_front: 1.2 m, centred: true}}',
      'out: {vent: one, blows: exhaust, flow: 360 m3/h, pressure: 80 Pa}, into: {vent: other, blows: intake, flow: 500 m3/h, pressure: 30 Pa}',
    ),
    /nothing is open/,
  ],
  [
    'no fan for a shower',
    'air.wet-room',
    fannedPlan(`${roof}, ${floor}`, into, twoAsleep + wet),
    /no fan draws/,
  ],
  [
    'a fan for a shower',
    'air.wet-room',
    fannedPlan(
      `${roof}, ${floor}`,
      `${out}, own: {blows: exhaust, flow: 90 m3/h, pressure: 20 Pa, serves: tray}`,
      twoAsleep + wet,
    ),
    /out of tray/,
  ],
  ['an open flue beside a fan', 'air.flue-draught', fannedPlan(`${roof}, ${floor}`, out, boiler), /d = ρ\/2/],
  ['an open flue in a shut room', 'air.flue-draught', fannedPlan(roof, out, boiler), /strongest fan stalls/],
  ['an open flue and vents', 'air.combustion-air', airy(twoVents(10, 9), boiler), /5 cm² for each kW/],
  [
    'an open flue and nothing open',
    'air.combustion-air',
    airy('hatch: {in: ceiling, free_area: 900 cm2, closes: true}', boiler),
    /none is in the plan/,
  ],
  [
    'vents in walls',
    'air.vent-heights',
    airy(`${wall('high', '1750 mm')}, ${wall('low', '120 mm')}`),
    /no bed with a place/,
  ],
  [
    'vents in walls in Australia',
    'air.vent-heights',
    airy(`${wall('high', '1750 mm')}, ${wall('low', '120 mm')}`, twoAsleep, {}, 'au'),
    /under the roof/,
  ],
  [
    'a low vent without a height',
    'air.vent-heights',
    airy(
      `${twoVents(20, 20)}, wall: {in: left wall, level: low, free_area: 20 cm2, closes: false, at: {from_front: 1 m}}`,
    ),
    /no height: at the floor/,
  ],
  [
    'a bunk below a vent',
    'air.vent-heights',
    airy(
      wall('high', '1850 mm'),
      `${twoAsleep}fixtures: {bunk: {is: bed, mass: 9 kg, size: {length: 1 m, width: 1 m, height: 100 mm}, at: {from_front: 0 m, from_left: 0 m, above_floor: 1500 mm}}}\n`,
    ),
    /to the top mattress/,
  ],
  [
    'a hob in a room aired by warmth',
    'air.flueless',
    airy(twoVents(50, 100), `${twoAsleep}${gas(hob)}living: {cooking: 30 min}\n`),
    /by the flames/,
  ],
  [
    'a hob in a room without air',
    'air.flueless',
    airy(
      'high: {in: ceiling, free_area: 9 cm2, closes: false}, low: {in: floor, free_area: 9 cm2, closes: true}',
      `${twoAsleep}${gas(hob)}living: {cooking: 30 min}\n`,
    ),
    /G·t\/V/,
  ],
  [
    'two hobs and a fan',
    'air.flueless',
    fannedPlan(
      `${roof}, ${floor}`,
      out,
      `${twoAsleep}${gas(`${hob}, ${hob.replace('hob', 'oven')}`)}living: {cooking: 30 min}\n`,
    ),
    /by fans/,
  ],
  [
    'a hob far from any alarm',
    'air.alarms',
    airy(
      twoVents(50, 100),
      `${twoAsleep}fixtures: {${cookerAt(0)}}\n${gas(hob.replace('{use', '{thing: hob, use'))}protection: {alarms: {${alarm('one', 3900)}, ${alarm('two', 3700)}}}\n`,
    ),
    /nearest of 2/,
  ],
])('%s', (_, rule, text, words) => {
  test(`${rule} comes to what was measured, by sums that hold`, async () => {
    const all = await workedOf(text);
    const worked = all.filter((finding) => finding.rule === rule);
    expect(worked.length).toBeGreaterThan(0);
    expect(worked.map(wordsOf).join('\n')).toMatch(words);
    for (const finding of all) expectWorked(finding);
  });
});

/** By the tests above, all of them. */
test('every kind of sum was done again', () => {
  expect(Object.keys(again).filter((begins) => !done.has(begins))).toEqual([]);
});

test('what a day sets free is done from how long and how much', async () => {
  const [finding] = (
    await workedOf(
      airy(
        twoVents(60, 60),
        `${twoAsleep}living: {winter_low: -10 degC, cooking: 30 min, wet_clothes: 3 L, showers_per_person_day: 2}\n`,
      ),
    )
  ).filter(({ rule, subject }) => rule === 'air.humidity' && subject === 'humidity');
  const rows = finding?.working?.[0]?.parts?.rows ?? [];
  expect(rows.map(({ name }) => name)).toEqual(['2 asleep', '2 awake', 'cooking', 'showers', 'wet clothes']);
  for (const {
    name,
    values: [amount, each],
    adds,
  } of rows) {
    const people = name.startsWith('2 ') ? 2 : 1;
    expect(people * (amount?.value ?? 0) * (each?.value ?? 0)).toBeCloseTo(adds.value, 9);
  }
});
