import { existsSync } from 'node:fs';
import { delimiter, join, relative } from 'node:path';
import { visible } from '../../report/visible.ts';
import { wrapped } from '../../report/wrap.ts';
import { hooksFolderOf, repositoryOf } from '../git.ts';
import type { Surroundings } from '../surroundings.ts';
import { foldersWithTool, isBelow, runningLauncher } from './found-tool.ts';
import { hookIn, removeHook, type Standing, standingAt, writeHook } from './hook-file.ts';
import { forwardSlashes, hookScript, quoted, toolIn } from './script.ts';

export interface Installation {
  /** Where the user stands: somewhere in the repository. */
  readonly folder: string;
  readonly strict: boolean;
  /** The script that Node was started with. */
  readonly script: string | undefined;
  readonly node: string;
  /** Where the shell looks for programs. */
  readonly path: string;
}

/** Runs `storystick hook` and returns its exit code. */
export function installHook(installation: Installation, around: Surroundings): number {
  const place = placeOf(installation.folder, around);
  if (!place) return 2;
  const { folder, strict, script, node, path } = installation;
  const launcher = runningLauncher(script);
  const folders = foldersWithTool(place.top, folder);
  if (place.standing.kind !== 'nothing' && place.standing.kind !== 'ours') {
    const tool = toolInWords({ folders, launcher, path });
    return leaveAlone(
      place,
      place.standing,
      `${tool} hook run${strict ? ' --strict' : ''} || exit $?`,
      around,
    );
  }
  const text = hookScript({
    strict,
    folders,
    // What others get too must not lead to places on this machine.
    ...(launcher !== undefined && place.reach !== 'shared' && { fallback: { launcher, node } }),
  });
  const isSame = place.standing.kind === 'ours' && place.standing.script === text;
  try {
    if (!isSame) writeHook(place.hook, text);
  } catch (error) {
    return complainOf(`${place.name} cannot be written`, error, around);
  }
  const done = place.standing.kind === 'nothing' ? 'installed' : isSame ? 'up to date' : 'brought up to date';
  say(around, [
    `${done}: ${place.name}`,
    ...reachInWords(place),
    strict
      ? 'A commit is stopped when a check of a plan in it fails or warns.'
      : 'A commit is stopped when a check of a plan in it fails; `storystick hook --strict` lets warnings stop it too.',
    'To commit without the check: `git commit --no-verify`. To take the hook away: `storystick hook remove`.',
  ]);
  return 0;
}

/** Runs `storystick hook remove` and returns its exit code. */
export function uninstallHook(folder: string, around: Surroundings): number {
  const place = placeOf(folder, around);
  if (!place) return 2;
  const { standing, name, hook } = place;
  if (standing.kind === 'nothing') {
    say(around, [`There is no hook to remove: ${name} does not exist.`]);
    return 0;
  }
  if (standing.kind !== 'ours') {
    around.complain(
      standing.kind === 'foreign'
        ? `${name} is not from storystick: nothing was changed.\n`
        : `${name} holds lines that storystick did not write: nothing was changed.\n  expected: only the lines from \`# storystick hook, begin\` to \`# storystick hook, end\`; take those out by hand\n`,
    );
    return 2;
  }
  try {
    removeHook(hook);
  } catch (error) {
    return complainOf(`${name} cannot be removed`, error, around);
  }
  say(around, [`removed: ${name}`]);
  return 0;
}

interface Place {
  readonly top: string;
  readonly hook: string;
  /** The hook's path, as the user would write it. */
  readonly name: string;
  /** Whom the hook is for: this repository, others who get the folder with it, or all that use one folder. */
  readonly reach: 'own' | 'shared' | 'many';
  readonly standing: Standing;
}

function placeOf(folder: string, around: Surroundings): Place | undefined {
  const found = repositoryOf(folder);
  if ('problem' in found) {
    around.complain(`${visible(found.problem)}\n`);
    return undefined;
  }
  const { top, gitFolder } = found.repository;
  const hooks = hooksFolderOf(found.repository);
  const hook = hookIn(hooks);
  const reach = isBelow(hooks, gitFolder) ? 'own' : isBelow(hooks, top) ? 'shared' : 'many';
  const name = visible(reach === 'many' || !isBelow(hook, top) ? hook : relative(folder, hook));
  try {
    return { top, hook, name, reach, standing: standingAt(hook) };
  } catch (error) {
    complainOf(`${name} cannot be read`, error, around);
    return undefined;
  }
}

const reachInWords = ({ reach }: Place): readonly string[] =>
  ({
    own: [],
    shared: ['The folder is part of the repository (core.hooksPath): everyone who uses it gets the hook.'],
    many: [
      'The folder lies outside the repository (core.hooksPath): every repository that uses it gets the hook.',
    ],
  })[reach];

function leaveAlone(
  { name }: Place,
  standing: Extract<Standing, { chained: boolean }>,
  line: string,
  around: Surroundings,
): number {
  if (standing.chained && standing.kind === 'foreign') {
    say(around, [`${name} is not from storystick, but runs it already: nothing was changed.`]);
    return 0;
  }
  around.complain(
    standing.kind === 'foreign'
      ? `${name} is somebody else's hook: nothing was changed.\n  to call storystick from it, put this line in front of any \`exit\` or \`exec\` of a shell script:\n    ${line}\n`
      : `${name} holds lines that storystick did not write: nothing was changed.\n  to bring it up to date: move those lines elsewhere, or change \`hook run\` in it by hand\n`,
  );
  return 2;
}

/** How a script calls this storystick from the top of the repository. */
function toolInWords(found: {
  readonly folders: readonly string[];
  readonly launcher: string | undefined;
  readonly path: string;
}): string {
  const [folder] = found.folders;
  if (folder !== undefined) return shellWord(toolIn(folder));
  if (isOnPath('storystick', found.path)) return 'storystick';
  return found.launcher === undefined
    ? 'npx storystick'
    : `node ${shellWord(forwardSlashes(found.launcher))}`;
}

const isOnPath = (program: string, path: string): boolean =>
  path.split(delimiter).some((folder) => folder !== '' && existsSync(join(folder, program)));

const shellWord = (text: string): string => (/^[\w./:-]+$/.test(text) ? text : quoted(text));

const say = (around: Surroundings, lines: readonly string[]): void =>
  around.print(`${lines.flatMap((line) => wrapped(line, around.width)).join('\n')}\n`);

function complainOf(what: string, error: unknown, around: Surroundings): 2 {
  const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown reason';
  around.complain(`${what} (${code}): nothing was changed\n`);
  return 2;
}
