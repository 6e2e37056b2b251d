import type { Argument, Command, Option } from 'commander';

/** What a shell may offer in one place of the command line. */
export type Offer =
  | { readonly kind: 'words'; readonly words: readonly string[] }
  /** Some of these, with commas between. */
  | { readonly kind: 'list'; readonly words: readonly string[] }
  /** Folders, and files that end like a plan. */
  | { readonly kind: 'plan' }
  /** Text that only the user knows. */
  | { readonly kind: 'anything' };

export interface OfferedOption {
  /** `--only`, and `-h` for one that has a short form. */
  readonly names: readonly string[];
  readonly description: string;
  /** For its value, if it takes one. */
  readonly value: Offer | undefined;
}

export interface OfferedArgument {
  readonly name: string;
  readonly offer: Offer;
  /** Whether it may be given again and again. */
  readonly variadic: boolean;
}

export interface OfferedCommand {
  readonly name: string;
  readonly description: string;
  readonly options: readonly OfferedOption[];
  readonly arguments: readonly OfferedArgument[];
}

/** All that can be completed, read from the very program that reads the command line. */
export function offersOf(program: Command): {
  readonly options: readonly OfferedOption[];
  readonly commands: readonly OfferedCommand[];
} {
  const help = program.createHelp();
  const optionsOf = (command: Command) => help.visibleOptions(command).map(offeredOption);
  return {
    options: optionsOf(program),
    commands: help.visibleCommands(program).map((command) => ({
      name: command.name(),
      description: command.description(),
      options: optionsOf(command),
      arguments: command.registeredArguments.map(offeredArgument),
    })),
  };
}

function offeredOption(option: Option): OfferedOption {
  const takesValue = option.required || option.optional;
  // Its placeholder says what an option takes: `<plan>` a plan, a plural such as `<topics>` several words.
  const [, placeholder = ''] = /[<[]([\w-]+)/.exec(option.flags) ?? [];
  return {
    names: [option.long, option.short].filter((name) => name !== undefined && name !== null),
    description: option.description,
    value: takesValue ? offerOf(placeholder, option.argChoices, placeholder.endsWith('s')) : undefined,
  };
}

const offeredArgument = (argument: Argument): OfferedArgument => ({
  name: argument.name(),
  offer: offerOf(argument.name(), argument.argChoices, false),
  variadic: argument.variadic,
});

function offerOf(name: string, choices: readonly string[] | undefined, several: boolean): Offer {
  if (choices) return { kind: several ? 'list' : 'words', words: choices };
  return /^(plan|file|variants|after)$/.test(name) ? { kind: 'plan' } : { kind: 'anything' };
}
