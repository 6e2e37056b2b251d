import { describe, expect, test } from 'vitest';
import { goalsOf, targetOf, type Way, waysFromDoor } from '../../src/build/walking.ts';
import { reachedAt, walkingFloor } from '../../src/build/walking-floor.ts';
import { buildOf } from '../support/check.ts';
import { floorPlan, rearDoors, type Standing, sideDoor } from '../support/floor-plan.ts';
import { plan } from '../support/test-van.ts';

const waysIn = async (text: string) => {
  const { layout } = await buildOf(text);
  return layout && waysFromDoor(layout);
};

async function wayTo(name: string, text: string): Promise<Way> {
  const way = (await waysIn(text))?.ways.find(({ to }) => to === name);
  if (!way) throw new Error(`no way to ${name}`);
  return way;
}

/** The narrowest spot's two sides, sorted; a wall is "wall". */
const sidesOf = ({ narrowest }: Way) => narrowest?.between.map(({ of = 'wall' }) => of).sort();

const door = { 'side door': sideDoor };
const bed: Standing = { at: [2500, 0], size: [1500, 2000, 500], more: 'is: bed' };

describe('the width of a way', () => {
  test('in an empty van it is that of the door', async () => {
    const way = await wayTo('bed', floorPlan(door, { bed }));
    expect(way).toMatchObject({ from: 'side door', path: ['fixtures', 'bed'], widthM: 1 });
    expect(sidesOf(way)).toEqual(['wall', 'wall']);
  });

  // 2000 mm less 900 less 560.
  test('between two cupboards it is the gap between them', async () => {
    const kitchen: Standing = { at: [1600, 0], size: [600, 900, 900] };
    const wardrobe: Standing = { at: [1600, 1440], size: [600, 560, 1800] };
    const way = await wayTo('bed', floorPlan(door, { bed, kitchen, wardrobe }));
    expect(way.widthM).toBe(0.54);
    expect(sidesOf(way)).toEqual(['kitchen', 'wardrobe']);
    expect(way.narrowest?.at.yM).toBeCloseTo(0.17, 6);
  });

  // From the corner of the table to the rear post of the door: 300 mm along and 400 mm across.
  test('at a corner it is measured at a slant', async () => {
    const table: Standing = { at: [0, 400], size: [1200, 1600, 700] };
    expect((await wayTo('bed', floorPlan(door, { bed, table }))).widthM).toBe(0.5);
  });

  test('what stands in the doorway narrows it', async () => {
    const kitchen: Standing = { at: [0, 0], size: [1050, 500, 900] };
    const way = await wayTo('bed', floorPlan(door, { bed, kitchen }));
    expect(way.widthM).toBe(0.45);
    expect(sidesOf(way)).toEqual(['kitchen', 'wall']);
  });

  test('is none if something stands right across', async () => {
    const wall: Standing = { at: [1600, 0], size: [50, 2000, 1800] };
    const way = await wayTo('bed', floorPlan(door, { bed, wall }));
    expect(way.widthM).toBe(0);
    expect(way.narrowest).toBeUndefined();
  });
});

describe('in the way', () => {
  test.each([
    { what: 'what one steps over', from: 0, height: 100, widthM: 1 },
    { what: 'what one stumbles over', from: 0, height: 101, widthM: 0.4 },
    { what: 'what hangs lower than shoulders', from: 1599, height: 300, widthM: 0.4 },
    { what: 'what hangs above them is not', from: 1600, height: 300, widthM: 1 },
  ])('$what: $widthM m', async ({ from, height, widthM }) => {
    const thing: Standing = { at: [1700, 0, from], size: [200, 1600, height] };
    expect((await wayTo('bed', floorPlan(door, { bed, thing }))).widthM).toBe(widthM);
  });

  // 2000 mm at the floor, 1800 mm at 2 m: at 1.6 m there are 1840 mm, 80 mm less on each side.
  test('a wall that leans in, as far as it does at the shoulders', async () => {
    const profile = '[{above_floor: 0 mm, width: 2000 mm}, {above_floor: 2000 mm, width: 1800 mm}]';
    const loadBay = `{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, profile: ${profile}}`;
    const kitchen: Standing = { at: [1700, 0], size: [200, 1400, 900] };
    const way = await wayTo('bed', floorPlan(door, { bed, kitchen }, { load_bay: loadBay }));
    expect(way.widthM).toBe(0.52);
    expect(sidesOf(way)).toEqual(['kitchen', 'wall']);
  });

  test.each([
    { walkable: false, widthM: 0.6 },
    { walkable: true, widthM: 1 },
  ])('a part of the van unless one may step on it: $walkable', async ({ walkable, widthM }) => {
    const post = `{size: {length: 200 mm, width: 1400 mm, height: 300 mm}, at: {from_front: 1700 mm, from_left: 0 mm, above_floor: 0 mm}, walkable: ${walkable}}`;
    const way = await wayTo('bed', floorPlan(door, { bed }, { obstructions: `{sill: ${post}}` }));
    expect(way.widthM).toBe(widthM);
    if (!walkable) expect(sidesOf(way)).toEqual(['sill', 'wall']);
  });

  test('neither what is on the roof nor under the floor', async () => {
    const outside: Record<string, Standing> = {
      modules: { at: [1700, 0, 2000], size: [300, 2000, 40] },
      tank: { at: [1700, 0, -300], size: [300, 2000, 300] },
    };
    expect((await wayTo('bed', floorPlan(door, { bed, ...outside }))).widthM).toBe(1);
  });
});

describe('what is built in', () => {
  // The kitchen runs along the right wall, 500 mm deep; a table leaves 450 mm in front of its rear part.
  const kitchen: Standing = { at: [0, 1500], size: [2400, 500, 860] };
  const cupboard: Standing = { at: [1900, 0], size: [400, 1050, 1800] };
  const inKitchen = (fromFront: number): Standing => ({
    at: [fromFront, 100, 700],
    size: [400, 300, 100],
    more: 'is: cooker, in: kitchen unit',
  });

  test.each([
    { at: 200, widthM: 1 },
    { at: 1950, widthM: 0.45 },
  ])('is reached in front of where it is, at $at mm', async ({ at, widthM }) => {
    const text = floorPlan(door, { 'kitchen unit': kitchen, cupboard, hob: inKitchen(at) });
    expect((await wayTo('hob', text)).widthM).toBe(widthM);
  });

  test('is reached over a worktop that sticks out', async () => {
    const worktop: Standing = { at: [0, -30, 0], size: [2400, 530, 30], more: 'on: kitchen unit' };
    const text = floorPlan(door, { 'kitchen unit': kitchen, worktop, cupboard, hob: inKitchen(1950) });
    // `from_left` of a thing that stands on another counts from that one's left, `above_floor` from its top.
    const way = await wayTo('hob', text);
    expect(way.widthM).toBe(0.42);
    expect(sidesOf(way)).toEqual(['cupboard', 'worktop']);
  });

  test('is reached at the cupboard that it is in', async () => {
    const wardrobe: Standing = { at: [1500, 0], size: [600, 600, 1800] };
    const toilet: Standing = { at: [100, 100, 0], size: [400, 400, 350], more: 'is: toilet, in: wardrobe' };
    const way = await wayTo('toilet', floorPlan(door, { wardrobe, toilet }));
    expect(way.widthM).toBe(1);
  });

  // The mattress stands back from the edge of its frame.
  test('a mattress is reached over the edge of its frame', async () => {
    const frame: Standing = { at: [2500, 0], size: [1500, 2000, 400] };
    const mattress: Standing = { at: [50, 50, 0], size: [1400, 1900, 100], more: 'is: bed, on: frame' };
    expect((await wayTo('mattress', floorPlan(door, { frame, mattress }))).widthM).toBe(1);
  });

  // The wall stands across, and only the front part of the kitchen is before it.
  test('is not reached from farther away than an arm', async () => {
    const wall: Standing = { at: [1600, 0], size: [50, 1500, 1800] };
    const long: Standing = { at: [700, 1500], size: [1700, 500, 860] };
    const way = (fromFront: number) =>
      wayTo('hob', floorPlan(door, { 'kitchen unit': long, wall, hob: inKitchen(fromFront) }));
    expect((await way(1250)).widthM).toBe(0);
    expect((await way(300)).widthM).toBe(1);
  });
});

describe('doors', () => {
  test('without one there are no ways', async () => {
    expect(await waysIn(floorPlan({}, { bed }))).toBeUndefined();
    const hatch =
      'in: ceiling, kind: door, length: 500 mm, width: 500 mm, at: {from_front: 1 m, from_left: 1 m}';
    expect(await waysIn(floorPlan({ hatch }, { bed }))).toBeUndefined();
  });

  test('from outside nobody has come in to a bed that fills the doorway', async () => {
    expect((await wayTo('bed', floorPlan({ 'rear doors': rearDoors }, { bed }))).widthM).toBe(0);
  });

  test('each thing is reached by the better one', async () => {
    const twins: Record<string, Standing> = {
      left: { at: [2000, 0], size: [2000, 700, 500], more: 'is: bed' },
      right: { at: [2000, 1300], size: [2000, 700, 500], more: 'is: bed' },
      wall: { at: [1800, 0], size: [50, 1700, 1800] },
    };
    const ways = await waysIn(floorPlan({ 'side door': sideDoor, 'rear doors': rearDoors }, twins));
    expect(ways?.from).toBe('rear doors');
    expect(ways?.ways.map(({ to, from, widthM }) => [to, from, widthM])).toEqual([
      ['left', 'rear doors', 0.6],
      ['right', 'rear doors', 0.6],
    ]);
  });

  test('the thickness of the rear doors comes off the floor', async () => {
    const loadBay =
      '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, rear_door_thickness: 100 mm}';
    const table: Standing = { at: [3000, 0], size: [400, 1500, 700] };
    const seat: Standing = { at: [3000, 0], size: [200, 200, 400], more: 'is: seat' };
    const lectern: Standing = { at: [3400, 0], size: [100, 200, 900], more: 'is: table' };
    const text = floorPlan(door, { table, seat, lectern }, { load_bay: loadBay });
    // 4000 mm less 3400 less the doors' 100, beside the table's rear corner; the way to it leads along the right.
    expect((await wayTo('lectern', text)).widthM).toBe(0.5);
  });
});

test('things too thin for the geometry are reached like any others', async () => {
  const text = plan(`fixtures:
  post: {mass: 1 kg, is: toilet, size: {length: 5 mm, width: 0.000001 mm, height: 1.5 m}, at: {from_front: 1 mm, from_left: 0.6 m}}
  box: {mass: 1 kg, in: post, size: {length: 0.1 m, width: 30 mm, height: 0.5 m}, at: {from_front: 1 m, from_right: 3 m}}
  unit: {mass: 1 kg, size: {length: 2 m, width: 10 mm, height: 0.3 m}, at: {from_front: 0.7 m, from_right: 1.2 m}}
  foil: {mass: 1 kg, is: sink, in: unit, size: {length: 1.5 m, width: 0.000001 mm, height: 0.01 mm}, at: {from_rear: -0.3 m, from_left: 1.2 m}}`);
  const { layout } = await buildOf(text);
  if (!layout) throw new Error('there is no layout');
  const floor = walkingFloor(layout);
  for (const goal of goalsOf(layout)) expect(reachedAt(targetOf(goal), floor).length).toBeGreaterThan(0);
});
