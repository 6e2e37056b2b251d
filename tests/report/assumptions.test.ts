import { expect, test } from 'vitest';
import { renderAssumptions } from '../../src/report/assumptions.ts';
import { reportOf, smallReport } from './fixtures.ts';

test('lists each assumption with its line, key, text and source', () => {
  expect(renderAssumptions(smallReport, { width: 60, colour: false })).toMatchInlineSnapshot(`
    "Assumed values
    ══════════════
    line 13  people.seats.driver.mass: the driver weighs 75 kg
             source: EU 2021/535, Annex XIII, Part 2, section A
    no line  van.fuel.density: diesel is taken as full
    "
  `);
});

test('uses the reader’s units', () => {
  const text = renderAssumptions({ ...smallReport, units: 'imperial' }, { width: 60, colour: false });
  expect(text).toContain('the driver weighs 165 lb');
});

test('says so when nothing is assumed', () => {
  expect(renderAssumptions(reportOf({}), { width: 60, colour: true })).toBe('No value is assumed.\n');
});
