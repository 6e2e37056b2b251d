import { existsSync, mkdirSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import {
  hooksFolderOf,
  placeInGit,
  type Repository,
  readRevision,
  readStaged,
  repositoryOf,
  revisionOf,
  stagedFiles,
} from '../../src/cli/git.ts';
import { type HookedRepository, hookedRepository } from '../support/hooked-repository.ts';

let there: HookedRepository;

beforeEach(() => {
  there = hookedRepository();
  // What the tests of a hook would otherwise hand down to git.
  for (const name of ['GIT_DIR', 'GIT_WORK_TREE', 'GIT_INDEX_FILE', 'GIT_PREFIX'])
    vi.stubEnv(name, undefined);
});
afterEach(() => {
  vi.unstubAllEnvs();
  there.removeAll();
});

function repository(path = there.top): Repository {
  const found = repositoryOf(path);
  if ('problem' in found) throw new Error(found.problem);
  return found.repository;
}

const problemOf = (found: object): unknown => ('problem' in found ? found.problem : undefined);
const textOf = (bytes: Uint8Array | undefined): string | undefined => bytes && Buffer.from(bytes).toString();

function commit(path: string, text: string, title = 'a change'): void {
  there.write(path, text);
  there.must('add', '--', path);
  there.must('commit', '--quiet', '-m', title);
}

describe('a repository', () => {
  test('is found from a file, a folder, and a file in a folder that is gone', () => {
    commit('plans/van.yaml', 'x\n');
    const expected = { top: there.top, gitFolder: join(there.top, '.git') };
    for (const path of ['', 'plans', 'plans/van.yaml', 'plans/not/there.yaml']) {
      expect(repositoryOf(join(there.top, path))).toEqual({ repository: expected });
    }
  });

  test('of a worktree has its own top and the shared repository behind it', () => {
    commit('van.yaml', 'x\n');
    const other = join(there.top, '..', 'second tree');
    there.must('worktree', 'add', '--quiet', '-b', 'second', other);
    expect(repository(other)).toEqual({ top: realpathSync(other), gitFolder: join(there.top, '.git') });
    expect(hooksFolderOf(repository(other))).toBe(join(there.top, '.git', 'hooks'));
  });

  test('that is none is said so, with the path as it was given', () => {
    const outside = join(there.top, '..');
    expect(problemOf(repositoryOf(outside))).toBe(`${outside} is not in a git repository`);
    expect(problemOf(placeInGit(join(outside, 'van.yaml')))).toBe(
      `${join(outside, 'van.yaml')} is not in a git repository`,
    );
  });

  test('without a working tree is said so', () => {
    const bare = join(there.top, '..', 'bare');
    there.must('init', '--quiet', '--bare', bare);
    expect(problemOf(repositoryOf(bare))).toBe(`${bare} is in a git repository without a working tree`);
  });

  test('cannot be asked without git, and that is said', () => {
    vi.stubEnv('PATH', there.top);
    expect(problemOf(repositoryOf(there.top))).toBe(
      'git was not found; install it, or see that it is on the PATH',
    );
  });

  test('is the one of the file, whatever a hook says of the one that it runs in', () => {
    commit('plans/van.yaml', 'x\n');
    vi.stubEnv('GIT_DIR', '.git');
    expect(repository(join(there.top, 'plans'))).toMatchObject({ top: there.top });
    vi.stubEnv('GIT_WORK_TREE', there.top);
    vi.stubEnv('GIT_DIR', join(there.top, '.git'));
    expect(repository(join(there.top, '..'))).toMatchObject({ top: there.top });
  });
});

describe('a path in git', () => {
  test('is from the top, with forward slashes, for files that are there and files that are gone', () => {
    commit('plans/é ü/van 1.yaml', 'x\n');
    const name = join(there.top, 'plans', 'é ü', 'van 1.yaml');
    expect(placeInGit(name)).toMatchObject({ path: 'plans/é ü/van 1.yaml' });
    rmSync(join(there.top, 'plans'), { recursive: true });
    expect(placeInGit(name)).toMatchObject({ path: 'plans/é ü/van 1.yaml' });
  });

  test('is where a link leads', () => {
    commit('plans/van.yaml', 'x\n');
    const link = join(there.top, '..', 'link.yaml');
    symlinkSync(join(there.top, 'plans', 'van.yaml'), link);
    expect(placeInGit(link)).toMatchObject({ repository: { top: there.top }, path: 'plans/van.yaml' });
  });
});

describe('a revision', () => {
  test('has a number, a day and a title, by whatever name', () => {
    commit('van.yaml', 'x\n', 'Begin with the van');
    there.must('tag', '-a', 'first', '-m', 'a tag of its own');
    const head = there.must('rev-parse', 'HEAD').trim();
    for (const name of ['HEAD', 'main', 'first', head.slice(0, 8), `HEAD^{commit}`]) {
      expect(revisionOf(repository(), name)).toMatchObject({
        revision: {
          name,
          commit: head,
          title: 'Begin with the van',
          day: expect.stringMatching(/^\d{4}-\d\d-\d\d$/),
        },
      });
    }
  });

  test('that is unknown, empty, a range or an option is said so', () => {
    commit('van.yaml', 'x\n');
    for (const name of ['nowhere', '', 'HEAD~5', 'HEAD..HEAD', '--all', '-1', 'HEAD:van.yaml']) {
      expect(problemOf(revisionOf(repository(), name))).toBe(`git knows no revision \`${name}\``);
    }
  });

  test('in a repository without a commit is unknown', () => {
    expect(problemOf(revisionOf(repository(), 'HEAD'))).toBe('there is no commit yet, and so no `HEAD`');
  });

  test('gives a file as it was then, byte for byte', () => {
    const name = 'plans/pl än: 1.yaml';
    commit(name, 'one\r\ntwo\r\n');
    commit(name, 'three\n');
    there.write(name, 'four\n');
    expect(textOf(readRevision(repository(), 'HEAD~1', name))).toBe('one\r\ntwo\r\n');
    expect(textOf(readRevision(repository(), 'HEAD', name))).toBe('three\n');
    expect(readRevision(repository(), 'HEAD', 'plans/other.yaml')).toBeUndefined();
    expect(readRevision(repository(), 'HEAD', 'plans')).toBeUndefined();
  });
});

describe('what is staged', () => {
  test('is told with what it was before, and is read as staged', () => {
    commit('old name.yaml', 'a\nb\nc\nd\ne\nf\ng\nh\n');
    commit('edited.yaml', 'x\n');
    commit('gone.yaml', 'x\n');
    there.must('mv', 'old name.yaml', 'new näme.yaml');
    there.write('edited.yaml', 'staged\n');
    there.must('add', 'edited.yaml');
    there.write('edited.yaml', 'only on disk\n');
    there.write('0:new.yaml', 'n\n');
    there.must('add', '0:new.yaml');
    there.must('rm', '--quiet', 'gone.yaml');
    symlinkSync('edited.yaml', join(there.top, 'link.yaml'));
    there.must('add', 'link.yaml');
    expect(stagedFiles(repository())).toEqual([
      { path: '0:new.yaml', isOrdinary: true },
      { path: 'edited.yaml', before: 'edited.yaml', isOrdinary: true },
      { path: 'link.yaml', isOrdinary: false },
      { path: 'new näme.yaml', before: 'old name.yaml', isOrdinary: true },
    ]);
    expect(textOf(readStaged(repository(), 'edited.yaml'))).toBe('staged\n');
    expect(textOf(readStaged(repository(), '0:new.yaml'))).toBe('n\n');
  });

  test('is everything before the first commit', () => {
    there.write('van.yaml', 'x\n');
    there.must('add', 'van.yaml');
    expect(stagedFiles(repository())).toEqual([{ path: 'van.yaml', isOrdinary: true }]);
  });

  test('is read from the index that git names to a hook', () => {
    commit('van.yaml', 'x\n');
    there.write('van.yaml', 'y\n');
    const index = join(there.top, '.git', 'other-index');
    there.gitIn(there.top, { GIT_INDEX_FILE: index }, 'add', '--all');
    expect(existsSync(index)).toBe(true);
    expect(textOf(readStaged(repository(), 'van.yaml'))).toBe('x\n');
    vi.stubEnv('GIT_INDEX_FILE', index);
    expect(textOf(readStaged(repository(), 'van.yaml'))).toBe('y\n');
  });
});

describe('the folder of hooks', () => {
  test('is that of the repository, or the one that core.hooksPath names', () => {
    expect(hooksFolderOf(repository())).toBe(join(there.top, '.git', 'hooks'));
    there.must('config', 'core.hooksPath', 'our hooks');
    mkdirSync(join(there.top, 'plans'));
    writeFileSync(join(there.top, 'plans', 'van.yaml'), '');
    expect(hooksFolderOf(repository(join(there.top, 'plans', 'van.yaml')))).toBe(
      join(there.top, 'our hooks'),
    );
  });
});
