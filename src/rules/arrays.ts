import type { SolarArray } from '../build/electrical.ts';
import { given, missing, type Need } from '../engine/rule.ts';
import { electrical } from './circuits.ts';

/** The solar arrays of the plan, at least one. */
export const arrays: Need<readonly SolarArray[]> = (build) => {
  const found = electrical(build);
  if (!found.ok) return found;
  return found.value.solar.length > 0 ? given(found.value.solar) : missing('electrical.solar');
};
