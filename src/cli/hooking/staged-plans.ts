import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { hasPlanName, isPlan } from '../../plan/is-plan.ts';
import { type Source, sourceOf } from '../../plan/source.ts';
import { type Repository, readRevision, readStaged, stagedFiles } from '../git.ts';

export interface StagedPlan {
  /** From the top of the repository, as git writes it. */
  readonly path: string;
  readonly source: Source;
  /** The file on disk is not what is staged. */
  readonly isEdited: boolean;
}

/**
 * The plans that a commit would change, as they are staged, in git's order. A file that was a plan in the commit before
 * still counts as one: whoever loses the line `storystick: 1` should hear of it.
 */
export function stagedPlans(repository: Repository): readonly StagedPlan[] {
  return stagedFiles(repository)
    .filter(({ path, isOrdinary }) => isOrdinary && hasPlanName(path))
    .flatMap(({ path, before }) => {
      const content = readStaged(repository, path);
      const old =
        isPlan(content) || before === undefined ? undefined : readRevision(repository, 'HEAD', before);
      if (!isPlan(content) && !(old && isPlan(old))) return [];
      return [{ path, source: sourceOf(content), isEdited: isEdited(join(repository.top, path), content) }];
    });
}

/** Line ends may differ: git can be told to change them on the way. */
function isEdited(file: string, staged: Uint8Array): boolean {
  const withoutReturns = (content: Uint8Array): string =>
    Buffer.from(content).toString('latin1').replaceAll('\r\n', '\n');
  try {
    return withoutReturns(readFileSync(file)) !== withoutReturns(staged);
  } catch {
    return false;
  }
}
