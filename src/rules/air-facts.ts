import type { Air, Fan, Vent } from '../build/air.ts';
import type { Build } from '../build/build.ts';
import { type Flame, flamesOf } from '../build/flames.ts';
import { type NightAir, nightAirOf } from '../build/night-air.ts';
import { type FanCurve, type FannedFlow, flowOfFans, straightFanCurve } from '../calc/air/fans.ts';
import { parallelAreaM2 } from '../calc/air/openings.ts';
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

// --- Fans ---

/** A fan of which flow, pressure and direction are known. */
export interface KnownFan {
  readonly fan: Fan;
  readonly blows: NonNullable<Fan['blows']>;
  readonly openFlowM3PerS: number;
  readonly curve: FanCurve;
}

export const fanKeys = ({ path, blows, openFlowM3PerS, stallPa }: Fan): readonly string[] => [
  ...(blows === undefined ? [`${path.join('.')}.blows`] : []),
  ...(openFlowM3PerS === undefined ? [`${path.join('.')}.flow`] : []),
  ...(stallPa === undefined ? [`${path.join('.')}.pressure`] : []),
];

export const knownFans = (air: Air): readonly KnownFan[] =>
  air.fans.flatMap((fan): KnownFan[] => {
    const { blows, openFlowM3PerS, stallPa } = fan;
    return blows === undefined || openFlowM3PerS === undefined || stallPa === undefined
      ? []
      : [{ fan, blows, openFlowM3PerS, curve: straightFanCurve(openFlowM3PerS, stallPa) }];
  });

export interface Fanned extends FannedFlow {
  /** What else is open, m². */
  readonly openM2: number;
  readonly openings: readonly Vent[];
  /** Of each of the fans that were asked for, in their order. */
  readonly flowsM3PerS: readonly number[];
}

/**
 * What fans move together through the vents that no fan sits in, all of them open, also those that can be shut. Windows and
 * doors are shut. A vent that serves a thing of its own counts only for a fan that serves it too.
 */
export function fanned(air: Air, fans: readonly KnownFan[]): Fanned {
  const taken = new Set(air.fans.flatMap(({ vent }) => (vent ? [vent.name] : [])));
  const served = new Set(fans.map(({ fan }) => fan.serves));
  const openings = air.vents.filter(
    ({ name, serves }) => !taken.has(name) && (serves === undefined || served.has(serves)),
  );
  const openM2 = parallelAreaM2(openings.map(({ freeAreaM2 }) => freeAreaM2));
  const curves = (blows: KnownFan['blows']) =>
    fans.filter((fan) => fan.blows === blows).map(({ curve }) => curve);
  const flow = flowOfFans({
    exhausts: curves('exhaust'),
    intakes: curves('intake'),
    opening: { areaM2: openM2 },
  });
  const [out, into] = [flow.exhaustM3S.values(), flow.intakeM3S.values()];
  return {
    ...flow,
    openM2,
    openings,
    flowsM3PerS: fans.map(({ blows }) => (blows === 'exhaust' ? out : into).next().value ?? 0),
  };
}
