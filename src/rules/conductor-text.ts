import type { Conductor } from '../catalogue/electrical/conductors.ts';
import { crossSectionMm2 } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import type { ConductorSize } from '../plan/conductor-field.ts';

/** A size of conductor as it is bought: "2.5 mm² flexible", "10 AWG tinned, stranded". */
export function sizeText({ system, size }: ConductorSize, row?: Conductor): Phrase {
  const bought: Phrase = system === 'mm²' ? [crossSectionMm2(Number(size))] : [`${size} ${system}`];
  if (!row) return bought;
  return say`${bought} ${row.finish === 'tinned' ? 'tinned, ' : ''}${row.build}`;
}
