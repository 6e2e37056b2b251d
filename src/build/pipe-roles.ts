import type { Plan } from '../plan/schema.ts';
import type { PipeRole, WaterTank } from './water.ts';

/** What every pipe carries, from where it begins; what leaves a tee is what comes to it. */
export function pipeRoles(
  water: NonNullable<Plan['water']>,
  tanks: readonly Pick<WaterTank, 'name' | 'contents'>[],
): ReadonlyMap<string, PipeRole> {
  const pipes = Object.entries(water.pipes ?? {});
  const contents = new Map(tanks.map((tank) => [tank.name, tank.contents]));
  const outlets = new Set(Object.keys(water.outlets ?? {}));
  const roles = new Map<string, PipeRole>();
  const atTee = new Map<string, PipeRole>();
  const roleFrom = (from: string, to: string): PipeRole | undefined => {
    if (from === 'outside') return 'fill';
    if (from === 'pump') return 'cold';
    if (from === 'heater') return 'hot';
    if (outlets.has(from)) return 'drain';
    const inTank = contents.get(from);
    if (inTank === 'waste') return to === 'outside' ? 'drain' : 'apart';
    if (inTank === 'fresh') return to === 'outside' ? 'vent' : 'suction';
    return atTee.get(from);
  };
  // A tee's role is known once the pipe that leads to it has one; each round settles at least one more pipe.
  for (let settled = -1; settled !== roles.size; ) {
    settled = roles.size;
    for (const [name, { from, to }] of pipes) {
      const role = roles.get(name) ?? roleFrom(from, to);
      if (!role) continue;
      roles.set(name, role);
      if (!atTee.has(to)) atTee.set(to, role);
    }
  }
  return roles;
}
