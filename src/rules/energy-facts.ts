import type { WorkedYear } from '../build/energy.ts';
import { kilometres } from '../build/energy-of.ts';
import type { Citation } from '../catalogue/citation.ts';
import { diffuseShareSource, sunPositionSource } from '../catalogue/electrical/climate-sources.ts';
import { given, missing, type Need } from '../engine/rule.ts';
import { electricalCaution } from './cautions.ts';

/** The year as it was worked out, or the keys without which it cannot be. */
export const workedYear: Need<WorkedYear> = ({ energy }) => {
  if (energy?.worked) return given(energy.worked);
  return missing(...(energy?.missing ?? ['electrical.battery', 'electrical.circuits', 'living.place']));
};

export const typicalYearCaution =
  'Monthly means are of a typical year; single months are 10 to 20 % off, and single weeks further. Keep something in hand.';

const monthsCaution =
  'Every month is worked out alone and begins with a full battery. Loads are as the plan gives them: measure them before anything is bought.';

/** The cautions of everything that rests on the simulated year. */
export const yearCautions: readonly string[] = [electricalCaution, typicalYearCaution, monthsCaution];

/** What to keep in mind of the sun and the air that were used. */
export function climateCautions({ climate, input }: WorkedYear): readonly string[] {
  const { place, distanceM, sunTyped } = climate;
  const what = sunTyped ? 'The sun is as typed in; the air is that of' : 'Sun and air are those of';
  return [
    `${what} ${place.name}, ${kilometres(distanceM)} away: hills, coasts and heights differ within less.`,
    ...(input.arrays.some(({ tiltDeg }) => tiltDeg > 0) && !input.climate.diffuseWhM2
      ? ['Without a measured diffuse part a tilted array looks a little too good in dull months.']
      : []),
  ];
}

export const climateSources = ({ climate }: WorkedYear): readonly Citation[] => [climate.place.citation];

/** How the sun of an hour is worked out. */
export const simulationSources: readonly Citation[] = [
  { title: 'Energy balance of battery, sources and loads, hour by hour', provenance: 'computed' },
  sunPositionSource,
  diffuseShareSource,
];

/** "January", "January and March", "November, December and January". */
export function listed(names: readonly string[]): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
}
