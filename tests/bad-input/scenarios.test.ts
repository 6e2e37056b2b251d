import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { checkText, readScenarios, writeScenarios } from './scenario.ts';

const folder = new URL('.', import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith('.scenario'));

test('there are scenarios', () => {
  expect(files.length).toBeGreaterThan(8);
});

describe.each(files)('%s', (file) => {
  const path = new URL(file, folder);
  const { comment, cases } = readScenarios(readFileSync(path, 'utf8'));

  test('says of each plan what it said when its words were last read and approved (`vitest -u` rewrites them)', async () => {
    const outcomes = [];
    for (const each of cases) outcomes.push({ ...each, says: (await checkText(each.plan)).complained });
    await expect(writeScenarios(comment, outcomes)).toMatchFileSnapshot(path.pathname);
  });

  test.each(cases)('$name', async ({ plan }) => {
    const { exitCode, printed, complained } = await checkText(plan);
    expect(exitCode).toBe(2);
    expect(printed).toBe('');
    expectPlainWords(complained);

    const heads = complained.split('\n').filter((line) => line.startsWith('plan.yaml'));
    const [, counted] = /^(\d+) problems?: nothing was checked/m.exec(complained) ?? [];
    expect(heads.length).toBeGreaterThan(0);
    expect(heads).toHaveLength(Number(counted));
    const lines = plan.split('\n');
    for (const head of heads) {
      const [, line, column] = /^plan\.yaml:(\d+):(\d+): ./.exec(head) ?? [];
      expect(Number(line), head).toBeLessThanOrEqual(lines.length);
      expect(Number(column), head).toBeLessThanOrEqual((lines[Number(line) - 1] ?? '').length + 1);
    }
  });

  test('no two cases have the same name', () => {
    const names = cases.map(({ name }) => name);
    expect(names).toEqual([...new Set(names)]);
  });
});

/** Nothing of the machinery shows: no stack trace, no value that was never meant to be read, no library's words. */
function expectPlainWords(text: string): void {
  expect(text).not.toMatch(/\n {4}at |undefined|\[object |\bNaN\b|\bInfinity\b|[Zz]od|\{section\}/);
  // The marks that part the words of one message from each other.
  expect(text).not.toContain('\u0000');
  expect(text).not.toContain('\u0001');
}
