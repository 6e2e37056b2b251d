import { Argument, type Command } from 'commander';
import { nearest } from '../../plan/nearest.ts';
import { quote } from '../../plan/quote.ts';
import { visible } from '../../report/visible.ts';
import { shells } from '../completing/shells.ts';
import { helpText } from '../help-text.ts';
import type { Surroundings } from '../surroundings.ts';

export function addCompletion(
  program: Command,
  around: Surroundings,
  done: (exitCode: number) => void,
): void {
  program
    .command('completion')
    .description('print a script that lets a shell complete commands, options, their values and plan files')
    .addArgument(
      new Argument('<shell>', `the shell: ${shells.join(', ')}`)
        .choices(shells)
        .argParser((given: string) => given),
    )
    .helpOption('-h, --help', 'show this help')
    .exitOverride()
    .addHelpText('after', () => helpText(completionHelp, around))
    .action(async (written: string) => {
      const shell = shells.find((each) => each === written);
      if (!shell) {
        const meant = nearest(written, shells);
        around.complain(
          `${visible(quote(written))} is not a shell that storystick knows\n${meant === undefined ? '' : `  did you mean: ${meant}\n`}  expected: one of ${shells.join(', ')}\n`,
        );
        return done(2);
      }
      const { completionScript } = await import('../completing/script.ts');
      around.print(completionScript(program, shell));
      done(0);
    });
}

const completionHelp = `
Nothing is installed. Let the shell read the script when it starts:
  bash, in ~/.bashrc:                   source <(storystick completion bash)
  zsh, in ~/.zshrc, behind compinit:    source <(storystick completion zsh)
  fish, in its config.fish:             storystick completion fish | source

Exit codes: 0 the script is printed, 2 the command line could not be understood, 3 a defect of storystick.

Examples:
  storystick completion bash > storystick.bash
  storystick completion fish | source`;
