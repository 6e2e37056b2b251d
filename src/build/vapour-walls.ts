import { daysOfMonths } from '../calc/energy/months.ts';
import type { VapourMonth } from '../calc/heat/glaser.ts';
import { layerResistance } from '../calc/heat/layers.ts';
import type { WeighedLayer } from '../calc/heat/remedy.ts';
import { equivalentAir } from '../calc/heat/vapour.ts';
import { airGapEquivalentAirM } from '../catalogue/heat/surface-films.ts';
import { thermalMaterialNamed } from '../catalogue/heat/thermal-materials.ts';
import type { Build } from './build.ts';
import { type DesignHumidity, designAir, designHumidityOf, meanInsideC } from './design-humidity.ts';
import type { EnvelopePart, Heat, HeatLayer } from './heat.ts';
import { type OutsideYear, outsideYearOf } from './outside-year.ts';
import { directionOf } from './u-values.ts';
import { conductivityOf, isFoil, keyOfLayer, mainPath, planesOf, sideBySide } from './wall-planes.ts';

/*
 * The load bay's surfaces as vapour sees them: the skin, then of every plane what most of the area has (the wool, not the
 * battens), and foils. A foil that covers a part only is left out: vapour goes round it.
 */

export interface NamedVapourLayer extends WeighedLayer {
  readonly name: string;
  readonly insulates: boolean;
}

export interface VapourStack {
  /** From outside in; the first is the skin. */
  readonly layers: readonly NamedVapourLayer[];
  readonly missing: readonly string[];
}

const insulatesBelowWPerMK = 0.065;
const secondsADay = 86_400;

/** As metres of air; undefined where nobody says. */
function airOfLayer({ thicknessM, vapourAirM, vapourFactor, material }: HeatLayer): number | undefined {
  if (vapourAirM !== undefined) return vapourAirM;
  const factor = vapourFactor ?? (material && thermalMaterialNamed(material.name)?.vapourResistanceFactor);
  return factor === undefined || thicknessM === undefined ? undefined : equivalentAir(thicknessM, factor);
}

export function vapourStack(part: EnvelopePart, heat: Heat): VapourStack {
  const direction = directionOf(part.surface);
  const missing = [...planesOf(part.layers, direction).missing];
  const layers: NamedVapourLayer[] = [skinLayer(heat)];
  for (const together of sideBySide(part.layers)) {
    const [foil] = together;
    if (foil && isFoil(foil)) {
      if (foil.share >= 1)
        layers.push({
          name: foil.name,
          insulates: false,
          resistanceM2KPerW: 0,
          equivalentAirM: foil.vapourAirM ?? 0,
          massKgPerM2: foil.arealMassKgM2,
        });
      continue;
    }
    const [plane] = planesOf(together, direction).planes;
    const main = plane && mainPath(plane);
    if (!plane || !main) continue;
    const { layer } = main;
    const airM = layer ? airOfLayer(layer) : airGapEquivalentAirM;
    if (layer && airM === undefined) missing.push(`${keyOfLayer(layer)}.vapour_resistance`);
    const isThinner = layer !== undefined && plane.thicknessM - (layer.thicknessM ?? 0) > 1e-9;
    layers.push({
      name: layer?.name ?? 'air',
      insulates: layer !== undefined && (conductivityOf(layer) ?? 1) < insulatesBelowWPerMK,
      resistanceM2KPerW: main.resistanceM2KPerW,
      equivalentAirM: (airM ?? airGapEquivalentAirM) + (isThinner ? airGapEquivalentAirM : 0),
      massKgPerM2: layer?.arealMassKgM2 ?? 0,
    });
  }
  return { layers, missing: [...new Set(missing)] };
}

function skinLayer({ skin }: Heat): NamedVapourLayer {
  const row = thermalMaterialNamed(skin.material.name);
  return {
    name: 'skin',
    insulates: false,
    resistanceM2KPerW: layerResistance(skin.thicknessM, row?.conductivityWPerMK ?? 50),
    equivalentAirM: equivalentAir(skin.thicknessM, row?.vapourResistanceFactor ?? 100_000),
    massKgPerM2: skin.thicknessM * skin.material.densityKgM3,
  };
}

export interface DampYear {
  readonly months: readonly VapourMonth[];
  readonly year: OutsideYear;
  readonly humidity: DesignHumidity;
}

/** Twelve months of air inside and outside, or the keys without which they are not known. */
export function dampYearOf(build: Build): DampYear | { readonly missing: readonly string[] } {
  const { heat } = build;
  if (!heat) return { missing: ['heat'] };
  const year = outsideYearOf(build);
  if (!('airC' in year)) return year;
  const heatedC = meanInsideC(heat, build.habits);
  const humidity = designHumidityOf(build);
  return {
    year,
    humidity,
    months: year.airC.map((outsideC, month): VapourMonth => {
      const air = designAir(humidity, Math.max(heatedC, outsideC), outsideC, year.humidity[month]);
      return {
        durationS: (daysOfMonths[month] ?? 30) * secondsADay,
        outsideC,
        outsidePa: air.outsidePa,
        insideC: air.insideC,
        insidePa: air.vapourPressurePa,
      };
    }),
  };
}
