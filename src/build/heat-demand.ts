import { airChangesPerHour as airChangesPerHourOf } from '../calc/air/rates.ts';
import { daysOfMonths } from '../calc/energy/months.ts';
import { meanHeat } from '../calc/heat/fuel.ts';
import { heatNeed, lossPerKelvin } from '../calc/heat/heat-loss.ts';
import { airCapacity, type WarmedLayer, warmedCapacity, warmedShares } from '../calc/heat/warm-up.ts';
import { heatOfPerson } from '../catalogue/air/people-heat.ts';
import type { Citation } from '../catalogue/citation.ts';
import {
  sleeperSensibleW,
  usualAirChangesCitation,
  usualAirChangesPerHour,
} from '../catalogue/heat/heating.ts';
import { openingLoss, paneCoverM2KPerW, roofHatchLoss } from '../catalogue/heat/openings.ts';
import { insideFilmM2KPerW } from '../catalogue/heat/surface-films.ts';
import { thermalMaterialNamed } from '../catalogue/heat/thermal-materials.ts';
import type { PlanPath } from '../engine/finding.ts';
import type { Build } from './build.ts';
import type { EnvelopePart, EnvelopeSurface, Heat, HeatLayer, Pane } from './heat.ts';
import type { Box3 } from './layout.ts';
import { fixedOpeningsOf, stackM3S } from './night-air.ts';
import { outsideYearOf } from './outside-year.ts';
import { ribsOn, type SurfaceU, surfaceU, usualFilms } from './u-values.ts';
import { conductivityOf, mainPath, planesOf } from './wall-planes.ts';

/*
 * What the living space loses for each kelvin, part by part, and what a day of heating takes.
 *
 * The cab counts by the opening between it and the living space, so the bulkhead round that opening is a wall to the cab.
 * Wheel arches are taken as lined like the walls beside them, doors like the wall or by their own build-up. Covers over
 * panes are on while people sleep. Vents and hatches without a pane lose as a hatch does.
 */

/** Something that heat leaves through. */
export interface LosingPart {
  readonly name: string;
  readonly path: PlanPath;
  readonly areaM2: number;
  readonly uValue: number;
  readonly leastUValue: number;
  readonly greatestUValue: number;
  /** While people sleep; panes then have their covers on. */
  readonly asleepUValue: number;
}

export interface Loss {
  readonly transmissionWPerK: number;
  readonly ventilationWPerK: number;
  readonly totalWPerK: number;
}

/** What the heater gives while people are awake, or asleep. */
export interface PartOfDay {
  readonly durationS: number;
  readonly insideC: number;
  readonly lossWPerK: number;
  /** Warmth of people. */
  readonly gainW: number;
  /** Never below 0. */
  readonly netW: number;
}

/** A layer that warms up with the room, and what of it counts. */
export interface WarmedPart {
  readonly surface: EnvelopeSurface;
  readonly layer: HeatLayer;
  readonly areaM2: number;
  /** All of it, or half. */
  readonly share: number;
  readonly kgPerM2: number;
  readonly heatCapacityJPerKgK: number;
}

export interface HeatedMonth {
  /** 0 to 11. */
  readonly month: number;
  readonly outsideC: number;
  /** Of the heater, on a mean day. */
  readonly heatJPerDay: number;
  /** At full output; undefined where that is not known. At most 24. */
  readonly heaterHoursPerDay?: number;
}

export interface WorkedHeatDemand {
  /** The most losing first. */
  readonly parts: readonly LosingPart[];
  readonly surfaces: readonly SurfaceU[];
  readonly volumeM3: number;
  readonly airChangesPerHour: number;
  readonly awake: Loss;
  readonly asleep: Loss;
  /** Awake, with every U-value at its least and its greatest. */
  readonly leastWPerK: number;
  readonly greatestWPerK: number;
  /** People awake and asleep, W of warmth. */
  readonly awakeGainW: number;
  readonly asleepGainW: number;
  /** What warms up with the room, J/K. */
  readonly capacityJPerK: number;
  /** Of a day of this air outside, net of people, W. */
  readonly meanDayW: (outsideC: number) => number;
  /** The hours that it is the mean of: awake, then asleep. */
  readonly partsOfDay: (outsideC: number) => readonly [awake: PartOfDay, asleep: PartOfDay];
  /** With the heat on at `heat.inside`, without gains, W. */
  readonly lossW: (outsideC: number) => number;
  /** At the plan's winter low, W. */
  readonly winterLow?: {
    readonly outsideC: number;
    readonly lossW: number;
    readonly asleepLossW: number;
    readonly leastLossW: number;
    readonly greatestLossW: number;
    readonly meanDayW: number;
  };
  /** Twelve, where the air outside is known. */
  readonly months?: readonly HeatedMonth[];
  readonly assumptions: readonly string[];
  readonly citations: readonly Citation[];
}

export interface HeatDemand {
  /** Keys without which it cannot be worked out. */
  readonly missing: readonly string[];
  readonly worked?: WorkedHeatDemand;
}

const known = new WeakMap<Build, HeatDemand>();

/** Worked out once for a build. */
export function heatDemandOf(build: Build): HeatDemand {
  const before = known.get(build);
  if (before) return before;
  const demand = workOut(build);
  known.set(build, demand);
  return demand;
}

const secondsADay = 86_400;
const secondsAnHour = 3600;

function workOut(build: Build): HeatDemand {
  const { heat, livingSpace, habits } = build;
  if (!heat) return { missing: ['heat'] };
  if (!livingSpace) return { missing: ['van.load_bay'] };
  const gathered: Gathered = { build, heat, parts: [], surfaces: [], missing: [], assumptions: [] };
  addSurfaces(gathered);
  addCab(gathered);
  addPanes(gathered);
  addHatches(gathered);
  addArches(gathered);
  const { missing, assumptions, parts, surfaces } = gathered;
  if (missing.length > 0) return { missing: [...new Set(missing)] };
  const leaksPerHour = heat.airChangesPerHour ?? usualAirChangesPerHour;
  if (heat.airChangesPerHour === undefined)
    assumptions.push(
      `the air is changed ${usualAirChangesPerHour} times an hour (\`heat.air_changes_per_hour\` says otherwise)`,
    );
  const volumeM3 = livingSpace.airM3;
  const ventsPerHour = ventChangesPerHour(build, heat.insideC, volumeM3);
  // Both at once would be counted twice: the larger, as with wind and warmth.
  const airChangesPerHour = Math.max(leaksPerHour, ventsPerHour);
  if (ventsPerHour > leaksPerHour)
    assumptions.push(
      'the fixed vents let in what warmth drives through them in the coldest weather, which is more than the leaks',
    );
  const lossOf = (uOf: (part: LosingPart) => number): Loss =>
    lossPerKelvin({
      surfaces: parts.map((part) => ({ areaM2: part.areaM2, uValue: uOf(part) })),
      volumeM3,
      airChangesPerHour,
    });
  const awake = lossOf(({ uValue }) => uValue);
  const asleep = lossOf(({ asleepUValue }) => asleepUValue);
  const leastWPerK = lossOf(({ leastUValue }) => leastUValue).totalWPerK;
  const greatestWPerK = lossOf(({ greatestUValue }) => greatestUValue).totalWPerK;
  const people = habits.people ?? 0;
  const awakeGainW = people * heatOfPerson('seated at rest', heat.insideC).sensibleW;
  const asleepGainW = people * sleeperSensibleW;
  const netW = (lossWPerK: number, insideC: number, outsideC: number, gainsW: number) =>
    heatNeed({ lossWPerK, insideC, outsideC, gainsW, margin: 0 });
  const partOfDay = (durationS: number, { totalWPerK }: Loss, insideC: number, gainW: number) => {
    const hours = { durationS, insideC, lossWPerK: totalWPerK, gainW };
    return (outsideC: number): PartOfDay => ({
      ...hours,
      netW: netW(totalWPerK, insideC, outsideC, gainW).netW,
    });
  };
  const whileAwake = partOfDay(secondsADay - habits.asleepS, awake, heat.insideC, awakeGainW);
  const whileAsleep = partOfDay(habits.asleepS, asleep, heat.asleepC, asleepGainW);
  const partsOfDay: WorkedHeatDemand['partsOfDay'] = (outsideC) => [
    whileAwake(outsideC),
    whileAsleep(outsideC),
  ];
  const meanDayW = (outsideC: number) =>
    meanHeat(partsOfDay(outsideC).map(({ durationS, netW: meanHeatW }) => ({ durationS, meanHeatW })));
  const lossAt = (lossWPerK: number, insideC: number) => (outsideC: number) =>
    netW(lossWPerK, insideC, outsideC, 0).lossW;
  const lossW = lossAt(awake.totalWPerK, heat.insideC);
  const { winterLowC } = habits;
  const year = outsideYearOf(build);
  const outputW = heat.heater?.outputW;
  const months =
    'airC' in year
      ? daysOfMonths.map((_, month): HeatedMonth => {
          const outsideC = year.airC[month] ?? Number.NaN;
          const heatJPerDay = meanDayW(outsideC) * secondsADay;
          return {
            month,
            outsideC,
            heatJPerDay,
            ...(outputW !== undefined && {
              heaterHoursPerDay: Math.min(24, heatJPerDay / outputW / secondsAnHour),
            }),
          };
        })
      : undefined;
  return {
    missing: [],
    worked: {
      parts: [...parts].sort((a, b) => b.uValue * b.areaM2 - a.uValue * a.areaM2),
      surfaces,
      volumeM3,
      airChangesPerHour,
      awake,
      asleep,
      leastWPerK,
      greatestWPerK,
      awakeGainW,
      asleepGainW,
      capacityJPerK:
        airCapacity(volumeM3) +
        surfaces.reduce((sum, { part }) => sum + part.areaM2 * warmedCapacity(warmedLayersOf(part)), 0),
      meanDayW,
      partsOfDay,
      lossW,
      ...(winterLowC !== undefined && {
        winterLow: {
          outsideC: winterLowC,
          lossW: lossW(winterLowC),
          asleepLossW: lossAt(asleep.totalWPerK, heat.asleepC)(winterLowC),
          leastLossW: lossAt(leastWPerK, heat.insideC)(winterLowC),
          greatestLossW: lossAt(greatestWPerK, heat.insideC)(winterLowC),
          meanDayW: meanDayW(winterLowC),
        },
      }),
      ...(months && { months }),
      assumptions,
      citations: heat.airChangesPerHour === undefined ? [usualAirChangesCitation] : [],
    },
  };
}

/** What warmth drives through the fixed vents at the winter low, as changes of the air; 0 where that is not known. */
function ventChangesPerHour(build: Build, insideC: number, volumeM3: number): number {
  const { winterLowC } = build.habits;
  if (winterLowC === undefined || winterLowC >= insideC || volumeM3 <= 0) return 0;
  const vents = fixedOpeningsOf(build);
  if (vents.missing.length > 0) return 0;
  return airChangesPerHourOf(stackM3S(vents, insideC, winterLowC), volumeM3);
}

interface Gathered {
  readonly build: Build;
  readonly heat: Heat;
  readonly parts: LosingPart[];
  readonly surfaces: SurfaceU[];
  readonly missing: string[];
  readonly assumptions: string[];
}

type Ranged = Pick<LosingPart, 'uValue' | 'leastUValue' | 'greatestUValue' | 'asleepUValue'>;

const certain = (uValue: number): Ranged => ({
  uValue,
  leastUValue: uValue,
  greatestUValue: uValue,
  asleepUValue: uValue,
});

const rangeOf = ({ uValue, leastUValue, greatestUValue }: SurfaceU): Ranged => ({
  uValue,
  leastUValue,
  greatestUValue,
  asleepUValue: uValue,
});

function addSurfaces({ build, heat, parts, surfaces, missing, assumptions }: Gathered): void {
  for (const part of heat.envelope) {
    if (part.surface === 'bulkhead' || part.areaM2 <= 0) continue;
    const ribs = ribsOn(part.surface, build);
    const surface = surfaceU(part, heat, ribs);
    if (!surface) {
      missing.push(...planesOf(part.layers, 'horizontal').missing);
      continue;
    }
    surfaces.push(surface);
    parts.push({ name: part.surface, path: part.path, areaM2: part.areaM2, ...rangeOf(surface) });
  }
  const ribbed = surfaces.some(({ ribs }) => ribs);
  if (ribbed && (heat.ribs?.depthM === undefined || heat.ribs.metalM === undefined))
    assumptions.push(
      'ribs are hat sections of 1.2 mm steel, 45 mm deep, where the plan does not say (`heat.ribs`)',
    );
  else if (ribbed) assumptions.push('ribs are hat sections: two webs of their metal stand on the skin');
  if (ribbed && build.layout?.ribs.length === 0)
    assumptions.push('walls and ceiling have a rib every 500 mm (`van.load_bay.ribs` says otherwise)');
}

/** What the cab beyond a bulkhead adds: the air film on its side, and the cab's own loss. */
const beyondBulkheadM2KPerW = insideFilmM2KPerW.horizontal + 1 / (openingLoss('open')?.uValue ?? 13);

function addCab({ build, heat, parts, surfaces, missing }: Gathered): void {
  const { bay } = build.vehicle;
  const { cab } = heat;
  const part = heat.envelope.find(({ surface }) => surface === 'bulkhead');
  if (!bay || !part) return;
  if (!cab) {
    missing.push('heat.cab.closed_by');
    return;
  }
  const grossM2 = bay.widthM * bay.heightM;
  const doorwaysM2 = grossM2 - part.areaM2;
  const isBulkhead = cab.closedBy === 'bulkhead';
  const openM2 = Math.min(grossM2, cab.areaM2 ?? (isBulkhead ? 0 : doorwaysM2 > 1e-9 ? doorwaysM2 : grossM2));
  if (openM2 > 0) {
    const uValue = cab.uValue ?? openingLoss(cab.closedBy)?.uValue ?? 13;
    const name = isBulkhead ? 'bulkhead' : 'way to the cab';
    parts.push({ name, path: cab.path, areaM2: openM2, ...certain(uValue) });
  }
  const restM2 = grossM2 - openM2;
  if (restM2 <= 1e-9) return;
  const rest: EnvelopePart = { ...part, areaM2: restM2 };
  const surface = surfaceU(rest, heat, undefined, {
    ...usualFilms('bulkhead'),
    outsideM2KPerW: beyondBulkheadM2KPerW,
  });
  if (!surface) missing.push(...planesOf(part.layers, 'horizontal').missing);
  else if (isBulkhead && cab.uValue !== undefined && cab.areaM2 === undefined)
    parts.push({ name: 'bulkhead', path: cab.path, areaM2: restM2, ...certain(cab.uValue) });
  else {
    surfaces.push(surface);
    parts.push({ name: 'bulkhead', path: part.path, areaM2: restM2, ...rangeOf(surface) });
  }
}

/** What a pane loses without its cover; undefined where neither its kind nor its U-value is given. */
export function paneUValue({ kind, uValue, surface }: Pane): number | undefined {
  if (uValue !== undefined) return uValue;
  if (kind === undefined) return undefined;
  const upright = openingLoss(kind)?.uValue;
  if (upright === undefined || surface !== 'ceiling') return upright;
  if (kind === 'double acrylic') return roofHatchLoss.uValue;
  // Heat goes up: the film inside is thinner.
  return 1 / (1 / upright - insideFilmM2KPerW.horizontal + insideFilmM2KPerW.upward);
}

const isToCab = (surface: EnvelopeSurface): boolean => surface === 'bulkhead';

function addPanes({ heat, parts, missing }: Gathered): void {
  for (const pane of heat.panes) {
    // What stands in the bulkhead is part of the way to the cab.
    if (isToCab(pane.surface)) continue;
    const uValue = paneUValue(pane);
    if (uValue === undefined) {
      missing.push(`heat.panes.${pane.name}.kind`);
      continue;
    }
    parts.push({
      name: pane.name,
      path: pane.path,
      areaM2: pane.areaM2,
      ...certain(uValue),
      asleepUValue: pane.cover ? 1 / (1 / uValue + paneCoverM2KPerW) : uValue,
    });
  }
}

/** Openings that are neither panes nor doors: they are not in the area of their surface. */
function addHatches({ build, heat, parts, assumptions }: Gathered): void {
  const panes = new Set(heat.panes.map(({ name }) => name));
  const hatches = (build.layout?.openings ?? []).filter(
    ({ name, kind, surface }) => kind !== 'door' && !panes.has(name) && surface !== 'bulkhead',
  );
  for (const { name, path, sidesM } of hatches)
    parts.push({ name, path, areaM2: sidesM[0] * sidesM[1], ...certain(roofHatchLoss.uValue) });
  if (hatches.length > 0)
    assumptions.push(
      `${hatches.map(({ name }) => name).join(', ')}: loses as a hatch of double acrylic does (\`heat.panes\` says otherwise)`,
    );
}

/** The faces of an arch towards the room: its side, its top and both ends. */
const archFaceM2 = ({ leastXM, mostXM, leastYM, mostYM, bottomM, topM }: Box3): number => {
  const [alongM, acrossM, upM] = [mostXM - leastXM, mostYM - leastYM, topM - bottomM];
  return alongM * upM + alongM * acrossM + 2 * acrossM * upM;
};

function addArches({ build, parts, surfaces, missing, assumptions }: Gathered): void {
  const arches = (build.layout?.fixedParts ?? []).filter(({ path }) => path[1] === 'wheel_arches');
  for (const { name, path, missing: keys } of build.layout?.unplacedParts ?? [])
    if (path[1] === 'wheel_arches' && name === 'wheel arches')
      missing.push(...keys.map((key) => `van.wheel_arches.${key}`));
  const wall = surfaces.find(({ part }) => part.surface === 'left wall');
  const [first] = arches;
  if (!first || !wall) return;
  const areaM2 = arches.reduce((sum, { prism }) => sum + archFaceM2(boxOf(prism)), 0);
  const { clearUValue } = wall;
  parts.push({ name: 'wheel arches', path: first.path, areaM2, ...certain(clearUValue) });
  assumptions.push('the wheel arches are lined as the walls are');
}

function boxOf({
  outline,
  bottomM,
  topM,
}: { outline: readonly { xM: number; yM: number }[] } & Pick<Box3, 'bottomM' | 'topM'>): Box3 {
  const xs = outline.map(({ xM }) => xM);
  const ys = outline.map(({ yM }) => yM);
  return {
    leastXM: Math.min(...xs),
    mostXM: Math.max(...xs),
    leastYM: Math.min(...ys),
    mostYM: Math.max(...ys),
    bottomM,
    topM,
  };
}

/** From the room outwards, along the way that most of the area takes. */
function warmableLayersOf(part: EnvelopePart): readonly HeatLayer[] {
  const { planes } = planesOf(part.layers, 'horizontal');
  return planes.toReversed().flatMap((plane) => mainPath(plane)?.layer ?? []);
}

const warmedLayersOf = (part: EnvelopePart): readonly WarmedLayer[] =>
  warmableLayersOf(part).map(warmedLayer);

/** Layer by layer what makes up the capacity, beside the air. */
export const warmedPartsOf = (surfaces: readonly SurfaceU[]): readonly WarmedPart[] =>
  surfaces.flatMap(({ part }) => {
    const shares = warmedShares(warmedLayersOf(part));
    return warmableLayersOf(part).flatMap((layer, index): WarmedPart[] => {
      const share = shares[index] ?? 0;
      const { thicknessM, densityKgM3, heatCapacityJPerKgK } = warmedLayer(layer);
      const { surface, areaM2 } = part;
      const kgPerM2 = thicknessM * densityKgM3;
      return share > 0 ? [{ surface, layer, areaM2, share, kgPerM2, heatCapacityJPerKgK }] : [];
    });
  });

/** Where a plan names no material: what wood stores. Own choice. */
const usualHeatCapacityJPerKgK = 1600;

function warmedLayer(layer: HeatLayer): WarmedLayer {
  const thicknessM = layer.thicknessM ?? 0;
  return {
    thicknessM,
    densityKgM3: layer.material?.densityKgM3 ?? (thicknessM > 0 ? layer.arealMassKgM2 / thicknessM : 0),
    heatCapacityJPerKgK:
      (layer.material && thermalMaterialNamed(layer.material.name)?.heatCapacityJPerKgK) ??
      usualHeatCapacityJPerKgK,
    conductivityWPerMK: conductivityOf(layer) ?? 1,
  };
}
