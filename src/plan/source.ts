import { readFileSync, type Stats, statSync } from 'node:fs';
import type { Problem } from './problem.ts';

const maxBytes = 5 * 1024 * 1024;

/** The text of a plan file, or what is wrong with the file. Never throws for anything a file system may do. */
export function readSource(file: string): { readonly text: string } | { readonly problem: Problem } {
  const problem = (message: string, expected?: string) => ({
    problem: expected === undefined ? { message } : { message, expected },
  });
  let stats: Stats;
  try {
    stats = statSync(file);
  } catch (error) {
    return codeOf(error) === 'ENOENT' || codeOf(error) === 'ENOTDIR'
      ? problem('there is no such file', 'the path of a plan, such as `examples/first-lines.yaml`')
      : problem(`the file cannot be read (${codeOf(error)})`);
  }
  if (stats.isDirectory()) return problem('this is a directory', 'the path of one plan file');
  if (stats.size > maxBytes) {
    return problem(
      `the file is ${(stats.size / 1024 / 1024).toFixed(1)} MiB long`,
      'a plan of at most 5 MiB',
    );
  }
  let bytes: Buffer;
  try {
    bytes = readFileSync(file);
  } catch (error) {
    return problem(`the file cannot be read (${codeOf(error)})`);
  }
  return decode(bytes);
}

/** Reads UTF-8 strictly: a byte that is no UTF-8 is an error with its line, not a question mark. */
export function decode(bytes: Uint8Array): { readonly text: string } | { readonly problem: Problem } {
  try {
    // A byte order mark in front is dropped by the decoder.
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    if (text.trim() === '') {
      return {
        problem: { message: 'the file is empty', expected: 'a plan; `storystick: 1` is its first line' },
      };
    }
    return { text };
  } catch {
    const line = lineOfFirstBadByte(bytes);
    return {
      problem: {
        message: `the file is not UTF-8 text (first seen in line ${line})`,
        expected: 'the plan saved as UTF-8; most editors have it under "Save with encoding"',
      },
    };
  }
}

function lineOfFirstBadByte(bytes: Uint8Array): number {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let line = 1;
  for (const byte of bytes) {
    try {
      decoder.decode(Uint8Array.of(byte), { stream: true });
    } catch {
      return line;
    }
    if (byte === 0x0a) line += 1;
  }
  return line;
}

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : 'unknown reason';
