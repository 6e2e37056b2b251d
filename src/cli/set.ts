import { parseDocument } from '../plan/document.ts';
import { parsePlanPath, writtenPath } from '../plan/editing/plan-path.ts';
import { typedValue } from '../plan/editing/scalar-text.ts';
import { setValue } from '../plan/editing/set-value.ts';
import { edit, type Made } from './edit.ts';
import type { Surroundings } from './surroundings.ts';

export interface SetOptions {
  readonly dryRun: boolean;
  readonly new: boolean;
}

/** Runs `storystick set` and returns its exit code. */
export const set = (
  file: string,
  written: string,
  value: string,
  options: SetOptions,
  around: Surroundings,
): Promise<number> => edit(file, async (text) => changed(text, written, value, options.new), options, around);

function changed(text: string, written: string, value: string, asNew: boolean): Made {
  const { problems, broken } = parseDocument(text);
  // Mistakes in what a plan says can be mended this way, mistakes in its YAML cannot.
  if (broken || problems.length > 0) return { problems };
  const parsed = parsePlanPath(written);
  if ('problem' in parsed) return parsed;
  const done = setValue(text, parsed.steps, typedValue(value), { asNew });
  if ('problem' in done) return done;
  const { path, before, after } = done;
  const name = writtenPath(path);
  return {
    text: done.text,
    // What stands over several lines is said in one.
    did:
      before === undefined
        ? `${name}: added, ${after}`
        : `${name}: ${before.replace(/\s+/g, ' ')} → ${after}`,
    notes: [],
  };
}
