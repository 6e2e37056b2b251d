import { changesOf, git, type Repository, readRevision } from '../git.ts';

/** A file as it was in a revision, and where it was. */
export interface Found {
  readonly path: string;
  readonly content: Uint8Array;
}

/**
 * A file in a commit: under its name or, if there is none of this name, under the one that git knows it to have had there.
 * `others` are commits in which the name may stand; the files on disk are asked too.
 */
export function findIn(
  repository: Repository,
  commit: string,
  path: string,
  others: readonly string[],
): Found | undefined {
  const at = (name: string | undefined): Found | undefined => {
    const content = name === undefined ? undefined : readRevision(repository, commit, name);
    return content && name !== undefined ? { path: name, content } : undefined;
  };
  return (
    at(path) ??
    at(nameByDifference(repository, commit, path, others)) ??
    namesByHistory(repository, path).reduce<Found | undefined>((found, name) => found ?? at(name), undefined)
  );
}

/** The name in the commit, if the file is known by the given one in another commit or on disk. */
function nameByDifference(
  { top }: Repository,
  commit: string,
  path: string,
  others: readonly string[],
): string | undefined {
  const differences = [
    [commit],
    ...others.filter((other) => other !== commit).map((other) => [commit, other]),
  ];
  for (const between of differences) {
    const before = changesOf(top, between).find((change) => change.path === path)?.before;
    if (before !== undefined && before !== path) return before;
  }
  return undefined;
}

/** All names that a file has had on the way to the commit that is checked out, the newest first. */
function namesByHistory({ top }: Repository, path: string): readonly string[] {
  const what = ['log', '--follow', '-M', '--diff-filter=R', '--no-show-signature'];
  const args = [...what, '--name-status', '-z', '--format=', '--', path];
  const parts = String(git(top, args).stdout).split('\0');
  // "R086", the old name, the new name.
  return parts.filter((_, at) => /^\n?R\d+$/.test(parts[at - 1] ?? ''));
}
