import {
  chmodSync,
  lstatSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/program.ts';
import { replaceFile } from '../../src/cli/replace-file.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'storystick-edits-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const plan = `# a small plan
storystick: 1
van:
  max_mass: 3500 kg    # plate
  load_bay: {behind_front_axle: 1 m, length: 3 m, width: 1700 mm, height: 1.8 m}
  unladen: {front: 1200 kg, rear: 900 kg}
params: {gap: 20 mm}
fixtures:
  bed: {mass: 24 kg, size: {length: 1900 mm, width: 700 mm, height: 400 mm}, at: {from_rear: 0 mm, from_left: gap}}
  table: {mass: 5 kg, size: {width: 400 mm}, at: {centred: true}}
  box: {mass: 5 kg, on: bed}
`;

function write(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}
const read = (name: string) => readFileSync(join(folder, name), 'utf8');

// The path of the folder is in what is printed, and taken out afterwards.
const columns = 160;

async function storystick(...args: string[]) {
  let [out, err] = ['', ''];
  const code = await run(args, {
    version: '1.2.3',
    width: columns,
    colour: false,
    print: (text) => {
      out += text;
    },
    complain: (text) => {
      err += text;
    },
    loadCalculator: () => import('../../src/plan/calculator.ts'),
  });
  return { code, out: out.replaceAll(`${folder}/`, ''), err: err.replaceAll(`${folder}/`, '') };
}

describe('set', () => {
  test('changes the value, shows the line, and says how the verdicts changed', async () => {
    const file = write('plan.yaml', plan);
    const { code, out, err } = await storystick('set', file, 'van.max_mass', '2000 kg');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(
      /^plan\.yaml: van\.max_mass: 3500 kg → 2000 kg\n {4}4 - {3}max_mass: 3500 kg {4}# plate\n {4}4 \+ {3}max_mass: 2000 kg {4}# plate\nbefore: 0 fail, .*\nnow: {4}[1-9]\d* fail, .*\n$/,
    );
    expect(read('plan.yaml')).toBe(plan.replace('3500 kg', '2000 kg'));
    expect(readdirSync(folder)).toEqual(['plan.yaml']);
  });

  test('a dry run writes nothing', async () => {
    const file = write('plan.yaml', plan);
    const { code, out } = await storystick('set', file, 'van.wheelbase', '3 m', '--dry-run');
    expect(code).toBe(0);
    expect(out).toContain('van.wheelbase: added, 3 m (not written: --dry-run)\n    7 +   wheelbase: 3 m\n');
    expect(read('plan.yaml')).toBe(plan);
  });

  test('a value that is there already changes nothing', async () => {
    const file = write('plan.yaml', plan);
    const { mtimeMs } = statSync(file);
    const { code, out } = await storystick('set', file, 'fixtures.bed.mass', '24 kg');
    expect({ code, out }).toEqual({
      code: 0,
      out: 'plan.yaml: fixtures.bed.mass: 24 kg → 24 kg: it is so already, nothing was changed.\n',
    });
    expect(statSync(file).mtimeMs).toBe(mtimeMs);
  });

  test.each([
    ['fixtures.bed.mass', '24 mm', 'plan.yaml:9:15: fixtures.bed.mass: `24 mm` is a length\n'],
    ['fixtures.bed.mas', '24 kg', '  did you mean: mass\n'],
    ['fixtures.bde.mass', '24 kg', '  did you mean: fixtures.bed\n'],
    ['fixtures.box.on', 'bedd', '`box` is on `bedd`, which is not in the plan'],
    ['fixtures.box', '24 kg', '`fixtures.box` is a section, not one value'],
    ['fixtures..bed', '24 kg', '`fixtures..bed` is no path of a plan'],
  ])('what cannot be understood is shown in its place and not written: %s %s', async (path, value, said) => {
    const file = write('plan.yaml', plan);
    const { code, out, err } = await storystick('set', file, path, value);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(said);
    expect(err).toMatch(/\n\nnothing was changed/);
    expect(read('plan.yaml')).toBe(plan);
    expect(readdirSync(folder)).toEqual(['plan.yaml']);
  });

  test('mends a plan that could not be understood', async () => {
    const file = write('plan.yaml', plan.replace('24 kg', '24'));
    const { code, out } = await storystick('set', file, 'fixtures.bed.mass', '24 kg');
    expect(code).toBe(0);
    expect(out).toContain('before: could not be understood\nnow:    0 fail');
    expect(read('plan.yaml')).toBe(plan);
  });

  test('a file whose YAML is broken is left alone', async () => {
    const file = write('plan.yaml', `${plan}bed: {`);
    const { code, err } = await storystick('set', file, 'fixtures.bed.mass', '24 kg');
    expect(code).toBe(2);
    expect(err).toMatch(/nothing was changed, because the plan could not be understood\.\n$/);
    expect((await storystick('set', join(folder, 'none.yaml'), 'a', 'b')).err).toContain(
      'there is no such file',
    );
  });

  test('a value may begin with a minus sign; an option that is none is refused', async () => {
    const file = write('plan.yaml', plan);
    const { code } = await storystick('set', file, 'fixtures.bed.at.from_rear', '-5 mm', '--dry-run');
    expect(code).toBe(0);
    expect((await storystick('set', file, 'fixtures.bed.mass', '--dryrun')).err).toMatch(
      /^unknown option `--dryrun`\n/,
    );
    expect((await storystick('set', file)).err).toMatch(
      /^no path is given\n {2}expected: `storystick set plan\.yaml /,
    );
    expect((await storystick('set', file, 'name')).err).toMatch(/^no value is given\n/);
  });

  test('keeps a byte order mark, line breaks of another system, permissions and a link', async () => {
    const file = write('real.yaml', `\uFEFF${plan.replaceAll('\n', '\r\n')}`);
    chmodSync(file, 0o640);
    const link = join(folder, 'link.yaml');
    symlinkSync('real.yaml', link);
    expect((await storystick('set', link, 'fixtures.bed.mass', '26 kg')).code).toBe(0);
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(read('real.yaml')).toBe(`\uFEFF${plan.replaceAll('\n', '\r\n').replace('24 kg', '26 kg')}`);
    expect(statSync(file).mode & 0o777).toBe(0o640);
    expect(readdirSync(folder).sort()).toEqual(['link.yaml', 'real.yaml']);
  });

  test('a value that stood over several lines is told in one', async () => {
    const file = write(
      'plan.yaml',
      plan.replace('max_mass: 3500 kg    # plate', 'max_mass: >-\n    3500 kg\n    ± 5 kg'),
    );
    const { code, out } = await storystick('set', file, 'van.max_mass', '3400 kg');
    expect(code).toBe(0);
    expect(out).toContain('plan.yaml: van.max_mass: >- 3500 kg ± 5 kg → 3400 kg\n');
  });

  test('says so where one check got better and another one worse', async () => {
    const box = (fromFront: string) =>
      `{mass: 5 kg, size: {length: 500 mm, width: 500 mm, height: 500 mm}, at: {from_front: ${fromFront}, from_left: 0 mm, above_floor: 0 mm}}`;
    const boxes = `fixtures:\n  one: ${box('0 mm')}\n  two: ${box('0 mm')}\n  three: ${box('1500 mm')}\n`;
    const file = write('plan.yaml', plan.replace(/fixtures:[\s\S]*$/, boxes));
    const { out } = await storystick('set', file, 'fixtures.one.at.from_front', '1500 mm');
    expect(out).toMatch(/\nas many of each as before, but not of the same checks: [1-9] fail, .*\n$/);
    expect((await storystick('set', file, 'name', 'Curlew')).out).toMatch(
      /\nverdicts as before: [1-9] fail, .*\n$/,
    );
  });

  test('of the entries of a list names those that there are', async () => {
    const ribs = 'ribs: [{in: left wall, from_front: 1 m, width: 50 mm}]';
    const file = write('plan.yaml', plan.replace('height: 1.8 m}', `height: 1.8 m, ${ribs}}`));
    const width = (entry: number) => storystick('set', file, `van.load_bay.ribs[${entry}].width`, '60 mm');
    expect((await width(2)).err).toContain('expected: `[1]`, the only one\n');
    expect((await width(1)).code).toBe(0);
    const none = await storystick('set', write('none.yaml', plan), 'van.load_bay.ribs[1].width', '60 mm');
    expect(none.err).toContain('all of a new one at once, `van.load_bay.ribs` set to `[…]`');
  });

  test('a long line is shown around what changed, within the width', async () => {
    const file = write('plan.yaml', plan.replace('from_rear: 0 mm', `${' '.repeat(80)}from_rear: 0 mm`));
    const { out } = await storystick('set', file, 'fixtures.bed.at.from_rear', '5 mm');
    const lines = out.split('\n').filter((line) => /^ +9 [-+]/.test(line));
    expect(lines).toHaveLength(2);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(columns);
    expect(lines.map((line) => /from_rear: \d mm/.exec(line)?.[0])).toEqual([
      'from_rear: 0 mm',
      'from_rear: 5 mm',
    ]);
  });
});

describe('move', () => {
  test.each([
    [['bed', '--forwards', '40cm'], 'from_rear: 0 mm', 'from_rear: 400 mm'],
    [['bed', '--rearwards', '1 in'], 'from_rear: 0 mm', 'from_rear: -25.4 mm'],
    [['bed', '--right', '2 cm'], 'from_left: gap', 'from_left: gap + 2 cm'],
    [['bed', '--left', '5mm'], 'from_left: gap', 'from_left: gap - 5 mm'],
    [['fixtures.bed', '--up', '5mm'], 'from_left: gap}', 'from_left: gap, above_floor: 5 mm}'],
    [['table', '--left', '10 cm'], '{centred: true}', '{from_left: 550 mm}'],
    [['table', '--right', '1 mm'], '{centred: true}', '{from_left: 651 mm}'],
  ])('%j', async (args, before, after) => {
    const file = write('plan.yaml', plan);
    const { code, err } = await storystick('move', file, ...args);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(read('plan.yaml')).toBe(plan.replace(before, after));
  });

  test('both ways at once, with what goes along', async () => {
    const file = write('plan.yaml', plan);
    const { out } = await storystick('move', file, 'bed', '--forwards', '10 cm', '--right', '1 cm');
    expect(out).toMatch(/^plan\.yaml: fixtures\.bed moved 10 cm forwards and 1 cm to the right\n/);
    expect(out).toContain('\nwith it: box\n');
    expect(read('plan.yaml')).toBe(plan.replace('0 mm, from_left: gap', '100 mm, from_left: gap + 1 cm'));
  });

  test.each([
    [['bde', '--left', '1 cm'], '  did you mean: bed\n'],
    [
      ['table', '--rearwards', '1 cm'],
      '`fixtures.table` has no `from_front` or `from_rear`: its place is still open',
    ],
    [['table', '--up', '1 cm'], '`fixtures.table` has no `above_floor`'],
    [['box', '--left', '1 cm'], '`fixtures.box` has no `from_left` or `from_right`'],
    [['bed', '--left', '10'], '--left: `10` has no unit\n'],
    [['bed', '--left', '1 kg'], '--left: `1 kg` is a mass\n'],
    [['bed', '--left=-1 cm'], '--left: `-1 cm` is not more than zero\n'],
    [['bed', '--left', '1 cm ± 1 mm'], '--left: `1 cm ± 1 mm` has a tolerance\n'],
    [['bed', '--left', '1 cm', '--right', '1 cm'], '--left and --right are both given\n'],
    [['bed'], 'no direction is given\n'],
    [[], 'no fixture is given\n'],
  ])('%j is refused, and nothing is written', async (args, said) => {
    const file = write('plan.yaml', plan);
    const { code, out, err } = await storystick('move', file, ...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(said);
    expect(read('plan.yaml')).toBe(plan);
  });

  test('a centred thing of unknown width is refused', async () => {
    const file = write('plan.yaml', plan.replace('size: {width: 400 mm}, ', ''));
    const { err } = await storystick('move', file, 'table', '--left', '1 cm');
    expect(err).toContain(
      '`fixtures.table` is centred, and how far that is from the left cannot be worked out',
    );
  });

  test('a place that is repeated is refused, and one of the same name stays', async () => {
    const text = plan
      .replace('{from_rear: 0 mm, from_left: gap}', '&place {from_rear: 0 mm, from_left: gap}')
      .replace('{centred: true}', '*place')
      .replace(
        'params:',
        '  openings: {bed: {in: floor, length: 1 m, width: 1 m, at: {from_front: 0 m}}}\nparams:',
      );
    const file = write('plan.yaml', text);
    expect((await storystick('move', file, 'table', '--right', '1 cm')).err).toContain(
      'is `*place`: it repeats',
    );
    expect((await storystick('move', file, 'bed', '--right', '1 cm')).err).toContain(
      'is repeated by `*place` in line 11, and would change there too',
    );
    const { out } = await storystick('move', file, 'van.openings.bed', '--rearwards', '1 m');
    expect(out).toContain('van.openings.bed moved 1 m rearwards\n');
  });
});

describe('writing a file', () => {
  test('is left alone if it was saved by somebody else meanwhile', () => {
    const file = write('plan.yaml', 'a: 2\n');
    expect(replaceFile(file, 'a: 1\n', 'a: 3\n')?.message).toBe(
      'the file was saved by somebody else meanwhile',
    );
    expect(read('plan.yaml')).toBe('a: 2\n');
  });

  test('whatever stands in the way, the old file stays and nothing else is left', () => {
    const file = write('plan.yaml', 'a: 1\n');
    const draft = join(folder, `.plan.yaml.${process.pid}.new`);
    writeFileSync(draft, 'of another');
    expect(replaceFile(file, 'a: 1\n', 'a: 3\n')?.message).toBe('the file cannot be written (EEXIST)');
    expect(read('plan.yaml')).toBe('a: 1\n');
    expect(readFileSync(draft, 'utf8')).toBe('of another');
    expect(replaceFile(join(folder, 'none.yaml'), '', '')?.message).toBe('there is no such file or folder');
  });
});

test.each(['set', 'move', 'schema', 'new'])(
  'help of %s ends with 0, says the exit codes and shows two examples',
  async (command) => {
    const { code, out } = await storystick(command, '--help');
    expect(code).toBe(0);
    expect(out).toMatch(/Exit codes: 0 /);
    expect(
      out.slice(out.indexOf('Examples:')).match(new RegExp(`^ {2}storystick ${command}.*$`, 'gm')),
    ).toHaveLength(2);
  },
);

test('schema prints the schema of the examples', async () => {
  const { code, out, err } = await storystick('schema');
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toBe(readFileSync('examples/plan.schema.json', 'utf8'));
  expect((await storystick('schema', 'plan.yaml')).code).toBe(2);
});
