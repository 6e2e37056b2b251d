import { expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { warmVan } from '../../support/warm-van.ts';

const openings =
  '{window: {kind: window, in: left wall, length: 500 mm, height: 500 mm, at: {from_front: 1 m, above_floor: 0.5 m}}}';
const exhaust = (place: string, rest = '') =>
  findingOf(
    warmVan({
      heat: `heater: {heated_by: diesel, flue: room-sealed, exhaust: ${place}}`,
      van: { openings },
      rest,
    }),
    'heat.heater-exhaust',
  );

// The window begins 0.5 m above the floor, the exhaust ends on the wall's line below it.
test.each([
  { below: '-100 mm', distanceM: 0.6, verdict: 'pass' },
  { below: '0 mm', distanceM: 0.5, verdict: 'pass' },
  { below: '100 mm', distanceM: 0.4, verdict: 'warn' },
])('$below: $verdict', async ({ below, distanceM, verdict }) => {
  const finding = await exhaust(`{from_front: 1.2 m, from_left: 0 m, above_floor: ${below}}`);
  expect(finding).toMatchObject({ verdict, subject: 'window', path: ['van', 'openings', 'window'] });
  expect(measured(finding)).toBeCloseTo(distanceM, 9);
  expect(finding.cautions[0]).toContain('Carbon monoxide');
  if (verdict === 'warn') expect(words(finding.remedy)).toContain('100 mm or more');
});

// The window ends 1.5 m from the front; 0.6 m farther back on the same line.
test('from behind the opening too', async () => {
  const finding = await exhaust('{from_front: 2.1 m, from_left: 0 m, above_floor: 0.5 m}');
  expect(measured(finding)).toBeCloseTo(0.6, 9);
});

test('a floor vent beside it warns', async () => {
  const vent =
    'air: {vents: {floor vent: {in: floor, free_area: 50 cm2, at: {from_front: 3 m, from_left: 300 mm, above_floor: 0 mm}}}}';
  const { findings } = await reportOf(
    warmVan({
      heat: 'heater: {heated_by: diesel, exhaust: {from_front: 3 m, from_left: 0 m, above_floor: 0 mm}}',
      van: { openings },
      rest: vent,
    }),
  );
  const found = findings.filter(({ rule, verdict }) => rule === 'heat.heater-exhaust' && verdict === 'warn');
  expect(found.map(({ subject }) => subject)).toEqual(['floor vent']);
});

test('missing', async () => {
  const text = warmVan({ heat: 'heater: {heated_by: diesel}' });
  expect(await findingOf(text, 'heat.heater-exhaust')).toMatchObject({
    verdict: 'not checked',
    missing: ['heat.heater.exhaust'],
  });
});
