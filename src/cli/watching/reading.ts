import { statSync } from 'node:fs';
import type { Problem } from '../../plan/problem.ts';
import { readSource } from '../../plan/source.ts';
import type { Occasion, Saves } from './saves.ts';

/** What stands in the file, or why nothing can be read there. */
export type Content = { readonly text: string } | { readonly problem: Problem };

/**
 * How long a file may be away or empty before that is told: many editors take the old file away, or empty it, before
 * they write the new one.
 */
const graceMs = 300;

export interface Reader {
  /** Waits until the file holds something else than it did when it was last asked. */
  readonly next: () => Promise<Content>;
}

/** Reads a file again and again. The first call of `next` tells of the file as it is. */
export function readerOf(file: string, saves: Saves): Reader {
  let last: Content | undefined;
  let lastStamp = '';

  const look = (occasion: Occasion): Content | undefined => {
    const stamp = stampOf(file);
    if (occasion === 'heartbeat' && stamp.text === lastStamp) return undefined;
    if (lastStamp !== '' && stamp.identity !== identityIn(lastStamp)) saves.findAgain();
    lastStamp = stamp.text;
    const content = readSource(file);
    return last && isSame(last, content) ? undefined : content;
  };

  return {
    next: async () => {
      for (let occasion: Occasion = last ? await saves.next() : 'sign'; ; occasion = await saves.next()) {
        let content = look(occasion);
        if (content && last && mayBeBetween(content)) {
          await new Promise((resolve) => setTimeout(resolve, graceMs));
          content = look('sign');
        }
        if (content) {
          last = content;
          return content;
        }
      }
    },
  };
}

const isSame = (one: Content, other: Content): boolean =>
  'text' in one
    ? 'text' in other && one.text === other.text
    : 'problem' in other && one.problem.message === other.problem.message;

/** Away or empty, which may be a step on the way to a new content. */
const mayBeBetween = (content: Content): boolean => 'problem' in content;

const stampOf = (file: string): { readonly identity: string; readonly text: string } => {
  try {
    const { dev, ino, size, mtimeMs, ctimeMs } = statSync(file);
    const identity = `${dev} ${ino}`;
    return { identity, text: `${identity}/${size} ${mtimeMs} ${ctimeMs}` };
  } catch {
    return { identity: 'none', text: 'none' };
  }
};

const identityIn = (stamp: string): string => stamp.split('/')[0] ?? '';
