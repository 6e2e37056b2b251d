import type { Layout, Sweep } from '../../build/layout.ts';
import { outOfShell, type ShellFace } from '../../calc/space/shell.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import { count, length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { closedShell, shellInWords } from '../beyond-shell.ts';
import { boxOf } from '../clearing.ts';
import { listed } from '../fit-finding.ts';
import { arcBeyond, type Clash, type Hit, type WayOut, waysOut } from '../sweep-hits.ts';
import { placePaths, placeText } from './box.ts';
import { beyondSteps } from './shell.ts';

/*
 * What doors, drawers, lids and seats sweep, and how far that goes into what is in their way.
 */

/** How many of all meet nothing. */
export function freeSteps(sweeps: readonly Sweep[], free: readonly Sweep[]): readonly Step[] {
  const stuck = sweeps.length - free.length;
  return [
    {
      what: 'What each sweeps as it opens, slides out or turns',
      sum: listed(free.map((sweep) => say`${sweep.name}: ${sizeText(sweep)}`)),
      paths: free.map(({ path }) => path),
    },
    {
      what: 'How many meet nothing, of all that open',
      sum: say`${count(sweeps.length)} − ${count(stuck)}`,
      result: count(free.length),
    },
  ];
}

/** What one sweeps, what of all in its way it goes into furthest, and how far. */
export function blockedSteps(sweep: Sweep, hits: readonly Hit[], layout: Layout): readonly Step[] {
  const worst = hits.reduce<Hit | undefined>(
    (most, hit) => (most && most.byM >= hit.byM ? most : hit),
    undefined,
  );
  if (!worst) return [];
  return [
    sweptStep(sweep, layout),
    ...(hits.length > 1
      ? [
          {
            what: `Of ${hits.length} in its way it goes furthest into ${nameOf(worst)}`,
            sum: listed(hits.map((hit) => say`${nameOf(hit)} by ${length(hit.byM)}`)),
          },
        ]
      : []),
    ...(worst.face ? shellSteps(sweep, worst.face, worst.byM, layout) : bodySteps(sweep, worst, layout)),
  ];
}

const nameOf = ({ solid, part, face }: Hit): string =>
  solid?.name ?? part?.name ?? (face ? shellInWords[face] : '');

/** What two of them sweep, and how far they go into each other. */
export function clashSteps({ first, second, byM }: Clash, layout: Layout): readonly Step[] {
  const there = waysOut(first, second.prism);
  const back = waysOut(second, first.prism);
  return [
    sweptStep(first, layout),
    sweptStep(second, layout),
    ...[...there, ...back].flatMap(arcStep),
    {
      what: 'How far they go into each other: the shortest way in which one of the two comes free',
      sum: say`the least of: ${second.name} ${leastText(there)}; ${first.name} ${leastText(back)}`,
      result: length(byM),
    },
  ];
}

const kinds = {
  door: 'a quarter of a disc about its hinge, as far as it is wide',
  drawer: 'as wide as its front, as far as it comes out',
  lid: 'up on an arc about its hinge, as far as it is deep',
  seat: 'a disc about its pivot',
} as const;

/** "450 mm wide" */
function sizeText({ kind, leaf, prism }: Sweep): Phrase {
  if (kind === 'seat' || !leaf) {
    const { leastYM, mostYM } = boxOf(prism);
    return say`a disc of ${length((mostYM - leastYM) / 2)} radius`;
  }
  const reach = length(leaf.reachM);
  if (kind === 'door') return say`a quarter of a disc of ${reach} radius`;
  return kind === 'drawer' ? say`${reach} out` : say`${reach} up on its arc`;
}

const sweptStep = (sweep: Sweep, layout: Layout): Step => ({
  what: `The room that ${sweep.name} sweeps: ${kinds[sweep.kind]}`,
  sum: say`${sizeText(sweep)}: ${placeText(boxOf(sweep.prism), layout)}`,
  paths: [sweep.path, ...hostPaths(sweep, layout)],
});

const hostPaths = ({ of }: Sweep, layout: Layout): readonly PlanPath[] =>
  layout.solids.filter(({ name }) => name === of).flatMap((solid) => placePaths(solid, layout));

function bodySteps(sweep: Sweep, hit: Hit, layout: Layout): readonly Step[] {
  const body = hit.solid ?? hit.part;
  if (!body) return [];
  const ways = waysOut(sweep, body.prism);
  return [
    {
      what: `Where ${body.name} is`,
      sum: placeText(boxOf(body.prism), layout),
      paths: hit.solid ? placePaths(hit.solid, layout) : [body.path],
    },
    ...ways.flatMap(arcStep),
    {
      what: `How far it goes into ${body.name}: the shortest way in which that comes free of the room`,
      sum: say`the least of: ${leastText(ways)}`,
      result: length(hit.byM),
    },
  ];
}

/** A lid's free edge runs on an arc, and may pass what is in a corner of the room about it. */
function arcStep({ fromHinge, distanceM }: WayOut): readonly Step[] {
  if (!fromHinge) return [];
  const { reachM, outM, upM } = fromHinge;
  return [
    {
      what: 'How far its free edge comes in on its arc: depth − √(out² + up²), seen from the hinge',
      sum: say`${length(reachM)} − √((${length(outM)})² + (${length(upM)})²)`,
      result: length(distanceM),
    },
  ];
}

const directions: Readonly<Record<WayOut['direction'], string>> = {
  forward: 'moved forward',
  rearward: 'moved rearward',
  left: 'moved to the left',
  right: 'moved to the right',
  up: 'lifted',
  down: 'lowered',
  'clear of the arc': 'out of the arc',
};

const leastText = (ways: readonly WayOut[]): Phrase =>
  listed(ways.map(({ direction, distanceM }) => say`${directions[direction]} by ${length(distanceM)}`));

/** Beyond a side of the load bay; a lid by its arc where that stays nearer than the room about it. */
function shellSteps(sweep: Sweep, face: ShellFace, byM: number, layout: Layout): readonly Step[] {
  const shell = closedShell(layout);
  const leans = layout.solids.find(({ name }) => name === sweep.of)?.leans ?? false;
  const protrusion = outOfShell(sweep.prism, shell, { leans }).find((each) => each.face === face);
  const arc = arcBeyond(sweep, face, layout);
  if (!protrusion) return [];
  if (!arc || protrusion.byM <= arc.byM)
    return beyondSteps({ name: 'that room', prism: sweep.prism, paths: [], protrusion }, shell, layout);
  return [
    {
      what: `How far its free edge is beyond ${shellInWords[face]}, where it is furthest on its arc`,
      sum: say`open by ${String(arc.degrees)}°: ${length(arc.edgeM)} − ${length(arc.wallM)}, ${countedTo[face]}`,
      result: length(byM),
      paths: [['van', 'load_bay']],
    },
  ];
}

const countedTo: Readonly<Record<ShellFace, string>> = {
  front: 'forward of the front of the load bay',
  rear: 'from the front of the load bay',
  left: 'to the left of the middle',
  right: 'to the right of the middle',
  top: 'above the floor',
};
