import type { Citation } from '../citation.ts';
import {
  ballValveAsGate,
  networkManual,
  networkManualRemembered,
  pushFitElbow,
  textbookCompilation,
} from './sources.ts';

/*
 * Loss coefficients K of fittings, Δp = K ρ v²/2. Two tables that differ by up to a factor of 2.5: a plan chooses one
 * and its name is printed. Valves are fully open.
 */

export const lossTableNames = ['network manual', 'textbook compilation'] as const;
export type LossTableName = (typeof lossTableNames)[number];

export const fittingNames = [
  'elbow 90',
  'elbow 90 long',
  'elbow 45',
  'push-fit elbow',
  'return bend',
  'tee straight',
  'tee branch',
  'gate valve',
  'ball valve',
  'globe valve',
  'angle valve',
  'check valve',
  'butterfly valve',
  'diaphragm valve',
  'entrance',
  'exit',
] as const;
export type FittingName = (typeof fittingNames)[number];

export interface LossCoefficient {
  readonly k: number;
  readonly citations: readonly Citation[];
}

type LossTable = Readonly<Record<FittingName, LossCoefficient>>;

const manual = (k: number): LossCoefficient => ({ k, citations: [networkManual] });
const compiled = (k: number): LossCoefficient => ({ k, citations: [textbookCompilation] });

const pushFit: LossCoefficient = { k: 1.5, citations: [pushFitElbow] };
const exit: LossCoefficient = { k: 1, citations: [networkManualRemembered] };

export const lossTables: Readonly<Record<LossTableName, LossTable>> = {
  'network manual': {
    // Of the short radius.
    'elbow 90': manual(0.9),
    'elbow 90 long': manual(0.6),
    'elbow 45': manual(0.4),
    'push-fit elbow': pushFit,
    'return bend': manual(2.2),
    'tee straight': manual(0.6),
    'tee branch': manual(1.8),
    'gate valve': manual(0.2),
    'ball valve': { k: 0.2, citations: [ballValveAsGate, networkManual] },
    'globe valve': manual(10),
    'angle valve': manual(5),
    'check valve': manual(2.5),
    'butterfly valve': manual(0.3),
    'diaphragm valve': manual(2.3),
    entrance: manual(0.5),
    exit,
  },
  // Threaded fittings. What it lacks is as in the other table and cites it.
  'textbook compilation': {
    'elbow 90': compiled(1.5),
    'elbow 90 long': compiled(0.7),
    'elbow 45': compiled(0.4),
    'push-fit elbow': pushFit,
    'return bend': compiled(1.5),
    'tee straight': compiled(0.9),
    'tee branch': compiled(2),
    'gate valve': compiled(0.15),
    'ball valve': { k: 0.15, citations: [ballValveAsGate, textbookCompilation] },
    'globe valve': compiled(10),
    'angle valve': compiled(2),
    'check valve': compiled(2),
    'butterfly valve': manual(0.3),
    'diaphragm valve': manual(2.3),
    entrance: manual(0.5),
    exit,
  },
};

/** The stricter of the two for small pipe with many bends. */
export const defaultLossTable: LossTableName = 'textbook compilation';
