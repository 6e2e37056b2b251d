import { type SpawnSyncReturns, spawnSync } from 'node:child_process';
import { existsSync, realpathSync, statSync } from 'node:fs';
import { dirname, relative, resolve, sep } from 'node:path';

// Git is run as a program, with its arguments one by one and never through a shell, so that no name of a file means
// anything but itself. Nothing here changes a repository.

/** A working tree and the repository behind it. */
export interface Repository {
  /** The top folder of the working tree, absolute and without links. */
  readonly top: string;
  /** The repository itself, which several working trees may share; absolute and without links. */
  readonly gitFolder: string;
}

export interface Revision {
  /** As it was asked for: "HEAD~2". */
  readonly name: string;
  /** The commit in full. */
  readonly commit: string;
  /** The commit as people write it: "1a2b3c4". */
  readonly short: string;
  /** The day it was committed: "2026-03-14". */
  readonly day: string;
  /** The first line of its message. */
  readonly title: string;
}

export interface StagedFile {
  /** From the top of the repository, with forward slashes, as git writes it. */
  readonly path: string;
  /** Where it was in the commit before; not there if it is new. */
  readonly before?: string;
  /** A file, not a link or a submodule. */
  readonly isOrdinary: boolean;
}

export interface Trouble {
  /** One sentence for a reader, or several lines where git knows more. */
  readonly problem: string;
  /** What would help, where that is known here. */
  readonly expected?: string;
}

/** The repository that a file or folder is in; the file need not exist any more. */
export function repositoryOf(path: string): { readonly repository: Repository } | Trouble {
  const folder = nearestFolder(path);
  const { status, stdout, stderr, error } = git(folder, ['rev-parse', '--show-toplevel', '--git-common-dir']);
  if (error) return { problem: failureToStart(error) };
  if (status !== 0) return { problem: whyNoRepository(path, String(stderr)) };
  const [top = '', gitFolder = ''] = String(stdout).split('\n');
  try {
    return { repository: { top: realpathSync(top), gitFolder: realpathSync(resolve(folder, gitFolder)) } };
  } catch {
    return { problem: `the git repository of ${path} cannot be read` };
  }
}

/**
 * The repository that a file is in, and its path there, as git writes it: "van/plans/curlew.yaml". Links are followed,
 * so that a linked plan is looked for where it really is. The file need not exist any more.
 */
export function placeInGit(
  file: string,
): { readonly repository: Repository; readonly path: string } | Trouble {
  const real = existsSync(file) ? realpathSync(file) : resolve(file);
  const found = repositoryOf(dirname(real));
  if ('problem' in found) {
    return { problem: found.problem.replace(dirname(real), file) };
  }
  const folder = nearestFolder(dirname(real));
  const rest = relative(folder, real);
  const prefix = withoutLineBreak(git(folder, ['rev-parse', '--show-prefix']).stdout);
  return { ...found, path: prefix + rest.split(sep).join('/') };
}

/** The commit that a revision stands for: a branch, a tag, `HEAD~2`, part of a commit's number. */
export function revisionOf(repository: Repository, name: string): { readonly revision: Revision } | Trouble {
  // What begins with a dash would be taken for an option.
  if (name.trim() === '' || name.startsWith('-')) return { problem: unknownRevision(name) };
  const found = git(repository.top, ['rev-parse', '--verify', '--quiet', `${name}^{commit}`]);
  if (found.error) return { problem: failureToStart(found.error) };
  if (found.status !== 0) return whyUnknown(repository, name);
  const format = ['%H', '%h', '%cs', '%s'].join('%x00');
  const { stdout } = git(repository.top, [
    'log',
    '-1',
    '--no-show-signature',
    `--format=${format}`,
    withoutLineBreak(found.stdout),
  ]);
  const [commit = '', short = '', day = '', title = ''] = withoutLineBreak(stdout).split('\0');
  return { revision: { name, commit, short, day, title } };
}

const unknownRevision = (name: string): string => `git knows no revision \`${name}\``;

function whyUnknown(repository: Repository, name: string): Trouble {
  const isBornYet = git(repository.top, ['rev-parse', '--verify', '--quiet', 'HEAD^{commit}']).status === 0;
  if (!isBornYet && /^(?:HEAD|@)/.test(name)) {
    return {
      problem: `there is no commit yet, and so no \`${name}\``,
      expected: 'a first commit, or two files to compare',
    };
  }
  return isShallow(repository)
    ? {
        problem: `${unknownRevision(name)} in this clone, which holds only the newest commits`,
        expected: deepening,
      }
    : { problem: unknownRevision(name) };
}

/** Whether older commits were left behind when the repository was cloned, as in most CI. */
export const isShallow = ({ top }: Repository): boolean =>
  withoutLineBreak(git(top, ['rev-parse', '--is-shallow-repository']).stdout) === 'true';

export const deepening = 'its history: `git fetch --unshallow`, or `fetch-depth: 0` where CI checks out';

/** A file as it was in a revision; undefined where it was not there, or was no ordinary file. */
export function readRevision({ top }: Repository, revision: string, path: string): Uint8Array | undefined {
  return blob(top, `${revision}:${path}`);
}

/** A file as it is staged: what the next commit would hold. */
export const readStaged = ({ top }: Repository, path: string): Uint8Array =>
  blob(top, `:0:${path}`) ?? new Uint8Array();

/** What the next commit adds or changes, in git's order; without what it takes away. */
export function stagedFiles({ top }: Repository): readonly StagedFile[] {
  return changesOf(top, ['--cached', '--diff-filter=d']).map(({ path, before, mode }) => ({
    path,
    isOrdinary: mode.startsWith('100'),
    ...(before !== undefined && { before }),
  }));
}

/** Where git looks for hooks: `core.hooksPath`, or the folder that all working trees of the repository share. */
export const hooksFolderOf = ({ top }: Repository): string =>
  resolve(top, withoutLineBreak(git(top, ['rev-parse', '--git-path', 'hooks']).stdout));

/** One file that differs between two states. */
export interface GitChange {
  readonly path: string;
  /** Its path in the first state; not there if it is new. */
  readonly before?: string;
  /** Its mode in the second state: "100644". */
  readonly mode: string;
}

/** What differs, with files that were renamed recognised; the arguments say between what. */
export function changesOf(top: string, between: readonly string[]): readonly GitChange[] {
  const args = ['diff', '--raw', '-z', '-M', '--no-ext-diff', ...between, '--'];
  const parts = String(git(top, args).stdout).split('\0');
  const changes: GitChange[] = [];
  for (let at = 0; at + 1 < parts.length; ) {
    // ":100644 100644 bcd1234 0123456 R086", then one path, or two where a file was renamed or copied.
    const [, mode = '', , , kind = ''] = (parts[at] ?? '').split(' ');
    const hasTwo = /^[RC]/.test(kind);
    const before = kind === 'A' ? undefined : parts[at + 1];
    changes.push({
      path: parts[at + (hasTwo ? 2 : 1)] ?? '',
      mode,
      ...(before !== undefined && { before }),
    });
    at += hasTwo ? 3 : 2;
  }
  return changes;
}

const mostBytes = 64 * 1024 * 1024;

/** Runs git in a folder that exists. */
export function git(folder: string, args: readonly string[]): SpawnSyncReturns<Buffer> {
  return spawnSync('git', args, {
    cwd: folder,
    env: surroundings(),
    maxBuffer: mostBytes,
    windowsHide: true,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
}

/**
 * The environment for git. In a hook git names the repository in GIT_DIR, for the folder that the hook runs in: that would
 * mislead a call about a file elsewhere, so the repository is found from the folder again, unless somebody has named a
 * working tree too. The index stays the one that was named: `git commit FILE` has one of its own.
 */
function surroundings(): NodeJS.ProcessEnv {
  const { GIT_DIR, GIT_WORK_TREE, GIT_COMMON_DIR: _, GIT_PREFIX: __, GIT_INDEX_FILE, ...rest } = process.env;
  return {
    ...rest,
    ...(GIT_DIR !== undefined &&
      GIT_WORK_TREE !== undefined && { GIT_DIR: resolve(GIT_DIR), GIT_WORK_TREE: resolve(GIT_WORK_TREE) }),
    ...(GIT_INDEX_FILE !== undefined && { GIT_INDEX_FILE: resolve(GIT_INDEX_FILE) }),
    // Reading takes no lock, so that it never stands in the way of a commit.
    GIT_OPTIONAL_LOCKS: '0',
    LC_ALL: 'C',
  };
}

/** The path itself or the nearest folder above it that exists; absolute and without links. */
function nearestFolder(path: string): string {
  let folder = resolve(path);
  while (statSync(folder, { throwIfNoEntry: false })?.isDirectory() !== true && dirname(folder) !== folder) {
    folder = dirname(folder);
  }
  return realpathSync(folder);
}

const withoutLineBreak = (output: Buffer): string => String(output).replace(/\r?\n$/, '');

function blob(top: string, name: string): Uint8Array | undefined {
  const { status, stdout } = git(top, ['cat-file', 'blob', name]);
  return status === 0 ? stdout : undefined;
}

const failureToStart = (error: Error): string =>
  'code' in error && error.code === 'ENOENT'
    ? 'git was not found; install it, or see that it is on the PATH'
    : `git could not be run (${'code' in error ? String(error.code) : error.message})`;

function whyNoRepository(path: string, said: string): string {
  if (/not a git repository/.test(said)) return `${path} is not in a git repository`;
  if (/must be run in a work tree/.test(said)) return `${path} is in a git repository without a working tree`;
  // Such as a folder that belongs to someone else, with git's own words on how to allow it.
  return said.trim().replace(/^fatal: /, 'git says: ');
}
