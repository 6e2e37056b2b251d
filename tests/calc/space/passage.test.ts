// The widest way through a van, on plans small enough to measure by hand.
import { describe, expect, test } from 'vitest';
import { disc } from '../../../src/calc/space/disc.ts';
import { type WalkingPlan, widestPassages } from '../../../src/calc/space/passage.ts';
import { spotTouching } from '../../../src/calc/space/passage-spot.ts';
import { type Outline, rectangle } from '../../../src/calc/space/plane.ts';

const bed = rectangle(2, 0, 1.2, 1.76);
const kitchen = rectangle(0.5, 0, 1.2, 0.55);
const wardrobe = rectangle(0.9, 1.2, 0.6, 0.56);
const van: WalkingPlan = {
  floor: rectangle(0, 0, 3.2, 1.76),
  obstacles: [bed, kitchen, wardrobe],
  start: rectangle(0.1, 1.7, 0.7, 0.06),
  goals: [bed],
  reachM: 0,
};
const widths = (plan: Partial<WalkingPlan>) =>
  widestPassages({ ...van, ...plan }).map(({ widthM }) => widthM);

describe('through a van', () => {
  test('to the bed between kitchen and wardrobe: 1.2 m − 0.55 m, and where', () => {
    const [toBed] = widestPassages(van);
    expect(toBed?.widthM).toBe(0.65);
    expect(toBed?.narrowest?.at.yM).toBeCloseTo(0.875, 6);
    // The bay between them is 0.9 to 1.5 m from the front.
    expect(toBed?.narrowest?.at.xM).toBeGreaterThanOrEqual(0.9);
    expect(toBed?.narrowest?.at.xM).toBeLessThanOrEqual(1.5);
    expect(toBed?.narrowest?.between.map(({ obstacle }) => obstacle).sort()).toEqual([1, 2]);
  });
  test('it is the true clearance: past two corners diagonally, not the bounding boxes', () => {
    // Corners 0.3 m apart lengthways and 0.4 m across: 0.5 m.
    const obstacles = [rectangle(1, 0, 0.5, 0.68), rectangle(1.8, 1.08, 0.5, 0.68)];
    const [passage] = widestPassages({ ...van, obstacles, goals: [rectangle(3.1, 0, 0.1, 1.76)] });
    expect(passage?.widthM).toBe(0.5);
    expect(passage?.narrowest?.at).toEqual({ xM: expect.closeTo(1.65, 6), yM: expect.closeTo(0.88, 6) });
  });
  test('of two ways the wider counts', () => {
    const island = rectangle(1, 0.5, 0.6, 0.5);
    const goals = [rectangle(3.1, 0, 0.1, 1.76)];
    const [passage] = widestPassages({ ...van, obstacles: [island], goals });
    expect(passage?.widthM).toBe(0.76);
    expect(passage?.narrowest?.at.yM).toBeCloseTo(1.38, 6);
  });
  test('beside the edge of the floor no obstacle is named', () => {
    const goals = [rectangle(3.1, 0, 0.1, 1.76)];
    const [passage] = widestPassages({ ...van, obstacles: [rectangle(1, 0, 0.6, 1.2)], goals });
    expect(passage?.widthM).toBe(0.56);
    const sides = passage?.narrowest?.between ?? [];
    expect(sides.map(({ obstacle }) => obstacle).sort()).toEqual([0, undefined]);
  });
  test('the way through the narrowest of equal stretches ends where the goal stands', () => {
    // The whole van is 1.76 m wide; the goal stands in its middle.
    const goal = rectangle(1.5, 0, 0.4, 0.4);
    const [passage] = widestPassages({
      ...van,
      obstacles: [],
      start: rectangle(0, 0, 0.02, 1.76),
      goals: [goal],
    });
    expect(passage?.widthM).toBe(1.76);
    expect(passage?.narrowest?.at.xM).toBeLessThan(1.9);
  });
  test('a dead end beside the bed does not keep it from being reached at its foot', () => {
    // 0.5 m beside the bed, 1.2 m before its foot; the longest stretch of places that touch it is in the dead end.
    const wide = rectangle(1.2, 0.5, 2, 1.26);
    expect(widths({ obstacles: [wide], goals: [wide] })).toEqual([1.2]);
    // The same where a disc just gets through a neck into the dead end, touching the bed all along.
    const along = rectangle(1.2, 0.6, 2, 1.16);
    const neck = [rectangle(1.5, 0, 0.02, 0.0995), rectangle(1.5, 0.5995, 0.02, 0.1)];
    expect(widths({ obstacles: [along, ...neck], goals: [along] })).toEqual([1.2]);
  });
  test('walled off: no way, no spot', () => {
    expect(widestPassages({ ...van, obstacles: [bed, rectangle(1.2, 0, 0.02, 1.76)] })).toEqual([
      { widthM: 0 },
    ]);
  });
  test('a start that is built over: no way', () => {
    expect(
      widths({ obstacles: [bed, rectangle(0, 1, 1.5, 0.76)], start: rectangle(0.4, 1.5, 0.3, 0.26) }),
    ).toEqual([0]);
  });
  test('a floor that is built over altogether', () => {
    expect(widths({ obstacles: [rectangle(-1, -1, 6, 4)], goals: [bed, kitchen] })).toEqual([0, 0]);
  });
  test('a gap of 8 mm is none', () => {
    expect(widths({ obstacles: [bed, rectangle(1.2, 0, 0.02, 1.752)] })).toEqual([0]);
    expect(widths({ obstacles: [bed, rectangle(1.2, 0, 0.02, 1.748)] })).toEqual([0.012]);
  });
  test('many goals at once, in their order', () => {
    expect(widths({ goals: [wardrobe, bed, kitchen] })).toEqual([0.9, 0.65, 0.9]);
  });
  test('outlines may overlap each other and the wall, be given twice and either way round', () => {
    const obstacles = [bed, kitchen, kitchen, [...wardrobe].reverse(), rectangle(0.6, -1, 0.5, 1.3)];
    expect(widths({ obstacles, floor: [...van.floor].reverse() })).toEqual([0.65]);
  });
});

describe('what counts as reached', () => {
  const toilet = rectangle(1, 0, 0.4, 0.4);
  const room: WalkingPlan = {
    floor: rectangle(0, 0, 3, 2),
    obstacles: [toilet],
    start: rectangle(0, 1.9, 3, 0.1),
    goals: [toilet],
    reachM: 0,
  };
  test('someone beside it has reached it, its own body notwithstanding', () => {
    // The greatest disc beside it touches two walls and the toilet's corner, 1.6 m from both: r = √2 · (1.6 − r).
    const radiusM = (1.6 * Math.SQRT2) / (1 + Math.SQRT2);
    const [passage] = widestPassages(room);
    expect(Math.abs((passage?.widthM ?? 0) - 2 * radiusM)).toBeLessThan(0.0005);
  });
  test('in a niche narrower than the disc, as far as it goes into the mouth', () => {
    // Niche 0.5 m wide, the toilet's front 0.1 m inside the mouth: sagitta 0.1 m over a chord of 0.5 m.
    const obstacles = [toilet, rectangle(0, 0, 0.95, 0.5), rectangle(1.45, 0, 1.55, 0.5)];
    const [passage] = widestPassages({ ...room, obstacles });
    const radiusM = (0.25 ** 2 + 0.1 ** 2) / (2 * 0.1);
    expect(Math.abs((passage?.widthM ?? 0) - 2 * radiusM)).toBeLessThan(0.004);
    expect(passage?.narrowest?.between[0]).toEqual({ at: expect.anything(), obstacle: 0 });
  });
  test('deeper in the niche the disc must fit into it', () => {
    const obstacles = [toilet, rectangle(0, 0, 0.95, 0.9), rectangle(1.45, 0, 1.55, 0.9)];
    expect(widestPassages({ ...room, obstacles })[0]?.widthM).toBe(0.5);
    // With an arm's reach the disc stays outside: it fills the 1.1 m before the niche and dips into the mouth.
    const widthM = widestPassages({ ...room, obstacles, reachM: 0.5 })[0]?.widthM ?? 0;
    const sagittaM = widthM / 2 - Math.sqrt((widthM / 2) ** 2 - 0.25 ** 2);
    expect(widthM).toBeGreaterThan(1.1);
    expect(Math.abs(widthM - 1.1 - sagittaM)).toBeLessThan(0.001);
  });
  test('nobody reaches through a partition, however thin, but round its end', () => {
    const partition = rectangle(0, 0.5, 3, 0.012);
    expect(widestPassages({ ...room, obstacles: [toilet, partition], reachM: 0.3 })[0]?.widthM).toBe(0);
    const shorter = rectangle(0, 0.5, 1.5, 0.012);
    const round = widestPassages({ ...room, obstacles: [toilet, shorter], reachM: 0.3 })[0]?.widthM ?? 0;
    expect(round).toBeGreaterThan(0.5);
    const touching = widestPassages({ ...room, obstacles: [toilet, shorter] })[0]?.widthM ?? 0;
    expect(round).toBeGreaterThan(touching);
  });
  test('a room so small that all of it is within reach of the start and of the goal', () => {
    const floor = rectangle(0, 0, 1, 1);
    const start = rectangle(0, 0, 0.5, 1);
    const goals = [rectangle(0.5, 0, 0.5, 1)];
    expect(widestPassages({ floor, obstacles: [], start, goals, reachM: 0.3 })[0]?.widthM).toBe(1);
  });
  test('a goal beside the floor, in the wall', () => {
    const goals = [rectangle(1, -0.2, 0.4, 0.2)];
    expect(widestPassages({ ...room, obstacles: [], goals })[0]?.widthM).toBe(2);
  });
});

describe('hollows and walls', () => {
  test('into a horseshoe by its mouth, not through its back', () => {
    // A cubicle 0.9 m square inside, walls of 30 mm, a doorway of 0.48 m; the seat in it stands at the back.
    // It stands free, so that it is one obstacle with a hollow.
    const cubicle: Outline = [
      { xM: 1, yM: 0.1 },
      { xM: 1.96, yM: 0.1 },
      { xM: 1.96, yM: 1.06 },
      { xM: 1.73, yM: 1.06 },
      { xM: 1.73, yM: 1.03 },
      { xM: 1.93, yM: 1.03 },
      { xM: 1.93, yM: 0.13 },
      { xM: 1.03, yM: 0.13 },
      { xM: 1.03, yM: 1.03 },
      { xM: 1.25, yM: 1.03 },
      { xM: 1.25, yM: 1.06 },
      { xM: 1, yM: 1.06 },
    ];
    const seat = rectangle(1.2, 0.2, 0.5, 0.3);
    const [passage] = widestPassages({ ...van, obstacles: [cubicle, seat], goals: [seat] });
    expect(passage?.widthM).toBe(0.48);
    expect(passage?.narrowest?.at.xM).toBeCloseTo(1.49, 6);
    expect(passage?.narrowest?.between.map(({ obstacle }) => obstacle)).toEqual([0, 0]);
  });
  test('reach does not go through a wall that the floor leaves out', () => {
    // The floor is cut by a slot of 20 mm from the left wall to 0.1 m from the right one.
    const floor: Outline = [
      { xM: 0, yM: 0 },
      { xM: 1.5, yM: 0 },
      { xM: 1.5, yM: 1.9 },
      { xM: 1.52, yM: 1.9 },
      { xM: 1.52, yM: 0 },
      { xM: 3, yM: 0 },
      { xM: 3, yM: 2 },
      { xM: 0, yM: 2 },
    ];
    const goal = rectangle(1.6, 0.5, 0.3, 0.3);
    const plan = { floor, obstacles: [goal], start: rectangle(0, 0, 0.05, 2), goals: [goal], reachM: 0.3 };
    expect(widestPassages(plan)[0]?.widthM).toBe(0.1);
  });
  test('where touching a goal decides, the other side is not the goal itself', () => {
    const seat = rectangle(0, 0, 0.4, 0.5);
    const [passage] = widestPassages({ ...van, obstacles: [bed, kitchen, wardrobe, seat], goals: [seat] });
    // Against the front wall, the seat and the corner of the kitchen at (0.5, 0.55).
    expect(passage?.narrowest?.between.map(({ obstacle }) => obstacle)).toEqual([3, 1]);
    const radiusM = (passage?.widthM ?? 0) / 2;
    expect(Math.abs(Math.hypot(0.5 - radiusM, 0.5 + radiusM - 0.55) - radiusM)).toBeLessThan(0.0005);
  });
});

test('what a disc that touches something is stuck against is never the thing itself', () => {
  const seat = rectangle(0, 0, 0.4, 0.5);
  const post = rectangle(0.4, 1.2, 0.1, 0.1);
  // 0.3 m from the seat, 0.4 m from the post.
  const spot = spotTouching(seat, { xM: 0.4, yM: 0.8 }, [van.floor, seat, post], [seat, post]);
  expect(spot.between).toEqual([
    { at: { xM: 0.4, yM: 0.5 }, obstacle: 0 },
    { at: { xM: 0.4, yM: 1.2 }, obstacle: 1 },
  ]);
});

describe('more parts than are looked at all at once', () => {
  // 400 pegs of 10 mm in rows in one corner: they leave the ways elsewhere as they are.
  const pegs = Array.from({ length: 400 }, (_, index) =>
    rectangle(0.02 + 0.02 * (index % 20), 0.02 + 0.02 * Math.floor(index / 20), 0.01, 0.01),
  );
  test('a way wider than the first guesses', () => {
    expect(widths({ obstacles: [bed, kitchen, ...pegs] })).toEqual([1.21]);
    expect(widths({ obstacles: [bed, kitchen, wardrobe, ...pegs] })).toEqual([0.65]);
  });
  test('between round things whose bounds are nearer than they are', () => {
    // Centres 0.7071 m apart both ways, radius 0.3 m: 0.4 m between them, 0.15 m between their bounds. Posts stand 20 mm
    // from them at the walls.
    const tables = [
      disc({ xM: 0.9, yM: 0.5 }, 0.3),
      disc({ xM: 0.9 + Math.SQRT1_2, yM: 0.5 + Math.SQRT1_2 }, 0.3),
    ];
    const walls = [rectangle(0.89, 0, 0.02, 0.18), rectangle(1.597, 1.527, 0.02, 0.233)];
    const obstacles = [...tables, ...walls, bed, ...pegs];
    const [few] = widths({ obstacles: [...tables, ...walls, bed] });
    const [many] = widths({ obstacles });
    expect(few).toBeCloseTo(0.4, 3);
    expect(many).toBe(few);
  });
});

describe('other shapes', () => {
  const hall: WalkingPlan = {
    floor: rectangle(0, 0, 4, 1),
    obstacles: [],
    start: rectangle(0, 0, 0.05, 1),
    goals: [rectangle(3.95, 0, 0.05, 1)],
    reachM: 0,
  };
  test('past a round post: as wide as the gap beside it', () => {
    const [passage] = widestPassages({ ...hall, obstacles: [disc({ xM: 2, yM: 0.4 }, 0.1)] });
    expect(passage?.widthM).toBeCloseTo(0.5, 3);
    expect(passage?.narrowest?.at).toEqual({ xM: expect.closeTo(2, 2), yM: expect.closeTo(0.75, 3) });
  });
  test('round the corner of an L-shaped floor', () => {
    const floor: Outline = [
      { xM: 0, yM: 0 },
      { xM: 2, yM: 0 },
      { xM: 2, yM: 2 },
      { xM: 1.3, yM: 2 },
      { xM: 1.3, yM: 0.8 },
      { xM: 0, yM: 0.8 },
    ];
    const goals = [rectangle(1.3, 1.95, 0.7, 0.05)];
    const [passage] = widestPassages({ ...hall, floor, start: rectangle(0, 0, 0.05, 0.8), goals });
    expect(passage?.widthM).toBe(0.7);
  });
  test('between walls that close in, it is the touching of the goal that decides', () => {
    const floor: Outline = [
      { xM: 0, yM: 0 },
      { xM: 4, yM: 0.4 },
      { xM: 4, yM: 0.6 },
      { xM: 0, yM: 1 },
    ];
    const [passage] = widestPassages({ ...hall, floor, goals: [rectangle(3.9, 0.4, 0.1, 0.2)] });
    // A disc that just touches x = 3.9 between walls that lean by atan 0.1, meeting at x = 5, y = 0.5.
    const sine = Math.sin(Math.atan(0.1));
    const radiusM = (1.1 * sine) / (1 - sine);
    expect(Math.abs((passage?.widthM ?? 0) - 2 * radiusM)).toBeLessThan(0.001);
  });
});

test('what it refuses', () => {
  expect(() => widestPassages({ ...van, reachM: -0.1 })).toThrow(/reach must not be less than 0/);
  expect(() => widestPassages({ ...van, floor: [] })).toThrow(RangeError);
  expect(() => widestPassages({ ...van, start: [] })).toThrow(/start must have at least three corners/);
  expect(() => widestPassages({ ...van, goals: [[]] })).toThrow(/goal must have at least three corners/);
  expect(() => widestPassages({ ...van, obstacles: [rectangle(50, 0, 1, 1)] })).toThrow(/40 m/);
});
