import { topics } from '../engine/finding.ts';
import { nearest } from '../plan/nearest.ts';
import { quote } from '../plan/quote.ts';
import { type CheckOptions, parseTopics } from './check.ts';
import { chosenFormat, contradiction, type WrittenFormat } from './commands/output.ts';

/** The command line of `check`, as commander hands it over. */
export interface WrittenCheck extends WrittenFormat {
  readonly only: readonly string[];
  readonly detail: boolean;
  readonly quiet: boolean;
  readonly assumptions: boolean;
  readonly strict: boolean;
}

/** What the command line asks for, or what to complain of: an option is never passed over in silence. */
export function checkOptionsOf(
  written: WrittenCheck,
): { readonly options: CheckOptions } | { readonly wrong: string } {
  const chosen = parseTopics(written.only);
  if ('unknown' in chosen) {
    const meant = nearest(chosen.unknown, topics);
    return {
      wrong: `${quote(chosen.unknown)} is not a topic\n${meant === undefined ? '' : `  did you mean: ${meant}\n`}  expected: one of ${topics.join(', ')}\n`,
    };
  }
  const output = chosenFormat(written);
  if ('wrong' in output) return output;
  const { detail, quiet, assumptions, strict } = written;
  const { format } = output;
  const short = (format === 'json' || format === 'markdown') && written[format];
  const asked = short ? `--${format}` : `--format ${format}`;
  if (format !== 'table') {
    const shaping = detail ? '--detail' : quiet ? '--quiet' : assumptions ? '--assumptions' : undefined;
    if (shaping) return contradiction(asked, shaping, `\`${shaping}\` is for the table on a terminal`);
    if (format !== 'markdown' && chosen.topics.length > 0) {
      return contradiction(asked, '--only', `programs that read \`${format}\` are given the whole report`);
    }
  }
  if (detail && quiet) return contradiction('--detail', '--quiet', 'one asks for more, the other for less');
  if (assumptions) {
    const other = detail ? '--detail' : quiet ? '--quiet' : chosen.topics.length > 0 ? '--only' : undefined;
    if (other) return contradiction('--assumptions', other, 'the list of assumed values is always the same');
  }
  return {
    options: {
      format,
      detail,
      quiet,
      assumptions,
      strict,
      ...(chosen.topics.length > 0 && { only: chosen.topics }),
    },
  };
}
