import { type Command, Option } from 'commander';
import { nearest } from '../../plan/nearest.ts';
import { quote } from '../../plan/quote.ts';
import { visible } from '../../report/visible.ts';
import type { Compare, FailOn } from '../diff.ts';
import { helpText } from '../help-text.ts';
import type { Surroundings } from '../surroundings.ts';
import { chosenFormat, contradiction, formatOptions, type WrittenFormat } from './output.ts';

interface WrittenDiff extends WrittenFormat {
  readonly against?: string;
  readonly failOn: string;
  readonly detail: boolean;
}

const failures: readonly FailOn[] = ['worse', 'changed', 'never'];

export function addDiff(program: Command, around: Surroundings, done: (exitCode: number) => void): void {
  const command = program
    .command('diff')
    .description('show what changed from one plan to another, or from one revision of a plan to another')
    .argument('<plan>', 'the plan before, or the one plan to compare with a revision of itself')
    .argument('[after]', 'the plan after')
    .option(
      '--against <revision>',
      'a git revision of the plan, or two: main..HEAD, main...HEAD; HEAD if left out',
    )
    .addOption(
      new Option('--fail-on <what>', 'what to exit with 1 for: worse (if not given), changed, never')
        .choices(failures)
        .argParser((given: string) => given)
        .default('worse'),
    )
    .option('--detail', 'show what moved by less than the digits that are usually printed, too', false);
  for (const option of formatOptions()) command.addOption(option);
  command
    .helpOption('-h, --help', 'show this help')
    .exitOverride()
    .addHelpText('after', () => helpText(diffHelp, around))
    .action(async (plan: string, after: string | undefined, written: WrittenDiff) => {
      const output = chosenFormat(written);
      const failOn = failures.find((each) => each === written.failOn);
      const complaint =
        'wrong' in output
          ? output.wrong
          : failOn === undefined
            ? unknownFailure(written.failOn)
            : after !== undefined && written.against !== undefined
              ? contradiction('--against', after, 'two files are compared as they are on disk').wrong
              : undefined;
      if (complaint !== undefined || 'wrong' in output || failOn === undefined) {
        around.complain(complaint ?? '');
        return done(2);
      }
      const plans: Compare =
        after === undefined ? { file: plan, against: written.against ?? 'HEAD' } : { before: plan, after };
      const { diff } = await import('../diff.ts');
      done(await diff(plans, { format: output.format, detail: written.detail, failOn }, around));
    });
}

function unknownFailure(written: string): string {
  const meant = nearest(written, failures);
  return `${visible(quote(written))} is nothing to exit for\n${meant === undefined ? '' : `  did you mean: ${meant}\n`}  expected: one of ${failures.join(', ')}\n`;
}

const diffHelp = `
First the verdicts that changed, then the values that moved and what that does to their margins, then what
was edited in the plan. Things are matched by name, and by likeness where they were renamed. A revision is
read from git, nothing is checked out, and a file that git knows to be renamed is followed.

The second plan is worse if a verdict is worse than before (from good to bad: pass, not checked, warn,
fail), or if there is a failure or a warning that was not there before; what the plan waives is no step
back. SARIF and JUnit list just these.

Exit codes: 0 the second is not worse, 1 it is worse (with --fail-on changed: anything differs), 2 a plan,
a revision or the command line could not be understood, 3 a defect of storystick.

Examples:
  storystick diff examples/curlew/curlew.yaml examples/curlew/oak.yaml
  storystick diff plan.yaml --against main...HEAD --markdown`;
