import type { Citation } from '../citation.ts';
import {
  alternatorHalf,
  alternatorHot,
  alternatorMargin,
  controllerBuyersGuide,
  controllerChargeVoltage,
  controllerManual,
  controllerShopArticle,
  converterInputPeak,
  solarCurrentCourse,
} from './supply-sources.ts';

export const controllerPracticeIds = ['nominal voltage', 'lowest voltage', 'charge voltage'] as const;
export type ControllerPracticeId = (typeof controllerPracticeIds)[number];

/** One of three ways to size a tracking controller's output: array power × margin over a voltage. */
export interface ControllerPractice {
  readonly id: ControllerPracticeId;
  readonly margin: number;
  readonly citations: readonly Citation[];
}

export const controllerPractices: readonly ControllerPractice[] = [
  { id: 'nominal voltage', margin: 1.25, citations: [controllerShopArticle] },
  { id: 'lowest voltage', margin: 1, citations: [controllerBuyersGuide] },
  { id: 'charge voltage', margin: 1, citations: [controllerChargeVoltage] },
];

/** Charge voltage by nominal voltage. 48 V is printed with 58.8 V, which breaks the pattern. */
export const chargeVoltages: readonly { readonly nominalV: number; readonly chargeV: number }[] = [
  { nominalV: 12, chargeV: 14.4 },
  { nominalV: 24, chargeV: 28.8 },
  { nominalV: 48, chargeV: 57.6 },
];

export const controllerSizesA = [20, 30, 40, 60, 80, 100] as const;
export const controllerSizeCitations: readonly Citation[] = [controllerShopArticle];

/** Array power over rated charge power, for a controller that limits itself. A larger array warns. */
export const arrayOverController = { share: 1.5, citations: [controllerManual] } as const;

/** Factors over the rated short-circuit current. */
export const solarCurrentFactors = {
  brightness: 1.25,
  continuous: 1.25,
  citations: [solarCurrentCourse],
} as const;

/** The most of an alternator's rated current that a charger takes. From memory, so it can only warn. */
export const alternatorShareGuide = { share: 0.5, citations: [alternatorHalf] } as const;

/** What an alternator loses when hot. */
export const alternatorHotLoss = { share: 0.25, citations: [alternatorHot] } as const;

/** An alternator's size over its worst load. */
export const alternatorReserve = { factor: 1.2, citations: [alternatorMargin] } as const;

/** Peak input over rated output of a charger from direct current to direct current, as one maker states it. */
export const converterPeakInput = { factor: 1.5, citations: [converterInputPeak] } as const;
