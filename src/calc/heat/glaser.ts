import { saturationPressurePa } from '../air/saturation.ts';
import { finite, notNegative, positive } from '../argument.ts';
import { type Point, pressureAlong, tautBelow } from './hull.ts';
import { temperaturesThrough } from './layers.ts';

/**
 * Vapour that passes a metre of still air by each pascal, kg/(m·s·Pa). ISO 13788, as in an open program of the Spanish
 * code (read).
 */
export const airPermeability = 2e-10;

/** Insulation is cut into slices no better than this, so that water inside it is found (ISO 13788; memory), m²·K/W. */
export const greatestSliceM2KPerW = 0.25;

/** A layer as vapour sees it. */
export interface VapourLayer {
  /** m²·K/W, ≥ 0; 0 for a foil. */
  readonly resistanceM2KPerW: number;
  /** Thickness of still air that holds vapour back as well (μ · d), m, > 0. A gap of air has 0.01. */
  readonly equivalentAirM: number;
}

export interface VapourWall {
  readonly insideM2KPerW: number;
  readonly outsideM2KPerW: number;
  /** From outside in. */
  readonly layers: readonly VapourLayer[];
}

/** One span of steady weather; a year has twelve. */
export interface VapourMonth {
  readonly durationS: number;
  readonly outsideC: number;
  readonly outsidePa: number;
  readonly insideC: number;
  readonly insidePa: number;
}

/** A plane in which water can gather. */
export interface Plane {
  /** The layer that it lies in or on the outer face of, counted from outside, from 0. */
  readonly layer: number;
  /** How deep in that layer: 0 on its outer face, 0.5 in the middle. */
  readonly depth: number;
}

export interface GlaserOptions {
  /** m²·K/W; Infinity keeps the layers whole, as hand calculations do. */
  readonly greatestSliceM2KPerW?: number;
  /** Pa from °C, where a source uses a formula of its own. */
  readonly saturationPa?: (temperatureC: number) => number;
}

/** What happens in one span of weather to water in one plane. */
export interface PlaneFlow {
  readonly plane: Plane;
  /** Above 0 it gathers, below 0 it dries, kg/(m²·s). */
  readonly rateKgPerM2S: number;
}

export interface GlaserProfile {
  readonly planes: readonly Plane[];
  /** From the outside air to the inside air, the films included: of the layers, uncut, °C. */
  readonly temperaturesC: readonly number[];
  /** At the faces of the layers, uncut, from outside, Pa. */
  readonly pressuresPa: readonly number[];
  readonly saturationsPa: readonly number[];
  /** Planes where water gathers or, where wet, dries. */
  readonly flows: readonly PlaneFlow[];
}

interface Slices {
  readonly resistances: readonly number[];
  /** Sum of equivalent air from outside, at each face, one more than the slices. */
  readonly airM: readonly number[];
  /** At each inner face. */
  readonly planes: readonly Plane[];
  /** Which face each face of an uncut layer is. */
  readonly facesOfLayers: readonly number[];
}

function slicesOf(wall: VapourWall, greatest: number): Slices {
  positive(greatest === Number.POSITIVE_INFINITY ? 1 : greatest, 'The greatest resistance of a slice');
  if (wall.layers.length === 0) throw new RangeError('A wall needs at least one layer.');
  const resistances: number[] = [];
  const airM: number[] = [0];
  const planes: Plane[] = [];
  const facesOfLayers: number[] = [0];
  let passedAirM = 0;
  wall.layers.forEach((layer, index) => {
    const resistance = notNegative(layer.resistanceM2KPerW, 'The resistance of a layer');
    const equivalentAirM = positive(layer.equivalentAirM, 'The equivalent air layer');
    // A rounding error must not cut one slice more.
    const count = Math.max(1, Math.ceil(resistance / greatest - 1e-9));
    for (let slice = 0; slice < count; slice += 1) {
      if (index > 0 || slice > 0) planes.push({ layer: index, depth: slice / count });
      resistances.push(resistance / count);
      passedAirM += equivalentAirM / count;
      airM.push(passedAirM);
    }
    facesOfLayers.push(resistances.length);
  });
  return { resistances, airM, planes, facesOfLayers };
}

interface Conditions {
  readonly month: VapourMonth;
  readonly slices: Slices;
  readonly facesC: readonly number[];
  readonly saturations: readonly number[];
  readonly points: readonly Point[];
}

function conditionsOf(
  wall: VapourWall,
  month: VapourMonth,
  slices: Slices,
  saturationPa: (temperatureC: number) => number,
): Conditions {
  const temperatures = temperaturesThrough(
    [
      notNegative(wall.outsideM2KPerW, 'The outside surface resistance'),
      ...slices.resistances,
      notNegative(wall.insideM2KPerW, 'The inside surface resistance'),
    ],
    finite(month.outsideC, 'The outside temperature'),
    finite(month.insideC, 'The inside temperature'),
  );
  const facesC = temperatures.slice(1, -1);
  const saturations = facesC.map(saturationPa);
  const last = facesC.length - 1;
  const outsidePa = notNegative(month.outsidePa, 'The vapour pressure outside');
  const insidePa = notNegative(month.insidePa, 'The vapour pressure inside');
  const points = facesC.map((_face, index) => ({
    airM: slices.airM[index] ?? Number.NaN,
    pressurePa: index === 0 ? outsidePa : index === last ? insidePa : (saturations[index] ?? Number.NaN),
  }));
  return { month, slices, facesC, saturations, points };
}

/** Corners of the thread of pressure that also goes through every wet face. */
function cornersOf(points: readonly Point[], wetFaces: readonly number[]): number[] {
  const stops = [0, ...wetFaces, points.length - 1];
  const corners: number[] = [0];
  for (let index = 1; index < stops.length; index += 1) {
    const from = stops[index - 1] ?? 0;
    const to = stops[index] ?? 0;
    for (const corner of tautBelow(points.slice(from, to + 1)).slice(1)) corners.push(from + corner);
  }
  return corners;
}

/** Water gained by each inner face that is a corner, kg/(m²·s). */
function ratesAt(points: readonly Point[], corners: readonly number[]): ReadonlyMap<number, number> {
  const flowBetween = (from: number, to: number): number => {
    const a = points[from];
    const b = points[to];
    if (a === undefined || b === undefined) return 0;
    return (airPermeability * (b.pressurePa - a.pressurePa)) / (b.airM - a.airM);
  };
  return new Map(
    corners.slice(1, -1).map((face, index) => {
      const before = corners[index] ?? 0;
      const after = corners[index + 2] ?? points.length - 1;
      return [face, flowBetween(face, after) - flowBetween(before, face)] as const;
    }),
  );
}

/**
 * Vapour through a wall in steady weather, by Glaser's method: the pressure falls in a straight line over the
 * equivalent air, but nowhere above saturation. Where it would, the thread of pressure is drawn taut below the
 * saturation of all faces (its lower convex hull, so that several planes come out by themselves), and at its corners
 * water gathers.
 *
 *     g = δ_0 · ((p_in − p_c) / s_in − (p_c − p_out) / s_out),   δ_0 = 2·10⁻¹⁰ kg/(m·s·Pa)
 *
 * p: Pa at the corner c and its neighbours inwards and outwards; s: equivalent air to them, m; g in kg/(m²·s).
 * `wetPlanes`: planes (indexes of `planes`) that hold water already, at saturation whatever the rest does; they may
 * dry. Nothing is known of moving air, driving rain and water in wood: this is a method for comparing build-ups.
 *
 * Throws RangeError if a value is not finite or out of its range, or there is no layer.
 *
 * Source: ISO 13788 as in an open program of the Spanish code, whose example it reproduces to its digits (read).
 */
export function glaserProfile(
  wall: VapourWall,
  month: VapourMonth,
  wetPlanes: readonly number[] = [],
  options: GlaserOptions = {},
): GlaserProfile {
  const slices = slicesOf(wall, options.greatestSliceM2KPerW ?? greatestSliceM2KPerW);
  const conditions = conditionsOf(wall, month, slices, options.saturationPa ?? saturationPressurePa);
  const wetFaces = [...wetPlanes].sort((a, b) => a - b).map((plane) => plane + 1);
  const corners = cornersOf(conditions.points, wetFaces);
  const rates = ratesAt(conditions.points, corners);
  const { facesOfLayers, planes } = slices;
  return {
    planes,
    temperaturesC: [
      month.outsideC,
      ...facesOfLayers.map((face) => conditions.facesC[face] ?? Number.NaN),
      month.insideC,
    ],
    pressuresPa: facesOfLayers.map((face) =>
      pressureAlong(conditions.points, corners, slices.airM[face] ?? Number.NaN),
    ),
    saturationsPa: facesOfLayers.map((face) => conditions.saturations[face] ?? Number.NaN),
    flows: planes.flatMap((plane, index) => {
      const rateKgPerM2S = rates.get(index + 1);
      return rateKgPerM2S === undefined ? [] : [{ plane, rateKgPerM2S }];
    }),
  };
}

export interface PlaneWater {
  readonly plane: Plane;
  readonly waterKgPerM2: number;
}

export interface GlaserMonthResult {
  /** Which of the given months, from 0. */
  readonly month: number;
  /** Gained less dried in this month, all planes, kg/m². */
  readonly changeKgPerM2: number;
  /** At its end. Dry planes are left out. */
  readonly water: readonly PlaneWater[];
  readonly totalKgPerM2: number;
}

export interface GlaserYear {
  /** In the order they were reckoned, from the first month in which water gathers in a dry wall. */
  readonly months: readonly GlaserMonthResult[];
  /** Most that all planes hold together at the end of any month, kg/m². */
  readonly peakKgPerM2: number;
  /** Most in one plane, and where; undefined where nothing gathers. */
  readonly worst: PlaneWater | undefined;
  /** What is left after the year, kg/m². */
  readonly leftKgPerM2: number;
  /** All that gathered dries within the year. */
  readonly driesOut: boolean;
  /** Water gathers in a dry wall in every month, so there is no right month to begin with. */
  readonly everyMonth: boolean;
}

/** Less than this is what a rounding error leaves behind, kg/m². */
const drop = 1e-9;

/**
 * Water inside a wall over a year of months, each at steady weather, from the first month in which a dry wall gathers
 * water.
 *
 *     M_k(t) = M_k(0) + g_k · t ≥ 0
 *
 * A plane with water stays at saturation until it is dry; where that happens within a month, the rest of the month is
 * reckoned anew without it. All masses kg/m². A year may have any number of spans, in their order round the year.
 *
 * Throws RangeError if there is no month or a value is out of its range.
 *
 * Source: ISO 13788, annual moisture balance (memory of the clause; the single month as {@link glaserProfile}). The cut
 * within a month is own choice: the standard sets a negative rest to 0.
 */
export function glaserYear(
  wall: VapourWall,
  months: readonly VapourMonth[],
  options: GlaserOptions = {},
): GlaserYear {
  if (months.length === 0) throw new RangeError('A year needs at least one month.');
  const slices = slicesOf(wall, options.greatestSliceM2KPerW ?? greatestSliceM2KPerW);
  const weather = months.map((month) =>
    conditionsOf(wall, month, slices, options.saturationPa ?? saturationPressurePa),
  );
  const gathers = weather.map(({ points }) => tautBelow(points).length > 2);
  const first = gathers.findIndex(
    (wet, index) => wet && gathers[(index + months.length - 1) % months.length] !== true,
  );
  const start = Math.max(0, first);
  const water = new Map<number, number>();
  const results: GlaserMonthResult[] = [];
  let worst: PlaneWater | undefined;
  for (let step = 0; step < months.length; step += 1) {
    const month = (start + step) % months.length;
    const conditions = weather[month];
    if (conditions === undefined) continue;
    const before = sumOf(water);
    passMonth(conditions, water);
    const planesWithWater = slices.planes.flatMap((plane, index) => {
      const waterKgPerM2 = water.get(index + 1);
      return waterKgPerM2 === undefined ? [] : [{ plane, waterKgPerM2 }];
    });
    for (const one of planesWithWater)
      if (worst === undefined || one.waterKgPerM2 > worst.waterKgPerM2) worst = one;
    const totalKgPerM2 = sumOf(water);
    results.push({ month, changeKgPerM2: totalKgPerM2 - before, water: planesWithWater, totalKgPerM2 });
  }
  const leftKgPerM2 = sumOf(water);
  return {
    months: results,
    peakKgPerM2: Math.max(...results.map(({ totalKgPerM2 }) => totalKgPerM2)),
    worst,
    leftKgPerM2,
    driesOut: leftKgPerM2 <= drop,
    everyMonth: gathers.every((wet) => wet),
  };
}

const sumOf = (water: ReadonlyMap<number, number>): number =>
  [...water.values()].reduce((sum, one) => sum + one, 0);

/** Carries the water of each face (kg/m²) through one month. */
function passMonth(conditions: Conditions, water: Map<number, number>): void {
  let leftS = positive(conditions.month.durationS, 'The length of a month');
  // Each round but the last dries a face for good, so there are at most as many as faces.
  for (let round = 0; round <= conditions.points.length && leftS > 0; round += 1) {
    const wetFaces = [...water.keys()].sort((a, b) => a - b);
    const rates = ratesAt(conditions.points, cornersOf(conditions.points, wetFaces));
    const untilDryS = Math.min(
      leftS,
      ...[...rates].map(([face, rate]) =>
        rate < 0 && water.has(face) ? (water.get(face) ?? 0) / -rate : Number.POSITIVE_INFINITY,
      ),
    );
    for (const [face, rate] of rates) {
      const now = (water.get(face) ?? 0) + rate * untilDryS;
      if (now > drop) water.set(face, now);
      else water.delete(face);
    }
    leftS -= untilDryS;
  }
}
