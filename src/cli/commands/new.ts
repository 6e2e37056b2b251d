import { type Command, Option } from 'commander';
import { starterKinds } from '../../plan/starters/starting.ts';
import { helpText } from '../help-text.ts';
import type { Surroundings } from '../surroundings.ts';

export function addNew(program: Command, around: Surroundings, done: (exitCode: number) => void): void {
  program
    .command('new')
    .description('write a commented plan to start from; on a terminal, after a few questions')
    .argument('[plan]', 'the file to write, plan.yaml if it is left out')
    .addOption(
      new Option(
        '--kind <kind>',
        'first-lines (the least that gives a useful answer) or full (nearly everything)',
      )
        .choices(starterKinds)
        // Ours speaks of what was meant.
        .argParser((given: string) => given),
    )
    .helpOption('-h, --help', 'show this help')
    .exitOverride()
    .addHelpText('after', () => helpText(newHelp, around))
    .action(async (file: string | undefined, { kind }: { readonly kind?: string }) => {
      const { newPlan } = await import('../new.ts');
      const options = { ...(file !== undefined && { file }), ...(kind !== undefined && { kind }) };
      if (!process.stdin.isTTY || !process.stdout.isTTY) {
        done(await newPlan(options, undefined, around));
        return;
      }
      const { askingAt } = await import('../asking.ts');
      const { ask, end } = askingAt(process.stdin, process.stdout);
      try {
        done(await newPlan(options, ask, around));
      } finally {
        end();
      }
    });
}

const newHelp = `
A file that is there is never overwritten. Where nobody can be asked (no terminal), the plan is of an
invented van. What is written checks without a failure, and says in its comments what to change.

Exit codes: 0 the plan is written, 2 the file is there already or could not be written, the questions
were broken off, or the command line could not be understood, 3 a defect of storystick.

Examples:
  storystick new
  storystick new my-van.yaml --kind full`;
