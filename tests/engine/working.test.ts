import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { withWorking } from '../../src/engine/working.ts';
import { rules } from '../../src/rules/index.ts';
import { buildOf, reportOf } from '../support/check.ts';

const examples = ['curlew', 'oak', 'crowded', 'thin-cables', 'tangled', 'winter'] as const;

/** What they hold it against is worked out too: the step before the last. */
const withWorkedLimit = ['air.fixed-vents', 'electrical.ampacity', 'heat.loss'];

/** A rule that measures and could not say how it came to that would ask to be believed. */
test('every rule that measures has a working of its own', async () => {
  const measuring = new Set<string>();
  for (const example of examples) {
    const { findings } = await reportOf(readFileSync(`examples/curlew/${example}.yaml`, 'utf8'));
    for (const { rule, measured } of findings) if (measured) measuring.add(rule);
  }
  const silent = rules.filter(({ id, work }) => measuring.has(id) && !work).map(({ id }) => id);
  expect(silent).toEqual([]);
  expect(measuring.size).toBeGreaterThan(80);
});

describe.each(examples)('every working of %s', (example) => {
  const text = readFileSync(`examples/curlew/${example}.yaml`, 'utf8');

  test('comes to what was measured or to its limit, and its parts add up', async () => {
    const build = await buildOf(text);
    const { findings } = await reportOf(text);
    const shown = findings.filter(({ measured }) => measured).map((each) => withWorking(rules, build, each));
    const silent = shown.filter(({ working }) => !working).map(({ rule, subject }) => `${rule} ${subject}`);
    expect(silent).toEqual([]);
    for (const { rule, subject, measured, limit, working = [] } of shown) {
      const last = working.at(-1)?.result;
      expect(last?.kind, `${rule} ${subject}`).toBe(measured?.kind);
      const scale = Math.abs(measured?.value ?? 0) + 1e-9;
      expect((last?.value ?? 0) / scale, `${rule} ${subject}`).toBeCloseTo((measured?.value ?? 0) / scale, 9);
      if (limit && withWorkedLimit.includes(rule))
        expect(working.at(-2)?.result?.value).toBeCloseTo(limit.measure.value, 9);
      for (const { result, parts } of working) {
        const sum = parts?.rows.reduce((total, { adds }) => total + adds.value, 0) ?? result?.value ?? 0;
        const size = parts?.rows.reduce((total, { adds }) => total + Math.abs(adds.value), 1) ?? 1;
        expect(sum / size).toBeCloseTo((result?.value ?? 0) / size, 9);
        for (const row of parts?.rows ?? [])
          expect(row.values).toHaveLength((parts?.columns.length ?? 0) - 1);
      }
    }
  });
});

/** By hand, from the words of the step alone: what the reader of a working would do. */
test('a rear axle by its levers', async () => {
  const text = readFileSync('examples/curlew/curlew.yaml', 'utf8');
  const build = await buildOf(text);
  const { findings } = await reportOf(text);
  const finding = findings.find(({ rule }) => rule === 'balance.rear-axle');
  if (!finding) throw new Error('no rear axle');
  const rows = withWorking(rules, build, finding).working?.[0]?.parts?.rows ?? [];
  expect(rows.length).toBeGreaterThan(60);
  const wheelbaseM = build.vehicle.wheelbaseM ?? 0;
  const byHand = rows.reduce((sum, { values: [massKg, x] }) => {
    return sum + ((massKg?.value ?? 0) * (x?.value ?? 0)) / wheelbaseM;
  }, 0);
  expect(byHand).toBeCloseTo(finding.measured?.value ?? 0, 6);
});

/** The loads that hold their power: the printed quotient of power and what is left of the voltage is the current. */
test('a current by its power and its voltage', async () => {
  const text = readFileSync('examples/curlew/thin-cables.yaml', 'utf8');
  const build = await buildOf(text);
  const { findings } = await reportOf(text);
  const steps = findings
    .filter(({ rule }) => rule === 'electrical.voltage-drop' || rule === 'electrical.ampacity')
    .flatMap((finding) => withWorking(rules, build, finding).working ?? []);
  const quotients = steps.flatMap(({ sum = [], result }) => {
    const [powerW, voltageV, lostV] = sum.filter((part) => typeof part !== 'string');
    return powerW?.kind === 'power' && voltageV && lostV
      ? [{ quotient: powerW.value / (voltageV.value - lostV.value), current: result?.value ?? 0 }]
      : [];
  });
  expect(quotients.length).toBeGreaterThan(1);
  for (const { quotient, current } of quotients) expect(quotient).toBeCloseTo(current, 6);
});
