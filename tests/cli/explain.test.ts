import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, describe, expect, test } from 'vitest';
import { jsonExplainedSchema } from '../../src/report/explain/json-schema.ts';
import { rules } from '../../src/rules/index.ts';
import { storystick } from '../support/compared.ts';
import { overlapWaived, waivedPlan } from '../support/waived-plan.ts';

const folder = mkdtempSync(join(tmpdir(), 'storystick-explain-'));
afterAll(() => rmSync(folder, { recursive: true }));

const curlew = 'examples/curlew/curlew.yaml';
const flat = (text: string): string => text.replace(/\s+/g, ' ');

describe('without a plan', () => {
  test('all checks are listed by topic', async () => {
    const { code, out, err } = await storystick(['explain'], 80);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    for (const { id, title } of rules) expect(flat(out)).toContain(`${id} ${title}`);
    expect(out.indexOf('mass.total')).toBeLessThan(out.indexOf('electrical.mains'));
  });

  test.each(rules)(
    '$id says what, why, how, what limits it, where from and what to beware of',
    async (rule) => {
      const { code, out } = await storystick(['explain', rule.id], 60);
      expect(code).toBe(0);
      for (const text of [rule.title, rule.why, rule.formula, rule.fix ?? '', ...rule.cautions])
        expect(flat(out)).toContain(flat(text));
      for (const label of ['limit:', 'fix:', 'waiver:', 'Caution']) expect(out).toContain(label);
      expect(out.split('\n').filter((line) => line.length > 60)).toEqual([]);
    },
  );

  test('rows of the catalogue with what stands behind them', async () => {
    const { out } = await storystick(['explain', 'balance.steered-share']);
    expect(flat(out)).toMatch(/limit: at least 30 % of the permissible maximum mass.* \(law, uk and eu\)/);
    expect(flat((await storystick(['explain', 'movement.passage'])).out)).toMatch(/at least \d+ mm .*\(/);
  });

  test('life and limb can be acknowledged only', async () => {
    expect((await storystick(['explain', 'electrical.mains'])).out).toContain('which still fails');
    expect((await storystick(['explain', 'balance.sides'])).out).toContain('can be waived in the plan');
    expect((await storystick(['explain', 'mass.swaps'])).out).toContain('It cannot be waived.');
  });
});

describe('with a plan', () => {
  test('what the plan says with its lines, every mass with its lever, the sum, the verdict', async () => {
    const { code, out, err } = await storystick(['explain', 'balance.rear-axle', curlew], 100);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/van\.axle_limits\.rear \(line \d+\): 2240 kg/);
    expect(out).toMatch(/^1\. {2}What every mass puts on the rear axle: m·x \/ L \(line \d+\)$/m);
    expect(out).toMatch(/^mattress +\d.* kg +\d+ mm +\d\.\d\d +.* kg +\w+ +\d+$/m);
    const [, sum] = /^ {4}= (.* kg)$/m.exec(out) ?? [];
    expect(out).toMatch(
      new RegExp(`^measured ${sum?.replace(' kg', '')}.* kg, limit at most 2,240 kg, .*verdict`, 'm'),
    );
    expect(out).toContain('In this state: ');
  });

  test.each([60, 80, 100, 160])('no line is longer than %i columns', async (width) => {
    for (const check of ['balance.sides', 'electrical.autonomy', 'electrical.ampacity', 'fit.swing']) {
      const { out } = await storystick(['explain', check, curlew], width);
      expect(out.split('\n').filter((line) => line.length > width)).toEqual([]);
    }
  });

  test('a check of what the plan says of itself shows what it read', async () => {
    const waived = join(folder, 'waived.yaml');
    writeFileSync(waived, waivedPlan(overlapWaived));
    const { out } = await storystick(['explain', 'plan.waivers', waived]);
    expect(out).toMatch(/waivers\[?.*\(line \d+\): .*check fit\.overlap/);
  });

  test('a check that measures nothing says so', async () => {
    const { out } = await storystick(['explain', 'fit.placed', curlew]);
    expect(out).toContain('Nothing is worked out here: the check looks at what the plan says.');
    const measured = await storystick(['explain', 'mass.total', curlew]);
    expect(measured.out).not.toContain('Nothing is worked out here');
  });

  test('one that cannot be made, one that finds nothing, one that is a table', async () => {
    const bare = join(folder, 'bare.yaml');
    writeFileSync(bare, 'storystick: 1\nvan: {}\n');
    expect((await storystick(['explain', 'mass.total', bare])).out).toContain('van.max_mass');
    expect((await storystick(['explain', 'plan.waivers', bare])).out).toContain('nothing to say');
    expect((await storystick(['explain', 'mass.swaps', curlew])).out).toContain('only a table');
  });

  test('no line is longer than the terminal, not even a heading', async () => {
    const long = join(folder, 'the plan of a van with a name that takes its time.yaml');
    writeFileSync(long, 'storystick: 1\nname: A van by a name that is as long\nvan: {max_mass: 3500 kg}\n');
    const { out } = await storystick(['explain', 'electrical.solar-voltage', long], 60);
    expect(flat(out)).toContain('takes its time.yaml: A van by a name that is as long ═══');
    expect(out.split('\n').filter((line) => line.length > 60)).toEqual([]);
  });

  test('a failing check is explained all the same', async () => {
    expect((await storystick(['explain', 'fit.overlap', 'examples/curlew/crowded.yaml'])).code).toBe(0);
  });
});

describe('as JSON', () => {
  const fits = new Ajv2020({ allErrors: true, strict: true }).compile(jsonExplainedSchema.toJSONSchema());

  test.each([[[]], [['mass.total']], [['balance.sides', curlew]], [['fit.swing', curlew]]])(
    '%j is as its schema says',
    async (args) => {
      const { code, out } = await storystick(['explain', ...args, '--json']);
      expect(code).toBe(0);
      fits(JSON.parse(out));
      expect(fits.errors ?? []).toEqual([]);
    },
  );

  test('the parts add up to what was measured', async () => {
    const { findings } = JSON.parse((await storystick(['explain', 'mass.total', curlew, '--json'])).out);
    const [{ measured, working }] = findings;
    const sum = working[0].parts.rows.reduce(
      (total: number, row: { values: { value: number }[] }) => total + (row.values.at(-1)?.value ?? 0),
      0,
    );
    expect(sum).toBeCloseTo(measured.value, 6);
  });
});

describe('what cannot be understood', () => {
  test.each([
    { args: ['electrical.voltage-dop'], meant: 'did you mean: electrical.voltage-drop' },
    { args: ['sides'], meant: 'did you mean: balance.sides' },
    { args: ['axle'], meant: 'balance.front-axle' },
    { args: ['solar'], meant: 'electrical.solar-current, electrical.solar-voltage' },
    { args: [curlew], meant: 'a check before the plan' },
    { args: ['mass.total', join(folder, 'none.yaml')], meant: 'expected: ' },
    { args: ['mass.total', curlew, '--markdown'], meant: 'contradict' },
    { args: ['--json', '--markdown'], meant: 'contradict' },
  ])('$args', async ({ args, meant }) => {
    const { code, out, err } = await storystick(['explain', ...args]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(meant);
  });
});
