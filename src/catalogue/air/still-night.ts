import type { Citation } from '../citation.ts';

/*
 * What a still night is reckoned with, where nothing was read: own choices, on the side of stale and damp air.
 */

const chosen = (title: string, caution?: string): Citation => ({
  title,
  provenance: 'own choice',
  ...(caution !== undefined && { caution }),
});

export const stillNight = {
  /** Of a mild night: so little warmth is left to drive the air. */
  mildRiseK: 5,
  /** Inside, where the plan does not say how warm it is kept. */
  usualInsideC: 20,
  usualAsleepC: 16,
  /** Of outside air, a share. */
  outsideHumidity: 0.9,
  /** Of carbon dioxide when people lie down: aired before, as fresh as a guide calls fresh. */
  startPpm: 1000,
  /** A meal's cooking a day, where the plan does not say, s. */
  usualCookingS: 3600,
  citations: [
    chosen('A mild still night: 5 K warmer inside than outside'),
    chosen(
      'Outside air at 90 % relative humidity; 20 °C inside by day and 16 °C asleep unless the plan says',
    ),
    chosen('The room is aired to 1000 ppm before people lie down'),
    chosen(
      'Vents count as fixed only with `closes: false`; no wind; leaks and vents do not add, the larger counts',
      'A ventilator that can be shut is taken as shut at night.',
    ),
  ],
} as const;

/** What is judged of still nights that are not cold, and how. */
export const mildNights = {
  citations: [
    chosen(
      'The heating is on at night until it is 5 K colder outside than inside, and no night counts as warmer than the mean of the warmest month',
    ),
    chosen(
      'On mild nights the limit against mould at a surface is that of the air: walls are then nearly as warm as the room',
      'Cold panes and ribs get wet before that.',
    ),
  ],
} as const;

/** How far apart things of protection may be, where nothing was read. */
export const protectionReach = {
  /** Below the ceiling, for a smoke alarm to count as on or near it. */
  smokeBelowCeilingM: 0.3,
  /** From the extinguisher to a way out. */
  extinguisherFromExitM: 1,
  /** Across, from the fire blanket to the cooker. */
  blanketFromCookerM: 1.5,
  citations: [
    chosen(
      'A smoke alarm within 300 mm of the ceiling; a fire extinguisher within 1 m of a door or hatch that leads out; a fire blanket within 1.5 m of the cooker and not over it',
    ),
  ],
} as const;
