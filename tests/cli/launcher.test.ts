import { spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';

// What is tested is what `npm run build` has left in dist/, as users start it: in a process of its own.
const root = fileURLToPath(new URL('../../', import.meta.url));
const built = join(root, 'bin/storystick.cjs');
const example = join(root, 'examples/curlew/curlew.yaml');
const environment = { ...process.env, NO_COLOR: '1', COLUMNS: '100', NODE_OPTIONS: '' };

let scratch: string;
beforeAll(() => {
  scratch = realpathSync(mkdtempSync(join(tmpdir(), 'storystick-launcher-')));
});
afterAll(() => rmSync(scratch, { recursive: true }));

function run(launcher: string, ...args: readonly string[]) {
  const { status, signal, stdout, stderr } = spawnSync(process.execPath, [launcher, ...args], {
    encoding: 'utf8',
    env: environment,
  });
  return { status, signal, stdout, stderr };
}

const planFile = (name: string, text: string): string => {
  const file = join(scratch, `${name}.yaml`);
  writeFileSync(file, text);
  return file;
};

describe('exit codes', () => {
  test('0 when nothing fails, with nothing said on stderr', () => {
    const { status, stdout, stderr } = run(built, 'check', example);
    expect(stdout).toContain('Curlew, revision 4');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  });

  test('1 when a check fails', () => {
    const plan = 'storystick: 1\nvan: {max_mass: 2000 kg, unladen: {front: 1200 kg, rear: 900 kg}}\n';
    const { status, stdout, stderr } = run(built, 'check', planFile('overweight', plan));
    expect(stdout).toContain('fail');
    expect({ status, stderr }).toEqual({ status: 1, stderr: '' });
  });

  test('2 when the plan or the command line is not understood, with nothing said on stdout', () => {
    for (const args of [
      ['check', planFile('misspelt', 'storystick: 1\nvan: {max_mas: 3500 kg}\n')],
      ['check', join(scratch, 'no-such-file.yaml')],
      ['chekc', example],
    ]) {
      const { status, stdout, stderr } = run(built, ...args);
      expect({ args, status, stdout }).toEqual({ args, status: 2, stdout: '' });
      expect(stderr).not.toBe('');
    }
  });

  test('an expression is read in the built tool as well', () => {
    const plan = (max: string) =>
      `storystick: 1\nvan: {max_mass: ${max}, unladen: {front: 1200 kg, rear: 900 kg}}\n`;
    const literal = run(built, 'check', planFile('sum', plan('3500 kg   ')));
    expect(literal.status).toBe(0);
    expect(run(built, 'check', planFile('sum', plan('7 * 500 kg')))).toEqual(literal);
  });
});

describe('the way to the bundle', () => {
  test('leads through a link, as npm makes it', () => {
    const link = join(scratch, 'storystick');
    symlinkSync(built, link);
    expect(run(link, '--version')).toEqual(run(built, '--version'));
  });

  test('that is not there is told, with what to do about it', () => {
    const unbuilt = join(scratch, 'unbuilt');
    mkdirSync(join(unbuilt, 'bin'), { recursive: true });
    copyFileSync(built, join(unbuilt, 'bin/storystick.cjs'));
    const { status, stdout, stderr } = run(join(unbuilt, 'bin/storystick.cjs'), 'check', example);
    expect({ status, stdout }).toEqual({ status: 3, stdout: '' });
    expect(stderr).toContain('npm run build');
    expect(stderr).not.toMatch(/^\s+at /m);
  });
});

describe('compiled code beside the bundles', () => {
  const copy = () => join(scratch, 'copy');
  const launcher = () => join(copy(), 'bin/storystick.cjs');
  const inDist = (file: string) => join(copy(), 'dist', file);
  let intact: ReturnType<typeof run>;

  beforeEach(() => {
    rmSync(copy(), { recursive: true, force: true });
    for (const folder of ['bin', 'dist'])
      cpSync(join(root, folder), join(copy(), folder), { recursive: true });
    intact ??= run(launcher(), 'check', example);
    expect(intact.status).toBe(0);
  });

  /** Which bundles a check runs, and whether V8 took the compiled code of each. */
  function taken(plan: string): unknown {
    const script = `
      const { run, scripts } = require(${JSON.stringify(launcher())});
      process.stdout.write = (_, done) => done?.() ?? true;
      process.on('exit', () => console.error(JSON.stringify(
        [...scripts].map(([name, { cachedDataRejected }]) => [name, cachedDataRejected === false]))));
      process.argv = ['node', 'storystick', 'check', ${JSON.stringify(plan)}];
      run('storystick');`;
    const { stderr } = spawnSync(process.execPath, ['-e', script], { encoding: 'utf8', env: environment });
    return JSON.parse(stderr);
  }

  test('is what a run uses, and a plan without expressions does without the calculator', () => {
    expect(taken(example)).toEqual([
      ['storystick', true],
      ['calculator', true],
    ]);
    expect(taken(join(root, 'examples/first-lines.yaml'))).toEqual([['storystick', true]]);
  });

  test('is not needed', () => {
    for (const name of ['storystick', 'calculator']) rmSync(inDist(`${name}.cache`));
    expect(run(launcher(), 'check', example)).toEqual(intact);
    expect(taken(example)).toEqual([
      ['storystick', false],
      ['calculator', false],
    ]);
  });

  test('is not used when one byte of it is wrong, wherever that is', () => {
    const cache = readFileSync(inDist('storystick.cache'));
    // The first places are in the seal; V8 by itself would notice few of the others, and crash on some.
    for (const at of [
      0,
      3,
      40,
      97,
      110,
      ...[0.1, 0.3, 0.5, 0.7, 0.9].map((part) => Math.floor(cache.length * part)),
    ]) {
      const spoilt = Buffer.from(cache);
      spoilt.writeUInt8(spoilt.readUInt8(at) ^ 0x5a, at);
      writeFileSync(inDist('storystick.cache'), spoilt);
      expect({ at, ...run(launcher(), 'check', example) }).toEqual({ at, ...intact });
    }
  });

  test('is not used when it breaks off, is empty, or is no file', () => {
    truncateSync(inDist('storystick.cache'), 200_000);
    writeFileSync(inDist('calculator.cache'), '');
    expect(run(launcher(), 'check', example)).toEqual(intact);
    rmSync(inDist('storystick.cache'));
    mkdirSync(inDist('storystick.cache'));
    expect(run(launcher(), 'check', example)).toEqual(intact);
  });

  test('is not used for another bundle, though it be of the same length', () => {
    const bundle = readFileSync(inDist('storystick.cjs'), 'latin1');
    expect(bundle).toContain('"verdict"');
    writeFileSync(inDist('storystick.cjs'), bundle.replaceAll('"verdict"', '"VERDICT"'), 'latin1');
    const { status, stdout, stderr } = run(launcher(), 'check', example);
    expect(stdout).toMatch(/VERDICT +check/);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  });

  test('is left alone by runs, of which many can go on at once in a folder that is read-only', async () => {
    const before = ['storystick', 'calculator'].map((name) => readFileSync(inDist(`${name}.cache`)));
    chmodSync(join(copy(), 'dist'), 0o555);
    const runs = await Promise.all([1, 2, 3, 4].map(() => outputOf(launcher(), 'check', example)));
    chmodSync(join(copy(), 'dist'), 0o755);
    for (const output of runs) expect(output).toBe(intact.stdout);
    expect(['storystick', 'calculator'].map((name) => readFileSync(inDist(`${name}.cache`)))).toEqual(before);
  });
});

function outputOf(...args: readonly string[]): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, { env: environment, stdio: ['ignore', 'pipe', 'inherit'] });
    let output = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      output += text;
    });
    child.on('error', reject).on('close', () => resolve(output));
  });
}

describe('a reader that has seen enough', () => {
  test('ends the run without a word', async () => {
    const child = spawn(process.execPath, [built, 'check', example, '--detail'], {
      env: environment,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    child.stdout.destroy();
    let said = '';
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      said += text;
    });
    const status = await new Promise((resolve) => child.on('close', resolve));
    expect({ status, said }).toEqual({ status: 0, said: '' });
  });

  test('may be `head`', () => {
    const shell = 'set -o pipefail; "$0" "$1" check "$2" --detail | head -1';
    const { status, stdout, stderr } = spawnSync('bash', ['-c', shell, process.execPath, built, example], {
      encoding: 'utf8',
      env: environment,
    });
    expect({ status, stdout, stderr }).toEqual({ status: 0, stdout: 'Curlew, revision 4\n', stderr: '' });
  });

  test('gets all of a long report through a pipe', () => {
    const names = Array.from({ length: 2000 }, (_, at) => `  part ${at}: {mass: 0.1 kg}`);
    const van =
      'van: {max_mass: 3500 kg, unladen: {front: 1200 kg, rear: 900 kg}, load_bay: {behind_front_axle: 1 m, length: 3 m, width: 1.7 m, height: 1.8 m}}';
    const plan = planFile('long', `storystick: 1\n${van}\nfixtures:\n${names.join('\n')}\n`);
    const shell = '"$0" "$1" check "$2" --assumptions | (sleep 0.3; cat) | wc -c';
    const piped = spawnSync('bash', ['-c', shell, process.execPath, built, plan], {
      encoding: 'utf8',
      env: environment,
    });
    const whole = run(built, 'check', plan, '--assumptions').stdout;
    expect(whole.length).toBeGreaterThan(2 ** 16);
    expect(Number(piped.stdout)).toBe(Buffer.byteLength(whole));
  });
});
