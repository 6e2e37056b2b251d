import type { Plan } from '../plan/schema.ts';

/** Finds ways through chases. It stands on a graph library, which most plans never need. */
export type Routing = Pick<typeof import('../calc/space/route.ts'), 'rectilinearDistance' | 'routesThrough'>;

/** What `assemble` needs for a plan with routes, loaded for such a plan only: the library takes 6 ms to wake. */
export const routingFor = async (plan: Plan): Promise<Routing | undefined> =>
  plan.routes === undefined ? undefined : await import('../calc/space/route.ts');
