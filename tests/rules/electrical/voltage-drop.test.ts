import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { wired } from '../../support/electrical-plan.ts';
import { plan } from '../../support/test-van.ts';

/** From 20 °C to the 70 °C that plain insulation bears. */
const hot = (234.5 + 70) / (234.5 + 20);

const rule = 'electrical.voltage-drop';
const drop = (text: string, subject = '') => findingOf(text, rule, subject);

/** The lithium battery gives 12.0 V at the end. */
const battery = '  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 100 Ah}';
const at12 = (circuits: string, more = '') =>
  wired(['  voltage: 12 V', battery, ...(more === '' ? [] : [more]), '  circuits:', circuits].join('\n'));

/** 4 m out and back of 2.5 mm²: 7.98 mΩ/m at 20 °C, × (234.5 + 70) / 254.5 at 70 °C: 76.38 mΩ. At 5 A 0.3819 V, 3.18 % of 12 V. */
const pump = (more = '') =>
  `    water: {from: battery, to: pump, load: 5 A, conductor: 2.5 mm2, strands: flexible, length: 4 m${more}}`;

describe('one circuit from the battery', () => {
  test('an ordinary one may lose 10 % of boats: pass, with the working', async () => {
    const finding = await drop(at12(pump()));
    expect(finding).toMatchObject({ verdict: 'pass', subject: 'water' });
    expect(measured(finding)).toBeCloseTo(5 * 8 * 0.00798 * hot, 9);
    expect(words(finding.reason)).toBe(
      '4000 mm out and 4000 mm back of 2.5 mm² flexible have 76.4 mohm at 70 °C and lose 0.38 V at 5.0 A: 3.2 % of 12.00 V. The guide for boats allows 10 % (circuits where the drop is not critical).',
    );
  });

  test('a critical one may lose 3 %, 0.36 V: warn', async () => {
    const finding = await drop(at12(pump(', drop: critical')));
    expect(finding.verdict).toBe('warn');
    expect(finding.limit?.measure.value).toBeCloseTo(0.36, 12);
    expect(words(finding.remedy)).toContain('Use 4 mm² flexible with a fuse of 7.5 A');
  });

  // 0.2 V/12 V for what charges, in leisure vehicles only; 0.8 V for the rest.
  test('another practice has another limit', async () => {
    const finding = await drop(at12(pump(), '  drop_limits: leisure vehicles'));
    expect(finding.limit?.measure.value).toBeCloseTo(0.8, 12);
  });

  test('aircraft have no class for lighting: as critical, 0.5 V of 14 V', async () => {
    const finding = await drop(at12(pump(', drop: lighting'), '  drop_limits: aircraft'));
    expect(finding.limit?.measure.value).toBeCloseTo((0.5 * 12) / 14, 12);
  });

  // 50 A over 10 mm² stranded, 1.83 mΩ/m, its insulation good for 20 °C: L = ΔU / (2 · r · I).
  const lossOf = (volts: number) =>
    at12(
      `    water: {from: battery, to: pump, load: 50 A, conductor: 10 mm2, strands: stranded, insulation: 20 degC, drop: critical, length: ${volts / (2 * 0.00183 * 50)} m}`,
    );
  test.each([
    { volts: 0.36, verdict: 'pass' },
    { volts: 0.3601, verdict: 'warn' },
    { volts: 0.72, verdict: 'warn' },
    { volts: 0.7201, verdict: 'fail' },
  ])('$volts V of 0.36 V: $verdict', async ({ volts, verdict }) => {
    expect((await drop(lossOf(volts))).verdict).toBe(verdict);
  });

  // Out 3 m, back 1 m: half of 8 m.
  test('legs of unequal length', async () => {
    const legs = pump().replace('length: 4 m', 'length: 3 m, length_back: 1 m');
    expect(measured(await drop(at12(legs)))).toBeCloseTo(5 * 4 * 0.00798 * hot, 9);
  });
});

// 600 W over 12 V and 30 mΩ · …: U = (12 + √(144 − 4·P·R)) / 2 with R = 2 · 0.00798 · 1.1965 · 1 = 19.096 mΩ, P = 300 W:
// U = 11.5022 V, ΔU = 0.4978 V (300 / 12 · R would say 0.4774 V).
test('a load that holds its power takes more current as its voltage falls', async () => {
  const finding = await drop(
    at12(
      '    heat: {from: battery, to: fridge, load: 300 W, conductor: 2.5 mm2, strands: flexible, length: 1 m}',
    ),
  );
  const ohm = 2 * 0.00798 * hot;
  expect(measured(finding)).toBeCloseTo(12 - (12 + Math.sqrt(144 - 4 * 300 * ohm)) / 2, 9);
});

describe('end to end', () => {
  const point = '  distribution: {fuse box: {kind: fuse box, at_once: 50 %}}';
  // Feeder of 6 mm², 5 m: 3.3 · 1.19646 · 10 = 39.48 mΩ; both loads half: 5 A, 0.1974 V. Own: 5 A whole, 0.3819 V.
  const both = [
    '    feed: {from: battery, to: fuse box, conductor: 6 mm2, strands: flexible, length: 5 m}',
    pump(', drop: critical').replace('battery', 'fuse box'),
    '    fridge: {from: fuse box, to: fridge, load: 5 A, conductor: 10 mm2, strands: flexible, length: 1 m}',
  ].join('\n');

  test('the feeder counts with what is on at once, the own load whole, and the feeder is named', async () => {
    const finding = await drop(at12(both, point), 'water');
    expect(measured(finding)).toBeCloseTo(0.0033 * 10 * hot * 5 + 5 * 8 * 0.00798 * hot, 6);
    expect(words(finding.reason)).toContain(
      'With the 0.20 V lost on the way to it, most of it in feed (0.20 V)',
    );
  });

  test('feeders are not judged by themselves, passes are one finding', async () => {
    const found = (await reportOf(at12(both, point))).findings.filter((each) => each.rule === rule);
    expect(found.map(({ subject, verdict }) => `${subject}: ${verdict}`)).toEqual([
      'water: warn',
      'fridge: pass',
    ]);
  });

  test('a load that is not known on the way leaves what passes not checked', async () => {
    const text = at12(
      `${both.replace('drop: critical', 'drop: ordinary')}\n    spare: {from: fuse box, to: sockets}`,
      point,
    );
    const finding = await drop(text);
    expect(finding).toMatchObject({ verdict: 'not checked', subject: 'water, fridge and spare' });
    expect(finding.missing).toContain('electrical.circuits.spare.load');
  });

  test('where the feeder loses it all, the remedy is there', async () => {
    const thin = both.replace(
      'conductor: 6 mm2, strands: flexible, length: 5 m',
      'conductor: 1 mm2, length: 8 m',
    );
    const finding = await drop(at12(thin, point), 'water');
    expect(finding.verdict).toBe('fail');
    expect(words(finding.remedy)).toContain('Give feed, which loses');
  });
});

// 30 A of a charger over 4 m of 10 mm²: 1.91 · 1.1965 · 8 = 18.28 mΩ, 0.5485 V; 3 % of 12 V for what charges.
test('what a charger brings is judged as a charging line', async () => {
  const circuits =
    '    line: {from: battery, to: inverter, conductor: 10 mm2, strands: flexible, length: 4 m}\n  charging_while_driving: {current: 30 A, circuit: line}';
  const finding = await drop(at12(circuits));
  expect(finding).toMatchObject({ verdict: 'warn', subject: 'line' });
  expect(measured(finding)).toBeCloseTo(30 * 8 * 0.00191 * hot, 9);
  const leisure = await drop(at12(circuits, '  drop_limits: leisure vehicles'));
  expect(leisure.limit?.measure.value).toBeCloseTo(0.2, 12);
});

// 12² / (4 · R): with 20 m of 0.75 mm² (26 mΩ/m) R = 1.244 Ω brings 28.9 W at most.
test('a load that cannot be supplied fails, once', async () => {
  const circuits = `    far: {from: battery, to: fridge, load: 45 W, conductor: 0.75 mm2, strands: flexible, length: 20 m}\n${pump()}`;
  const finding = await drop(at12(circuits));
  expect(finding).toMatchObject({ verdict: 'fail', subject: 'far' });
  expect(words(finding.reason)).toContain('cannot bring what fridge asks for');
  expect(words(finding.remedy)).toMatch(/^Use \d+ mm² flexible with a fuse of/);
});

// What another circuit loses too much by is not known while nothing can be supplied: it does not hinder the remedy.
test('the remedy of what cannot be supplied does not wait for other circuits', async () => {
  const circuits = `    far: {from: battery, to: fridge, load: 45 W, conductor: 0.75 mm2, strands: flexible, length: 20 m}\n${pump(', drop: critical')}`;
  expect(words((await drop(at12(circuits))).remedy)).toMatch(/^Use \d+ mm² flexible with a fuse of/);
});

test.each([
  { lacks: 'length', from: ', length: 4 m', missing: 'electrical.circuits.water.length' },
  { lacks: 'conductor', from: ', conductor: 2.5 mm2', missing: 'electrical.circuits.water.conductor' },
  { lacks: 'load', from: ', load: 5 A', missing: 'electrical.circuits.water.load' },
])('without $lacks it is not checked', async ({ from, missing }) => {
  expect(await drop(at12(pump().replace(from, '')))).toMatchObject({
    verdict: 'not checked',
    missing: [missing],
  });
});

test('without a battery it is not checked', async () => {
  expect(await drop(wired(`  voltage: 12 V\n  circuits:\n${pump()}`))).toMatchObject({
    verdict: 'not checked',
    missing: ['electrical.battery'],
  });
});

test('without electrics it is not checked', async () => {
  expect(await drop(plan())).toMatchObject({ verdict: 'not checked', missing: ['electrical'] });
});
