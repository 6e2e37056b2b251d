import type { Citation } from '../citation.ts';
import {
  emergencyNeed,
  householdUse,
  outletFlows,
  outletPressure,
  showerTemperature,
  vehicleUse,
} from './sources.ts';

/** A span of litres that one person uses a day. */
export interface WaterNeed {
  readonly leastL: number;
  readonly mostL: number;
  readonly citations: readonly Citation[];
}

const emergency = (leastL: number, mostL: number): WaterNeed => ({
  leastL,
  mostL,
  citations: [emergencyNeed],
});

/** Litres a person and day in emergencies: no less. The parts add up to the total. */
export const emergencyNeeds = {
  'drinking and food': emergency(2.5, 3),
  hygiene: emergency(2, 6),
  cooking: emergency(3, 6),
  total: emergency(7.5, 15),
} as const;

/** Litres a person and day in a vehicle, without a daily shower. */
export const vehicleNeed: WaterNeed = { leastL: 10, mostL: 30, citations: [vehicleUse] };

/** Litres a person and day in a US house: an upper bound. */
export const householdUses = {
  showersL: 43.9,
  tapsL: 41.3,
  toiletsL: 70,
  citations: [householdUse],
} as const;

export type OutletKind = 'shower' | 'low-flow shower' | 'kitchen tap' | 'basin tap';

/** Flow of a wide open outlet, l/min: from memory; the outlet's own figure comes first. */
export interface OutletFlow {
  readonly leastLMin: number;
  readonly mostLMin: number;
  /** Taken where the plan states none. */
  readonly usualLMin: number;
  readonly citations: readonly Citation[];
}

const flow = (leastLMin: number, mostLMin: number, usualLMin: number): OutletFlow => ({
  leastLMin,
  mostLMin,
  usualLMin,
  citations: [outletFlows],
});

export const outletFlowsByKind: Readonly<Record<OutletKind, OutletFlow>> = {
  shower: flow(7.57, 9.46, 7.57),
  'low-flow shower': flow(3, 6, 5),
  'kitchen tap': flow(4, 8, 6),
  'basin tap': flow(3, 5.68, 4),
};

/** Pressure before a wide open outlet at which it lets its flow through, where the plan states none: 8 psi. */
export const usualOutletPressure = { pressurePa: 55_158, citations: [outletPressure] } as const;

export const showerC = { value: 38, citations: [showerTemperature] } as const;
