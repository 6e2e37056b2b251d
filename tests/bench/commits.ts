import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

export interface Commits {
  /** Commits a new revision of the plan, with the hook or without it, and gives the time that git took. */
  readonly timedMs: (hook: 'with' | 'without') => number;
}

/** A repository in which storystick's hook is installed, and a plan that passes: every commit changes it a little. */
export function commitsOf(folder: string, launcher: string, plan: string): Commits {
  const top = join(folder, 'repository');
  mkdirSync(top);
  const inherited = Object.entries(process.env).filter(([name]) => !name.startsWith('GIT_'));
  const env = {
    ...Object.fromEntries(inherited),
    HOME: folder,
    GIT_CONFIG_NOSYSTEM: '1',
    ...Object.fromEntries(
      ['AUTHOR', 'COMMITTER'].flatMap((who) => [
        [`GIT_${who}_NAME`, 'bench'],
        [`GIT_${who}_EMAIL`, 'bench@example.org'],
      ]),
    ),
    NODE_OPTIONS: '',
  };
  const run = (program: string, ...args: readonly string[]): void => {
    const { status, stderr } = spawnSync(program, args, { cwd: top, env, encoding: 'utf8' });
    if (status !== 0) throw new Error(`${program} ${args.join(' ')} ended with ${status}\n${stderr}`);
  };
  run('git', 'init', '--quiet');
  run(process.execPath, launcher, 'hook');
  let revision = 0;
  return {
    timedMs: (hook) => {
      revision += 1;
      writeFileSync(join(top, 'plan.yaml'), `${plan}# revision ${revision}\n`);
      run('git', 'add', 'plan.yaml');
      const begin = performance.now();
      run('git', 'commit', '--quiet', '-m', 'revision', ...(hook === 'with' ? [] : ['--no-verify']));
      return performance.now() - begin;
    },
  };
}
