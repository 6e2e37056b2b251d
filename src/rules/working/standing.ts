import type { Layout } from '../../build/layout.ts';
import { boundsOf, type Outline } from '../../calc/space/plane.ts';
import type { Step } from '../../engine/finding.ts';
import { count, length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import type { Ceiling } from '../clear-height.ts';
import { listed } from '../fit-finding.ts';
import { type StandingPlace, standingSpot } from '../standing-places.ts';
import { told } from '../told.ts';
import { ceilingStep, undersideStep } from './rise.ts';

/** How high it is over the best spot of a place. */
export interface Cleared {
  readonly place: StandingPlace;
  readonly clearM: number;
  readonly ceiling: Ceiling;
  /** The spot. */
  readonly over: Outline;
}

interface Needed {
  readonly statureM: number;
  readonly allowanceM: number;
  readonly neededM: number;
}

/** From the floor up to what is over the lowest of several places; what is needed comes before the last. */
export function standingSteps(
  group: readonly Cleared[],
  { statureM, allowanceM, neededM }: Needed,
  room: Layout,
): readonly Step[] {
  const [lowest] = group;
  if (!lowest) return [];
  const { place, ceiling, clearM, over } = lowest;
  const { thing, floorM } = place;
  return [
    ceilingStep(`the best spot to stand at ${thing.name}`, ceiling, boundsOf(over), room),
    ...(floorM > 0 ? [undersideStep(`How high one stands: the foot of ${thing.name}`, thing, room)] : []),
    {
      what: 'What the tallest sleeper needs: the stature, with shoes and a little air',
      sum: say`${told(statureM)} + ${told(allowanceM)}`,
      result: length(neededM),
      paths: [['people', 'sleepers']],
    },
    {
      what: `The height to stand at ${thing.name}`,
      sum: say`${told(ceiling.atM)} − ${floorM > 0 ? told(floorM) : '0 at the floor'}, over a spot of ${told(standingSpot.widthM)} × ${told(standingSpot.depthM)}${othersInWords(group)}`,
      result: length(clearM),
      paths: [place.path],
    },
  ];
}

const othersInWords = ([, ...others]: readonly Cleared[]) =>
  others.length === 0
    ? []
    : say`; the lowest of ${count(others.length + 1)} places: ${listed(others.map(({ place, clearM }) => say`${place.thing.name} has ${told(clearM)}`))}`;
