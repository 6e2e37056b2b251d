import type { Rule } from '../engine/rule.ts';
import registry from './registry.generated.ts';

/** Every rule of the folder, in the order of their ids. */
export const rules: readonly Rule[] = Object.freeze([...registry].sort((a, b) => (a.id < b.id ? -1 : 1)));
