import { describe, expect, test } from 'vitest';
import { mainsCaution } from '../../../src/rules/cautions.ts';
import { findingOf, reportOf, words } from '../../support/check.ts';
import { plan, withoutCodes } from '../../support/test-van.ts';

const id = 'electrical.mains';
const wholeShore = 'current: 10 A, residual_current: 30 mA, breaker: 10 A, double_pole: true, bonding: 4 mm2';
const wholeCircuit = 'conductor: 1.5 mm2, breaker: 10 A, residual_current: 30 mA';

interface Given {
  readonly shore?: string | undefined;
  readonly inverter?: string | undefined;
  readonly circuit?: string | undefined;
}
const text = ({ shore = wholeShore, inverter = '', circuit = `from: shore, ${wholeCircuit}` }: Given) => `
fixtures: {box: {mass: 1 kg}}
electrical:
  voltage: 12 V
  circuits: {feed: {from: battery, to: box}}
  ${shore === '' ? '' : `shore: {${shore}}`}
  ${inverter === '' ? '' : `inverter: {power: 1000 W, circuit: feed${inverter}}`}
  ${circuit === '' ? '' : `mains_circuits: {sockets: {to: box, ${circuit}}}`}`;
const all = async (given: Given, codes?: string) =>
  (await reportOf(codes === undefined ? withoutCodes(text(given)) : plan(text(given), {}, codes))).findings
    .filter(({ rule }) => rule === id)
    .map((finding) => ({ ...finding, said: words(finding.reason), todo: words(finding.remedy) }));
const verdicts = async (given: Given, codes?: string) =>
  (await all(given, codes)).map(({ verdict, path }) => `${verdict} ${path.slice(1).join('.')}`);

describe('everything stated', () => {
  test('passes in one finding that names the closest breaker', async () => {
    const [finding, ...others] = await all({});
    expect(others).toEqual([]);
    expect(finding).toMatchObject({
      verdict: 'pass',
      path: ['electrical', 'mains_circuits', 'sockets', 'breaker'],
    });
    // 10 A of the 15 A of a cord of 1.5 mm².
    expect(finding?.utilisation).toBeCloseTo(10 / 15, 12);
    expect(finding?.said).toContain('closest is sockets, 10 A on 1.5 mm², which carries 15 A');
    expect(finding?.cautions).toContain(mainsCaution);
  });

  test('a supply without circuits, and both sources with a changeover, pass too', async () => {
    expect(await verdicts({ circuit: '' })).toEqual(['pass shore']);
    const both = { inverter: ', changeover: automatic', circuit: `from: both, ${wholeCircuit}` };
    expect((await all(both)).map(({ verdict }) => verdict)).toEqual(['pass']);
  });
});

describe('residual current', () => {
  const without = (words: string) => words.replace(/,? ?residual_current: 30 mA/, '');

  test('missing at the inlet fails, unless each circuit has its own', async () => {
    const shore = without(wholeShore);
    expect(await verdicts({ shore, circuit: '' })).toEqual(['fail shore.residual_current']);
    expect((await all({ shore })).map(({ verdict }) => verdict)).toEqual(['pass']);
    // The charger hangs on the inlet and has none.
    expect(await verdicts({ shore: `${shore}, charger: {current: 10 A}` })).toEqual([
      'fail shore.residual_current',
    ]);
    expect(await verdicts({ shore, circuit: `from: shore, ${without(wholeCircuit)}` })).toEqual([
      'fail shore.residual_current',
    ]);
  });

  test('that of the inlet covers shore alone, not what the inverter feeds', async () => {
    const circuit = without(wholeCircuit);
    expect((await all({ circuit: `from: shore, ${circuit}` })).map(({ verdict }) => verdict)).toEqual([
      'pass',
    ]);
    const inverter = ', changeover: automatic';
    for (const from of ['inverter', 'both'])
      expect(await verdicts({ inverter, circuit: `from: ${from}, ${circuit}` })).toEqual([
        'fail mains_circuits.sockets.residual_current',
      ]);
    // One device behind the changeover would do for both.
    expect(
      await verdicts({ shore: without(wholeShore), inverter, circuit: `from: both, ${circuit}` }),
    ).toEqual(['fail mains_circuits.sockets.residual_current']);
  });

  test.each([
    { at: '30 mA', verdict: 'pass' },
    { at: '10 mA', verdict: 'pass' },
    { at: '31 mA', verdict: 'fail' },
    { at: '300 mA', verdict: 'fail' },
  ])('of $at: $verdict', async ({ at, verdict }) => {
    const [onShore] = await all({ shore: wholeShore.replace('30 mA', at), circuit: '' });
    expect(onShore?.verdict).toBe(verdict);
    const [onCircuit] = await all({ circuit: `from: shore, ${wholeCircuit.replace('30 mA', at)}` });
    expect(onCircuit?.verdict).toBe(verdict);
    if (verdict === 'fail') {
      expect(onShore?.said).toContain(at);
      expect(onShore?.todo).toBe('Take one of at most 30 mA.');
    }
  });
});

describe('the shore supply', () => {
  test('what it does not state is one finding with all keys', async () => {
    const [finding, ...others] = await all({ shore: 'current: 10 A, residual_current: 30 mA' });
    expect(others).toEqual([]);
    expect(finding?.verdict).toBe('warn');
    expect(finding?.todo).toContain(
      '`electrical.shore.breaker`, `electrical.shore.double_pole`, `electrical.shore.bonding`',
    );
  });

  test.each([
    { changed: ['breaker: 10 A', 'breaker: 10.1 A'], verdict: 'warn shore.breaker' },
    { changed: ['double_pole: true', 'double_pole: false'], verdict: 'warn shore.double_pole' },
    { changed: ['bonding: 4 mm2', 'bonding: 2.5 mm2'], verdict: 'warn shore.bonding' },
    { changed: [', breaker: 10 A', ''], verdict: 'warn shore' },
  ])('$changed', async ({ changed: [from = '', to = ''], verdict }) => {
    expect(await verdicts({ shore: wholeShore.replace(from, to) })).toEqual([verdict]);
  });

  test('in the US bonding is 8 AWG', async () => {
    expect(await verdicts({ circuit: '' }, 'us')).toEqual(['warn shore.bonding']);
    const shore = wholeShore.replace('4 mm2', '8 AWG');
    expect(await verdicts({ shore, circuit: '' }, 'us')).toEqual(['pass shore']);
  });
});

describe('a circuit', () => {
  const circuit = (conductor: string, breakerA: number) => ({
    circuit: `from: shore, conductor: ${conductor}, breaker: ${breakerA} A, residual_current: 30 mA`,
  });

  // As a cord 1.5 mm² carries 15 A and 2.5 mm² 20 A; in trunking 17.5 and 24 A; 6 mm² is no cord: 41 A.
  test.each([
    { conductor: '1.5 mm2', breakerA: 15, verdict: 'pass' },
    { conductor: '1.5 mm2', breakerA: 16, verdict: 'warn' },
    { conductor: '1.5 mm2', breakerA: 17.5, verdict: 'warn' },
    { conductor: '1.5 mm2', breakerA: 17.6, verdict: 'fail' },
    { conductor: '2.5 mm2', breakerA: 20, verdict: 'pass' },
    { conductor: '2.5 mm2', breakerA: 25, verdict: 'fail' },
    { conductor: '6 mm2', breakerA: 41, verdict: 'pass' },
    { conductor: '6 mm2', breakerA: 42, verdict: 'fail' },
    { conductor: '14 AWG', breakerA: 15, verdict: 'pass' },
  ])('$conductor behind $breakerA A: $verdict', async ({ conductor, breakerA, verdict }) => {
    const [finding, ...others] = await all(circuit(conductor, breakerA));
    expect(others).toEqual([]);
    expect(finding?.verdict).toBe(verdict);
  });

  test('the remedy names breaker and conductor, and both are enough', async () => {
    const [finding] = await all(circuit('1.5 mm2', 20));
    expect(finding?.todo).toBe('Fit a breaker of at most 15 A, or a conductor of 2.5 mm².');
  });

  test('below 1.5 mm² warns', async () => {
    expect(await verdicts(circuit('1 mm2', 6))).toEqual(['warn mains_circuits.sockets.conductor']);
  });

  test('the breaker of the inlet counts on shore alone', async () => {
    const bare = 'conductor: 1.5 mm2, residual_current: 30 mA';
    expect((await all({ circuit: `from: shore, ${bare}` })).map(({ verdict }) => verdict)).toEqual(['pass']);
    const shore = wholeShore.replace('breaker: 10 A', 'breaker: 16 A').replace('10 A', '16 A');
    expect(await verdicts({ shore, circuit: `from: shore, ${bare}` })).toEqual([
      'warn mains_circuits.sockets.conductor',
    ]);
    expect(await verdicts({ inverter: ', idle: 5 W', circuit: `from: inverter, ${bare}` })).toEqual([
      'warn mains_circuits.sockets.breaker',
    ]);
  });
});

describe('two sources', () => {
  test('without a changeover fail; each with circuits of its own does not', async () => {
    const inverter = ', idle: 5 W';
    expect(await verdicts({ inverter, circuit: `from: both, ${wholeCircuit}` })).toEqual([
      'fail inverter.changeover',
    ]);
    expect((await all({ inverter })).map(({ verdict }) => verdict)).toEqual(['pass']);
  });
});

describe('what is missing', () => {
  test('a source that feeds a circuit, a conductor, the circuits of an inverter', async () => {
    const missing = async (given: Given) => (await all(given)).flatMap((finding) => finding.missing ?? []);
    expect(await missing({ shore: '' })).toEqual(['electrical.shore']);
    expect(await missing({ circuit: `from: both, ${wholeCircuit}` })).toEqual(['electrical.inverter']);
    expect(
      await missing({ circuit: `from: shore, ${wholeCircuit.replace('conductor: 1.5 mm2, ', '')}` }),
    ).toEqual(['electrical.mains_circuits.sockets.conductor']);
    expect(await missing({ inverter: ', idle: 5 W', circuit: '' })).toEqual(['electrical.mains_circuits']);
    expect(await missing({ shore: '', inverter: ', idle: 5 W', circuit: '' })).toEqual([
      'electrical.mains_circuits',
    ]);
    expect(await missing({ shore: '', circuit: '' })).toEqual([
      'electrical.shore',
      'electrical.mains_circuits',
    ]);
  });

  test('nothing electrical', async () => {
    expect((await findingOf(plan(), id)).missing).toEqual(['electrical']);
  });
});
