import type { Layout, Solid, UseSpace } from '../../build/layout.ts';
import { difference, overlap, thickerThan } from '../../calc/space/clip.ts';
import { boundsOf, type Outline, rectangle, TOUCH_TOLERANCE_M } from '../../calc/space/plane.ts';
import { type Prism, prismOverlap } from '../../calc/space/prism.ts';
import type { Citation } from '../../catalogue/citation.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type Need, type RuleText } from '../../engine/rule.ts';
import { type Beyond, beyondShell, closedShell, shellInWords, solidParts } from '../beyond-shell.ts';
import { bodyCaution, fitCaution } from '../cautions.ts';
import { mendInWords } from '../clearing.ts';
import { listed, shapesMethod } from '../fit-finding.ts';
import { layout, some } from '../needs.ts';
import { outOfRoom } from '../out-of-room.ts';
import { downToMillimetre } from '../whole-millimetres.ts';
import { useSpaceSteps } from '../working/use-space.ts';

/** Feet pass over what is lower, heads under what is higher. */
const HEIGHTS = { bottomM: 0.1, topM: 1.6 } as const;

/** Something at the end of the room that takes no more of its width than this only narrows it a little. */
const EDGE_M = 0.1;

/** Where no disc of this diameter is left, nobody can stand. */
const NOTHING_LEFT_M = 0.2;

const heightsPractice: Citation = {
  title: `A person who stands and moves takes the room between ${HEIGHTS.bottomM} m and ${HEIGHTS.topM} m above the floor; no source`,
  provenance: 'common practice',
};
const ownChoice: Citation = {
  title: `Less than a circle of ${NOTHING_LEFT_M * 1000} mm on the floor is no room at all; what takes up to ${EDGE_M * 1000} mm at one end of the room, such as a wall that leans in, only narrows it`,
  provenance: 'own choice',
};

const text: RuleText = {
  id: 'movement.use-space',
  topic: 'movement',
  title: 'room to use things',
  why: 'A cupboard that nobody can stand before, or a toilet without room for knees, is there but cannot be used.',
  formula: 'depth left = least distance from the face to what stands in the room before it, m',
  sources: [heightsPractice, ownChoice, ...shapesMethod],
  cautions: [fitCaution, bodyCaution],
  fix: 'Leave more room before the thing, or use it from another side.',
  place: ['fixtures'],
};

const given: Need<readonly UseSpace[]> = some('fixtures.NAME.needs_space', ({ useSpaces }) => useSpaces);

export default defineRule({
  ...text,
  needs: {
    layout,
    spaces: given,
  },
  check: ({ facts: { layout: laidOut, spaces } }) => ({
    findings: spaces.map((space) => findingOf(space, laidOut)),
  }),
  work: ({ facts: { layout: laidOut, spaces } }, { subject }) => {
    const space = spaces.find((each) => subjectOf(each) === subject);
    return space && useSpaceSteps(space, nearestFirst(space, laidOut), laidOut);
  },
});

const subjectOf = ({ of, side }: UseSpace): string => `${of}, ${side} side`;

const nearestFirst = (space: UseSpace, laidOut: Layout): readonly Taker[] =>
  takersOf(space, laidOut).sort((a, b) => a.leavesM - b.leavesM);

/** Something that takes part of the room. */
interface Taker {
  readonly name: string;
  readonly solid?: Solid;
  /** How much depth it leaves before it, and over what width. */
  readonly leavesM: number;
  readonly widthM: number;
  readonly pieces: readonly Outline[];
  /** It is a door of the van, which can be opened. */
  readonly opens?: true;
}

function findingOf(space: UseSpace, laidOut: Layout): Finding {
  const { of, side, depthM } = space;
  const takers = nearestFirst(space, laidOut);
  const [worst] = takers;
  const leftM = worst?.leavesM ?? depthM;
  const isShut = worst !== undefined && !canStand(space, takers);
  const where = say`the ${length(depthM)} that ${of} needs free on its ${side} side`;
  return judge({
    rule: text,
    subject: subjectOf(space),
    path: space.path,
    kind: 'length',
    measured: { value: leftM, standard: 0 },
    limit: depthM,
    sense: 'at least',
    broken: isShut ? 'fail' : 'warn',
    reason: worst
      ? say`${reasonOf(space, worst, where)}${alsoInTheWay(takers.slice(1))}${isShut ? ' Nobody can stand there.' : ''}`
      : say`Nothing takes any of ${where}.`,
    remedy: () => worst && remedyOf(space, worst, takers.slice(1), laidOut),
  });
}

function reasonOf(space: UseSpace, { name, leavesM, widthM, opens }: Taker, where: Phrase): Phrase {
  if (opens) return say`Part of ${where} is outside ${name}: it is there only with that open.`;
  const faceM = widthOf(space);
  const over =
    widthM < faceM - TOUCH_TOLERANCE_M ? say`, over ${length(widthM)} of its ${length(faceM)} width` : '';
  return say`${name} leaves ${length(leavesM)} of ${where}${over}.`;
}

const alsoInTheWay = (takers: readonly Taker[]): Phrase =>
  takers.length > 0
    ? say` In it ${takers.length === 1 ? 'stands' : 'stand'} also ${listed(takers.map(({ name }) => [name]))}.`
    : [];

function remedyOf(
  { of, side, outline }: UseSpace,
  worst: Taker,
  others: readonly Taker[],
  laidOut: Layout,
): Phrase {
  const enough =
    worst.leavesM > TOUCH_TOLERANCE_M
      ? say` If what is left is enough for you, write \`${side}\` as ${length(downToMillimetre(worst.leavesM))}.`
      : [];
  const mend = worst.solid && outOfRoom(worst.solid, { outline, ...HEIGHTS }, laidOut);
  const stays = others.find((other) => !other.solid && !other.opens);
  if (worst.solid && stays)
    return say`Turn ${of} round or find another place for it: ${stays.name} cannot give way.${enough}`;
  const things = others.filter(({ solid }) => solid);
  const then = things.length > 0 ? say` Then see to ${listed(things.map(({ name }) => [name]))}.` : [];
  if (mend) return say`${mendInWords(mend)}${then}${enough}`;
  if (worst.opens) return say`Keep the room before ${worst.name} free outside.${enough}`;
  return say`Turn ${of} round or find another place for it.${enough}`;
}

const alongVan = ({ side }: UseSpace): boolean => side === 'front' || side === 'rear';

const widthOf = (space: UseSpace): number => extentAcross(space, space.outline);

function extentAcross(space: UseSpace, outline: Outline): number {
  const { leastXM, mostXM, leastYM, mostYM } = boundsOf(outline);
  return alongVan(space) ? mostYM - leastYM : mostXM - leastXM;
}

function takersOf(space: UseSpace, laidOut: Layout): Taker[] {
  const room: Prism = { outline: space.outline, ...HEIGHTS };
  const own = laidOut.solids.find(({ name }) => name === space.of);
  const things = laidOut.solids
    .filter(({ whereabouts }) => whereabouts === 'inside')
    .filter(({ name, hosts }) => name !== space.of && !hosts.includes(space.of) && !own?.hosts.includes(name))
    // What is inside something else takes no room of its own.
    .filter((solid) => !isHidden(solid, laidOut))
    .flatMap((solid) =>
      takes(space, room, solid.prism).map((taken) => ({ ...taken, solid, name: solid.name })),
    );
  const parts = solidParts(laidOut).flatMap(({ name, prism }) =>
    takes(space, room, prism).map((taken) => ({ ...taken, name })),
  );
  const walls = beyondShell(room, laidOut, { anyHeight: true })
    .filter(({ face }) => face !== 'top')
    .flatMap((beyond) => wallTaker(space, room, beyond, laidOut));
  return [...things, ...parts, ...walls].filter((taker) => !isAtEdge(space, taker));
}

function isAtEdge(space: UseSpace, { pieces }: Taker): boolean {
  const room = boundsOf(space.outline);
  const taken = boundsOf(pieces.flat());
  const [from, to, roomFrom, roomTo] = alongVan(space)
    ? [taken.leastYM, taken.mostYM, room.leastYM, room.mostYM]
    : [taken.leastXM, taken.mostXM, room.leastXM, room.mostXM];
  const most = Math.min(EDGE_M, (roomTo - roomFrom) / 4) + TOUCH_TOLERANCE_M;
  return to - roomFrom <= most || roomTo - from <= most;
}

const isHidden = ({ hosts, isInside, box }: Solid, { solids }: Layout): boolean => {
  const host = isInside ? solids.find(({ name }) => name === hosts[0]) : undefined;
  return (
    host !== undefined &&
    box.leastXM >= host.box.leastXM - TOUCH_TOLERANCE_M &&
    box.mostXM <= host.box.mostXM + TOUCH_TOLERANCE_M &&
    box.leastYM >= host.box.leastYM - TOUCH_TOLERANCE_M &&
    box.mostYM <= host.box.mostYM + TOUCH_TOLERANCE_M &&
    box.topM <= host.box.topM + TOUCH_TOLERANCE_M
  );
};

type Taken = Pick<Taker, 'leavesM' | 'widthM' | 'pieces'>;

function takes(space: UseSpace, room: Prism, prism: Prism): Taken[] {
  if (!prismOverlap(room, prism)) return [];
  return taken(space, overlap(room.outline, prism.outline));
}

function taken(space: UseSpace, pieces: readonly Outline[]): Taken[] {
  if (pieces.length === 0) return [];
  const corners = pieces.flat();
  return [{ pieces, leavesM: distanceFromFace(space, corners), widthM: extentAcross(space, corners) }];
}

function distanceFromFace({ side, outline }: UseSpace, corners: Outline): number {
  const room = boundsOf(outline);
  const body = boundsOf(corners);
  const distances = {
    front: room.mostXM - body.mostXM,
    rear: body.leastXM - room.leastXM,
    left: room.mostYM - body.mostYM,
    right: body.leastYM - room.leastYM,
  };
  return Math.max(0, distances[side]);
}

/** Farther than anything in a plan. */
const farM = 15;

/** None where the room is so thin that nothing of it is left beyond the wall. */
function wallTaker(space: UseSpace, room: Prism, { face, byM, door }: Beyond, laidOut: Layout): Taker[] {
  const bounds = boundsOf(room.outline);
  const outside = {
    front: rectangle(-farM, -farM, farM, 2 * farM),
    rear: rectangle(closedShell(laidOut).lengthM, -farM, farM, 2 * farM),
    left: rectangle(-farM, bounds.leastYM, 2 * farM, byM),
    right: rectangle(-farM, bounds.mostYM - byM, 2 * farM, byM),
    top: room.outline,
  }[face];
  return taken(space, overlap(room.outline, outside)).map((found) => ({
    ...found,
    name: door?.name ?? shellInWords[face],
    ...(door && { opens: true }),
  }));
}

/** Whether anybody can stand in what is left of the room; through an open door they can. */
function canStand(space: UseSpace, takers: readonly Taker[]): boolean {
  const shut = takers.filter(({ opens }) => !opens).flatMap(({ pieces }) => pieces);
  if (shut.length === 0) return true;
  const leastM = Math.min(NOTHING_LEFT_M, space.depthM, widthOf(space)) - TOUCH_TOLERANCE_M;
  return thickerThan(difference([space.outline], shut), leastM);
}
