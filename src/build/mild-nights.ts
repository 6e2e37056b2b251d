import { stillNight } from '../catalogue/air/still-night.ts';
import type { Citation } from '../catalogue/citation.ts';
import type { Build } from './build.ts';
import { monthName } from './energy.ts';
import { type Humid, humidOf, type NightAir, stillAirOf } from './night-air.ts';
import { outsideYearOf } from './outside-year.ts';

/*
 * The dampest of the still nights on which the heating is on, from the coldest that the plan names to the mildest.
 */

export interface DampestNight {
  readonly air: Humid;
  readonly coldestC: number;
  readonly mildestC: number;
  /** The autumn month whose mean comes nearest, and whose year it is, where the year is known. */
  readonly month?: { readonly name: string; readonly of: string; readonly citations: readonly Citation[] };
}

/**
 * Undefined where the plan has no coldest weather, or none that is colder than the mildest night.
 *
 * The mildest is the dampest, exactly: with the room kept as warm, the vapour outside, φ_e · p_s(T_e), rises with the
 * temperature outside, and the flow through the vents falls with it. Its square goes with
 * (T_i − T_e) / (1 + r · T_i / T_e), r > 0; the logarithm of that changes by −1 / (T_i − T_e) + s / T_e for each kelvin, s
 * between 0 and 1, which is below 0 as long as T_i < 2 · T_e in kelvins. Leaks do not change. So both terms of the humidity
 * grow all the way.
 */
export function dampestNightOf(build: Build, night: NightAir): DampestNight | undefined {
  const coldestC = build.habits.winterLowC;
  const [asleep] = night.nights;
  if (coldestC === undefined || !asleep) return undefined;
  const year = outsideYearOf(build);
  const means = 'airC' in year ? year.airC : [];
  const mildestC = Math.min(
    asleep.insideC - stillNight.mildRiseK,
    ...(means.length > 0 ? [Math.max(...means)] : []),
  );
  if (mildestC <= coldestC) return undefined;
  const releaseKgPerS = night.humid.find(({ part }) => part === 'night')?.releaseKgPerS ?? 0;
  const autumn = nearestAutumnMonth(means, mildestC);
  return {
    air: humidOf('night', stillAirOf(night, 'mild', asleep.insideC, mildestC), releaseKgPerS),
    coldestC,
    mildestC,
    ...('airC' in year &&
      autumn !== undefined && { month: { name: autumn, of: year.of, citations: year.citations } }),
  };
}

/** Of the months that are colder than the one before: autumn is damper than spring. */
function nearestAutumnMonth(means: readonly number[], outsideC: number): string | undefined {
  const falling = means.flatMap((meanC, month) =>
    meanC < (means.at(month - 1) ?? meanC) ? [{ month, apartK: Math.abs(meanC - outsideC) }] : [],
  );
  const [first, ...more] = falling;
  const nearest = more.reduce((best, each) => (best && each.apartK < best.apartK ? each : best), first);
  return nearest && monthName(nearest.month);
}
