import fc from 'fast-check';
import { type Finding, type Note, topics, verdicts } from '../../src/engine/finding.ts';
import type { Kind, Measure } from '../../src/engine/measure.ts';
import type { Report } from '../../src/engine/report.ts';
import { findingOf, fullWater, noteOf, reportOf } from './fixtures.ts';

/** Names and sentences that a plan may hold and a terminal does not like. */
export const nastyText: fc.Arbitrary<string> = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.string({ unit: 'grapheme', maxLength: 60 }),
  fc.constantFrom(
    '',
    'bed',
    'x'.repeat(300),
    '冷蔵庫と流し台'.repeat(12),
    '🫖🇬🇧👨‍👩‍👧'.repeat(30),
    'रसोई '.repeat(40),
    '\u001b[31mred\u001b[0m \u001b]8;;https://example.org\u0007link\u001b]8;;\u0007',
    'line\nbreak\r\nand\ttab',
    'turned \u202eround\u202c',
    'a long name made of many quite ordinary words that must be wrapped somewhere in the middle of it',
    '12 kg '.repeat(30),
    '─────',
  ),
);

const kinds: readonly Kind[] = [
  'mass',
  'length',
  'area',
  'volume',
  'areal mass',
  'density',
  'share',
  'factor',
];

const sizes = fc.double({ min: -1e9, max: 1e9, noNaN: true });

const measures: fc.Arbitrary<Measure> = fc.record({ kind: fc.constantFrom(...kinds), value: sizes });

const phrases = fc.array(fc.oneof(nastyText, measures), { minLength: 1, maxLength: 4 });

const sources = fc.array(
  fc.record({ title: nastyText, provenance: fc.constantFrom('read' as const, 'memory' as const) }),
  { maxLength: 2 },
);

const changes: fc.Arbitrary<Partial<Finding>> = fc.record(
  {
    rule: fc.constantFrom('mass.total', 'balance.rear-axle', 'balance.side'),
    topic: fc.constantFrom(...topics),
    verdict: fc.constantFrom(...verdicts),
    title: nastyText,
    subject: nastyText,
    path: fc.array(nastyText, { maxLength: 3 }),
    measured: measures,
    limit: fc.record({ measure: measures, sense: fc.constantFrom('at most' as const, 'at least' as const) }),
    margin: measures,
    utilisation: fc.double({ min: 0, max: 1e6, noNaN: true }),
    tolerance: measures,
    probability: fc.double({ min: 0, max: 1, noNaN: true }),
    worstState: nastyText.map((text) => ({ ...fullWater, text })),
    reason: phrases,
    remedy: phrases,
    missing: fc.array(nastyText, { maxLength: 3 }),
    assumptions: fc.array(nastyText, { maxLength: 3 }),
    sources,
    cautions: fc.array(nastyText, { maxLength: 3 }),
  },
  { requiredKeys: ['topic', 'verdict'] },
);

const notes: fc.Arbitrary<Note> = fc
  .record({
    topic: fc.constantFrom(...topics),
    title: nastyText,
    detailOnly: fc.boolean(),
    columns: fc.array(nastyText, { minLength: 1, maxLength: 9 }),
    rows: fc.array(fc.array(phrases, { maxLength: 9 }), { maxLength: 3 }),
    sources,
    cautions: fc.array(nastyText, { maxLength: 2 }),
  })
  .map((note) => noteOf(note));

/** Reports with any names, any numbers, and most fields there or not. */
export const nastyReport: fc.Arbitrary<Report> = fc
  .record({
    name: nastyText,
    file: nastyText,
    units: fc.constantFrom('metric' as const, 'imperial' as const),
    findings: fc.array(changes.map(findingOf), { maxLength: 5 }),
    notes: fc.array(notes, { maxLength: 2 }),
    assumptions: fc.array(fc.record({ path: fc.array(nastyText, { maxLength: 3 }), text: phrases }), {
      maxLength: 2,
    }),
    line: fc.integer({ min: 1, max: 100_000 }),
  })
  .map(({ line, ...report }) => reportOf({ ...report, spot: () => ({ line, column: 3 }) }));
