import { plan } from './test-van.ts';

/** Where a box stands (from the front, from the left, above the floor) and how large it is, all in millimetres. */
export interface Standing {
  readonly at: readonly [number, number, number?];
  readonly size: readonly [length: number, width: number, height: number];
  /** More keys of the thing, as YAML. */
  readonly more?: string;
}

/** The test van, 4 m × 2 m × 2 m inside, with these openings and boxes in it. */
export function floorPlan(
  openings: Readonly<Record<string, string>>,
  boxes: Readonly<Record<string, Standing>>,
  van: Readonly<Record<string, string>> = {},
  rest = '',
): string {
  const holes = Object.entries(openings).map(([name, keys]) => `${name}: {${keys}}`);
  const fixtures = Object.entries(boxes).map(([name, { at, size, more }]) => {
    const [front, left, above = 0] = at;
    const [length, width, height] = size;
    const where = `{from_front: ${front} mm, from_left: ${left} mm, above_floor: ${above} mm}`;
    return `  ${name}: {mass: 1 kg, ${more === undefined ? '' : `${more}, `}size: {length: ${length} mm, width: ${width} mm, height: ${height} mm}, at: ${where}}`;
  });
  const things = fixtures.length > 0 ? ['fixtures:', ...fixtures].join('\n') : '';
  return plan(`${things}\n${rest}`, {
    ...(holes.length > 0 && { openings: `{${holes.join(', ')}}` }),
    ...van,
  });
}

/** A sliding door of 1 m, from 500 to 1500 mm behind the front. */
export const sideDoor =
  'in: left wall, kind: door, length: 1000 mm, height: 1800 mm, at: {from_front: 500 mm}';
export const rearDoors =
  'in: rear doors, kind: door, width: 1600 mm, height: 1800 mm, at: {from_left: 200 mm}';
