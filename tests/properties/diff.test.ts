import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compare } from '../../src/engine/compare/compare.ts';
import { type Comparison, type Direction, type Edit, isSame } from '../../src/engine/compare/comparison.ts';
import { isWorse } from '../../src/engine/compare/standing.ts';
import { besideEachOther } from '../../src/engine/compare/variants.ts';
import { renderJsonDiff } from '../../src/report/diff/json.ts';
import { jsonDiffSchema } from '../../src/report/diff/json-schema.ts';
import { comparedText } from '../support/compared.ts';
import { curlewData, edited, planText, randomEdits } from '../support/edited-curlew.ts';

const examples = [
  'examples/first-lines.yaml',
  ...['curlew', 'oak', 'crowded', 'tangled', 'thin-cables'].map((name) => `examples/curlew/${name}.yaml`),
];

describe('a plan and itself', () => {
  test.each(examples)('%s', async (file) => {
    const text = readFileSync(file, 'utf8');
    expect(isSame(compare(await comparedText(text), await comparedText(text)))).toBe(true);
  });

  test('written in other words, and in another order of its sections', async () => {
    const data = curlewData();
    const turned = Object.fromEntries(Object.entries(data).reverse());
    const comparison = compare(
      await comparedText(readFileSync('examples/curlew/curlew.yaml', 'utf8')),
      await comparedText(planText(turned)),
    );
    expect(comparison.edits).toEqual([]);
    expect(comparison.verdicts).toEqual([]);
  });
});

const opposite: Readonly<Record<Direction, Direction>> = {
  rearward: 'forward',
  forward: 'rearward',
  'to the right': 'to the left',
  'to the left': 'to the right',
  up: 'down',
  down: 'up',
};

const rounded = (value: number): number => Number(value.toPrecision(9)) || 0;

/** What an edit says, without which way round it was made. */
function turnedRound(edit: Edit): string {
  const { kind, before, after, change, moves, pathBefore, pathAfter } = edit;
  return JSON.stringify([
    kind === 'added' ? 'removed' : kind === 'removed' ? 'added' : kind,
    after,
    before,
    change && rounded(-change.value),
    moves?.map(({ direction, by }) => [opposite[direction], rounded(by.value)]),
    pathAfter,
    pathBefore,
  ]);
}

const straight = ({ kind, before, after, change, moves, pathBefore, pathAfter }: Edit): string =>
  JSON.stringify([
    kind,
    before,
    after,
    change && rounded(change.value),
    moves?.map(({ direction, by }) => [direction, rounded(by.value)]),
    pathBefore,
    pathAfter,
  ]);

/** Rule, verdicts and subjects of what changed: there and back these are the same, turned round. */
function changes({ verdicts }: Comparison, isBack: boolean): readonly string[] {
  return verdicts
    .map((change) => {
      const before = 'before' in change ? change.before : undefined;
      const after = 'after' in change ? change.after : undefined;
      const [first, second] = isBack ? [after, before] : [before, after];
      return `${change.shown.rule}: ${first?.verdict} ${first?.subject} → ${second?.verdict} ${second?.subject}`;
    })
    .sort();
}

function values({ moved }: Comparison, sign: 1 | -1): readonly string[] {
  return moved
    .map(({ before, after, change, margin }) => {
      const subjects = sign === 1 ? [before.subject, after.subject] : [after.subject, before.subject];
      return JSON.stringify([
        after.rule,
        ...subjects,
        rounded(sign * change.value),
        margin && rounded(sign * margin.change.value),
      ]);
    })
    .sort();
}

test('there and back is the same, turned round', async () => {
  let [renames, moves, worse] = [0, 0, 0];
  await fc.assert(
    fc.asyncProperty(randomEdits, randomEdits, async (one, other) => {
      const [a, b] = [await comparedText(edited(one)), await comparedText(edited(other))];
      const [there, back] = [compare(a, b), compare(b, a)];
      expect(back.edits.map(turnedRound).sort()).toEqual(there.edits.map(straight).sort());
      expect(changes(back, true)).toEqual(changes(there, false));
      expect(values(back, -1)).toEqual(values(there, 1));
      expect(isSame(back)).toBe(isSame(there));
      // Whoever gains everything has lost nothing: not both ways can be free of steps back unless no verdict is worse.
      const turned = there.verdicts.some(({ turn }) => turn === 'better');
      if (turned) expect(isWorse(back)).toBe(true);
      renames += there.edits.filter(({ kind }) => kind === 'renamed').length;
      moves += there.edits.filter(({ kind }) => kind === 'moved').length;
      if (isWorse(there)) worse += 1;
    }),
    { numRuns: 15 },
  );
  // The edits that are tried reach what there is to find.
  expect(Math.min(renames, moves, worse)).toBeGreaterThan(0);
});

test('every comparison is as its JSON schema says, and holds the cautions of all that it shows', async () => {
  await fc.assert(
    fc.asyncProperty(randomEdits, async (edits) => {
      const a = await comparedText(readFileSync('examples/curlew/curlew.yaml', 'utf8'));
      const comparison = compare(a, await comparedText(edited(edits)));
      const json = renderJsonDiff(comparison, { version: 'test', failOn: 'worse', exitCode: 0 });
      const read = jsonDiffSchema.parse(JSON.parse(json));
      for (const caution of comparison.verdicts.flatMap(({ shown }) => shown.cautions)) {
        expect(JSON.stringify(read)).toContain(JSON.stringify(caution).slice(1, -1));
      }
    }),
    { numRuns: 5 },
  );
});

test('two variants side by side differ where a comparison of them says so', async () => {
  await fc.assert(
    fc.asyncProperty(randomEdits, randomEdits, async (one, other) => {
      const sides = [await comparedText(edited(one)), await comparedText(edited(other))];
      const [a, b] = sides;
      if (!a || !b) throw new Error('two sides');
      const { rows } = besideEachOther(sides);
      const { verdicts, moved } = compare(a, b);
      const counts = (at: number) => rows.filter(({ findings }) => findings[at] !== undefined).length;
      expect(counts(0)).toBeGreaterThanOrEqual(a.report.findings.length - 1);
      expect(counts(1)).toBeGreaterThanOrEqual(b.report.findings.length - 1);
      const told =
        verdicts.length + moved.filter(({ before, after }) => before.verdict === after.verdict).length;
      expect(rows.filter(({ isSame: same }) => !same).length).toBe(told);
    }),
    { numRuns: 6 },
  );
});
