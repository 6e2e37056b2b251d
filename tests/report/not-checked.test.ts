import { expect, test } from 'vitest';
import { saysTooLittle } from '../../src/engine/finding.ts';
import { renderTerminal, type TerminalOptions } from '../../src/report/terminal.ts';
import { findingOf, massCaution, reportOf } from './fixtures.ts';

const plain: TerminalOptions = { width: 100, colour: false, detail: false, quiet: false };

const waiting = findingOf({
  verdict: 'not checked',
  title: 'left and right',
  rule: 'balance.sides',
  topic: 'balance',
  subject: 'left and right',
  reason: saysTooLittle,
  missing: ['van.track', 'van.wheelbase'],
  cautions: [massCaution],
});
const report = reportOf({ findings: [findingOf({ topic: 'balance' }), waiting] });

test('checks that could not begin are one line each, with the keys to add, and not in the table', () => {
  const text = renderTerminal(report, plain);
  expect(text).toContain(
    'not checked, since the plan does not say enough; the keys to add:\n  left and right: van.track, van.wheelbase (balance.sides)\n',
  );
  expect(text.match(/left and right/g)).toHaveLength(1);
  expect(text).toContain('1 not checked');
  expect(text).toContain(massCaution.slice(0, 40));
});

test('they keep to the width, with the second line set in', () => {
  const lines = renderTerminal(report, { ...plain, width: 40 }).split('\n');
  for (const line of lines) expect(line.length).toBeLessThanOrEqual(40);
  expect(lines).toContain('  left and right: van.track,');
  expect(lines).toContain('    van.wheelbase (balance.sides)');
});

test('a check that says more than that has a block of its own, and so has every one with --detail', () => {
  const other = { ...waiting, reason: ['The plan lacks it.'] };
  expect(renderTerminal(reportOf({ findings: [other] }), plain)).toContain('The plan lacks it.');
  const detailed = renderTerminal(report, { ...plain, detail: true });
  expect(detailed).not.toContain('the keys to add:');
  expect(detailed.match(/left and right/g)?.length).toBeGreaterThan(1);
});
