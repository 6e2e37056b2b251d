import * as z from 'zod';
import type { DimensionName } from './units.ts';

/** What a field takes, for those who describe the plan's format: zod cannot look into our own readers. */
export type Nameplate =
  | { readonly takes: 'quantity'; readonly kinds: readonly DimensionName[]; readonly least: number }
  | { readonly takes: 'filling' | 'conductor' | 'day' | 'name' | 'params' }
  /** The example is YAML in one line, as the messages show it. */
  | { readonly takes: 'words' | 'section'; readonly example: string }
  | { readonly takes: 'list'; readonly example: string; readonly least?: number; readonly most?: number };

export const nameplates = z.registry<Nameplate>();

/** The schema itself with a nameplate: nothing is copied, so that a check pays next to nothing for it. */
export function plated<Schema extends z.core.$ZodType>(schema: Schema, nameplate: Nameplate): Schema {
  nameplates.add(schema, nameplate);
  return schema;
}
