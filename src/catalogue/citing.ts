import type { Citation } from './citation.ts';

/** A page that was read, whose address cannot be printed. */
export const leftOut = (title: string, caution?: string): Citation => ({
  title,
  provenance: 'read',
  caution: `The address carries a maker's or seller's name and is left out.${caution === undefined ? '' : ` ${caution}`}`,
});

/** Something remembered and not looked up. */
export const remembered = (title: string, more = ''): Citation => ({
  title,
  provenance: 'memory',
  caution: `Not looked up.${more}`,
});
