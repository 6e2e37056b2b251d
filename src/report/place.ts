import type { PlanPath } from '../engine/finding.ts';
import type { Report } from '../engine/report.ts';

/** "curlew.yaml:12:3", or only the file's name where the plan has no such place. */
export function placeText({ file, spot }: Pick<Report, 'file' | 'spot'>, path: PlanPath): string {
  const found = spot(path);
  return found ? `${file}:${found.line}:${found.column}` : file;
}
