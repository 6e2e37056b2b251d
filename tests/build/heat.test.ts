import { expect, test } from 'vitest';
import type { Heat } from '../../src/build/heat.ts';
import { buildOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

const heatOf = async (rest: string, van: Readonly<Record<string, string>> = {}): Promise<Heat> => {
  const { heat } = await buildOf(plan(rest, van));
  if (!heat) throw new Error('there is no heat');
  return heat;
};

const openings =
  '{side door: {kind: door, in: left wall, length: 1 m, height: 1.5 m}, window: {kind: window, in: right wall, length: 600 mm, height: 500 mm}, way through: {kind: door, in: bulkhead, width: 600 mm, height: 1.5 m}}';

test('the envelope is the six surfaces: doors in walls count as wall, panes and the way to the cab do not', async () => {
  const { envelope, panes } = await heatOf('heat: {}', { openings });
  const areas = Object.fromEntries(envelope.map(({ surface, areaM2 }) => [surface, areaM2]));
  expect(areas.floor).toBeCloseTo(8, 9);
  expect(areas.ceiling).toBeCloseTo(8, 9);
  expect(areas['left wall']).toBeCloseTo(8, 9);
  expect(areas['right wall']).toBeCloseTo(8 - 0.3, 9);
  expect(areas.bulkhead).toBeCloseTo(4 - 0.9, 9);
  expect(areas['rear doors']).toBeCloseTo(4, 9);
  expect(panes).toEqual([
    { name: 'window', path: ['van', 'openings', 'window'], surface: 'right wall', areaM2: 0.3, cover: false },
  ]);
});

test('build-ups cover their surfaces one upon the other, walls on both sides', async () => {
  const { envelope } = await heatOf(`build_ups:
  walls: {of: walls, layers: [{material: sheep wool, thickness: 50 mm}]}
  left cladding: {of: left wall, layers: [{name: foil, areal_mass: 0.1 kg/m2, vapour_air_layer: 50 m}]}
  rug: {area: 2 m2, layers: [{material: carpet, thickness: 6 mm}]}
heat: {}`);
  const layersOf = (surface: string) =>
    envelope.find((part) => part.surface === surface)?.layers.map(({ name }) => name);
  expect(layersOf('left wall')).toEqual(['sheep wool', 'foil']);
  expect(layersOf('right wall')).toEqual(['sheep wool']);
  expect(layersOf('ceiling')).toEqual([]);
  const left = envelope.find(({ surface }) => surface === 'left wall');
  expect(left?.buildUps).toEqual(['walls', 'left cladding']);
  expect(left?.layers[1]).toMatchObject({
    vapourAirM: 50,
    path: ['build_ups', 'left cladding', 'layers', 0],
  });
});

test('ribs cover the part of a surface that they are wide', async () => {
  const { envelope } = await heatOf('heat: {}', {
    load_bay:
      '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, ribs: [{in: left wall, from_front: 1 m, width: 100 mm}, {in: left wall, from_front: 2 m, width: 60 mm}, {in: ceiling, from_front: 2 m, width: 50 mm}]}',
  });
  const shares = Object.fromEntries(envelope.map(({ surface, ribShare }) => [surface, ribShare]));
  expect(shares['left wall']).toBeCloseTo(0.04, 9);
  expect(shares.ceiling).toBeCloseTo(0.0125, 9);
  expect(shares.floor).toBe(0);
});

test('what the plan does not say of warmth is usual, and is among the assumptions', async () => {
  const { heat, assumptions } = await buildOf(plan('heat: {inside: 15 degC}'));
  expect(heat).toMatchObject({
    insideC: 15,
    asleepC: 15,
    skin: { thicknessM: 0.001, material: { name: 'steel' } },
  });
  expect(assumptions.some(({ path }) => path[0] === 'heat')).toBe(true);
});

test('panes, heater, cab and ducts are as the plan has them', async () => {
  const heat = await heatOf(
    `fixtures: {cupboard: {mass: 9 kg}, air heater: {mass: 3 kg, size: {length: 300 mm, width: 100 mm, height: 100 mm}, at: {from_front: 1 m, centred: true, above_floor: 0 mm}}}
routes: {runs: {warm: {carries: duct, from: air heater, to: cupboard, length: 2 m}}}
heat:
  panes: {window: {kind: double acrylic, cover: true}}
  cab: {closed_by: curtain, u_value: 3 W/m2/K}
  heater: {thing: air heater, output: 2 kW, heated_by: diesel, efficiency: 80 %, exhaust: {from_front: 1 m, from_left: 0 mm, above_floor: -300 mm}}
  ducts: {warm air: {run: warm, bore: 60 mm, outlets: 2}}`,
    { openings },
  );
  expect(heat.panes[0]).toMatchObject({
    kind: 'double acrylic',
    cover: true,
    path: ['heat', 'panes', 'window'],
  });
  expect(heat.cab).toMatchObject({ closedBy: 'curtain', uValue: 3 });
  expect(heat.heater).toMatchObject({
    outputW: 2000,
    heatedBy: 'diesel',
    efficiency: 0.8,
    whereabouts: 'inside',
  });
  expect(heat.heater?.exhaust?.xM).toBeCloseTo(1, 9);
  expect(heat.heater?.exhaust?.yM).toBeCloseTo(-1, 9);
  expect(heat.heater?.exhaust?.zM).toBeCloseTo(-0.3, 9);
  expect(heat.ducts[0]).toMatchObject({ lengthM: 2, lengthFrom: 'route', boreM: 0.06, outlets: 2 });
});
