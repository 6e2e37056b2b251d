import type { Build } from '../build/build.ts';
import type { PlaceInVan } from '../calc/space/route.ts';
import type { PlanPath } from '../engine/finding.ts';

/** Where something gives its fumes off. */
export interface Exhaust {
  /** "the exhaust of the engine". */
  readonly name: string;
  readonly path: PlanPath;
  readonly place: PlaceInVan;
}

/** All exhausts whose place the plan gives. */
export function exhaustsOf({ engineExhaust, heat, gas }: Build): readonly Exhaust[] {
  const heater = heat?.heater;
  return [
    ...(engineExhaust
      ? [{ name: 'the exhaust of the engine', path: ['van', 'exhaust'], place: engineExhaust }]
      : []),
    ...(heater?.exhaust
      ? [{ name: 'the exhaust of the heater', path: [...heater.path, 'exhaust'], place: heater.exhaust }]
      : []),
    ...(gas?.appliances ?? []).flatMap(({ name, path, exhaust }) =>
      exhaust ? [{ name: `the exhaust of ${name}`, path: [...path, 'exhaust'], place: exhaust }] : [],
    ),
  ];
}
