import type { Outline, Point } from '../../calc/space/plane.ts';
import type { Phrase } from '../../engine/phrase.ts';
import type { Layout } from '../layout.ts';
import type { DrawnBody, DrawnOpening } from './bodies.ts';
import type { CentreOfMass } from './centre-of-mass.ts';
import type { Guide, Stretch } from './model.ts';

/** Where people walk, and where that is narrowest. */
export interface Walked {
  readonly passage: readonly Outline[];
  readonly narrowestAt: Point;
}

/** What all views of one build share. */
export interface Scene {
  readonly layout: Layout;
  readonly bodies: readonly DrawnBody[];
  readonly openings: readonly DrawnOpening[];
  /** Along the van, x rearward. */
  readonly across: Stretch;
  readonly axles: readonly Guide[];
  readonly centre?: CentreOfMass;
  readonly walked?: Walked;
  readonly remarks: readonly Phrase[];
}
