import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/engine/finding.ts';
import { buildOf, only, reportOf } from '../support/check.ts';
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

const numRuns = 40;

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
      { numRuns: 80 },
    );
  });

  test('finds the same worst value for every limit, by trying every corner', async () => {
    await fc.assert(
      fc.asyncProperty(drafts, async (draft) => {
        const text = write(draft);
        const model = modelOf(text);
        const all = corners(model).map((fill) => figures(model, fill));
        const { findings } = await reportOf(text);
        for (const { rule, subject = '', figure, least } of limits) {
          if (rule === 'balance.wheel-load' && !stands(all)) continue;
          const values = all.map((each) => figure(each, model)).filter((value) => !Number.isNaN(value));
          const [finding] = subjects(findings, rule, subject);
          if (values.length === 0) {
            expect(finding?.measured).toBeUndefined();
            continue;
          }
          const worst = least ? Math.min(...values) : Math.max(...values);
          expect({ rule, value: finding?.measured?.value }).toEqual({ rule, value: near(worst) });
        }
      }),
      { numRuns },
    );
  });

  test('comes to the same figure in the state that a finding names, and no water is counted twice', async () => {
    await fc.assert(
      fc.asyncProperty(drafts, async (draft) => {
        const text = write(draft);
        const model = modelOf(text);
        const { findings } = await reportOf(text);
        for (const { rule, subject = '', figure } of limits) {
          for (const finding of subjects(findings, rule, subject)) {
            if (!finding.measured || !finding.limit) continue;
            const state = stateOf(finding);
            expect({ rule, value: figure(figures(model, state), model) }).toEqual({
              rule,
              value: near(finding.measured.value),
            });
            const water = model.masses.reduce(
              (sum, { name, water: isWater }) => sum + (isWater ? (state.get(name) ?? 0) : 0),
              0,
            );
            expect(water).toBeLessThanOrEqual(model.waterKg + 1e-9);
            for (const { name, least, most } of model.masses) {
              if (least === undefined) continue;
              expect(state.get(name)).toBeGreaterThanOrEqual(least - 1e-9);
              expect(state.get(name)).toBeLessThanOrEqual(most + 1e-9);
            }
          }
        }
      }),
      { numRuns },
    );
  });

  test('finds no state that is worse than the worst', async () => {
    const parts = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 12, maxLength: 12 });
    await fc.assert(
      fc.asyncProperty(drafts, fc.array(parts, { minLength: 5, maxLength: 5 }), async (draft, states) => {
        const text = write(draft);
        const model = modelOf(text);
        const report = await reportOf(text);
        for (const part of states) {
          const f = figures(model, someState(model, part));
          for (const { rule, subject = '', figure, least } of limits) {
            const [finding] = subjects(report.findings, rule, subject);
            const value = figure(f, model);
            if (!finding?.measured || !finding.limit || Number.isNaN(value)) continue;
            const slack = 1e-9 * Math.max(1, Math.abs(value));
            if (least) expect(value).toBeGreaterThanOrEqual(finding.measured.value - slack);
            else expect(value).toBeLessThanOrEqual(finding.measured.value + slack);
          }
        }
      }),
      { numRuns },
    );
  });

  test('agrees on what a plan comes to in any state', async () => {
    const parts = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 12, maxLength: 12 });
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
      { numRuns: 80 },
    );
  });

  test('leaves the same room for personal effects', async () => {
    await fc.assert(
      fc.asyncProperty(drafts, async (draft) => {
        const text = write(draft);
        const model = modelOf(text);
        const finding = only(await reportOf(text), 'mass.personal-effects');
        if (!finding.measured) return;
        const most = Math.max(...corners(model).map((fill) => figures(model, fill).withoutStores));
        expect(finding.measured.value).toEqual(near(model.maxMass - most));
      }),
      { numRuns: 25 },
    );
  });
});
