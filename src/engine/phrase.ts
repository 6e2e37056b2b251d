import type { Measure } from './measure.ts';

/** A sentence whose numbers are still measures, so that each reader sees them in his own units. */
export type Phrase = readonly (string | Measure)[];

/** Builds a phrase from a template: say`The rear axle carries ${mass(1980)}.` */
export function say(texts: TemplateStringsArray, ...values: readonly (string | Measure | Phrase)[]): Phrase {
  const parts: (string | Measure)[] = [];
  texts.forEach((text, index) => {
    if (text !== '') parts.push(text);
    const value = values[index];
    if (value === undefined) return;
    if (isPhrase(value)) parts.push(...value);
    else parts.push(value);
  });
  return parts;
}

const isPhrase = (value: string | Measure | Phrase): value is Phrase => Array.isArray(value);
