import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/engine/finding.ts';
import { buildOf, reportOf } from '../support/check.ts';
import { drafts, write } from '../support/random-plan.ts';
import {
  corners,
  type Figures,
  figures,
  type Model,
  modelOf,
  someState,
} from '../support/reference-model.ts';
import { totals } from '../support/totals.ts';

/** A value within a part in 10⁹, or the thousandth part of a gram. */
const near = (value: number) => ({
  asymmetricMatch: (other: unknown) =>
    typeof other === 'number' && Math.abs(other - value) <= 1e-9 * Math.max(1, Math.abs(value)),
  toString: () => `near ${value}`,
});

interface Limited {
  readonly rule: string;
  readonly subject?: string;
  /** What the finding measures in one load state; the finding shows the greatest (or with `least` the least) of it. */
  readonly figure: (f: Figures, model: Model) => number;
  readonly least?: true;
}

const limits: readonly Limited[] = [
  { rule: 'mass.total', figure: (f) => f.total },
  { rule: 'mass.payload', figure: (f, { maxMass }) => maxMass - f.total, least: true },
  { rule: 'mass.personal-effects', figure: (f, { maxMass }) => maxMass - f.withoutStores, least: true },
  { rule: 'balance.front-axle', figure: (f) => f.front },
  { rule: 'balance.rear-axle', figure: (f) => f.rear },
  { rule: 'balance.steered-share', figure: (f, { maxMass }) => f.front / maxMass, least: true },
  { rule: 'balance.sides', figure: (f) => Math.abs(f.lean) },
  { rule: 'balance.lateral-centre', figure: (f) => Math.abs(f.sideways) },
  { rule: 'balance.centre-height', figure: (f) => f.heightAboveGround },
  { rule: 'balance.wheel-load', subject: 'front axle,', figure: (f) => 0.5 + Math.abs(f.frontRight - 0.5) },
  { rule: 'balance.wheel-load', subject: 'rear axle,', figure: (f) => 0.5 + Math.abs(f.rearRight - 0.5) },
  { rule: 'balance.equipment-centre', figure: (f) => f.equipment },
];

/** The load state that a finding names, as its reader could type it. */
const stateOf = ({ worstState }: Finding) =>
  new Map((worstState?.fills ?? []).map(({ name, massKg }) => [name, massKg]));

const subjects = (findings: readonly Finding[], rule: string, subject: string) =>
  findings.filter((each) => each.rule === rule && each.subject.startsWith(subject));

/** Neither axle leaves the ground in any state: else a wheel's share of it is no number. */
const stands = (all: readonly Figures[]) => all.every(({ front, rear }) => front > 0 && rear > 0);

/** The same value as the worst of all corners. */
function expectWorst(
  { rule, figure, least }: Limited,
  finding: Finding | undefined,
  model: Model,
  everyCorner: readonly Figures[],
): void {
  const values = everyCorner.map((each) => figure(each, model)).filter((value) => !Number.isNaN(value));
  // Where there is no equipment in any state, its centre is not checked.
  if (values.length === 0) expect(finding?.measured).toBeUndefined();
  else if (rule === 'mass.personal-effects' && finding?.verdict === 'not checked') return;
  else {
    const worst = least ? Math.min(...values) : Math.max(...values);
    expect({ rule, value: finding?.measured?.value }).toEqual({ rule, value: near(worst) });
  }
}

function expectNoneWorse(
  { rule, figure, least }: Limited,
  worst: number,
  model: Model,
  states: readonly Figures[],
): void {
  for (const state of states) {
    const value = figure(state, model);
    if (Number.isNaN(value)) continue;
    const better = least ? value - worst : worst - value;
    expect({ rule, better: better >= -1e-9 * Math.max(1, Math.abs(value)) }).toEqual({ rule, better: true });
  }
}

/** The state that a finding names is one that can be, with the water in one tank only, and comes to its figure. */
function expectItsState({ rule, figure }: Limited, finding: Finding, model: Model): void {
  const state = stateOf(finding);
  expect({ rule, value: figure(figures(model, state), model) }).toEqual({
    rule,
    value: near(finding.measured?.value ?? Number.NaN),
  });
  let water = 0;
  for (const { name, least, most, water: isWater } of model.masses) {
    if (least === undefined) continue;
    const massKg = state.get(name) ?? Number.NaN;
    expect(massKg).toBeGreaterThanOrEqual(least - 1e-9);
    expect(massKg).toBeLessThanOrEqual(most + 1e-9);
    if (isWater) water += massKg;
  }
  expect(water).toBeLessThanOrEqual(model.waterKg + 1e-9);
}

describe('a model of its own, for the same plan', () => {
  test('has every mass at the same place', async () => {
    await fc.assert(
      fc.asyncProperty(drafts, async (draft) => {
        const text = write(draft);
        const model = modelOf(text);
        const build = await buildOf(text);
        const ours = build.bodies.map(({ massKg, position }) => [
          massKg,
          ...(['x', 'y', 'z'] as const).map((axis) => position?.[axis].valueM ?? Number.NaN),
        ]);
        const theirs = model.masses.map(({ most, x, y, z }) => [most, x, y, z]);
        expect(ours).toHaveLength(theirs.length);
        for (const body of ours) {
          const same = theirs.findIndex((row) =>
            row.every((value, i) => near(value).asymmetricMatch(body[i])),
          );
          expect({ body, same }).not.toEqual({ body, same: -1 });
          theirs.splice(same, 1);
        }
        expect(build.supplyKg).toEqual(near(model.waterKg));
      }),
      { numRuns: 50 },
    );
  });

  const parts = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 12, maxLength: 12 });

  test('finds the same worst value for every limit, in a state that comes to it, and none that is worse', async () => {
    await fc.assert(
      fc.asyncProperty(drafts, fc.array(parts, { minLength: 5, maxLength: 5 }), async (draft, states) => {
        const text = write(draft);
        const model = modelOf(text);
        const everyCorner = corners(model).map((fill) => figures(model, fill));
        const some = states.map((each) => figures(model, someState(model, each)));
        const { findings } = await reportOf(text);
        for (const limited of limits) {
          const [finding] = subjects(findings, limited.rule, limited.subject ?? '');
          if (limited.rule === 'balance.wheel-load' && !stands(everyCorner)) continue;
          expectWorst(limited, finding, model, everyCorner);
          if (!finding?.measured) continue;
          expectNoneWorse(limited, finding.measured.value, model, some);
          if (limited.rule !== 'mass.personal-effects') expectItsState(limited, finding, model);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('agrees on what a plan comes to in any state', async () => {
    await fc.assert(
      fc.asyncProperty(drafts, parts, async (draft, part) => {
        const text = write(draft);
        const model = modelOf(text);
        const state = someState(model, part);
        const f = figures(model, state);
        const t = totals(await buildOf(text), state);
        expect(t.totalKg).toEqual(near(f.total));
        expect(t.frontKg).toEqual(near(f.front));
        expect(t.rearKg).toEqual(near(f.rear));
        expect(t.frontKg + t.rearKg).toEqual(near(t.totalKg));
        expect(t.momentRightKgM / t.totalKg).toEqual(near(f.sideways));
      }),
      { numRuns: 50 },
    );
  });
});
