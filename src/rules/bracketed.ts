import { closeC } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';

/** Nobody reads "20 °C − -8 °C". */
export const bracketedC = (celsius: number): Phrase =>
  celsius < 0 ? say`(${closeC(celsius)})` : say`${closeC(celsius)}`;
