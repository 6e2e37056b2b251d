import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { run } from '../../src/cli/program.ts';
import { energyPlan } from '../support/energy-plan.ts';

const folder = mkdtempSync(join(tmpdir(), 'storystick-energy-'));
afterAll(() => rmSync(folder, { recursive: true }));

const file = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};
const whole = file('whole.yaml', energyPlan());
const bare = file('bare.yaml', 'storystick: 1\nvan: {max_mass: 3500 kg}\n');
const unread = file('unread.yaml', energyPlan({ fridge: 'load: 45 W, hours: 8' }));

async function storystick(width: number, ...args: string[]) {
  let [out, err] = ['', ''];
  const code = await run(args, {
    version: '1.2.3',
    width,
    colour: false,
    print: (text) => {
      out += text;
    },
    complain: (text) => {
      err += text.replaceAll(`${folder}/`, '');
    },
    loadCalculator: () => import('../../src/plan/calculator.ts'),
  });
  return { code, out: out.replaceAll(`${folder}/`, ''), err };
}

describe('energy', () => {
  test('shows twelve months, the loads by size, what closes the worst month, and every caution', async () => {
    const { code, out, err } = await storystick(100, 'energy', whole);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(
      out.match(
        /^(?:January|February|March|April|May|June|July|August|September|October|November|December) /gm,
      ),
    ).toHaveLength(12);
    expect(out.indexOf('\nfridge')).toBeLessThan(out.indexOf('\nlamps'));
    expect(out).toMatch(/^December +0\.67 .* 4,\d{3} .*█+░+$/m);
    expect(out).toMatch(/- less load: \d+ Wh a day less/);
    expect(out).toMatch(/- more array: \d+ W more/);
    expect(out).toContain('- more battery: not by itself');
    for (const caution of [
      'A planning aid.',
      '10 to 20 % off',
      'begins with a full battery',
      'Munich, Germany',
    ])
      expect(out.slice(out.indexOf('\nCaution'))).toContain(caution);
  });
  test('fails for nothing: that is for `check`', async () => {
    expect((await storystick(100, 'check', whole)).code).toBe(1);
    expect((await storystick(100, 'energy', whole)).code).toBe(0);
  });
  test('a plan that does not say enough is told what to add', async () => {
    const { code, out } = await storystick(100, 'energy', bare);
    expect(code).toBe(0);
    expect(out).toBe(
      'bare.yaml: the year of energy cannot be worked out yet.\n  to add: `electrical.battery`, `electrical.circuits`, `living.place`\n',
    );
  });
  test('a plan that does not say enough is told so in no more columns than there are', async () => {
    const long = file('the plan of a van, with a name that is long.yaml', 'storystick: 1\nvan: {}\n');
    const { code, out } = await storystick(60, 'energy', long);
    expect(code).toBe(0);
    expect(out.split('\n').filter((line) => line.length > 60)).toEqual([]);
  });

  test('a plan that cannot be understood, or is not there', async () => {
    const { code, err } = await storystick(100, 'energy', unread);
    expect(code).toBe(2);
    expect(err).toContain('has no unit');
    expect(err).toContain('1 problem: nothing was worked out, because the plan could not be understood.');
    expect((await storystick(100, 'energy', join(folder, 'none.yaml'))).code).toBe(2);
  });
  test('no plan', async () => {
    const { code, err } = await storystick(100, 'energy');
    expect(code).toBe(2);
    expect(err).toContain('`storystick energy plan.yaml`');
  });
});
