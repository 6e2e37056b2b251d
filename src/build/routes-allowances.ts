import type { Citation } from '../catalogue/citation.ts';

/** What is cut longer than the way, where the plan does not say: for bends, terminations and a second try. */
export const usualSlackShare = 0.1;
export const usualSlack: Citation = {
  title: 'A tenth of the way for bends, terminations and a second try; no source',
  provenance: 'common practice',
};

/** What a way that nobody has planned is longer than the one along, across and up, slack included. */
export const unplannedShare = 0.3;
export const unplannedWay: Citation = {
  title: 'Along the van, across it and up or down, and 30 % for the ways round things and for slack',
  provenance: 'own choice',
  caution: 'Lay a string along the real way before anything is bought.',
};
