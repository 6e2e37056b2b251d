import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkPlan } from '../../src/cli/check-plan.ts';
import {
  type Draft,
  drafts,
  isAmount,
  isList,
  type Section,
  type Value,
  write,
} from '../support/random-plan.ts';

/** Slips of a tired hand: a value of nothing, metres for millimetres, kilograms for grams, a sign too many. */
const slip = fc.record({
  at: fc.nat({ max: 80 }),
  times: fc.constantFrom(0, 1000, 0.001, -1, 30, -20, 4),
});

/** The same section with every value multiplied by what its turn says, and without the keys that were forgotten. */
function spoilt(section: Section, next: () => number, forget: (key: string) => boolean): Section {
  return Object.fromEntries(
    Object.entries(section).flatMap(([key, value]): [string, Value][] =>
      value === undefined || forget(key) ? [] : [[key, spoiltValue(value, next, forget)]],
    ),
  );
}

function spoiltValue(value: Value, next: () => number, forget: (key: string) => boolean): Value {
  if (typeof value !== 'object' || isList(value)) return value;
  return isAmount(value) ? { ...value, value: value.value * next() } : spoilt(value, next, forget);
}

const forgettable: readonly string[] = [
  'codes',
  'max_mass',
  'axle_limits',
  'unladen',
  'wheelbase',
  'track',
  'rear_track',
  'overall_length',
  'load_bay',
  'fuel_tank',
  'centre_height',
  'floor_above_ground',
  'behind_front_axle',
  'stores',
  'at',
  'size',
];

const wild = fc
  .tuple(
    drafts,
    fc.array(slip, { maxLength: 3 }),
    fc.oneof(fc.constant<string[]>([]), fc.subarray([...forgettable], { maxLength: 3 })),
  )
  .map(([draft, slips, forgotten]) => {
    let turn = -1;
    const next = () => {
      turn += 1;
      return slips.reduce((factor, { at, times }) => (at === turn ? factor * times : factor), 1);
    };
    const { codes, ...sections } = draft;
    const rest = spoilt(sections, next, (key) => forgotten.includes(key));
    return write({ ...emptyDraft, ...(!forgotten.includes('codes') && { codes }), ...rest });
  });

const emptyDraft: Draft = {
  codes: undefined,
  van: {},
  people: {},
  fixtures: {},
  build_ups: {},
  tanks: {},
  stores: undefined,
};

// Whatever is slipped or forgotten: either the plan is refused with its problems, or every check runs to its end, and
// every number in the report is one.
test('no plan makes a check stop', async () => {
  let checkedPlans = 0;
  await fc.assert(
    fc.asyncProperty(wild, async (text) => {
      const checked = await checkPlan('wild.yaml', text, () => import('../../src/plan/calculator.ts'));
      if (!checked.ok) {
        expect(checked.problems.length).toBeGreaterThan(0);
        return;
      }
      checkedPlans += 1;
      expect(checked.defects).toEqual([]);
      for (const { rule, measured, limit, margin, tolerance, probability, missing, verdict } of checked.report
        .findings) {
        for (const number of [measured?.value, limit?.measure.value, margin?.value, tolerance?.value])
          expect({ rule, number }).not.toEqual({ rule, number: Number.NaN });
        if (probability !== undefined) expect(probability).toBeGreaterThanOrEqual(0);
        if (verdict === 'not checked') expect(missing?.length).toBeGreaterThan(0);
      }
    }),
    { numRuns: 100 },
  );
  expect(checkedPlans).toBeGreaterThan(10);
});
