import type { Command } from 'commander';
import { helpText } from '../help-text.ts';
import type { Surroundings } from '../surroundings.ts';
import { outputWidth } from '../terminal.ts';

export function addWatch(program: Command, around: Surroundings, done: (exitCode: number) => void): void {
  program
    .command('watch')
    .description('check a plan again at every save, and show what the save has changed')
    .argument('<plan>', 'the plan file')
    .option('--no-clear', 'keep what was printed before on the screen')
    .helpOption('-h, --help', 'show this help')
    .exitOverride()
    .addHelpText('after', () => helpText(watchHelp, around))
    .action(async (file: string, { clear }: { readonly clear: boolean }) => {
      const { watch } = await import('../watch.ts');
      const { screenOf } = await import('../watching/screen.ts');
      const width = (stream: NodeJS.WriteStream) => outputWidth(stream, process.env);
      done(await watch(file, around, () => screenOf(process.stdout, width, { clear })));
    });
}

const watchHelp = `
After each save: the verdicts that changed since the last good run, the moved
values closest to their limits, what fails, and the counts. A plan that cannot
be understood is shown with its place, and the last good result is kept. The
screen is cleared only on a terminal. Ctrl-C ends the watch.

Exit codes: 0 the watch was ended, whatever the verdicts, 2 there is no such
file or the command line could not be understood, 3 a defect of storystick.

Examples:
  storystick watch plan.yaml
  storystick watch plan.yaml --no-clear | tee watch.log`;
