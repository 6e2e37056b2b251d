import { expect, test } from 'vitest';
import { circuits } from '../../src/cli/circuits.ts';
import { energy } from '../../src/cli/energy.ts';
import type { Surroundings } from '../../src/cli/surroundings.ts';

/** The installer's list and the year of the example, as a reader sees them. Review a changed file like code. */
async function printed(command: (around: Surroundings) => Promise<number>, width: number): Promise<string> {
  let [out, complained] = ['', ''];
  const exitCode = await command({
    version: 'test',
    width,
    colour: false,
    print: (text) => {
      out += text;
    },
    complain: (text) => {
      complained += text;
    },
    loadCalculator: () => import('../../src/plan/calculator.ts'),
  });
  expect({ exitCode, complained }).toEqual({ exitCode: 0, complained: '' });
  return out;
}

const example = 'examples/curlew/curlew.yaml';

test.each([60, 100, 160])('circuits of curlew at %i columns', async (width) => {
  const text = await printed((around) => circuits(example, around), width);
  await expect(text).toMatchFileSnapshot(`expected/circuits-curlew-${width}.txt`);
});

test.each([60, 100, 160])('energy of curlew at %i columns', async (width) => {
  const text = await printed((around) => energy(example, around), width);
  await expect(text).toMatchFileSnapshot(`expected/energy-curlew-${width}.txt`);
});
