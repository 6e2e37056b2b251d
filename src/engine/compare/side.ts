import { tallyOf } from '../tally.ts';
import type { Compared } from './compare.ts';
import type { Side } from './comparison.ts';

export const sideOf = ({ label, report }: Compared): Side => {
  const { file, name, codes, units, spot, findings } = report;
  return { label, file, name, codes, units, spot, ...tallyOf(findings) };
};
