import { finite, notNegative, positive } from './argument.ts';

/** How far one axle was raised for the weighing. */
interface Raise {
  /** > 0. */
  readonly wheelbaseM: number;
  /** Height by which the wheel centres of one axle were raised; > 0 and less than the wheelbase. */
  readonly raiseM: number;
}

/** sin θ = H / L, with θ the tilt of the line through the wheel centres. */
function sineOfTilt({ wheelbaseM, raiseM }: Raise): number {
  const sine = positive(raiseM, 'The raise') / positive(wheelbaseM, 'The wheelbase');
  if (sine >= 1) throw new RangeError('An axle cannot be raised by the wheelbase or more.');
  return sine;
}

const cotangentOfTilt = (raise: Raise): number => {
  const sine = sineOfTilt(raise);
  return Math.sqrt(1 - sine * sine) / sine;
};

export interface RaisedAxleReading extends Raise {
  /** Static loaded radius of the wheels, the same at both axles; ≥ 0. */
  readonly wheelRadiusM: number;
  /** > 0. */
  readonly totalKg: number;
  /** Reading of the raised axle while it is raised. */
  readonly raisedAxleKg: number;
  /** From the centre of gravity to the axle that stays down, measured level. */
  readonly centreToStandingAxleM: number;
}

/**
 * Height of the centre of gravity above the road, m, by weighing the axle that is raised: the general form.
 *
 *     h = r + (b − L · R₁ / W) · cot θ        sin θ = H / L
 *
 * r: loaded wheel radius, m; b: centre of gravity to the standing axle, m; L: wheelbase, m; R₁: reading of the raised
 * axle, kg; W: total, kg; H: raise, m. Either axle may be the raised one. Needs equal wheel radii and locked springs.
 *
 * Throws RangeError if a value is not finite, L, H, or W is not greater than 0, r is negative or H ≥ L.
 *
 * Source: vehicle dynamics course notes, moment balance about the wheel contact, equation 3 (read). A light
 * commercial body builder manual (V1.0 February 2015, A.2.3, page 269, read) asks for a raise of at least 600 mm and
 * for the mean of raising the front and raising the rear.
 */
export function centreHeightByRaisedAxle(reading: RaisedAxleReading): number {
  const leverM =
    finite(reading.centreToStandingAxleM, 'The distance of the centre of gravity from the standing axle') -
    (reading.wheelbaseM * finite(reading.raisedAxleKg, 'The reading of the raised axle')) /
      positive(reading.totalKg, 'The total mass');
  return notNegative(reading.wheelRadiusM, 'The wheel radius') + leverM * cotangentOfTilt(reading);
}

export interface StandingAxleGain extends Raise {
  /** > 0. */
  readonly totalKg: number;
  /** What the standing axle reads more when the other one is raised. */
  readonly gainKg: number;
}

/**
 * Height of the centre of gravity above the line through the wheel centres, m, from what the standing axle gains.
 *
 *     c = L · (W₂ − W₁) / (M · tan θ)        sin θ = H / L
 *
 * L: wheelbase, m; W₂ − W₁: gain of the standing axle, kg; M: total, kg; H: raise, m. Add the loaded wheel radius for
 * the height above the road. Exact for any tilt.
 *
 * Throws RangeError if a value is not finite, L, H, or M is not greater than 0 or H ≥ L.
 *
 * Source: derivation on a vehicle builder's page, lines 1 to 8 (read).
 */
export function centreAboveAxlesByGain(weighing: StandingAxleGain): number {
  const { wheelbaseM, gainKg, totalKg } = weighing;
  return (
    (wheelbaseM * finite(gainKg, 'The gain of the standing axle') * cotangentOfTilt(weighing)) /
    positive(totalKg, 'The total mass')
  );
}

/**
 * The short form of `centreAboveAxlesByGain`, for small tilts: it reads high by 1 / cos θ (1.5 % at 10°).
 *
 *     c ≈ L² · (W₂ − W₁) / (H · M)
 *
 * Symbols, units, errors: as there.
 *
 * Source: the last line of the same derivation (read).
 */
export function centreAboveAxlesByGainShort(weighing: StandingAxleGain): number {
  const { wheelbaseM, gainKg, totalKg } = weighing;
  return (
    (wheelbaseM * finite(gainKg, 'The gain of the standing axle')) /
    (sineOfTilt(weighing) * positive(totalKg, 'The total mass'))
  );
}

export interface FrontRaisedWeighing extends Raise {
  readonly frontLevelKg: number;
  readonly rearLevelKg: number;
  readonly frontRaisedKg: number;
  readonly rearRaisedKg: number;
}

/**
 * Height of the centre of gravity above the line through the wheel centres, m, from both axles weighed level and with
 * the front axle raised: a van maker's equations 1 to 9. For a raised rear axle swap front and rear.
 *
 *     X₁ = G_v1 · S₁ / (G_v1 + G_h1)      S₂ = √(S₁² − a²)      X₂ = G_v2 · S₂ / (G_v2 + G_h2)
 *     u = a · X₂ / S₂      y = X₁ − √(u² + X₂²)      β = arccos(a / S₁)      z = y · tan β
 *
 * G_v, G_h: front and rear axle load, kg, 1 level, 2 raised (each pair's sum > 0; G_v2 ≥ 0); S₁: wheelbase, m;
 * a: raise, m. Add the loaded wheel radius for the height above the road. It reduces to the gain form, exactly.
 *
 * Throws RangeError if a value is not finite, S₁, a or a pair's sum is not greater than 0, G_v2 < 0 or a ≥ S₁.
 *
 * Source: body builder guidelines for a large panel van (second generation), clause 3.5, equations 1 to 9 (read; the
 * superscripts were flattened there, so which terms are squared is this project's reading).
 */
export function centreAboveAxlesFrontRaised(weighing: FrontRaisedWeighing): number {
  const { wheelbaseM, raiseM } = weighing;
  const tiltFromVertical = Math.acos(sineOfTilt(weighing));
  const levelKg = finite(weighing.frontLevelKg, 'The level front axle') + weighing.rearLevelKg;
  const raisedKg = notNegative(weighing.frontRaisedKg, 'The raised front axle') + weighing.rearRaisedKg;
  const x1 = (weighing.frontLevelKg * wheelbaseM) / positive(levelKg, 'The sum of the level axle loads');
  const s2 = Math.sqrt(wheelbaseM ** 2 - raiseM ** 2);
  const x2 = (weighing.frontRaisedKg * s2) / positive(raisedKg, 'The sum of the raised axle loads');
  const u = (raiseM * x2) / s2;
  const y = x1 - Math.sqrt(u ** 2 + x2 ** 2);
  return y * Math.tan(tiltFromVertical);
}

/**
 * Height of the common centre of gravity of several parts, m.
 *
 *     H = Σ (m_i · h_i) / Σ m_i
 *
 * m_i: masses, kg (negative for something removed; their sum > 0); h_i: heights above one datum, m, e.g. the road.
 *
 * Throws RangeError if a value is not finite or the masses do not add up to more than 0.
 *
 * Source: bodybuilder instructions for a light commercial chassis, 1st edition 05/2015, 1.15 (symbols read, formula
 * computed from the definition).
 */
export function ladenCentreHeight(
  parts: readonly { readonly massKg: number; readonly heightM: number }[],
): number {
  let totalKg = 0;
  let momentKgM = 0;
  for (const { massKg, heightM } of parts) {
    totalKg += finite(massKg, 'A mass');
    momentKgM += massKg * finite(heightM, 'A height');
  }
  return momentKgM / positive(totalKg, 'The sum of the masses');
}
