import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Checked, checkPlan } from '../../src/cli/check-plan.ts';
import { isWrittenIn, typedFor } from '../../src/cli/explaining/typed.ts';
import { explanationOf } from '../../src/engine/explanation.ts';
import type { Finding, Step } from '../../src/engine/finding.ts';
import type { Measure } from '../../src/engine/measure.ts';
import { withWorking } from '../../src/engine/working.ts';
import { renderJsonExplained } from '../../src/report/explain/json.ts';
import { renderExplained } from '../../src/report/explain/terminal.ts';
import { rules } from '../../src/rules/index.ts';
import { type Spoilt, spoiltPlans, spoiltText } from '../support/spoilt-curlew.ts';
import { waterPlan } from '../support/supply-plan.ts';

type Read = Extract<Checked, { ok: true }>;

const checkText = (text: string): Promise<Checked> =>
  checkPlan('spoilt.yaml', text, () => import('../../src/plan/calculator.ts'), '2026-06-01');

/** As much of what is spoilt as leaves a plan that is read. */
async function readOf(spoilt: Spoilt): Promise<{ readonly text: string; readonly checked: Read }> {
  for (const count of [spoilt.slips.length, Math.floor(spoilt.slips.length / 2), 0]) {
    const text = spoiltText(spoilt, count);
    const checked = await checkText(text);
    if (checked.ok) return { text, checked };
  }
  throw new Error(`even what is not spoilt is refused: ${spoilt.example} without ${spoilt.without.join()}`);
}

/** Every section that a plan may have, and one that it never has. */
const sections = new Set(
  'storystick name codes units params van people build_ups fixtures tanks stores routes water gas air heat protection electrical load_states living weighed waivers rules'.split(
    ' ',
  ),
);

const isSame = (one: Measure, other: Measure, size = Math.abs(one.value)): boolean =>
  one.kind === other.kind &&
  (one.value === other.value || Math.abs(one.value - other.value) <= 1e-9 * size + 1e-18);

const measuresOf = ({ result, sum = [], parts }: Step): readonly Measure[] => [
  ...(result ? [result] : []),
  ...sum.filter((part) => typeof part !== 'string'),
  ...(parts?.rows.flatMap(({ values, adds }) => [...values, adds]) ?? []),
];

/** What is wrong with a working, in words that name it; nothing where all is well. */
function wrongWith({ measured, working }: Finding): readonly string[] {
  if (!measured) return [];
  const last = working?.at(-1)?.result;
  if (!last) return ['nothing comes out at its end'];
  const isEndless = !Number.isFinite(measured.value);
  return [
    ...(isSame(measured, last)
      ? []
      : [`ends with ${last.value} (${last.kind}), not ${measured.value} (${measured.kind})`]),
    ...(working ?? []).flatMap((step) => wrongStep(step, isEndless).map((wrong) => `${step.what}: ${wrong}`)),
  ];
}

function wrongStep(step: Step, isEndless: boolean): readonly string[] {
  const { result, parts, paths = [] } = step;
  const rows = parts?.rows ?? [];
  const total = rows.reduce((sum, { adds }) => sum + adds.value, 0);
  const size = rows.reduce((sum, { adds }) => sum + Math.abs(adds.value), 0);
  const numbers = measuresOf(step).map(({ value }) => value);
  return [
    ...(numbers.some((value) => Number.isNaN(value)) ? ['has something that is no number'] : []),
    ...(!isEndless && numbers.some((value) => !Number.isFinite(value)) ? ['is endless'] : []),
    ...(parts && !(result && isSame(result, { kind: result.kind, value: total }, size))
      ? [`its parts make ${total}, not ${result?.value}`]
      : []),
    ...(parts && rows.length === 0 ? ['has a table of nothing'] : []),
    ...(rows.some(({ adds }) => adds.kind !== result?.kind) ? ['its parts are of another kind'] : []),
    ...(rows.some(({ values }) => values.length + 1 !== parts?.columns.length) ? ['has a ragged table'] : []),
    ...[...paths, ...rows.map(({ path }) => path)]
      .filter(([section]) => section !== undefined && !sections.has(String(section)))
      .map((path) => `leads to ${path.join('.')}`),
  ];
}

/** What `explain` prints of one finding, on a terminal and as JSON. */
function printedOf({ report, document }: Read, finding: Finding): string {
  const rule = rules.find(({ id }) => id === finding.rule);
  if (!rule) throw new Error(`${finding.rule} is no rule`);
  const explained = {
    checks: [explanationOf(rule)],
    inPlan: {
      report,
      findings: [{ finding, typed: typedFor(document.data, finding) }],
      isWritten: isWrittenIn(document.data),
    },
  };
  return `${renderExplained(explained, { width: 80, colour: false })}${renderJsonExplained(explained, { version: '0' })}`;
}

const noNumber = /.*(?:\bNaN\b|\bundefined\b|\bInfinity\b).*/;

/** Everything that is wrong with what `explain` would say of a plan. */
function wrongIn(checked: Read): readonly string[] {
  return checked.report.findings.flatMap((bare) => {
    const finding = withWorking(rules, checked.build, bare);
    const printed = noNumber.exec(printedOf(checked, finding))?.[0];
    const isEndless = bare.measured !== undefined && !Number.isFinite(bare.measured.value);
    return [
      ...wrongWith(finding),
      ...(printed !== undefined && !isEndless ? [`prints "${printed}"`] : []),
    ].map((wrong) => `${bare.rule}, ${bare.subject}: ${wrong}`);
  });
}

// Whatever is slipped or forgotten: what led to a number ends with that number, and can be printed.
test('no plan makes a working stop or lie', async () => {
  let measuring = 0;
  await fc.assert(
    fc.asyncProperty(spoiltPlans(6), async (spoilt) => {
      const { text, checked } = await readOf(spoilt);
      expect(checked.defects, text).toEqual([]);
      expect(wrongIn(checked), text).toEqual([]);
      measuring += checked.report.findings.filter(({ measured }) => measured).length;
    }),
    { numRuns: 4 },
  );
  expect(measuring).toBeGreaterThan(200);
});

test('a pipe that lets nearly nothing through ends with the flow that was solved for', async () => {
  const pipe = 'bore: 0.1 mm, length: 1 m, material: PEX';
  const checked = await checkText(
    waterPlan({
      outlets: '{sink: {use: tap, flow: 5 L/min, above_floor: 0 m}}',
      pipes: `{suction: {from: fresh tank, to: pump, ${pipe}}, to sink: {from: pump, to: sink, ${pipe}}}`,
    }),
  );
  if (!checked.ok) throw new Error('a thin pipe is a pipe');
  const flow = checked.report.findings.find(({ rule }) => rule === 'water.flow');
  expect(flow?.measured?.value).toBeGreaterThan(0);
  expect(wrongIn(checked)).toEqual([]);
});

test('a van without a lining warms up without a table of nothing', async () => {
  const bare = { example: 'curlew', without: ['routes', 'electrical', 'build_ups'], slips: [] };
  const checked = await checkText(spoiltText(bare).replace('output: 2 kW', 'output: 20 kW'));
  if (!checked.ok) throw new Error('a bare van is a van');
  const warmUp = checked.report.findings.filter(({ rule }) => rule === 'heat.warm-up');
  const shown = warmUp.map((finding) => withWorking(rules, checked.build, finding));
  expect(shown.flatMap(({ measured }) => (measured ? [measured.kind] : []))).toEqual(['duration']);
  expect(shown.flatMap(wrongWith)).toEqual([]);
});
