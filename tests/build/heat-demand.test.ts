import { describe, expect, test } from 'vitest';
import { heatDemandOf, type WorkedHeatDemand } from '../../src/build/heat-demand.ts';
import { buildOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';
import { linings, warmVan, warmVanWPerK } from '../support/warm-van.ts';

async function workedOf(text: string): Promise<WorkedHeatDemand> {
  const { worked, missing } = heatDemandOf(await buildOf(text));
  if (!worked) throw new Error(`missing: ${missing.join(', ')}`);
  return worked;
}
const missingOf = async (text: string) => heatDemandOf(await buildOf(text)).missing;

const partOf = ({ parts }: WorkedHeatDemand, name: string) => parts.find((part) => part.name === name);

describe('the loss', () => {
  test('is that of its parts, the most losing first', async () => {
    const worked = await workedOf(warmVan());
    expect(worked.awake.totalWPerK).toBeCloseTo(warmVanWPerK, 2);
    expect(worked.winterLow?.lossW).toBeCloseTo(20 * warmVanWPerK, 1);
    const losses = worked.parts.map(({ uValue, areaM2 }) => uValue * areaM2);
    expect(losses).toEqual([...losses].sort((a, b) => b - a));
  });

  // 2 changes an hour of 16 m³: 2 · 16 · 1200 / 3600 = 10.67 W/K.
  test('takes usual air changes where the plan has none, and says so', async () => {
    const text = plan(`${linings}heat: {cab: {closed_by: curtain}}\nliving: {winter_low: 0 degC}`);
    const worked = await workedOf(text);
    expect(worked.awake.ventilationWPerK).toBeCloseTo(32 / 3, 9);
    expect(worked.assumptions.join()).toContain('air_changes_per_hour');
    expect(partOf(worked, 'way to the cab')).toMatchObject({ areaM2: 4, uValue: 5 });
  });

  // Pane 0.6 · 0.5 = 0.3 m², double acrylic 2.9; asleep 1 / (1 / 2.9 + 0.17) = 1.9424.
  test('has panes, by night with their covers', async () => {
    const worked = await workedOf(
      warmVan({
        heat: 'panes: {window: {kind: double acrylic, cover: true}}',
        van: { openings: '{window: {kind: window, in: right wall, length: 600 mm, height: 500 mm}}' },
      }),
    );
    expect(partOf(worked, 'window')).toMatchObject({ areaM2: 0.3, uValue: 2.9 });
    expect(partOf(worked, 'window')?.asleepUValue).toBeCloseTo(1.9424, 4);
    expect(worked.asleep.totalWPerK).toBeLessThan(worked.awake.totalWPerK);
  });

  test('has hatches and vents that no pane is given for, and wheel arches like the wall', async () => {
    const worked = await workedOf(
      warmVan({
        van: {
          openings:
            '{hatch: {kind: vent, in: ceiling, length: 400 mm, width: 400 mm, at: {from_front: 1 m, centred: true}}}',
          wheel_arches: '{from_front: 1 m, length: 1 m, width: 200 mm, height: 300 mm}',
        },
      }),
    );
    expect(partOf(worked, 'hatch')).toMatchObject({ uValue: 3.1 });
    expect(partOf(worked, 'hatch')?.areaM2).toBeCloseTo(0.16, 9);
    // Two of 1 · 0.3 + 1 · 0.2 + 2 · 0.2 · 0.3 = 0.62.
    expect(partOf(worked, 'wheel arches')?.areaM2).toBeCloseTo(1.24, 9);
    expect(partOf(worked, 'wheel arches')?.uValue).toBeCloseTo(1 / 1.17002, 6);
  });

  test('of the cab is that of the doorway, and the bulkhead round it is a wall to the cab', async () => {
    const worked = await workedOf(
      plan(
        `${linings}  bulkhead: {of: bulkhead, layers: [{material: XPS, thickness: 36 mm}]}\nheat: {cab: {closed_by: curtain}}`,
        { openings: '{way: {kind: door, in: bulkhead, width: 500 mm, height: 2 m}}' },
      ),
    );
    expect(partOf(worked, 'way to the cab')).toMatchObject({ areaM2: 1, uValue: 5 });
    // 1 / (0.13 + 1 + 0.13 + 1 / 13).
    expect(partOf(worked, 'bulkhead')?.uValue).toBeCloseTo(1 / (1.26002 + 1 / 13), 6);
    expect(partOf(worked, 'bulkhead')?.areaM2).toBeCloseTo(3, 9);
  });
});

describe('a day', () => {
  // Two asleep 8 h at 55 W each, awake 16 h at 90 W each: (16 · (20·H − 180) + 8 · (20·H − 110)) / 24.
  test('counts people, awake and asleep', async () => {
    const worked = await workedOf(
      warmVan({ rest: 'people: {sleepers: [{stature: 1.7 m}, {stature: 1.7 m}]}' }),
    );
    const lossW = 20 * worked.awake.totalWPerK;
    expect(worked.meanDayW(0)).toBeCloseTo((16 * (lossW - 180) + 8 * (lossW - 110)) / 24, 6);
    expect(worked.meanDayW(25)).toBe(0);
  });

  test('of each month takes the air of the nearest place, turned round in the south', async () => {
    const worked = await workedOf(
      warmVan({
        living: 'winter_low: 0 degC, place: {latitude: 48.1, longitude: 11.7}',
        heat: 'heater: {output: 2 kW}',
      }),
    );
    expect(worked.months).toHaveLength(12);
    const january = worked.months?.[0];
    expect(january?.outsideC).toBe(-0.5);
    expect(january?.heatJPerDay).toBeCloseTo(worked.meanDayW(-0.5) * 86_400, 3);
    expect(january?.heaterHoursPerDay).toBeCloseTo((january?.heatJPerDay ?? 0) / 2000 / 3600, 9);
  });

  // January mean 10 K above the low, July 10 K below the high.
  test('too far from every place, takes a wave between the extremes of the plan', async () => {
    const living = 'winter_low: -10 degC, summer_high: 30 degC, place: {latitude: -48, longitude: -120}';
    const { months } = await workedOf(warmVan({ living }));
    expect(months?.[0]?.outsideC).toBeCloseTo(20, 9);
    expect(months?.[6]?.outsideC).toBeCloseTo(0, 9);
  });

  test('without a place there are no months', async () => {
    expect((await workedOf(warmVan())).months).toBeUndefined();
  });
});

test('what is not known is named', async () => {
  expect(await missingOf(plan(''))).toEqual(['heat']);
  expect(await missingOf(plan('heat: {}'))).toEqual(['heat.cab.closed_by']);
  expect(
    await missingOf(
      plan(
        'build_ups: {walls: {of: walls, layers: [{material: XPS, thickness: 20 mm}, {name: mat, areal_mass: 1 kg/m2, thickness: 5 mm}]}}\nheat: {cab: {closed_by: open}}',
        { openings: '{window: {kind: window, in: right wall, length: 600 mm, height: 500 mm}}' },
      ),
    ),
  ).toEqual(['build_ups.walls.layers[1].conductivity', 'heat.panes.window.kind']);
});

// XPS counts by half: 36 mm · ρ · 1470 / 2 for each m²; air 16 m³ · 1200.
test('what warms up is the air and half of the insulation', async () => {
  const worked = await workedOf(warmVan());
  const [surface] = worked.surfaces;
  const density = surface?.part.layers[0]?.material?.densityKgM3 ?? 0;
  expect(worked.capacityJPerK).toBeCloseTo(16 * 1200 + (36 * 0.036 * density * 1470) / 2, 3);
});
