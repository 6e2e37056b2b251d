import { expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { linings, warmVan } from '../../support/warm-van.ts';

const living = 'winter_low: -10 degC, summer_high: 30 degC';
const foam = (mm: number) => linings.replaceAll('36 mm', `${mm} mm`);
const all = async (text: string) =>
  (await reportOf(text)).findings.filter(({ rule }) => rule === 'heat.surfaces');

// January is at 0 °C: class 4 has 0.9 · 611 + 1080 = 1630 Pa; 1630 / 0.8 = 2037 Pa is saturated at 17.8 °C. A wall of
// 36 mm: 20 · (1 − 0.25 / (0.29 + 1)) = 16.1 °C; of 180 mm: 20 · (1 − 0.25 / 5.29) = 19.05 °C.
test('thin insulation warns, once for all that are alike', async () => {
  const found = await all(warmVan({ living }));
  expect(found.map(({ subject, verdict }) => [subject, verdict])).toEqual(
    expect.arrayContaining([
      ['walls', 'warn'],
      ['ceiling', 'warn'],
      ['floor', 'warn'],
      ['rear doors', 'warn'],
    ]),
  );
  const walls = await findingOf(warmVan({ living }), 'heat.surfaces', 'walls');
  expect(measured(walls)).toBeCloseTo(20 * (1 - 0.25 / 1.29002), 9);
  expect(walls.limit?.measure.value).toBeCloseTo(17.8, 1);
  expect(words(walls.reason)).toContain('In January');
  // 0.8 · p(16.12 °C) / p(20 °C) = 0.8 · 1833 / 2339 = 62.7 %.
  expect(words(walls.remedy)).toContain('62 % relative humidity');
});

test('the thickness that is named is enough', async () => {
  const walls = await findingOf(warmVan({ living }), 'heat.surfaces', 'walls');
  const mm = 36 + Number(/XPS (\d+) mm thicker/.exec(words(walls.remedy))?.[1]);
  expect((await all(warmVan({ living, linings: foam(mm) }))).map(({ verdict }) => verdict)).toEqual(['pass']);
  expect((await all(warmVan({ living, linings: foam(mm - 10) })))[0]?.verdict).toBe('warn');
});

test('the thickness in all is enough as it is printed', async () => {
  for (const mm of [25.4, 36.6]) {
    const remedy = words(
      (await findingOf(warmVan({ living, linings: foam(mm) }), 'heat.surfaces', 'walls')).remedy,
    );
    const whole = Number(/thicker \((\d+) mm\)/.exec(remedy)?.[1]);
    expect((await all(warmVan({ living, linings: foam(whole) }))).map(({ verdict }) => verdict)).toEqual([
      'pass',
    ]);
  }
});

test('exactly at the limit is kept', async () => {
  const needed = (await findingOf(warmVan({ living }), 'heat.surfaces', 'walls')).limit?.measure.value ?? 0;
  const mm = (0.25 / (1 - needed / 20) - 0.29002) * 36;
  expect((await all(warmVan({ living, linings: foam(mm) }))).map(({ verdict }) => verdict)).toEqual(['pass']);
});

test('bare metal is said to be bare', async () => {
  const finding = await findingOf(
    warmVan({ living, linings: linings.replace(/ {2}ceiling.*\n/, '') }),
    'heat.surfaces',
    'ceiling',
  );
  expect(finding.verdict).toBe('warn');
  expect(words(finding.reason)).toContain('bare metal');
});

test('without the air outside it is not checked', async () => {
  expect(await findingOf(warmVan(), 'heat.surfaces')).toMatchObject({
    verdict: 'not checked',
    missing: ['living.place'],
  });
});
