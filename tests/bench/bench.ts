// Measures what the tool costs its user: time from the command to its end, and memory. It measures and never
// asserts; its exit code is 0 whatever comes out. Times depend on the machine, so a small check is compared with an
// empty run of Node, and the cases take turns: whatever else the machine does meanwhile hits all of them alike.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { energyYear } from '../../src/calc/energy/year.ts';
import { energyInput } from '../support/energy-year.ts';
import { commitsOf } from './commits.ts';
import {
  planWithCircuits,
  planWithFixtures,
  planWithRoutes,
  withoutExpressions,
  withProblems,
} from './plans.ts';

const rounds = 15;
const pathOf = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const launcher = pathOf('../../bin/storystick.cjs');
const example = pathOf('../../examples/curlew/curlew.yaml');
const variant = pathOf('../../examples/curlew/oak.yaml');
const small = pathOf('../../examples/first-lines.yaml');

/** Every command on a small plan, or none: what it costs to begin. */
const begun: readonly (readonly [args: readonly string[], expected: number])[] = [
  [['check', small], 0],
  [['look', small], 0],
  [['circuits', small], 0],
  [['energy', small], 0],
  [['diff', small, small], 0],
  [['compare', small, small], 0],
  [['explain', 'balance.sides', small], 0],
  [['set', '--dry-run', small, 'name', 'Whimbrel'], 0],
  [['move', '--dry-run', small, 'bed', '--forwards', '10mm'], 0],
  // It refuses to write over a file.
  [['new', small], 2],
  [['schema'], 0],
  [['completion', 'bash'], 0],
];

interface Case {
  readonly args: readonly string[];
  /** The exit codes of a run that did what is to be measured. */
  readonly expected: readonly number[];
  readonly timesMs: number[];
}

function run({ args, expected }: Case, nodeOptions: readonly string[] = []): string {
  const env = { ...process.env, NO_COLOR: '1', COLUMNS: '100', NODE_OPTIONS: '' };
  const { status, stderr } = spawnSync(process.execPath, [...nodeOptions, ...args], {
    env,
    encoding: 'utf8',
    // A plan of thousands of things that stand in each other fills megabytes.
    maxBuffer: Number.POSITIVE_INFINITY,
  });
  if (!expected.includes(status ?? -1)) {
    throw new Error(`node ${args.join(' ')} ended with ${status}: there is nothing to measure\n${stderr}`);
  }
  return stderr;
}

function runTimed(each: Case): void {
  const begin = performance.now();
  run(each);
  each.timesMs.push(performance.now() - begin);
}

function peakMib(each: Case): number {
  const stderr = run(each, ['--require', pathOf('./peak-memory.cjs')]);
  return Number(/^peak (\d+)$/m.exec(stderr)?.[1]) / 1024;
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const upper = sorted[sorted.length >> 1] ?? Number.NaN;
  const lower = sorted[(sorted.length - 1) >> 1] ?? Number.NaN;
  return (lower + upper) / 2;
}

const folder = mkdtempSync(join(tmpdir(), 'storystick-bench-'));
const node = (expected: readonly number[], ...args: readonly string[]): Case => ({
  args,
  expected,
  timesMs: [],
});
const check = (name: string, plan: string, ...expected: readonly number[]): Case => {
  const file = join(folder, `${name}.yaml`);
  writeFileSync(file, plan);
  return node(expected, launcher, 'check', file);
};

try {
  const plan = readFileSync(example, 'utf8');
  const empty = node([0], '-e', '0');
  const version = node([0], launcher, '--version');
  const curlew = node([0, 1], launcher, 'check', example);
  const compared = node([0, 1], launcher, 'diff', example, variant);
  const literal = check('literal', withoutExpressions(plan), 0, 1);
  const faulty = check('faulty', withProblems(plan), 2);
  const large = check('large', planWithFixtures(5000), 0, 1);
  const twice = check('twice', planWithFixtures(10_000), 0, 1);
  const routed = check('routed', planWithRoutes(500, 200), 0, 1);
  const wired = check('wired', planWithCircuits(300), 0, 1);
  const begins = begun.map(([args, expected]) => node([expected], launcher, ...args));
  const cases = [empty, version, curlew, compared, literal, faulty, large, twice, routed, wired, ...begins];
  // Once for the file system's sake, then in turns.
  for (const each of cases) run(each);
  for (let round = 0; round < rounds; round += 1) cases.forEach(runTimed);
  const commits = commitsOf(folder, launcher, plan);
  const hookMs = Array.from({ length: rounds }, () => commits.timedMs('with') - commits.timedMs('without'));
  const peaks = [1, 2, 3].map(() => peakMib(large));

  const yearsMs = Array.from({ length: 2 * rounds }, () => {
    const begin = performance.now();
    energyYear(energyInput());
    return performance.now() - begin;
  });
  // The first half warms it up.
  const yearMs = median(yearsMs.slice(rounds));

  const time = (each: Case): number => median(each.timesMs);
  const over = (each: Case, other: Case): number => time(each) / time(other);
  const timesNode = (ratio: number): string => `${ratio.toFixed(2)} × node -e 0`;
  console.log(
    `Node ${process.version}, ${process.platform} ${process.arch}; medians of ${rounds} runs in turns`,
  );
  console.log(
    `node -e 0 takes ${time(empty).toFixed(0)} ms, check of the example ${time(curlew).toFixed(0)} ms\n`,
  );
  const rows: readonly (readonly [what: string, figure: string, target: string, met: boolean | undefined])[] =
    [
      [
        'examples/curlew, all systems',
        timesNode(over(curlew, empty)),
        'at most 2.5',
        over(curlew, empty) <= 2.5,
      ],
      ['the same without expressions', timesNode(over(literal, empty)), '', undefined],
      [
        'diff of two examples',
        `${over(compared, curlew).toFixed(2)} × check`,
        'at most 2.0',
        over(compared, curlew) <= 2,
      ],
      ['the same with many problems', timesNode(over(faulty, empty)), '', undefined],
      ...begins.map(
        (each, index) =>
          [
            `${begun[index]?.[0][0]} of the first lines`,
            timesNode(over(each, empty)),
            'at most 2.5',
            over(each, empty) <= 2.5,
          ] as const,
      ),
      ['only --version', timesNode(over(version, empty)), '', undefined],
      [
        'plan with 5,000 fixtures',
        `${(time(large) / 1000).toFixed(2)} s`,
        'at most 1 s',
        time(large) <= 1000,
      ],
      [
        '500 bodies and 200 routed runs',
        `${(time(routed) / 1000).toFixed(2)} s`,
        'at most 1 s',
        time(routed) <= 1000,
      ],
      [
        '300 circuits and their year',
        `${(time(wired) / 1000).toFixed(2)} s`,
        'at most 1 s',
        time(wired) <= 1000,
      ],
      [
        'what the hook adds to a commit',
        `${median(hookMs).toFixed(0)} ms`,
        'at most 500 ms',
        median(hookMs) <= 500,
      ],
      ['a year of energy, warm', `${yearMs.toFixed(0)} ms`, 'at most 50 ms', yearMs <= 50],
      ['10,000 over 5,000 fixtures', over(twice, large).toFixed(2), 'at most 2.2', over(twice, large) <= 2.2],
      [
        'peak memory, 5,000 fixtures',
        `${median(peaks).toFixed(0)} MiB`,
        'at most 150 MiB',
        median(peaks) <= 150,
      ],
    ];
  for (const [what, figure, target, met] of rows) {
    const verdict = met === undefined ? '' : met ? 'met' : 'missed';
    console.log(`${what.padEnd(31)}${figure.padStart(18)}  ${target.padEnd(16)}  ${verdict}`.trimEnd());
  }
} finally {
  rmSync(folder, { recursive: true });
}
