import type { Citation } from '../citation.ts';
import {
  aircraftDropLimits,
  boatDropLimits,
  buildingDropLimits,
  leisureVehicleDrop,
} from './conductor-sources.ts';

/*
 * How much voltage may be lost between the source and a load. The sources differ by a factor of six, so that a plan
 * chooses one and its name is printed. Shares are of the *nominal* voltage, whatever the battery has.
 */

export const dropPractices = ['boats', 'leisure vehicles', 'buildings', 'aircraft'] as const;
export type DropPractice = (typeof dropPractices)[number];

export const dropClasses = ['critical', 'ordinary', 'lighting', 'charging line'] as const;
export type DropClass = (typeof dropClasses)[number];

export interface DropLimit {
  readonly practice: DropPractice;
  readonly dropClass: DropClass;
  readonly limit: { readonly share: number } | { readonly volts: number; readonly atNominalV: number };
  /** What the source says it is for. */
  readonly of: string;
  readonly citations: readonly Citation[];
}

const boats = (dropClass: DropClass, share: number, of: string): DropLimit => {
  return { practice: 'boats', dropClass, limit: { share }, of, citations: [boatDropLimits] };
};
const leisure = (dropClass: DropClass, volts: number, of: string): DropLimit => ({
  practice: 'leisure vehicles',
  dropClass,
  limit: { volts, atNominalV: 12 },
  of,
  citations: [leisureVehicleDrop],
});
const buildings = (dropClass: DropClass, share: number, of: string): DropLimit => {
  return { practice: 'buildings', dropClass, limit: { share }, of, citations: [buildingDropLimits] };
};
const aircraft = (dropClass: DropClass, volts: number, of: string): DropLimit => ({
  practice: 'aircraft',
  dropClass,
  limit: { volts, atNominalV: 14 },
  of,
  citations: [aircraftDropLimits],
});

export const dropLimits: readonly DropLimit[] = [
  boats('critical', 0.03, 'main feeders of panels, blowers, pumps, electronics, navigation lights'),
  boats('ordinary', 0.1, 'circuits where the drop is not critical'),
  boats('lighting', 0.1, 'cabin lights'),
  boats('charging line', 0.03, 'main feeders; the source does not name chargers'),
  leisure(
    'critical',
    0.8,
    'every line but the charging line, unless the maker of the appliance asks otherwise',
  ),
  leisure(
    'ordinary',
    0.8,
    'every line but the charging line, unless the maker of the appliance asks otherwise',
  ),
  leisure('lighting', 0.8, 'every line but the charging line'),
  leisure('charging line', 0.2, 'the charging line to the auxiliary battery'),
  buildings('critical', 0.03, 'lighting; the source knows no critical class, the stricter is taken'),
  buildings('ordinary', 0.05, 'everything but lighting'),
  buildings('lighting', 0.03, 'lighting'),
  aircraft('critical', 0.5, 'what runs continuously'),
  aircraft('ordinary', 1, 'what runs for a moment'),
];

/** Undefined where the practice has no such class. */
export function dropLimitFor(practice: DropPractice, dropClass: DropClass): DropLimit | undefined {
  return dropLimits.find((row) => row.practice === practice && row.dropClass === dropClass);
}

/** In volts. A limit in volts grows with the nominal voltage from the one it is written for (own choice: same share). */
export function permittedDropV({ limit }: DropLimit, nominalV: number): number {
  if (!(nominalV > 0) || !Number.isFinite(nominalV))
    throw new RangeError(`The nominal voltage must be greater than 0, not ${nominalV}.`);
  return 'share' in limit ? limit.share * nominalV : (limit.volts * nominalV) / limit.atNominalV;
}
