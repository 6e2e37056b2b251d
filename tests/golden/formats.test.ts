import { expect, test } from 'vitest';
import { check } from '../../src/cli/check.ts';

/** What other programs, and people on a pull request, are given. Review a changed file like code. */
test.each([
  ['sarif', 'json'],
  ['junit', 'xml'],
  ['markdown', 'md'],
] as const)('the first example as %s', async (format, extension) => {
  let printed = '';
  const exitCode = await check(
    'examples/first-lines.yaml',
    { detail: false, quiet: false, assumptions: false, strict: false, format },
    {
      version: 'test',
      width: 100,
      colour: false,
      print: (text) => {
        printed += text;
      },
      complain: (text) => {
        printed += text;
      },
      loadCalculator: () => import('../../src/plan/calculator.ts'),
    },
  );
  expect(exitCode).toBe(0);
  await expect(printed).toMatchFileSnapshot(`expected/first-lines-yaml.${format}.${extension}`);
});
