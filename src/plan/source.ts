import { closeSync, fstatSync, openSync, readSync, type Stats, statSync } from 'node:fs';
import type { Problem } from './problem.ts';

const maxBytes = 5 * 1024 * 1024;

export type Source = { readonly text: string } | { readonly problem: Problem };

const trouble = (message: string, expected?: string): { readonly problem: Problem } => ({
  problem: expected === undefined ? { message } : { message, expected },
});

/** The text of a plan file, or what is wrong with the file. Never throws for anything a file system may do. */
export function readSource(file: string): Source {
  try {
    const refused = refusalOf(statSync(file));
    if (refused) return refused;
    return decode(readAtMost(file, maxBytes));
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    return reasons[code] ?? trouble(`the file cannot be read${code === '' ? '' : ` (${code})`}`);
  }
}

const nowhere = trouble('there is no such file', 'the path of a plan, such as `examples/first-lines.yaml`');

const reasons: Readonly<Record<string, ReturnType<typeof trouble>>> = {
  ENOENT: nowhere,
  ENOTDIR: nowhere,
  ERR_INVALID_ARG_VALUE: nowhere,
  ENAMETOOLONG: trouble('the path is too long', 'the path of a plan file'),
  ELOOP: trouble('the path leads round in a circle of links', 'the path of a plan file'),
  EACCES: trouble('there is no permission to read the file', 'a file that you may read'),
  EPERM: trouble('there is no permission to read the file', 'a file that you may read'),
};

/** A pipe or a device might never end. */
function refusalOf(stats: Stats): ReturnType<typeof trouble> | undefined {
  if (stats.isDirectory()) return trouble('this is a directory', 'the path of one plan file');
  if (!stats.isFile()) return trouble('this is no ordinary file', 'a plan that is saved on disk');
  return tooLong(stats.size);
}

const tooLong = (bytes: number): ReturnType<typeof trouble> | undefined =>
  bytes > maxBytes
    ? trouble(`the file is ${(bytes / 1024 / 1024).toFixed(1)} MiB long`, 'a plan of at most 5 MiB')
    : undefined;

/** The text of a plan that does not come from a file of its own. */
export const sourceOf = (content: Uint8Array): Source => tooLong(content.length) ?? decode(content);

/** The file as it is when it is opened: it may have become another one since it was looked at. */
function readAtMost(file: string, most: number): Uint8Array {
  const handle = openSync(file, 'r');
  try {
    const bytes = new Uint8Array(Math.min(most, fstatSync(handle).size));
    let length = 0;
    while (length < bytes.length) {
      const read = readSync(handle, bytes, length, bytes.length - length, length);
      if (read === 0) break;
      length += read;
    }
    return bytes.subarray(0, length);
  } finally {
    closeSync(handle);
  }
}

/** Reads UTF-8 strictly: a byte that is no UTF-8 is an error with its line, not a question mark. */
export function decode(bytes: Uint8Array): Source {
  const asUtf8 = 'the plan saved as UTF-8; most editors have it under "Save with encoding"';
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff))
    return trouble('the file is UTF-16 text', asUtf8);
  try {
    // A byte order mark in front is dropped by the decoder.
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    if (text.trim() === '') return trouble('the file is empty', 'a plan; `storystick: 1` is its first line');
    return { text };
  } catch {
    return trouble(`the file is not UTF-8 text (first seen in line ${lineOfFirstBadByte(bytes)})`, asUtf8);
  }
}

/** No byte of a longer UTF-8 character is a line break, so each line can be tried alone. */
function lineOfFirstBadByte(bytes: Uint8Array): number {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let line = 1;
  for (let start = 0; start < bytes.length; line += 1) {
    const next = bytes.indexOf(0x0a, start);
    const end = next === -1 ? bytes.length : next + 1;
    try {
      decoder.decode(bytes.subarray(start, end));
    } catch {
      return line;
    }
    start = end;
  }
  return line;
}
