import type { Command } from 'commander';
import { helpText } from '../help-text.ts';
import type { Surroundings } from '../surroundings.ts';

export function addSchema(program: Command, around: Surroundings, done: (exitCode: number) => void): void {
  program
    .command('schema')
    .description('print the JSON Schema of plans, for completion, hover and errors in an editor')
    .helpOption('-h, --help', 'show this help')
    .exitOverride()
    .addHelpText('after', () => helpText(schemaHelp, around))
    .action(async () => {
      const { planSchemaText } = await import('../../plan/json-schema.ts');
      around.print(planSchemaText());
      done(0);
    });
}

const schemaHelp = `
Save it beside a plan, and let the plan's first line name it. Editors whose YAML support knows that line
then complete keys and words, show what each key means, and mark what is misspelt:
  # yaml-language-server: $schema=plan.schema.json

The schema knows keys, words and what is missing. Units, arithmetic, names that refer to other things,
and every check are left to \`storystick check\`.

Exit codes: 0 the schema is printed, 2 the command line could not be understood, 3 a defect of storystick.

Examples:
  storystick schema > plan.schema.json
  storystick schema | grep from_front`;
