import type { Wrap } from '../build/water.ts';
import {
  pipeFilmResistanceMKW,
  pipeInsulationResistanceMKW,
  pipeSecondsToFreezing,
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

/** How long water that stands in it takes to reach 0 °C with so much about it, s. */
export function secondsToFrost(pipe: ColdPipe, thicknessM: number, conductivityWMK: number): number {
  const { innerDiameterM, outerDiameterM, waterC, airC } = pipe;
  const resistanceMKW =
    pipeInsulationResistanceMKW({ outerDiameterM, thicknessM, conductivityWMK }) +
    pipeFilmResistanceMKW(outerDiameterM + 2 * thicknessM, airFilm.outside.m2KW);
  return pipeSecondsToFreezing({ innerDiameterM, resistanceMKW, waterC, airC });
}

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
