import { describe, expect, test } from 'vitest';
import { findingOf, measured, reportOf, words } from '../../support/check.ts';
import { floorPlan, type Standing } from '../../support/floor-plan.ts';
import { plan } from '../../support/test-van.ts';

const id = 'electrical.wet-zone';
const shower: Standing = { at: [0, 0], size: [800, 800, 1900], more: 'is: shower' };

const electrical = (
  battery = 'lithium iron phosphate, voltage: 12.8 V',
  thing = ', thing: cupboard',
  more = '',
) =>
  `electrical:
  voltage: 12 V
  battery: {chemistry: ${battery}, capacity: 200 Ah${thing}}
${more}`;

const findings = async (text: string) => (await reportOf(text)).findings.filter(({ rule }) => rule === id);
const cupboard = (fromFront: number, above = 0): Standing => ({
  at: [fromFront, 0, above],
  size: [300, 300, 100],
});

describe('near a shower', () => {
  test.each([
    { fromFront: 1400, distance: 0.6, verdict: 'pass' },
    { fromFront: 1399, distance: 0.599, verdict: 'warn' },
    { fromFront: 800, distance: 0, verdict: 'warn' },
    { fromFront: 100, distance: 0, verdict: 'warn' },
  ])('$distance m: $verdict', async ({ fromFront, distance, verdict }) => {
    const finding = await findingOf(
      floorPlan({}, { shower, cupboard: cupboard(fromFront) }, {}, electrical()),
      id,
    );
    expect(finding).toMatchObject({ verdict, subject: 'cupboard' });
    expect(measured(finding)).toBeCloseTo(distance, 9);
  });

  test('says what it holds and how far to move it', async () => {
    const finding = await findingOf(
      floorPlan(
        {},
        { shower, cupboard: cupboard(1000) },
        {},
        electrical(undefined, undefined, '  distribution: {box: {kind: fuse box, thing: cupboard}}'),
      ),
      id,
    );
    expect(finding.path).toEqual(['electrical', 'battery', 'thing']);
    expect(words(finding.reason)).toBe('It stands 200 mm from shower. It holds the battery and box.');
    expect(words(finding.remedy)).toContain('Move it 400 mm further from shower');
  });

  // The van is made 3 m high for this.
  test.each([
    { above: 2250, verdict: 'pass' },
    { above: 2249, verdict: 'warn' },
  ])('$above mm up: $verdict', async ({ above, verdict }) => {
    const found = await findings(
      floorPlan(
        {},
        { shower, cupboard: cupboard(800, above) },
        {
          load_bay:
            '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 3 m, floor_above_ground: 0.5 m}',
        },
        electrical(),
      ),
    );
    expect(found.map((each) => each.verdict)).toEqual([verdict]);
  });

  test('the end of a circuit in the shower itself', async () => {
    const found = await findings(
      floorPlan(
        {},
        { shower, cupboard: cupboard(2000) },
        {},
        electrical(undefined, undefined, '  circuits: {lamp: {from: battery, to: shower, load: 1 A}}'),
      ),
    );
    expect(found.map(({ verdict, subject }) => [verdict, subject])).toEqual([
      ['warn', 'shower'],
      ['pass', 'cupboard'],
    ]);
  });

  test('places that are not known are asked for once', async () => {
    const rest = `${electrical(undefined, '', '  distribution: {box: {kind: fuse box}}\n  circuits: {lamp: {from: battery, to: lamp, load: 1 A}}')}
tanks: {lamp: {contents: waste, holds: 1 L}}`;
    expect(await findingOf(floorPlan({}, { shower }, {}, rest), id)).toMatchObject({
      verdict: 'not checked',
      missing: [
        'electrical.battery.thing',
        'electrical.distribution.box.thing',
        'tanks.lamp.size.length',
        'tanks.lamp.size.width',
        'tanks.lamp.size.height',
        'tanks.lamp.at.from_front',
        'tanks.lamp.at.from_left',
      ],
    });
  });
});

describe('without a shower', () => {
  test('a plan that says what its things are for passes', async () => {
    const bed: Standing = { at: [2000, 0], size: [1900, 1200, 400], more: 'is: bed' };
    expect(
      await findingOf(floorPlan({}, { bed, cupboard: cupboard(0) }, {}, electrical()), id),
    ).toMatchObject({ verdict: 'pass', subject: 'shower' });
  });

  test('one that does not is asked', async () => {
    expect(await findingOf(floorPlan({}, { cupboard: cupboard(0) }, {}, electrical()), id)).toMatchObject({
      verdict: 'not checked',
      missing: ['fixtures.NAME.is'],
    });
  });
});

describe('gas of lead batteries', () => {
  const lead = (chemistry: string) =>
    findingOf(
      floorPlan({}, { cupboard: cupboard(0) }, {}, electrical(`${chemistry}, voltage: 12 V`)),
      id,
      'gas of the battery',
    );

  // Q = 0.05 · 6 · 0.02 · 200 = 1.2 m³/h; A = 28 · 1.2 = 33.6 cm²; d = √(4 · 33.6 / π) = 6.54 cm.
  test('flooded lead where people live warns with the openings', async () => {
    const finding = await lead('flooded lead');
    expect(finding).toMatchObject({ verdict: 'warn', path: ['electrical', 'battery', 'thing'] });
    expect(words(finding.remedy)).toContain('at least 66 mm across, one low and one high');
    expect(finding.cautions.join(' ')).toContain('Hydrogen rises');
  });

  // Half of the gassing current: 16.8 cm², 46.3 mm.
  test('a sealed one is not checked, with its openings', async () => {
    const finding = await lead('AGM');
    expect(finding.verdict).toBe('not checked');
    expect(words(finding.remedy)).toContain('at least 47 mm across');
  });

  test('under the floor it is apart from what people breathe', async () => {
    const finding = await findingOf(
      floorPlan({}, { cupboard: cupboard(0, -400) }, {}, electrical('flooded lead, voltage: 12 V')),
      id,
      'gas of the battery',
    );
    expect(finding.verdict).toBe('pass');
    expect(words(finding.reason)).toContain('needs two openings');
  });

  test('without its place it is asked for', async () => {
    const text = floorPlan({}, { cupboard: cupboard(0) }, {}, electrical('flooded lead, voltage: 12 V', ''));
    expect(await findingOf(text, id, 'gas of the battery')).toMatchObject({
      verdict: 'not checked',
      missing: ['electrical.battery.thing'],
    });
  });

  test('lithium is not asked about', async () => {
    const found = await findings(floorPlan({}, { cupboard: cupboard(0) }, {}, electrical()));
    expect(found.map(({ subject }) => subject)).toEqual(['shower']);
  });
});

test('nothing electrical, and no load bay', async () => {
  expect((await findingOf(plan('', { load_bay: undefined }), id)).missing).toEqual([
    'electrical',
    'van.load_bay',
  ]);
});
