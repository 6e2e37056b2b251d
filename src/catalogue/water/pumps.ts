import { pumpStarts, smallPumpDuty, suctionLimit } from './sources.ts';

/** A small 12 V diaphragm pump with a pressure switch, from memory: bounds of what is plausible, and what is usual. */
export const smallPump = {
  openFlowLMin: { least: 7, most: 20 },
  cutOutBar: { least: 1.4, most: 3.8, usual: 2.4 },
  cutInBelowCutOutBar: { least: 0.3, most: 1, usual: 0.7 },
  currentAt12VA: { least: 4, most: 10 },
  primeLiftM: { least: 1.8, most: 2.7 },
  /** Pump and motor together. */
  efficiency: { least: 0.25, most: 0.45 },
  citations: [smallPumpDuty],
} as const;

/** A pump that starts more often than this wears out its switch, and the water pulses, s. */
export const leastCycle = { seconds: 10, citations: [pumpStarts] } as const;

/** What no pump lifts by suction: the weight of the air at sea level over that of water, m. */
export const suctionHeight = { lengthM: 10, citations: [suctionLimit] } as const;
