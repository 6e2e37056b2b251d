import { describe, expect, test } from 'vitest';
import { findingOf, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'electrical.alarms';
const gas = 'tanks: {bottle: {contents: propane, holds: 11 kg}}';

const text = (circuits: string, rest = '') =>
  plan(`fixtures: {alarms: {mass: 1 kg, solid: false}}
electrical:
  voltage: 12 V
  distribution: {switch: {kind: isolator}, box: {kind: fuse box}}
  circuits: {${circuits}}
${rest}`);

const alarm = (kind: string, more = ', switched: false', from = 'battery') =>
  `${kind}: {from: ${from}, to: alarms, load: 0.1 A, alarm: ${kind}${more}}`;
const all = [alarm('gas alarm'), alarm('carbon monoxide alarm'), alarm('smoke alarm')];
const isolated = 'main: {from: battery, to: switch}, feed: {from: switch, to: box}';

test('all three without a switch: one pass, in careful words', async () => {
  const finding = await findingOf(text(all.join(', '), gas), id);
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toBe(
    'The plan shows the gas alarm, carbon monoxide alarm and smoke alarm supplied without a switch or an isolator on the way.',
  );
  expect(finding.cautions.join(' ')).toContain('at the height at which sleepers breathe');
  expect(finding.cautions.join(' ')).toContain('Test every alarm');
});

describe('what can be switched off warns', () => {
  test('by a switch of its own', async () => {
    const finding = await findingOf(text(alarm('smoke alarm', ', switched: true')), id);
    expect(finding).toMatchObject({
      verdict: 'warn',
      path: ['electrical', 'circuits', 'smoke alarm', 'switched'],
    });
    expect(words(finding.remedy)).toContain('`switched: false`');
  });

  test('by an isolator further up, whatever it says of itself', async () => {
    for (const more of [', switched: false', '']) {
      const finding = await findingOf(text(`${isolated}, ${alarm('smoke alarm', more, 'box')}`), id);
      expect(finding).toMatchObject({
        verdict: 'warn',
        path: ['electrical', 'circuits', 'smoke alarm', 'from'],
      });
      expect(words(finding.reason)).toBe('The smoke alarm is behind switch, which switches it off.');
    }
  });

  test('not by an isolator beside it', async () => {
    const beside = `main: {from: battery, to: switch}, feed: {from: battery, to: box}`;
    expect(await findingOf(text(`${beside}, ${alarm('smoke alarm', undefined, 'box')}`), id)).toMatchObject({
      verdict: 'pass',
    });
  });
});

describe('not checked', () => {
  test('what is not said, and what is missing, in one finding', async () => {
    const finding = await findingOf(text(alarm('smoke alarm', ''), gas), id);
    expect(finding).toMatchObject({
      verdict: 'not checked',
      subject: 'smoke alarm, gas alarm and carbon monoxide alarm',
      missing: ['electrical.circuits.smoke alarm.switched', 'electrical.circuits.NAME.alarm'],
    });
    expect(words(finding.reason)).toContain('one with a battery of its own needs none');
  });

  test('without gas aboard the smoke alarm alone is missed', async () => {
    const finding = await findingOf(plan('electrical: {voltage: 12 V}'), id);
    expect(finding).toMatchObject({
      verdict: 'not checked',
      subject: 'smoke alarm',
      missing: ['electrical.circuits.NAME.alarm'],
    });
  });

  test('where no chain leads to the battery', async () => {
    expect(await findingOf(text(alarm('smoke alarm', undefined, 'box')), id)).toMatchObject({
      verdict: 'not checked',
      missing: ['electrical.circuits.NAME.to'],
    });
  });

  test('nothing electrical', async () => {
    expect((await findingOf(plan(), id)).missing).toEqual(['electrical']);
  });
});

test('a bad one, a good one and a missing one are three findings', async () => {
  const report = await reportOf(
    text([alarm('gas alarm', ', switched: true'), alarm('smoke alarm')].join(', '), gas),
  );
  expect(report.findings.filter(({ rule }) => rule === id).map(({ verdict }) => verdict)).toEqual([
    'warn',
    'not checked',
    'pass',
  ]);
});
