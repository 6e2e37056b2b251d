import { finite, notNegative, positive } from '../argument.ts';

/** Melting one kilogram of ice, J/kg (memory: 333.55 kJ/kg; 334 in most tables). */
export const MELTING_HEAT_J_PER_KG = 334_000;

/** A layer round a pipe. */
export interface PipeInsulation {
  readonly outerDiameterM: number;
  readonly thicknessM: number;
  readonly conductivityWMK: number;
}

/**
 * Resistance of insulation round a metre of pipe, m K/W.
 *
 *     R = ln(D₃/D₂) / (2 π λ),  D₃ = D₂ + 2 s
 *
 * D₂: outer diameter of the pipe, m (> 0); s: thickness, m (≥ 0; 0 gives 0); λ: conductivity, W/(m K) (> 0).
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: ASHRAE Handbook of Fundamentals 2009, chapter 23 (read as printed elsewhere).
 */
export function pipeInsulationResistanceMKW({
  outerDiameterM,
  thicknessM,
  conductivityWMK,
}: PipeInsulation): number {
  const inner = positive(outerDiameterM, 'The outer diameter');
  const outer = inner + 2 * notNegative(thicknessM, 'The thickness of the insulation');
  return Math.log(outer / inner) / (2 * Math.PI * positive(conductivityWMK, 'The conductivity'));
}

/**
 * Resistance of the film of air round a metre of pipe, m K/W: R = R_s / (π D). R_s: surface resistance, m² K/W (≥ 0);
 * D: outer diameter over the insulation, m (> 0). Throws RangeError if a value is not finite or out of its range.
 */
export const pipeFilmResistanceMKW = (outerDiameterM: number, surfaceM2KW: number): number =>
  notNegative(surfaceM2KW, 'The surface resistance') /
  (Math.PI * positive(outerDiameterM, 'The outer diameter'));

/** Water that stands still in a pipe in the cold. */
export interface StandingPipe {
  readonly innerDiameterM: number;
  /** Of a metre of pipe, from water to air. */
  readonly resistanceMKW: number;
  readonly waterC: number;
  readonly airC: number;
}

/** Water as the handbook takes it: 62.4 lb/ft³ and 1 Btu/(lb °F). */
export const HANDBOOK_WATER = { densityKgM3: 999.55, heatCapacityJKgK: 4186.8 } as const;

/**
 * How long water that stands in a pipe takes to cool to 0 °C, s; infinite if the air is at 0 °C or warmer, 0 if the
 * water is at 0 °C already.
 *
 *     t = ρ c π (D₁/2)² R ln((T_i − T_a)/(T_f − T_a)),  T_f = 0 °C
 *
 * D₁: inner diameter, m (> 0); R: {@link pipeInsulationResistanceMKW}, with {@link pipeFilmResistanceMKW} on top if
 * wanted, m K/W (≥ 0); T_i: water, °C (≥ 0); T_a: air, °C. Without the heat of the wall and of freezing, so that it is
 * a little short of the truth; in narrow tube it is minutes.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: ASHRAE Handbook of Fundamentals 2009, chapter 23, eq. 1 (read as printed elsewhere); the film of air: own
 * addition, since without insulation the formula gives no time at all.
 */
export const pipeSecondsToFreezing = (pipe: StandingPipe): number =>
  cooling(pipeTimeConstantS(pipe), pipe.waterC, pipe.airC);

/**
 * How slowly water in a pipe follows the air, s: ρ c π (D₁/2)² R; as {@link pipeSecondsToFreezing}. After so long it has
 * gone 63 % of the way.
 */
export function pipeTimeConstantS({
  innerDiameterM,
  resistanceMKW,
}: Pick<StandingPipe, 'innerDiameterM' | 'resistanceMKW'>): number {
  const areaM2 = (Math.PI * positive(innerDiameterM, 'The inner diameter') ** 2) / 4;
  const { densityKgM3, heatCapacityJKgK } = HANDBOOK_WATER;
  return densityKgM3 * heatCapacityJKgK * areaM2 * notNegative(resistanceMKW, 'The resistance');
}

/** A tank of water in the cold. */
export interface StandingTank {
  readonly massKg: number;
  /** From water to air: Σ U A, W/K. */
  readonly conductanceWK: number;
  readonly waterC: number;
  readonly airC: number;
}

/**
 * How long a tank takes to cool to 0 °C, s; infinite if the air is at 0 °C or warmer.
 *
 *     t = m c / G · ln((T_0 − T_a)/(0 − T_a))
 *
 * m: kg (≥ 0); G: conductance, W/K (> 0); T_0: water, °C (≥ 0); T_a: air, °C; c: 4200 J/(kg K). The water is taken as
 * stirred; taps, valves and the pump beside it freeze long before.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: heat balance of a body with one temperature (definition).
 */
export const tankSecondsToFreezing = (tank: StandingTank): number =>
  cooling(tankTimeConstantS(tank), tank.waterC, tank.airC);

/** What warms a kilogram of water in a tank by a kelvin, J/(kg K), rounded. */
export const TANK_WATER_J_PER_KG_K = 4200;

/** How slowly a tank follows the air, s: m c / G; as {@link tankSecondsToFreezing}. */
export const tankTimeConstantS = ({
  massKg,
  conductanceWK,
}: Pick<StandingTank, 'massKg' | 'conductanceWK'>): number =>
  (notNegative(massKg, 'The mass of the water') * TANK_WATER_J_PER_KG_K) /
  positive(conductanceWK, 'The conductance');

/**
 * How long a tank at 0 °C takes until a share of it is ice, s; infinite if the air is at 0 °C or warmer.
 *
 *     t = x m L / (G (0 − T_a))
 *
 * x: share (0 to 1); L: 334 kJ/kg; else as {@link tankSecondsToFreezing}. Water grows by 9 % as it freezes. Without the
 * resistance of the ice, so that it is short of the truth.
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function tankSecondsOfFreezing(
  { massKg, conductanceWK, airC }: Omit<StandingTank, 'waterC'>,
  iceShare: number,
): number {
  if (notNegative(iceShare, 'The share of ice') > 1) {
    throw new RangeError(`The share of ice must not be more than 1, not ${iceShare}.`);
  }
  const heat = iceShare * notNegative(massKg, 'The mass of the water') * MELTING_HEAT_J_PER_KG;
  const conductance = positive(conductanceWK, 'The conductance');
  return finite(airC, 'The temperature of the air') >= 0
    ? Number.POSITIVE_INFINITY
    : heat / (conductance * -airC);
}

/**
 * Conductance of the walls of a tank, W/K: G = Σ A / (R_s + s/λ).
 *
 * A: area, m² (≥ 0); R_s: surface resistance of the air, m² K/W (≥ 0); s: thickness of the insulation, m (≥ 0); λ, W/(m K)
 * (> 0). The tank's own wall is left out. Throws RangeError if a value is out of its range or a wall has no resistance.
 */
export const tankConductanceWK = (
  walls: readonly {
    readonly areaM2: number;
    readonly surfaceM2KW: number;
    readonly insulationM: number;
    readonly conductivityWMK: number;
  }[],
): number =>
  walls.reduce((sum, { areaM2, surfaceM2KW, insulationM, conductivityWMK }) => {
    const layer =
      notNegative(insulationM, 'The thickness of the insulation') /
      positive(conductivityWMK, 'The conductivity');
    const resistance = notNegative(surfaceM2KW, 'The surface resistance') + layer;
    return sum + notNegative(areaM2, 'The area of a wall') / positive(resistance, 'The resistance of a wall');
  }, 0);

/** Seconds from water to 0 °C for a time constant, s. */
function cooling(timeConstantS: number, waterC: number, airC: number): number {
  const water = notNegative(waterC, 'The temperature of the water');
  const air = finite(airC, 'The temperature of the air');
  // Water at 0 °C has already got there, whatever the air.
  if (water === 0) return 0;
  return air >= 0 ? Number.POSITIVE_INFINITY : timeConstantS * Math.log((water - air) / -air);
}
