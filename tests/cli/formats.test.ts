import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/program.ts';
import { formats } from '../../src/report/format.ts';
import { againstJsonReport, againstJunit, inXml, sarifOf } from '../support/formats.ts';

const folder = mkdtempSync(join(tmpdir(), 'storystick-formats-'));
afterAll(() => rmSync(folder, { recursive: true }));

const heavy = join(folder, 'heavy van.yaml');
writeFileSync(heavy, 'storystick: 1\nvan: {max_mass: 1500 kg, unladen: {front: 1000 kg, rear: 1000 kg}}\n');
const unread = join(folder, 'unread.yaml');
writeFileSync(unread, 'storystick: 1\nvan: {max_mass: 1500}\n');

async function check(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  let [out, err] = ['', ''];
  const code = await run(['check', ...args], {
    version: '1.2.3',
    width: 100,
    colour: true,
    print: (text) => {
      out += text;
    },
    complain: (text) => {
      err += text;
    },
    loadCalculator: () => import('../../src/plan/calculator.ts'),
  });
  return { code, out, err };
}

const outputOf = async (...args: string[]): Promise<string> => (await check(heavy, ...args)).out;

describe('each format is what it says it is, and ends with the code of the check', () => {
  test.each(formats)('%s', async (format) => {
    expect(await check(heavy, '--format', format)).toMatchObject({ code: 1, err: '' });
    expect(await check(unread, '--format', format)).toMatchObject({ code: 2, out: '' });
  });

  test('the table is what is printed without a word about it', async () => {
    expect(await outputOf('--format', 'table')).toBe(await outputOf());
  });

  test('json', async () => {
    expect(againstJsonReport(await outputOf('--format', 'json'))).toEqual([]);
  });

  test('sarif', async () => {
    const [sarif] = sarifOf(await outputOf('--format', 'sarif')).runs;
    expect(sarif?.invocations).toEqual([{ executionSuccessful: true, exitCode: 1 }]);
    expect(sarif?.tool.driver.version).toBe('1.2.3');
    expect(sarif?.artifacts?.[0]?.location?.uri).toMatch(/^file:\/\/\/.*\/heavy%20van\.yaml$/);
    const total = sarif?.tool.driver.rules?.find(({ id }) => id === 'mass.total');
    // Of the rule itself, which the report does not carry.
    expect(total?.fullDescription?.text).not.toBe(total?.shortDescription?.text);
  });

  test('junit, strict or not', async () => {
    const text = await outputOf('--format', 'junit');
    expect(againstJunit(text)).toEqual([]);
    const failures = async (...args: string[]) =>
      Number(inXml(await outputOf('--format', 'junit', ...args), '/testsuites/@failures')[0]);
    expect(await failures('--strict')).toBeGreaterThanOrEqual(await failures());
  });

  test('markdown', async () => {
    expect(await outputOf('--format', 'markdown')).toMatch(/^## .*\n\n\*\*\d+ fail, /);
    expect(await outputOf('--markdown', '--only', 'balance')).toContain('In topics not shown: ');
  });

  test('no format carries colours but the table', async () => {
    for (const format of formats) {
      const colour = '\u001b[';
      expect((await outputOf('--format', format)).includes(colour)).toBe(format === 'table');
    }
  });
});

test('the short ways of writing are the long ones', async () => {
  expect(await outputOf('--json')).toBe(await outputOf('--format', 'json'));
  expect(await outputOf('--json')).toBe(await outputOf('--format=json', '--json'));
  expect(await outputOf('--markdown')).toBe(await outputOf('--format', 'markdown'));
});

describe('what cannot be meant is refused with 2, and a word why', () => {
  test.each([
    [
      ['--json', '--markdown'],
      '`--json` and `--markdown` contradict each other: each asks for another format',
    ],
    [
      ['--format', 'sarif', '--json'],
      '`--format sarif` and `--json` contradict each other: each asks for another format',
    ],
    [
      ['--format', 'junit', '--format', 'sarif'],
      '`--format junit` and `--format sarif` contradict each other: each asks for another format',
    ],
    [
      ['--format', 'table', '--markdown'],
      '`--format table` and `--markdown` contradict each other: each asks for another format',
    ],
    [
      ['--json', '--detail'],
      '`--json` and `--detail` contradict each other: `--detail` is for the table on a terminal',
    ],
    [
      ['--format', 'junit', '--quiet'],
      '`--format junit` and `--quiet` contradict each other: `--quiet` is for the table on a terminal',
    ],
    [
      ['--markdown', '--assumptions'],
      '`--markdown` and `--assumptions` contradict each other: `--assumptions` is for the table on a terminal',
    ],
    [
      ['--format', 'sarif', '--only', 'mass'],
      '`--format sarif` and `--only` contradict each other: programs that read `sarif` are given the whole report',
    ],
    [
      ['--detail', '--quiet'],
      '`--detail` and `--quiet` contradict each other: one asks for more, the other for less',
    ],
    [
      ['--assumptions', '--only', 'mass'],
      '`--assumptions` and `--only` contradict each other: the list of assumed values is always the same',
    ],
  ])('%j', async (args, words) => {
    expect(await check(heavy, ...args)).toEqual({
      code: 2,
      out: '',
      err: `${words}\n  expected: one of the two\n`,
    });
  });

  test('a format that is none', async () => {
    expect(await check(heavy, '--format', 'jsn')).toEqual({
      code: 2,
      out: '',
      err: `\`jsn\` is not a format\n  did you mean: json\n  expected: one of ${formats.join(', ')}\n`,
    });
  });
});
