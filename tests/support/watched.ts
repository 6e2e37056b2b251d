import { type ChildProcess, spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const launcher = fileURLToPath(new URL('../../bin/storystick.cjs', import.meta.url));

/** A watch that runs in a process of its own, as the user starts it. */
export interface Watched {
  /** Waits until more is printed that matches, and gives all that was printed since the last match. */
  readonly until: (pattern: RegExp) => Promise<string>;
  /** What was printed since the last match. */
  readonly unread: () => string;
  readonly child: ChildProcess;
  /** The exit code, or the signal that ended it. */
  readonly ended: Promise<number | NodeJS.Signals | null>;
  readonly end: (signal: NodeJS.Signals) => Promise<number | NodeJS.Signals | null>;
}

export const startWatch = (folder: string, ...args: readonly string[]): Watched =>
  startWatchAt(100, folder, ...args);

/** On a terminal of so many columns. */
export function startWatchAt(columns: number, folder: string, ...args: readonly string[]): Watched {
  return watchedProcess(
    spawn(process.execPath, [launcher, 'watch', ...args], {
      cwd: folder,
      env: { ...process.env, NO_COLOR: '1', COLUMNS: String(columns), NODE_OPTIONS: '' },
      stdio: ['ignore', 'pipe', 'pipe'],
    }),
  );
}

const longestWaitMs = 40_000;

export function watchedProcess(child: ChildProcess): Watched {
  let printed = '';
  let read = 0;
  let looks: (() => void)[] = [];
  const ended = new Promise<number | NodeJS.Signals | null>((resolve) => {
    child.on('close', (code, signal) => resolve(signal ?? code));
  });
  for (const stream of [child.stdout, child.stderr]) {
    stream?.setEncoding('utf8').on('data', (text: string) => {
      printed += text;
      for (const look of looks) look();
    });
  }
  return {
    child,
    ended,
    unread: () => printed.slice(read),
    until: (pattern) =>
      new Promise((resolve, reject) => {
        const give = (settle: () => void): void => {
          looks = looks.filter((each) => each !== look);
          clearTimeout(timer);
          settle();
        };
        const look = (): void => {
          const found = pattern.exec(printed.slice(read));
          if (!found) return;
          const text = printed.slice(read, read + found.index + found[0].length);
          read += text.length;
          give(() => resolve(text));
        };
        const fail = (why: string) =>
          give(() => reject(new Error(`${why}, without ${pattern}:\n${printed.slice(read)}`)));
        const timer = setTimeout(() => fail('waited too long'), longestWaitMs);
        looks.push(look);
        look();
        void ended.then((how) => {
          if (looks.includes(look)) fail(`it ended (${how})`);
        });
      }),
    end: (signal) => {
      child.kill(signal);
      return ended;
    },
  };
}
