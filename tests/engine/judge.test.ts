import { describe, expect, test } from 'vitest';
import {
  exceeds,
  type Judgement,
  judge,
  meaningless,
  sourceInWords,
  withoutLimit,
} from '../../src/engine/judge.ts';
import { say } from '../../src/engine/phrase.ts';
import { words } from '../support/check.ts';

const rule = {
  id: 'mass.test',
  topic: 'mass',
  title: 'a test',
  why: 'To see.',
  formula: 'm ≤ M',
  sources: [{ title: 'the method', provenance: 'read' }],
  cautions: ['mind the gap'],
  place: ['van'],
} as const;

const judgement = (changes: Partial<Judgement>): Judgement => ({
  rule,
  subject: 'box',
  path: ['fixtures', 'box'],
  kind: 'mass',
  measured: { value: 90, standard: 0 },
  limit: 100,
  sense: 'at most',
  broken: 'fail',
  reason: say`It is heavy.`,
  ...changes,
});

describe('at most', () => {
  test.each([
    { value: 90, verdict: 'pass', margin: 10, utilisation: 0.9 },
    { value: 100, verdict: 'pass', margin: 0, utilisation: 1 },
    { value: 110, verdict: 'fail', margin: -10, utilisation: 1.1 },
    { value: -20, verdict: 'pass', margin: 120, utilisation: -0.2 },
  ])('$value of 100: $verdict', ({ value, verdict, margin, utilisation }) => {
    const finding = judge(judgement({ measured: { value, standard: 0 } }));
    expect(finding).toMatchObject({
      verdict,
      margin: { kind: 'mass', value: margin },
      limit: { measure: { kind: 'mass', value: 100 }, sense: 'at most' },
    });
    expect(finding.utilisation).toBeCloseTo(utilisation, 12);
  });
});

describe('at least', () => {
  const atLeast = (value: number) =>
    judge(judgement({ sense: 'at least', measured: { value, standard: 0 }, broken: 'warn' }));

  // Utilisation is turned round, so that the edge is at 1 and beyond it is more: 100 / 80 = 1.25.
  test.each([
    { value: 125, verdict: 'pass', margin: 25, utilisation: 0.8 },
    { value: 100, verdict: 'pass', margin: 0, utilisation: 1 },
    { value: 80, verdict: 'warn', margin: -20, utilisation: 1.25 },
  ])('$value of 100: $verdict', ({ value, verdict, margin, utilisation }) => {
    const finding = atLeast(value);
    expect(finding).toMatchObject({ verdict, margin: { value: margin } });
    expect(finding.utilisation).toBeCloseTo(utilisation, 12);
  });

  // Nothing, or less, where something must be: past any figure, so it is first in a list sorted by utilisation.
  test.each([0, -50])('%d of 100: infinitely past it', (value) => {
    expect(atLeast(value).utilisation).toBe(Number.POSITIVE_INFINITY);
  });
});

test('a limit of nothing has no share of it, unless it is broken', () => {
  const ofNothing = (value: number) =>
    judge(judgement({ limit: 0, measured: { value, standard: 0 } })).utilisation;
  expect(ofNothing(0)).toBeUndefined();
  expect(ofNothing(-1)).toBeUndefined();
  expect(ofNothing(1)).toBe(Number.POSITIVE_INFINITY);
});

/** Sums of decimal fractions are out by parts in 10¹⁶; a part in 10⁹ is far more than that and far less than a gram. */
describe('just met is kept', () => {
  test.each([
    { sense: 'at most', value: 100 + 5e-8, verdict: 'pass' },
    { sense: 'at most', value: 100 + 5e-7, verdict: 'fail' },
    { sense: 'at least', value: 100 - 5e-8, verdict: 'pass' },
    { sense: 'at least', value: 100 - 5e-7, verdict: 'fail' },
  ] as const)('$sense 100, $value: $verdict', ({ sense, value, verdict }) => {
    expect(judge(judgement({ sense, measured: { value, standard: 0 } })).verdict).toBe(verdict);
  });

  test('exceeds() is the same for everyone who compares', () => {
    expect(exceeds(0.1 + 0.2, 0.3)).toBe(false);
    expect(exceeds(0.3001, 0.3)).toBe(true);
    expect(exceeds(-0.3, -0.3001)).toBe(true);
    expect(exceeds(1e-30, 0)).toBe(true);
  });
});

/** U = 2 u. The band of doubt is open at its far edge: a margin of exactly U is clear of it. */
describe('a limit within the tolerance', () => {
  const near = (value: number, standard: number, changes: Partial<Judgement> = {}) =>
    judge(judgement({ measured: { value, standard, dominant: 'material oak' }, ...changes }));

  test('warns, says so, and names where most of it comes from', () => {
    const finding = near(95, 3);
    expect(finding.verdict).toBe('warn');
    expect(finding.tolerance).toEqual({ kind: 'mass', value: 6 });
    expect(words(finding.reason)).toBe(
      'It is heavy. The limit lies within the tolerance of ± 6.0 kg, most of which comes from the density of oak.',
    );
  });

  test('without a source it still says so', () => {
    const finding = judge(judgement({ measured: { value: 95, standard: 3 } }));
    expect(words(finding.reason)).toBe('It is heavy. The limit lies within the tolerance of ± 6.0 kg.');
  });

  test.each([
    { value: 94, verdict: 'pass' },
    { value: 94.001, verdict: 'warn' },
    { value: 100, verdict: 'warn' },
    { value: 100.001, verdict: 'fail' },
  ])('$value ± 6 of 100: $verdict', ({ value, verdict }) => {
    expect(near(value, 3).verdict).toBe(verdict);
  });

  test('a doubt is never more than a warning, and a broken limit is not doubtful', () => {
    expect(near(95, 3, { broken: 'fail' }).verdict).toBe('warn');
    expect(words(near(105, 3).reason)).toBe('It is heavy.');
  });

  // Φ((95 − 100) / 3) = Φ(−1.667) = 4.78 %; broken by as much, the other 95.2 %.
  test('the chance that the limit is broken', () => {
    expect(near(95, 3).probability).toBeCloseTo(0.0478, 4);
    expect(near(105, 3).probability).toBeCloseTo(0.9522, 4);
    expect(near(105, 3, { sense: 'at least' }).probability).toBeCloseTo(0.0478, 4);
    expect(near(100, 3).probability).toBeCloseTo(0.5, 12);
  });

  test('nothing is said of chance where nothing is uncertain', () => {
    const finding = judge(judgement({ measured: { value: 95, standard: 0 } }));
    expect(finding).not.toHaveProperty('probability');
    expect(finding).not.toHaveProperty('tolerance');
  });
});

/** The remedy is told by how much the value must move to be clear of the limit and of the tolerance. */
describe('the remedy', () => {
  const asked: number[] = [];
  const remedy = (shortfall: number) => {
    asked.push(shortfall);
    return say`lose ${{ kind: 'mass', value: shortfall }}`;
  };

  test('is asked for the whole overload when the limit is broken', () => {
    const finding = judge(judgement({ measured: { value: 110, standard: 0 }, remedy }));
    expect(asked.pop()).toBeCloseTo(10, 12);
    expect(words(finding.remedy)).toBe('lose 10 kg');
  });

  // Margin 5, U = 6: one more to be clear.
  test('is asked for the rest of the tolerance when it is doubtful', () => {
    const finding = judge(judgement({ measured: { value: 95, standard: 3 }, remedy }));
    expect(asked.pop()).toBeCloseTo(1, 12);
    expect(words(finding.remedy)).toBe('To be clear of the tolerance: lose 1.0 kg');
  });

  test('is not asked for when all is well', () => {
    expect(judge(judgement({ remedy }))).not.toHaveProperty('remedy');
    expect(asked).toEqual([]);
  });

  test('may be unknown', () => {
    const finding = judge(judgement({ measured: { value: 110, standard: 0 }, remedy: () => undefined }));
    expect(finding).not.toHaveProperty('remedy');
  });
});

test('sources of the subject come before those of the rule, and cautions after', () => {
  const finding = judge(
    judgement({ sources: [{ title: 'the limit', provenance: 'read' }], cautions: ['and the step'] }),
  );
  expect(finding.sources.map(({ title }) => title)).toEqual(['the limit', 'the method']);
  expect(finding.cautions).toEqual(['mind the gap', 'and the step']);
});

test('a value that is no number is an error, not a pass', () => {
  expect(() => judge(judgement({ measured: { value: Number.NaN, standard: 1 } }))).toThrow(RangeError);
  expect(() => judge(judgement({ measured: { value: Number.NaN, standard: 0 } }))).toThrow(RangeError);
});

test('without a limit: shown, not checked, and the key to add', () => {
  const { limit: _, sense: __, broken: ___, ...subject } = judgement({});
  const finding = withoutLimit(subject, 'van.centre_limits.height');
  expect(finding).toMatchObject({
    verdict: 'not checked',
    measured: { value: 90 },
    missing: ['van.centre_limits.height'],
    cautions: ['mind the gap'],
  });
  expect(finding).not.toHaveProperty('margin');
  expect(words(finding.remedy)).toBe("Add the maker's limit as `van.centre_limits.height`.");
});

test('a figure without meaning: a verdict without a margin', () => {
  const { limit: _, sense: __, broken: ___, ...subject } = judgement({});
  expect(meaningless(subject, 'warn', say`Look again.`)).toMatchObject({
    verdict: 'warn',
    remedy: ['Look again.'],
  });
  expect(meaningless(subject, 'fail', undefined)).not.toHaveProperty('remedy');
});

describe('where an uncertainty comes from, in words', () => {
  test.each([
    { source: 'material birch plywood', said: 'the density of birch plywood' },
    { source: 'fluid diesel', said: 'the density of diesel' },
    { source: 'fixtures.bed.at.lengthways', said: 'where bed is lengthways' },
    { source: 'stores.winter clothes.at.sideways', said: 'where winter clothes is sideways' },
    { source: 'tanks.fresh tank.at.upwards', said: 'where fresh tank is upwards' },
    { source: 'fixtures.shelf no. 2.at.lengthways', said: 'where shelf no. 2 is lengthways' },
    { source: 'people.seats.driver.lengthways', said: 'where driver is lengthways' },
    { source: 'van.fuel_tank.sideways', said: 'where the fuel tank is sideways' },
    { source: 'fixtures.worktop.at.lengthways.size', said: 'the length of worktop' },
    { source: 'fixtures.worktop.at.sideways.size', said: 'the width of worktop' },
    { source: 'fixtures.worktop.at.upwards.size', said: 'the height of worktop' },
    { source: 'fixtures.bed.mass', said: '`fixtures.bed.mass`' },
    { source: 'params.shelf_mass', said: '`params.shelf_mass`' },
    { source: 'van.load_bay.behind_front_axle', said: '`van.load_bay.behind_front_axle`' },
  ])('$source', ({ source, said }) => {
    expect(sourceInWords(source)).toBe(said);
  });
});
