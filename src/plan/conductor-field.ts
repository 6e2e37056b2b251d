import * as z from 'zod';
import { type ConductorSystem, conductors } from '../catalogue/electrical/conductors.ts';
import { packRefusal } from './fields.ts';
import { plated } from './nameplates.ts';
import { quote, quoteValue } from './quote.ts';

/** A size of conductor with the system that it belongs to; a bare number would be three sizes. */
export interface ConductorSize {
  readonly system: ConductorSystem;
  /** As the catalogue writes it: `2.5`, `10`, `1/0`. */
  readonly size: string;
}

const pattern = /^(\d+(?:\.\d+)?|\d+\/0)\s*(mm2|mm²|mm\^2|AWG|SAE)$/i;
const example = 'a cross-section such as `2.5 mm2`, or a gauge with its system, such as `10 AWG` or `10 SAE`';

const sizesOf = (system: ConductorSystem): readonly string[] => [
  ...new Set(conductors.filter((row) => row.system === system).map(({ size }) => size)),
];

/** Reads a size of conductor. */
export const conductor = () =>
  plated(z.unknown(), { takes: 'conductor' }).transform((raw, context): ConductorSize => {
    const refuse = (message: string, expected: string) => {
      context.issues.push({
        code: 'custom',
        input: raw,
        message: packRefusal({ message, expected }),
      });
      return z.NEVER;
    };
    if (raw === undefined || raw === null)
      return refuse(raw === null ? 'has no value' : 'is missing', example);
    if (typeof raw !== 'string')
      return refuse('should be one value, not a section, a list or true/false', example);
    const [, digits = '', unit = ''] = pattern.exec(raw.trim()) ?? [];
    if (digits === '')
      return refuse(
        /^[\d./]+$/.test(raw.trim())
          ? `${quote(raw)} may be square millimetres, AWG or SAE: three different sizes`
          : /mm$/i.test(raw.trim())
            ? `${quote(raw)} is a diameter: cable sold by its outer size holds far less copper than the number says`
            : `${quoteValue(raw)} is no size of a conductor`,
        example,
      );
    const system: ConductorSystem = /^awg$/i.test(unit) ? 'AWG' : /^sae$/i.test(unit) ? 'SAE' : 'mm²';
    const size = system === 'mm²' ? String(Number(digits)) : digits;
    const known = sizesOf(system);
    if (!known.includes(size))
      return refuse(
        `${quote(raw)} is not a standard size`,
        `one of ${known.join(', ')}, in ${system === 'mm²' ? 'mm2' : system}`,
      );
    return { system, size };
  });
