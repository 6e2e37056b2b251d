import type { Citation } from '../citation.ts';
import { airByTheHour, ownChoice, practice } from './heat-sources.ts';

const kWh = 3.6e6;

const dieselFactors: Citation = {
  title:
    'UK government greenhouse gas conversion factors 2025, as restated: average blend, 832.361 kg/m³, 42.84 MJ/kg net',
  readAt: 'https://universal-converter.org/fuels/diesel',
  provenance: 'read',
};

/** Of diesel, J/m³: 9.905 kWh/L net, 10.531 gross. Those of propane and butane are in ../gas/properties.ts. */
export const dieselHeatJPerM3 = { net: 9905 * kWh, gross: 10_531 * kWh } as const;
export const dieselHeatCitations: readonly Citation[] = [dieselFactors];

/** Share of the net heat of a fuel that reaches the room, where a plan does not say. */
export const usualEfficiencies = { diesel: 0.8, gas: 0.8, electric: 1 } as const;
export const efficiencyCitations: readonly Citation[] = [
  practice('Air heaters for vehicles: 80 % of the net heat of diesel or gas'),
  { title: 'Electric heat: all of it stays inside', provenance: 'computed' },
];

/** Share of the van's fuel that a heater's own pipe does not reach, so that the engine starts again. */
export const fuelLeftByHeater = 0.25;
export const fuelLeftCitation: Citation = practice(
  'A heater’s fuel pipe leaves a quarter of the tank for the engine',
);

/** What a heater should have over the loss: to warm up, and for wind. */
export const heaterMargin = 0.2;
export const heaterMarginCitation: Citation = practice('A heater a fifth larger than the loss');

export interface AirChanges {
  readonly id: string;
  readonly perHour: number;
  readonly citations: readonly Citation[];
}

export const airChanges: readonly AirChanges[] = [
  { id: 'bedroom', perHour: 0.5, citations: [airByTheHour] },
  { id: 'lounge', perHour: 1, citations: [airByTheHour] },
  { id: 'kitchen', perHour: 2, citations: [airByTheHour] },
  { id: 'bathroom', perHour: 2, citations: [airByTheHour] },
  { id: 'draughty', perHour: 3, citations: [airByTheHour] },
];

/** Where a plan does not say how many: fixed vents, door seals and a roof hatch. */
export const usualAirChangesPerHour = 2;
export const usualAirChangesCitation: Citation = ownChoice(
  'Two changes of air an hour in a van with its fixed vents open',
  'Between a lounge and a draughty room of a house; work it out from the vents where they are known.',
);

/**
 * What a sleeper warms the room with, W: 40 W/m² of 1.8 m² is 72, of which four fifths are felt and the rest leaves as
 * vapour; rounded down. People awake are in ../air/people-heat.ts.
 */
export const sleeperSensibleW = 55;
export const sleeperSensibleCitations: readonly Citation[] = [
  {
    title: 'Table of metabolic heat by activity (ASHRAE): 40 W/m² asleep, adults of 1.5 to 2.0 m²',
    readAt: 'https://ns2.engineersedge.com/heat_transfer/thermal_energy_created_13777.htm',
    provenance: 'read',
  },
  ownChoice('Four fifths of a sleeper’s 72 W as warmth, rounded down'),
];

/** What warm-air heaters of that size are laid out for, where the maker's limit is not in the plan. */
export interface DuctPractice {
  readonly outputUpToW: number;
  readonly leastBoreM: number;
  /** All ducts of the heater together. */
  readonly greatestLengthM: number;
  readonly greatestOutlets: number;
  readonly citations: readonly Citation[];
}

const ducting = practice('Warm-air ducts by the size of the heater');

export const ductPractice: readonly DuctPractice[] = [
  { outputUpToW: 2500, leastBoreM: 0.06, greatestLengthM: 5, greatestOutlets: 3, citations: [ducting] },
  { outputUpToW: 4500, leastBoreM: 0.075, greatestLengthM: 10, greatestOutlets: 4, citations: [ducting] },
  { outputUpToW: 6500, leastBoreM: 0.09, greatestLengthM: 15, greatestOutlets: 5, citations: [ducting] },
];

/** The row for a heater of that output, W; undefined where it is larger than all. */
export const ductPracticeFor = (outputW: number): DuctPractice | undefined =>
  ductPractice.find((row) => outputW <= row.outputUpToW);
