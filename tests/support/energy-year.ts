import type { EnergyYearInput, SolarSource, YearBattery } from '../../src/calc/energy/year.ts';

/** Twelve times one value. */
export const twelve = (value: number): number[] => Array.from({ length: 12 }, () => value);

export const array: SolarSource = {
  peakW: 400,
  tiltDeg: 0,
  azimuthDeg: 180,
  losses: [0.1],
  shadedShare: 0,
  temperatureCoefficient: -0.0035,
  noctC: 46,
  controllerEfficiency: 0.96,
};

export const battery: YearBattery = {
  windowWh: 2000,
  mostChargeW: 1200,
  mostDischargeW: 1500,
  roundTripEfficiency: 0.92,
  selfDischargeAMonth: 0.03,
  standingW: 0,
  cellC: twelve(18),
  chargeSteps: [{ fromC: 0, share: 1 }],
};

/** A van of our own invention, in the middle of England; every part can be replaced. */
export const energyInput = (changes: Partial<EnergyYearInput> = {}): EnergyYearInput => ({
  site: { latitudeDeg: 52.6, longitudeDeg: -1.6, clockAheadOfUtcHours: 0 },
  climate: {
    globalWhM2: [672, 1320, 2328, 3672, 4584, 4992, 4656, 3912, 2904, 1656, 840, 552],
    airC: [4.3, 4.8, 6.6, 9, 11.8, 14.8, 16.6, 16.5, 14, 10.5, 7.1, 4.2],
  },
  arrays: [array],
  loads: [{ hourlyW: Array.from({ length: 24 }, () => 40) }],
  battery,
  dullDays: 3,
  dullShare: 0.3,
  ...changes,
});
