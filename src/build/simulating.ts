import type { Plan } from '../plan/schema.ts';

/** Works out a year hour by hour. It stands on a library for the sun's position, which most plans never need. */
export type Simulation = Pick<typeof import('../calc/energy/year.ts'), 'energyYear'>;

/** What `assemble` needs for a plan that says where the van is and what battery it has, loaded for such a plan only. */
export const simulationFor = async (plan: Plan): Promise<Simulation | undefined> =>
  plan.living?.place && plan.electrical?.battery ? await import('../calc/energy/year.ts') : undefined;
