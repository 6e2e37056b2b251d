import { describe, expect, test } from 'vitest';
import { combustionCaution } from '../../../src/rules/cautions.ts';
import { airy, hob, twoAsleep, twoVents } from '../../support/air-plan.ts';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const id = 'air.fixed-vents';
const gas = `${twoAsleep}gas: {appliances: {${hob}}}\n`;
/** 5 m × 2 m: 10 m² outside, more than the 8 m² of the floor. */
const ten = { overall_length: '5 m' };
const findings = async (text: string) => (await reportOf(text)).findings.filter(({ rule }) => rule === id);
const verdicts = async (text: string) =>
  (await findings(text)).map(({ verdict, subject }) => [verdict, subject]);

describe('by the table for leisure vehicles', () => {
  test('12 m² with a hob: 125 cm² high and 20 cm² low, exactly kept', async () => {
    const [finding, ...more] = await findings(airy(twoVents(20, 125), gas));
    expect(more).toEqual([]);
    expect(finding?.verdict).toBe('pass');
    expect(words(finding?.reason)).toContain('1 more figure is no closer');
    expect(finding?.cautions).toContain(combustionCaution);
  });

  test('a little less fails, high and low apart, with what still lacks', async () => {
    expect(await verdicts(airy(twoVents(19, 124), gas))).toEqual([
      ['fail', 'low vents'],
      ['fail', 'high vents'],
    ]);
    const low = await findingOf(airy(twoVents(15, 125), gas), id, 'low vents');
    expect(words(low.remedy)).toContain('Fit 5.0 cm² more in the floor');
    expect(words(low.reason)).toContain('by the outside of 12.00 m² with hob burning the air of the room');
  });

  test('a vent in a wall counts half, and mixes with one in the roof', async () => {
    const wall = (cm2: number) => `wall: {in: left wall, level: high, free_area: ${cm2} cm2, closes: false}`;
    expect(
      (await verdicts(airy(`${twoVents(20, 25)}, ${wall(200)}`, gas))).map(([verdict]) => verdict),
    ).toEqual(['pass']);
    const short = await findingOf(airy(`${twoVents(20, 25)}, ${wall(190)}`, gas), id, 'high vents');
    expect(measured(short)).toBeCloseTo(120e-4, 9);
    expect(words(short.remedy)).toContain('Fit 5.0 cm² more in the roof, or 10 cm² high in a wall');
  });

  test('the larger of outside and floor decides, and the other reading is told', async () => {
    const finding = await findingOf(airy(twoVents(20, 120), gas), id, 'high vents');
    expect(finding.limit?.measure.value).toBeCloseTo(125e-4, 9);
    expect(words(finding.reason)).toContain('by the floor alone it would be 100 cm² high and 15 cm² low');
    // 3 m × 2 m outside is less than the 8 m² of the floor.
    const floor = await findingOf(airy(twoVents(14, 200), gas, { overall_length: '3 m' }), id, 'low vents');
    expect(words(floor.reason)).toContain('by the floor of 8.00 m²');
    expect(floor.limit?.measure.value).toBeCloseTo(15e-4, 9);
  });

  test('without combustion the row for room-sealed appliances is still asked for', async () => {
    const electric = `${twoAsleep.replace('15 degC}', '15 degC, heater: {heated_by: battery}}')}`;
    expect(await verdicts(airy(twoVents(5, 15), electric, ten))).toEqual([['pass', 'high vents']]);
    const finding = await findingOf(airy(twoVents(4, 15), electric, ten), id, 'low vents');
    expect(finding.verdict).toBe('fail');
    expect(words(finding.reason)).toContain('without anything that burns the air of the room');
    // Above 10 m² the row for open flames stands in.
    const large = await findingOf(airy(twoVents(5, 15), electric), id, 'high vents');
    expect(large.limit?.measure.value).toBeCloseTo(125e-4, 9);
    expect(large.cautions.join(' ')).toContain('the row with them stands in');
  });

  test('a room-sealed heater burns no room air, one that does not say is taken to', async () => {
    const heated = (flue: string) =>
      twoAsleep.replace('15 degC}', `15 degC, heater: {heated_by: diesel${flue}}}`);
    expect(await verdicts(airy(twoVents(5, 15), heated(', flue: room-sealed'), ten))).toEqual([
      ['pass', 'high vents'],
    ]);
    const unsaid = await findingOf(airy(twoVents(5, 15), heated(''), ten), id, 'high vents');
    expect(unsaid.verdict).toBe('fail');
    expect(words(unsaid.reason)).toContain('the plan does not say `flue`');
  });

  test('what can be shut does not count and is named', async () => {
    const finding = await findingOf(
      airy(`${twoVents(20, 100)}, hatch: {in: ceiling, free_area: 400 cm2, closes: true}`, gas),
      id,
      'high vents',
    );
    expect(finding.verdict).toBe('fail');
    expect(words(finding.reason)).toContain('hatch does not count: what can be shut is shut');
  });
});

describe('by codes', () => {
  test('the European table only warns in the United States', async () => {
    const finding = await findingOf(airy(twoVents(10, 125), gas, {}, 'us'), id, 'low vents');
    expect(finding.verdict).toBe('warn');
    expect(finding.cautions.join(' ')).toContain('A European table');
  });

  test('Australia: by input and sleepers, at least 40 cm²', async () => {
    // 3 kW net of propane are 3 · 50 / 46.1 = 3.2538 kW gross or 11.714 MJ/h: 71.45 cm², and 13 cm² for two.
    const finding = await findingOf(airy(twoVents(40, 44), gas, {}, 'au'), id, 'fixed vents together');
    expect(finding.verdict).toBe('fail');
    expect(finding.limit?.measure.value).toBeCloseTo((11.7137 * 610 + 2 * 650) * 1e-6, 7);
    expect(await verdicts(airy(twoVents(40, 45), gas, {}, 'au'))).toEqual([['pass', 'fixed vents together']]);
  });

  test('without codes every table is asked', async () => {
    expect(await verdicts(airy(twoVents(10, 20), gas, {}, ''))).toEqual([
      ['fail', 'high vents'],
      ['fail', 'fixed vents together'],
      ['fail', 'low vents'],
    ]);
  });
});

describe('not checked', () => {
  test('where vents that do not say whether they can be shut would be enough: one finding', async () => {
    const finding = await findingOf(
      airy('roof: {in: ceiling, free_area: 130 cm2}, floor: {in: floor, free_area: 20 cm2}', gas),
      id,
    );
    expect(finding).toMatchObject({
      verdict: 'not checked',
      missing: ['air.vents.roof.closes', 'air.vents.floor.closes'],
    });
    // They would not be enough: then it fails whatever they are.
    expect(await verdicts(airy('roof: {in: ceiling, free_area: 30 cm2}', gas))).toEqual([
      ['fail', 'high vents'],
      ['fail', 'low vents'],
    ]);
  });

  test('without vents, what burns, and the size of the van', async () => {
    expect((await findingOf(plan(), id)).missing).toEqual([
      'air.vents',
      'gas.appliances',
      'heat.heater',
      'van.overall_width',
    ]);
  });
});
