import {
  type Correction,
  type MeasureName,
  measureFor,
  type Population,
} from '../../catalogue/body-measures.ts';
import type { Step } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { told } from '../told.ts';

export interface PersonStep {
  readonly what: string;
  readonly measure: MeasureName;
  readonly statureM: number;
  readonly population: Population;
  /** Added to the person's own measure. */
  readonly and?: { readonly correction: Correction; readonly of: string };
  readonly resultM: number;
  /** The result is in whole millimetres. */
  readonly isRounded: boolean;
}

/** A measure of a person in the proportion of the statures: m = m₅₀·S / S₅₀. */
export function personStep(step: PersonStep): Step {
  const { what, measure, statureM, population, and, resultM, isRounded } = step;
  const usual = told(measureFor(measure, population).p50M);
  const stature = told(measureFor('stature', population).p50M);
  const more = and ? say` + ${told(and.correction.valueM)} ${and.of}` : [];
  const rounded = isRounded ? ', to the nearest millimetre' : '';
  return {
    what: `${what}, in proportion to the stature S: m₅₀·S / S₅₀, m₅₀ and S₅₀ those of the middle person of the table`,
    sum: say`${usual} · ${told(statureM)} / ${stature}${more}${rounded}`,
    result: length(resultM),
    paths: [['people', 'sleepers']],
  };
}
