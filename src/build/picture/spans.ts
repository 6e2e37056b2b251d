import type { Stretch } from './model.ts';

/** What lies outside the load bay is drawn as long as it takes less than this part of the picture: own choice. */
const mostOutside = 0.3;

export const widthOf = ({ leastM, mostM }: Stretch): number => mostM - leastM;

const joined = (a: Stretch, b: Stretch): Stretch => ({
  leastM: Math.min(a.leastM, b.leastM),
  mostM: Math.max(a.mostM, b.mostM),
});

/** Widens a stretch to take in what lies outside it, the nearest first, while that leaves it most of the room. */
export function widened(core: Stretch, wanted: readonly Stretch[]): Stretch {
  const byGrowth = wanted.map((each) => joined(core, each)).sort((a, b) => widthOf(a) - widthOf(b));
  return byGrowth.reduce((whole, each) => {
    const grown = joined(whole, each);
    return widthOf(grown) - widthOf(core) < mostOutside * widthOf(grown) ? grown : whole;
  }, core);
}

/** Rounding of lengths. */
const slackM = 1e-6;

export const isWithin = (inner: Stretch, outer: Stretch): boolean =>
  inner.leastM >= outer.leastM - slackM && inner.mostM <= outer.mostM + slackM;

/** Whether two stretches share more than an edge. */
export const meets = (a: Stretch, b: Stretch): boolean =>
  Math.min(a.mostM, b.mostM) - Math.max(a.leastM, b.leastM) > slackM;

/** Whether a height goes through a thing: at its bottom it does, at its top it lies above it. */
export const spans = (
  { bottomM, topM }: { readonly bottomM: number; readonly topM: number },
  heightM: number,
): boolean => bottomM <= heightM + slackM && topM > heightM + slackM;

export const isAbove = ({ bottomM }: { readonly bottomM: number }, heightM: number): boolean =>
  bottomM > heightM + slackM;
