import type { Build } from '../build/build.ts';
import type { Box3, Solid } from '../build/layout.ts';
import type { PlanPath } from '../engine/finding.ts';

/** A thing under the floor that burns, or that a current flows in. */
export interface Ignition {
  readonly name: string;
  readonly path: PlanPath;
  readonly box: Box3;
}

/** All things under the floor that may light gas: the heater, burners, the battery, and what circuits lead to. */
export function ignitionUnderFloor({ heat, gas, electrical, layout }: Build): readonly Ignition[] {
  const names = new Set(
    [
      heat?.heater?.thing,
      ...(gas?.appliances ?? []).map(({ thing }) => thing),
      electrical?.bank?.thing,
      ...(electrical?.distribution ?? []).map(({ thing }) => thing),
      ...(electrical?.circuits ?? []).map(({ to }) => to),
      ...(electrical?.mains ?? []).map(({ to }) => to),
    ].filter((name) => name !== undefined),
  );
  const solids = new Map((layout?.solids ?? []).map((solid) => [solid.name, solid]));
  return [...names]
    .map((name) => solids.get(name))
    .filter((solid): solid is Solid => solid?.whereabouts === 'under the floor')
    .map(({ name, path, box }) => ({ name, path, box }));
}
