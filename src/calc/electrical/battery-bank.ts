import { notNegative, positive } from '../argument.ts';
import { count } from './storage-argument.ts';

/** One battery as it is bought: a block of cells with two terminals. */
export interface BatteryBlock {
  readonly voltageV: number;
  readonly capacityAh: number;
}

/** How equal blocks are joined: strings of blocks in series, strings side by side. */
export interface BankLayout {
  readonly inSeries: number;
  readonly inParallel: number;
}

export interface BatteryBank {
  readonly blocks: number;
  readonly voltageV: number;
  readonly capacityAh: number;
  readonly energyWh: number;
}

/**
 * What equal blocks give together.
 *
 *     U = s · U1        C = p · C1        E = U · C
 *
 * s: blocks in series; p: strings in parallel (whole numbers ≥ 1); U1: nominal voltage of a block, V (> 0);
 * C1: its capacity, Ah (> 0). E: nominal energy, Wh. All blocks are of one voltage, capacity, chemistry and age: the
 * weakest block of a string limits the string, which this does not know.
 *
 * Throws RangeError if a value is not finite or greater than 0, or a number of blocks is not whole.
 *
 * Source: battery bank page of an open off-grid guide (read); follows from the circuit (computed).
 */
export function batteryBank(block: BatteryBlock, layout: BankLayout): BatteryBank {
  const inSeries = count(layout.inSeries, 'The number of blocks in series');
  const inParallel = count(layout.inParallel, 'The number of strings in parallel');
  const voltageV = inSeries * positive(block.voltageV, 'The voltage of a block');
  const capacityAh = inParallel * positive(block.capacityAh, 'The capacity of a block');
  return { blocks: inSeries * inParallel, voltageV, capacityAh, energyWh: voltageV * capacityAh };
}

/** Sums of decimals miss a whole number by less than this. */
const sameWithin = 1e-9;

/**
 * The layout of equal blocks that gives a wanted voltage and at least a wanted capacity.
 *
 *     s = U / U1        p = ⌈C / C1⌉
 *
 * U: wanted nominal voltage, V; C: wanted capacity, Ah; U1, C1: those of a block (all > 0).
 *
 * Throws RangeError if a value is not finite or greater than 0, or U is not a whole multiple of U1.
 *
 * Source: battery bank page of an open off-grid guide; off-grid battery worksheet (both read).
 */
export function layoutFor(voltageV: number, capacityAh: number, block: BatteryBlock): BankLayout {
  const ratio = positive(voltageV, 'The wanted voltage') / positive(block.voltageV, 'The voltage of a block');
  const inSeries = Math.round(ratio);
  if (inSeries < 1 || Math.abs(ratio - inSeries) > sameWithin * ratio) {
    throw new RangeError(
      `Blocks of ${block.voltageV} V cannot make ${voltageV} V: it is not a whole multiple of theirs.`,
    );
  }
  const strings =
    positive(capacityAh, 'The wanted capacity') / positive(block.capacityAh, 'The capacity of a block');
  return { inSeries, inParallel: Math.max(1, Math.ceil(strings * (1 - sameWithin))) };
}

/**
 * Resistance of a bank of equal blocks, without the links between them.
 *
 *     R = R1 · s / p
 *
 * R1: internal resistance of a block, Ω (≥ 0); s: blocks in series; p: strings in parallel.
 *
 * Throws RangeError if R1 is not finite or negative, or a number of blocks is not whole.
 *
 * Source: telecom battery note, R_cell × series / parallel (read).
 */
export function bankResistanceOhm(blockResistanceOhm: number, layout: BankLayout): number {
  return (
    (notNegative(blockResistanceOhm, 'The internal resistance of a block') *
      count(layout.inSeries, 'The number of blocks in series')) /
    count(layout.inParallel, 'The number of strings in parallel')
  );
}
