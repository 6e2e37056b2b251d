import { Argument, type Command } from 'commander';
import { rules } from '../../rules/index.ts';
import { helpText } from '../help-text.ts';
import type { Surroundings } from '../surroundings.ts';
import { contradiction } from './output.ts';

interface WrittenExplain {
  readonly json: boolean;
  readonly markdown: boolean;
}

export function addExplain(program: Command, around: Surroundings, done: (exitCode: number) => void): void {
  program
    .command('explain')
    .description('explain a check: what it is, why, by which formula and limit; with a plan, step by step')
    .addArgument(
      new Argument('[check]', 'the id of a check, as reports print it; all are listed if it is left out')
        .choices(rules.map(({ id }) => id))
        // Ours says which ids are near.
        .argParser((given: string) => given),
    )
    .argument('[plan]', 'the plan whose numbers it is worked out with')
    .option('--json', 'as JSON', false)
    .option('--markdown', 'as Markdown, without a plan: the text of src/rules/README.md', false)
    .helpOption('-h, --help', 'show this help')
    .exitOverride()
    .addHelpText('after', () => helpText(explainHelp, around))
    .action(
      async (check: string | undefined, plan: string | undefined, { json, markdown }: WrittenExplain) => {
        const complaint =
          json && markdown
            ? contradiction('--json', '--markdown', 'each asks for another format').wrong
            : markdown && plan !== undefined
              ? contradiction('--markdown', plan, 'it describes checks, without a plan').wrong
              : undefined;
        if (complaint !== undefined) {
          around.complain(complaint);
          return done(2);
        }
        const { explain } = await import('../explain.ts');
        const format = json ? 'json' : markdown ? 'markdown' : 'table';
        done(await explain(check, plan, { format }, around));
      },
    );
}

const explainHelp = `
With a plan: what the plan says, with its lines, then each step with its numbers,
down to what was measured and the verdict. Checks that measure nothing, and only
look at what the plan says, show what they looked at.

Exit codes: 0 it is explained, whatever the verdict, 2 there is no such check, or the plan or the command line
could not be understood, 3 a defect of storystick.

Examples:
  storystick explain balance.rear-axle
  storystick explain electrical.voltage-drop examples/curlew/curlew.yaml`;
