import type { Build } from '../build/build.ts';
import type { GasPipe } from '../build/gas.ts';
import { gasBurntIn } from '../build/gas-use.ts';
import { boreOf, gasDropPa } from '../calc/gas/pipe-flow.ts';
import type { GasSection } from '../calc/gas/pipe-tree.ts';
import { corrugatedCapacityM3S, corrugatedDropPa, equivalentLengthM } from '../catalogue/gas/pipes.ts';
import { gasProperties } from '../catalogue/gas/properties.ts';

/*
 * The pipes of a plan as the drop of pressure sees them.
 */

export const tubeBoreM = ({ boreM, sizeM, wallM }: GasPipe): number | undefined =>
  boreM ?? (sizeM !== undefined && wallM !== undefined ? boreOf(sizeM, wallM) : undefined);

/** Corrugated tube is sold by a nominal size, and has a table of its own. */
export const corrugatedOf = ({ material, sizeM = 0 }: GasPipe): 'DN12' | 'DN15' | undefined => {
  if (material !== 'corrugated stainless steel') return undefined;
  return sizeM >= 0.015 ? 'DN15' : sizeM >= 0.012 ? 'DN12' : undefined;
};

export function sectionOf(pipe: GasPipe): GasSection {
  const boreM = tubeBoreM(pipe) ?? pipe.sizeM ?? 0.01;
  return {
    name: pipe.name,
    from: pipe.from,
    to: pipe.to,
    boreM,
    lengthM: equivalentLengthM({ lengthM: pipe.lengthM ?? 0.001, boreM, bends: pipe.bends, tees: pipe.tees }),
  };
}

/** The pipes from the regulator to an appliance, in this order. */
export function wayTo(appliance: string, all: readonly GasPipe[]): readonly GasPipe[] {
  const way: GasPipe[] = [];
  for (let at = appliance; at !== 'regulator'; ) {
    const pipe = all.find(({ to }) => to === at);
    if (!pipe || way.includes(pipe)) return way;
    way.unshift(pipe);
    at = pipe.from;
  }
  return way;
}

/** The table of corrugated tube ends here, m. */
const longestPrintedM = 30;

/** What corrugated tube of this length carries by its table, m³/s, and the length that the table is read at. */
export function corrugatedRow(nominal: 'DN12' | 'DN15', lengthM: number) {
  const printedM = Math.min(lengthM, longestPrintedM);
  return { printedM, capacityM3S: corrugatedCapacityM3S(nominal, printedM) ?? 0 };
}

/** What is lost in a pipe at its flow; of another tube, as if it were laid in that. */
export function dropIn(pipe: GasPipe, flowM3S: number, build: Build, boreM?: number): number {
  const corrugated = boreM === undefined ? corrugatedOf(pipe) : undefined;
  const section = sectionOf(boreM === undefined ? pipe : { ...pipe, boreM });
  if (corrugated) {
    const { printedM, capacityM3S } = corrugatedRow(corrugated, section.lengthM);
    // Flow goes with the root of the drop, and beyond the table the drop with the length.
    return corrugatedDropPa * (flowM3S / capacityM3S) ** 2 * (section.lengthM / printedM);
  }
  return gasDropPa(section, flowM3S, gasProperties[gasBurntIn(build)]).dropPa;
}
