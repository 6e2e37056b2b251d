import type { Command } from 'commander';
import { bashScript } from './bash.ts';
import { fishScript } from './fish.ts';
import { offersOf } from './offers.ts';
import type { Shell } from './shells.ts';
import { zshScript } from './zsh.ts';

/** What a shell has to read so that it completes a program's command lines. Ends with a line break. */
export function completionScript(program: Command, shell: Shell): string {
  const write = { bash: bashScript, zsh: zshScript, fish: fishScript }[shell];
  return write(program.name(), offersOf(program));
}
