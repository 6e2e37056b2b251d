import { placedThings } from '../cross-check.ts';
import type { PlanDocument } from '../document.ts';
import { nearest } from '../nearest.ts';
import type { Problem } from '../problem.ts';
import { quote } from '../quote.ts';
import type { Place, Plan } from '../schema.ts';
import { writtenPath } from './plan-path.ts';
import { typedValue } from './scalar-text.ts';
import { type Edit, type Path, replaceEntry, setValue } from './set-value.ts';
import { type Distance, shifted } from './shifted.ts';

export const directions = ['rearwards', 'forwards', 'left', 'right', 'up', 'down'] as const;
export type Direction = (typeof directions)[number];

export interface Move {
  readonly direction: Direction;
  readonly by: Distance;
}

export type Moved =
  | {
      readonly text: string;
      readonly path: Path;
      /** Things that stand in or on it: measured from it, they move with it. */
      readonly along: readonly string[];
      /** Paths to other things of the same name, which stay. */
      readonly namesakes: readonly string[];
    }
  | { readonly problem: Problem };

interface Movable {
  readonly path: Path;
  readonly name: string;
  readonly at: Place | undefined;
}

/** The plan's text with a thing in another place; it must have been read as this plan. */
export function moveThing(
  text: string,
  plan: Plan,
  document: PlanDocument,
  written: string,
  moves: readonly Move[],
): Moved {
  const movables = movablesOf(plan);
  const wanted = written.trim();
  const [thing, ...others] = movables.filter(
    ({ path, name }) => name === wanted || writtenPath(path) === wanted,
  );
  if (!thing) return { problem: unknown(wanted, movables) };
  let edited = text;
  for (const move of moves) {
    const moved = moveOnce(edited, plan, document, thing, move);
    if ('problem' in moved) return moved;
    edited = moved.text;
  }
  return {
    text: edited,
    path: thing.path,
    along: goingAlong(plan, thing.name),
    namesakes: others.map(({ path }) => writtenPath(path)),
  };
}

/** Everything that has a place; first of all the things that are built in or taken along. */
function movablesOf(plan: Plan): Movable[] {
  const named = (path: Path, section: Readonly<Record<string, { at?: Place | undefined }>> | undefined) =>
    Object.entries(section ?? {}).map(([name, { at }]) => ({ path: [...path, name], name, at }));
  return [
    ...placedThings(plan).map(({ section, name, thing }) => ({ path: [section, name], name, at: thing.at })),
    ...named(['people', 'seats'], plan.people?.seats),
    ...named(['routes', 'points'], plan.routes?.points),
    ...named(['van', 'obstructions'], plan.van.obstructions),
    ...named(['van', 'openings'], plan.van.openings),
    ...named(['build_ups'], plan.build_ups),
  ];
}

const unknown = (written: string, movables: readonly Movable[]): Problem => {
  const meant = nearest(
    written,
    movables.map(({ name }) => name),
  );
  return {
    message: `${quote(written)} is nothing in this plan that has a place`,
    expected: 'the name of a fixture, a tank or a store; or a path, such as `routes.points.board`',
    ...(meant !== undefined && { meant }),
  };
};

type Sign = 1 | -1;
type Axis = 'lengthways' | 'sideways' | 'upwards';

/** Along x rearwards, y to the right, z upwards. */
const senses: Readonly<Record<Direction, { readonly axis: Axis; readonly sign: Sign }>> = {
  rearwards: { axis: 'lengthways', sign: 1 },
  forwards: { axis: 'lengthways', sign: -1 },
  right: { axis: 'sideways', sign: 1 },
  left: { axis: 'sideways', sign: -1 },
  up: { axis: 'upwards', sign: 1 },
  down: { axis: 'upwards', sign: -1 },
};

/** The keys that a place along an axis may be measured with; a distance from the far end grows the other way. */
const keys: Readonly<Record<Axis, readonly (readonly [keyof Place, Sign])[]>> = {
  lengthways: [
    ['from_front', 1],
    ['from_rear', -1],
  ],
  sideways: [
    ['from_left', 1],
    ['from_right', -1],
  ],
  upwards: [['above_floor', 1]],
};

function moveOnce(
  text: string,
  plan: Plan,
  document: PlanDocument,
  { path, name, at }: Movable,
  { direction, by }: Move,
): Edit {
  const { axis, sign } = senses[direction];
  const written = keys[axis].find(([key]) => at?.[key] !== undefined);
  if (written) {
    const [key, grows] = written;
    const place = [...path, 'at', key];
    const value = textAt(document.data, place);
    return set(text, place, shifted(value, sign === grows ? 1 : -1, by));
  }
  if (axis === 'sideways' && at?.centred) return fromTheMiddle(text, plan, path, sign, by);
  if (axis === 'upwards' && standsOnItsFoot(plan, path, name))
    return set(text, [...path, 'at', 'above_floor'], shifted('0 mm', sign, by));
  return { problem: placeOpen(document, path, axis) };
}

/** Without `above_floor`, these stand on the floor, or on or in what they are said to be. */
function standsOnItsFoot(plan: Plan, [section, key]: Path, name: string): boolean {
  const thing = placedThings(plan).find((each) => each.section === section && each.name === key)?.thing;
  return name !== '' && thing !== undefined && (thing.on !== undefined || thing.size?.height !== undefined);
}

function set(text: string, path: Path, value: string): Edit {
  const steps = path.map((key) => ({ key, quoted: true }));
  return setValue(text, steps, typedValue(value), { asNew: true });
}

/** What was centred has a distance from the left from now on. */
function fromTheMiddle(text: string, plan: Plan, path: Path, sign: Sign, by: Distance): Edit {
  const widths = widthsOf(plan, path);
  if (!widths) {
    return {
      problem: {
        message: `${quote(writtenPath(path))} is centred, and how far that is from the left cannot be worked out`,
        expected: `its own \`size.width\` and that of what it stands in; or \`storystick set\` with \`${writtenPath([...path, 'at', 'from_left'])}\` in the place of \`centred\``,
      },
    };
  }
  const middle = (widths.roomM - widths.ownM) / 2;
  const value = shifted(`${Number((middle * 1000).toFixed(6))} mm`, sign, by);
  return replaceEntry(text, [...path, 'at', 'centred'], 'from_left', typedValue(value));
}

function widthsOf(plan: Plan, [section, name]: Path): { roomM: number; ownM: number } | undefined {
  const things = placedThings(plan);
  const thing = things.find((each) => each.section === section && each.name === name)?.thing;
  const host = thing?.in ?? (thing?.on === 'floor' ? undefined : thing?.on);
  const room =
    host === undefined
      ? plan.van.load_bay?.width
      : things.find((each) => each.name === host)?.thing.size?.width;
  const own = thing?.size?.width;
  return room && own ? { roomM: room.value, ownM: own.value } : undefined;
}

function placeOpen(document: PlanDocument, path: Path, axis: Axis): Problem {
  const possible = keys[axis].map(([key]) => `\`${key}\``).join(' or ');
  const [first] = keys[axis].map(([key]) => key);
  const place = writtenPath([...path, 'at', first ?? '']);
  return {
    message: `${quote(writtenPath(path))} has no ${possible}: its place is still open, so it cannot be moved from there`,
    span: document.keySpanOf(path),
    expected: `a place first, such as \`storystick set plan.yaml '${place}' '1200 mm'\``,
  };
}

function textAt(data: unknown, path: Path): string {
  let inner = data;
  for (const key of path)
    inner =
      typeof inner === 'object' && inner !== null
        ? Object.entries(inner).find(([name]) => name === String(key))?.[1]
        : undefined;
  return typeof inner === 'string' ? inner : '';
}

function goingAlong(plan: Plan, name: string): string[] {
  const things = placedThings(plan);
  const along = new Set([name]);
  for (let before = 0; before < along.size; ) {
    before = along.size;
    for (const { name: each, thing } of things) if (along.has(thing.in ?? thing.on ?? '')) along.add(each);
  }
  along.delete(name);
  return [...along];
}
