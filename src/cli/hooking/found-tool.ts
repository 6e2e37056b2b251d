import { existsSync, realpathSync } from 'node:fs';
import { dirname, isAbsolute, join, relative, sep } from 'node:path';

/**
 * The folders of a repository that have storystick installed, on the way from a folder in it up to its top, as git
 * writes paths: "van/plans"; the top itself is ''.
 */
export function foldersWithTool(top: string, from: string): readonly string[] {
  const found: string[] = [];
  for (let folder = from; folder === top || isBelow(folder, top); folder = dirname(folder)) {
    if (existsSync(join(folder, 'node_modules', '.bin', 'storystick'))) {
      found.push(relative(top, folder).split(sep).join('/'));
    }
  }
  return found;
}

/** Both paths absolute and without links. */
export function isBelow(path: string, folder: string): boolean {
  const way = relative(folder, path);
  return way !== '' && way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

/** The launcher of the storystick that runs now; none when it runs from its sources. */
export function runningLauncher(script: string | undefined): string | undefined {
  if (script === undefined) return undefined;
  try {
    const real = realpathSync(script);
    return real.endsWith('.cjs') ? real : undefined;
  } catch {
    return undefined;
  }
}
