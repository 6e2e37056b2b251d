import { lstatSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { isChained, ownerOf } from './script.ts';

/** What stands where git looks for the hook. */
export type Standing =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'ours'; readonly script: string }
  /** `chained`: it runs ours already. */
  | { readonly kind: 'ours, and more' | 'foreign'; readonly chained: boolean };

export const hookIn = (hooksFolder: string): string => join(hooksFolder, 'pre-commit');

/** A link or a folder is somebody else's, whatever it leads to. Throws where the file system does not let us look. */
export function standingAt(hook: string): Standing {
  const stats = lstatSync(hook, { throwIfNoEntry: false });
  if (!stats) return { kind: 'nothing' };
  if (!stats.isFile()) return { kind: 'foreign', chained: false };
  const script = readFileSync(hook, 'utf8');
  const kind = ownerOf(script);
  return kind === 'ours' ? { kind, script } : { kind, chained: isChained(script) };
}

/** Writes the hook whole or not at all, so that git never runs half of one. Its folder need not exist. */
export function writeHook(hook: string, script: string): void {
  mkdirSync(dirname(hook), { recursive: true });
  const draft = `${hook}.${process.pid}`;
  try {
    // Git runs only what may be run.
    writeFileSync(draft, script, { mode: 0o755, flag: 'wx' });
    renameSync(draft, hook);
  } catch (error) {
    rmSync(draft, { force: true });
    throw error;
  }
}

export const removeHook = (hook: string): void => rmSync(hook);
