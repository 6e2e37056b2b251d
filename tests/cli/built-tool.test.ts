import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import packageFile from '../../package.json' with { type: 'json' };
import { run } from '../../src/cli/program.ts';

// The build changes the packages that it bundles: it makes yaml's generators plain methods and takes out what the
// tool does not use (see esbuild.config.mjs). Here the built tool has to say, to the letter, what the sources say
// with the packages as they are.
const root = fileURLToPath(new URL('../../', import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), 'storystick-built-'));
afterAll(() => rmSync(scratch, { recursive: true }));

function built(args: readonly string[]) {
  const env = { ...process.env, NO_COLOR: '1', COLUMNS: '100', NODE_OPTIONS: '' };
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(root, 'bin/storystick.cjs'), ...args],
    {
      encoding: 'utf8',
      env,
    },
  );
  return { status, stdout, stderr };
}

async function fromSources(args: readonly string[]) {
  let [stdout, stderr] = ['', ''];
  const status = await run(args, {
    version: packageFile.version,
    width: 100,
    colour: false,
    print: (text) => {
      stdout += text;
    },
    complain: (text) => {
      stderr += text;
    },
    loadCalculator: () => import('../../src/plan/calculator.ts'),
  });
  return { status, stdout, stderr };
}

const curlew = join(root, 'examples/curlew/curlew.yaml');

test.each([
  [[]],
  [['--help']],
  [['--version']],
  [['check', '--help']],
  [['check']],
  [['chekc', curlew]],
  [['check', curlew, '--detial']],
  [['check', curlew, '--only', 'mas']],
  [['check', curlew]],
  [['check', curlew, '--detail']],
  [['check', curlew, '--quiet']],
  [['check', curlew, '--json']],
  [['check', curlew, '--format', 'sarif']],
  [['check', curlew, '--format', 'junit']],
  [['check', curlew, '--markdown']],
  [['completion', 'bash']],
  [['completion', 'zsh']],
  [['completion', 'fish']],
  [['check', curlew, '--assumptions']],
  [['check', curlew, '--only', 'mass', '--strict']],
  [['check', join(root, 'examples/first-lines.yaml'), '--detail']],
  [['check', join(root, 'package.json')]],
  [['check', root]],
])('storystick %j', async (args) => {
  expect(built(args)).toEqual(await fromSources(args));
});

const van = 'van: {max_mass: 3500 kg, unladen: {front: 1200 kg, rear: 900 kg}}';
const loadBay = 'load_bay: {behind_front_axle: 1 m, length: 3 m, width: 1.7 m, height: 1.8 m}';

/** Plans in every manner of YAML, well formed and not. */
const plans: Readonly<Record<string, string>> = {
  'block style': `storystick: 1\nvan:\n  max_mass: 3500 kg\n  unladen:\n    front: 1200 kg\n    rear: 900 kg\n`,
  'flow style over lines': `storystick: 1\nvan: {\n  max_mass: 3500 kg, # plate\n  unladen: { front: 1200 kg,\n    rear: 900 kg }\n}\n`,
  'names in quotes and wide characters': `storystick: 1\n${van}\nfixtures:\n  "bed, \\"rear\\"": {mass: 24 kg}\n  'cook''s shelf': {mass: 2 kg}\n  寝台 🛏️ café: {mass: 24 kg}\n`,
  'text over lines': `storystick: 1\nname: >-\n  one\n  two\n\n  three\n${van}\n`,
  'text with line breaks': `storystick: 1\nname: |+\n  one\n   two\n\n${van}\n`,
  'indented block scalar': `storystick: 1\nname: |2-\n    one\n   two\n${van}\n`,
  anchors: `storystick: 1\n${van}\nfixtures:\n  a: &shelf {mass: 2 kg}\n  b: *shelf\n  c: *shlf\n`,
  'anchor within itself': `storystick: 1\nvan: &van {max_mass: *van}\n`,
  tags: `storystick: !!int 1\nname: !!str 12\n${van}\nfixtures: !!map {a: {mass: !kg 2 kg}}\n`,
  directive: `%YAML 1.2\n---\nstorystick: 1\n${van}\n...\n`,
  'two documents': `storystick: 1\n${van}\n---\nstorystick: 1\n`,
  'lists in lists': `storystick: 1\npeople:\n  sleepers:\n  - stature: 1.7 m\n  - {stature: 1.8 m}\n  -\n    - 1\n    - [2, [3, {a: b}]]\n${van}\n`,
  'explicit keys': `? storystick\n: 1\n? van\n: max_mass: 3500 kg\n`,
  'comments everywhere': `# a\nstorystick: 1 # b\n# c\n\nvan: # d\n  # e\n  max_mass: 3500 kg # f\n# g\n`,
  'line breaks of another system': `storystick: 1\r\nvan:\r\n  max_mass: 3500 kg\r\n  unladen: {front: 1200 kg,\r\n  rear: 900 kg}\r\n`,
  'no line break at the end': `storystick: 1\n${van}`,
  'byte order mark': `\uFEFFstorystick: 1\n${van}\n`,
  'only a comment': '# nothing\n',
  'nothing but blanks': ' \n\n',
  'a single word': 'plan',
  'tab as indentation': 'storystick: 1\nvan:\n\tmax_mass: 3500 kg\n',
  'indentation that does not line up': 'storystick: 1\nvan:\n   max_mass: 3500 kg\n  wheelbase: 3 m\n',
  'quote never closed': `storystick: 1\nname: "Curlew\n${van}\n`,
  'brace never closed': 'storystick: 1\nvan: {max_mass: 3500 kg\nfixtures: {a: {mass: 2 kg}}\n',
  'brace too many': 'storystick: 1\nvan: {max_mass: 3500 kg}}\n',
  'comma missing': 'storystick: 1\nvan: {max_mass: 3500 kg wheelbase: 3 m}\n',
  'colon without a space': 'storystick: 1\nvan:\n  max_mass:3500 kg\n  wheelbase:3 m\n',
  'key written twice': `storystick: 1\n${van}\n${van}\n`,
  'key over lines': 'storystick: 1\nvan\n  of mine: 2\n',
  'key that is a list': 'storystick: 1\n[a, b]: 2\n{a: b}: 3\n',
  'block within flow': 'storystick: 1\nvan: [\n- a: b\n]\n',
  'merge key': `storystick: 1\n${van}\nfixtures:\n  a: {<<: {mass: 2 kg}}\n`,
  'reserved characters': 'storystick: 1\nname: @home\nunits: `metric`\n',
  'percent and question marks': `storystick: 1\nname: ?why\n${van}\nrules: {mass.total: {limit: 5 %, reason: "%"}}\n`,
  'plain text with colons and hashes': `storystick: 1\nname: a:b c#d - e ? f\n${van}\n`,
  'plain text over lines': `storystick: 1\nname: a\n  b\n\n  c # d\n${van}\n`,
  'text in double quotes over lines': `storystick: 1\nname: "a\\\n  b\n\n  c\\u00e9 \\x41"\n${van}\n`,
  'values left out': 'storystick: 1\nvan: {max_mass: , unladen: {front, rear: }}\nfixtures:\n  a:\n  b: {}\n',
  'expressions and misspelt names': `storystick: 1\nparams: {shelf: 2 kg ± 5 %}\nvan: {max_mass: 7 * 500 kg, unladn: {}, ${loadBay}}\nfixtures: {a: {mass: 2 * shelf}, b: {mass: 3 * shefl}, c: {mass: 1,5 kg}}\n`,
  'a control character': 'storystick: 1\nname: a\u0007b\n',
};

test.each(Object.entries(plans))('a plan: %s', async (name, text) => {
  const file = join(scratch, `${name}.yaml`);
  writeFileSync(file, text);
  const args = ['check', file, '--detail'];
  const output = built(args);
  expect(output).toEqual(await fromSources(args));
  expect([0, 1, 2]).toContain(output.status);
});

test('a long plan', async () => {
  const file = join(scratch, 'long.yaml');
  const example = readFileSync(curlew, 'utf8');
  const parts = Array.from(
    { length: 300 },
    (_, at) => `  part ${at}: {mass: ${at % 7} kg ± 5 %, in: wardrobe}\n`,
  );
  writeFileSync(
    file,
    example.replace(/^fixtures:\n/m, (heading) => heading + parts.join('')),
  );
  const args = ['check', file, '--json'];
  expect(built(args)).toEqual(await fromSources(args));
});
