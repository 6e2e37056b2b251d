import type { Phrase } from './phrase.ts';

/** A month of the year of energy, as a reader sees it. Energies in Wh, a day's unless said. */
export interface OverviewMonth {
  readonly name: string;
  readonly sunKWhM2: number;
  readonly arrayWh: number;
  /** Taken from driving and hook-ups. */
  readonly otherWh: number;
  readonly loadsWh: number;
  /** Of the whole month. */
  readonly shortWh: number;
  /** What is short is short in the run of dull days alone. */
  readonly dullOnly: boolean;
  readonly runsDown: boolean;
  /** Lowest state of charge, share of the whole capacity. */
  readonly lowest: number;
  /** On the battery alone, from a full one. */
  readonly nights: number;
}

export interface OverviewLoad {
  readonly name: string;
  readonly when: string;
  readonly summerWh: number;
  readonly winterWh: number;
}

/** Everything that `storystick energy` shows. */
export interface EnergyOverview {
  readonly name: string;
  readonly units: 'metric' | 'imperial';
  readonly place: Phrase;
  readonly months: readonly OverviewMonth[];
  /** The largest first. */
  readonly loads: readonly OverviewLoad[];
  readonly outcome: Phrase;
  /** What would close the worst month, each by itself. */
  readonly changes: readonly Phrase[];
  readonly assumptions: readonly Phrase[];
  readonly cautions: readonly string[];
}
