import type { Outline, Point } from '../../calc/space/plane.ts';
import { heightAt } from '../../calc/space/shell.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import type { Box3 } from '../layout.ts';
import type { DrawnBody, DrawnOpening } from './bodies.ts';
import type { Figure, Gap, Stretch, Tick, View } from './model.ts';
import { lineOf, openLineOf } from './openings.ts';
import type { Scene } from './scene.ts';
import { meets, widened } from './spans.ts';

type Side = 'left' | 'right';

/**
 * What one sees from the middle of the load bay, looking at one of its sides: the front is on the right of the page
 * for the left side, and on the left of it for the right side.
 */
export function sideView(scene: Scene, side: Side, cutM: number | undefined): View {
  const { layout, centre } = scene;
  const { shell } = layout;
  const turn = side === 'left' ? -1 : 1;
  const across: Stretch =
    turn === 1 ? scene.across : { leastM: -scene.across.mostM, mostM: -scene.across.leastM };
  const at = (xM: number, zM: number): Point => ({ xM: turn * xM, yM: -zM });
  const half: Stretch = side === 'left' ? { leastM: -Infinity, mostM: 0 } : { leastM: 0, mostM: Infinity };
  const isHere = (box: Box3) => meets({ leastM: box.leastYM, mostM: box.mostYM }, half);
  const bodies = scene.bodies.filter(({ box }) => isHere(box));
  const wall = `${side} wall`;
  const openings = scene.openings.filter(({ opening }) =>
    opening.surface === wall ? true : !opening.surface.endsWith('wall') && isHere(opening.box),
  );
  const roof = roofLine(scene);
  const down = widened(
    { leastM: Math.min(...roof.map(({ zM }) => -zM)), mostM: 0 },
    bodies.map(({ box }) => ({ leastM: -box.topM, mostM: -box.bottomM })),
  );
  return {
    name: side,
    title: side === 'left' ? say`Left side, from the middle` : say`Right side, from the middle`,
    across,
    down,
    edges: {
      left: side === 'left' ? '← rear' : '← front',
      right: side === 'left' ? 'front →' : 'rear →',
      above: 'roof',
      below: 'floor',
    },
    figures: [
      {
        outline: [at(0, 0), ...roof.map(({ xM, zM }) => at(xM, zM)), at(shell.lengthM, 0)],
        line: 'shell',
        nearnessM: Infinity,
        hides: false,
        hatched: false,
      },
      ...openings.filter(({ opening }) => opening.surface === wall).map((each) => wallFigure(each, at)),
      ...bodies.map((body) => figureOf(body, turn, at)),
    ],
    gaps: openings.flatMap((each) => gapOf(each, scene, at)),
    ticks: layout.ribs.flatMap(({ surface, fromM, toM }): Tick[] => {
      const xM = (fromM + toM) / 2;
      const high: Tick = { at: at(xM, heightAt(shell.heights, xM)), towards: 'down' };
      const low: Tick = { at: at(xM, 0), towards: 'up' };
      if (surface === wall) return [high, low];
      if (surface === 'ceiling') return [high];
      return surface === 'floor' ? [low] : [];
    }),
    sweeps: [],
    passage: [],
    marks: centre?.zM === undefined ? [] : [{ sign: 'centre', at: at(centre.xM, centre.zM) }],
    guides: [
      ...scene.axles.map((guide) => ({ ...guide, atM: turn * guide.atM })),
      ...(cutM === undefined ? [] : [{ runs: 'across' as const, atM: -cutM, label: '' }]),
    ],
    remarks: [
      ...scene.remarks,
      ...(cutM === undefined
        ? []
        : [say`The level dashed line is the cut of the plan view, ${length(cutM)} above the floor.`]),
      ...(centre && centre.zM === undefined
        ? [
            say`The centre of mass is not drawn here: its height follows from van.load_bay.floor_above_ground and van.unladen.centre_height.`,
          ]
        : []),
    ],
  };
}

/** The corners of the roof from the front to the rear. */
function roofLine({ layout: { shell } }: Scene): { readonly xM: number; readonly zM: number }[] {
  const breaks = shell.heights
    .map(({ fromFrontM }) => fromFrontM)
    .filter((xM) => xM > 0 && xM < shell.lengthM)
    .sort((a, b) => a - b);
  return [0, ...breaks, shell.lengthM].map((xM) => ({ xM, zM: heightAt(shell.heights, xM) }));
}

type At = (xM: number, zM: number) => Point;

const upright = ({ leastXM, mostXM, bottomM, topM }: Box3, at: At): Outline => [
  at(leastXM, bottomM),
  at(mostXM, bottomM),
  at(mostXM, topM),
  at(leastXM, topM),
];

function figureOf({ thing, box, isPartOfVan, isOutside }: DrawnBody, turn: -1 | 1, at: At): Figure {
  // The nearer to the middle, the nearer to whoever looks; what reaches across the middle is cut there.
  const nearestM = turn === -1 ? Math.min(box.mostYM, 0) : Math.min(-box.leastYM, 0);
  return {
    thing: thing.id,
    outline: upright(box, at),
    line: isOutside ? 'hidden' : 'solid',
    nearnessM: nearestM,
    hides: !isOutside,
    hatched: isPartOfVan,
  };
}

const wallFigure = ({ thing, opening }: DrawnOpening, at: At): Figure => ({
  thing: thing.id,
  outline: upright(opening.box, at),
  line: lineOf(opening),
  nearnessM: -Infinity,
  hides: false,
  hatched: false,
});

function gapOf({ thing, opening }: DrawnOpening, { layout: { shell } }: Scene, at: At): Gap[] {
  const { surface, box } = opening;
  const line = openLineOf(opening);
  const gap = (from: Point, to: Point): Gap[] => [{ thing: thing.id, from, to, ...(line && { line }) }];
  if (surface === 'floor') return gap(at(box.leastXM, 0), at(box.mostXM, 0));
  if (surface === 'ceiling') {
    const roofAt = (xM: number) => at(xM, heightAt(shell.heights, xM));
    return gap(roofAt(box.leastXM), roofAt(box.mostXM));
  }
  if (surface === 'bulkhead') return gap(at(0, box.bottomM), at(0, box.topM));
  return surface === 'rear doors' ? gap(at(shell.lengthM, box.bottomM), at(shell.lengthM, box.topM)) : [];
}
