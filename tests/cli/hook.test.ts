import {
  chmodSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type HookedRepository, hookedRepository, launcher } from '../support/hooked-repository.ts';
import { overlapWaived, waivedPlan } from '../support/waived-plan.ts';

// Real repositories, the built tool, and the hook as git runs it.
let repository: HookedRepository;
beforeEach(() => {
  repository = hookedRepository();
});
afterEach(() => repository.removeAll());

/** A van of 2000 kg, and the mass that its plate allows. */
const van = (maxKg: number, name = 'Curlew'): string =>
  `storystick: 1\nname: ${name}\nvan: {max_mass: ${maxKg} kg, unladen: {front: 1000 kg, rear: 1000 kg}}\n`;
const light = van(3500);
const heavy = van(1500);
/** It weighs what it may, but for its tolerance. */
const close = 'storystick: 1\nvan: {max_mass: 2200 kg, unladen: {front: 1000 kg, rear: 1000 kg ± 150 kg}}\n';

/** A bed and a stove in one place, and nothing else that fails. */
const waived = (waivers: string): string => waivedPlan(waivers).replace(/^ {2}stone: .*\n/m, '');
const overlap = (until = '2999-12-31'): string => overlapWaived.replace('2026-12-01', until);
const waiver = (check: string, until: string, heading = 'waivers:\n'): string =>
  `${heading}  - {check: ${check}, reason: the plate is raised in spring, by: Robin, until: ${until}}\n`;
const flat = (text: string): string => text.replace(/\s+/g, ' ');

const hookPath = (): string => join(repository.top, '.git/hooks/pre-commit');
const commit = (...args: readonly string[]) => repository.git('commit', '--quiet', '-m', 'revision', ...args);
const committed = (): number => Number(repository.must('rev-list', '--count', '--all'));

function installed(...args: readonly string[]): void {
  const { status, stderr } = repository.storystick('hook', ...args);
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
}

function stage(path: string, text: string): void {
  repository.write(path, text);
  repository.must('add', '--', path);
}

describe('a commit of a plan with waivers', () => {
  beforeEach(() => installed());

  test('in which all that fails is waived goes through, with what is waived in sight', () => {
    stage('plan.yaml', waived(overlap()));
    const { status, stderr } = commit();
    expect(status).toBe(0);
    expect(stderr).toMatch(/^plan\.yaml, as staged: 0 fail, \d+ warn, 1 waived, /);
    expect(stderr).toMatch(/^fail, waived {2}fit\.overlap {2}bed and stove: /m);
    expect(flat(stderr)).toContain('(waived until 2999-12-31 by Robin: the stove goes out in spring)');
    expect(stderr).not.toMatch(/^warn {2}plan\.waivers/m);
  });

  test('that has ended is stopped, and told of the waiver', () => {
    stage('plan.yaml', waived(overlap('2001-01-31')));
    const { status, stderr } = commit();
    expect(status).toBe(1);
    expect(stderr).toMatch(/^fail {2}fit\.overlap {2}bed and stove: /m);
    expect(flat(stderr)).toContain(
      'warn plan.waivers fit.overlap, bed and stove: This waiver ended on 2001-01-31; 1 failure counts again.',
    );
    expect(committed()).toBe(0);
  });

  test('of which one gives no reason is stopped, and told so', () => {
    stage('plan.yaml', waived(overlap().replace(/reason: .*?, /, '')));
    const { status, stderr } = commit();
    expect(status).toBe(1);
    expect(flat(stderr)).toMatch(
      /warn plan\.waivers fit\.overlap, bed and stove: This waiver gives no reason/,
    );
  });

  test('of which one covers nothing goes through, is told so, and is stopped where warnings do', () => {
    stage('plan.yaml', light + waiver('mass.total', '2999-12-31'));
    const { status, stderr } = commit();
    expect(status).toBe(0);
    expect(flat(stderr)).toMatch(/warn plan\.waivers mass\.total: There is nothing to waive any more/);
    expect(stderr).toMatch(/^Caution$/m);
    installed('--strict');
    stage('plan.yaml', light + waiver('mass.total', '2999-12-30'));
    expect(commit().status).toBe(1);
  });

  test('does not get past life and limb, which is acknowledged', () => {
    stage('plan.yaml', heavy + waiver('mass.total', '2999-12-31'));
    const { status, stderr } = commit();
    expect(status).toBe(1);
    expect(stderr).toMatch(/^plan\.yaml, as staged: 1 fail \(1 acknowledged\), /);
    expect(stderr).toMatch(/^fail, acknowledged {2}mass\.total {2}whole van: /m);
    expect(flat(stderr)).toContain('a check about life and limb is never waived');
    expect(stderr).toMatch(/^Caution\n- /m);
  });

  test('warnings that are waived do not stop it where warnings do', () => {
    installed('--strict');
    stage('plan.yaml', close + waiver('mass.total', '2999-12-31') + waiver('mass.payload', '2999-12-31', ''));
    const { status, stderr } = commit();
    // The plate is about life and limb: that warning still stops it, the one about the payload does not.
    expect(status).toBe(1);
    expect(stderr).toMatch(/^warn, acknowledged {2}mass\.total/m);
    expect(stderr).toMatch(/^warn, waived {2}mass\.payload/m);
  });

  test('looks at the waivers that are staged, not at those on disk', () => {
    stage('plan.yaml', waived(overlap('2001-01-31')));
    repository.write('plan.yaml', waived(overlap()));
    const { status, stderr } = commit();
    expect(status).toBe(1);
    expect(stderr).toContain('plan.yaml on disk is not what is staged. If it is mended there: `git add` it.');
    repository.must('add', 'plan.yaml');
    expect(commit().status).toBe(0);
  });
});

describe('a commit', () => {
  beforeEach(() => installed());

  test('of a plan in which nothing fails goes through, with the counts', () => {
    stage('plan.yaml', light);
    const { status, stderr } = commit();
    expect(status).toBe(0);
    expect(stderr).toMatch(/^plan\.yaml, as staged: 0 fail, /);
  });

  test('of a plan in which a check fails is stopped, with what fails, its caution and the way round', () => {
    stage('plan.yaml', heavy);
    const { status, stderr } = commit();
    expect(status).toBe(1);
    expect(stderr).toMatch(/^fail {2}mass\.total {2}whole van: At its heaviest/m);
    expect(stderr).toMatch(/ plan\.yaml:3:17$/m);
    expect(stderr).toMatch(/^Caution\n- /m);
    expect(stderr).toContain('git commit --no-verify');
    expect(committed()).toBe(0);
    expect(commit('--no-verify').status).toBe(0);
  });

  test('of a plan that cannot be understood is stopped, with its place and the way round', () => {
    stage('plan.yaml', 'storystick: 1\nvan: {max_mass: 3500}\n');
    const { status, stderr } = commit();
    expect(status).toBe(1);
    expect(stderr).toMatch(/^plan\.yaml:2:17: /);
    expect(stderr).toContain('could not be understood, so it was not checked');
    expect(stderr).toContain('git commit --no-verify');
    expect(repository.storystick('hook', 'run').status).toBe(2);
  });

  test('of a plan that warns goes through', () => {
    stage('plan.yaml', close);
    expect(commit()).toMatchObject({ status: 0, stderr: expect.stringMatching(/ 0 fail, [1-9]\d* warn/) });
  });

  test('without a plan is not held up', () => {
    stage('notes.txt', 'storystick: 1');
    expect(commit()).toEqual({ status: 0, stdout: '', stderr: '' });
    stage('compose.yaml', 'services:\n  storystick: {image: x}\n# storystick: 1\n');
    expect(commit()).toMatchObject({ status: 0, stderr: 'No plan is staged: nothing was checked.\n' });
  });

  test('of two plans checks both, and one that fails stops it', () => {
    stage('a/light.yml', light);
    stage('b/heavy.YAML', heavy);
    stage('c/brøken plan.yaml', 'storystick: 1\nvan: [\n');
    const { status, stderr } = commit();
    expect(status).toBe(1);
    expect(stderr).toMatch(/^a\/light\.yml, as staged: 0 fail/m);
    expect(stderr).toMatch(/^b\/heavy\.YAML, as staged: 1 fail/m);
    expect(stderr).toMatch(/^c\/brøken plan\.yaml:2:/m);
  });

  test('takes what is staged, not what is on disk', () => {
    stage('plan.yaml', light);
    repository.write('plan.yaml', heavy);
    expect(commit().status).toBe(0);
    repository.must('add', '.');
    repository.write('plan.yaml', light);
    const { status, stderr } = commit();
    expect(status).toBe(1);
    expect(stderr).toContain('plan.yaml on disk is not what is staged');
  });

  test('takes the staged part of a file that is staged in part', () => {
    stage(
      'plan.yaml',
      `${light}# one\n# two\n# three\n# four\n# five\n# six\n# seven\n# eight\nunits: metric\n`,
    );
    expect(commit().status).toBe(0);
    const onDisk = readFileSync(join(repository.top, 'plan.yaml'), 'utf8')
      .replace('3500', '1500')
      .replace('units: metric', 'units: imperial');
    repository.write('plan.yaml', onDisk);
    const patch = repository.must('diff', '--unified=0').replace(/^@@ -3 [\s\S]*?(?=^@@)/m, '');
    repository.write('../part.patch', patch);
    repository.must('apply', '--cached', '--unidiff-zero', '../part.patch');
    expect(commit().status).toBe(0);
    expect(repository.must('show', 'HEAD:plan.yaml')).toContain('units: imperial');
    expect(commit('--all').status).toBe(1);
  });

  test('of named files, or of all that changed, checks what it takes', () => {
    stage('one.yaml', light);
    stage('two.yaml', light);
    expect(commit().status).toBe(0);
    repository.write('one.yaml', heavy);
    repository.write('two.yaml', van(3600));
    expect(commit('--', 'two.yaml').stderr).toMatch(/^two\.yaml, as staged: 0 fail.*\n$/);
    expect(commit('-a').status).toBe(1);
    expect(repository.gitIn(join(repository.top), {}, 'commit', '-qm', 'x', 'one.yaml').status).toBe(1);
  });

  test('of a plan under a new name checks it', () => {
    stage('plan.yaml', light);
    expect(commit().status).toBe(0);
    repository.must('mv', 'plan.yaml', 'curlew.yaml');
    expect(commit().stderr).toMatch(/^curlew\.yaml, as staged: 0 fail/);
    repository.must('mv', 'curlew.yaml', 'plan.yaml');
    stage('plan.yaml', heavy);
    expect(commit()).toMatchObject({
      status: 1,
      stderr: expect.stringMatching(/^plan\.yaml, as staged: 1 fail/),
    });
  });

  test('that deletes a plan, or leaves it alone, checks nothing', () => {
    stage('plan.yaml', heavy);
    stage('other.yaml', light);
    expect(commit('--no-verify').status).toBe(0);
    stage('other.yaml', van(3600));
    expect(commit().stderr).toMatch(/^other\.yaml, as staged: 0 fail.*\n$/);
    repository.must('rm', '-q', 'plan.yaml');
    expect(commit()).toEqual({ status: 0, stdout: '', stderr: '' });
  });

  test('that takes the key away which makes it a plan is stopped', () => {
    stage('plan.yaml', light);
    expect(commit().status).toBe(0);
    stage('plan.yaml', light.replace('storystick', 'storistick'));
    expect(commit()).toMatchObject({ status: 1, stderr: expect.stringContaining('could not be understood') });
  });

  test('of a link or a submodule that looks like a plan is not held up', () => {
    stage('plans/plan.yaml', light);
    symlinkSync('plans/plan.yaml', join(repository.top, 'link.yaml'));
    repository.must('add', '.');
    repository.must('update-index', '--add', '--cacheinfo', `160000,${'1'.repeat(40)},sub.yaml`);
    expect(commit().stderr).toMatch(/^plans\/plan\.yaml, as staged: 0 fail.*\n$/);
  });

  test('of a plan with the line ends of Windows, kept or changed by git, is checked', () => {
    repository.write('kept.yaml', heavy.replaceAll('\n', '\r\n'));
    repository.must('-c', 'core.autocrlf=false', 'add', 'kept.yaml');
    repository.must('config', 'core.autocrlf', 'true');
    repository.write('changed.yaml', heavy.replaceAll('\n', '\r\n'));
    repository.must('add', 'changed.yaml');
    const { status, stderr } = commit();
    expect(status).toBe(1);
    for (const name of ['kept', 'changed'])
      expect(stderr).toMatch(new RegExp(`^${name}\\.yaml, as staged: 1 fail`, 'm'));
    // What git changes on the way is no edit.
    expect(stderr).not.toContain('is not what is staged');
  });

  test('of a plan that is saved as UTF-16 is stopped, since it is one', () => {
    repository.write('plan.yaml', '');
    writeFileSync(join(repository.top, 'plan.yaml'), Buffer.from(`\uFEFF${light}`, 'utf16le'));
    repository.must('add', '.');
    expect(commit()).toMatchObject({ status: 1, stderr: expect.stringContaining('the file is UTF-16 text') });
  });

  test('from a subfolder, an amended one, and one with expressions', () => {
    stage('van/plan.yaml', van(3500).replace('3500 kg', '7 * 500 kg'));
    const inVan = join(repository.top, 'van');
    expect(repository.gitIn(inVan, {}, 'commit', '-qm', 'x').stderr).toMatch(
      /^van\/plan\.yaml, as staged: 0 fail/,
    );
    stage('van/plan.yaml', heavy);
    expect(commit('--amend').status).toBe(1);
    expect(repository.storystickIn(inVan, 'hook', 'run').stdout).toMatch(
      /^van\/plan\.yaml, as staged: 1 fail/,
    );
  });
});

describe('a rebase', () => {
  /** Three revisions: one that is light, one that is too heavy, and the present one. */
  function threeRevisions(): void {
    for (const [at, text] of [light, heavy, van(3600)].entries()) {
      stage('plan.yaml', text);
      expect(repository.git('commit', '--no-verify', '-qm', `revision ${at}`).status).toBe(0);
    }
  }

  test('goes through, also over a revision that fails, and a commit made on the way is checked', () => {
    threeRevisions();
    installed();
    const { status, stderr } = repository.gitIn(
      repository.top,
      { GIT_SEQUENCE_EDITOR: `sed -i.bak -e '2s/^pick/edit/'` },
      'rebase',
      '-i',
      '--root',
    );
    expect({ status, stderr }).toMatchObject({ status: 0 });
    repository.write('plan.yaml', van(1400));
    expect(repository.git('commit', '-aq', '--amend', '--no-edit').status).toBe(1);
    repository.write('plan.yaml', van(3550));
    expect(repository.git('commit', '-aq', '--amend', '--no-edit').stderr).toMatch(/as staged: 0 fail/);
    const stopped = repository.git('rebase', '--continue');
    expect(stopped.status).toBe(1);
    stage('plan.yaml', van(3600));
    expect(repository.git('rebase', '--continue').status).toBe(0);
    expect(repository.commits()).toEqual(['revision 2', 'revision 1', 'revision 0']);
  });
});

describe('warnings', () => {
  test('stop a commit when they were asked to', () => {
    installed('--strict');
    stage('plan.yaml', close);
    const { status, stderr } = commit();
    expect(status).toBe(1);
    expect(stderr).toMatch(/^warn {2}mass\.total/m);
    expect(stderr).toContain('failed or warned');
    // Installed again without it, they do not.
    installed();
    expect(commit().status).toBe(0);
  });
});

describe('the installation', () => {
  test('says what it did, can be run again, and leaves nothing else behind', () => {
    const first = repository.storystick('hook');
    expect(first.stdout).toMatch(/^installed: \.git\/hooks\/pre-commit\n/);
    const script = readFileSync(hookPath(), 'utf8');
    expect(statSync(hookPath()).mode & 0o100).toBe(0o100);
    expect(repository.storystick('hook', 'install').stdout).toMatch(/^up to date: /);
    expect(repository.storystick('hook', '--strict').stdout).toMatch(/^brought up to date: /);
    expect(repository.storystick('hook').status).toBe(0);
    expect(readFileSync(hookPath(), 'utf8')).toBe(script);
    expect(repository.must('status', '--porcelain')).toBe('');
  });

  test('works from a subfolder, and where the folder of hooks is missing', () => {
    renameSync(join(repository.top, '.git/hooks'), join(repository.top, '.git/no-hooks'));
    mkdirSync(join(repository.top, 'a/b'), { recursive: true });
    expect(repository.storystickIn(join(repository.top, 'a/b'), 'hook').stdout).toMatch(
      /^installed: \.\.\/\.\.\/\.git\/hooks\/pre-commit\n/,
    );
    stage('plan.yaml', heavy);
    expect(commit().status).toBe(1);
  });

  test('outside of a repository says so', () => {
    const { status, stdout, stderr } = repository.storystickIn(join(repository.top, '..'), 'hook');
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toMatch(/not (in )?a git repository/);
  });

  test('in a worktree is for the repository and all its worktrees', () => {
    stage('plan.yaml', light);
    expect(commit().status).toBe(0);
    const tree = join(repository.top, '../tree');
    repository.must('worktree', 'add', '-q', tree);
    expect(repository.storystickIn(tree, 'hook').status).toBe(0);
    expect(existsSync(hookPath())).toBe(true);
    writeFileSync(join(tree, 'plan.yaml'), heavy);
    expect(repository.gitIn(tree, {}, 'commit', '-aqm', 'x')).toMatchObject({
      status: 1,
      stderr: expect.stringMatching(/^plan\.yaml, as staged: 1 fail/),
    });
    stage('plan.yaml', heavy);
    expect(commit().status).toBe(1);
    expect(repository.storystickIn(tree, 'hook', 'remove').status).toBe(0);
    expect(existsSync(hookPath())).toBe(false);
  });

  test('follows core.hooksPath, and leaves out this machine where others get the hook too', () => {
    repository.must('config', 'core.hooksPath', 'tools/git hooks');
    mkdirSync(join(repository.top, 'van'));
    const { stdout } = repository.storystickIn(join(repository.top, 'van'), 'hook');
    expect(stdout).toMatch(/^installed: \.\.\/tools\/git hooks\/pre-commit\n.*core\.hooksPath/);
    const script = readFileSync(join(repository.top, 'tools/git hooks/pre-commit'), 'utf8');
    expect(script).not.toContain(launcher);
    expect(existsSync(hookPath())).toBe(false);
    // Not installed for the repository, and not on the way of programs: that stops the commit and says so.
    stage('plan.yaml', light);
    const lost = commit();
    expect(lost.status).toBe(1);
    expect(lost.stderr).toContain('storystick was not found');
    installLocally('');
    expect(commit().stderr).toMatch(/as staged: 0 fail/);
    expect(repository.storystick('hook', 'remove').status).toBe(0);
    expect(existsSync(join(repository.top, 'tools/git hooks/pre-commit'))).toBe(false);
  });

  test('in a folder of hooks for many repositories says so', () => {
    const hooks = join(repository.top, '../hooks of all');
    repository.must('config', 'core.hooksPath', hooks);
    expect(repository.storystick('hook').stdout).toMatch(/every repository that uses it/);
    stage('plan.yaml', heavy);
    expect(commit().status).toBe(1);
  });
});

/** As npm leaves a package in a folder. */
function installLocally(folder: string, script?: string): void {
  const bin = join(repository.top, folder, 'node_modules/.bin');
  mkdirSync(bin, { recursive: true });
  if (script === undefined) symlinkSync(launcher, join(bin, 'storystick'));
  else writeFileSync(join(bin, 'storystick'), script, { mode: 0o755 });
}

describe('the storystick that the hook runs', () => {
  const note = '#!/bin/sh\necho "this one: $*"\n';

  test('is the one of the repository, when there is one', () => {
    installed('--strict');
    installLocally('', note);
    stage('plan.yaml', heavy);
    expect(commit()).toMatchObject({ status: 0, stderr: 'this one: hook run --strict\n' });
  });

  test('may be installed in a subfolder from which the hook was', () => {
    installLocally("the van's", note);
    expect(repository.storystickIn(join(repository.top, "the van's"), 'hook').status).toBe(0);
    stage('plan.yaml', heavy);
    expect(commit()).toMatchObject({ status: 0, stderr: 'this one: hook run\n' });
  });

  test('is found without Node on the way of programs', () => {
    installed();
    stage('plan.yaml', heavy);
    const git = repository.gitIn('/', {}, '--exec-path').stdout.trim();
    expect(existsSync(git)).toBe(true);
    const bare = join(repository.top, '../bare');
    mkdirSync(bare);
    for (const program of ['git', 'sh']) symlinkSync(which(program), join(bare, program));
    const { status, stderr } = repository.gitIn(repository.top, { PATH: bare }, 'commit', '-qm', 'x');
    expect({ status, stderr }).toMatchObject({
      status: 1,
      stderr: expect.stringMatching(/^plan\.yaml, as staged: 1 fail/),
    });
  });
});

const which = (program: string): string => {
  const found = (process.env.PATH ?? '')
    .split(':')
    .map((folder) => join(folder, program))
    .find((path) => existsSync(path));
  if (found === undefined) throw new Error(`${program} is not installed`);
  return found;
};

describe("somebody else's hook", () => {
  const foreign = '#!/bin/sh\necho mine >&2\n';
  const put = (text: string): void => {
    writeFileSync(hookPath(), text);
    chmodSync(hookPath(), 0o755);
  };

  test('is left alone, and the line that chains storystick works', () => {
    put(foreign);
    const { status, stdout, stderr } = repository.storystick('hook');
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain("is somebody else's hook: nothing was changed");
    expect(readFileSync(hookPath(), 'utf8')).toBe(foreign);
    const line = /^ {4}(.*hook run.*)$/m.exec(stderr)?.[1] ?? 'no line';
    put(`${foreign}${line}\n`);
    stage('plan.yaml', heavy);
    expect(commit()).toMatchObject({
      status: 1,
      stderr: expect.stringMatching(/^mine\nplan\.yaml, as staged: 1 fail/),
    });
    expect(repository.storystick('hook')).toMatchObject({
      status: 0,
      stdout: expect.stringContaining('runs it already'),
    });
    stage('plan.yaml', light);
    expect(commit().status).toBe(0);
  });

  test('is chained with the storystick of the repository, when there is one', () => {
    put(foreign);
    installLocally('');
    expect(repository.storystick('hook').stderr).toContain(
      '\n    ./node_modules/.bin/storystick hook run || exit $?\n',
    );
  });

  test('is not removed', () => {
    put(foreign);
    const { status, stderr } = repository.storystick('hook', 'remove');
    expect(status).toBe(2);
    expect(stderr).toContain('is not from storystick: nothing was changed');
    expect(readFileSync(hookPath(), 'utf8')).toBe(foreign);
  });

  test('may be a link or a folder', () => {
    symlinkSync('nowhere', hookPath());
    expect(repository.storystick('hook').status).toBe(2);
    repository.must('config', 'core.hooksPath', 'hooks');
    mkdirSync(join(repository.top, 'hooks/pre-commit'), { recursive: true });
    expect(repository.storystick('hook').status).toBe(2);
    expect(repository.storystick('hook', 'remove').status).toBe(2);
  });
});

describe('the removal', () => {
  test('takes our own hook away, also by the option, and says when there is none', () => {
    installed();
    expect(repository.storystick('hook', 'remove').stdout).toBe('removed: .git/hooks/pre-commit\n');
    expect(existsSync(hookPath())).toBe(false);
    installed();
    expect(repository.storystick('hook', '--remove').status).toBe(0);
    expect(existsSync(hookPath())).toBe(false);
    expect(repository.storystick('hook', 'remove')).toMatchObject({
      status: 0,
      stdout: expect.stringContaining('There is no hook to remove'),
    });
  });

  test.each([
    ['below', (script: string) => `${script}npm test\n`],
    ['above', (script: string) => script.replace('#!/bin/sh\n', '#!/bin/sh\nnpm test\n')],
  ])('leaves alone a hook to which lines were added %s, and so does the installation', (_, changed) => {
    installed();
    const text = changed(readFileSync(hookPath(), 'utf8'));
    writeFileSync(hookPath(), text);
    for (const args of [['hook'], ['hook', 'remove']]) {
      expect(repository.storystick(...args)).toMatchObject({
        status: 2,
        stderr: expect.stringContaining('holds lines that storystick did not write'),
      });
      expect(readFileSync(hookPath(), 'utf8')).toBe(text);
    }
  });

  test('knows our hook with the line ends of Windows too', () => {
    installed();
    writeFileSync(hookPath(), readFileSync(hookPath(), 'utf8').replaceAll('\n', '\r\n'));
    expect(repository.storystick('hook', 'remove').status).toBe(0);
  });
});

test('what the hook does not do is said', () => {
  const { status, stderr } = repository.storystick('hook', 'remov');
  expect(status).toBe(2);
  expect(stderr).toContain('did you mean: remove');
});
