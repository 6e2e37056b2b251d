import type { Citation } from './citation.ts';
import type { Material } from './materials.ts';

/** Where `burns` comes from. */
export const burningKnowledge: Citation = {
  title: 'Metal, glass and mineral or glass wool do not burn; wood, foam, textile, plastic and rubber do',
  provenance: 'memory',
  caution:
    'General knowledge, not looked up. No fire class of any product was read; faced or coated goods may burn though their core does not.',
};

/** Names of the materials that do not burn, besides the metals. */
const unburnt: ReadonlySet<string> = new Set([
  'glass',
  'glass wool',
  'glass wool slab',
  'mineral wool',
  'rock wool',
]);

/** Whether a material burns, melts or chars beside something hot. */
export const burns = ({ name, purposes }: Material): boolean =>
  !purposes.includes('metal') && !unburnt.has(name);
