import type { Citation, Provenance } from '../catalogue/citation.ts';

/** How far to trust a source that nobody read for this project; a document that was read needs no such word. */
const trust: Readonly<Record<Provenance, string>> = {
  read: '',
  computed: '',
  memory: 'from memory',
  'common practice': 'common practice',
  'own choice': "this tool's own choice",
};

/** The document's title, and in brackets where it comes from if nobody read it: "ISO 3833 (from memory)". */
export function sourceText({ title, provenance }: Citation): string {
  const word = trust[provenance];
  return word === '' || title.toLowerCase().includes(word) ? title : `${title} (${word})`;
}
