import type { Build } from '../build/build.ts';
import type { PlaceInVan } from '../calc/space/route.ts';
import type { Finding, PlanPath } from '../engine/finding.ts';
import { say } from '../engine/phrase.ts';
import type { RuleText } from '../engine/rule.ts';
import { observed } from './observed.ts';

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

/** Keys of exhausts that there must be and whose place the plan does not give. */
export function exhaustsMissing({ engineExhaust, heat, gas, vehicle }: Build): readonly string[] {
  const heater = heat?.heater;
  const burns = heater?.heatedBy === 'diesel' || heater?.heatedBy === 'gas';
  return [
    ...(engineExhaust || vehicle.energy === 'electric' ? [] : ['van.exhaust']),
    ...(heater && burns && !heater.exhaust ? ['heat.heater.exhaust'] : []),
    ...(gas?.appliances ?? [])
      .filter(({ flue, exhaust }) => (flue === 'room-sealed' || flue === 'open-flued') && !exhaust)
      .map(({ path }) => [...path, 'exhaust'].join('.')),
  ];
}

/** Of exhausts without a place nothing can be said. */
export function withoutPlace(rule: RuleText, build: Build): Finding[] {
  const missing = exhaustsMissing(build);
  if (missing.length === 0) return [];
  return [
    observed(rule, {
      verdict: 'not checked',
      subject: 'exhausts without a place',
      path: rule.place,
      reason: say`The plan does not say where ${missing.length === 1 ? 'an exhaust ends' : `${String(missing.length)} exhausts end`}.`,
      missing,
    }),
  ];
}
