import { execFileSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { checkFile, checkText } from './scenario.ts';

const folder = mkdtempSync(join(tmpdir(), 'storystick-'));
afterAll(() => rmSync(folder, { recursive: true }));

const inFolder = (name: string, make: (path: string) => void): string => {
  const path = join(folder, name);
  make(path);
  return path;
};
const file = (name: string, contents: string | Uint8Array): string =>
  inFolder(name, (path) => writeFileSync(path, contents));

const utf16 = (text: string): Uint8Array => Buffer.from(`\uFEFF${text}`, 'utf16le');
const plan = 'storystick: 1\nvan: {max_mass: 3500 kg}\n';

const troubles: Readonly<Record<string, string>> = {
  'no such file': join(folder, 'nowhere.yaml'),
  'no such folder': join(folder, 'nowhere', 'plan.yaml'),
  'a file where a folder should be': join(file('a-file.yaml', plan), 'plan.yaml'),
  'no name at all': '',
  'a folder': inFolder('a-folder.yaml', (path) => mkdirSync(path)),
  'a name that no file can have': join(folder, `a${'\0'}b`),
  'a path that is too long': join(folder, 'long'.repeat(2000)),
  'a link to itself': inFolder('link.yaml', (path) => symlinkSync(path, path)),
  'a device': '/dev/null',
  'an empty file': file('empty.yaml', ''),
  'blank lines': file('blank.yaml', '\n \n\t\n'),
  'only a byte order mark': file('mark.yaml', '\uFEFF'),
  'more than 5 MiB': file('large.yaml', `# ${'x'.repeat(5.5 * 1024 * 1024)}\n${plan}`),
  'no UTF-8': file('latin.yaml', Buffer.concat([Buffer.from(`${plan}name: caf`), Buffer.from([0xe9, 0x0a])])),
  'half a character at the end': file(
    'half.yaml',
    Buffer.concat([Buffer.from(plan), Buffer.from([0xe2, 0x82])]),
  ),
  'UTF-16, little end first': file('utf16le.yaml', utf16(plan)),
  'UTF-16, big end first': file('utf16be.yaml', Buffer.from(utf16(plan)).swap16()),
  'a NUL byte': file('nul.yaml', 'storystick: 1\nname: Cur\0lew\nvan: {}\n'),
  'an escape sequence': file('escape.yaml', 'storystick: 1\nname: \u001B[31mCurlew\nvan: {}\n'),
  'lines that end in a lone carriage return': file('mac.yaml', plan.replaceAll('\n', '\r')),
  'NUL bytes only': file('zeros.yaml', new Uint8Array(5000)),
};

test('each trouble with a file ends with exit code 2 and plain words about the file', async () => {
  let said = '';
  for (const [name, path] of Object.entries(troubles)) {
    const { exitCode, printed, complained } = await checkFile(path);
    expect(exitCode, name).toBe(2);
    expect(printed, name).toBe('');
    expect(complained, name).not.toMatch(/\n {4}at |undefined|\[object /);
    expect(complained, name).toMatch(/1 problem: nothing was checked/);
    const words = complained
      .replaceAll(`${folder}/`, '')
      .replaceAll('long'.repeat(2000), 'longlong…')
      .replaceAll(/(\\u\{0\}){9,}/g, '\\u{0}…');
    said += `@ case: ${name}\n@ says\n${words}\n`;
  }
  await expect(said).toMatchFileSnapshot(new URL('files.said.txt', import.meta.url).pathname);
});

test('a pipe is not waited for', async () => {
  const pipe = inFolder('pipe.yaml', (path) => execFileSync('mkfifo', [path]));
  const { exitCode, complained } = await checkFile(pipe);
  expect(exitCode).toBe(2);
  expect(complained).toContain('this is no ordinary file');
});

test('a file without permission to read is refused, unless the superuser runs the test', async () => {
  const secret = file('secret.yaml', plan);
  chmodSync(secret, 0o000);
  const { exitCode, complained } = await checkFile(secret);
  const superuser = process.getuid?.() === 0;
  expect(exitCode).toBe(superuser ? 0 : 2);
  expect(complained).toContain(superuser ? '' : 'there is no permission to read the file');
});

describe('what editors put into a file without being asked', () => {
  const spoilt = ['storystick: 1', 'van:', '  max_mass: 3500', '  wheelbase: "3640', '    mm kg"', ''];

  test('a byte order mark in front is no character of the plan', async () => {
    expect(await checkText(`\uFEFF${plan}`)).toMatchObject({ exitCode: 0, complained: '' });
    const { complained } = await checkText('\uFEFFstorystik: 1\nvan: {}\n');
    expect(complained).toMatch(/^plan\.yaml:1:1: `storystik` is not a key of the plan$/m);
  });

  test('line breaks of either sort give the same report, with the same lines and columns', async () => {
    const [unix, dos] = await Promise.all([checkText(spoilt.join('\n')), checkText(spoilt.join('\r\n'))]);
    expect(unix.complained).toMatch(/^plan\.yaml:3:13: /m);
    expect(unix.complained).toMatch(/^plan\.yaml:4:14: /m);
    expect(dos).toEqual(unix);
    expect(await checkText(plan.replaceAll('\n', '\r\n'))).toMatchObject({ exitCode: 0, complained: '' });
  });

  test('no line break at the end', async () => {
    expect(await checkText(plan.trimEnd())).toMatchObject({ exitCode: 0 });
    expect(await checkText('storystick: 1\nvan: {max_mass: 3500}')).toMatchObject({ exitCode: 2 });
  });
});

test.each([
  ['brackets', `name: ${'['.repeat(20_000)}`],
  ['closed brackets', `name: ${'['.repeat(20_000)}${']'.repeat(20_000)}`],
  ['braces', `name: ${'{a: '.repeat(20_000)}`],
  ['dashes', `name:\n  ${'- '.repeat(20_000)}x`],
  ['question marks', `${'? '.repeat(20_000)}x`],
  ['indentation', Array.from({ length: 1500 }, (_, depth) => `${' '.repeat(depth)}a:`).join('\n')],
])('nesting without end is refused, not run out of stack on: %s', async (_, text) => {
  const { exitCode, complained } = await checkText(`storystick: 1\nvan: {}\n${text}\n`);
  expect(exitCode).toBe(2);
  expect(complained).toContain('sections and lists are nested too deeply here');
});

test('nesting that the parser bears is a plain unknown key', async () => {
  const { exitCode, complained } = await checkText(
    `storystick: 1\nvan: {}\ndeep: ${'['.repeat(200)}${']'.repeat(200)}\n`,
  );
  expect(exitCode).toBe(2);
  expect(complained).toContain('`deep` is not a key of the plan');
});

test('a line of 5,000 characters is shown only around the trouble', async () => {
  const things = Array.from({ length: 200 }, (_, index) => `thing ${index}: {mass: 1 kg}`);
  things[100] = 'bed: {mass: 3 kk}';
  const { complained } = await checkText(`storystick: 1\nvan: {}\nfixtures: {${things.join(', ')}}\n`);
  expect(complained).toMatchInlineSnapshot(`
    "plan.yaml:3:2414: fixtures.bed.mass: \`kk\` is not a unit that is known here
        3 | … 1 kg}, bed: {mass: 3 kk}, thing 101: {mass: 1 kg}, thing 102: {mass: 1 kg}, thing 103: {mass: 1 kg}…
          |                      ^^^^
      did you mean: kg
      expected: one of kg, g, t, lb, oz, st

    1 problem: nothing was checked, because the plan could not be understood.
    "
  `);
});

test('wide characters, tabs and signs of several parts do not push the marks aside', async () => {
  const { complained } = await checkText(
    'storystick: 1\nvan: {}\nfixtures:\n  冷蔵庫: {mass: 3 kk}\n  ❄️\t: {mass:\t3 kk}\n  e\u0301tage\u0301re: {mass: 3 kk}\n',
  );
  expect(complained).toMatchInlineSnapshot(`
    "plan.yaml:4:15: fixtures.冷蔵庫.mass: \`kk\` is not a unit that is known here
        4 |   冷蔵庫: {mass: 3 kk}
          |                  ^^^^
      did you mean: kg
      expected: one of kg, g, t, lb, oz, st

    plan.yaml:5:15: fixtures.❄.mass: \`kk\` is not a unit that is known here
        5 |   ❄ : {mass: 3 kk}
          |              ^^^^
      did you mean: kg
      expected: one of kg, g, t, lb, oz, st

    plan.yaml:6:21: fixtures.étagére.mass: \`kk\` is not a unit that is known here
        6 |   étagére: {mass: 3 kk}
          |                   ^^^^
      did you mean: kg
      expected: one of kg, g, t, lb, oz, st

    3 problems: nothing was checked, because the plan could not be understood.
    "
  `);
});
