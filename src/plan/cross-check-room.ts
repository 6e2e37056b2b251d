import { crossesItself } from '../calc/space/clip.ts';
import type { Complain, Path, Standing } from './cross-check.ts';
import { nearestOf } from './nearest.ts';
import { quote } from './quote.ts';
import type { Plan } from './schema.ts';

/** Sums of millimetres miss by less than this. */
const slackM = 1e-9;

/** The room that a thing takes: its shape, and what its box must be for it. */
export function checkRoom(name: string, thing: Standing, path: Path, complain: Complain): void {
  checkShape(name, thing, path, complain);
  checkFixings(thing.fixings, path, complain);
}

function checkShape(
  name: string,
  { shape, outline, cut_out: cutOut, size }: Standing,
  path: Path,
  complain: Complain,
): void {
  const ways = [shape === 'cylinder' ? shape : undefined, outline, cutOut].filter((way) => way !== undefined);
  if (ways.length > 1)
    complain(path, `${quote(name)} gives its shape in more than one way`, {
      expected: 'one of `shape: cylinder`, `outline` and `cut_out`',
    });
  if (ways.length !== 1) return;
  const [lengthM, widthM] = [size?.length?.value, size?.width?.value];
  if (lengthM === undefined || widthM === undefined)
    complain(path, `the box that ${quote(name)} goes into is not known`, {
      expected: '`length` and `width` in its `size`',
      about: 'size',
    });
  else if (shape === 'cylinder' && Math.abs(lengthM - widthM) > slackM)
    complain([...path, 'size'], `${quote(name)} is a cylinder, but not as wide as it is long`, {
      expected: 'its diameter as `length` and as `width`; it stands upright',
    });
  else if (cutOut && (cutOut.length.value > lengthM - slackM || cutOut.width.value > widthM - slackM))
    complain([...path, 'cut_out'], `what is cut out leaves nothing of ${quote(name)}`, {
      expected: 'a smaller `length` and `width` than in its `size`',
    });
  else if (outline) checkOutline(name, outline, lengthM, widthM, [...path, 'outline'], complain);
}

function checkOutline(
  name: string,
  outline: NonNullable<Standing['outline']>,
  lengthM: number,
  widthM: number,
  path: Path,
  complain: Complain,
): void {
  const points = outline.map(({ from_front, from_left }) => ({ xM: from_front.value, yM: from_left.value }));
  const isOutside = (at: number, mostM: number) => at < -slackM || at > mostM + slackM;
  const outside = points.findIndex(({ xM, yM }) => isOutside(xM, lengthM) || isOutside(yM, widthM));
  if (outside >= 0)
    complain([...path, outside], `this corner of ${quote(name)} lies outside its size`, {
      expected: "places from the front left corner of the thing's own box, within its `length` and `width`",
    });
  else if (enclosesNothing(points))
    complain(path, `the outline of ${quote(name)} encloses nothing`, {
      expected: 'corners that do not lie in one line',
    });
  else if (crossesItself(points))
    complain(path, `the outline of ${quote(name)} crosses itself`, {
      expected: 'the corners in the order in which one walks round it',
    });
}

/** Less than a square millimetre. */
function enclosesNothing(points: readonly { readonly xM: number; readonly yM: number }[]): boolean {
  const twice = points.reduce((sum, { xM, yM }, index) => {
    const next = points[(index + 1) % points.length];
    return next ? sum + xM * next.yM - next.xM * yM : sum;
  }, 0);
  return Math.abs(twice) < 2e-6;
}

function checkFixings(fixings: Standing['fixings'], path: Path, complain: Complain): void {
  if (fixings && !Number.isInteger(fixings.count.value))
    complain([...path, 'fixings', 'count'], 'a count is a whole number', { expected: 'such as `4`' });
}

type Fixture = NonNullable<Plan['fixtures']>[string];
type Opens = NonNullable<Fixture['opens']>[string];

/** The keys that each kind of opening has, besides `kind` and `side`. */
const keysOfOpening = {
  door: ['hinge', 'width', 'from_left', 'height', 'above_floor'],
  drawer: ['travel', 'width', 'from_left', 'height', 'above_floor'],
  lid: ['depth', 'width', 'from_left'],
} as const;
const openingKeys = ['hinge', 'travel', 'depth', 'width', 'from_left', 'height', 'above_floor'] as const;

export function checkOpens(name: string, { opens, size }: Fixture, path: Path, complain: Complain): void {
  for (const [opening, given] of Object.entries(opens ?? {})) {
    const at = [...path, 'opens', opening];
    const known: readonly string[] = keysOfOpening[given.kind];
    const alien = openingKeys.find((key) => given[key] !== undefined && !known.includes(key));
    if (alien !== undefined)
      complain([...at, alien], `a ${given.kind} has no ${alien}`, {
        expected: `for a ${given.kind}, of ${known.join(', ')}`,
        onKey: true,
      });
    else if (size?.length && size.width && size.height)
      checkExtent(name, opening, given, size.length.value, size.width.value, size.height.value, at, complain);
  }
}

function checkExtent(
  name: string,
  opening: string,
  given: Opens,
  lengthM: number,
  widthM: number,
  heightM: number,
  at: Path,
  complain: Complain,
): void {
  const alongVan = given.side === 'front' || given.side === 'rear';
  const [faceM, behindM] = alongVan ? [widthM, lengthM] : [lengthM, widthM];
  const fromLeftM = given.from_left?.value ?? 0;
  const acrossM = given.width?.value ?? faceM;
  const bottomM = given.above_floor?.value ?? 0;
  const topM = given.height ? bottomM + given.height.value : heightM;
  if (fromLeftM < -slackM || fromLeftM + acrossM > faceM + slackM)
    complain(at, `${quote(opening)} reaches beyond the side of ${quote(name)}`, {
      expected:
        '`from_left` and `width` together within that side; without `from_left`, a `width` of its own',
    });
  else if (bottomM < -slackM || topM > heightM + slackM || topM <= bottomM)
    complain(at, `${quote(opening)} reaches above or below ${quote(name)}`, {
      expected: "`above_floor` (from the thing's own foot) and `height` together within its height",
    });
  else if (given.kind === 'lid' && given.depth && given.depth.value > behindM + slackM)
    complain([...at, 'depth'], `${quote(opening)} is deeper than ${quote(name)}`, {
      expected: 'from its hinge to its free edge, within the thing',
    });
}

/** Words for the sides from which a thing is reached that are not openings of the van. */
const otherSides = ['inside', 'underneath'];

export function checkService(plan: Plan, things: readonly Entry[], complain: Complain): void {
  const sides = [...Object.keys(plan.van.openings ?? {}), ...otherSides];
  const nearestSide = nearestOf(sides);
  for (const { section, name, thing } of things) {
    const from = thing.service_from;
    if (from === undefined || sides.includes(from)) continue;
    complain([section, name, 'service_from'], `${quote(from)} is not an opening of this van`, {
      expected: `one of ${sides.join(', ')}`,
      meant: nearestSide(from),
      about: from,
    });
  }
}

interface Entry {
  readonly section: string;
  readonly name: string;
  readonly thing: Standing;
}

/** The shape of the load bay. */
export function checkBay({ van: { load_bay: bay } }: Plan, complain: Complain): void {
  const path = ['van', 'load_bay'];
  const twice = (values: readonly number[]) => values.findIndex((value, at) => values.indexOf(value) < at);
  const width = twice((bay?.profile ?? []).map(({ above_floor }) => above_floor.value));
  if (width >= 0)
    complain([...path, 'profile', width], 'the load bay has two widths at one height', {
      expected: 'one `width` for each `above_floor`',
    });
  const height = twice((bay?.heights ?? []).map(({ from_front }) => from_front.value));
  if (height >= 0)
    complain([...path, 'heights', height], 'the load bay has two heights at one place', {
      expected: 'one `height` for each `from_front`',
    });
  if (bay?.rear_door_thickness && bay.rear_door_thickness.value > bay.length.value - slackM)
    complain([...path, 'rear_door_thickness'], 'the rear doors are thicker than the load bay is long', {
      expected: 'such as `60 mm`',
    });
}
