import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { codes } from '../../src/catalogue/codes.ts';
import { askingAt } from '../../src/cli/asking.ts';
import { type Ask, newPlan } from '../../src/cli/new.ts';
import { planJsonSchema } from '../../src/plan/json-schema.ts';
import { starterKinds } from '../../src/plan/starters/starting.ts';
import { reportOf } from '../support/check.ts';
import { asAnEditorReads, validatorOf } from '../support/plan-schema.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'storystick-new-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

async function write(options: { file?: string; kind?: string }, ask?: Ask) {
  let [out, err] = ['', ''];
  const code = await newPlan(
    { ...options, ...(options.file !== undefined && { file: join(folder, options.file) }) },
    ask,
    {
      version: '1.2.3',
      // The path of the folder is in what is printed, and taken out afterwards.
      width: 160,
      colour: false,
      print: (text) => {
        out += text;
      },
      complain: (text) => {
        err += text;
      },
      loadCalculator: () => import('../../src/plan/calculator.ts'),
    },
  );
  return { code, out: out.replaceAll(`${folder}/`, ''), err: err.replaceAll(`${folder}/`, '') };
}
const read = (name: string) => readFileSync(join(folder, name), 'utf8');

/** Somebody who gives these answers, then goes away. */
function somebody(...answers: readonly string[]): { ask: Ask; asked: string[] } {
  const asked: string[] = [];
  return {
    asked,
    ask: async (question) => {
      asked.push(question);
      return answers[asked.length - 1];
    },
  };
}

describe('without somebody to ask', () => {
  test.each(starterKinds)('%s is written, fails in nothing, and fits the schema', async (kind) => {
    const { code, out, err } = await write({ file: 'my van.yaml', kind });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^my van\.yaml is written: 0 fail, \d+ warn, \d+ not checked, \d+ pass\n/);
    const text = read('my van.yaml');
    expect(text.match(/^ *#|[^ ] +# /gm)?.length).toBeGreaterThan(15);
    expect(text).not.toMatch(/\$\{|undefined/);
    const validate = validatorOf(planJsonSchema());
    validate(asAnEditorReads(text)?.data);
    expect(validate.errors ?? []).toEqual([]);
  });

  test.each(starterKinds)('what %s offers in comments is a plan too', async (kind) => {
    await write({ file: 'plan.yaml', kind });
    const text = read('plan.yaml');
    const offered = text.replace(/^# (?=(?: {2}\S|[a-z_]+:(?: \{|$)).*)/gm, '');
    expect(offered).not.toBe(text);
    const report = await reportOf(offered.replace(/^ {2}storystick check .*$/gm, ''));
    expect(report.findings.length).toBeGreaterThan(20);
  });

  test('a name that no plan has is taken, and told what it costs', async () => {
    const { code, out } = await write({ file: 'plan.txt' });
    expect(code).toBe(0);
    expect(out).toContain(
      'note: the hook and editors know a plan by a name that ends in `.yaml` or `.yml`\n',
    );
    expect((await write({ file: 'plan.yml' })).out).not.toContain('note:');
  });

  test('first-lines is usual, and needs few lines', async () => {
    await write({ file: 'plan.yaml' });
    expect(
      read('plan.yaml')
        .split('\n')
        .filter((line) => /^[^#]*\S/.test(line.split('#')[0] ?? '')).length,
    ).toBeLessThan(22);
  });
});

test.each(codes)('both kinds fail in nothing under the limits of %s', async (whose) => {
  for (const kind of starterKinds) {
    await write({ kind }, somebody(join(folder, `${kind}.yaml`), '', whose, ...Array(8).fill('')).ask);
    const report = await reportOf(read(`${kind}.yaml`));
    expect(report.findings.filter(({ verdict }) => verdict === 'fail').map(({ rule }) => rule)).toEqual([]);
    expect(parse(read(`${kind}.yaml`)).codes).toBe(whose);
  }
});

describe('a file that is there', () => {
  test('is never overwritten, nor is what a link leads to', async () => {
    writeFileSync(join(folder, 'plan.yaml'), 'mine');
    symlinkSync(join(folder, 'nowhere.yaml'), join(folder, 'link.yaml'));
    for (const file of ['plan.yaml', 'link.yaml']) {
      const { code, err } = await write({ file });
      expect(code).toBe(2);
      expect(err).toContain(`${file} is there already, and stays as it is`);
    }
    expect(read('plan.yaml')).toBe('mine');
    expect(readdirSync(folder).sort()).toEqual(['link.yaml', 'plan.yaml']);
  });

  test('a folder that is not there, and a kind that is none', async () => {
    expect((await write({ file: 'none/plan.yaml' })).err).toContain('there is no such file or folder');
    expect((await write({ file: 'plan.yaml', kind: 'ful' })).err).toContain('did you mean: full');
    expect(readdirSync(folder)).toEqual([]);
  });
});

describe('with somebody to ask', () => {
  test('empty answers give the usual plan, but in their file', async () => {
    const { ask, asked } = somebody(join(folder, 'a.yaml'), ...Array(11).fill(''));
    const { code } = await write({}, ask);
    expect(code).toBe(0);
    expect(asked).toHaveLength(12);
    expect(asked[0]).toBe('File to write [plan.yaml]: ');
    await write({ file: 'b.yaml' });
    expect(read('a.yaml').replace(join(folder, 'a.yaml'), 'x')).toBe(
      read('b.yaml')
        .replace(join(folder, 'b.yaml'), 'x')
        .replace(join(folder, 'b.yaml'), join(folder, 'a.yaml')),
    );
  });

  test('answers stand in the plan; one that cannot be understood is asked for again', async () => {
    const { ask, asked } = somebody(
      'curlew',
      'first-lines',
      'Sandpiper: "one"',
      'US',
      '7000',
      '7000 lb',
      '3400 lb',
      '4000 lb',
      '3 kg',
      '136 in',
      '44 in',
      '10.5 ft',
      '70 in',
      '-1 m',
      '75 in',
    );
    const { code, out } = await write({ file: 'plan.yaml' }, ask);
    expect(code).toBe(0);
    expect(out).toContain('  `curlew` is not among them: one of first-lines, full, please\n');
    expect(out).toContain('  `7000` has no unit: such as `3500 kg`, please\n');
    expect(out).toContain('  `3 kg` is a mass: such as `3640 mm`, please\n');
    expect(out).toContain('  more than zero, please, such as `1890 mm`\n');
    expect(asked.at(-1)).toBe('Height of the load bay [1890 mm]: ');
    const plan = parse(read('plan.yaml'));
    expect(plan).toMatchObject({
      name: 'Sandpiper: "one"',
      codes: 'us',
      units: 'imperial',
      van: {
        max_mass: '7000 lb',
        axle_limits: { front: '3400 lb', rear: '4000 lb' },
        wheelbase: '136 in',
        load_bay: { length: '10.5 ft', width: '70 in', height: '75 in' },
      },
    });
  });

  test('who breaks off leaves nothing behind', async () => {
    const { code, err } = await write({ file: 'plan.yaml' }, somebody('first-lines', 'My van').ask);
    expect({ code, err }).toEqual({ code: 2, err: 'nothing was written.\n' });
    expect(readdirSync(folder)).toEqual([]);
  });
});

describe('a terminal', () => {
  test('gives the typed line; its end ends the asking', async () => {
    const [input, output] = [new PassThrough(), new PassThrough()];
    let shown = '';
    output.on('data', (piece) => {
      shown += String(piece);
    });
    const { ask, end } = askingAt(input, output);
    const first = ask('Name [My van]: ');
    input.write('Curlew\n');
    expect(await first).toBe('Curlew');
    expect(shown).toContain('Name [My van]: ');
    const second = ask('Again: ');
    input.end();
    expect(await second).toBeUndefined();
    expect(await ask('Still there? ')).toBeUndefined();
    end();
  });

  test('Ctrl-C breaks off', async () => {
    const [input, output] = [new PassThrough(), new PassThrough()];
    output.resume();
    const { ask } = askingAt(input, output);
    const answer = ask('Name: ');
    input.write('\u0003');
    expect(await answer).toBeUndefined();
  });
});
