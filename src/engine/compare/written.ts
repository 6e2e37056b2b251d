import { isSection } from './entries.ts';

/** A value of the plan in one line, as it could be written in YAML. */
export function written(data: unknown): string {
  if (Array.isArray(data)) return `[${data.map(written).join(', ')}]`;
  if (!isSection(data)) return data === null ? '' : String(data);
  return `{${Object.keys(data)
    .map((key) => `${key}: ${written(data[key])}`)
    .join(', ')}}`;
}
