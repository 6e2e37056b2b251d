import { type Argument, Command, CommanderError, Option } from 'commander';
import { topics } from '../engine/finding.ts';
import { nearest } from '../plan/nearest.ts';
import { quote } from '../plan/quote.ts';
import { visible } from '../report/visible.ts';
import { check } from './check.ts';
import { checkOptionsOf, type WrittenCheck } from './check-options.ts';
import { addCompare } from './commands/compare.ts';
import { addCompletion } from './commands/completion.ts';
import { addDiff } from './commands/diff.ts';
import { addExplain } from './commands/explain.ts';
import { addHook } from './commands/hook.ts';
import { addMove } from './commands/move.ts';
import { addNew } from './commands/new.ts';
import { formatOptions } from './commands/output.ts';
import { addSchema } from './commands/schema.ts';
import { addSet } from './commands/set.ts';
import { addWatch } from './commands/watch.ts';
import { helpText } from './help-text.ts';
import type { Surroundings } from './surroundings.ts';

/** Reads the command line, runs the command, and returns the exit code: 0, 1, 2 or 3. */
export async function run(args: readonly string[], around: Surroundings): Promise<number> {
  let exitCode = 0;
  const program = programOf(args, around, (code) => {
    exitCode = code;
  });
  if (args.length === 0) {
    around.complain(`no command is given\n\n`);
    program.outputHelp({ error: true });
    return 2;
  }
  try {
    await program.parseAsync([...args], { from: 'user' });
    return exitCode;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    throw error;
  }
}

/** All commands and their options; help, completion and tests read them from here. */
export function programOf(
  args: readonly string[],
  around: Surroundings,
  done: (exitCode: number) => void,
): Command {
  const program = new Command('storystick')
    .description('Checks the plan of a van-to-home conversion, written in one YAML file.')
    .version(around.version, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'show this help')
    .helpCommand(false)
    .exitOverride()
    .configureOutput({
      writeOut: around.print,
      writeErr: around.complain,
      outputError: (text, write) => write(inOurWords(text, usageOf(args))),
      getOutHelpWidth: () => around.width,
      getErrHelpWidth: () => around.width,
    })
    // An option that is off unless given needs no word about it; a hundred ids of checks have a list of their own.
    .configureHelp({
      minWidthToWrap: 20,
      // That a command has options is no news, and takes the room of what it is for.
      subcommandTerm: (command) => [command.name(), ...command.registeredArguments.map(written)].join(' '),
      optionDescription: ({ description }) => description,
      argumentDescription: ({ description }) => description,
    })
    .addHelpText('after', () => helpText(exitCodes, around));

  const checking = program
    .command('check')
    .description(
      'check a plan: what it weighs and where, whether it fits, whether people, cables and pipes find their way, and whether electrics, water, gas, air and heat are planned well',
    )
    .argument('<plan>', 'the plan file')
    .addOption(
      new Option('--only <topics>', `show only these topics, with commas between: ${topics.join(', ')}`)
        .choices(topics)
        .argParser((given: string, before: readonly string[]): readonly string[] => [...before, given])
        .default([]),
    )
    .option('--detail', 'explain passes too, and show the tables of information', false)
    .option('--quiet', 'one line for each finding that is not a pass', false)
    .option('--assumptions', 'list every value that the tool assumed, instead of the report', false)
    .option('--strict', 'let warnings fail', false)
    .helpOption('-h, --help', 'show this help')
    .exitOverride()
    .addHelpText('after', () => helpText(checkExamples, around))
    .action(async (file: string, options: WrittenCheck) => {
      const asked = checkOptionsOf(options);
      if ('wrong' in asked) {
        around.complain(asked.wrong);
        done(2);
      } else done(await check(file, asked.options, around));
    });
  for (const option of formatOptions()) checking.addOption(option);

  program
    .command('look')
    .description('draw the plan view and the side elevations of a plan to scale, with box-drawing characters')
    .argument('<plan>', 'the plan file')
    .addOption(
      new Option('--view <views>', 'draw only these, with commas between: plan, left, right')
        .choices(['plan', 'left', 'right'])
        .argParser((given: string, before: readonly string[]): readonly string[] => [...before, given])
        .default([]),
    )
    .option('--at <height>', 'cut the plan view at a height above the floor, such as 1.2m')
    .helpOption('-h, --help', 'show this help')
    .exitOverride()
    .addHelpText('after', () => helpText(lookExamples, around))
    .action(async (file: string, { view, at }: WrittenLook) => {
      // `check` runs on every save, and need not wait for what only this command uses.
      const { look, parseCut, parseViews, viewNames } = await import('./look.ts');
      const chosen = parseViews(view);
      const cut = at === undefined ? undefined : parseCut(at);
      if ('unknown' in chosen) {
        const meant = nearest(chosen.unknown, viewNames);
        around.complain(
          `${visible(quote(chosen.unknown))} is not a view\n${meant === undefined ? '' : `  did you mean: ${meant}\n`}  expected: one of ${viewNames.join(', ')}\n`,
        );
        done(2);
      } else if (cut && 'wrong' in cut) {
        around.complain(cut.wrong);
        done(2);
      } else done(await look(file, { ...chosen, ...cut }, around));
    });

  program
    .command('circuits')
    .description(
      'list every circuit with its conductor, fuse, voltage drop and verdict: the schedule an installer asks for',
    )
    .argument('<plan>', 'the plan file')
    .helpOption('-h, --help', 'show this help')
    .exitOverride()
    .addHelpText('after', () => helpText(circuitsExamples, around))
    .action(async (file: string) => {
      const { circuits } = await import('./circuits.ts');
      done(await circuits(file, around));
    });

  program
    .command('energy')
    .description(
      'show twelve months of energy: what sun, engine and hook-ups bring, what the loads take, and what closes the worst month',
    )
    .argument('<plan>', 'the plan file')
    .helpOption('-h, --help', 'show this help')
    .exitOverride()
    .addHelpText('after', () => helpText(energyExamples, around))
    .action(async (file: string) => {
      const { energy } = await import('./energy.ts');
      done(await energy(file, around));
    });

  addDiff(program, around, done);
  addCompare(program, around, done);
  addExplain(program, around, done);
  addWatch(program, around, done);
  addHook(program, around, done);
  addNew(program, around, done);
  addSet(program, around, done);
  addMove(program, around, done);
  addSchema(program, around, done);
  addCompletion(program, around, done);
  return program;
}

/** "<plan>", "[after]", "<variants...>" */
function written(argument: Argument): string {
  const name = `${argument.name()}${argument.variadic ? '...' : ''}`;
  return argument.required ? `<${name}>` : `[${name}]`;
}

/** What commander says of a command line, in the form of our own messages. */
function inOurWords(text: string, expected: string): string {
  const [, said = text, meant] =
    /^error: (.*?)\n?(?:\(Did you mean (?:one of )?(.*)\?\))?\n*$/s.exec(text) ?? [];
  const hint = meant === undefined ? '' : `  did you mean: ${meant}\n`;
  const plain = said
    .replace("missing required argument 'variants'", 'no second plan is given')
    .replace(/missing required argument '(plan|path|value|fixture)'/, 'no $1 is given')
    .replace(/'([^']*)'/g, '`$1`');
  return `${visible(plain)}\n${hint}  expected: ${expected}\n`;
}

/** How the command is written that was meant, or `check` where none can be told. */
function usageOf(args: readonly string[]): string {
  const command = args.find((arg) => commands.includes(arg)) ?? 'check';
  const plan = withoutPlan.includes(command) ? '' : ' plan.yaml';
  return `\`storystick ${command}${plan}${more[command] ?? ''}\`; \`storystick ${command} --help\` shows all options`;
}

const withoutPlan = ['explain', 'hook', 'schema', 'completion'];
const more: Readonly<Record<string, string>> = {
  diff: ' other.yaml',
  compare: ' other.yaml',
  set: " fixtures.bed.mass '26 kg'",
  move: ' bed --rearwards 40cm',
  explain: ' balance.sides plan.yaml',
};
const commands = [
  'check',
  'look',
  'circuits',
  'energy',
  'diff',
  'compare',
  'watch',
  'new',
  'set',
  'move',
  ...withoutPlan,
];

interface WrittenLook {
  readonly view: readonly string[];
  readonly at?: string;
}

const exitCodes = `
Exit codes: 0 nothing failed, 1 a check failed (or warned, with --strict),
2 the plan or the command line could not be understood, 3 a defect of storystick.`;

const checkExamples = `
Examples:
  storystick check examples/curlew/curlew.yaml
  storystick check plan.yaml --only mass --detail
  storystick check plan.yaml --format sarif > plan.sarif`;

const lookExamples = `
Examples:
  storystick look examples/curlew/curlew.yaml
  storystick look plan.yaml --view plan --at 1.2m`;

const circuitsExamples = `
Exit codes: 0 the circuits are listed, whatever their verdicts (\`storystick check\` fails for those),
2 the plan or the command line could not be understood, 3 a defect of storystick.

Examples:
  storystick circuits examples/curlew/curlew.yaml
  storystick circuits plan.yaml > circuits.txt`;

const energyExamples = `
Exit codes: 0 the year is shown, whatever is short in it (\`storystick check\` fails for that),
2 the plan or the command line could not be understood, 3 a defect of storystick.

Examples:
  storystick energy examples/curlew/curlew.yaml
  storystick energy plan.yaml > energy.txt`;
