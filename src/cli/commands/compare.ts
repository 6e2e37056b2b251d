import type { Command } from 'commander';
import type { CompareOptions } from '../compare.ts';
import { helpText } from '../help-text.ts';
import type { Surroundings } from '../surroundings.ts';
import { contradiction } from './output.ts';

export function addCompare(program: Command, around: Surroundings, done: (exitCode: number) => void): void {
  program
    .command('compare')
    .description(
      'show variants of a plan side by side, one line for each value, with the best and the failing marked',
    )
    .argument('<plan>', 'the first variant')
    .argument('<variants...>', 'the others')
    .option('--all', 'show what is the same in all variants, too', false)
    .option('--json', 'print all of it as JSON (schema version 1)', false)
    .helpOption('-h, --help', 'show this help')
    .exitOverride()
    .addHelpText('after', () => helpText(compareHelp, around))
    .action(async (plan: string, variants: readonly string[], options: CompareOptions) => {
      if (options.all && options.json) {
        around.complain(contradiction('--all', '--json', 'the JSON always holds all').wrong);
        return done(2);
      }
      const { compareVariants } = await import('../compare.ts');
      done(await compareVariants([plan, ...variants], options, around));
    });
}

const compareHelp = `
A value that fails, warns or could not be checked says so, and the best says \`best\`: the best verdict, then
the greatest margin. Things are matched with the first variant's by name, and by likeness where they were
renamed.

Exit codes: 0 the variants are shown, whatever their verdicts (\`storystick check\` and \`storystick diff\`
fail for those), 2 a plan or the command line could not be understood, 3 a defect of storystick.

Examples:
  storystick compare examples/curlew/curlew.yaml examples/curlew/oak.yaml examples/curlew/crowded.yaml
  storystick compare plan.yaml variants/*.yaml --all`;
