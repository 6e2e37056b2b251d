import {
  accessSync,
  closeSync,
  constants,
  fchmodSync,
  fchownSync,
  fsyncSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Problem } from '../plan/problem.ts';
import { decode } from '../plan/source.ts';

/**
 * Puts another text into a plan file, whole or not at all: whoever reads it meanwhile, and whatever breaks off, has the
 * old file or the new one. Links, permissions and a byte order mark stay. `before` is what the change was made from: a
 * file that somebody has saved since then is left alone.
 */
export function replaceFile(file: string, before: string, after: string): Problem | undefined {
  try {
    const real = realpathSync(file);
    const bytes = readFileSync(real);
    const now = decode(bytes);
    if (!('text' in now) || now.text !== before)
      return {
        message: 'the file was saved by somebody else meanwhile',
        expected: 'the same command once more',
      };
    accessSync(real, constants.W_OK);
    const hasMark = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
    writeBeside(real, Buffer.from(`${hasMark ? '\uFEFF' : ''}${after}`, 'utf8'));
    return undefined;
  } catch (error) {
    return troubleOf(error);
  }
}

function writeBeside(real: string, bytes: Buffer): void {
  const { mode, uid, gid } = statSync(real);
  const draft = join(dirname(real), `.${basename(real)}.${process.pid}.new`);
  const handle = openSync(draft, 'wx', 0o600);
  try {
    try {
      writeAll(handle, bytes);
      // The owner first: a change of it takes rights away.
      if (process.getuid?.() === 0) fchownSync(handle, uid, gid);
      fchmodSync(handle, mode & 0o7777);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    renameSync(draft, real);
  } catch (error) {
    rmSync(draft, { force: true });
    throw error;
  }
}

function writeAll(handle: number, bytes: Buffer): void {
  for (let written = 0; written < bytes.length; )
    written += writeSync(handle, bytes, written, bytes.length - written);
}

const troubles: Readonly<Record<string, Problem>> = {
  EACCES: {
    message: 'there is no permission to write the file',
    expected: 'a file and a folder that you may write',
  },
  EPERM: {
    message: 'there is no permission to write the file',
    expected: 'a file and a folder that you may write',
  },
  EROFS: { message: 'the file lies where nothing can be written', expected: 'a copy of it somewhere else' },
  ENOSPC: { message: 'there is no space left to write the file' },
  ENOENT: { message: 'there is no such file or folder', expected: 'a path into a folder that is there' },
  ENOTDIR: { message: 'there is no such file or folder', expected: 'a path into a folder that is there' },
};

export function troubleOf(error: unknown): Problem {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return troubles[code] ?? { message: `the file cannot be written${code === '' ? '' : ` (${code})`}` };
}
