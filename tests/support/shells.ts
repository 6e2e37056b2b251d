import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { completionScript } from '../../src/cli/completing/script.ts';
import type { Shell } from '../../src/cli/completing/shells.ts';
import { programWithOutput } from './commands.ts';

export const isInstalled = (shell: Shell): boolean =>
  spawnSync(shell, ['-c', 'exit 0'], { stdio: 'ignore' }).status === 0;

export const scriptFor = (shell: Shell): string => completionScript(programWithOutput().program, shell);

const ran = (program: string, args: readonly string[], folder: string): string => {
  const { stdout, stderr, error } = spawnSync(program, args, {
    cwd: folder,
    encoding: 'utf8',
    timeout: 30_000,
    env: { ...process.env, HOME: folder, LC_ALL: 'C.UTF-8', TERM: 'dumb' },
  });
  if (error) throw error;
  if (stderr !== '') throw new Error(stderr);
  return stdout;
};

/** What bash's own completion is handed: its words, which it also breaks at every `=`. */
const bashWords = (line: string): string[] => line.split(/ |(?<==)|(?==)/);

const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;

/** How each shell is asked what it offers behind a line, in a folder that holds the script. */
const asked: Readonly<Record<Shell, (script: string, line: string, folder: string) => string>> = {
  bash: (script, line, folder) => {
    const words = bashWords(line);
    const setting = `COMP_WORDS=(${words.map(quoted).join(' ')}) COMP_CWORD=${words.length - 1} COMP_LINE=${quoted(line)}`;
    const call = `source ${quoted(script)}; ${setting}; $(complete -p storystick | sed 's/.*-F \\([^ ]*\\).*/\\1/')`;
    return ran(
      'bash',
      ['--norc', '-c', `${call}; (( \${#COMPREPLY[@]} )) && printf '%s\\n' "\${COMPREPLY[@]}"; exit 0`],
      folder,
    );
  },
  zsh: (script, line, folder) => {
    const driver = fileURLToPath(new URL('zsh-completions.zsh', import.meta.url));
    return ran('zsh', ['-f', driver, script, folder, line], folder);
  },
  fish: (script, line, folder) =>
    ran('fish', ['--no-config', '-c', `source ${script}; complete -C ${quoted(line)}`], folder),
};

/** What a shell offers behind a line, without descriptions, backslashes and what is typed already of an option. */
export function offered(shell: Shell, line: string, folder: string): string[] {
  const script = join(folder, `.storystick.${shell}`);
  writeFileSync(script, scriptFor(shell));
  const lines = asked[shell](script, line, folder)
    .split('\n')
    .filter((each) => each !== '');
  return [
    ...new Set(
      lines.map((each) =>
        each
          .replace(/\t.*/, '')
          .replaceAll('\\', '')
          .replace(/\/$/, '')
          .replace(/^--[a-z]+=/, '')
          .replace(/^.*,/, ''),
      ),
    ),
  ].sort();
}
