import { given, missing, type Need } from '../engine/rule.ts';
import { electrical } from './circuits.ts';

/** The lowest temperature that the plan reckons with, °C. */
export const coldest: Need<number> = (build) => {
  const found = electrical(build);
  if (!found.ok) return found;
  const { coldestC } = found.value;
  return coldestC === undefined ? missing('electrical.coldest') : given(coldestC);
};
