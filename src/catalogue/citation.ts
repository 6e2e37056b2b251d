/**
 * How a value came into this project. `read`: seen in the named document (or the named copy of it). `memory`:
 * remembered, not looked up. `computed`: follows from a definition. `common practice`: a rule of thumb of the trade
 * with no published source. `own choice`: a threshold of this project, to be overridden freely.
 */
export type Provenance = 'read' | 'memory' | 'computed' | 'common practice' | 'own choice';

/** Where a value or a method comes from. */
export interface Citation {
  /** The document, with edition and clause, table or page where known. */
  readonly title: string;
  /** Where the text was read, if it was. */
  readonly readAt?: string;
  readonly provenance: Provenance;
  /** What to keep in mind about this source: a misprint, a secondary page, a superseded edition. */
  readonly caution?: string;
}
