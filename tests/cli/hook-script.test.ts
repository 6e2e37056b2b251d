import { spawnSync } from 'node:child_process';
import { expect, test } from 'vitest';
import { hookScript, isChained, ownerOf, quoted } from '../../src/cli/hooking/script.ts';

const plain = hookScript({ strict: false, folders: [] });

test('paths of Windows are written as its shell reads them', () => {
  const script = hookScript({
    strict: false,
    folders: [],
    fallback: { launcher: 'C:\\My tools\\storystick.cjs', node: 'D:\\Program Files\\node.exe' },
  });
  expect(script).toContain("tool='C:/My tools/storystick.cjs'\n");
  expect(script).toContain('PATH="$PATH":\'/D/Program Files\';');
  expect(script).not.toContain('\\');
});

test('every name that a folder may have means itself to the shell', () => {
  const name = 'a\'b"c $(d) `e` \\f\ng';
  expect(spawnSync('sh', ['-c', `printf %s ${quoted(name)}`], { encoding: 'utf8' }).stdout).toBe(name);
});

test('the shell finds nothing wrong with it', () => {
  const fallback = { launcher: "/it's/storystick.cjs", node: '/a b/node' };
  for (const script of [plain, hookScript({ strict: true, folders: ['', "van's"], fallback })]) {
    expect(spawnSync('sh', ['-n'], { input: script, encoding: 'utf8' })).toMatchObject({
      status: 0,
      stderr: '',
    });
    expect(script).not.toContain('\r');
    expect(ownerOf(script)).toBe('ours');
  }
});

test.each([
  ['nothing of ours', '#!/bin/sh\nnpm test\n', 'foreign'],
  ['only a word about us', '#!/bin/sh\n# storystick hook\nstorystick hook run\n', 'foreign'],
  ['ours with lines below', `${plain}exit 0\n`, 'ours, and more'],
  ['ours with lines above', plain.replace('#!/bin/sh\n', '#!/bin/sh\nset -e\n'), 'ours, and more'],
  ['ours without its end', plain.replace(/# storystick hook, end\n/, ''), 'ours, and more'],
])('the owner of a hook with %s', (_, script, owner) => {
  expect(ownerOf(script)).toBe(owner);
});

test.each([
  ['storystick hook run || exit $?\n', true],
  ['#!/bin/sh\n"$root/node_modules/.bin/storystick" hook run --strict\n', true],
  ["node '/opt/storystick.cjs' hook run\n", true],
  ['# storystick hook run\n', false],
  ['storystick check plan.yaml\n', false],
])('whether %j runs ours', (script, chained) => {
  expect(isChained(script)).toBe(chained);
});
