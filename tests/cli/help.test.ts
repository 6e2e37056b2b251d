import { existsSync } from 'node:fs';
import type { Command } from 'commander';
import { describe, expect, test } from 'vitest';
import { helpText } from '../../src/cli/help-text.ts';
import { programOf } from '../../src/cli/program.ts';
import { commandNames, helpOf, programWithOutput } from '../support/commands.ts';

/** A line of a shell as the words of its first command; quotes are taken off. */
function wordsOf(line: string): string[] {
  const words = line.match(/(?:'[^']*'|"[^"]*"|[^\s'"])+/g) ?? [];
  const end = words.findIndex((word) => /^[|<>;&]/.test(word));
  return words.slice(0, end < 0 ? words.length : end).map((word) => word.replace(/['"]/g, ''));
}

/** The lines below "Examples:", as far as they are one block. */
const examplesOf = (help: string): string[] =>
  (/^Examples:\n((?: {2}.*\n?)+)/m.exec(help)?.[1] ?? '')
    .replace(/ \\\n */g, ' ')
    .split('\n')
    .flatMap((line) => {
      const text = line.trim();
      return text === '' ? [] : [text];
    });

interface Parsed {
  readonly command: string;
  readonly options: Readonly<Record<string, unknown>>;
}

/** Parses a command line as the tool does, and runs nothing. */
async function parsed(args: readonly string[]): Promise<Parsed> {
  const { program, printed } = programWithOutput(args);
  let found: Parsed | undefined;
  for (const command of program.commands)
    command.action(() => {
      found = { command: command.name(), options: command.opts() };
    });
  await program.parseAsync([...args], { from: 'user' }).catch((error: unknown) => {
    throw new Error(`${args.join(' ')}: ${printed()}`, { cause: error });
  });
  if (!found) throw new Error(`no command was run by: ${args.join(' ')}`);
  return found;
}

/** Values of options and arguments that the program offers a choice of, which commands check by themselves. */
function strayChoices(command: Command, options: Parsed['options']): string[] {
  return command.options.flatMap((option) => {
    const given = [options[option.attributeName()]].flat().filter((value) => typeof value === 'string');
    const words = given.flatMap((value) => value.split(','));
    return option.argChoices ? words.filter((word) => !option.argChoices?.includes(word)) : [];
  });
}

test('the commands are those that the tool promises', () => {
  expect(commandNames).toEqual(expect.arrayContaining(['check', 'look', 'circuits', 'energy', 'completion']));
});

describe.each(commandNames)('storystick %s --help', async (name) => {
  const help = await helpOf(name);
  const examples = examplesOf(help);

  test('is about this command, and fits its width', () => {
    expect(help).toMatch(new RegExp(`^Usage: storystick ${name}\\b`));
    for (const line of help.split('\n')) expect(line.length, line).toBeLessThanOrEqual(100);
  });

  test('has two examples', () => {
    expect(examples.length).toBeGreaterThanOrEqual(2);
    expect(new Set(examples).size).toBe(examples.length);
    for (const example of examples) expect(example).toMatch(new RegExp(`\\bstorystick ${name}\\b`));
  });

  test.each(examples)('%s', async (example) => {
    const [tool, ...args] = wordsOf(example.slice(example.indexOf('storystick ')));
    expect(tool).toBe('storystick');
    const { command, options } = await parsed(args);
    expect(command).toBe(name);
    const { program } = programWithOutput();
    const spoken = program.commands.find((each) => each.name() === name);
    expect(spoken && strayChoices(spoken, options)).toEqual([]);
    // What it names of the repository is there.
    for (const word of args.filter((each) => each.startsWith('examples/')))
      expect(existsSync(word)).toBe(true);
  });
});

test('the reader of examples sees what is wrong with one', async () => {
  await expect(parsed(['check', 'plan.yaml', '--fromat', 'json'])).rejects.toThrow(/unknown option/);
  await expect(parsed(['check'])).rejects.toThrow(/no plan is given/);
  expect(wordsOf(`storystick set plan.yaml fixtures.bed.mass '24 kg' > out`)).toEqual([
    'storystick',
    'set',
    'plan.yaml',
    'fixtures.bed.mass',
    '24 kg',
  ]);
  expect(examplesOf('Examples:\n  storystick a\n  storystick b\n\nMore')).toEqual([
    'storystick a',
    'storystick b',
  ]);
});

describe.each([60, 80])('in %i columns', (width) => {
  test.each(commandNames)('the help of %s is no wider', async (name) => {
    let help = '';
    const print = (text: string) => {
      help += text;
    };
    const around = {
      version: '1.2.3',
      width,
      colour: false,
      print,
      complain: print,
      loadCalculator: () => import('../../src/plan/calculator.ts'),
    };
    await programOf([name], around, () => {})
      .parseAsync([name, '--help'], { from: 'user' })
      .catch(() => undefined);
    expect(help).toContain('Examples:');
    expect(help.split('\n').filter((line) => line.length > width)).toEqual([]);
  });
});

test('what stands below the options is filled anew, and what is to be copied stays whole or goes on as a shell reads it', () => {
  const text = `
Words that were broken
for some other width. The list:
  one, with a label:    source <(storystick explain)

Examples:
  storystick compare examples/one.yaml examples/two.yaml
  storystick look`;
  expect(helpText(text, { width: 44 })).toBe(`
Words that were broken for some other width.
The list:
  one, with a label:
    source <(storystick explain)

Examples:
  storystick compare examples/one.yaml \\
    examples/two.yaml
  storystick look`);
});
