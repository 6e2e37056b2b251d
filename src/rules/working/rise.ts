import type { Layout, Solid } from '../../build/layout.ts';
import { heightAt, type Shell } from '../../calc/space/shell.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { type Ceiling, lowestAlong } from '../clear-height.ts';
import type { Surface } from '../lying-surface.ts';
import { told } from '../told.ts';

/*
 * How high the top of a thing is, and what is over it: from what stands on what, as the plan has it.
 */

interface Rise {
  readonly byM: number;
  readonly of: string;
  readonly path: PlanPath;
}

/** Heights that differ by less are one: a micrometre. */
const sameWithinM = 1e-6;

/** From the floor up to the underside of a thing, or to its top. */
function risesTo(end: 'bottom' | 'top', thing: Solid, { solids }: Layout): readonly Rise[] {
  const below = [...thing.hosts].reverse().flatMap((name) => solids.find((each) => each.name === name) ?? []);
  const chain = [...below, thing];
  const rises: Rise[] = [];
  let reached = { atM: 0, at: 'the floor' };
  chain.forEach((each, index) => {
    const { name, path, box } = each;
    const offM = box.bottomM - reached.atM;
    if (Math.abs(offM) > sameWithinM)
      rises.push({ byM: offM, of: `from ${reached.at} to ${name}`, path: [...path, 'at', 'above_floor'] });
    const next = chain[index + 1];
    const isStoodIn = next ? next.isInside : end === 'bottom';
    if (!isStoodIn) rises.push({ byM: box.topM - box.bottomM, of: name, path: [...path, 'size', 'height'] });
    reached = isStoodIn
      ? { atM: box.bottomM, at: `the foot of ${name}` }
      : { atM: box.topM, at: `the top of ${name}` };
  });
  return rises;
}

/** "760 mm (bed frame) + 20 mm (slats) − 5 mm (from slats to mattress)" */
const added = (rises: readonly Rise[]): Phrase =>
  rises.flatMap(({ byM, of }, index) => {
    const sign = index === 0 ? (byM < 0 ? '−' : '') : byM < 0 ? ' − ' : ' + ';
    return say`${sign}${told(Math.abs(byM))} (${of})`;
  });

function riseStep(what: string, end: 'bottom' | 'top', thing: Solid, room: Layout): Step {
  const rises = risesTo(end, thing, room);
  return {
    what,
    sum: rises.length > 0 ? added(rises) : say`it stands on the floor`,
    result: length(end === 'top' ? thing.box.topM : thing.box.bottomM),
    paths: rises.map(({ path }) => path),
  };
}

export const topStep = (what: string, thing: Solid, room: Layout): Step => riseStep(what, 'top', thing, room);
export const undersideStep = (what: string, thing: Solid, room: Layout): Step =>
  riseStep(what, 'bottom', thing, room);

/** What one sits or lies on: of several cushions the highest. */
export const uppermost = (thing: Solid, { cushions }: Surface): Solid =>
  cushions.reduce((best, next) => (next.box.topM > best.box.topM ? next : best), cushions[0] ?? thing);

interface Corner {
  readonly at: number;
  readonly value: number;
  readonly path: PlanPath;
}

/** How a value follows from the places of the plan about it, between which it runs straight. */
export function betweenCorners(
  corners: readonly Corner[],
  at: number,
  otherwise: PlanPath,
): { readonly sum: Phrase; readonly paths: readonly PlanPath[] } {
  if (corners.length < 2) return { sum: say`as the plan says`, paths: [otherwise] };
  const sorted = [...corners].sort((a, b) => a.at - b.at);
  const next = sorted.find((corner) => corner.at >= at - sameWithinM) ?? sorted.at(-1);
  const before = sorted.findLast((corner) => corner.at < at - sameWithinM);
  if (!next || !before || next === before || Math.abs(next.at - at) <= sameWithinM)
    return { sum: say`as the plan says at ${told(next?.at ?? at)}`, paths: next ? [next.path] : [] };
  return {
    sum: say`${told(before.value)} + (${told(next.value)} − ${told(before.value)}) · (${told(at)} − ${told(before.at)}) / (${told(next.at)} − ${told(before.at)}), straight between what the plan says at ${told(before.at)} and ${told(next.at)}`,
    paths: [before.path, next.path],
  };
}

const roofCorners = ({ heights }: Shell): readonly Corner[] =>
  heights.map(({ fromFrontM, heightM }, index) => ({
    at: fromFrontM,
    value: heightM,
    path: ['van', 'load_bay', 'heights', index],
  }));

export interface Stretch {
  readonly leastXM: number;
  readonly mostXM: number;
}

/** What is lowest over a place, above the floor: the roof where it is lowest over it, or the underside of a thing. */
export function ceilingStep(
  place: string,
  { atM, below }: Ceiling,
  { leastXM, mostXM }: Stretch,
  room: Layout,
): Step {
  const { shell, solids, fixedParts } = room;
  if (below === undefined) {
    const xM = lowestAlong(shell, leastXM, mostXM);
    const { sum, paths } = betweenCorners(roofCorners(shell), xM, ['van', 'load_bay', 'height']);
    const where = shell.heights.length < 2 ? say`` : say` (lowest ${told(xM)} from the front)`;
    return {
      what: `How high the roof is over ${place}: nothing hangs lower there`,
      sum: say`${sum}${where}`,
      result: length(heightAt(shell.heights, xM)),
      paths,
    };
  }
  const what = `What is lowest over ${place}: the underside of ${below}`;
  const thing = solids.find(({ name }) => name === below);
  if (thing) return undersideStep(what, thing, room);
  const part = fixedParts.find(({ name }) => name === below);
  return {
    what,
    sum: say`as the plan places it`,
    result: length(atM),
    ...(part && { paths: [[...part.path, 'at']] }),
  };
}
