import { finite, notNegative, positive } from '../argument.ts';
import { airHeatJPerM3K } from './heat-loss.ts';

/**
 * The outside temperature that would drive as much heat into a sunlit skin as air and sun together do.
 *
 *     T_sa = T_e + α · I · R_se − ΔT_sky
 *
 * α: share of sunlight that the colour takes up, 0 to 1; I: sun on that face, W/m² (≥ 0); R_se: outside surface
 * resistance, m²·K/W (0.04 in wind, more in still air); ΔT_sky: what a face loses to a clear sky, K (≥ 0): 4 for a
 * roof, 0 for a wall. °C.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: sol-air temperature, ASHRAE Fundamentals, as restated in a building program's help (read); 7 °F for
 * roofs (read, an encyclopedia page).
 */
export function solAirC(input: {
  readonly outsideC: number;
  readonly absorptance: number;
  readonly sunWM2: number;
  readonly outsideM2KPerW: number;
  readonly skyLossK: number;
}): number {
  const absorptance = notNegative(input.absorptance, 'The absorptance');
  if (absorptance > 1) throw new RangeError(`The absorptance must be at most 1, not ${absorptance}.`);
  return (
    finite(input.outsideC, 'The outside temperature') +
    absorptance *
      notNegative(input.sunWM2, 'The sun on the face') *
      notNegative(input.outsideM2KPerW, 'The outside surface resistance') -
    notNegative(input.skyLossK, 'What the face loses to the sky')
  );
}

export interface SunlitSkin {
  readonly areaM2: number;
  readonly uValue: number;
  /** °C, from {@link solAirC}. */
  readonly solAirC: number;
}

export interface SunlitPane {
  readonly areaM2: number;
  /** Share of the sun that ends up inside, 0 to 1. */
  readonly solarShare: number;
  readonly sunWM2: number;
}

/**
 * Heat that the sun brings in, over and above that of warm air.
 *
 *     Q = Σ g · A · I + Σ U · A · (T_sa − T_e)
 *
 * W. Skins that are colder than the air (a roof at night) take heat away.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: as {@link solAirC}; the share g of panes by its definition (computed).
 */
export function solarGainW(input: {
  readonly outsideC: number;
  readonly panes: readonly SunlitPane[];
  readonly skins: readonly SunlitSkin[];
}): number {
  const throughPanes = input.panes.reduce((sum, { areaM2, solarShare, sunWM2 }) => {
    if (notNegative(solarShare, 'The share through a pane') > 1)
      throw new RangeError(`The share of the sun through a pane must be at most 1, not ${solarShare}.`);
    return sum + solarShare * notNegative(areaM2, 'The area') * notNegative(sunWM2, 'The sun on a pane');
  }, 0);
  return input.skins.reduce(
    (sum, skin) =>
      sum +
      notNegative(skin.uValue, 'The U-value') *
        notNegative(skin.areaM2, 'The area') *
        (finite(skin.solAirC, 'The sol-air temperature') - input.outsideC),
    throughPanes,
  );
}

/**
 * How warm it gets inside when nothing stores heat.
 *
 *     T_i = T_e + gains / (H_tr + 1200 · V̇)
 *
 * gains: W (≥ 0), of sun, people and things; H_tr: transmission, W/K (≥ 0); V̇: air from outside, m³/s (≥ 0; not both
 * 0). °C. A steady afternoon: pessimistic for an hour of sun, right for many.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: the balance of heat (computed).
 */
export function overheatedC(input: {
  readonly outsideC: number;
  readonly gainsW: number;
  readonly transmissionWPerK: number;
  readonly airM3PerS: number;
}): number {
  const lossWPerK =
    notNegative(input.transmissionWPerK, 'The transmission') +
    airHeatJPerM3K * notNegative(input.airM3PerS, 'The flow of air');
  return (
    finite(input.outsideC, 'The outside temperature') +
    notNegative(input.gainsW, 'The gains') / positive(lossWPerK, 'The loss for each kelvin')
  );
}

/**
 * Air from outside that keeps the inside within so many kelvins of it, m³/s.
 *
 *     V̇ = (gains / ΔT − H_tr) / 1200,   not below 0
 *
 * ΔT: K (> 0); the rest as in {@link overheatedC}, whose inverse it is.
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function coolingAirM3PerS(input: {
  readonly gainsW: number;
  readonly transmissionWPerK: number;
  readonly riseK: number;
}): number {
  const neededWPerK =
    notNegative(input.gainsW, 'The gains') / positive(input.riseK, 'The rise in temperature');
  return Math.max(0, neededWPerK - notNegative(input.transmissionWPerK, 'The transmission')) / airHeatJPerM3K;
}
