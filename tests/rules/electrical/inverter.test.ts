import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'electrical.inverter';

/** 1000 W and a surge of 2000 W at 80 %: 1250 W and 2500 W from 12.0 V, the lowest of the lithium battery. */
const text = ({
  feed = 'conductor: 35 mm2, length: 1 m',
  unit = 'power: 1000 W, surge: 2000 W, efficiency: 80 %',
  mains = 'sockets: {from: both, to: kettle, load: 1000 W}',
  more = '',
} = {}) =>
  plan(`fixtures: {inverter: {mass: 1 kg, solid: false}, kettle: {mass: 1 kg, solid: false}, heater: {mass: 1 kg, solid: false}}
electrical:
  voltage: 12 V
  battery: {chemistry: lithium iron phosphate, voltage: 12.8 V, capacity: 200 Ah}
  circuits: {feed: {from: battery, to: inverter, ${feed}}${more}}
  inverter: {${unit}, circuit: feed}
  mains_circuits: {${mains}}`);

const fed = (changes: Parameters<typeof text>[0] = {}) => findingOf(text(changes), id, 'inverter feed');
const loaded = (changes: Parameters<typeof text>[0] = {}) =>
  findingOf(text(changes), id, 'loads of the inverter');

/** 0.554 mΩ/m at 20 °C, for 70 °C by (234.5 + 70) / (234.5 + 20). */
const hot35 = (0.000554 * 304.5) / 254.5;

describe('what is left at the inverter', () => {
  test('by the solution of P = (E − I·R)·I', async () => {
    const finding = await fed();
    const left = (12 + Math.sqrt(144 - 4 * 2500 * 2 * hot35)) / 2;
    expect(finding.verdict).toBe('pass');
    expect(measured(finding)).toBeCloseTo(left, 6);
  });

  // 10.2 V are left of 12 V where R = (12 − 10.2) · 10.2 / 2500 = 7.344 mΩ.
  test('exactly 85 % of the nominal voltage is kept, a hair more length warns', async () => {
    const edgeM = 7.344e-3 / hot35 / 2;
    const at = (lengthM: number) => fed({ feed: `conductor: 35 mm2, length: ${lengthM.toFixed(9)} m` });
    expect((await at(edgeM - 1e-8)).verdict).toBe('pass');
    const beyond = await at(edgeM + 1e-6);
    expect(beyond.verdict).toBe('warn');
    expect(beyond.limit?.measure.value).toBeCloseTo(10.2, 12);
  });

  // 6 m of 10 mm²: 13.7 mΩ. 7.344 mΩ are 1.224 mΩ/m: 16 mm² has 1.45, 25 mm² has 0.93; 53 % of the way.
  test('the remedy names the smallest conductor and the distance', async () => {
    const finding = await fed({ feed: 'conductor: 10 mm2, length: 3 m' });
    expect(finding).toMatchObject({ verdict: 'warn', path: ['electrical', 'circuits', 'feed'] });
    expect(words(finding.remedy)).toBe(
      'Take 25 mm² flexible for feed, or bring the inverter nearer, so that out and back are 53 % of the way now.',
    );
    expect((await fed({ feed: 'conductor: 25 mm2, length: 3 m' })).verdict).toBe('pass');
    expect((await fed({ feed: 'conductor: 16 mm2, length: 3 m' })).verdict).toBe('warn');
  });

  // 144 / (4 · 2500 W) = 14.4 mΩ and 28.8 mΩ for 1250 W; 10 mm² has 2.285 mΩ/m.
  test.each([
    { lengthM: 4, says: 'at its surge' },
    { lengthM: 7, says: 'at full power' },
  ])('$lengthM m of 10 mm² cannot bring it $says: fail', async ({ lengthM, says }) => {
    const finding = await fed({ feed: `conductor: 10 mm2, length: ${lengthM} m` });
    expect(finding.verdict).toBe('fail');
    expect(words(finding.reason)).toContain(says);
    expect(words(finding.remedy)).toMatch(/^Take \d+ mm² flexible for feed/);
  });

  test('without a surge the full power counts, without an efficiency it says what it takes', async () => {
    const finding = await fed({ unit: 'power: 1000 W' });
    expect(words(finding.reason)).toContain('(the plan gives no surge)');
    expect(words(finding.reason)).toContain('if it gives 85 %');
  });

  test('what else is on at the same busbar costs volts too', async () => {
    const busbar = (otherA: number) =>
      findingOf(
        text({
          more: `, bar feed: {from: battery, to: bar, conductor: 35 mm2, length: 1 m}, other: {from: bar, to: heater, load: ${otherA} A}`,
        })
          .replace('feed: {from: battery, to: inverter', 'feed: {from: bar, to: inverter')
          .replace('  inverter:', '  distribution: {bar: {kind: busbar}}\n  inverter:'),
        id,
        'inverter feed',
      );
    const [alone, beside] = [await busbar(1), await busbar(101)];
    // 100 A more over 2 m of 35 mm² are 0.13 V, and a little more because the inverter then takes more.
    expect(measured(alone) - measured(beside)).toBeGreaterThan(100 * 2 * hot35);
    expect(measured(alone) - measured(beside)).toBeLessThan(120 * 2 * hot35);
  });

  test('needs conductor and length', async () => {
    const bare = text().replace(', conductor: 35 mm2, length: 1 m', '');
    expect(await findingOf(bare, id, 'inverter feed')).toMatchObject({
      verdict: 'not checked',
      missing: ['electrical.circuits.feed.conductor', 'electrical.circuits.feed.length'],
    });
  });
});

describe('what hangs on it', () => {
  test.each([
    {
      mains: 'a: {from: both, to: kettle, load: 400 W}, b: {from: inverter, to: heater, load: 600 W}',
      verdict: 'pass',
    },
    {
      mains: 'a: {from: both, to: kettle, load: 500 W}, b: {from: inverter, to: heater, load: 600 W}',
      verdict: 'warn',
    },
    {
      mains: 'a: {from: both, to: kettle, load: 900 W}, b: {from: shore, to: heater, load: 600 W}',
      verdict: 'pass',
    },
  ])('$mains: $verdict', async ({ mains, verdict }) => {
    expect((await loaded({ mains })).verdict).toBe(verdict);
  });

  test('an unknown load is asked for, unless the others are too much', async () => {
    const mains = (watts: number) =>
      `a: {from: both, to: kettle}, b: {from: both, to: heater, load: ${watts} W}`;
    expect(await loaded({ mains: mains(900) })).toMatchObject({
      verdict: 'not checked',
      missing: ['electrical.mains_circuits.a.load'],
    });
    expect((await loaded({ mains: mains(1100) })).verdict).toBe('warn');
  });

  test('no circuit from it', async () => {
    const finding = await loaded({ mains: 'a: {from: shore, to: kettle, load: 900 W}' });
    expect(finding).toMatchObject({ missing: ['electrical.mains_circuits.NAME.load'] });
  });
});

test('without an inverter it is not checked', async () => {
  const finding = await findingOf(plan('electrical: {voltage: 12 V}'), id);
  expect(finding).toMatchObject({
    verdict: 'not checked',
    missing: ['electrical.inverter', 'electrical.battery'],
  });
});
