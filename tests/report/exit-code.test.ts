import { expect, test } from 'vitest';
import type { Verdict } from '../../src/engine/finding.ts';
import { exitCodeOf } from '../../src/report/exit-code.ts';
import { findingOf } from './fixtures.ts';

test.each<[verdicts: Verdict[], usual: 0 | 1, strict: 0 | 1]>([
  [[], 0, 0],
  [['pass', 'pass'], 0, 0],
  [['not checked'], 0, 0],
  [['pass', 'warn', 'not checked'], 0, 1],
  [['pass', 'fail'], 1, 1],
])('%j exits with %i, strictly with %i', (verdicts, usual, strict) => {
  const findings = verdicts.map((verdict) => findingOf({ verdict }));
  expect(exitCodeOf({ findings }, { strict: false })).toBe(usual);
  expect(exitCodeOf({ findings }, { strict: true })).toBe(strict);
});
