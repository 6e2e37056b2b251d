import type { Layout, Solid } from '../../build/layout.ts';
import type { Part, Step } from '../../engine/finding.ts';
import { area, count, length, share } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import {
  apartM,
  besideBedM,
  betweenOpenings,
  coveredShare,
  type Exit,
  type Exits,
  isOneWay,
  isSideBySide,
  type NoExit,
  openingFromBedM,
  pastCookerM,
} from '../exits.ts';
import { told } from '../told.ts';
import { narrowestStep } from './way.ts';

/*
 * What leads out from a bed, opening by opening, and which of it one fire closes together.
 */

export function closedInWords({ opening, wayM, coveredBy }: NoExit): Phrase {
  if (coveredBy !== undefined)
    return say`${opening.name} is covered by ${coveredBy}, over more than ${share(coveredShare)} of it`;
  return wayM === undefined || wayM === 0
    ? say`no way leads to ${opening.name}`
    : say`the way to ${opening.name} is only ${told(wayM)} wide`;
}

function exitStep(bed: Solid, exit: Exit, leastWayM: number, layout: Layout): Step {
  const { opening, wayM } = exit;
  if (wayM === undefined) {
    const fromM = openingFromBedM(opening, bed, layout);
    return {
      what: `How far ${opening.name} is from ${bed.name}: it is beside it, so no way is needed`,
      sum: say`on the plan, from the one to the other; up to ${told(besideBedM)} is beside it`,
      result: length(fromM),
      paths: [opening.path],
    };
  }
  return wayStep(bed, exit, leastWayM, layout);
}

function wayStep(bed: Solid, exit: Exit | NoExit, leastWayM: number, layout: Layout): Step {
  const { opening, wayM = 0, narrowest } = exit;
  const what = `How wide the way is between ${bed.name} and ${opening.name}, where it is narrowest`;
  const way = { widthM: wayM, from: opening, ...(narrowest && { narrowest }) };
  const { sum = [], ...step } = narrowestStep(what, way, layout);
  return { ...step, sum: say`${sum}; at least ${told(leastWayM)} is asked for` };
}

function closedStep(bed: Solid, exit: NoExit, leastWayM: number, layout: Layout): Step {
  const { opening, coveredBy, covered, wayM = 0 } = exit;
  if (coveredBy === undefined && wayM > 0) return wayStep(bed, exit, leastWayM, layout);
  const paths = [opening.path];
  if (coveredBy === undefined || !covered)
    return { what: `${opening.name} is no way out`, sum: closedInWords(exit), paths };
  return {
    what: `How much of ${opening.name} is covered, most of it by ${coveredBy}: no way out leads through it`,
    sum: say`${area(covered.areaM2)} / ${area(covered.ofM2)}, more than ${share(coveredShare)}`,
    result: share(covered.areaM2 / covered.ofM2),
    paths,
  };
}

/** Why one fire closes both. */
function togetherStep(one: Exit, other: Exit): Step {
  const names = `${one.opening.name} and ${other.opening.name}`;
  if (!isSideBySide(one.opening, other.opening))
    return {
      what: `${names} count as one: one fire closes both`,
      sum: say`both lead within ${told(pastCookerM)} of a cooker`,
    };
  const { alongM, upM } = betweenOpenings(one.opening, other.opening);
  return {
    what: `How far ${names} are apart in one wall; they count as one, since one fire closes both`,
    sum: say`√((${told(alongM)})² + (${told(upM)})²) along it and up; two ways out are ${told(apartM)} apart or more`,
    result: length(Math.hypot(alongM, upM)),
    paths: [one.opening.path, other.opening.path],
  };
}

/** Opening by opening, then how many of them no fire closes together. */
export function waysOutSteps(
  bed: Solid,
  { open, closed }: Exits,
  ways: readonly Exit[],
  leastWayM: number,
  layout: Layout,
): readonly Step[] {
  const together = open
    .filter((exit) => !ways.includes(exit))
    .flatMap((exit) => {
      const other = ways.find((way) => isOneWay(way, exit));
      return other ? [togetherStep(other, exit)] : [];
    });
  const rows = open.map(
    (exit): Part => ({
      name: exit.opening.name,
      path: exit.opening.path,
      origin: 'computed',
      values: [],
      adds: count(ways.includes(exit) ? 1 : 0),
    }),
  );
  const what = `Ways out from ${bed.name} that no one fire closes together`;
  return [
    ...open.map((exit) => exitStep(bed, exit, leastWayM, layout)),
    ...closed.map((exit) => closedStep(bed, exit, leastWayM, layout)),
    ...together,
    rows.length > 0
      ? { what, result: count(ways.length), parts: { columns: ['counts'], rows } }
      : { what, sum: say`none of the openings is one`, result: count(0) },
  ];
}
