import { watch } from 'chokidar';

/** How long the file has to be left alone before it is looked at: an editor writes a file in more than one step. */
const quietMs = 60;
/** But no longer than this after the first sign, for a file that is written all the time. */
const mostMs = 1000;
/**
 * How often the file is looked at without any sign. A folder that was away, the file behind a link, a network drive:
 * not every system tells of them.
 */
const heartbeatMs = 500;

/** Why to look at the file: the system told of a change, or it is only time to look. */
export type Occasion = 'sign' | 'heartbeat';

export interface Saves {
  readonly next: () => Promise<Occasion>;
  /** Looks for the file anew: what was watched may no longer be the file of that name. */
  readonly findAgain: () => void;
  readonly close: () => Promise<void>;
}

/** Occasions at which a file may have changed. Only reading it tells whether it has. */
export function savesOf(file: string): Saves {
  let waiting: ((occasion: Occasion) => void) | undefined;
  let due: Occasion | undefined;
  let firstSign: number | undefined;
  let quiet: NodeJS.Timeout | undefined;

  const tell = (occasion: Occasion): void => {
    const told = waiting;
    waiting = undefined;
    if (told) told(occasion);
    else if (due !== 'sign') due = occasion;
  };
  const onSign = (): void => {
    firstSign ??= performance.now();
    clearTimeout(quiet);
    quiet = setTimeout(
      () => {
        firstSign = undefined;
        tell('sign');
      },
      Math.max(0, Math.min(quietMs, firstSign + mostMs - performance.now())),
    );
  };
  const start = () =>
    watch(file, { ignoreInitial: true })
      .on('all', onSign)
      // The system may have no watch left to give; the heartbeat goes on.
      .on('error', () => {});

  let watcher = start();
  const heartbeat = setInterval(() => {
    // What waits for quiet will tell by itself.
    if (firstSign === undefined) tell('heartbeat');
  }, heartbeatMs);

  return {
    next: () =>
      new Promise((resolve) => {
        if (due === undefined) waiting = resolve;
        else resolve(due);
        due = undefined;
      }),
    findAgain: () => {
      void watcher.close();
      watcher = start();
    },
    close: async () => {
      clearInterval(heartbeat);
      clearTimeout(quiet);
      await watcher.close();
    },
  };
}
