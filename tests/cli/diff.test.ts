import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { storystick } from '../support/compared.ts';
import { type HookedRepository, hookedRepository } from '../support/hooked-repository.ts';

let there: HookedRepository;

beforeEach(() => {
  there = hookedRepository();
  for (const name of ['GIT_DIR', 'GIT_WORK_TREE', 'GIT_INDEX_FILE', 'GIT_PREFIX'])
    vi.stubEnv(name, undefined);
  vi.stubEnv('HOME', join(there.top, '..'));
  vi.stubEnv('GIT_CONFIG_NOSYSTEM', '1');
});
afterEach(() => {
  vi.unstubAllEnvs();
  there.removeAll();
});

const van = (bedKg: number, more = ''): string =>
  `storystick: 1
van: {max_mass: 2500 kg, unladen: {front: 1000 kg, rear: 1000 kg}}
fixtures:
  bed: {mass: ${bedKg} kg, at: {from_front: 1200 mm, centred: true}}
${more}`;

const at = (path: string): string => join(there.top, path);
const diff = async (...args: readonly string[]) => {
  const { code, out, err } = await storystick(['diff', ...args]);
  return { code, out: out.replaceAll(`${there.top}/`, ''), err: err.replaceAll(`${there.top}/`, '') };
};

function commit(path: string, text: string, title: string): void {
  there.write(path, text);
  there.must('add', '--', path);
  there.must('commit', '--quiet', '-m', title);
}

const bedGrew = (from: number, to: number): string =>
  `fixtures.bed: mass ${from} kg → ${to} kg (+${to - from} kg)`;

describe('a plan against git', () => {
  beforeEach(() => {
    commit('plan.yaml', van(20), 'Begin with the bed');
    commit('plan.yaml', van(30), 'A heavier bed');
    there.write('plan.yaml', van(50));
  });

  test('is compared with the last commit if nothing else is asked', async () => {
    const { code, out } = await diff(at('plan.yaml'));
    expect(code).toBe(0);
    expect(out).toContain('before  HEAD:plan.yaml (');
    expect(out).toContain('A heavier bed)');
    expect(out).toContain('after   plan.yaml');
    expect(out).toContain(bedGrew(30, 50));
  });

  test('with any revision, and nothing is checked out', async () => {
    const before = there.must('status', '--porcelain');
    expect((await diff(at('plan.yaml'), '--against', 'HEAD~1')).out).toContain(bedGrew(20, 50));
    expect(there.must('status', '--porcelain')).toBe(before);
  });

  test('two revisions with each other', async () => {
    const { out } = await diff(at('plan.yaml'), '--against', 'HEAD~1..HEAD');
    expect(out).toContain(bedGrew(20, 30));
    expect((await diff(at('plan.yaml'), '--against', 'HEAD~1..')).out).toContain(bedGrew(20, 30));
  });

  test('what is on disk counts, not what is staged', async () => {
    there.must('add', 'plan.yaml');
    there.write('plan.yaml', van(60));
    expect((await diff(at('plan.yaml'))).out).toContain(bedGrew(30, 60));
  });

  test('three dots: what happened since a branch parted', async () => {
    there.must('checkout', '--quiet', '-b', 'oak', '--force');
    commit('plan.yaml', van(90), 'Oak');
    there.must('checkout', '--quiet', 'main');
    commit('plan.yaml', van(35), 'Meanwhile');
    const file = at('plan.yaml');
    expect((await diff(file, '--against', 'main..oak')).out).toContain(bedGrew(35, 90));
    expect((await diff(file, '--against', 'main...oak')).out).toContain(bedGrew(30, 90));
  });

  test('after a rebase', async () => {
    there.must('checkout', '--quiet', '--force', '-b', 'shelf', 'HEAD~1');
    commit('shelf.yaml', van(20), 'Another plan');
    there.must('rebase', '--quiet', 'main');
    expect((await diff(at('plan.yaml'), '--against', 'HEAD~2..HEAD')).out).toContain(bedGrew(20, 30));
    // In the middle of one, what is on disk is compared with the commit that stands.
    there.must('checkout', '--quiet', '-b', 'clash', 'main~1');
    commit('plan.yaml', van(99), 'Clash');
    expect(there.git('rebase', '--quiet', 'main').status).not.toBe(0);
    const clashing = await diff(at('plan.yaml'));
    expect(clashing.code).toBe(2);
    expect(clashing.err).toMatch(/^plan\.yaml:\d+:\d+: /);
  });
});

describe('a plan that was renamed', () => {
  const long = Array.from({ length: 12 }, (_, n) => `  thing ${n}: {mass: ${n + 1} kg}\n`).join('');

  test('is followed, in git or only staged, over several names', async () => {
    commit('first.yaml', van(20, long), 'One');
    there.must('mv', 'first.yaml', 'second name.yaml');
    there.must('commit', '--quiet', '-m', 'Two');
    mkdirSync(at('plans'));
    there.must('mv', 'second name.yaml', 'plans/third näme.yaml');
    there.write('plans/third näme.yaml', van(25, long));
    const staged = await diff(at('plans/third näme.yaml'));
    expect(staged.out).toContain('HEAD:second name.yaml (');
    expect(staged.out).toContain(bedGrew(20, 25));
    there.must('commit', '--quiet', '-a', '-m', 'Three');
    expect((await diff(at('plans/third näme.yaml'), '--against', 'HEAD~2')).out).toContain(
      'HEAD~2:first.yaml (',
    );
    expect((await diff(at('first.yaml'), '--against', 'HEAD~2..HEAD')).out).toContain(
      'HEAD:plans/third näme.yaml (',
    );
  });

  test('is followed through commits where little of it is left', async () => {
    commit('first.yaml', van(20, long), 'One');
    there.must('mv', 'first.yaml', 'second.yaml');
    there.must('commit', '--quiet', '-m', 'Two');
    const other = Array.from(
      { length: 30 },
      (_, n) => `  piece of furniture ${n}: {count: 2, each: ${n + 1} kg}\n`,
    );
    commit('second.yaml', van(20, other.join('')), 'Three');
    expect((await diff(at('second.yaml'), '--against', 'HEAD~2')).out).toContain('HEAD~2:first.yaml (');
  });

  test('is not mistaken for another of two plans', async () => {
    commit('a.yaml', van(20, long), 'A');
    commit('b.yaml', van(70, long), 'B');
    // A copy of a plan that is still there was not that plan before.
    expect((await diff(at('b.yaml'), '--against', 'HEAD~1')).code).toBe(2);
    there.must('mv', 'a.yaml', 'c.yaml');
    there.must('commit', '--quiet', '-m', 'C');
    there.write('c.yaml', van(21, long));
    there.write('b.yaml', van(71, long));
    expect((await diff(at('c.yaml'), '--against', 'HEAD~1')).out).toContain(bedGrew(20, 21));
    expect((await diff(at('b.yaml'), '--against', 'HEAD~1')).out).toContain(bedGrew(70, 71));
  });

  test('behind the back of git is said to be unknown there', async () => {
    commit('first.yaml', van(20), 'One');
    renameSync(at('first.yaml'), at('moved.yaml'));
    const { code, err } = await diff(at('moved.yaml'));
    expect(code).toBe(2);
    expect(err).toMatch(/^moved\.yaml was not in HEAD \([0-9a-f]+, One\), under this name/);
    expect(err).toContain('added to git');
  });
});

describe('a plan in git', () => {
  test('in a subfolder, with spaces in its name', async () => {
    commit('my van/plans/summer plan.yaml', van(20), 'One');
    there.write('my van/plans/summer plan.yaml', van(30));
    expect((await diff(at('my van/plans/summer plan.yaml'))).out).toContain(bedGrew(20, 30));
  });

  test('with Windows line ends on one side only, is the same', async () => {
    commit('plan.yaml', van(20), 'One');
    there.write('plan.yaml', van(20).replaceAll('\n', '\r\n'));
    const { out } = await diff(at('plan.yaml'));
    expect(out).toContain('There is no difference: both read the same.');
  });

  test('in a worktree', async () => {
    commit('plan.yaml', van(20), 'One');
    const second = join(there.top, '..', 'second tree');
    there.must('worktree', 'add', '--quiet', '-b', 'second', second);
    commit('plan.yaml', van(40), 'On main');
    writeFileSync(join(second, 'plan.yaml'), van(30));
    const file = join(second, 'plan.yaml');
    expect((await diff(file)).out).toContain(bedGrew(20, 30));
    expect((await diff(file, '--against', 'second..main')).out).toContain(bedGrew(20, 40));
  });

  test('whatever a hook says of the repository it runs in', async () => {
    commit('plans/plan.yaml', van(20), 'One');
    there.write('plans/plan.yaml', van(30));
    vi.stubEnv('GIT_DIR', '.git');
    vi.stubEnv('GIT_PREFIX', 'elsewhere/');
    expect((await diff(at('plans/plan.yaml'))).out).toContain(bedGrew(20, 30));
  });
});

describe('what cannot be compared', () => {
  test('is said with the revision and the place in it', async () => {
    commit('plan.yaml', van(20).replace('20 kg', '20 kgs'), 'A slip');
    there.write('plan.yaml', van(20));
    const { code, out, err } = await diff(at('plan.yaml'));
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^HEAD:plan\.yaml:4:\d+: .*kgs/);
    expect(err).toContain('1 problem: nothing was compared, because the plan could not be understood.');
  });

  test('is said of both sides in one run', async () => {
    commit('plan.yaml', van(20).replace('20 kg', '20 kgs'), 'A slip');
    there.write('plan.yaml', van(20).replace('bed: {mass:', 'bed: {mas:'));
    const { err } = await diff(at('plan.yaml'));
    expect(err).toMatch(/^HEAD:plan\.yaml:4:/m);
    expect(err).toMatch(/^plan\.yaml:4:/m);
  });

  test.each([
    ['no such revision', ['--against', 'nowhere'], 'git knows no revision `nowhere`'],
    ['an option for a revision', ['--against=--all'], 'git knows no revision `--all`'],
    ['no such revision in a range', ['--against', 'HEAD..nowhere'], 'git knows no revision `nowhere`'],
    ['two files and a revision', ['other.yaml', '--against', 'HEAD'], 'contradict each other'],
    ['a word for nothing', ['--fail-on', 'wors'], 'did you mean: worse'],
    ['no such format', ['--format', 'jsn'], 'did you mean: json'],
  ])('%s', async (_, args, said) => {
    commit('plan.yaml', van(20), 'One');
    const { code, out, err } = await diff(at('plan.yaml'), ...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(said);
  });

  test('before the first commit', async () => {
    there.write('plan.yaml', van(20));
    const { code, err } = await diff(at('plan.yaml'));
    expect(code).toBe(2);
    expect(err).toBe(
      'there is no commit yet, and so no `HEAD`\n  expected: a first commit, or two files to compare\n',
    );
    expect((await diff(at('plan.yaml'), '--against', 'main')).err).toMatch(/^git knows no revision `main`\n/);
  });

  test('in a clone that left the older commits behind, which is said', async () => {
    commit('plan.yaml', van(20), 'One');
    there.must('branch', 'parted');
    commit('plan.yaml', van(30), 'Two');
    commit('plan.yaml', van(40), 'Three');
    there.must('clone', '--quiet', '--depth=1', '--no-single-branch', `file://${there.top}`, '../clone');
    const clone = join(there.top, '../clone/plan.yaml');
    for (const against of ['HEAD~1', 'HEAD~1..HEAD', 'origin/parted...HEAD']) {
      const { code, err } = await diff(clone, '--against', against);
      expect(code).toBe(2);
      expect(err).toMatch(/ in this clone, which holds only the newest commits$/m);
      expect(err).toContain('`git fetch --unshallow`');
    }
    expect((await diff(clone, '--against', 'HEAD')).code).toBe(0);
  });

  test('a file outside of any repository', async () => {
    writeFileSync(join(there.top, '..', 'alone.yaml'), van(20));
    const { code, err } = await diff(join(there.top, '..', 'alone.yaml'));
    expect(code).toBe(2);
    expect(err).toContain('alone.yaml is not in a git repository\n  expected: a second plan');
  });

  test('a file that is nowhere', async () => {
    const { code, err } = await diff(at('a.yaml'), at('b.yaml'));
    expect(code).toBe(2);
    expect(err).toContain('a.yaml: there is no such file');
    expect(err).toContain('b.yaml: there is no such file');
  });
});

describe('the exit code', () => {
  const two = () => {
    there.write('light.yaml', van(20));
    there.write('heavy.yaml', van(900));
    return [at('light.yaml'), at('heavy.yaml')];
  };

  test.each([
    { failOn: [], worse: 1, better: 0, same: 0 },
    { failOn: ['--fail-on', 'changed'], worse: 1, better: 1, same: 0 },
    { failOn: ['--fail-on', 'never'], worse: 0, better: 0, same: 0 },
  ])('$failOn', async ({ failOn, worse, better, same }) => {
    const [light = '', heavy = ''] = two();
    for (const format of ['table', 'json', 'markdown', 'sarif', 'junit']) {
      const args = [...failOn, '--format', format];
      expect((await diff(light, heavy, ...args)).code).toBe(worse);
      expect((await diff(heavy, light, ...args)).code).toBe(better);
      expect((await diff(heavy, heavy, ...args)).code).toBe(same);
    }
  });

  test('SARIF and JUnit hold what is a step back, and nothing else', async () => {
    const [light = '', heavy = ''] = two();
    const sarif = JSON.parse((await diff(light, heavy, '--format', 'sarif')).out);
    const results: readonly { readonly kind: string }[] = sarif.runs[0].results;
    expect(results.length).toBeGreaterThan(0);
    expect(results.every(({ kind }) => kind === 'fail' || kind === 'open')).toBe(true);
    expect(JSON.parse((await diff(heavy, light, '--format', 'sarif')).out).runs[0].results).toEqual([]);
    expect((await diff(light, heavy, '--format', 'junit')).out).toContain('<failure');
    expect((await diff(heavy, light, '--format', 'junit')).out).not.toContain('<testcase');
  });

  test('in SARIF a file of a revision is called by its name on disk', async () => {
    commit('plan.yaml', van(20), 'One');
    commit('plan.yaml', van(900), 'Two');
    const { out } = await storystick([
      'diff',
      at('plan.yaml'),
      '--against',
      'HEAD~1..HEAD',
      '--format',
      'sarif',
    ]);
    expect(JSON.parse(out).runs[0].artifacts[0].location.uri).toMatch(/^file:\/\/.*\/plan\.yaml$/);
  });
});
