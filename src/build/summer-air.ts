import type { Fan } from './air.ts';
import type { Build } from './build.ts';
import { type Fanned, fanned, type KnownFan, knownFans, type OpenWay } from './fanned.ts';

/*
 * What the fans of the living space move on a hot day, with open what the plan says can be opened: every vent, and of the
 * windows and roof hatches those through which a person can get out, with all of their clear opening. How far any other
 * window opens the plan does not say; one that is listed as a vent opens by its free area. Doors stay shut, since a van
 * must be bearable also with nobody at the door. Both are own choices, on the side of less air.
 */

export interface SummerAir extends Fanned {
  /** The fans that run, in the order of their `flowsM3PerS`. */
  readonly fans: readonly KnownFan[];
  /** Fans of the living space of which nobody can tell what they move; see `fanKeys` for what to ask. */
  readonly unknownFans: readonly Fan[];
  /** Windows of which the plan does not say that they open: they count as shut. */
  readonly shutWindows: readonly string[];
}

/** Without vents and fans in the plan there is nothing to solve. Fresh air through the room is its `freshM3S`. */
export function summerAirOf({ air, layout }: Build): SummerAir | undefined {
  if (!air) return undefined;
  const ofRoom = air.fans.filter(({ serves }) => serves === undefined);
  const fans = knownFans({ ...air, fans: ofRoom });
  // An opening with a vent in it, or a fan's, is already counted by the free area that the plan gives.
  const vented = new Set(air.vents.flatMap(({ opening }) => opening ?? []));
  const holes = (layout?.openings ?? []).filter(
    ({ name, surface }) => !vented.has(name) && surface !== 'bulkhead' && surface !== 'floor',
  );
  const ways = holes
    .filter((hole) => hole.escape && hole.kind !== 'door')
    .map(({ name, path, sidesM: [longM, shortM] }): OpenWay => ({ name, path, freeAreaM2: longM * shortM }));
  return {
    ...fanned(air, fans, ways),
    fans,
    unknownFans: ofRoom.filter((fan) => fans.every((known) => known.fan !== fan)),
    shutWindows: holes.filter((hole) => hole.kind === 'window' && !hole.escape).map(({ name }) => name),
  };
}
