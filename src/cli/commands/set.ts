import type { Command } from 'commander';
import { visible } from '../../report/visible.ts';
import { helpText } from '../help-text.ts';
import type { Surroundings } from '../surroundings.ts';

export function addSet(program: Command, around: Surroundings, done: (exitCode: number) => void): void {
  program
    .command('set')
    .description('set one value of a plan; comments, order and everything else in the file stay as they are')
    .argument('<plan>', 'the plan file')
    .argument('<path>', 'the keys that lead to the value, with dots between')
    .argument('<value>', 'the value as the plan would write it')
    .option('--new', 'add something by a new name, though there is something of almost that name', false)
    .option('--dry-run', 'show the changed lines and the verdicts, and write nothing', false)
    // A value may begin with a minus sign: `-250 mm` is no option.
    .allowUnknownOption()
    .helpOption('-h, --help', 'show this help')
    .exitOverride()
    .addHelpText('after', () => helpText(setHelp, around))
    .action(async (file: string, path: string, value: string, options: Written) => {
      const unknown = [file, path, value].find((word) => /^(?:--|-\p{L})/u.test(word));
      if (unknown !== undefined) {
        around.complain(
          `unknown option \`${visible(unknown)}\`\n  expected: \`storystick set plan.yaml fixtures.bed.mass '26 kg'\`; \`storystick set --help\` shows all options\n`,
        );
        done(2);
        return;
      }
      const { set } = await import('../set.ts');
      done(await set(file, path, value, options, around));
    });
}

interface Written {
  readonly dryRun: boolean;
  readonly new: boolean;
}

const setHelp = `
Names may have spaces; a name with dots in it goes into quotes; [2] is the second entry of a list. A key
that is not there yet is added as its neighbours are written. The changed plan is checked before it is
written, and refused if it cannot be understood. A check that fails does not hinder it: the counts of
verdicts before and after are printed.

Exit codes: 0 the plan is changed, whatever its verdicts, or was so already, 2 the plan, the path or the
value could not be understood, or the file not be written, 3 a defect of storystick.

Examples:
  storystick set plan.yaml fixtures.bed.mass '26 kg ± 1 kg'
  storystick set plan.yaml 'fixtures.kitchen unit.at.from_front' '120 mm' --dry-run`;
