import { readSource, type Source, sourceOf } from '../../plan/source.ts';
import {
  deepening,
  git,
  isShallow,
  placeInGit,
  type Repository,
  type Revision,
  revisionOf,
  type Trouble,
} from '../git.ts';
import { type Found, findIn } from './renamed.ts';

/** The text of one side of a comparison. */
export interface SideText {
  /** What places in it are called by: a path, or as git writes a file of a revision, "HEAD~2:plans/van.yaml". */
  readonly name: string;
  /** Its name, and what else there is to say of it. */
  readonly label: string;
  /** The file on disk that it is, or was. */
  readonly file: string;
  readonly source: Source;
}

export interface Sides {
  readonly before: SideText;
  readonly after: SideText;
}

interface Wrong {
  readonly wrong: string;
}

export const sideOnDisk = (file: string): SideText => ({
  name: file,
  label: file,
  file,
  source: readSource(file),
});

/** Two files as they are on disk. */
export const sidesOfFiles = (before: string, after: string): Sides => ({
  before: sideOnDisk(before),
  after: sideOnDisk(after),
});

/**
 * A file against a revision of itself, or two revisions of it: `A..B`, of which a missing one is HEAD; or `A...B`, what
 * has happened up to B since it parted from A.
 */
export function sidesInGit(file: string, against: string): Sides | Wrong {
  const place = placeInGit(file);
  if ('problem' in place) {
    return { wrong: complaint(place.problem, 'a second plan, or a plan in a git repository') };
  }
  const { repository, path } = place;
  const range = rangeIn(repository, against);
  if ('wrong' in range) return range;
  const commits = [range.before, ...(range.after ? [range.after] : [])].map(({ commit }) => commit);
  const others = (revision: Revision) => commits.filter((commit) => commit !== revision.commit);
  const sideAt = (revision: Revision): SideText | Wrong => {
    const found = findIn(repository, revision.commit, path, others(revision));
    return found
      ? sideOf(file, revision, found)
      : {
          wrong: complaint(
            `${file} was not in ${titled(revision)}, under this name or one that git knows it to have had`,
            'a revision that has it, or two files; a file that was renamed since is found once it is added to git',
          ),
        };
  };
  const before = sideAt(range.before);
  if ('wrong' in before) return before;
  const after = range.after ? sideAt(range.after) : sideOnDisk(file);
  return 'wrong' in after ? after : { before, after };
}

function sideOf(file: string, revision: Revision, { path, content }: Found): SideText {
  const name = `${revision.name}:${path}`;
  return {
    name,
    label: `${name} (${revision.short}, ${revision.day}: ${revision.title})`,
    file,
    source: sourceOf(content),
  };
}

const titled = ({ name, short, title }: Revision): string => `${name} (${short}, ${title})`;

interface Range {
  readonly before: Revision;
  /** The file on disk, if there is none. */
  readonly after?: Revision;
}

function rangeIn(repository: Repository, against: string): Range | Wrong {
  const single = revisionOf(repository, against);
  if ('revision' in single) return { before: single.revision };
  const [, from = '', dots = '', to = ''] = /^(.*?)(\.{2,3})(.*)$/.exec(against) ?? [];
  if (dots === '') return { wrong: complaintOf(single) };
  const before = revisionOf(repository, from || 'HEAD');
  if ('problem' in before) return { wrong: complaintOf(before) };
  const after = revisionOf(repository, to || 'HEAD');
  if ('problem' in after) return { wrong: complaintOf(after) };
  if (dots === '..') return { before: before.revision, after: after.revision };
  const base = String(
    git(repository.top, ['merge-base', before.revision.commit, after.revision.commit]).stdout,
  ).trim();
  const parted = revisionOf(repository, base);
  if ('problem' in parted) {
    const isPart = isShallow(repository);
    return {
      wrong: complaint(
        `${titled(before.revision)} and ${titled(after.revision)} have no commit in common${isPart ? ' in this clone, which holds only the newest commits' : ''}`,
        isPart ? deepening : `two revisions with two dots between: \`${from}..${to}\``,
      ),
    };
  }
  return { before: { ...parted.revision, name: parted.revision.short }, after: after.revision };
}

const expectedRevision = 'a branch, a tag, a commit or `HEAD~1`; or two of them, `main..HEAD`';

const complaintOf = ({ problem, expected = expectedRevision }: Trouble): string =>
  complaint(problem, expected);

const complaint = (problem: string, expected: string): string => `${problem}\n  expected: ${expected}\n`;
