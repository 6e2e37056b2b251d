import { lossesSource } from './climate-sources.ts';

/** Defaults of a model of photovoltaic systems, shares; shading and days out of service are left out. */
export const arrayLosses = {
  soiling: 0.02,
  mismatch: 0.02,
  wiring: 0.02,
  connections: 0.005,
  lightInduced: 0.015,
  nameplate: 0.01,
  citation: lossesSource,
} as const;

/** What a module does when it is warm, where its data sheet is not given: from memory, the lower end of crystalline cells. */
export const usualModule = { temperatureCoefficient: -0.0047, noctC: 45, hotterFlatK: 15 } as const;

/** Voltage at the greatest power over that without load: from memory. */
export const workingOverOpenVoltage = 0.82;

/** Power out over power in of a tracking controller, and the most of one that only switches: own choice, from memory. */
export const controllerEfficiency = { tracking: 0.95, switching: 0.98 } as const;
