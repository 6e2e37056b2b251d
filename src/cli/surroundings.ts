import type { Calculator } from '../plan/parameters.ts';

/** All that a command knows of the world outside the plan; tests hand in their own. */
export interface Surroundings {
  readonly version: string;
  readonly width: number;
  readonly colour: boolean;
  readonly print: (text: string) => void;
  readonly complain: (text: string) => void;
  /** The day that waivers are held against, "2026-03-14"; the day of the clock where it is left out. */
  readonly today?: () => string;
  readonly loadCalculator: () => Promise<Calculator>;
}
