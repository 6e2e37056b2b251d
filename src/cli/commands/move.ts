import type { Command } from 'commander';
import { helpText } from '../help-text.ts';
import type { MoveOptions } from '../move.ts';
import type { Surroundings } from '../surroundings.ts';

export function addMove(program: Command, around: Surroundings, done: (exitCode: number) => void): void {
  program
    .command('move')
    .description('move a thing of a plan; comments, order and everything else in the file stay as they are')
    .argument('<plan>', 'the plan file')
    .argument('<fixture>', 'the name of a fixture, a tank or a store, or the path to anything with a place')
    .option('--rearwards <distance>', 'towards the rear of the van, such as 40cm')
    .option('--forwards <distance>', 'towards the front')
    .option('--left <distance>', 'to the left, as seen facing forward')
    .option('--right <distance>', 'to the right')
    .option('--up <distance>', 'upwards')
    .option('--down <distance>', 'downwards')
    .option('--dry-run', 'show the changed lines and the verdicts, and write nothing', false)
    .helpOption('-h, --help', 'show this help')
    .exitOverride()
    .addHelpText('after', () => helpText(moveHelp, around))
    .action(async (file: string, thing: string, options: MoveOptions) => {
      const { move } = await import('../move.ts');
      done(await move(file, thing, options, around));
    });
}

const moveHelp = `
A place keeps the key and the unit that the plan uses for it: what is measured from the rear stays
measured from the rear. To an expression the distance is appended; what was centred is measured from the
left from then on. What stands in or on the thing goes with it. The changed plan is checked before it is
written, and the counts of verdicts before and after are printed.

Exit codes: 0 the plan is changed, whatever its verdicts, 2 the plan or the command line could not be
understood, the place is open, or the file could not be written, 3 a defect of storystick.

Examples:
  storystick move plan.yaml 'fresh tank' --rearwards 40cm
  storystick move plan.yaml bed --left 50mm --up 2in --dry-run`;
