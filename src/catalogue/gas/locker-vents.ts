import type { Citation } from '../citation.ts';
import type { Codes } from '../codes.ts';
import { type GasForce, type GasLimitId, gasLimitFor } from './limits.ts';

/** The larger of a share of the floor and a least area is wanted. */
export interface WantedArea {
  readonly ofFloor: number;
  readonly leastM2: number;
}

/** The free area of the fixed vents that a cylinder locker needs. */
export interface LockerVents {
  /** Low vents alone, in the floor or just above it, m². Undefined where the codes want high ones too. */
  readonly lowAloneM2?: number;
  /** Low vents, and as much again high, m². */
  readonly eachOfTwoM2: number;
  /** What the two areas come from. */
  readonly lowAlone: WantedArea;
  readonly eachOfTwo: WantedArea;
  /** Of the low share and its least area: the weaker where they differ. */
  readonly force: GasForce;
  readonly citations: readonly Citation[];
  readonly cautions: readonly string[];
}

/**
 * What a locker needs by the area of its floor.
 *
 *     A_low ≥ max(0.02 · A_floor; 0.01 m²)        or        A_low, A_high ≥ max(0.01 · A_floor; 0.005 m²) each
 *
 * Free area of grille, not of the hole behind it; no cylinder stands on it. In the US both are wanted and only the share
 * was read, the least area is a European guide. Without codes the European figures, which are the larger.
 *
 * floorM2: m² (> 0). Throws RangeError otherwise.
 */
export function lockerVents(floorM2: number, codes?: Codes): LockerVents {
  if (!(floorM2 > 0) || !Number.isFinite(floorM2))
    throw new RangeError(`The floor of a locker must be greater than 0, not ${floorM2}.`);
  const row = (id: GasLimitId) => gasLimitFor(id, codes ?? 'eu');
  const lowShare = row('locker-low-vent-share');
  const lowLeast = row('locker-low-vent-least');
  const splitShare = row('locker-split-vent-share');
  const splitLeast = row('locker-split-vent-least');
  const rows = [lowShare, lowLeast, splitShare, splitLeast];
  const lowAlone = { ofFloor: lowShare.value, leastM2: lowLeast.value };
  const eachOfTwo = { ofFloor: splitShare.value, leastM2: splitLeast.value };
  return {
    ...(codes !== 'us' && { lowAloneM2: wantedOf(lowAlone, floorM2) }),
    eachOfTwoM2: wantedOf(eachOfTwo, floorM2),
    lowAlone,
    eachOfTwo,
    force: rows.every(({ force }) => force === 'standard') ? 'standard' : 'published guide',
    citations: [...new Set(rows.flatMap(({ citations }) => citations))],
    cautions: [
      ...new Set(rows.flatMap(({ cautions }) => cautions)),
      ...(codes
        ? []
        : [
            'The plan names no codes, so the European figures are taken; a US text wants high and low vents both.',
          ]),
    ],
  };
}

const wantedOf = ({ ofFloor, leastM2 }: WantedArea, floorM2: number): number =>
  Math.max(ofFloor * floorM2, leastM2);
