import { notNegative } from '../argument.ts';
import {
  type GlaserOptions,
  type GlaserYear,
  glaserYear,
  type VapourLayer,
  type VapourMonth,
  type VapourWall,
} from './glaser.ts';

/** A layer with what a square metre of it weighs. */
export interface WeighedLayer extends VapourLayer {
  readonly massKgPerM2: number;
}

/** Something that could be laid into the wall. */
export interface AddedLayer {
  readonly name: string;
  readonly layer: WeighedLayer;
  /** Which layer it goes on the inner side of, counted from outside, from 0; −1 for the outermost place. */
  readonly insideOf: number;
}

/** A layer that could be made thicker; its resistance, equivalent air and mass grow with it. */
export interface ThickerLayer {
  readonly name: string;
  readonly layer: number;
  /** New thickness over old, > 1. */
  readonly times: number;
}

export interface Remedy {
  /** Names of what is done, foils first. */
  readonly changes: readonly string[];
  /** More than now, kg/m². */
  readonly addedKgPerM2: number;
  /** From outside in. */
  readonly layers: readonly WeighedLayer[];
  readonly year: GlaserYear;
}

/** What counts as dry enough. */
export interface Acceptance {
  /** Most that the wall may hold at the end of any month, kg/m². */
  readonly peakKgPerM2: number;
  /** Most that may be left after a year, kg/m²: 0 if all must dry. */
  readonly leftKgPerM2: number;
}

/** Whether a year of water is dry enough. */
export const accepted = (year: GlaserYear, { peakKgPerM2, leftKgPerM2 }: Acceptance): boolean =>
  year.peakKgPerM2 <= peakKgPerM2 && (year.driesOut || year.leftKgPerM2 <= leftKgPerM2);

/**
 * The wall with changes made: thicker layers, then added ones. Places of added layers count the layers as they are
 * now; two at one place lie in the order given, the first outermost.
 *
 * Throws RangeError if a place or a layer does not exist or a layer would not get thicker.
 */
export function changedLayers(
  layers: readonly WeighedLayer[],
  added: readonly AddedLayer[],
  thicker: readonly ThickerLayer[],
): WeighedLayer[] {
  for (const { insideOf } of added)
    if (!Number.isInteger(insideOf) || insideOf < -1 || insideOf >= layers.length)
      throw new RangeError(`There is no place on the inner side of layer ${insideOf}.`);
  for (const { layer, times } of thicker) {
    if (layers[layer] === undefined) throw new RangeError(`There is no layer ${layer} to make thicker.`);
    if (!(times > 1)) throw new RangeError(`A thicker layer must be more than once as thick, not ${times}.`);
  }
  const at = (place: number) => added.filter(({ insideOf }) => insideOf === place).map(({ layer }) => layer);
  return [
    ...at(-1),
    ...layers.flatMap((layer, index) => {
      const times = thicker
        .filter((one) => one.layer === index)
        .reduce((product, one) => product * one.times, 1);
      return [
        {
          resistanceM2KPerW: layer.resistanceM2KPerW * times,
          equivalentAirM: layer.equivalentAirM * times,
          massKgPerM2: layer.massKgPerM2 * times,
        },
        ...at(index),
      ];
    }),
  ];
}

export interface RemedySearch {
  readonly insideM2KPerW: number;
  readonly outsideM2KPerW: number;
  readonly layers: readonly WeighedLayer[];
  readonly months: readonly VapourMonth[];
  readonly foils: readonly AddedLayer[];
  readonly thickenings: readonly ThickerLayer[];
  readonly accept: Acceptance;
  readonly options?: GlaserOptions;
}

/**
 * Every change of those offered that makes the wall dry enough, lightest first: each foil by itself, each thicker
 * layer by itself, and each pair of the two. At equal mass the one with less water comes first, then the order given.
 * Empty where none does; the wall as it is is not among them.
 *
 * Throws RangeError as {@link glaserYear} and {@link changedLayers} do.
 *
 * Source: a search over {@link glaserYear} (computed).
 */
export function clearingRemedies(search: RemedySearch): Remedy[] {
  const { layers, foils, thickenings } = search;
  const massOf = (some: readonly WeighedLayer[]) =>
    some.reduce((sum, { massKgPerM2 }) => sum + notNegative(massKgPerM2, 'The mass of a layer'), 0);
  const now = massOf(layers);
  const offers: readonly (readonly [readonly AddedLayer[], readonly ThickerLayer[]])[] = [
    ...foils.map((foil) => [[foil], []] as const),
    ...thickenings.map((one) => [[], [one]] as const),
    ...foils.flatMap((foil) => thickenings.map((one) => [[foil], [one]] as const)),
  ];
  const remedies = offers.map(([added, thicker]): Remedy => {
    const changed = changedLayers(layers, added, thicker);
    const wall: VapourWall = {
      insideM2KPerW: search.insideM2KPerW,
      outsideM2KPerW: search.outsideM2KPerW,
      layers: changed,
    };
    return {
      changes: [...added, ...thicker].map(({ name }) => name),
      addedKgPerM2: massOf(changed) - now,
      layers: changed,
      year: glaserYear(wall, search.months, search.options ?? {}),
    };
  });
  return remedies
    .filter(({ year }) => accepted(year, search.accept))
    .sort((a, b) => a.addedKgPerM2 - b.addedKgPerM2 || a.year.peakKgPerM2 - b.year.peakKgPerM2);
}
