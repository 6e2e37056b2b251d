import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/program.ts';
import { topics } from '../../src/engine/finding.ts';

const folder = mkdtempSync(join(tmpdir(), 'storystick-'));
afterAll(() => rmSync(folder, { recursive: true }));

const file = (name: string, lines: string): string => {
  const path = join(folder, name);
  writeFileSync(path, `storystick: 1\n${lines}\n`);
  return path;
};

const light = file('light.yaml', 'van: {max_mass: 3500 kg, unladen: {front: 1000 kg, rear: 1000 kg}}');
const heavy = file('heavy.yaml', 'van: {max_mass: 1500 kg, unladen: {front: 1000 kg, rear: 1000 kg}}');
const close = file(
  'close.yaml',
  'van: {max_mass: 2200 kg, unladen: {front: 1000 kg, rear: 1000 kg ± 150 kg}}',
);
const unread = file('unread.yaml', 'van: {max_mass: 3500}');

async function storystick(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  let [out, err] = ['', ''];
  const code = await run(args, {
    version: '1.2.3',
    width: 100,
    colour: false,
    print: (text) => {
      out += text;
    },
    complain: (text) => {
      err += text.replaceAll(`${folder}/`, '');
    },
    loadCalculator: () => import('../../src/plan/calculator.ts'),
  });
  return { code, out, err };
}

describe('a plan', () => {
  test.each([
    ['that passes', [light], 0],
    ['that fails', [heavy], 1],
    ['that warns', [close], 0],
    ['that warns, strictly', [close, '--strict'], 1],
    ['that fails, as JSON', [heavy, '--json'], 1],
    ['that fails, in short', [heavy, '--quiet'], 1],
    ['that cannot be read', [unread], 2],
    ['that cannot be read, as JSON', [unread, '--json'], 2],
    ['that is not there', [join(folder, 'nowhere.yaml')], 2],
  ])('%s', async (_, args, code) => {
    expect((await storystick('check', ...args)).code).toEqual(code);
  });

  test('reports go to standard output, and what cannot be read to standard error', async () => {
    expect(await storystick('check', heavy)).toMatchObject({ err: '', out: expect.stringContaining('fail') });
    const { out, err } = await storystick('check', unread);
    expect(out).toBe('');
    expect(err).toMatch(/^unread\.yaml:2:17: /);
  });
});

describe('a command line that cannot be understood says so, says what to write, and ends with 2', () => {
  const usage = '  expected: `storystick check plan.yaml`; `storystick check --help` shows all options\n';
  const topicList = `  expected: one of ${topics.join(', ')}\n`;

  test.each([
    ['an unknown command', ['chek', light], `unknown command \`chek\`\n  did you mean: check\n${usage}`],
    ['an unknown command like none', ['weigh'], `unknown command \`weigh\`\n${usage}`],
    ['no plan', ['check'], `no plan is given\n${usage}`],
    [
      'two plans',
      ['check', light, heavy],
      `too many arguments for \`check\`. Expected 1 argument but got 2.\n${usage}`,
    ],
    [
      'an unknown option',
      ['check', '--detial', light],
      `unknown option \`--detial\`\n  did you mean: --detail\n${usage}`,
    ],
    ['an unknown option in front', ['--strict', 'check', light], `unknown option \`--strict\`\n${usage}`],
    ['an unknown short option', ['check', '-q', light], `unknown option \`-q\`\n${usage}`],
    [
      'a topic that is none',
      ['check', '--only', 'nonsense', light],
      `\`nonsense\` is not a topic\n${topicList}`,
    ],
    [
      'a topic with a slip',
      ['check', light, '--only', 'mass,balnce'],
      `\`balnce\` is not a topic\n  did you mean: balance\n${topicList}`,
    ],
    ['an empty topic', ['check', light, '--only', ''], `\`\` is not a topic\n${topicList}`],
    ['no topic', ['check', light, '--only'], `option \`--only <topics>\` argument missing\n${usage}`],
    [
      'a value for a switch',
      ['check', light, '--json=3'],
      `unknown option \`--json=3\`\n  did you mean: --json\n${usage}`,
    ],
    ['help as a command', ['help'], `unknown command \`help\`\n${usage}`],
    ['an escape sequence', ['\u001B[31mweigh'], `unknown command \`\\u{1b}[31mweigh\`\n${usage}`],
  ])('%s', async (_, args, words) => {
    expect(await storystick(...args)).toEqual({ code: 2, out: '', err: words });
  });

  test('nothing at all: the help, and which part of it is missing', async () => {
    const { code, out, err } = await storystick();
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(/^no command is given\n\nUsage: storystick/);
    expect(err).toContain('  check <plan> ');
  });
});

describe('help and version end with 0, on standard output', () => {
  test.each([[['--help']], [['-h']], [['check', '--help']], [['check', light, '-h']]])('%j', async (args) => {
    const { code, out, err } = await storystick(...args);
    expect(code).toBe(0);
    expect(err).toBe('');
    expect(out).toMatch(/^Usage: storystick/);
  });

  test.each(['--version', '-V'])('%s', async (option) => {
    expect(await storystick(option)).toEqual({ code: 0, out: '1.2.3\n', err: '' });
  });
});

test('topics may be given with commas, again, and in front of the plan', async () => {
  const once = await storystick('check', light, '--only', 'mass,balance');
  expect(once.code).toBe(0);
  expect(await storystick('check', '--only', 'mass', '--only', 'balance', light)).toEqual(once);
  expect(await storystick('check', '--only', 'mass, balance', light)).toEqual(once);
  expect((await storystick('check', '--only', 'mass', light)).out).not.toEqual(once.out);
});

describe('the process itself', () => {
  const main = new URL('../../src/cli/main.ts', import.meta.url).pathname;
  const storystickProcess = (...args: string[]) =>
    spawnSync(process.execPath, ['--import', 'tsx', main, ...args], { encoding: 'utf8' });

  test('ends with the code of the check', () => {
    expect(storystickProcess('check', heavy)).toMatchObject({ status: 1, stderr: '' });
    expect(storystickProcess('check', unread)).toMatchObject({ status: 2, stdout: '' });
  });

  test('a reader that closes the pipe is no error', () => {
    const script = `{ ${process.execPath} --import tsx ${main} check ${light}; echo "ended with $?" >&2; } | true`;
    const { stderr } = spawnSync('sh', ['-c', script], { encoding: 'utf8' });
    expect(stderr).toBe('ended with 0\n');
  });

  test('a full disk is said in one line, without a stack trace', () => {
    const { status, stderr } = spawnSync(
      'sh',
      ['-c', `${process.execPath} --import tsx ${main} check ${light} > /dev/full`],
      { encoding: 'utf8' },
    );
    expect(status).toBe(2);
    expect(stderr).toBe('the report could not be written (ENOSPC)\n');
  });
});
