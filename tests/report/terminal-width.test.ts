import { stripVTControlCharacters } from 'node:util';
import fc from 'fast-check';
import stringWidth from 'fast-string-width';
import { describe, expect, test } from 'vitest';
import { topics } from '../../src/engine/finding.ts';
import { renderAssumptions } from '../../src/report/assumptions.ts';
import { renderTerminal } from '../../src/report/terminal.ts';
import { visible } from '../../src/report/visible.ts';
import { longReport } from './fixtures.ts';
import { nastyReport } from './nasty-report.ts';

const options = fc.record({
  width: fc.integer({ min: 60, max: 200 }),
  colour: fc.boolean(),
  detail: fc.boolean(),
  quiet: fc.boolean(),
});

/** Text without what wrapping may change. */
const unwrapped = (text: string): string => text.normalize().replace(/\s+/g, '');

/** Text without the colours that the report uses, and with any other escape still in it. */
const withoutColour = (text: string): string =>
  [1, 2, 22, 31, 32, 33, 36, 39].reduce((rest, code) => rest.replaceAll(`\u001b[${code}m`, ''), text);

const widest = (text: string): number =>
  Math.max(...text.split('\n').map((line) => stringWidth(stripVTControlCharacters(line))));

describe('whatever the plan holds', () => {
  test('no line is wider than the terminal, and no control character reaches it', () => {
    fc.assert(
      fc.property(nastyReport, options, (report, chosen) => {
        for (const text of [renderTerminal(report, chosen), renderAssumptions(report, chosen)]) {
          expect(widest(text)).toBeLessThanOrEqual(chosen.width);
          const bare = chosen.colour ? withoutColour(text) : text;
          expect(bare.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cs}\p{Bidi_Control}]/u);
        }
      }),
      { numRuns: 300 },
    );
  });

  test('every verdict that is not a pass and every caution is there', () => {
    fc.assert(
      fc.property(nastyReport, options, (report, chosen) => {
        const text = stripVTControlCharacters(renderTerminal(report, chosen));
        const words = unwrapped(text);
        for (const { cautions } of [...report.findings, ...report.notes]) {
          for (const caution of cautions) expect(words).toContain(unwrapped(visible(caution)));
        }
        for (const verdict of ['fail', 'warn', 'not checked'] as const) {
          const findings = report.findings.filter((finding) => finding.verdict === verdict);
          const openings = text.match(new RegExp(`^${verdict}(?: |$)`, 'gm'))?.length ?? 0;
          // A line in the table and a paragraph below it; quietly, one line. A name may look like one more.
          expect(openings).toBeGreaterThanOrEqual(findings.length * (chosen.quiet ? 1 : 2));
          for (const { rule } of findings) expect(text).toContain(rule);
        }
      }),
      { numRuns: 150 },
    );
  });
});

describe('a real plan', () => {
  test.each([60, 75, 89, 90, 100, 140, 200])('fits in %i columns in colour', (width) => {
    const text = renderTerminal(longReport, { width, colour: true, detail: true, quiet: false });
    expect(widest(text)).toBeLessThanOrEqual(width);
  });

  test.each(topics)('shows %s in one screenful at 100 columns', (topic) => {
    const report = { ...longReport, notes: [] };
    const text = renderTerminal(report, {
      width: 100,
      colour: false,
      detail: false,
      quiet: false,
      only: [topic],
    });
    // Some forty lines for the topic itself, and the opening and closing ones.
    expect(text.trimEnd().split('\n').length).toBeLessThanOrEqual(45);
  });
});
