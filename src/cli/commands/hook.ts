import { Argument, type Command, Option } from 'commander';
import { nearest } from '../../plan/nearest.ts';
import { quote } from '../../plan/quote.ts';
import { visible } from '../../report/visible.ts';
import { helpText } from '../help-text.ts';
import type { Surroundings } from '../surroundings.ts';

const actions = ['install', 'remove', 'run'] as const;

interface Written {
  readonly strict: boolean;
  readonly remove: boolean;
}

export function addHook(program: Command, around: Surroundings, done: (exitCode: number) => void): void {
  program
    .command('hook')
    .description('install a git hook that checks the plans of each commit, as they are staged')
    .addArgument(
      new Argument('[action]', 'install if none is given; run checks the staged plans now')
        .choices(actions)
        // Ours speaks of what was meant.
        .argParser((given: string) => given),
    )
    .option('--strict', 'let warnings stop a commit too', false)
    .addOption(new Option('--remove', 'the same as `remove`').default(false).hideHelp())
    .helpOption('-h, --help', 'show this help')
    .exitOverride()
    .addHelpText('after', () => helpText(hookHelp, around))
    .action(async (written: string | undefined, { strict, remove }: Written) => {
      const action = actions.find((each) => each === (written ?? (remove ? 'remove' : 'install')));
      if (!action) {
        const meant = nearest(written ?? '', actions);
        around.complain(
          `${visible(quote(written ?? ''))} is nothing that the hook does\n${meant === undefined ? '' : `  did you mean: ${meant}\n`}  expected: one of ${actions.join(', ')}\n`,
        );
        return done(2);
      }
      const folder = process.cwd();
      if (action === 'run') {
        const { checkStaged } = await import('../hooking/check-staged.ts');
        return done(await checkStaged(folder, { strict }, around));
      }
      const { installHook, uninstallHook } = await import('../hooking/install.ts');
      const { argv, execPath, env } = process;
      done(
        action === 'remove'
          ? uninstallHook(folder, around)
          : installHook({ folder, strict, script: argv[1], node: execPath, path: env.PATH ?? '' }, around),
      );
    });
}

const hookHelp = `
The hook reads what is staged, not the files on disk. It looks at YAML files
(.yaml, .yml) in which a line begins with \`storystick:\`, now or in the commit
before. A check that fails stops the commit, and so does a plan that cannot be
understood; warnings do not. \`git commit --no-verify\` commits without the hook.
A hook that storystick did not write is left alone, with a word on how to call
storystick from it.

Exit codes: 0 done, or nothing failed, 1 a check failed (or warned, with
--strict), 2 a staged plan or the command line could not be understood, or
there is somebody else's hook, 3 a defect of storystick.

Examples:
  storystick hook
  storystick hook run --strict`;
