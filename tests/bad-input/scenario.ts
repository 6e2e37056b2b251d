import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { check } from '../../src/cli/check.ts';

/**
 * A scenario file holds malformed plans, each with what `storystick check` says of it:
 *
 *     @ case: a mass without a unit
 *     storystick: 1
 *     van: {max_mass: 3500}
 *     @ says
 *     plan.yaml:2:17: van.max_mass: `3500` has no unit
 *     …
 *
 * Lines in front of the first case are a comment on the whole file. No line of YAML can begin with `@ `.
 */
export interface Scenario {
  readonly name: string;
  readonly plan: string;
}

const caseLine = /^@ case: (.*)\n/m;

export function readScenarios(file: string): {
  readonly comment: string;
  readonly cases: readonly Scenario[];
} {
  const [comment = '', ...parts] = file.split(caseLine);
  const cases = Array.from({ length: parts.length / 2 }, (_, index) => {
    const [plan = ''] = (parts[2 * index + 1] ?? '').split(/^@ says\n/m);
    return { name: parts[2 * index] ?? '', plan };
  });
  return { comment, cases };
}

/** All that the cases of a scenario file say. */
export const saysIn = (file: string): string =>
  file
    .split(caseLine)
    .map((part) => part.split(/^@ says\n/m)[1] ?? '')
    .join('\n');

/** The file as it would be if every case said what it says now. */
export const writeScenarios = (
  comment: string,
  cases: readonly (Scenario & { readonly says: string })[],
): string =>
  comment + cases.map(({ name, plan, says }) => `@ case: ${name}\n${plan}@ says\n${says}`).join('\n');

export interface Outcome {
  readonly exitCode: number;
  /** What went to standard output, where a report goes. */
  readonly printed: string;
  /** What went to standard error, with the file called `plan.yaml`. */
  readonly complained: string;
}

/** Runs `check` on a file with these contents, as the command does, with surroundings of the test's own. */
export async function checkText(contents: string | Uint8Array): Promise<Outcome> {
  const folder = mkdtempSync(join(tmpdir(), 'storystick-'));
  try {
    const file = join(folder, 'plan.yaml');
    writeFileSync(file, contents);
    const outcome = await checkFile(file);
    return { ...outcome, complained: outcome.complained.replaceAll(`${folder}/`, '') };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

export async function checkFile(file: string): Promise<Outcome> {
  let printed = '';
  let complained = '';
  const exitCode = await check(
    file,
    { detail: false, quiet: false, assumptions: false, strict: false },
    {
      version: '0.0.0',
      width: 100,
      colour: false,
      print: (text) => {
        printed += text;
      },
      complain: (text) => {
        complained += text;
      },
      loadCalculator: () => import('../../src/plan/calculator.ts'),
    },
  );
  return { exitCode, printed, complained };
}
