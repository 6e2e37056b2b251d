import { type SunlitPane, type SunlitSkin, solAirC, solarGainW } from '../calc/heat/summer.ts';
import { heatOfPerson } from '../catalogue/air/people-heat.ts';
import { usualAirChangesPerHour } from '../catalogue/heat/heating.ts';
import {
  absorptances,
  paneSolarShares,
  roofSkyLossK,
  summerRiseK,
  summerSunWM2,
  usualColour,
} from '../catalogue/heat/sun.ts';
import { outsideFilmM2KPerW } from '../catalogue/heat/surface-films.ts';
import type { PlanPath } from '../engine/finding.ts';
import type { Build } from './build.ts';
import type { EnvelopeSurface, Heat } from './heat.ts';
import { paneUValue, type WorkedHeatDemand } from './heat-demand.ts';
import { fixedOpeningsOf, stackM3S } from './night-air.ts';

/*
 * The heat of a hot afternoon: the sun on the roof and on the side that lets the most in, and people; and what air comes in
 * while no fan runs.
 */

interface Named {
  readonly name: string;
  readonly path: PlanPath;
}

export interface SunlitSide {
  readonly surface: EnvelopeSurface;
  readonly skins: readonly (Named & SunlitSkin)[];
  readonly panes: readonly (Named & SunlitPane)[];
  readonly gainW: number;
}

export interface SummerHeat {
  readonly roof: SunlitSide;
  readonly side: SunlitSide;
  /** Of both; never below 0. */
  readonly sunW: number;
  readonly people: number;
  readonly peopleW: number;
}

const sides = ['left wall', 'right wall', 'rear doors'] as const;

export function summerHeatOf(
  build: Build,
  heat: Heat,
  demand: WorkedHeatDemand,
  outsideC: number,
): SummerHeat {
  const [first, ...more] = sides;
  const sunOn = (surface: EnvelopeSurface): SunlitSide => sunlitSide(surface, heat, demand, outsideC);
  const roof = sunOn('ceiling');
  const side = more.map(sunOn).reduce((most, each) => (each.gainW > most.gainW ? each : most), sunOn(first));
  const people = build.habits.people ?? 0;
  return {
    roof,
    side,
    sunW: Math.max(0, roof.gainW + side.gainW),
    people,
    peopleW: people * heatOfPerson('seated at rest', outsideC).sensibleW,
  };
}

function sunlitSide(
  surface: EnvelopeSurface,
  heat: Heat,
  demand: WorkedHeatDemand,
  outsideC: number,
): SunlitSide {
  const isRoof = surface === 'ceiling';
  const sunWM2 = isRoof ? summerSunWM2.roof : summerSunWM2.wall;
  const skins = demand.surfaces
    .filter(({ part }) => part.surface === surface)
    .map(({ part, uValue }) => ({
      name: part.surface,
      path: part.path,
      areaM2: part.areaM2,
      uValue,
      solAirC: solAirC({
        outsideC,
        absorptance: absorptances[usualColour],
        sunWM2,
        outsideM2KPerW: outsideFilmM2KPerW,
        skyLossK: isRoof ? roofSkyLossK : 0,
      }),
    }));
  const panes = heat.panes
    .filter((pane) => pane.surface === surface && paneUValue(pane) !== undefined)
    .map(({ name, path, areaM2, kind }) => ({
      name,
      path,
      areaM2,
      solarShare: paneSolarShares[kind ?? 'single glass'],
      sunWM2,
    }));
  return { surface, skins, panes, gainW: solarGainW({ outsideC, panes, skins }) };
}

export interface UnfannedAir {
  readonly leaksPerHour: number;
  readonly leaksM3PerS: number;
  /** What the allowed rise draws through the fixed vents. */
  readonly stackM3PerS: number;
  /** The larger of both. */
  readonly airM3PerS: number;
}

const secondsAnHour = 3600;

/**
 * By leaks or, where that is more, by warmth through the fixed vents, with the room as much warmer as it may be. In a van that
 * gets hotter still they draw more, so what it gets to is a little too warm: the strict side.
 */
export function unfannedAirOf(build: Build, heat: Heat, volumeM3: number, outsideC: number): UnfannedAir {
  const leaksPerHour = heat.airChangesPerHour ?? usualAirChangesPerHour;
  const leaksM3PerS = (leaksPerHour * volumeM3) / secondsAnHour;
  const vents = fixedOpeningsOf(build);
  const stackM3PerS = vents.missing.length > 0 ? 0 : stackM3S(vents, outsideC + summerRiseK, outsideC);
  return { leaksPerHour, leaksM3PerS, stackM3PerS, airM3PerS: Math.max(leaksM3PerS, stackM3PerS) };
}
