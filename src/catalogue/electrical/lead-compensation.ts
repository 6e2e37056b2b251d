import { compensationArticle } from './storage-sources.ts';

/** How much more a cold lead cell wants while it is charged, and from which temperature that counts. */
export const leadCompensation = {
  voltsPerCellKelvin: -0.003,
  fromC: 25,
  citations: [compensationArticle],
} as const;
