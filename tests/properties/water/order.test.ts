import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import type { Finding } from '../../../src/engine/finding.ts';
import { reportOf, words } from '../../support/check.ts';
import { waterPlan, wide } from '../../support/supply-plan.ts';

/*
 * In which order a plan names its tanks, pipes, outlets and valves decides nothing.
 */

/** What is the same however the plan is written: all but lines. */
const said = (findings: readonly Finding[]): readonly string[] =>
  findings
    .filter(({ topic }) => topic === 'water')
    .map(({ rule, subject, verdict, path, measured, reason, remedy, missing = [] }) =>
      [
        rule,
        subject,
        verdict,
        path.join('.'),
        Number((measured?.value ?? 0).toPrecision(9)),
        words(reason),
        words(remedy),
        [...missing].sort(),
      ].join(' | '),
    )
    .sort();

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The entries of a section put in another order, by the numbers drawn. */
function shuffled(value: unknown, order: readonly number[]): unknown {
  if (!isRecord(value)) return value;
  return Object.fromEntries(
    Object.entries(value)
      .map((entry, at) => ({ entry, rank: order[at % order.length] ?? 0 }))
      .toSorted((a, b) => a.rank - b.rank)
      .map(({ entry }) => entry),
  );
}

function inOrder(text: string, order: readonly number[]): string {
  const plan: unknown = parse(text);
  if (!isRecord(plan) || !isRecord(plan.water)) throw new Error('a plan without water');
  const { water } = plan;
  const sections = Object.fromEntries(
    ['outlets', 'pipes', 'valves']
      .filter((key) => key in water)
      .map((key) => [key, shuffled(water[key], order)] as const),
  );
  return stringify({ ...plan, tanks: shuffled(plan.tanks, order), water: { ...water, ...sections } });
}

const winter = readFileSync('examples/curlew/winter.yaml', 'utf8');

/** Everything twice: two like tanks, outlets and pipes of one bore, so that all that can be equal is. */
const twins = (flow: string, pipe: string) =>
  waterPlan({
    tanks: ['one', 'two', 'three']
      .map(
        (name, at) =>
          `${name}: {contents: fresh, holds: 20 L, vent: 12 mm, inspection: 120 mm, size: {length: 300 mm, width: 300 mm, height: 300 mm}, at: {from_front: ${1 + at / 2} m, from_right: 0 mm, above_floor: 0 mm}}`,
      )
      .join(', '),
    outlets: `{sink: {use: tap, flow: ${flow}, pressure: 1 bar, trap: 60 mm, above_floor: 1 m}, basin: {use: tap, flow: ${flow}, pressure: 1 bar, trap: 60 mm, above_floor: 1 m}, tub: {use: tap, flow: ${flow}, pressure: 1 bar, trap: 60 mm, above_floor: 1 m}}`,
    pipes: `{suction: {from: one, to: pump, ${pipe}}, sink pipe: {from: pump, to: sink, ${pipe}}, basin pipe: {from: pump, to: basin, ${pipe}}, tub pipe: {from: pump, to: tub, ${pipe}}, to heater: {from: pump, to: heater, ${pipe}}, hot sink: {from: heater, to: sink, ${pipe}}, hot basin: {from: heater, to: basin, ${pipe}}, waste a: {from: sink, to: outside, length: 1 m, rise: -100 mm, size: 32 mm}, waste b: {from: basin, to: outside, length: 1 m, rise: -100 mm, size: 32 mm}, fill: {from: outside, to: two}}`,
    more: 'heater: {kind: instant, power: 2 kW}',
    rest: 'people: {sleepers: [{}]}\nliving: {litres_per_person_day: 10 L, days_between_fills: 2, winter_low: -5 degC}',
  });

test.each([
  ['the Curlew in winter', winter, 1],
  ['a plan of twins', twins('5 L/min', wide), 25],
  ['a plan of twins that all pass', twins('3 L/min', 'material: PEX, size: 15 mm, length: 1 m'), 25],
] as const)('%s says the same in every order', async (_, text, runs) => {
  const expected = said((await reportOf(inOrder(text, [0]))).findings);
  expect(expected.length).toBeGreaterThan(15);
  await fc.assert(
    fc.asyncProperty(fc.array(fc.nat(1000), { minLength: 10, maxLength: 10 }), async (order) => {
      expect(said((await reportOf(inOrder(text, order))).findings)).toEqual(expected);
    }),
    { numRuns: runs, endOnFailure: true },
  );
});
