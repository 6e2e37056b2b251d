import { expect } from 'vitest';
import type { Citation } from '../../src/catalogue/citation.ts';

/** A published number and how far a correct result may lie from it, with the reason. */
export interface Published {
  readonly value: number;
  readonly within: number;
  readonly because: string;
}

/** Fails, naming the source, unless `actual` agrees with the published number. */
export function expectPublished(actual: number, published: Published, source: Citation): void {
  const { value, within, because } = published;
  const message = `${actual} against ${value} ± ${within} (${because}); ${source.title}`;
  // Half a unit in the last place of the printed value can be missed by a rounding error of the subtraction.
  expect(Math.abs(actual - value), message).toBeLessThanOrEqual(within + 1e-12 * Math.abs(value));
}

/** For values that the source gives in full, or that follow from a definition: only the arithmetic may differ. */
export const exactly = (value: number): Published => ({
  value,
  within: 1e-9 * Math.abs(value),
  because: 'an exact value; nothing but rounding of the arithmetic',
});
