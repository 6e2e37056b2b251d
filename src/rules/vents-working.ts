import type { Vent } from '../build/air.ts';
import type { Part, Step } from '../engine/finding.ts';
import { freeArea } from '../engine/measure.ts';
import { say } from '../engine/phrase.ts';

/** Vents side by side with what each counts for; all of their free area where nothing else is said. */
export function ventsStep(
  what: string,
  vents: readonly Vent[],
  countsM2: (vent: Vent) => number = ({ freeAreaM2 }) => freeAreaM2,
): Step {
  const rows = vents.map(
    (vent): Part => ({
      name: vent.name,
      path: vent.path,
      origin: 'typed',
      values: [freeArea(vent.freeAreaM2)],
      adds: freeArea(countsM2(vent)),
    }),
  );
  const result = freeArea(rows.reduce((sum, { adds }) => sum + adds.value, 0));
  if (rows.length === 0) return { what, sum: say`there are none`, result };
  return { what, result, parts: { columns: ['free area', 'counts'], rows }, paths: vents.map(({ path }) => path) };
}
