import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const launcher = fileURLToPath(new URL('../../bin/storystick.cjs', import.meta.url));

export interface Outcome {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** A real repository in a folder of its own, with a name that has to be quoted, and nothing of the user's settings. */
export interface HookedRepository {
  readonly top: string;
  readonly git: (...args: readonly string[]) => Outcome;
  /** As `git`, in a folder of the repository or elsewhere, and with more of the environment. */
  readonly gitIn: (folder: string, more: NodeJS.ProcessEnv, ...args: readonly string[]) => Outcome;
  /** As `git`, and an error of the test where git refuses. */
  readonly must: (...args: readonly string[]) => string;
  readonly storystick: (...args: readonly string[]) => Outcome;
  readonly storystickIn: (folder: string, ...args: readonly string[]) => Outcome;
  readonly write: (path: string, text: string) => void;
  readonly commits: () => readonly string[];
  readonly removeAll: () => void;
}

export function hookedRepository(): HookedRepository {
  const scratch = realpathSync(mkdtempSync(join(tmpdir(), 'storystick-hook-')));
  const top = join(scratch, "van's plän");
  mkdirSync(top);
  const environment = cleanEnvironment(scratch);
  const runIn = (
    folder: string,
    more: NodeJS.ProcessEnv,
    program: string,
    args: readonly string[],
  ): Outcome => {
    const { status, stdout, stderr } = spawnSync(program, args, {
      cwd: folder,
      encoding: 'utf8',
      env: { ...environment, ...more },
    });
    return { status, stdout, stderr };
  };
  const git = (...args: readonly string[]) => runIn(top, {}, 'git', args);
  const must = (...args: readonly string[]): string => {
    const { status, stdout, stderr } = git(...args);
    if (status !== 0) throw new Error(`git ${args.join(' ')} ended with ${status}:\n${stdout}${stderr}`);
    return stdout;
  };
  must('init', '--quiet', '--initial-branch=main');
  return {
    top,
    git,
    must,
    gitIn: (folder, more, ...args) => runIn(folder, more, 'git', args),
    storystick: (...args) => runIn(top, {}, process.execPath, [launcher, ...args]),
    storystickIn: (folder, ...args) => runIn(folder, {}, process.execPath, [launcher, ...args]),
    write: (path, text) => {
      mkdirSync(dirname(join(top, path)), { recursive: true });
      writeFileSync(join(top, path), text);
    },
    commits: () => must('log', '--format=%s').trimEnd().split('\n'),
    removeAll: () => rmSync(scratch, { recursive: true }),
  };
}

function cleanEnvironment(home: string): NodeJS.ProcessEnv {
  const inherited = Object.entries(process.env).filter(([name]) => !name.startsWith('GIT_'));
  return {
    ...Object.fromEntries(inherited),
    HOME: home,
    XDG_CONFIG_HOME: home,
    GIT_CONFIG_NOSYSTEM: '1',
    GIT_EDITOR: 'true',
    GIT_AUTHOR_NAME: 'A Joiner',
    GIT_AUTHOR_EMAIL: 'joiner@example.org',
    GIT_COMMITTER_NAME: 'A Joiner',
    GIT_COMMITTER_EMAIL: 'joiner@example.org',
    NO_COLOR: '1',
    COLUMNS: '100',
    NODE_OPTIONS: '',
  };
}
