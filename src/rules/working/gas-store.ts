import type { GasStore } from '../../build/gas.ts';
import { fillShare } from '../../build/gas-of.ts';
import { fluids } from '../../catalogue/fluids.ts';
import type { Step } from '../../engine/finding.ts';
import { density, mass, share, volume } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';

/** What a cylinder or a tank holds when it is full: as typed, or of so many litres what may be liquid. */
export function contentsStep({ name, path, gas, holdsKg, insideM3 }: GasStore): Step {
  const paths = [[...path, 'holds']];
  if (insideM3 === undefined)
    return { what: `The gas in ${name} when it is full, as the plan says`, result: mass(holdsKg), paths };
  return {
    what: `The gas in ${name} when it is as full as it may be: V·0.8·ρ`,
    sum: say`${volume(insideM3)} · ${share(fillShare)} · ${density(fluids[gas].densityKgM3)} of liquid ${gas}`,
    result: mass(holdsKg),
    paths,
  };
}
