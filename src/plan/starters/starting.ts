import type { Codes } from '../../catalogue/codes.ts';

export const starterKinds = ['first-lines', 'full'] as const;
export type StarterKind = (typeof starterKinds)[number];

/** What a starter plan is made with, as it is written in the plan. */
export interface Starting {
  /** The plan's name within a comment. */
  readonly heading: string;
  readonly name: string;
  readonly codes: Codes;
  readonly units: 'metric' | 'imperial';
  /** The plan's file, within a command in a comment. */
  readonly file: string;
  readonly van: Readonly<Record<keyof typeof usualVan, string>>;
}

/** A medium panel van that is invented: what stands in the plan unless something else is typed. */
export const usualVan = {
  maxMass: '3500 kg',
  frontAxle: '1850 kg',
  rearAxle: '2240 kg',
  wheelbase: '3640 mm',
  behindFrontAxle: '1130 mm',
  length: '3270 mm',
  width: '1760 mm',
  height: '1890 mm',
} as const;

/** A line with its comment in the column of all comments. */
export const withComment = (line: string, comment: string): string => `${line.padEnd(37)} # ${comment}`;
