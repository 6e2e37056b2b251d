/** Parts of the day in which something runs. */
export const partsOfDay = ['always', 'day', 'evening', 'night'] as const;
export type PartOfDay = (typeof partsOfDay)[number];

/** Where each begins on the clock and how long it lasts, hours: own choice. */
const spans: Record<PartOfDay, { readonly startHour: number; readonly hours: number }> = {
  always: { startHour: 0, hours: 24 },
  day: { startHour: 8, hours: 10 },
  evening: { startHour: 18, hours: 5 },
  night: { startHour: 23, hours: 9 },
};

export const spanOf = (part: PartOfDay) => spans[part];

interface Seconds {
  readonly value: number;
}

/** Hours a day as a plan writes them: of the whole year, or of its halves. */
export type GivenHours = Seconds | { readonly summer: Seconds; readonly winter: Seconds };

const secondsAnHour = 3600;

export function hoursOf(given: GivenHours): { readonly summer: number; readonly winter: number } {
  const [summer, winter] = 'summer' in given ? [given.summer, given.winter] : [given, given];
  return { summer: summer.value / secondsAnHour, winter: winter.value / secondsAnHour };
}
