import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Command, Option } from 'commander';
import { afterAll, describe, expect, test } from 'vitest';
import { offersOf } from '../../src/cli/completing/offers.ts';
import { completionScript } from '../../src/cli/completing/script.ts';
import { shells } from '../../src/cli/completing/shells.ts';
import { viewNames } from '../../src/cli/look.ts';
import { run } from '../../src/cli/program.ts';
import { topics } from '../../src/engine/finding.ts';
import { formats } from '../../src/report/format.ts';
import { commandNames, programWithOutput } from '../support/commands.ts';
import { isInstalled, offered, scriptFor } from '../support/shells.ts';

const folder = mkdtempSync(join(tmpdir(), 'storystick-completion-'));
afterAll(() => rmSync(folder, { recursive: true }));
for (const name of ['curlew.yaml', 'second van.yml', 'notes.txt']) writeFileSync(join(folder, name), '');
mkdirSync(join(folder, 'plans'));
writeFileSync(join(folder, 'plans', 'oak.yaml'), '');
// Commands stay commands where a folder is called like one.
mkdirSync(join(folder, 'check'));

const plans = ['check', 'curlew.yaml', 'plans', 'second van.yml'];
const sorted = (words: readonly string[]): string[] => [...words].sort();
const { program } = programWithOutput();
const { commands } = offersOf(program);
const longOptions = (name: string): string[] =>
  (commands.find((each) => each.name === name)?.options ?? [])
    .flatMap(({ names }) => names)
    .filter((each) => each.startsWith('--'))
    .sort();

describe.each(shells)('in %s', (shell) => {
  const lines: readonly (readonly [line: string, offers: readonly string[]])[] = [
    ['storystick ', sorted(commandNames)],
    ['storystick circ', ['circuits']],
    ['storystick --', ['--help', '--version']],
    ['storystick check --', longOptions('check')],
    ['storystick check curlew.yaml --', longOptions('check')],
    ['storystick check --form', ['--format']],
    ['storystick check --format ', sorted(formats)],
    ['storystick check --format s', ['sarif']],
    ['storystick check --format=s', ['sarif']],
    ['storystick check --format=', sorted(formats)],
    ['storystick check --only ', sorted(topics)],
    ['storystick check --only mass,b', ['balance']],
    ['storystick look --view ', sorted(viewNames)],
    ['storystick look --at ', []],
    ['storystick check ', plans],
    ['storystick check c', ['check', 'curlew.yaml']],
    ['storystick check plans/', ['plans/oak.yaml']],
    ['storystick check --strict ', plans],
    ['storystick check --format json ', plans],
    ['storystick check --format=json c', ['check', 'curlew.yaml']],
    ['storystick check curlew.yaml ', []],
    ['storystick look --at 1.2m ', plans],
    ['storystick explain mass.tot', ['mass.total']],
    ['storystick explain mass.total c', ['check', 'curlew.yaml']],
    ['storystick completion ', sorted(shells)],
    ['storystick completion bash ', []],
    ['storystick unheard-of ', []],
  ];

  // Each shell reads its own script, for real, where it is installed.
  test.skipIf(!isInstalled(shell)).each(lines)('`%s`', (line, offers) => {
    const found = offered(shell, line, folder)
      // Where nothing else is left to say, zsh offers the options by itself.
      .filter((each) => offers.length > 0 || shell !== 'zsh' || !each.startsWith('-'))
      // It names a file by what its folder calls it.
      .map((each) => (shell === 'zsh' && line.endsWith('/') ? `plans/${each}` : each));
    expect(found).toEqual(offers);
  });

  test.skipIf(!isInstalled(shell))(
    'every command offers its options, and every option its values',
    () => {
      for (const { name, options } of commands) {
        expect(offered(shell, `storystick ${name} --`, folder)).toEqual(longOptions(name));
        for (const { names, value } of options) {
          if (value?.kind !== 'words' && value?.kind !== 'list') continue;
          expect(offered(shell, `storystick ${name} ${names[0]} `, folder)).toEqual(sorted(value.words));
        }
      }
    },
    240_000,
  );

  test('names every command, option and value', () => {
    const script = scriptFor(shell);
    for (const { name, options } of commands) {
      expect(script).toContain(name);
      for (const { names, value } of options) {
        for (const option of names) expect(script).toContain(option.replace(/^--?/, ''));
        if (value && 'words' in value) expect(script).toContain(value.words.join(' '));
      }
    }
  });

  test('is derived from the program: what is new there is offered', () => {
    const changed = new Command('storystick');
    changed
      .command('weigh')
      .description("the trailer's own [scale]: 'net' or gross")
      .argument('<plan>', 'the plan')
      .addOption(new Option('--scale <scale>', 'which').choices(['front', 'rear']));
    expect(completionScript(changed, shell)).toMatch(/weigh[\s\S]*front rear/);
    expect(completionScript(changed, shell)).not.toContain('circuits');
  });

  test('is printed by `storystick completion`', async () => {
    let out = '';
    const code = await run(['completion', shell], {
      version: '1.2.3',
      width: 100,
      colour: false,
      print: (text) => {
        out += text;
      },
      complain: () => {},
      loadCalculator: () => import('../../src/plan/calculator.ts'),
    });
    expect(code).toBe(0);
    expect(out).toBe(scriptFor(shell));
    expect(out).toMatch(/[^\n]\n$/);
  });
});

/** What only the user knows: nothing can be offered for it. */
const freeText = ['set path', 'set value', 'move fixture'];

test('every argument of every command is completed, or is known to be free text', () => {
  const unknown = commands.flatMap(({ name, arguments: positional }) =>
    positional.filter(({ offer }) => offer.kind === 'anything').map((each) => `${name} ${each.name}`),
  );
  expect(unknown.filter((each) => !freeText.includes(each))).toEqual([]);
});

test('a shell that is none', async () => {
  let err = '';
  const code = await run(['completion', 'fishy'], {
    version: '1.2.3',
    width: 100,
    colour: false,
    print: () => {},
    complain: (text) => {
      err += text;
    },
    loadCalculator: () => import('../../src/plan/calculator.ts'),
  });
  expect(code).toBe(2);
  expect(err).toBe(
    '`fishy` is not a shell that storystick knows\n  did you mean: fish\n  expected: one of bash, zsh, fish\n',
  );
});
