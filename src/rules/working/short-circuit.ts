import type { Bank, Circuit } from '../../build/electrical.ts';
import type { FuseFamily } from '../../catalogue/electrical/fuses.ts';
import type { Part, PlanPath, Step } from '../../engine/finding.ts';
import {
  chargeAh,
  count,
  crossSectionMm2,
  current,
  length,
  resistance,
  voltage,
} from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';

/*
 * What a short circuit draws right behind a fuse: the battery's greatest voltage over all the resistance before it.
 */

/** A circuit on the way to the fuse, with the length of it that lies before the fuse. */
export interface Leg {
  readonly circuit: Circuit;
  readonly lengthM: number;
  readonly ohm: number;
}

export interface ShortCircuit {
  readonly fuse: string;
  readonly fusePath: PlanPath;
  readonly family: FuseFamily;
  readonly legs: readonly Leg[];
  readonly internalOhm: number;
  readonly breaksA: number;
  readonly faultA: number;
  /** How many fuses were looked at, where it stands for all that pass. */
  readonly nearestOf?: number;
}

/** While it is charged: what its cells have at most. */
export function highestVoltageStep({ path, voltageV, highestV, chemistry }: Bank): Step {
  const cells = Math.round(voltageV / chemistry.nominalCellV);
  return {
    what: 'The greatest voltage of the battery, while it is charged: E',
    sum: say`${count(cells)} cells in series · ${voltage(highestV / cells)} each (${chemistry.lead ? 'lead' : 'lithium'}, from memory)`,
    result: voltage(highestV),
    paths: [
      [...path, 'voltage'],
      [...path, 'in_series'],
    ],
  };
}

export function shortCircuitSteps(
  bank: Bank,
  { fuse, fusePath, family, legs, internalOhm, breaksA, faultA, nearestOf }: ShortCircuit,
): readonly Step[] {
  const cableOhm = legs.reduce((sum, { ohm }) => sum + ohm, 0);
  return [
    highestVoltageStep(bank),
    {
      what: 'The least resistance inside the battery: R_i',
      sum: insideWords(bank, internalOhm),
      result: resistance(internalOhm),
      paths: ['internal_resistance', 'in_series', 'in_parallel', 'capacity'].map((key) => [
        ...bank.path,
        key,
      ]),
    },
    cableStep(legs),
    {
      what: 'The least resistance of that cable: R = l·ρ / A, ρ = 1/58 Ω·mm²/m, copper at 20 °C',
      sum: say`${length(ofOneSquareMillimetre(legs))} / (58 · ${crossSectionMm2(1)})`,
      result: resistance(cableOhm),
    },
    {
      what: `What a fuse of type \`${family.id}\` breaks at this voltage`,
      sum: say`from the table, at ${voltage(bank.highestV)}`,
      result: current(breaksA),
      paths: [[...fusePath, 'type']],
    },
    {
      what: `What a short circuit draws right behind the fuse of ${fuse}: I = E / (R_i + R)${nearestOf === undefined ? '' : `, which of ${nearestOf} fuses is the nearest to its limit`}`,
      sum: say`${voltage(bank.highestV)} / (${resistance(internalOhm)} + ${resistance(cableOhm)})`,
      result: current(faultA),
    },
  ];
}

function insideWords({ resistance: known, inSeries, inParallel, capacityAh }: Bank, ohm: number): Phrase {
  if (known?.source !== 'typed')
    return say`the least that the catalogue has for its kind, for ${chargeAh(capacityAh)} at this voltage`;
  const ofOneOhm = (ohm * inParallel) / inSeries;
  return inSeries * inParallel === 1
    ? say`as the plan says`
    : say`${resistance(ofOneOhm)} of one · ${count(inSeries)} in series / ${count(inParallel)} in parallel`;
}

/** Lengths over areas have more digits than thousandths of an ohm would show. */
const asLongAs = ({ circuit: { wire }, lengthM }: Leg): number =>
  wire.conductor ? lengthM / wire.conductor.areaMm2 : 0;

const ofOneSquareMillimetre = (legs: readonly Leg[]): number =>
  legs.reduce((sum, leg) => sum + asLongAs(leg), 0);

function cableStep(legs: readonly Leg[]): Step {
  return {
    what: 'The cable from the battery to the fuse, one way: as long as so much of 1 mm², Σ l / A',
    sum: say`the way back counts as none, and so does cable whose size or length is not known`,
    result: length(ofOneSquareMillimetre(legs)),
    parts: {
      columns: ['one way', 'copper', 'of 1 mm²'],
      rows: legs.map(
        (leg): Part => ({
          name: leg.circuit.name,
          path: leg.circuit.path,
          origin: 'computed',
          values: [length(leg.lengthM), crossSectionMm2(leg.circuit.wire.conductor?.areaMm2 ?? 0)],
          adds: length(asLongAs(leg)),
        }),
      ),
    },
    paths: legs.flatMap(({ circuit: { path } }) => [
      [...path, 'length'],
      [...path, 'conductor'],
    ]),
  };
}
