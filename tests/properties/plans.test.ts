import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isPlaced } from '../../src/build/body.ts';
import type { Finding } from '../../src/engine/finding.ts';
import { renderJson } from '../../src/report/json.ts';
import { buildOf, reportOf } from '../support/check.ts';
import {
  type Amount,
  type Draft,
  drafts,
  isAmount,
  isList,
  kg,
  m,
  otherStyles,
  type Section,
  write,
} from '../support/random-plan.ts';
import { totals } from '../support/totals.ts';

const numRuns = 25;

/** What a finding says that does not depend on how the plan is written. */
interface Said {
  readonly verdict: string;
  readonly measured: number | undefined;
  readonly margin: number | undefined;
  readonly tolerance: number | undefined;
  readonly missing: readonly string[];
}

/** By rule and subject; which side it is may turn over where both are the same to the last digit. */
function said(findings: readonly Finding[]): ReadonlyMap<string, Said> {
  return new Map(
    findings.map(({ rule, subject, verdict, measured, margin, tolerance, missing }) => [
      `${rule}: ${subject.replace(/\b(left|right)\b/, 'one')}`,
      {
        verdict,
        measured: measured?.value,
        margin: margin?.value,
        tolerance: tolerance?.value,
        missing: [...(missing ?? [])].sort(),
      },
    ]),
  );
}

/** Outlines are cut in whole micrometres, and ways are found to a tenth of a millimetre. */
const cutWithinM = 2e-4;

const close = (key: string, a: number | undefined, b: number | undefined): boolean =>
  a === undefined || b === undefined
    ? a === b
    : Math.abs(a - b) <= (/^(fit|movement)/.test(key) ? cutWithinM : 1e-9 * Math.max(1, Math.abs(a)));

/**
 * The same findings. Two states may be equally bad, and which of them is named can hang on the last binary digit; then
 * the tolerance may differ, and with it whether a limit is in doubt, but never the value.
 */
function expectSame(one: readonly Finding[], other: readonly Finding[]): void {
  const [first, second] = [said(one), said(other)];
  expect([...second.keys()].sort()).toEqual([...first.keys()].sort());
  for (const [key, a] of first) {
    const b = second.get(key);
    expect({
      key,
      a,
      b,
      same: close(key, a.measured, b?.measured) && close(key, a.margin, b?.margin),
    }).toMatchObject({
      same: true,
    });
    expect(b?.missing).toEqual(a.missing);
    if (close(key, a.tolerance, b?.tolerance))
      expect({ key, verdict: b?.verdict }).toEqual({ key, verdict: a.verdict });
  }
}

describe('the same plan', () => {
  test('is the same whatever order it is written in', async () => {
    const numbers = fc.array(fc.integer(), { minLength: 23, maxLength: 23 });
    await fc.assert(
      fc.asyncProperty(drafts, numbers, async (draft, ranks) => {
        const order = (key: string) =>
          ranks[[...key].reduce((sum, letter) => sum * 7 + letter.charCodeAt(0), 0) % ranks.length] ?? 0;
        const one = await reportOf(write(draft));
        const other = await reportOf(write(draft, undefined, order));
        expectSame(one.findings, other.findings);
      }),
      { numRuns },
    );
  });

  test('is the same in other units', async () => {
    await fc.assert(
      fc.asyncProperty(drafts, fc.constantFrom(...otherStyles), async (draft, style) => {
        const one = await reportOf(write(draft));
        const other = await reportOf(write(draft, style));
        expectSame(one.findings, other.findings);
      }),
      { numRuns },
    );
  });

  test('twice is the same JSON, byte for byte', async () => {
    await fc.assert(
      fc.asyncProperty(drafts, async (draft) => {
        const text = write(draft);
        const json = async () =>
          renderJson(await reportOf(text), { version: 'test', exitCode: 0, strict: false });
        expect(await json()).toBe(await json());
      }),
      { numRuns: 15 },
    );
  });
});

const sectionOf = (section: Section, key: string): Section => {
  const value = section[key];
  return typeof value === 'object' && !isAmount(value) && !isList(value) ? value : {};
};

/** The draft with one fixture changed. */
const withFixture = (draft: Draft, name: string, change: (fixture: Section) => Section): Draft => ({
  ...draft,
  fixtures: { ...draft.fixtures, [name]: change(sectionOf(draft.fixtures, name)) },
});

/** The names of a thing and of everything in or on it, however deep. */
function withContents(draft: Draft, root: string): ReadonlySet<string> {
  const sections = [draft.fixtures, draft.tanks, draft.stores ?? {}];
  const hostOf = (name: string): string | undefined => {
    const thing = sections
      .map((section) => sectionOf(section, name))
      .find((each) => Object.keys(each).length);
    const host = thing?.in ?? thing?.on;
    return typeof host === 'string' && host !== 'floor' ? host : undefined;
  };
  const inside = (name: string): boolean => {
    for (let at: string | undefined = name; at !== undefined; at = hostOf(at)) if (at === root) return true;
    return false;
  };
  return new Set(sections.flatMap((section) => Object.keys(section)).filter(inside));
}

// However deep in it something stands, it moves by as much as the thing itself, and nothing else moves at all.
test('moving a thing moves what it holds by the same distance', async () => {
  const some = drafts.filter(({ fixtures }) => Object.keys(fixtures).length > 0);
  const away = fc.integer({ min: -1500, max: 1500 });
  await fc.assert(
    fc.asyncProperty(some, fc.nat(), away, away, away, async (draft, pick, dx, dy, dz) => {
      const names = Object.keys(draft.fixtures);
      const name = names[pick % names.length] ?? '';
      const standing = (x: number, y: number, z: number) =>
        withFixture(draft, name, ({ at: _, ...fixture }) => ({
          ...fixture,
          at: { from_front: m(x / 1000), from_left: m(y / 1000), above_floor: m(z / 1000) },
        }));
      const before = await buildOf(write(standing(500, 100, 200)));
      const after = await buildOf(write(standing(500 + dx, 100 + dy, 200 + dz)));
      const moving = withContents(draft, name);
      const state = new Map<string, number>();
      let momentKgM = 0;
      before.bodies.forEach((body, index) => {
        const moved = after.bodies[index];
        expect(moved?.label).toBe(body.label);
        if (!isPlaced(body) || !moved || !isPlaced(moved)) throw new Error(`${body.label} has no place`);
        const by = moving.has(body.label) ? [dx, dy, dz] : [0, 0, 0];
        expect(moved.position.x.valueM - body.position.x.valueM).toBeCloseTo((by[0] ?? 0) / 1000, 9);
        expect(moved.position.y.valueM - body.position.y.valueM).toBeCloseTo((by[1] ?? 0) / 1000, 9);
        expect(moved.position.z.valueM - body.position.z.valueM).toBeCloseTo((by[2] ?? 0) / 1000, 9);
        if (body.variable) state.set(body.variable.name, body.massKg);
        if (moving.has(body.label)) momentKgM += (body.massKg * dx) / 1000;
      });
      // And the axles exchange exactly m·dx / L of all of it.
      const [a, b] = [totals(before, state), totals(after, state)];
      expect(b.totalKg).toBe(a.totalKg);
      expect(b.rearKg - a.rearKg).toBeCloseTo(momentKgM / (before.vehicle.wheelbaseM ?? Number.NaN), 7);
      expect(a.frontKg - b.frontKg).toBeCloseTo(b.rearKg - a.rearKg, 7);
    }),
    { numRuns: 40 },
  );
});

const measuredBy = (findings: readonly Finding[], rule: string): number =>
  findings.find((each) => each.rule === rule)?.measured?.value ?? Number.NaN;

test('what is added is never lost from the worst total, wherever it is put', async () => {
  const added = fc.record({ kg: fc.integer({ min: 0, max: 300 }), x: fc.integer({ min: -2000, max: 5000 }) });
  await fc.assert(
    fc.asyncProperty(drafts, added, async (draft, { kg: massKg, x }) => {
      const more = withFixture(draft, 'one more', () => ({
        mass: kg(massKg),
        at: { from_front: m(x / 1000), centred: true, above_floor: m(0) },
      }));
      const before = measuredBy((await reportOf(write(draft))).findings, 'mass.total');
      const after = measuredBy((await reportOf(write(more))).findings, 'mass.total');
      expect(after - before).toBeCloseTo(massKg, 7);
    }),
    { numRuns },
  );
});

/** The same fixtures, each known so many times less well. */
const known = (draft: Draft, times: number): Draft => {
  const wider = ({ kind, value, tolerance = 0 }: Amount): Amount => ({
    kind,
    value,
    tolerance: (tolerance + 0.1) * times,
  });
  const names = Object.keys(draft.fixtures);
  return names.reduce(
    (all, name) =>
      withFixture(all, name, (fixture) => {
        const { mass, each } = fixture;
        return {
          ...fixture,
          ...(isMass(mass) && { mass: wider(mass) }),
          ...(isMass(each) && { each: wider(each) }),
        };
      }),
    draft,
  );
};
const isMass = (value: Section[string]): value is Amount =>
  value !== undefined && isAmount(value) && value.kind === 'mass';

test('knowing less never turns a warning into a pass', async () => {
  await fc.assert(
    fc.asyncProperty(drafts, fc.integer({ min: 1, max: 40 }), async (draft, times) => {
      const sure = said((await reportOf(write(known(draft, 1)))).findings);
      const unsure = said((await reportOf(write(known(draft, times)))).findings);
      for (const [key, { verdict, measured, tolerance = 0 }] of sure) {
        const wide = unsure.get(key);
        expect(wide?.measured).toBe(measured);
        expect(wide?.tolerance ?? 0).toBeGreaterThanOrEqual(tolerance - 1e-9);
        if (verdict !== 'pass') expect({ key, verdict: wide?.verdict }).toEqual({ key, verdict });
      }
    }),
    { numRuns },
  );
});

/** The rules whose verdict comes from a number against a limit with a tolerance. */
test('chance and verdict agree', async () => {
  let doubtful = 0;
  // Φ(−2), what is left beyond two standard uncertainties on one side.
  const beyond = 0.02275014;
  await fc.assert(
    fc.asyncProperty(drafts, async (draft) => {
      for (const finding of (await reportOf(write(known(draft, 10)))).findings) {
        const { rule, verdict, probability, margin, tolerance } = finding;
        if (rule === 'mass.payload' || probability === undefined || !margin) continue;
        expect(tolerance?.value).toBeGreaterThan(0);
        const broken = margin.value < -1e-9;
        if (broken)
          expect({ rule, verdict, probability }).toMatchObject({
            verdict: expect.stringMatching(/fail|warn/),
          });
        expect(probability > 0.5).toBe(margin.value < 0);
        expect(verdict === 'pass').toBe(probability <= beyond + 1e-6 && !broken);
        if (!broken && verdict === 'warn') doubtful += 1;
      }
    }),
    { numRuns },
  );
  expect(doubtful).toBeGreaterThan(0);
});
