import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { check } from '../../src/cli/check.ts';
import type { Surroundings } from '../../src/cli/surroundings.ts';
import { reportOf } from '../support/check.ts';

/** What each example prints, as a reader sees it. Review a changed file like code. */
const examples = [
  { file: 'examples/first-lines.yaml', exitCode: 0 },
  { file: 'examples/curlew/curlew.yaml', exitCode: 0 },
  { file: 'examples/curlew/oak.yaml', exitCode: 1 },
  { file: 'examples/curlew/crowded.yaml', exitCode: 1 },
  { file: 'examples/curlew/tangled.yaml', exitCode: 1 },
  { file: 'examples/curlew/thin-cables.yaml', exitCode: 1 },
  { file: 'examples/curlew/winter.yaml', exitCode: 1 },
];

const options = { detail: false, quiet: false, assumptions: false, strict: false };

async function run(file: string, width: number, changed: Partial<typeof options> = {}) {
  let printed = '';
  let complained = '';
  const around: Surroundings = {
    version: 'test',
    width,
    colour: false,
    print: (text) => {
      printed += text;
    },
    complain: (text) => {
      complained += text;
    },
    loadCalculator: () => import('../../src/plan/calculator.ts'),
  };
  const exitCode = await check(file, { ...options, ...changed }, around);
  return { printed, complained, exitCode };
}

describe.each(examples)('$file', ({ file, exitCode }) => {
  test.each([60, 120])('at %i columns', async (width) => {
    const { printed, ...rest } = await run(file, width);
    expect(rest).toEqual({ complained: '', exitCode });
    const name = file.replace(/^examples\//, '').replace(/\W+/g, '-');
    await expect(printed).toMatchFileSnapshot(`expected/${name}-${width}.txt`);
  });

  test('lists its assumptions', async () => {
    const { printed } = await run(file, 100, { assumptions: true });
    const name = file.replace(/^examples\//, '').replace(/\W+/g, '-');
    await expect(printed).toMatchFileSnapshot(`expected/${name}-assumptions.txt`);
  });
});

test('curlew in detail shows every source and the lighter materials', async () => {
  const { printed } = await run('examples/curlew/curlew.yaml', 120, { detail: true });
  await expect(printed).toMatchFileSnapshot('expected/curlew-curlew-yaml-detail.txt');
});

test('the first plan of the README is the first example', () => {
  const readme = readFileSync('README.md', 'utf8');
  const plan = /```yaml\n([\s\S]*?)```/.exec(readme)?.[1] ?? '';
  const data = (text: string) =>
    text
      .replace(/#.*$/gm, '')
      .replace(/^name:.*$/m, '')
      .replace(/\s+/g, ' ')
      .trim();
  expect(data(plan)).toBe(data(readFileSync('examples/first-lines.yaml', 'utf8')));
});

/** What the variants are there to teach. */
test.each([
  { file: 'examples/curlew/oak.yaml', topics: ['mass', 'balance'] },
  { file: 'examples/curlew/crowded.yaml', topics: ['fit', 'movement'] },
  { file: 'examples/curlew/tangled.yaml', topics: ['routes'] },
  { file: 'examples/curlew/thin-cables.yaml', topics: ['electrical'] },
])('$file fails in $topics and nowhere else', async ({ file, topics }) => {
  const { findings } = await reportOf(readFileSync(file, 'utf8'));
  const failing = findings.filter(({ verdict }) => verdict === 'fail').map(({ topic }) => topic);
  expect([...new Set(failing)].sort()).toEqual([...topics].sort());
});

test('the winter variant fails on frost, water in the walls and gas that does not boil, and on nothing else', async () => {
  const { findings } = await reportOf(readFileSync('examples/curlew/winter.yaml', 'utf8'));
  const failing = findings.filter(({ verdict }) => verdict === 'fail').map(({ rule }) => rule);
  expect([...new Set(failing)].sort()).toEqual([
    'gas.off-take',
    'heat.interstitial',
    'water.frost-pipes',
    'water.frost-tanks',
  ]);
});
