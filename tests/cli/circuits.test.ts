import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/program.ts';
import { electricalVan } from '../support/electrical-plan.ts';

const folder = mkdtempSync(join(tmpdir(), 'storystick-circuits-'));
afterAll(() => rmSync(folder, { recursive: true }));

const file = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

const whole = file('whole.yaml', electricalVan);
// A cable that a fuse ten times too large does not protect.
const fails = file(
  'fails.yaml',
  electricalVan.replace(
    'type: blade, rating: 10 A, from_source',
    'type: maxi blade, rating: 100 A, from_source',
  ),
);
const bare = file('bare.yaml', 'storystick: 1\nvan: {max_mass: 3500 kg}\n');
const unread = file('unread.yaml', 'storystick: 1\nvan: {}\nelectrical: {voltage: 12}\n');

let [today, width] = ['2026-06-01', 100];

async function storystick(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  let [out, err] = ['', ''];
  const code = await run(args, {
    version: '1.2.3',
    width,
    colour: false,
    today: () => today,
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

describe('circuits', () => {
  test('prints the whole schedule, the cautions on top', async () => {
    const { code, out, err } = await storystick('circuits', whole);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^Unnamed plan: schedule of circuits\nwhole\.yaml\n\nCaution\n- A planning aid\./);
    expect(out).toContain('\n- Mains voltage kills.');
    expect(out).toContain('\nCircuits of the battery\n');
    expect(out).toMatch(/`storystick check whole\.yaml\s--assumptions`/);
  });

  test('a circuit that fails is listed as failing, and the exit code is left to check', async () => {
    const { code, out } = await storystick('circuits', fails);
    expect(code).toBe(0);
    expect(out).toMatch(/\bfail\b/);
    expect((await storystick('check', fails)).code).toBe(1);
  });

  test('what a waiver of the plan covers reads as in check, until its last day', async () => {
    const waiver = (check: string) =>
      `  - {check: electrical.${check}, reason: the fuse is on order, by: Robin, until: 2026-12-01}\n`;
    const one = `${readFileSync(fails, 'utf8')}waivers:\n${waiver('fuse-rating')}`;
    const all = `${one}${waiver('discrimination')}${waiver('fuse-breaking')}`;
    const verdictOn = async (day: string, text: string) => {
      [today, width] = [day, 200];
      const { out } = await storystick('circuits', file('waived.yaml', text));
      [today, width] = ['2026-06-01', 100];
      return /20 A {2}(fail, waived|fail|warn)/.exec(out)?.[1];
    };
    expect((await storystick('check', file('waived.yaml', all))).out).toMatch(/^fail, waived +fuses/m);
    expect(await verdictOn('2026-12-01', all)).toBe('fail, waived');
    expect(await verdictOn('2026-12-02', all)).toBe('fail');
    // What stands goes before what stands aside.
    expect(await verdictOn('2026-06-01', one)).toBe('warn');
  });

  test('a plan without an electrical part is told what to add', async () => {
    const { code, out, err } = await storystick('circuits', bare);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out.replaceAll('\n', ' ')).toContain(
      'there are no circuits to list yet, since the plan has no electrical part',
    );
    const [, offered = ''] = /\n\n(electrical:\n.+)$/s.exec(out) ?? [];
    // What is offered reads as a plan.
    const added = file('added.yaml', `storystick: 1\nvan: {}\nfixtures: {fridge: {mass: 20 kg}}\n${offered}`);
    const listed = await storystick('circuits', added);
    expect(listed.code).toBe(0);
    expect(listed.out).toMatch(/^fridge .*^Battery$/ms);
  });

  test.each([60, 80, 100])('what such a plan is told fits into %i columns', async (columns) => {
    width = columns;
    const { out } = await storystick('circuits', bare);
    width = 100;
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(columns);
  });

  test('a plan that cannot be understood is said as by check, and nothing is listed', async () => {
    const { code, out, err } = await storystick('circuits', unread);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^unread\.yaml:3:23: /);
    expect(err).toMatch(/1 problem: nothing was listed, because the plan could not be understood\.\n$/);
    expect((await storystick('circuits', join(folder, 'nowhere.yaml'))).code).toBe(2);
  });
});

describe('a command line that cannot be understood', () => {
  const usage =
    '  expected: `storystick circuits plan.yaml`; `storystick circuits --help` shows all options\n';

  test.each([
    [['circuits'], `no plan is given\n${usage}`],
    [['circuits', whole, '--json'], `unknown option \`--json\`\n${usage}`],
  ])('%j', async (args, said) => {
    expect(await storystick(...args)).toEqual({ code: 2, out: '', err: said });
  });
});

test('help ends with 0, says the exit codes and shows two examples', async () => {
  const { code, out } = await storystick('circuits', '--help');
  expect(code).toBe(0);
  expect(out).toMatch(/Exit codes: 0 the circuits are listed, whatever their verdicts/);
  expect(out.match(/^ {2}storystick circuits .+$/gm)).toHaveLength(2);
});
