import type { Citation } from '../citation.ts';
import {
  inverterDesignEfficiency,
  inverterEfficienciesRemembered,
  inverterIdleMeasured,
  inverterIdleSheets,
  inverterLossArticle,
  inverterSurge,
  standAloneLoads,
} from './supply-sources.ts';

/** Alternating power out of direct power in. The value where the inverter's own is not known. */
export const inverterEfficiency = {
  value: 0.85,
  low: 0.85,
  high: 0.95,
  citations: [inverterLossArticle, inverterDesignEfficiency, inverterEfficienciesRemembered],
  caution: 'The lower end of 85 to 95 %, for cables and fuses. A design article takes 90 %.',
} as const;

/** For the energy of a day, where the lower end would overstate the loss. */
export const inverterDesign = { value: 0.9, citations: [inverterDesignEfficiency] } as const;

export interface InverterIdleRow {
  readonly ratedW: number;
  readonly idleW: number;
  readonly citation: Citation;
}

const measured = (ratedW: number, idleW: number): InverterIdleRow => ({
  ratedW,
  idleW,
  citation: inverterIdleMeasured,
});
const stated = (ratedW: number, idleW: number): InverterIdleRow => ({
  ratedW,
  idleW,
  citation: inverterIdleSheets,
});

/** What inverters take with nothing plugged in, W. */
export const inverterIdleRows: readonly InverterIdleRow[] = [
  measured(60, 1.46),
  measured(400, 5.2),
  measured(700, 11.8),
  stated(300, 2.4),
  stated(400, 3.6),
  stated(600, 7.2),
  stated(1000, 9.6),
  stated(2000, 9.6),
];

/** The whole range that is printed, W: for telling a slip from a figure. */
export const inverterIdleRange = { lowW: 1, highW: 30, citations: [inverterLossArticle] } as const;

/** How many times the running power a load takes at its start. */
export const startFactors = {
  heating: 1,
  motorLow: 3,
  motorHigh: 7,
  refrigeratorExample: 4,
  longestS: 5,
  citations: [inverterSurge],
} as const;

/** Share of the system voltage at which loads of constant power are counted. */
export const runningVoltageShare = { share: 0.95, citations: [standAloneLoads] } as const;
