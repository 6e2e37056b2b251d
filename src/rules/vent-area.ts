import { type FixedOpenings, type StillAir, stackM3S } from '../build/night-air.ts';
import { rootBetween } from '../calc/root.ts';
import { airFlow, freeArea, length } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import { cm2PerM2, upToShown } from './shown-digits.ts';

/** Between low and high vents where the plan has none: own choice. */
export const usualRiseM = 1.5;

export interface MoreVents {
  readonly lowM2: number;
  readonly highM2: number;
  /** Between the middles of the low and the high ones. */
  readonly heightM: number;
}

/**
 * What must be added to the fixed vents for a flow on a still night. The smaller of low and high grows first, since it
 * starves the other; once they are equal both grow.
 */
export function moreForFlow(
  { lowM2, highM2, heightM }: Pick<FixedOpenings, 'lowM2' | 'highM2' | 'heightM'>,
  { insideC, outsideC }: Pick<StillAir, 'insideC' | 'outsideC'>,
  flowM3PerS: number,
): MoreVents {
  const riseM = heightM > 0 ? heightM : usualRiseM;
  const flowWith = (low: number, high: number) =>
    stackM3S({ lowM2: low, highM2: high, heightM: riseM }, insideC, outsideC);
  const larger = Math.max(lowM2, highM2);
  if (flowWith(larger, larger) >= flowM3PerS) {
    const smaller = Math.min(lowM2, highM2);
    const grown = (areaM2: number) => (lowM2 < highM2 ? flowWith(areaM2, larger) : flowWith(larger, areaM2));
    const areaM2 =
      grown(smaller) >= flowM3PerS
        ? smaller
        : rootBetween((each) => grown(each) - flowM3PerS, smaller, larger, larger * 1e-9);
    return {
      lowM2: lowM2 < highM2 ? areaM2 - lowM2 : 0,
      highM2: lowM2 < highM2 ? 0 : areaM2 - highM2,
      heightM: riseM,
    };
  }
  const eachM2 = flowM3PerS / flowWith(1, 1);
  return { lowM2: eachM2 - lowM2, highM2: eachM2 - highM2, heightM: riseM };
}

/** How much it is in all; endless where vents alone move nothing. */
export function ventsAskedM2(
  vents: Pick<FixedOpenings, 'lowM2' | 'highM2' | 'heightM'>,
  air: Pick<StillAir, 'insideC' | 'outsideC'>,
  flowM3PerS: number,
): number {
  if (air.insideC <= air.outsideC) return Number.POSITIVE_INFINITY;
  const { lowM2, highM2 } = moreForFlow(vents, air, flowM3PerS);
  return Math.max(0, lowM2) + Math.max(0, highM2);
}

/** "fit 20 cm² low and 10 cm² high of fixed vents more". */
export function areaForFlow(
  vents: Pick<FixedOpenings, 'lowM2' | 'highM2' | 'heightM'>,
  air: Pick<StillAir, 'insideC' | 'outsideC'>,
  flowM3PerS: number,
): Phrase {
  // Nothing but a difference of temperature moves air through vents.
  if (air.insideC <= air.outsideC)
    return say`let a fan move ${airFlow(flowM3PerS)}: it is no warmer inside than outside, and vents alone move nothing`;
  const { heightM, ...least } = moreForFlow(vents, air, flowM3PerS);
  const more = {
    lowM2: upToShown(least.lowM2, cm2PerM2),
    highM2: upToShown(least.highM2, cm2PerM2),
    heightM,
  };
  const parts = [
    ...(more.lowM2 > 0 ? [say`${freeArea(more.lowM2)} more low`] : []),
    ...(more.highM2 > 0 ? [say`${freeArea(more.highM2)} more high`] : []),
  ];
  const [first, second] = parts;
  const apart: Phrase = vents.heightM > 0 ? [] : say`, ${length(more.heightM)} apart in height`;
  if (first === undefined) return say`put the high vents ${length(more.heightM)} above the low ones`;
  return say`fit fixed vents of ${second === undefined ? first : say`${first} and ${second}`}${apart}`;
}
