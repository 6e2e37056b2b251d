import type { Command } from 'commander';
import { programOf } from '../../src/cli/program.ts';
import type { Surroundings } from '../../src/cli/surroundings.ts';

/** The program with whatever it prints, and no command run. */
export function programWithOutput(args: readonly string[] = []): {
  readonly program: Command;
  readonly printed: () => string;
} {
  let printed = '';
  const print = (text: string): void => {
    printed += text;
  };
  const around: Surroundings = {
    version: '1.2.3',
    width: 100,
    colour: false,
    print,
    complain: print,
    loadCalculator: () => import('../../src/plan/calculator.ts'),
  };
  return { program: programOf(args, around, () => {}), printed: () => printed };
}

export const commandNames: readonly string[] = programWithOutput().program.commands.map((each) =>
  each.name(),
);

/** What `--help` of a command prints. */
export async function helpOf(...args: string[]): Promise<string> {
  const { program, printed } = programWithOutput();
  await program.parseAsync([...args, '--help'], { from: 'user' }).catch(() => undefined);
  return printed();
}
