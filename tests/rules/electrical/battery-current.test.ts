import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'electrical.battery-current';
const things =
  'fixtures: {fridge: {mass: 1 kg, solid: false}, pump: {mass: 1 kg, solid: false}, inverter: {mass: 1 kg, solid: false}}';

const text = (
  limits: string,
  circuits: string,
  rest = '',
  battery = 'lithium iron phosphate, voltage: 12.8 V',
) =>
  plan(`${things}
electrical:
  voltage: 12 V
  battery: {chemistry: ${battery}, capacity: 100 Ah${limits}}
  circuits: {${circuits}}
${rest}`);

const fridge = (amps: string, more = '') =>
  `fridge supply: {from: battery, to: fridge, load: ${amps}${more}}`;
const pump = (amps: string, more = '') => `pump supply: {from: battery, to: pump, load: ${amps}${more}}`;

describe('all that is on at once', () => {
  // 30 A + 240 W at 12 V = 50 A.
  test('exactly what the battery may bring is kept', async () => {
    const finding = await findingOf(
      text(', discharge_limit: 50 A', `${fridge('30 A')}, ${pump('240 W')}`),
      id,
    );
    expect(finding).toMatchObject({ verdict: 'pass', utilisation: 1 });
    expect(measured(finding)).toBeCloseTo(50, 12);
  });

  test('more than typed fails', async () => {
    const finding = await findingOf(
      text(', discharge_limit: 50 A', `${fridge('35 A')}, ${pump('240 W')}`),
      id,
    );
    expect(finding).toMatchObject({
      verdict: 'fail',
      path: ['electrical', 'battery', 'discharge_limit'],
    });
    expect(words(finding.remedy)).toContain('2 such in parallel instead of 1');
    expect(words(finding.remedy)).toContain('5.0 A less on at once');
  });

  // Guidance for lithium: 1 a hour of 100 Ah is 100 A.
  test.each([
    { amps: '100 A', verdict: 'pass' },
    { amps: '101 A', verdict: 'warn' },
  ])('$amps against guidance of 100 A: $verdict', async ({ amps, verdict }) => {
    const finding = await findingOf(text('', fridge(amps)), id);
    expect(finding.verdict).toBe(verdict);
    expect(words(finding.reason)).toContain('guidance for 100 Ah of lithium iron phosphate');
  });

  // 40 A · 0.5 + 30 A = 50 A.
  test('shares count', async () => {
    const finding = await findingOf(
      text(', discharge_limit: 50 A', `${fridge('40 A', ', at_once: 50 %')}, ${pump('30 A')}`),
      id,
    );
    expect(measured(finding)).toBe(50);
  });

  // 960 W / 0.8 at 12 V = 100 A of 110 A.
  test('the inverter is named with its part', async () => {
    const finding = await findingOf(
      text(
        ', discharge_limit: 100 A',
        `${fridge('10 A')}, feed: {from: battery, to: inverter}`,
        '  inverter: {power: 960 W, efficiency: 80 %, circuit: feed}',
      ),
      id,
    );
    expect(finding.verdict).toBe('fail');
    expect(measured(finding)).toBeCloseTo(110, 9);
    expect(words(finding.reason)).toContain('of which the inverter draws 100 A');
  });
});

describe('a start', () => {
  // 10 A + (70 A − 20 A) + 20 A = 80 A.
  const starting = (limits: string) => text(limits, `${fridge('10 A')}, ${pump('20 A', ', surge: 70 A')}`);

  test.each([
    { limitA: 80, verdict: 'pass' },
    { limitA: 79, verdict: 'fail' },
  ])('of 80 A against $limitA A: $verdict', async ({ limitA, verdict }) => {
    const finding = await findingOf(
      starting(`, discharge_limit: 50 A, surge_limit: ${limitA} A`),
      id,
      'battery at a start',
    );
    expect(finding.verdict).toBe(verdict);
    expect(measured(finding)).toBe(80);
  });

  test('in watts takes more, the more of the voltage its own cables lose', async () => {
    const limits = ', discharge_limit: 100 A, surge_limit: 250 A';
    const start = async (cable: string): Promise<number> => {
      const circuits = pump('20 A', `, surge: 1200 W${cable}`);
      return measured(await findingOf(text(limits, circuits), id, 'battery at a start'));
    };
    // 1200 W at the lowest 12 V of four lithium cells.
    expect(await start('')).toBeCloseTo(100, 9);
    const thickA = await start(', conductor: 50 mm2, length: 3 m');
    const thinA = await start(', conductor: 25 mm2, length: 3 m');
    expect(thickA).toBeGreaterThan(102);
    expect(thinA).toBeGreaterThan(thickA + 2);
    // What is left of the voltage makes up the power again, with one resistance for twice the length of a size.
    const ohmOf = (currentA: number): number => (12 - 1200 / currentA) / currentA;
    expect(ohmOf(await start(', conductor: 50 mm2, length: 1.5 m'))).toBeCloseTo(ohmOf(thickA) / 2, 9);
  });

  test('without a limit for it is not checked', async () => {
    expect(await findingOf(starting(', discharge_limit: 50 A'), id, 'battery at a start')).toMatchObject({
      verdict: 'not checked',
      missing: ['electrical.battery.surge_limit'],
    });
  });

  test('within what the battery brings for hours needs no more', async () => {
    const report = await reportOf(starting(', discharge_limit: 80 A'));
    expect(report.findings.filter(({ rule }) => rule === id)).toHaveLength(1);
  });
});

describe('not checked', () => {
  // No guidance was found for flooded lead.
  test('without a limit', async () => {
    const finding = await findingOf(text('', fridge('10 A'), '', 'flooded lead, voltage: 12 V'), id);
    expect(finding).toMatchObject({
      verdict: 'not checked',
      missing: ['electrical.battery.discharge_limit'],
    });
    expect(words(finding.reason)).toContain('10 A');
  });

  test('with a load that is not known, unless the others are too much', async () => {
    const unknown = (amps: string) =>
      findingOf(
        text(', discharge_limit: 50 A', `${fridge(amps)}, pump supply: {from: battery, to: pump}`),
        id,
      );
    expect(await unknown('50 A')).toMatchObject({
      verdict: 'not checked',
      missing: ['electrical.circuits.pump supply.load'],
    });
    expect(await unknown('51 A')).toMatchObject({ verdict: 'fail' });
  });

  test('where a circuit begins at a point that nothing feeds', async () => {
    const finding = await findingOf(
      text(
        ', discharge_limit: 50 A',
        `pump supply: {from: box, to: pump, load: 1 A}`,
        '  distribution: {box: {kind: fuse box}}',
      ),
      id,
    );
    expect(finding).toMatchObject({ verdict: 'not checked', missing: ['electrical.circuits.NAME.to'] });
  });

  test('without a battery or circuits', async () => {
    expect(await findingOf(plan('electrical: {voltage: 12 V}'), id)).toMatchObject({
      missing: ['electrical.battery', 'electrical.circuits'],
    });
  });
});
