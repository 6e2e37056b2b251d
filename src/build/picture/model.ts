import type { Outline, Point } from '../../calc/space/plane.ts';
import type { Measure } from '../../engine/measure.ts';
import type { Phrase } from '../../engine/phrase.ts';

/*
 * A picture of a build, in metres: what is drawn, not how. In every view `xM` runs to the right of the page and `yM`
 * down it.
 */

/** A stretch along one axis of a view. */
export interface Stretch {
  readonly leastM: number;
  readonly mostM: number;
}

/** How the edge of something is drawn. */
export type Line =
  /** The walls of the load bay. */
  | 'shell'
  | 'window'
  /** A hole with a lid or a grille. */
  | 'cover'
  | 'solid'
  /** Above what is seen, or below it. */
  | 'hidden';

export interface Figure {
  /** The thing that it shows, if it has an entry in the legend. */
  readonly thing?: string;
  readonly outline: Outline;
  readonly line: Line;
  /** How near to whoever looks; what is nearer hides what is farther, unless it hides nothing. */
  readonly nearnessM: number;
  readonly hides: boolean;
  readonly hatched: boolean;
}

/** A hole in the line of a wall. */
export interface Gap {
  readonly thing: string;
  readonly from: Point;
  readonly to: Point;
  /** Without it the wall is simply open there: a door. */
  readonly line?: Line;
}

/** A rib behind a lining: a short stroke inwards. */
export interface Tick {
  readonly at: Point;
  readonly towards: 'up' | 'down';
}

export type Sign = 'centre' | 'narrowest' | 'passage';

export interface Mark {
  readonly sign: Exclude<Sign, 'passage'>;
  readonly at: Point;
}

/** A dashed line right across a view. */
export interface Guide {
  readonly runs: 'across' | 'down';
  readonly atM: number;
  readonly label: string;
}

export interface View {
  readonly name: 'plan' | 'left' | 'right';
  readonly title: Phrase;
  readonly across: Stretch;
  readonly down: Stretch;
  /** What lies on each side of the page, in a word or two. */
  readonly edges: {
    readonly left: string;
    readonly right: string;
    readonly above: string;
    readonly below: string;
  };
  readonly figures: readonly Figure[];
  readonly gaps: readonly Gap[];
  readonly ticks: readonly Tick[];
  /** Room that something takes as it opens. */
  readonly sweeps: readonly Outline[];
  /** Where people walk: rings, those within others are holes. */
  readonly passage: readonly Outline[];
  readonly marks: readonly Mark[];
  readonly guides: readonly Guide[];
  /** What there is to say about this view. */
  readonly remarks: readonly Phrase[];
}

/** An entry of the legend. */
export interface Thing {
  readonly id: string;
  readonly name: string;
  /** Its own, or the van's: keyed with small letters. */
  readonly sort: 'thing' | 'van';
  /** "in kitchen unit", "on the roof"; may be empty. */
  readonly remark: string;
  /** Length, width and height; an opening has only two of them. */
  readonly size: readonly (Measure | undefined)[];
  /** From the front, from the left, above the floor. */
  readonly place: readonly (Measure | undefined)[];
}

export interface Picture {
  readonly name: string;
  readonly units: 'metric' | 'imperial';
  readonly views: readonly View[];
  readonly things: readonly Thing[];
  /** What each sign stands for, where it is drawn. */
  readonly signs: Readonly<Partial<Record<Sign, Phrase>>>;
  /** What is not drawn, and why. */
  readonly notes: readonly Phrase[];
}
