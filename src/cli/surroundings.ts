import type { Calculator } from '../plan/parameters.ts';

/** All that a command knows of the world outside the plan; tests hand in their own. */
export interface Surroundings {
  readonly version: string;
  readonly width: number;
  readonly colour: boolean;
  readonly print: (text: string) => void;
  readonly complain: (text: string) => void;
  readonly loadCalculator: () => Promise<Calculator>;
}
