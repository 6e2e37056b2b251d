import type { Finding } from '../engine/finding.ts';

/** The keys that a plan lacks for a check, as a sentence to put behind the reason; nothing where it lacks none. */
export const missingText = ({ missing = [] }: Pick<Finding, 'missing'>): string =>
  missing.length > 0 ? ` Missing: ${missing.join(', ')}.` : '';
