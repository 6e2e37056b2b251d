import { monthName } from '../../build/energy.ts';
import type { DampYear, NamedVapourLayer } from '../../build/vapour-walls.ts';
import { saturationPressurePa } from '../../calc/air/saturation.ts';
import {
  airPermeability,
  type GlaserMonthResult,
  type GlaserProfile,
  type GlaserYear,
  glaserProfile,
  type Plane,
  type PlaneWater,
  type VapourMonth,
  type VapourWall,
} from '../../calc/heat/glaser.ts';
import type { Part, PlanPath, Step } from '../../engine/finding.ts';
import { closeC, condensate, duration, kelvins, length, pressure } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';

/*
 * How the water inside a wall comes about: the wall in the month that brings most, what gathers there, and the year.
 */

export interface WetWall extends VapourWall {
  readonly path: PlanPath;
  readonly layers: readonly NamedVapourLayer[];
}

/** Where in a wall a plane lies: "between XPS and plywood". */
export function placeOf({ layer, depth }: Plane, layers: readonly NamedVapourLayer[]): string {
  const inner = layers[layer]?.name ?? 'lining';
  if (depth > 0) return `in the ${inner}`;
  return `between ${layers[layer - 1]?.name ?? 'skin'} and ${inner}`;
}

/** Of a year whose finding is what is left after it, or the most that it held. */
export function vapourSteps(
  wall: WetWall,
  damp: DampYear,
  year: GlaserYear,
  measured: 'left' | 'peak',
): readonly Step[] {
  const worst = worstMonth(year, damp.months);
  const at = worst && year.months.indexOf(worst);
  const month = worst && damp.months[worst.month];
  if (at === undefined || !worst || !month) return [];
  const before = year.months[at - 1]?.water ?? [];
  const profile = glaserProfile(wall, month, wetPlanesOf(wall, month, before));
  return [
    {
      what: `The air inside in ${monthName(worst.month)}, ${year.worst ? 'which brings most' : 'the coldest month'}`,
      sum: say`${closeC(month.insideC)} on the mean, by ${damp.humidity.words}; outside ${closeC(month.outsideC)} and ${pressure(month.outsidePa)}, ${damp.year.of}`,
      result: pressure(month.insidePa),
      paths: [
        ['living', 'place'],
        ['heat', 'inside'],
      ],
    },
    throughStep(wall, month, profile),
    ...gatheringSteps(wall, month, profile, worst, before),
    yearStep(wall, year, measured),
  ];
}

/** The month with the greatest gain; the coldest where nothing gathers at all. */
const worstMonth = (
  { months, worst }: GlaserYear,
  weather: readonly VapourMonth[],
): GlaserMonthResult | undefined => {
  const rank = ({ changeKgPerM2, month }: GlaserMonthResult): number =>
    worst ? changeKgPerM2 : -(weather[month]?.outsideC ?? 0);
  return months.reduce<GlaserMonthResult | undefined>(
    (most, each) => (most === undefined || rank(each) > rank(most) ? each : most),
    undefined,
  );
};

const isSame = (one: Plane, other: Plane): boolean =>
  one.layer === other.layer && Math.abs(one.depth - other.depth) < 1e-9;

const wetPlanesOf = (wall: VapourWall, month: VapourMonth, before: readonly PlaneWater[]): number[] =>
  glaserProfile(wall, month).planes.flatMap((plane, index) =>
    before.some((wet) => isSame(wet.plane, plane)) ? [index] : [],
  );

function throughStep({ layers, path }: WetWall, month: VapourMonth, profile: GlaserProfile): Step {
  const { temperaturesC, saturationsPa, pressuresPa } = profile;
  const warmer = (index: number) =>
    kelvins((temperaturesC[index + 1] ?? Number.NaN) - (temperaturesC[index] ?? Number.NaN));
  const face = (index: number) => [
    closeC(temperaturesC[index + 1] ?? Number.NaN),
    pressure(saturationsPa[index] ?? Number.NaN),
    pressure(pressuresPa[index] ?? Number.NaN),
  ];
  const film = (name: string): Pick<Part, 'name' | 'path' | 'origin'> => ({ name, path: [], origin: '' });
  const last = layers.length;
  return {
    what: 'The wall from outside in: how cold each layer is on its cold face, and the vapour there',
    sum: say`s: as much still air as the layer holds vapour back; p_s: saturated, p: as it is, on a straight line over s and nowhere above p_s`,
    result: kelvins(month.insideC - month.outsideC),
    parts: {
      columns: ['s', 'cold face', 'p_s', 'p', 'warmer by'],
      rows: [
        {
          ...film('air outside'),
          values: [
            length(0),
            closeC(month.outsideC),
            pressure(saturationPressurePa(month.outsideC)),
            pressure(month.outsidePa),
          ],
          adds: warmer(0),
        },
        ...layers.map(
          ({ name, equivalentAirM }, index): Part => ({
            name,
            path,
            origin: '',
            values: [length(equivalentAirM), ...face(index)],
            adds: warmer(index + 1),
          }),
        ),
        { ...film('air inside'), values: [length(0), ...face(last)], adds: warmer(last + 1) },
      ],
    },
    paths: [path],
  };
}

/** A point of the thread of vapour pressure, from outside. */
interface Corner {
  readonly airM: number;
  readonly pressurePa: number;
}

function gatheringSteps(
  wall: WetWall,
  month: VapourMonth,
  profile: GlaserProfile,
  { month: index, water, changeKgPerM2 }: GlaserMonthResult,
  before: readonly PlaneWater[],
): readonly Step[] {
  if (profile.flows.length === 0) return [];
  const corners: readonly Corner[] = [
    { airM: 0, pressurePa: month.outsidePa },
    ...profile.flows.map(({ plane }) => cornerOf(plane, wall, profile)),
    { airM: airUpTo(wall, { layer: wall.layers.length, depth: 0 }), pressurePa: month.insidePa },
  ];
  /** What passes a metre of air from each corner to the next outwards, over the month. */
  const passed = corners.slice(1).map(({ airM, pressurePa }, at): number => {
    const outer = corners[at];
    return outer
      ? (airPermeability * month.durationS * (pressurePa - outer.pressurePa)) / (airM - outer.airM)
      : 0;
  });
  const heldIn = (those: readonly PlaneWater[], plane: Plane): number =>
    those.find((each) => isSame(each.plane, plane))?.waterKgPerM2 ?? 0;
  return [
    {
      what: `What gathers in ${monthName(index)}: g·t, g = δ·((p_i − p_c)/s_i − (p_c − p_e)/s_e)`,
      sum: say`δ = 2·10⁻¹⁰ kg/(m·s·Pa), t = ${duration(month.durationS)}${inNumbers(corners)}`,
      result: condensate(changeKgPerM2),
      parts: {
        columns: ['comes', 'goes on', 'stays'],
        rows: profile.flows.map(({ plane }, at) => ({
          name: placeOf(plane, wall.layers),
          path: wall.path,
          origin: 'computed',
          values: [condensate(passed[at + 1] ?? 0), condensate(passed[at] ?? 0)],
          adds: condensate(heldIn(water, plane) - heldIn(before, plane)),
        })),
      },
    },
  ];
}

/** With one wet plane between outside and inside the formula can be written out. */
function inNumbers([outside, wet, inside, ...more]: readonly Corner[]): Phrase {
  if (!outside || !wet || !inside || more.length > 0) return [];
  return say`: (${pressure(inside.pressurePa)} − ${pressure(wet.pressurePa)}) / ${length(inside.airM - wet.airM)} − (${pressure(wet.pressurePa)} − ${pressure(outside.pressurePa)}) / ${length(wet.airM)}`;
}

const airUpTo = ({ layers }: VapourWall, { layer, depth }: Plane): number =>
  layers.slice(0, layer).reduce((sum, { equivalentAirM }) => sum + equivalentAirM, 0) +
  depth * (layers[layer]?.equivalentAirM ?? 0);

/** Where water is, the air is saturated; within a layer the temperature runs straight. */
function cornerOf(plane: Plane, wall: VapourWall, { temperaturesC }: GlaserProfile): Corner {
  const outerC = temperaturesC[plane.layer + 1] ?? Number.NaN;
  const innerC = temperaturesC[plane.layer + 2] ?? outerC;
  return {
    airM: airUpTo(wall, plane),
    pressurePa: saturationPressurePa(outerC + plane.depth * (innerC - outerC)),
  };
}

function yearStep(
  { path }: WetWall,
  { months, peakKgPerM2, leftKgPerM2 }: GlaserYear,
  measured: 'left' | 'peak',
): Step {
  const wettest = months.findIndex(({ totalKgPerM2 }) => totalKgPerM2 === peakKgPerM2);
  const counted = measured === 'left' ? months : months.slice(0, wettest + 1);
  const of =
    measured === 'left'
      ? 'What is left after the year, month by month'
      : peakKgPerM2 > 0
        ? 'The most that it holds, month by month up to then'
        : 'In no month is any face saturated, so no water gathers';
  if (peakKgPerM2 === 0) return { what: of, result: condensate(0) };
  return {
    what: of,
    sum: say`gained, and below 0 dried`,
    result: condensate(measured === 'left' ? leftKgPerM2 : peakKgPerM2),
    parts: {
      columns: ['held then', 'gained'],
      rows: counted.map(({ month, changeKgPerM2, totalKgPerM2 }) => ({
        name: monthName(month),
        path,
        origin: 'computed',
        values: [condensate(totalKgPerM2)],
        adds: condensate(changeKgPerM2),
      })),
    },
  };
}
