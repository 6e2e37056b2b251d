import { Chalk } from 'chalk';
import type { Verdict } from '../engine/finding.ts';

type Paint = (text: string) => string;

/** How the terminal report marks its words. Nothing is said by colour alone: the verdict is always a word too. */
export interface Pen {
  readonly verdict: Readonly<Record<Verdict, Paint>>;
  readonly strong: Paint;
  readonly faint: Paint;
  readonly caution: Paint;
}

/** Only the sixteen colours that every terminal lets its user choose; without `colour`, no escape at all. */
export function penOf(colour: boolean): Pen {
  const chalk = new Chalk({ level: colour ? 1 : 0 });
  // Of one argument each: chalk would print the index too where a pen is handed to `map`.
  return {
    verdict: {
      fail: (text) => chalk.bold.red(text),
      warn: (text) => chalk.yellow(text),
      'not checked': (text) => chalk.cyan(text),
      pass: (text) => chalk.green(text),
    },
    strong: (text) => chalk.bold(text),
    faint: (text) => chalk.dim(text),
    caution: (text) => chalk.bold.yellow(text),
  };
}
