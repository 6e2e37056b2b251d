import type { Circuit, Electrical } from '../build/electrical.ts';
import { type DropLimit, dropLimitFor } from '../catalogue/electrical/drop-limits.ts';
import { leastSize } from '../catalogue/electrical/least-sizes.ts';

/** What a circuit may lose, by the practice of its plan; a practice without its class takes its critical one. */
export function dropLimitOf(
  { dropPractice }: Electrical,
  { charges, dropClass }: Circuit,
): DropLimit | undefined {
  const charging = charges ? dropLimitFor(dropPractice, 'charging line') : undefined;
  return charging ?? dropLimitFor(dropPractice, dropClass) ?? dropLimitFor(dropPractice, 'critical');
}

/** So short a conductor may be of any size. */
export const EXEMPT_M = 0.2;

/** The two practices for a conductor of its own; the stricter counts in the end, each within its own system. */
export const leastSingles = [
  leastSize('extra-low voltage, single'),
  leastSize('extra-low voltage, single, US boats'),
] as const;

/** Whether a circuit's conductors are longer than what may be of any size. */
export const isLong = ({ wire }: Circuit): boolean =>
  Math.max(wire.outM ?? Number.POSITIVE_INFINITY, wire.backM ?? 0) > EXEMPT_M;

/** The stricter of the least sizes, mm²; nothing for a conductor that is let off. */
export const leastAreaMm2 = (circuit: Circuit): number =>
  isLong(circuit) ? Math.max(...leastSingles.map(({ areaMm2 }) => areaMm2)) : 0;
