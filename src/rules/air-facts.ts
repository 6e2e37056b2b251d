import type { Air } from '../build/air.ts';
import type { Build } from '../build/build.ts';
import { type Flame, flamesOf } from '../build/flames.ts';
import { type NightAir, nightAirOf } from '../build/night-air.ts';
import type { AirLimit, AirLimitId } from '../catalogue/air/limits.ts';
import { airLimits } from '../catalogue/air/limits.ts';
import { given, missing, type Need } from '../engine/rule.ts';

/* What several rules of the air need. */

export const vents: Need<Air> = ({ air }) =>
  air && air.vents.length > 0 ? given(air) : missing('air.vents');

export const night: Need<NightAir> = (build) => {
  const found = nightAirOf(build);
  return found.missing.length === 0 && 'airM3' in found ? given(found) : missing(...found.missing);
};

export const isGasAboard = ({ bodies, gas }: Build): boolean =>
  bodies.some(({ variable }) => variable?.group === 'gas') || (gas?.appliances.length ?? 0) > 0;

/** What burns. A plan that names neither gas nor a heater says nothing about it. */
export const flames: Need<readonly Flame[]> = (build) => {
  const { gas, heat } = build;
  if (isGasAboard(build) && (gas?.appliances.length ?? 0) === 0) return missing('gas.appliances');
  return gas || heat?.heater ? given(flamesOf(gas, heat)) : missing('gas.appliances', 'heat.heater');
};

/** The limit and what its finding carries from the row. */
export const airLimit = (id: AirLimitId): AirLimit & { readonly cautions: readonly string[] } => {
  const row = airLimits[id];
  return { ...row, cautions: row.caution === undefined ? [] : [row.caution] };
};
