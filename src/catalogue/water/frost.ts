import { pipeFreezing, surfaceResistances, tankFreezing, tankOutside } from './sources.ts';

/** Resistance of the film of air, m² K/W. */
export const airFilm = {
  outside: { m2KW: 0.04, citations: [surfaceResistances] },
  inside: { m2KW: 0.13, citations: [surfaceResistances] },
} as const;

/** Conductivity of foam round a pipe as the handbook's example takes it, 0.3 Btu in/(h ft² °F), W/(m K). */
export const pipeFoam = { conductivityWMK: 0.3 * 0.14422789, citations: [pipeFreezing] } as const;

/** How much more room water takes as it freezes: 1000/917 − 1. */
export const freezingGrowth = { value: 1000 / 917 - 1, citations: [tankFreezing] } as const;

/** Behind what is said of a tank under the floor. */
export const exposedTank = { citations: [tankOutside] } as const;
