import type { Build } from '../build/build.ts';
import type { Appliance, Gas, GasStore } from '../build/gas.ts';
import { fullRateOf, gasBurntIn, usesOf } from '../build/gas-use.ts';
import type { Box3 } from '../build/layout.ts';
import {
  cylinderOffTake,
  lyingTankOffTake,
  type OffTake,
  type OffTakeDuty,
} from '../catalogue/gas/off-take.ts';
import { gasProperties } from '../catalogue/gas/properties.ts';
import { exceeds } from '../engine/judge.ts';
import { isInCylinders } from './gas-facts.ts';

/*
 * What the cylinders or the tank at the regulator give in the cold, for minutes and for hours.
 */

/** A tank is looked at when it is a fifth full: own choice. */
export const tankLeft = 0.2;

/** What burns on for long, by how long: a room heater without a pause, a boiler or a refrigerator with pauses. */
const longDuties: Readonly<Record<string, OffTakeDuty>> = {
  'room heating': 'uninterrupted',
  'water heating': 'half of the time',
  refrigerator: 'half of the time',
};

export interface Source {
  readonly build: Build;
  readonly gas: Gas;
  /** What stands at the regulator at once: one at least. */
  readonly feeding: readonly GasStore[];
  readonly spare: readonly GasStore[];
  readonly ambientC: number;
  readonly needKgPerS: number;
}

/** What all that stands at the regulator gives: as many times as there are of them what the weakest gives. */
export interface Given extends OffTake {
  readonly store: GasStore;
  readonly one: number;
}

export interface LongPart {
  readonly appliance: Appliance;
  readonly takesKgPerS: number;
  readonly duty: OffTakeDuty;
  readonly given: Given;
}

export interface LongUse {
  readonly parts: readonly LongPart[];
  /** Of what is given for so long; above 1 it is too much. */
  readonly part: number;
  readonly needKgPerS: number;
  readonly givesKgPerS: number;
  readonly duty: OffTakeDuty;
}

/** The worse of the two: all lit for some minutes, or what burns for hours. Undefined where no table was read. */
export function givenOf(source: Source): { readonly short: Given; readonly long?: LongUse } | undefined {
  const short = offTakeOf(source, 'bursts of 20 minutes');
  if (!short) return undefined;
  const long = longUseOf(source);
  const { needKgPerS } = source;
  const byHours =
    long !== undefined && !exceeds(needKgPerS, short.kgPerS) && long.part > needKgPerS / short.kgPerS;
  return { short, ...(byHours && { long }) };
}

function offTakeOf({ gas, feeding, ambientC }: Source, duty: OffTakeDuty): Given | undefined {
  const all = feeding.flatMap((store) => {
    const one = isInCylinders(gas)
      ? cylinderOffTake({ gas: store.gas, holdsKg: store.holdsKg, duty, ambientC })
      : store.box &&
        lyingTankOffTake({
          gas: store.gas,
          ...lyingSides(store.box),
          fullShare: tankLeft,
          ambientC,
          grossJPerKg: gasProperties[store.gas].grossJPerKg,
        });
    return one ? [{ ...one, store, one: one.kgPerS }] : [];
  });
  const [first] = all;
  if (!first || all.length < feeding.length) return undefined;
  const weakest = all.reduce((least, each) => (each.one < least.one ? each : least), first);
  return { ...weakest, kgPerS: weakest.one * feeding.length };
}

/** A lying tank in its box: the longest side along, the smallest across. */
export const lyingSides = ({ leastXM, mostXM, leastYM, mostYM, bottomM, topM }: Box3) => {
  const [acrossM = 0, , alongM = 0] = [mostXM - leastXM, mostYM - leastYM, topM - bottomM].toSorted(
    (a, b) => a - b,
  );
  return { diameterM: acrossM, lengthM: alongM };
};

/** What burns for hours, and how much of that the source gives for so long. */
function longUseOf(source: Source): LongUse | undefined {
  const { build, gas } = source;
  const burns = gasBurntIn(build);
  const parts = gas.appliances.flatMap((appliance): LongPart[] => {
    const duties = [...usesOf(appliance, build)].flatMap((use) => longDuties[use] ?? []);
    const duty: OffTakeDuty | undefined = duties.includes('uninterrupted') ? 'uninterrupted' : duties[0];
    const takesKgPerS = fullRateOf(appliance, burns);
    if (duty === undefined || takesKgPerS === undefined) return [];
    const given = offTakeOf(source, duty);
    return given ? [{ appliance, takesKgPerS, duty, given }] : [];
  });
  if (parts.length === 0) return undefined;
  const part = parts.reduce((sum, { takesKgPerS, given }) => sum + takesKgPerS / given.kgPerS, 0);
  const needKgPerS = parts.reduce((sum, { takesKgPerS }) => sum + takesKgPerS, 0);
  return {
    parts,
    part,
    needKgPerS,
    givesKgPerS: needKgPerS / part,
    duty: parts.some(({ duty }) => duty === 'uninterrupted') ? 'uninterrupted' : 'half of the time',
  };
}
