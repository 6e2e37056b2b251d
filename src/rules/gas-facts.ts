import type { Build } from '../build/build.ts';
import type { Appliance, Gas, GasStore } from '../build/gas.ts';
import type { Citation } from '../catalogue/citation.ts';
import { type GasForce, type GasLimit, type GasLimitId, gasLimitFor } from '../catalogue/gas/limits.ts';
import {
  type GasRequirement,
  type GasRequirementId,
  gasRequirementFor,
} from '../catalogue/gas/requirements.ts';
import type { PlanPath } from '../engine/finding.ts';
import { given, missing, type Need } from '../engine/rule.ts';
import { optional } from './needs.ts';

/* What the checks of gas share. */

export const gas: Need<Gas> = optional('gas', (build) => build.gas);

export const appliances: Need<readonly Appliance[]> = ({ gas: all }) =>
  all && all.appliances.length > 0 ? given(all.appliances) : missing('gas.appliances');

/** Cylinders and tanks with gas in them. */
export const stores: Need<readonly GasStore[]> = ({ gas: all }) =>
  all && all.stores.length > 0 ? given(all.stores) : missing(all ? 'tanks.NAME.contents' : 'gas');

/** Gas in cylinders; where the plan does not say, what is given in kilograms is a cylinder. */
export const isInCylinders = ({ storedIn, stores: all }: Gas): boolean =>
  storedIn === undefined ? all.every(({ heldAs }) => heldAs === 'mass') : storedIn === 'cylinders';

/** What breaks a standard or code of protection fails, what breaks a guide or a practice warns. */
export const brokenBy = (force: GasForce): 'fail' | 'warn' => (force === 'standard' ? 'fail' : 'warn');

export interface Asked {
  readonly broken: 'fail' | 'warn';
  readonly sources: readonly Citation[];
  readonly cautions: readonly string[];
}

export const gasLimit = (
  id: GasLimitId,
  { codes }: Build,
): Asked & Pick<GasLimit, 'value' | 'sense' | 'of'> => {
  const { value, sense, of, force, citations, cautions } = gasLimitFor(id, codes);
  return { value, sense, of, broken: brokenBy(force), sources: citations, cautions };
};

export const asked = (id: GasRequirementId, { codes }: Build): Asked & Pick<GasRequirement, 'words'> => {
  const { words, force, citations, cautions } = gasRequirementFor(id, codes);
  return { words, broken: brokenBy(force), sources: citations, cautions };
};

export const keyOf = (path: PlanPath, ...last: readonly string[]): string => [...path, ...last].join('.');
