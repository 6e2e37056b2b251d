import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Report } from '../../src/engine/report.ts';
import { renderJson } from '../../src/report/json.ts';
import { renderTerminal } from '../../src/report/terminal.ts';
import { combustionCaution, gasCaution } from '../../src/rules/cautions.ts';
import { rules } from '../../src/rules/index.ts';
import { reportOf } from '../support/check.ts';

/** Everything about flames that is not in the topic of gas. */
const burning = [
  'air.alarms',
  'air.combustion-air',
  'air.fixed-vents',
  'air.flue-draught',
  'air.flueless',
  'heat.fuel',
  'heat.heater-exhaust',
  'heat.heater-flue',
];

const dangerous = rules.filter(({ id, topic }) => topic === 'gas' || burning.includes(id));

const formats: Readonly<Record<string, (report: Report) => string>> = {
  terminal: (report) => renderTerminal(report, { width: 100, colour: false, detail: false, quiet: false }),
  'terminal, in detail': (report) =>
    renderTerminal(report, { width: 100, colour: false, detail: true, quiet: false }),
  json: (report) => renderJson(report, { version: '0', exitCode: 0, strict: false }),
};

/** Wrapped lines and escaped quotes aside. */
const plain = (text: string): string => text.replaceAll('\\"', '"').replace(/\s+/g, ' ').replaceAll('’', "'");

test('the list is of rules that exist, and there is gas among them', () => {
  for (const id of burning) expect(rules.map((rule) => rule.id)).toContain(id);
  expect(dangerous.filter(({ topic }) => topic === 'gas').length).toBeGreaterThan(10);
});

describe.each(dangerous)('$id', (rule) => {
  const caution = rule.topic === 'gas' ? gasCaution : combustionCaution;

  test('carries its caution', () => {
    expect(rule.cautions).toContain(caution);
    expect(caution).toMatch(/Local codes|local codes/);
    expect(caution).toMatch(/qualified/);
  });

  test.each(Object.entries(formats))('keeps it on every verdict: %s', async (_, render) => {
    for (const plan of ['storystick: 1\nvan: {}', readFileSync('examples/curlew/curlew.yaml', 'utf8')]) {
      const report = await reportOf(plan);
      for (const finding of report.findings.filter((each) => each.rule === rule.id)) {
        expect(finding.cautions).toContain(caution);
        const alone = { ...report, findings: [finding], notes: [] };
        expect(plain(render(alone))).toContain(plain(caution));
      }
    }
  });
});
