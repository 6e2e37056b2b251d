import { describe, expect, test } from 'vitest';
import { findingOf, measured, only, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'electrical.fuse-breaking';

const things =
  'fixtures: {fridge: {mass: 1 kg, at: {from_front: 1 m, centred: true, above_floor: 0 m}}, pump: {mass: 1 kg, at: {from_front: 2 m, centred: true, above_floor: 0 m}}}';

/** Lead of 12 V is charged at 1.24 · 12 = 14.88 V: the source of the fault. */
const installed = (battery: string, circuits: string, voltage = '12 V') =>
  plan(
    `${things}
electrical:
  voltage: ${voltage}
  battery: {${battery}}
  distribution: {fuse box: {kind: fuse box}}
  circuits:
    ${circuits}`,
  );

const lead = (ohm: string, more = '') =>
  `chemistry: AGM, voltage: 12 V, capacity: 100 Ah, internal_resistance: ${ohm}${more}`;
const main = (fuse: string, cable = '') =>
  `main: {from: battery, to: fridge, load: 5 A${cable}, fuse: {${fuse}}}`;
const blade = 'type: blade, rating: 10 A';

describe('the main fuse', () => {
  test.each([
    // 14.88 V / 14.88 mΩ = 1000 A, exactly what a blade fuse breaks.
    { ohm: '14.88 mohm', fuse: blade, faultA: 1000, verdict: 'pass' },
    { ohm: '14.8 mohm', fuse: blade, faultA: 14.88 / 0.0148, verdict: 'fail' },
    { ohm: '3 mohm', fuse: "type: 'small bolt-in', rating: 60 A", faultA: 4960, verdict: 'fail' },
    // Above 14 V a block on the post breaks 5000 A, not 10 000 A.
    { ohm: '3 mohm', fuse: 'type: battery-post block, rating: 60 A', faultA: 4960, verdict: 'pass' },
    {
      ohm: '2.9 mohm',
      fuse: 'type: battery-post block, rating: 60 A',
      faultA: 14.88 / 0.0029,
      verdict: 'fail',
    },
  ])('$fuse behind $ohm: $verdict', async ({ ohm, fuse, faultA, verdict }) => {
    const finding = await findingOf(installed(lead(ohm), main(fuse)), id);
    expect(finding.verdict).toBe(verdict);
    expect(measured(finding)).toBeCloseTo(faultA, 6);
  });

  // 14.88 / (14.88 mΩ / 2) = 2000 A.
  test('batteries in parallel add their currents', async () => {
    const text = installed(lead('14.88 mohm', ', in_parallel: 2'), main(blade));
    const finding = await findingOf(text, id);
    expect(finding.verdict).toBe('fail');
    expect(measured(finding)).toBeCloseTo(2000, 6);
  });

  // 1 m of ideal copper of 2.5 mm² at 20 °C: 1 / (58 · 2.5) = 6.897 mΩ, one way only; 14.88 / 17.897 mΩ = 831.4 A.
  test('the cable before the fuse counts, cold and ideal', async () => {
    const cable = ', conductor: 2.5 mm2, length: 2 m';
    const finding = await findingOf(
      installed(lead('11 mohm'), main(`${blade}, from_source: 1 m`, cable)),
      id,
    );
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(14.88 / (0.011 + 1 / 145), 6);
    // 1353 A where it sits at the battery.
    expect((await findingOf(installed(lead('11 mohm'), main(blade, cable)), id)).verdict).toBe('fail');
  });

  // 60 A for a class T begin too high; 10 A: gG alone has that and breaks 25 kA.
  test('another type is named with what it breaks', async () => {
    const finding = await findingOf(installed(lead('3 mohm'), main(blade)), id);
    expect(words(finding.remedy)).toBe(
      'Take a fuse of type `industrial gG` with 10 A (breaks 25000 A) for main.',
    );
    expect(finding.assumptions).toBeUndefined();
  });

  // AGM of 100 Ah: 3 mΩ at least, 4960 A. 14.88 V / 1000 A = 14.88 mΩ: 14.9 mΩ are enough.
  test('a resistance from the catalogue is said, and what would do', async () => {
    const finding = await findingOf(
      installed('chemistry: AGM, voltage: 12 V, capacity: 100 Ah', main(blade)),
      id,
    );
    expect(finding.verdict).toBe('fail');
    expect(measured(finding)).toBeCloseTo(4960, 6);
    expect(finding.assumptions?.join()).toContain('least internal resistance');
    expect(words(finding.remedy)).toContain('from 14.9 mohm for each battery');
    expect((await findingOf(installed(lead('14.9 mohm'), main(blade)), id)).verdict).toBe('pass');
  });
});

describe('voltage', () => {
  // 24 V: 29.76 V; 48 V: 59.52 V, above 32 V and 58 V.
  test.each([
    { voltage: 24, type: 'blade', verdict: 'pass' },
    { voltage: 48, type: 'blade', verdict: 'fail' },
    { voltage: 48, type: 'blade 58 V', verdict: 'fail' },
    { voltage: 48, type: 'industrial gG', verdict: 'pass' },
  ])('$type at $voltage V: $verdict', async ({ voltage, type, verdict }) => {
    const battery = `chemistry: AGM, voltage: ${voltage} V, capacity: 100 Ah, internal_resistance: 100 mohm`;
    const text = installed(battery, main(`type: ${type}, rating: 10 A`), `${voltage} V`);
    const finding = await findingOf(text, id);
    expect(finding.verdict).toBe(verdict);
    if (verdict === 'fail') expect(finding.measured).toMatchObject({ kind: 'voltage' });
  });

  test('fails without the resistance of the battery too', async () => {
    const text = installed('chemistry: gel, voltage: 48 V, capacity: 100 Ah', main(blade), '48 V');
    expect((await findingOf(text, id)).verdict).toBe('fail');
  });
});

describe('a fuse behind another', () => {
  const box = (mainFuse: string) => `main: {from: battery, to: fuse box${mainFuse}}
    fridge: {from: fuse box, to: fridge, load: 5 A, fuse: {${blade}}}
    pump: {from: fuse box, to: pump, load: 5 A, fuse: {${blade}}}`;

  test('that is made for it: warn, once for the box', async () => {
    const report = await reportOf(installed(lead('3 mohm'), box(', fuse: {type: class T, rating: 110 A}')));
    const finding = only(report, id, 'fridge');
    expect(finding).toMatchObject({ verdict: 'warn', subject: 'fridge and pump' });
    expect(words(finding.reason)).toContain('The fuse of main before it can break that');
    expect(finding.assumptions?.join()).toContain('counts as none: main');
    expect(only(report, id, 'main').verdict).toBe('pass');
  });

  test('that is not: that one fails', async () => {
    const report = await reportOf(
      installed(lead('3 mohm'), box(", fuse: {type: 'small bolt-in', rating: 60 A}")),
    );
    expect(only(report, id, 'main').verdict).toBe('fail');
    expect(only(report, id, 'fridge').verdict).toBe('warn');
    expect(words(only(report, id, 'fridge').remedy)).toContain(
      'Fit a fuse in main that breaks what it may meet',
    );
  });

  test('that does not exist: fail', async () => {
    expect(await findingOf(installed(lead('3 mohm'), box('')), id)).toMatchObject({ verdict: 'fail' });
  });
});

// 600 Ah: above 500 Ah boat practice asks for the maker's figure.
test('a large bank is told what boats ask', async () => {
  const battery = 'chemistry: AGM, voltage: 12 V, capacity: 600 Ah, internal_resistance: 3 mohm';
  const finding = await findingOf(installed(battery, main('type: class T, rating: 110 A')), id);
  expect(finding.cautions.join()).toContain('Above 500 Ah');
});

describe('what the plan lacks', () => {
  test('gel without its resistance', async () => {
    const text = installed('chemistry: gel, voltage: 12 V, capacity: 100 Ah', main(blade));
    expect(await findingOf(text, id)).toMatchObject({
      verdict: 'not checked',
      missing: ['electrical.battery.internal_resistance'],
    });
  });

  test('what feeds a point', async () => {
    const text = installed(lead('20 mohm'), `fridge: {from: fuse box, to: fridge, fuse: {${blade}}}`);
    expect(await findingOf(text, id)).toMatchObject({
      verdict: 'not checked',
      missing: ['electrical.circuits'],
    });
  });

  test('a battery', async () => {
    const text = plan(
      `${things}\nelectrical: {voltage: 12 V, circuits: {main: {from: battery, to: fridge, fuse: {${blade}}}}}`,
    );
    expect(await findingOf(text, id)).toMatchObject({
      verdict: 'not checked',
      missing: ['electrical.battery'],
    });
  });
});
