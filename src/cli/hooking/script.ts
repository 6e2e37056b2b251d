/** What the hook is told when it is installed. */
export interface HookSettings {
  /** Warnings stop a commit too. */
  readonly strict: boolean;
  /**
   * Folders of the repository in which storystick is installed, such as `van`, or '' for its top, where it is looked
   * for in any case.
   */
  readonly folders: readonly string[];
  /** Where this storystick and this Node are, for when no other is found; left out of a hook that others get too. */
  readonly fallback?: { readonly launcher: string; readonly node: string };
}

// By its first and its last line a hook is known for ours: whatever stands outside them was written by someone else.
const firstLine = '# storystick hook, begin';
const lastLine = '# storystick hook, end';
const shell = '#!/bin/sh';

/** The hook, for the plain shell that git has on every system. */
export function hookScript({ strict, folders, fallback }: HookSettings): string {
  const options = strict ? ' --strict' : '';
  const tools = [...new Set(['', ...folders])].map((folder) => quoted(toolIn(folder)));
  return [
    shell,
    firstLine,
    '# Checks the plans of a commit as they are staged. `storystick hook remove` takes this file away;',
    '# `storystick hook` writes it anew. To commit without the check: git commit --no-verify',
    '',
    '# A commit without a YAML file has no plan.',
    "if git diff --cached --quiet --no-ext-diff --diff-filter=d -- ':(icase)*.yaml' ':(icase)*.yml'; then exit 0; fi",
    ...(fallback
      ? [
          '',
          '# Programs with a window often start git without the way to Node.',
          `if ! command -v node >/dev/null 2>&1; then PATH="$PATH":${quoted(folderForShell(fallback.node))}; export PATH; fi`,
        ]
      : []),
    '',
    `for tool in ${tools.join(' ')}; do`,
    `  if [ -x "$tool" ]; then exec "$tool" hook run${options}; fi`,
    'done',
    ...(fallback
      ? [
          `tool=${quoted(forwardSlashes(fallback.launcher))}`,
          `if [ -f "$tool" ]; then exec node "$tool" hook run${options}; fi`,
        ]
      : []),
    `if command -v storystick >/dev/null 2>&1; then exec storystick hook run${options}; fi`,
    'echo "storystick was not found, so the staged plans could not be checked, and the commit is stopped." >&2',
    'echo "Install it (npm install), or commit without the check: git commit --no-verify" >&2',
    'exit 2',
    lastLine,
    '',
  ].join('\n');
}

/** Whose a hook is: ours as it was written, ours with lines that someone added, or somebody else's. */
export function ownerOf(script: string): 'ours' | 'ours, and more' | 'foreign' {
  const lines = script.split(/\r?\n/);
  const [begin, end] = [lines.indexOf(firstLine), lines.indexOf(lastLine)];
  if (begin === -1) return 'foreign';
  const around = [...lines.slice(0, begin), ...(end === -1 ? [] : lines.slice(end + 1))];
  return end > begin && around.every((line) => line === shell || line.trim() === '')
    ? 'ours'
    : 'ours, and more';
}

/** Whether somebody else's hook runs ours already. */
export const isChained = (script: string): boolean =>
  /^[^#\n]*\bstorystick\b[^#\n]*\bhook run\b/m.test(script);

/** Where npm puts storystick when it is installed in a folder, seen from the top of the repository. */
export const toolIn = (folder: string): string =>
  `./${folder === '' ? '' : `${folder}/`}node_modules/.bin/storystick`;

/** In single quotes nothing has a meaning to the shell but the quote itself. */
export const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;

/** As every shell and Node read them. */
export const forwardSlashes = (path: string): string => path.replaceAll('\\', '/');

/** The folder of a program, as the shell writes it in PATH: there `C:\Tools\node.exe` is in `/C/Tools`. */
const folderForShell = (program: string): string =>
  forwardSlashes(program)
    .replace(/\/[^/]*$/, '')
    .replace(/^([A-Za-z]):/, '/$1');
