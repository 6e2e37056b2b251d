import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  area,
  arealMass,
  count,
  density,
  factor,
  length,
  mass,
  share,
  volume,
} from '../../src/engine/measure.ts';
import { renderJson } from '../../src/report/json.ts';
import { type JsonReport, jsonReportSchema } from '../../src/report/json-schema.ts';
import { findingOf, longReport, reportOf, smallReport } from './fixtures.ts';
import { nastyReport } from './nasty-report.ts';

const options = { version: '0.1.0', exitCode: 1, strict: false };
const parsed = (text: string): JsonReport => jsonReportSchema.parse(JSON.parse(text));

describe('renderJson', () => {
  test('writes what the schema describes, and nothing else', () => {
    fc.assert(
      fc.property(nastyReport, (report) => {
        expect(parsed(renderJson(report, options)).findings).toHaveLength(report.findings.length);
      }),
      { numRuns: 100 },
    );
    expect(parsed(renderJson(longReport, options)).notes).toHaveLength(2);
  });

  test('sums the report up', () => {
    const { tool, plan, summary } = parsed(renderJson(smallReport, { ...options, strict: true }));
    expect(tool).toEqual({ name: 'storystick', version: '0.1.0' });
    expect(plan).toEqual({ file: 'curlew.yaml', name: 'Curlew, revision 4', codes: 'uk', units: 'metric' });
    expect(summary).toEqual({
      fail: 1,
      warn: 1,
      notChecked: 1,
      pass: 1,
      waived: 0,
      acknowledged: 0,
      exitCode: 1,
      strict: true,
      closest: { rule: 'mass.total', subject: 'van', utilisation: 3612.4 / 3500 },
    });
  });

  test('writes a finding in full', () => {
    expect(parsed(renderJson(smallReport, options)).findings[2]).toMatchInlineSnapshot(`
      {
        "assumptions": [
          "the driver weighs 75 kg",
        ],
        "cautions": [
          "How a laden van handles depends on more than these numbers; a qualified person must judge a van near a limit.",
        ],
        "column": 38,
        "keys": [
          "van",
          "axle_limits",
          "rear",
        ],
        "limit": {
          "sense": "at most",
          "text": "2,240 kg",
          "unit": "kg",
          "value": 2240,
        },
        "line": 6,
        "margin": {
          "text": "85 kg",
          "unit": "kg",
          "value": 85,
        },
        "measured": {
          "text": "2,155 kg",
          "unit": "kg",
          "value": 2155,
        },
        "missing": [],
        "path": "van.axle_limits.rear",
        "probability": 0.03,
        "reason": "The rear axle carries 2,155 kg and may carry 2,240 kg, but the masses in the plan are not sure enough to tell.",
        "remedy": "Weigh the heaviest fixtures, or move 20 kg ahead of the rear axle.",
        "rule": "balance.rear-axle",
        "sources": [
          {
            "caution": null,
            "provenance": "read",
            "readAt": "https://example.org/535",
            "title": "EU 2021/535, Annex XIII, Part 2, section A",
          },
          {
            "caution": "an older edition",
            "provenance": "memory",
            "readAt": null,
            "title": "ISO 3833, 3.1.2",
          },
        ],
        "subject": "rear axle",
        "title": "Axle load",
        "tolerance": {
          "text": "90 kg",
          "unit": "kg",
          "value": 90,
        },
        "topic": "balance",
        "utilisation": 0.9620535714285714,
        "verdict": "warn",
        "waived": null,
        "worstState": {
          "fills": [
            {
              "massKg": 70,
              "name": "fresh",
              "share": 1,
            },
            {
              "massKg": 0,
              "name": "waste",
              "share": 0,
            },
          ],
          "text": "fresh full, waste empty, 2 aboard, stores full",
        },
      }
    `);
  });

  test('writes null and empty lists for what a finding does not have', () => {
    expect(parsed(renderJson(reportOf({ findings: [findingOf({})] }), options)).findings[0]).toMatchObject({
      line: null,
      column: null,
      measured: null,
      limit: null,
      margin: null,
      utilisation: null,
      tolerance: null,
      probability: null,
      worstState: null,
      remedy: null,
      missing: [],
      assumptions: [],
      cautions: [],
    });
  });

  test('writes texts in the plan’s units and numbers in SI', () => {
    const { findings, notes } = parsed(renderJson({ ...longReport, units: 'imperial' }, options));
    expect(findings[0]?.measured).toEqual({ value: 3612.4, unit: 'kg', text: '7,964 lb' });
    expect(notes[0]?.rows[0]?.[1]).toEqual({
      text: 'birch plywood, 0.2 in',
      measures: [{ value: 0.006, unit: 'm', text: '0.2 in' }],
    });
  });

  test('names the SI unit of every kind', () => {
    const measures = [
      mass(2),
      length(2),
      area(2),
      volume(2),
      arealMass(2),
      density(2),
      share(2),
      factor(2),
      count(2),
    ];
    const report = reportOf({ findings: measures.map((measured) => findingOf({ measured })) });
    const units = parsed(renderJson(report, options)).findings.map(({ measured }) => measured?.unit);
    expect(units).toEqual(['kg', 'm', 'm2', 'm3', 'kg/m2', 'kg/m3', '1', '1', '1']);
  });

  test('gives close numbers enough digits to be told apart', () => {
    const finding = findingOf({
      measured: mass(2240.02),
      limit: { measure: mass(2240), sense: 'at most' },
      margin: mass(-0.02),
    });
    const [first] = parsed(renderJson(reportOf({ findings: [finding] }), options)).findings;
    expect([first?.measured?.text, first?.limit?.text, first?.margin?.text]).toEqual([
      '2,240.02 kg',
      '2,240.00 kg',
      '-0.02 kg',
    ]);
  });

  test('writes an infinite utilisation as null', () => {
    const finding = findingOf({
      measured: factor(1),
      limit: { measure: factor(0), sense: 'at most' },
      utilisation: Infinity,
    });
    const { findings, summary } = parsed(renderJson(reportOf({ findings: [finding] }), options));
    expect(findings[0]?.utilisation).toBeNull();
    expect(summary.closest).toEqual({ rule: 'mass.total', subject: 'van', utilisation: null });
  });

  test('keeps names as they are but lets no raw control character out', () => {
    const subject = 'bed\u001b[2J\u009b2J\u202e\u2028\nend';
    const text = renderJson(reportOf({ findings: [findingOf({ subject })] }), options);
    expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Zl}\p{Bidi_Control}]/u);
    expect(parsed(text).findings[0]?.subject).toBe(subject);
  });

  test('every field of the schema is described', () => {
    const undescribed: string[] = [];
    const look = (node: unknown, path: string): void => {
      if (typeof node !== 'object' || node === null) return;
      if ('properties' in node && typeof node.properties === 'object' && node.properties !== null) {
        for (const [key, value] of Object.entries(node.properties)) {
          if (!('description' in Object(value))) undescribed.push(`${path}.${key}`);
        }
      }
      for (const [key, value] of Object.entries(node)) look(value, `${path}.${key}`);
    };
    look(jsonReportSchema.toJSONSchema(), '');
    expect(undescribed).toEqual([]);
  });
});
