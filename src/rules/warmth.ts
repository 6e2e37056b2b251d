import type { Heat, Heater } from '../build/heat.ts';
import { heatDemandOf, type WorkedHeatDemand } from '../build/heat-demand.ts';
import type { Citation } from '../catalogue/citation.ts';
import { surfaceFilms } from '../catalogue/heat/heat-sources.ts';
import {
  boundRatioCitations,
  metalBridgeCitations,
  usualRibCitation,
} from '../catalogue/heat/metal-bridges.ts';
import { filmCitations } from '../catalogue/heat/surface-films.ts';
import { given, missing, type Need } from '../engine/rule.ts';
import { optional } from './needs.ts';

/* What the checks of warmth and damp share. */

export const heat: Need<Heat> = optional('heat', (build) => build.heat);

/** What the living space loses, part by part. */
export const demand: Need<WorkedHeatDemand> = (build) => {
  const { missing: keys, worked } = heatDemandOf(build);
  return worked ? given(worked) : missing(...keys);
};

export const winterLow: Need<number> = optional('living.winter_low', ({ habits }) => habits.winterLowC);

export const heater: Need<Heater> = (build) => {
  if (!build.heat) return missing('heat.heater');
  return build.heat.heater ? given(build.heat.heater) : missing('heat.heater');
};

export const heaterOutputW: Need<number> = optional(
  'heat.heater.output',
  (build) => build.heat?.heater?.outputW,
);

/** A flame in it: it has fumes. */
export const burnsFuel = ({ heatedBy }: Heater): boolean => heatedBy === 'gas' || heatedBy === 'diesel';

/** Where the U-values of layers side by side and of ribs come from. */
export const uValueSources: readonly Citation[] = [
  surfaceFilms,
  ...filmCitations.filter((each) => each !== surfaceFilms),
  ...boundRatioCitations,
  ...metalBridgeCitations,
  usualRibCitation,
];
