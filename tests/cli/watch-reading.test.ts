import { mkdtempSync, rmSync, unlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type Reader, readerOf } from '../../src/cli/watching/reading.ts';
import type { Occasion } from '../../src/cli/watching/saves.ts';

// The occasions come from the test, so that it decides what happens between them.
let folder: string;
let file: string;
let reader: Reader;
let occasion: (which: Occasion) => void;
let foundAgain: number;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'storystick-reading-'));
  file = join(folder, 'plan.yaml');
  foundAgain = 0;
  const waiting: ((which: Occasion) => void)[] = [];
  const early: Occasion[] = [];
  occasion = (which) => {
    const told = waiting.shift();
    if (told) told(which);
    else early.push(which);
  };
  reader = readerOf(file, {
    next: () =>
      new Promise((resolve) => {
        const which = early.shift();
        if (which) resolve(which);
        else waiting.push(resolve);
      }),
    findAgain: () => {
      foundAgain += 1;
    },
    close: async () => {},
  });
});
afterEach(() => rmSync(folder, { recursive: true }));

test('the first time the file is read at once', async () => {
  writeFileSync(file, 'one');
  expect(await reader.next()).toEqual({ text: 'one' });
  expect(foundAgain).toBe(0);
});

test.each([
  ['away', () => unlinkSync(file)],
  ['empty', () => writeFileSync(file, '')],
])('a file that is only %s for a moment is never told to be', async (_, take) => {
  writeFileSync(file, 'one');
  await reader.next();
  take();
  setTimeout(() => writeFileSync(file, 'two'), 20);
  occasion('sign');
  expect(await reader.next()).toEqual({ text: 'two' });
});

test('a file that stays away is told once', async () => {
  writeFileSync(file, 'one');
  await reader.next();
  unlinkSync(file);
  occasion('heartbeat');
  expect(await reader.next()).toMatchObject({ problem: { message: 'there is no such file' } });
  occasion('heartbeat');
  occasion('sign');
  writeFileSync(file, 'one');
  occasion('heartbeat');
  expect(await reader.next()).toEqual({ text: 'one' });
  expect(foundAgain).toBe(2);
});

test('what was written again without a change is no news', async () => {
  writeFileSync(file, 'one');
  await reader.next();
  writeFileSync(file, 'one');
  occasion('sign');
  occasion('heartbeat');
  const next = reader.next();
  writeFileSync(file, 'two');
  occasion('heartbeat');
  expect(await next).toEqual({ text: 'two' });
});
