import type { Build } from '../build/build.ts';
import type { EnvelopePart, HeatLayer } from '../build/heat.ts';
import { heatDemandOf } from '../build/heat-demand.ts';
import { ribsOn, surfaceU } from '../build/u-values.ts';
import { conductivityOf, keyOfLayer } from '../build/wall-planes.ts';
import { length } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import { upToMillimetre } from './whole-millimetres.ts';

/** Own choice: steps of boards, and no more than a van has room for. */
const stepM = 0.01;
const mostM = 0.1;
const insulatesBelowWPerMK = 0.065;

/**
 * The one layer of insulation that, made thicker by the least, brings the heat loss down far enough; undefined where none
 * can within 100 mm. Loss and limit stand in the same proportion as the heater's margin, so a shortfall of the limit is
 * looked for in the loss times `limit / loss`.
 */
export function thicknessThatCutsLoss(
  build: Build,
  outsideC: number,
  limitW: number,
  shortfallW: number,
): Phrase | undefined {
  const { heat } = build;
  const { worked } = heatDemandOf(build);
  if (!heat || !worked) return undefined;
  const differenceK = heat.insideC - outsideC;
  const perLossW = limitW / Math.max(1e-9, worked.lossW(outsideC));
  const neededWPerK = shortfallW / perLossW / differenceK;
  const surfaces = worked.surfaces.filter(({ part }) => part.surface !== 'bulkhead');
  const candidates = new Map<string, HeatLayer>();
  for (const { part } of surfaces)
    for (const layer of part.layers)
      if ((conductivityOf(layer) ?? 1) < insulatesBelowWPerMK) candidates.set(keyOfLayer(layer), layer);
  const savedBy = (key: string, addedM: number): number =>
    surfaces
      .filter(({ part }) => part.layers.some((layer) => keyOfLayer(layer) === key))
      .reduce((sum, { part, uValue }) => {
        const changed = surfaceU(thicker(part, key, addedM), heat, ribsOn(part.surface, build));
        return sum + part.areaM2 * (uValue - (changed?.uValue ?? uValue));
      }, 0);
  let best: { readonly addedM: number; readonly layer: HeatLayer } | undefined;
  for (const [key, layer] of candidates)
    for (const addedM of stepsFor(layer, best?.addedM))
      if (savedBy(key, addedM) >= neededWPerK) {
        best = { addedM, layer };
        break;
      }
  if (!best) return undefined;
  const { addedM, layer } = best;
  return say`make the ${layer.name} of ${String(layer.path[1] ?? 'the build-up')} ${length(addedM)} thicker (${length((layer.thicknessM ?? 0) + addedM)})`;
}

/** Thicknesses to add, each to a whole millimetre in all, since what is printed is what will be typed. */
function* stepsFor({ thicknessM = 0 }: HeatLayer, bestM = mostM + stepM): Generator<number> {
  for (let steps = 1; steps * stepM < bestM - 1e-9; steps += 1)
    yield upToMillimetre(thicknessM + steps * stepM) - thicknessM;
}

const thicker = (part: EnvelopePart, key: string, addedM: number): EnvelopePart => ({
  ...part,
  layers: part.layers.map((layer) =>
    keyOfLayer(layer) === key ? { ...layer, thicknessM: (layer.thicknessM ?? 0) + addedM } : layer,
  ),
});

export interface Thickening {
  readonly layer: HeatLayer;
  readonly addedM: number;
}

/** The least that one layer of insulation of a surface must be thicker for `suffices` to hold; within 100 mm. */
export function leastThickening(
  part: EnvelopePart,
  suffices: (changed: EnvelopePart) => boolean,
): Thickening | undefined {
  let best: Thickening | undefined;
  for (const layer of part.layers) {
    if ((conductivityOf(layer) ?? 1) >= insulatesBelowWPerMK) continue;
    for (const addedM of stepsFor(layer, best?.addedM))
      if (suffices(thicker(part, keyOfLayer(layer), addedM))) {
        best = { addedM, layer };
        break;
      }
  }
  return best;
}
