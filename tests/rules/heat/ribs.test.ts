import { expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { warmVan } from '../../support/warm-van.ts';

const load_bay =
  '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, ribs: [{in: left wall, from_front: 1 m, width: 50 mm}, {in: right wall, from_front: 1 m, width: 50 mm}]}';
const ribs = (keys: string) =>
  findingOf(warmVan({ heat: `ribs: {${keys}}`, van: { load_bay } }), 'heat.ribs');

// Straight through: 0.13 / (0.17002 + 0.036 / 50) = 0.7614, so 20 · 0.2386 = 4.77 °C; dew point 14.3 °C.
test('bare ribs warn, with the range, once for both walls', async () => {
  const finding = await ribs('depth: 36 mm, metal: 1.2 mm');
  expect(finding).toMatchObject({ verdict: 'warn', subject: 'ribs of the walls', path: ['heat', 'ribs'] });
  expect(measured(finding)).toBeCloseTo(20 * (1 - 0.13 / 0.17074), 9);
  expect(words(finding.reason)).toMatch(/from 5 °C to 1[0-9] °C/);
  expect(words(finding.reason)).toMatch(/between 0\.\d\d W\/m²K and \d\.\d\d W\/m²K/);
});

test('the cover that is named is enough, and a millimetre less is not', async () => {
  const remedy = words((await ribs('depth: 36 mm, metal: 1.2 mm')).remedy);
  const mm = Number(/with (\d+) mm of elastomeric foam/.exec(remedy)?.[1]);
  const covered = (thickness: number) =>
    ribs(`depth: 36 mm, metal: 1.2 mm, covered_by: {material: elastomeric foam, thickness: ${thickness} mm}`);
  expect((await covered(mm)).verdict).toBe('pass');
  expect((await covered(mm - 1)).verdict).toBe('warn');
});

// 20 · (1 − 0.13 / (0.17074 + d / 0.05)) is the dew point.
test('exactly at the dew point is kept', async () => {
  const dew = (await ribs('depth: 36 mm')).limit?.measure.value ?? 0;
  const mm = (0.13 / (1 - dew / 20) - 0.17074) * 0.05 * 1000;
  expect(
    (await ribs(`depth: 36 mm, covered_by: {material: elastomeric foam, thickness: ${mm} mm}`)).verdict,
  ).toBe('pass');
});

test('a plan without ribs is not checked', async () => {
  expect(await findingOf(warmVan(), 'heat.ribs')).toMatchObject({
    verdict: 'not checked',
    missing: ['van.load_bay.ribs', 'heat.ribs'],
  });
});

test('no cover is asked for that a van has no room for', async () => {
  const wet = await findingOf(
    warmVan({
      heat: 'ribs: {depth: 36 mm, metal: 1.2 mm}',
      living: 'winter_low: 0 degC, wet_clothes: 14 L',
      van: { load_bay },
      rest: `people: {sleepers: [{stature: 1.7 m}]}
air: {vents: {low: {in: floor, free_area: 200 cm2, closes: false}, high: {in: ceiling, free_area: 200 cm2, closes: false}}}`,
    }),
    'heat.ribs',
  );
  expect(wet.verdict).toBe('warn');
  const mm = [...words(wet.remedy).matchAll(/(\d+) mm/g)].map((match) => Number(match[1]));
  expect(mm.filter((each) => each > 100)).toEqual([]);
  expect(words(wet.remedy)).toContain('No cover');
});
