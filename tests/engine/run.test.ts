import { describe, expect, test } from 'vitest';
import type { Build } from '../../src/build/build.ts';
import type { Finding } from '../../src/engine/finding.ts';
import { mass } from '../../src/engine/measure.ts';
import { say } from '../../src/engine/phrase.ts';
import { defineRule, given, missing, type Output, type RuleText } from '../../src/engine/rule.ts';
import { runRules, sortFindings } from '../../src/engine/run.ts';
import { buildOf, words } from '../support/check.ts';
import { plan, withoutCodes } from '../support/test-van.ts';

const text = (id: string): RuleText => ({
  id,
  topic: 'mass',
  title: `title of ${id}`,
  why: 'To see.',
  formula: 'a = b',
  sources: [{ title: 'a source', provenance: 'read' }],
  cautions: ['a caution'],
  place: ['van'],
});

const found = (rule: RuleText, changes: Partial<Finding> = {}): Finding => ({
  rule: rule.id,
  topic: rule.topic,
  title: rule.title,
  verdict: 'pass',
  subject: 'whole van',
  path: rule.place,
  reason: say`It is.`,
  sources: rule.sources,
  cautions: rule.cautions,
  ...changes,
});

const speaks = defineRule({
  ...text('mass.speaks'),
  needs: {},
  check: (): Output => ({ findings: [found(text('mass.speaks'))] }),
});

describe('a rule that throws', () => {
  const throws = defineRule({
    ...text('mass.throws'),
    needs: {},
    check: (): Output => {
      throw new RangeError('the wheels came off');
    },
  });
  const throwsText = defineRule({
    ...text('mass.throws-text'),
    needs: {
      something: () => {
        throw 'a bare text';
      },
    },
    check: (): Output => ({ findings: [] }),
  });

  test('is a defect that names it, and the others still run', async () => {
    const { findings, defects } = runRules([throws, throwsText, speaks], await buildOf(plan()));
    expect(defects).toEqual([
      { rule: 'mass.throws', message: 'the wheels came off' },
      { rule: 'mass.throws-text', message: 'a bare text' },
    ]);
    expect(findings.map(({ rule }) => rule)).toEqual(['mass.speaks']);
  });

  test('has no finding that could be taken for a pass', async () => {
    const { findings, notes } = runRules([throws], await buildOf(plan()));
    expect(findings).toEqual([]);
    expect(notes).toEqual([]);
  });
});

describe('a rule whose needs are missing', () => {
  const needy = (informationOnly: boolean) =>
    defineRule({
      ...text('mass.needy'),
      ...(informationOnly && { informationOnly: true as const }),
      needs: {
        one: () => missing('van.one', 'van.shared'),
        two: () => given(2),
        three: () => missing('van.shared', 'van.three'),
      },
      check: (): Output => {
        throw new Error('must not be called');
      },
    });

  test('is not checked, with every key once', async () => {
    const { findings, defects } = runRules([needy(false)], await buildOf(plan()));
    expect(defects).toEqual([]);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      rule: 'mass.needy',
      verdict: 'not checked',
      missing: ['van.one', 'van.shared', 'van.three'],
      cautions: ['a caution'],
      path: ['van'],
    });
    expect(words(findings[0]?.reason)).toContain('does not say enough for this check');
  });

  test('says nothing where it has only information to give', async () => {
    expect(runRules([needy(true)], await buildOf(plan()))).toEqual({
      findings: [],
      notes: [],
      defects: [],
    });
  });

  test('gets what it needs when all of it is there', async () => {
    const counts = defineRule({
      ...text('mass.counts'),
      needs: { two: () => given(2), build: (build: Build) => given(build.name) },
      check: ({ facts }): Output => ({
        findings: [found(text('mass.counts'), { subject: facts.build, measured: mass(facts.two) })],
      }),
    });
    const { findings } = runRules([counts], await buildOf(plan('name: Curlew')));
    expect(findings[0]).toMatchObject({ subject: 'Curlew', measured: { value: 2 } });
  });
});

/** What a rule is told of a limit: the region's, or the plan's own where the rule lets the plan set it. */
describe('the limit in force', () => {
  const asks = (override: boolean) =>
    defineRule({
      ...text('mass.asks'),
      ...(override && { override: { limit: 'side-difference' as const, kinds: ['share' as const] } }),
      needs: {},
      check: ({ limit }): Output => {
        const { value, failing, citations, cautions } = limit('side-difference');
        const law = limit('steered-axle-share');
        return {
          findings: [
            found(text('mass.asks'), {
              subject: `${failing ? 'failing' : 'warning'}, law ${law.failing ? 'failing' : 'warning'} ${law.value}`,
              measured: mass(value),
              sources: citations,
              cautions,
            }),
          ],
        };
      },
    });
  const run = async (rule: ReturnType<typeof asks>, planText: string) =>
    runRules([rule], await buildOf(planText)).findings[0];
  const own = 'rules: {mass.asks: {limit: 7 %, reason: the maker says so}}';

  test("is the region's", async () => {
    expect(await run(asks(true), plan())).toMatchObject({
      measured: { value: 0.04 },
      subject: 'warning, law failing 0.3',
    });
  });

  test('is the European figure and can only warn where no region is given', async () => {
    expect(await run(asks(true), withoutCodes())).toMatchObject({
      measured: { value: 0.04 },
      subject: 'warning, law warning 0.3',
    });
  });

  test("is the plan's own where the rule allows it, with the reason cited before the region's sources", async () => {
    const finding = await run(asks(true), plan(own));
    expect(finding?.measured?.value).toBeCloseTo(0.07, 12);
    expect(finding?.sources[0]).toEqual({
      title: "The plan's own limit: the maker says so",
      provenance: 'own choice',
    });
    expect(finding?.sources.length).toBeGreaterThan(1);
    expect(finding?.cautions).not.toEqual([]);
    // Only that one limit: the share of the steered axle stays what the law says.
    expect(finding?.subject).toBe('warning, law failing 0.3');
  });

  test('is not the plan’s where the rule does not allow it', async () => {
    expect((await run(asks(false), plan(own)))?.measured?.value).toBe(0.04);
  });
});

/** Topic, verdict, how much of the limit is used, line, then rule and subject. */
describe('the order of findings', () => {
  const rule = text('mass.order');
  const sorted = (findings: readonly Finding[], lines: Readonly<Record<string, number>> = {}) =>
    sortFindings(findings, ({ subject }) => lines[subject] ?? 0).map(({ subject }) => subject);

  test('topic before verdict, fail before warn before not checked before pass', () => {
    const findings = [
      found(rule, { subject: 'balance pass', topic: 'balance', verdict: 'pass' }),
      found(rule, { subject: 'mass pass', verdict: 'pass' }),
      found(rule, { subject: 'mass not checked', verdict: 'not checked' }),
      found(rule, { subject: 'balance fail', topic: 'balance', verdict: 'fail' }),
      found(rule, { subject: 'mass warn', verdict: 'warn' }),
      found(rule, { subject: 'mass fail', verdict: 'fail' }),
    ];
    expect(sorted(findings)).toEqual([
      'mass fail',
      'mass warn',
      'mass not checked',
      'mass pass',
      'balance fail',
      'balance pass',
    ]);
  });

  test('the furthest past its limit first, even infinitely far', () => {
    const findings = [
      found(rule, { subject: 'none' }),
      found(rule, { subject: 'half', utilisation: 0.5 }),
      found(rule, { subject: 'endless', utilisation: Number.POSITIVE_INFINITY }),
      found(rule, { subject: 'twice', utilisation: 2 }),
    ];
    expect(sorted(findings)).toEqual(['endless', 'twice', 'half', 'none']);
  });

  test('then as in the plan, then by rule and subject', () => {
    const findings = [
      found(rule, { subject: 'b' }),
      found(rule, { subject: 'late' }),
      found(text('mass.earlier'), { subject: 'z' }),
      found(rule, { subject: 'a' }),
    ];
    expect(sorted(findings, { late: 9 })).toEqual(['z', 'a', 'b', 'late']);
  });

  test('does not depend on the order they come in, nor change it', () => {
    const findings = [0.3, 0.9, 0.1, 0.5].map((utilisation) =>
      found(rule, { subject: String(utilisation), utilisation }),
    );
    const before = [...findings];
    const expected = ['0.9', '0.5', '0.3', '0.1'];
    expect(sorted(findings)).toEqual(expected);
    expect(sorted([...findings].reverse())).toEqual(expected);
    expect(findings).toEqual(before);
  });
});
