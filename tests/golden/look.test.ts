import { describe, expect, test } from 'vitest';
import { look } from '../../src/cli/look.ts';

/** The picture of each example, as a reader sees it. Review a changed file like code. */
const examples = [
  'examples/first-lines.yaml',
  'examples/curlew/curlew.yaml',
  'examples/curlew/oak.yaml',
  'examples/curlew/crowded.yaml',
  'examples/curlew/tangled.yaml',
];

async function drawn(file: string, width: number, cutM?: number) {
  let [printed, complained] = ['', ''];
  const exitCode = await look(
    file,
    { views: [], ...(cutM !== undefined && { cutM }) },
    {
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
    },
  );
  return { printed, complained, exitCode };
}

const nameOf = (file: string) => file.replace(/^examples\//, '').replace(/\W+/g, '-');

describe.each(examples)('%s', (file) => {
  test.each([80, 120])('at %i columns', async (width) => {
    const { printed, ...rest } = await drawn(file, width);
    expect(rest).toEqual({ complained: '', exitCode: 0 });
    await expect(printed).toMatchFileSnapshot(`expected/look-${nameOf(file)}-${width}.txt`);
  });
});

test('curlew cut at 1.2 m', async () => {
  const { printed } = await drawn('examples/curlew/curlew.yaml', 120, 1.2);
  await expect(printed).toMatchFileSnapshot('expected/look-curlew-curlew-yaml-cut.txt');
});
