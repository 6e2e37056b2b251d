/** What of the terminal a watch needs; tests hand in their own. */
export interface Screen {
  readonly now: () => Date;
  /** The terminal may get wider or narrower meanwhile. */
  readonly width: () => number;
  /** Written in front of each report. */
  readonly fresh: string;
  /** Written at the very end, so that the next prompt looks as it did before. */
  readonly farewell: string;
  /** Settles when the watch is to end. */
  readonly ended: Promise<void>;
}

const clearedScreen = '\u001B[2J\u001B[H';
const plainColours = '\u001B[0m';
const visibleCursor = '\u001B[?25h';

/** Ctrl-C, a polite request to end, or a terminal that was closed. */
const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** The screen of this process. From now on a signal ends the watch, not the process. */
export function screenOf(
  stream: NodeJS.WriteStream,
  width: (stream: NodeJS.WriteStream) => number,
  { clear }: { readonly clear: boolean },
): Screen {
  const isTerminal = stream.isTTY === true;
  return {
    now: () => new Date(),
    width: () => width(stream),
    fresh: isTerminal && clear ? clearedScreen : '',
    farewell: isTerminal ? `${plainColours}${visibleCursor}\n` : '',
    ended: new Promise((resolve) => {
      for (const signal of signals) process.once(signal, () => resolve());
      // Nobody reads on, as when a pager was left.
      stream.once('error', () => resolve());
    }),
  };
}
