import { describe, expect, test } from 'vitest';
import { storystick } from '../support/compared.ts';

/** What comparisons of the examples print, as a reader sees it. Review a changed file like code. */
const curlew = 'examples/curlew/curlew.yaml';
const variants = ['oak', 'crowded', 'tangled', 'thin-cables'];
const fileOf = (variant: string): string => `examples/curlew/${variant}.yaml`;

describe.each(variants)('from curlew to %s', (variant) => {
  test('at 80 columns', async () => {
    const { code, out, err } = await storystick(['diff', curlew, fileOf(variant)], 80);
    expect({ code, err }).toEqual({ code: 1, err: '' });
    await expect(out).toMatchFileSnapshot(`expected/diff-curlew-${variant}-80.txt`);
  });
});

test('from oak to curlew at 60 columns', async () => {
  const { code, out } = await storystick(['diff', fileOf('oak'), curlew], 60);
  expect(code).toBe(0);
  await expect(out).toMatchFileSnapshot('expected/diff-oak-curlew-60.txt');
});

test('from curlew to crowded in Markdown', async () => {
  const { out } = await storystick(['diff', curlew, fileOf('crowded'), '--markdown']);
  await expect(out).toMatchFileSnapshot('expected/diff-curlew-crowded.md');
});

test('from curlew to crowded in JSON', async () => {
  const { out } = await storystick(['diff', curlew, fileOf('crowded'), '--json']);
  const { verdicts, ...rest } = JSON.parse(out);
  // The findings themselves are those of `check --json`.
  const said = verdicts.map(({ before: _, after: __, ...change }: Record<string, unknown>) => change);
  await expect(`${JSON.stringify({ ...rest, verdicts: said }, undefined, 2)}\n`).toMatchFileSnapshot(
    'expected/diff-curlew-crowded.json',
  );
});

test.each([80, 160])('four variants side by side at %i columns', async (width) => {
  const files = [curlew, ...['oak', 'crowded', 'thin-cables'].map(fileOf)];
  const { code, out, err } = await storystick(['compare', ...files], width);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  await expect(out).toMatchFileSnapshot(`expected/compare-four-${width}.txt`);
});
