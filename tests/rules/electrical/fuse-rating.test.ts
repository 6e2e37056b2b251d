import { describe, expect, test } from 'vitest';
import { findingOf, only, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'electrical.fuse-rating';

const things =
  'fixtures: {fridge: {mass: 1 kg, at: {from_front: 1 m, centred: true, above_floor: 0 m}}, pump: {mass: 1 kg, at: {from_front: 2 m, centred: true, above_floor: 0 m}}}';

/** A battery of 12 V lead, which loads meet with 10.5 V and more; 2.5 mm² at 70 °C in 30 °C bears what the tables say. */
const withCircuits = (circuits: string, voltage = '12 V', battery = '12 V') =>
  plan(
    `${things}
electrical:
  voltage: ${voltage}
  battery: {chemistry: AGM, voltage: ${battery}, capacity: 100 Ah}
  distribution: {fuse box: {kind: fuse box}}
  circuits:
    ${circuits}`,
  );

const fridge = (keys: string, voltage?: string, battery?: string) =>
  withCircuits(`fridge: {from: battery, to: fridge, length: 1 m, ${keys}}`, voltage, battery);

/*
 * Ampacity as tabulated at 30 °C for 70 °C insulation (small craft): 25 A for 2.5 mm²; US boat law in its column for
 * 60 °C and the next smaller gauge, 14 AWG (2.08 mm²): 20 A. The smaller counts: 20 A, and no derating at 30 °C.
 */
describe('a fuse against its cable', () => {
  test.each([
    { rating: 15, verdict: 'pass' },
    // Exactly what the cable bears.
    { rating: 20, verdict: 'pass' },
    { rating: 25, verdict: 'warn' },
    // 150 % of 20 A, exactly.
    { rating: 30, verdict: 'warn' },
    { rating: 35, verdict: 'fail' },
  ])('$rating A on 20 A: $verdict', async ({ rating, verdict }) => {
    const text = fridge(`load: 5 A, conductor: 2.5 mm2, fuse: {type: blade, rating: ${rating} A}`);
    const finding = await findingOf(text, id);
    expect(finding).toMatchObject({ verdict, subject: 'fridge' });
    if (verdict !== 'pass') expect(finding.limit?.measure.value).toBeCloseTo(20, 9);
    // 1.25 · 5 A = 6.25 A: the standard ratings from 7.5 A to 20 A.
    if (verdict !== 'pass') expect(words(finding.remedy)).toContain('Fit a fuse of 7.5 A to 20 A.');
  });

  test('the practice that lets it be larger is named', async () => {
    const finding = await findingOf(
      fridge('load: 5 A, conductor: 2.5 mm2, fuse: {type: blade, rating: 25 A}'),
      id,
    );
    expect(words(finding.reason)).toContain('rules for boats below 50 V let it be up to 150 %');
    expect(finding.sources.map(({ title }) => title).join(' ')).toContain('33 CFR 183.455');
  });

  // 48 V of lead are charged at 1.24 · 48 = 59.5 V: from 50 V only the next standard rating above the 15 A that
  // 1.5 mm² bears (16 AWG), which is 16 A in gG, and not 20 A (133 %). Blades come with 15 A: 20 A is not the next.
  test.each([
    { type: 'industrial gG', rating: 16, verdict: 'warn' },
    { type: 'industrial gG', rating: 20, verdict: 'fail' },
    { type: 'blade 58 V', rating: 15, verdict: 'pass' },
    { type: 'blade 58 V', rating: 20, verdict: 'fail' },
  ])('48 V, $type of $rating A: $verdict', async ({ type, rating, verdict }) => {
    const text = fridge(
      `load: 5 A, conductor: 1.5 mm2, fuse: {type: ${type}, rating: ${rating} A}`,
      '48 V',
      '48 V',
    );
    expect((await findingOf(text, id)).verdict).toBe(verdict);
  });

  // Insulation of 70 °C at an ambient of 80 °C: nothing is left.
  test('a cable that bears nothing where it lies fails', async () => {
    const text = fridge('load: 5 A, conductor: 2.5 mm2, ambient: 80 degC, fuse: {type: blade, rating: 10 A}');
    expect(await findingOf(text, id)).toMatchObject({ verdict: 'fail', limit: { measure: { value: 0 } } });
  });
});

describe('a fuse against its load', () => {
  test.each([
    // 1.25 · 8 A = 10 A, exactly.
    { load: 8, verdict: 'pass', says: 'its fuse is 10 A' },
    { load: 9, verdict: 'warn', says: 'for hours on end a fuse should have 11 A' },
    { load: 11, verdict: 'warn', says: 'opens in everyday use' },
  ])('10 A for $load A: $verdict', async ({ load, verdict, says }) => {
    const finding = await findingOf(
      fridge(`load: ${load} A, conductor: 2.5 mm2, fuse: {type: blade, rating: 10 A}`),
      id,
    );
    expect(finding.verdict).toBe(verdict);
    expect(words(finding.reason)).toContain(says);
  });

  // 18 A want 22.5 A, and the cable bears 20 A.
  test('where no fuse suits both, the cable must change', async () => {
    const finding = await findingOf(
      fridge('load: 18 A, conductor: 2.5 mm2, fuse: {type: blade, rating: 20 A}'),
      id,
    );
    expect(finding.verdict).toBe('warn');
    // 25 A is the next rating; 4 mm² is the next size: 12 AWG, 25 A in the boat law's 60 °C column.
    expect(words(finding.remedy)).toContain('Use 4 mm² flexible with a fuse of 25 A');
  });
});

test('a rating that is not sold warns and names its neighbours', async () => {
  const finding = await findingOf(
    fridge('load: 5 A, conductor: 2.5 mm2, fuse: {type: blade, rating: 12 A}'),
    id,
  );
  expect(finding.verdict).toBe('warn');
  expect(words(finding.remedy)).toContain('10 A and 15 A');
});

// Insulation of 105 °C lets 14 AWG bear 35 A; US rules let 15 A protect it whatever it bears.
test.each([
  { rating: 15, verdict: 'pass' },
  { rating: 20, verdict: 'warn' },
])('14 AWG behind $rating A: $verdict', async ({ rating, verdict }) => {
  const text = fridge(
    `load: 5 A, conductor: 14 AWG, insulation: 105 degC, fuse: {type: blade, rating: ${rating} A}`,
  );
  expect((await findingOf(text, id)).verdict).toBe(verdict);
});

describe('without a fuse', () => {
  test('from the battery: fail', async () => {
    const finding = await findingOf(fridge('load: 5 A, conductor: 2.5 mm2'), id);
    expect(finding).toMatchObject({
      verdict: 'fail',
      path: ['electrical', 'circuits', 'fridge', 'fuse'],
    });
    expect(words(finding.reason)).toContain('leaves the battery without a fuse');
    expect(words(finding.remedy)).toContain('Fit a fuse at the battery.');
    expect(words(finding.remedy)).toContain('7.5 A');
  });

  const behind = (mainFuse: string, keys: string) =>
    withCircuits(
      `main: {from: battery, to: fuse box, conductor: 10 mm2, length: 1 m${mainFuse}}
    pump: {from: fuse box, to: pump, load: 5 A, length: 1 m, ${keys}}`,
    );
  const main = (rating: number) => `, fuse: {type: 'maxi blade', rating: ${rating} A}`;

  // The 20 A of 2.5 mm² against the fuse before it.
  test.each([
    { rating: 20, verdict: 'pass' },
    { rating: 30, verdict: 'warn' },
    { rating: 40, verdict: 'fail' },
  ])('behind $rating A on a cable of 20 A: $verdict', async ({ rating, verdict }) => {
    const report = await reportOf(behind(main(rating), 'conductor: 2.5 mm2'));
    const finding = only(report, id, verdict === 'pass' ? '' : 'pump');
    expect(finding).toMatchObject({ verdict, subject: 'pump' });
    expect(words(finding.reason)).toContain('has no fuse of its own');
  });

  test('where nothing before it has one either: warn, besides the one that leaves the battery', async () => {
    const report = await reportOf(behind('', 'conductor: 2.5 mm2'));
    expect(only(report, id, 'main').verdict).toBe('fail');
    expect(only(report, id, 'pump')).toMatchObject({ verdict: 'warn' });
  });

  test('on a cable that the plan does not name: not checked', async () => {
    const report = await reportOf(behind(main(20), 'bundled: 1'));
    expect(only(report, id, 'pump')).toMatchObject({
      verdict: 'not checked',
      missing: ['electrical.circuits.pump.conductor'],
    });
  });
});

describe('what a feeder carries', () => {
  // 30 A come in from the charger, 5 A go out: 1.25 · 30 = 37.5 A.
  const charged = (rating: number) =>
    withCircuits(
      `main: {from: battery, to: fuse box, conductor: 10 mm2, length: 1 m, fuse: {type: 'maxi blade', rating: ${rating} A}}
    pump: {from: fuse box, to: pump, load: 5 A, length: 1 m, conductor: 2.5 mm2, fuse: {type: blade, rating: 10 A}}
    line: {from: fuse box, to: fridge, length: 1 m, conductor: 10 mm2, fuse: {type: 'maxi blade', rating: 40 A}}
  charging_while_driving: {current: 30 A, circuit: line}`,
    );

  test('a charger counts too', async () => {
    expect((await findingOf(charged(40), id)).verdict).toBe('pass');
    const finding = await findingOf(charged(30), id, 'main');
    expect(finding).toMatchObject({ verdict: 'warn', limit: { measure: { value: 37.5 } } });
  });

  test('an unknown load behind it leaves it open, once', async () => {
    const text = withCircuits(
      `main: {from: battery, to: fuse box, conductor: 10 mm2, length: 1 m, fuse: {type: 'maxi blade', rating: 40 A}}
    pump: {from: fuse box, to: pump, length: 1 m, conductor: 2.5 mm2, fuse: {type: blade, rating: 10 A}}`,
    );
    expect(await findingOf(text, id)).toMatchObject({
      verdict: 'not checked',
      subject: 'main and pump',
      missing: ['electrical.circuits.pump.load'],
    });
  });
});

test('what is wrong is said even where something is missing', async () => {
  const report = await reportOf(fridge('conductor: 2.5 mm2, fuse: {type: blade, rating: 40 A}'));
  const verdicts = report.findings.filter(({ rule }) => rule === id).map(({ verdict }) => verdict);
  expect(verdicts.toSorted()).toEqual(['fail', 'not checked']);
});

test('without circuits it is not checked', async () => {
  expect(await findingOf(plan('electrical: {voltage: 12 V}'), id)).toMatchObject({
    verdict: 'not checked',
    missing: ['electrical.circuits'],
  });
});
