import { describe, expect, test } from 'vitest';
import { combustionCaution, gasCaution } from '../../../src/rules/cautions.ts';
import { hob } from '../../support/air-plan.ts';
import { findingOf, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'air.alarms';
const at = (x: number, y: number, z: number) =>
  `at: {from_front: ${x} mm, from_left: ${y} mm, above_floor: ${z} mm}`;
/** A hob whose middle is 1 m behind the front and 1 m from the left, and a bed 600 mm high. */
const base = `
people: {sleepers: [{stature: 1.7 m}]}
tanks: {cylinder: {contents: propane, holds: 6 kg}}
fixtures:
  hob: {is: cooker, mass: 3 kg, size: {length: 400 mm, width: 400 mm, height: 100 mm}, ${at(800, 800, 800)}}
  bed: {is: bed, mass: 9 kg, size: {length: 1.9 m, width: 1 m, height: 600 mm}, at: {from_rear: 0 m, from_left: 0 m, above_floor: 0 mm}}
gas: {appliances: {${hob.replace('{use', '{thing: hob, use')}}}
`;
const gas = `gas: {kind: gas alarm, ${at(100, 100, 200)}}`;
const smoke = `smoke: {kind: smoke alarm, ${at(2000, 1000, 1900)}}`;
const monoxide = (x: number, z = 1200, more = '') =>
  `carbon monoxide: {kind: carbon monoxide alarm, ${at(x, 1000, z)}${more}}`;
const withAlarms = (alarms: string, rest = base, codes = 'uk') =>
  plan(`${rest}protection: {alarms: {${alarms}}}`, {}, codes);
const findings = async (text: string) => (await reportOf(text)).findings.filter(({ rule }) => rule === id);
const verdicts = async (text: string) =>
  (await findings(text)).map(({ verdict, subject }) => [verdict, subject]);

test('all three in place: one pass with places and dates', async () => {
  const finding = await findingOf(
    withAlarms(`${gas}, ${smoke}, ${monoxide(2500, 1200, ', replace_by: 2033-05-01')}`),
    id,
  );
  expect(finding.verdict).toBe('pass');
  expect(words(finding.reason)).toBe(
    'The plan shows the gas alarm 200 mm above the floor; the smoke alarm 100 mm below the ceiling; the carbon monoxide alarm 1500 mm across from what burns nearest, 1200 mm above the floor. The carbon monoxide alarm is to be replaced by 2033-05-01. Of the gas alarm and smoke alarm the plan gives no date (`replace_by`).',
  );
  expect(finding.cautions.slice(0, 2)).toEqual([combustionCaution, gasCaution]);
});

describe('which there must be', () => {
  test('with gas, flames and sleepers all three; carbon monoxide fails', async () => {
    expect(await verdicts(withAlarms(''))).toEqual([
      ['fail', 'carbon monoxide alarm'],
      ['warn', 'gas alarm'],
      ['warn', 'smoke alarm'],
    ]);
    const [monoxideLacks] = await findings(withAlarms(`${gas}, ${smoke}`));
    expect(words(monoxideLacks?.reason)).toBe('hob burns fuel, and the plan has no carbon monoxide alarm.');
    expect(words(monoxideLacks?.remedy)).toContain('1000 mm to 3000 mm across from what burns');
  });

  test('the code of the United States asks for the smoke alarm', async () => {
    expect(
      (await findingOf(withAlarms(`${gas}, ${monoxide(2500)}`, base, 'us'), id, 'smoke alarm')).verdict,
    ).toBe('fail');
  });

  test('a diesel heater burns too; without gas no gas alarm', async () => {
    const diesel = 'heat: {heater: {heated_by: diesel, flue: room-sealed}}\n';
    expect(await verdicts(withAlarms('', diesel))).toEqual([['fail', 'carbon monoxide alarm']]);
    const boiler =
      'heat: {heater: {heated_by: battery}}\nwater: {heater: {kind: storage, heated_by: diesel}}\n';
    const finding = await findingOf(withAlarms('', boiler), id);
    expect(words(finding.reason)).toBe(
      'the water heater burns fuel, and the plan has no carbon monoxide alarm.',
    );
    const electric = 'people: {sleepers: [{stature: 1.7 m}]}\nheat: {heater: {heated_by: battery}}\n';
    expect(await verdicts(withAlarms(smoke, electric))).toEqual([['pass', 'smoke alarm']]);
  });
});

describe('where they are', () => {
  test('a carbon monoxide alarm from 1 to 3 m across, both exactly kept', async () => {
    for (const [x, verdict] of [
      [1990, 'warn'],
      [2000, 'pass'],
      [4000, 'pass'],
    ] as const)
      expect((await findings(withAlarms(`${gas}, ${smoke}, ${monoxide(x)}`)))[0]?.verdict).toBe(verdict);
    const near = await findingOf(withAlarms(`${gas}, ${smoke}, ${monoxide(1990)}`), id, 'carbon monoxide');
    expect(words(near.remedy)).toContain('Move it 10 mm or more away from hob');
  });

  test('what burns and has none within 3 m is named', async () => {
    const inFront = base.replace(at(800, 800, 800), at(-200, 800, 800));
    const finding = await findingOf(withAlarms(`${gas}, ${smoke}, ${monoxide(3600)}`, inFront), id, 'hob');
    expect(finding.verdict).toBe('warn');
    expect(words(finding.reason)).toContain('3600 mm across from hob');
    expect(words(finding.remedy)).toContain('Move it 600 mm or more towards hob');
  });

  test('at the height of sleepers: above the mattress, and 150 mm below the ceiling', async () => {
    const low = await findingOf(
      withAlarms(`${gas}, ${smoke}, ${monoxide(2500, 590)}`),
      id,
      'carbon monoxide',
    );
    expect(words(low.remedy)).toContain('Raise it by 10 mm');
    const high = await findingOf(
      withAlarms(`${gas}, ${smoke}, ${monoxide(2500, 1860)}`),
      id,
      'carbon monoxide',
    );
    expect(words(high.remedy)).toContain('Lower it by 10 mm');
    for (const z of [600, 1850])
      expect((await findingOf(withAlarms(`${gas}, ${smoke}, ${monoxide(2500, z)}`), id)).verdict).toBe(
        'pass',
      );
  });

  test('two faults of one alarm are one finding', async () => {
    const finding = await findingOf(
      withAlarms(`${gas}, ${smoke}, ${monoxide(1500, 1900)}`),
      id,
      'carbon monoxide',
    );
    expect(words(finding.reason)).toMatch(/is 500 mm across from hob.* It is 100 mm below the ceiling/);
  });

  test('a gas alarm is low and a smoke alarm high, exactly kept', async () => {
    const alarm = (kind: string, z: number) => `one: {kind: ${kind}, ${at(2500, 1000, z)}}`;
    const others = monoxide(2500);
    const gasAt = (z: number) => withAlarms(`${alarm('gas alarm', z)}, ${smoke}, ${others}`);
    expect((await findingOf(gasAt(300), id)).verdict).toBe('pass');
    expect(words((await findingOf(gasAt(310), id, 'gas alarm')).remedy)).toContain('Lower it by 10 mm');
    const smokeAt = (z: number) => withAlarms(`${alarm('smoke alarm', z)}, ${gas}, ${others}`);
    expect((await findingOf(smokeAt(1700), id)).verdict).toBe('pass');
    expect(words((await findingOf(smokeAt(1690), id, 'smoke alarm')).remedy)).toContain('Raise it by 10 mm');
  });
});

describe('not checked', () => {
  test('an alarm without a place', async () => {
    const finding = await findingOf(
      withAlarms(`${gas}, ${smoke}, carbon monoxide: {kind: carbon monoxide alarm}`),
      id,
      'carbon monoxide',
    );
    expect(finding).toMatchObject({
      verdict: 'not checked',
      missing: ['protection.alarms.carbon monoxide.at'],
    });
  });

  test('nothing of alarms, nothing of what burns', async () => {
    expect((await findingOf(plan(), id)).missing).toEqual([
      'protection.alarms',
      'gas.appliances',
      'heat.heater',
    ]);
    const silent = 'tanks: {cylinder: {contents: propane, holds: 6 kg}}\nprotection: {}\n';
    expect((await findingOf(plan(silent), id)).missing).toEqual(['gas.appliances']);
  });
});
