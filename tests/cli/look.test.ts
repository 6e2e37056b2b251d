import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/program.ts';
import { wholeVan } from '../support/whole-van.ts';

const folder = mkdtempSync(join(tmpdir(), 'storystick-look-'));
afterAll(() => rmSync(folder, { recursive: true }));

const file = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

const whole = file('whole.yaml', wholeVan);
const bare = file('bare.yaml', 'storystick: 1\nvan: {max_mass: 3500 kg}\n');
const heavy = file('heavy.yaml', wholeVan.replace('3500 kg', '1500 kg'));
const unread = file('unread.yaml', 'storystick: 1\nvan: {max_mass: 3500}\n');

async function storystick(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  let [out, err] = ['', ''];
  const code = await run(args, {
    version: '1.2.3',
    width: 100,
    colour: false,
    print: (text) => {
      out += text;
    },
    complain: (text) => {
      err += text.replaceAll(`${folder}/`, '');
    },
    loadCalculator: () => import('../../src/plan/calculator.ts'),
  });
  return { code, out, err };
}

const titles = (out: string): string[] => out.match(/^(?:Plan view|Left side|Right side).*$/gm) ?? [];

describe('look', () => {
  test('draws the plan view and both sides', async () => {
    const { code, out, err } = await storystick('look', whole);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(titles(out)).toEqual([
      'Plan view, from above',
      'Left side, from the middle',
      'Right side, from the middle',
    ]);
  });

  test('judges nothing: a van far too heavy is drawn like any other', async () => {
    expect((await storystick('look', heavy)).code).toBe(0);
  });

  test.each([
    [['--view', 'right'], ['Right side, from the middle']],
    [
      ['--view', 'left, plan'],
      ['Left side, from the middle', 'Plan view, from above'],
    ],
    [
      ['--view', 'plan', '--view', 'left', '--view', 'plan'],
      ['Plan view, from above', 'Left side, from the middle'],
    ],
    [['--view', 'plan', '--at', '1.2m'], ['Plan view, cut 1200 mm above the floor']],
    [['--view', 'plan', '--at', '1200 mm'], ['Plan view, cut 1200 mm above the floor']],
    [['--view', 'plan', '--at', '4 ft'], ['Plan view, cut 1219 mm above the floor']],
  ])('%j', async (options, expected) => {
    const { code, out } = await storystick('look', whole, ...options);
    expect(code).toBe(0);
    expect(titles(out)).toEqual(expected);
  });

  test('a plan without a load bay is told what to add', async () => {
    const { code, out, err } = await storystick('look', bare);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('nothing can be drawn yet, since the plan does not give the load bay');
    expect(out).toContain('`load_bay: {behind_front_axle: ');
  });

  test('a plan that cannot be understood is said as by check, and nothing is drawn', async () => {
    const { code, out, err } = await storystick('look', unread);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^unread\.yaml:2:17: /);
    expect(err).toMatch(/1 problem: nothing was drawn, because the plan could not be understood\.\n$/);
    expect((await storystick('look', join(folder, 'nowhere.yaml'))).code).toBe(2);
  });
});

describe('a command line that cannot be understood', () => {
  const usage = '  expected: `storystick look plan.yaml`; `storystick look --help` shows all options\n';
  const height = '  expected: a height above the floor, such as `1.2 m`\n';
  const views = '  expected: one of plan, left, right\n';

  test.each([
    [['look'], `no plan is given\n${usage}`],
    [['look', whole, '--vew', 'plan'], `unknown option \`--vew\`\n  did you mean: --view\n${usage}`],
    [['look', whole, '--view', 'lft'], `\`lft\` is not a view\n  did you mean: left\n${views}`],
    [['look', whole, '--view', ''], `\`\` is not a view\n${views}`],
    [['look', whole, '--view', '\u001b[1m'], `\`\\u{1b}[1m\` is not a view\n${views}`],
    [['look', whole, '--at', '12'], `--at: \`12\` has no unit\n${height}`],
    [['look', whole, '--at', '12 kg'], `--at: \`12 kg\` is a mass\n${height}`],
    [['look', whole, '--at', '1.2 mtr'], `--at: \`mtr\` is not a unit that is known here\n${height}`],
    [['look', whole, '--at', ''], `--at: \`\` is empty\n${height}`],
    [['look', whole, '--at', 'high up'], `--at: \`high up\` is an expression\n${height}`],
    [['look', whole, '--at'], `option \`--at <height>\` argument missing\n${usage}`],
  ])('%j', async (args, words) => {
    expect(await storystick(...args)).toEqual({ code: 2, out: '', err: words });
  });
});

test('help ends with 0 and shows two examples', async () => {
  const { code, out } = await storystick('look', '--help');
  expect(code).toBe(0);
  expect(out.match(/^ {2}storystick look .+$/gm)).toHaveLength(2);
});
