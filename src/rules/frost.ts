import type { Wrap } from '../build/water.ts';
import {
  HANDBOOK_WATER,
  pipeFilmResistanceMKW,
  pipeInsulationResistanceMKW,
  pipeSecondsToFreezing,
  pipeTimeConstantS,
} from '../calc/water/freezing.ts';
import { thermalMaterialNamed } from '../catalogue/heat/thermal-materials.ts';
import { airFilm, pipeFoam } from '../catalogue/water/frost.ts';

/** A pipe as the cold meets it. */
export interface ColdPipe {
  readonly innerDiameterM: number;
  readonly outerDiameterM: number;
  readonly waterC: number;
  readonly airC: number;
}

/** What a wrap lets through, W/(m·K); of a material that the catalogue of heat does not know, as foam round pipes. */
export const conductivityOf = ({ material }: Wrap): number =>
  thermalMaterialNamed(material.name)?.conductivityWPerMK ?? pipeFoam.conductivityWMK;

/** Taken where a plan has no insulation yet. */
export const usualFoam = 'elastomeric foam';

/** What the foam lets through that a remedy speaks of, W/(m·K). */
export const usualFoamWMK = thermalMaterialNamed(usualFoam)?.conductivityWPerMK ?? pipeFoam.conductivityWMK;

/** How still water cools: all that comes in between the warmth it has and 0 °C. */
export interface Cooling {
  readonly waterC: number;
  readonly airC: number;
  readonly filmM2KW: number;
  /** For each kelvin, of a pipe for each metre. */
  readonly conductanceWK: number;
  readonly heatCapacityJKgK: number;
  /** The time in which it goes 63 % of the way to the air. */
  readonly followsS: number;
  /** Till it is at 0 °C. */
  readonly seconds: number;
}

/** How water that stands in a pipe cools with so much about it. */
export function pipeCooling(
  pipe: ColdPipe,
  thicknessM: number,
  conductivityWMK: number,
): Cooling & { readonly densityKgM3: number } {
  const { innerDiameterM, outerDiameterM, waterC, airC } = pipe;
  const filmM2KW = airFilm.outside.m2KW;
  const resistanceMKW =
    pipeInsulationResistanceMKW({ outerDiameterM, thicknessM, conductivityWMK }) +
    pipeFilmResistanceMKW(outerDiameterM + 2 * thicknessM, filmM2KW);
  return {
    ...HANDBOOK_WATER,
    waterC,
    airC,
    filmM2KW,
    conductanceWK: 1 / resistanceMKW,
    followsS: pipeTimeConstantS({ innerDiameterM, resistanceMKW }),
    seconds: pipeSecondsToFreezing({ innerDiameterM, resistanceMKW, waterC, airC }),
  };
}

/** How long water that stands in it takes to reach 0 °C with so much about it, s. */
export const secondsToFrost = (pipe: ColdPipe, thicknessM: number, conductivityWMK: number): number =>
  pipeCooling(pipe, thicknessM, conductivityWMK).seconds;

/** More than anyone wraps about a pipe, m. */
const thickestM = 0.05;

/** The least whole millimetres that hold off the frost for so long; undefined where no wrap does. */
export function wrapAgainstFrost(
  pipe: ColdPipe,
  conductivityWMK: number,
  seconds: number,
): number | undefined {
  for (let millimetres = 1; millimetres <= thickestM * 1000; millimetres += 1) {
    const thicknessM = millimetres / 1000;
    if (secondsToFrost(pipe, thicknessM, conductivityWMK) >= seconds) return thicknessM;
  }
  return undefined;
}
