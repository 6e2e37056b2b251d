import { stripVTControlCharacters } from 'node:util';
import { describe, expect, test } from 'vitest';
import { type Finding, saysTooLittle } from '../../src/engine/finding.ts';
import { factor, mass, share } from '../../src/engine/measure.ts';
import { say } from '../../src/engine/phrase.ts';
import { renderTerminal, type TerminalOptions } from '../../src/report/terminal.ts';
import {
  balanceCaution,
  findingOf,
  fromMemory,
  longReport,
  massCaution,
  noteOf,
  ownChoice,
  reportOf,
  smallReport,
  trade,
} from './fixtures.ts';

const plain: TerminalOptions = { width: 100, colour: false, detail: false, quiet: false };

/** What is said about a single finding. */
const said = (changes: Partial<Finding>, options: Partial<TerminalOptions> = {}): string =>
  renderTerminal(reportOf({ findings: [findingOf(changes)] }), { ...plain, ...options });

describe('renderTerminal', () => {
  test('at 100 columns', () => {
    expect(renderTerminal(smallReport, plain)).toMatchInlineSnapshot(`
      "Curlew, revision 4
      curlew.yaml, codes: uk, units: metric

      Mass
      ════
      verdict      check                         measured             limit   margin  line
      ────────────────────────────────────────────────────────────────────────────────────
      fail         Total mass: van          3,612 ± 24 kg  at most 3,500 kg  -112 kg     5
      not checked  Mass in hand: van                                                     4

      fail  van: The van weighs 3,612 kg, 112 kg more than its plate allows.
            state:   fresh full, waste empty, 2 aboard, stores full
            do:      Leave out 112 kg, or carry less water.
            source:  EU 2021/535, Annex XIII, Part 2, section A
            where:   curlew.yaml:5:3, check mass.total

      not checked  van: The plan does not say what is to be kept free. Missing: van.reserve.
            (mass.reserve)

      Balance
      ═══════
      verdict      check                         measured             limit   margin  line
      ────────────────────────────────────────────────────────────────────────────────────
      warn         Axle load: rear axle     2,155 ± 90 kg  at most 2,240 kg    85 kg     6
      pass         Share of the front axle           40 %     at least 25 %     15 %     8

      warn  rear axle: The rear axle carries 2,155 kg and may carry 2,240 kg, but the masses in the plan
            are not sure enough to tell.
            state:   fresh full, waste empty, 2 aboard, stores full
            do:      Weigh the heaviest fixtures, or move 20 kg ahead of the rear axle.
            assumes: the driver weighs 75 kg
            chance:  3.0 % that the limit is broken
            source:  EU 2021/535, Annex XIII, Part 2, section A
                     ISO 3833, 3.1.2 (from memory)
            where:   curlew.yaml:6:38, check balance.rear-axle

      Caution
      - Have the finished van weighed, axle by axle, before it goes on the road; only the weighbridge and
        the plate count.
      - How a laden van handles depends on more than these numbers; a qualified person must judge a van
        near a limit.

      1 fail, 1 warn, 1 not checked, 1 pass
      furthest past its limit: van, 103 % of 3,500 kg, 112 kg over (mass.total)
      2 values are assumed: run with --assumptions to see them
      "
    `);
  });

  test('at 60 columns', () => {
    expect(renderTerminal(smallReport, { ...plain, width: 60 })).toMatchInlineSnapshot(`
      "Curlew, revision 4
      curlew.yaml, codes: uk, units: metric

      Mass
      ════
      fail         Total mass: van
                   measured 3,612 ± 24 kg, limit at most 3,500 kg,
                   margin -112 kg, line 5
      not checked  Mass in hand: van
                   line 4

      fail  van: The van weighs 3,612 kg, 112 kg more than its
            plate allows.
            state:   fresh full, waste empty, 2 aboard, stores
                     full
            do:      Leave out 112 kg, or carry less water.
            source:  EU 2021/535, Annex XIII, Part 2, section A
            where:   curlew.yaml:5:3, check mass.total

      not checked  van: The plan does not say what is to be kept
            free. Missing: van.reserve. (mass.reserve)

      Balance
      ═══════
      warn         Axle load: rear axle
                   measured 2,155 ± 90 kg, limit at most 2,240 kg,
                   margin 85 kg, line 6
      pass         Share of the front axle
                   measured 40 %, limit at least 25 %,
                   margin 15 %, line 8

      warn  rear axle: The rear axle carries 2,155 kg and may
            carry 2,240 kg, but the masses in the plan are not
            sure enough to tell.
            state:   fresh full, waste empty, 2 aboard, stores
                     full
            do:      Weigh the heaviest fixtures, or move 20 kg
                     ahead of the rear axle.
            assumes: the driver weighs 75 kg
            chance:  3.0 % that the limit is broken
            source:  EU 2021/535, Annex XIII, Part 2, section A
                     ISO 3833, 3.1.2 (from memory)
            where:   curlew.yaml:6:38, check balance.rear-axle

      Caution
      - Have the finished van weighed, axle by axle, before it
        goes on the road; only the weighbridge and the plate
        count.
      - How a laden van handles depends on more than these
        numbers; a qualified person must judge a van near a limit.

      1 fail, 1 warn, 1 not checked, 1 pass
      furthest past its limit: van, 103 % of 3,500 kg, 112 kg over
        (mass.total)
      2 values are assumed: run with --assumptions to see them
      "
    `);
  });

  test('quietly', () => {
    expect(renderTerminal(smallReport, { ...plain, quiet: true })).toMatchInlineSnapshot(`
      "fail  mass.total  van: The van weighs 3,612 kg, 112 kg more than its plate allows.  curlew.yaml:5:3
      warn  balance.rear-axle  rear axle: The rear axle carries 2,155 kg and may carry 2,240 kg, but the
            masses in the plan are not sure enough to tell.  curlew.yaml:6:38
      not checked  mass.reserve  van: The plan does not say what is to be kept free. Missing: van.reserve.
            curlew.yaml:4:1

      Caution
      - Have the finished van weighed, axle by axle, before it goes on the road; only the weighbridge and
        the plate count.
      - How a laden van handles depends on more than these numbers; a qualified person must judge a van
        near a limit.

      1 fail, 1 warn, 1 not checked, 1 pass
      "
    `);
  });

  test('quietly, the worst comes first, and of a check that could not begin only what is missing is said', () => {
    const [failed] = smallReport.findings.filter(({ verdict }) => verdict === 'fail');
    const [open] = smallReport.findings.filter(({ verdict }) => verdict === 'not checked');
    if (!failed || !open) throw new Error('the report has both');
    const begun = { ...open, reason: saysTooLittle, missing: ['van.reserve', 'van.track'] };
    const text = renderTerminal({ ...smallReport, findings: [begun, failed] }, { ...plain, quiet: true });
    const [first, second] = text.split('\n');
    expect(first).toMatch(/^fail {2}mass\.total/);
    expect(second).toBe('not checked  mass.reserve  van: missing van.reserve, van.track  curlew.yaml:4:1');
  });

  test('in colour it says the same, with the sixteen colours only', () => {
    for (const width of [60, 100]) {
      const coloured = renderTerminal(longReport, { ...plain, width, detail: true, colour: true });
      expect(stripVTControlCharacters(coloured)).toBe(
        renderTerminal(longReport, { ...plain, width, detail: true }),
      );
      const codes = coloured
        .split('\u001b[')
        .slice(1)
        .map((part) => Number.parseInt(part, 10));
      expect([...new Set(codes)].sort((a, b) => a - b)).toEqual([1, 2, 22, 31, 32, 33, 36, 39]);
    }
  });

  test('puts the worst first', () => {
    const verdicts = (['pass', 'not checked', 'warn', 'fail'] as const).map((verdict) =>
      findingOf({ verdict, reason: say`Nothing to say.` }),
    );
    const text = renderTerminal(reportOf({ findings: verdicts }), plain);
    expect(text.match(/^(fail|warn|not checked|pass)(?= +Total)/gm)).toEqual([
      'fail',
      'warn',
      'not checked',
      'pass',
    ]);
  });

  test('lines up the tables of all topics', () => {
    const heads = renderTerminal(longReport, plain)
      .split('\n')
      .filter((line) => line.startsWith('verdict'));
    expect(heads).toHaveLength(2);
    expect(heads[0]).toBe(heads[1]);
  });

  test('wraps a long name in its cell instead of cutting it', () => {
    const subject = 'kitchen-under-the-window-with-the-two-ring-hob-and-the-deep-sink-and-the-drawers';
    const text = said({ subject, measured: mass(41), limit: { measure: mass(50), sense: 'at most' } });
    expect(text).toMatchInlineSnapshot(`
      "Curlew, revision 4
      curlew.yaml, codes: uk, units: metric

      Mass
      ════
      verdict  check                                                 measured          limit  margin  line
      ────────────────────────────────────────────────────────────────────────────────────────────────────
      pass     Total mass: kitchen-under-the-window-with-the-two-ri     41 kg  at most 50 kg
               ng-hob-and-the-deep-sink-and-the-drawers

      0 fail, 0 warn, 0 not checked, 1 pass
      "
    `);
  });

  test('keeps the columns after wide characters and newer emoji in place', () => {
    const rows = ['🫖', '冷蔵庫', 'पानी', 'tea'].map((subject) =>
      findingOf({ subject, measured: factor(1), path: [] }),
    );
    const text = renderTerminal(reportOf({ findings: rows }), plain);
    expect(text).toMatchInlineSnapshot(`
      "Curlew, revision 4
      curlew.yaml, codes: uk, units: metric

      Mass
      ════
      verdict  check               measured  limit  margin  line
      ──────────────────────────────────────────────────────────
      pass     Total mass: 🫖          1.00
      pass     Total mass: 冷蔵庫      1.00
      pass     Total mass: पानी          1.00
      pass     Total mass: tea         1.00

      0 fail, 0 warn, 0 not checked, 4 pass
      "
    `);
  });

  test('shows only the topics asked for, and what it leaves out', () => {
    const text = renderTerminal(smallReport, { ...plain, only: ['balance'] });
    expect(text).not.toContain('Total mass');
    expect(text).not.toContain(massCaution.slice(0, 40));
    expect(text).toContain('0 fail, 1 warn, 0 not checked, 1 pass\n');
    expect(text).toContain('in topics not shown: 1 fail, 0 warn, 1 not checked, 0 pass\n');
    expect(text).toContain(
      'closest to its limit: rear axle, 96 % of 2,240 kg, 85 kg left (balance.rear-axle)\n',
    );
  });

  test('says when there was nothing to check', () => {
    expect(renderTerminal(reportOf({}), plain)).toBe(
      'Curlew, revision 4\ncurlew.yaml, codes: uk, units: metric\n\nNothing was checked.\n',
    );
  });
});

describe('detail', () => {
  test('explains passes only when asked', () => {
    const changes = { reason: say`All is well.`, sources: [trade] };
    expect(said(changes)).not.toContain('All is well.');
    expect(said(changes)).not.toContain('source:');
    const text = said(changes, { detail: true });
    expect(text).toContain('pass  van: All is well.\n');
    expect(text).toContain('source:  A litre of water weighs a kilogram (common practice)\n');
  });

  test('shows tables for those who want to know more only when asked, but their cautions always', () => {
    const note = noteOf({ detailOnly: true, title: 'Swaps', cautions: ['Ask the maker.'] });
    const report = reportOf({ notes: [note] });
    expect(renderTerminal(report, plain)).not.toContain('Swaps');
    expect(renderTerminal(report, plain)).toContain('Caution\n- Ask the maker.\n');
    expect(renderTerminal(report, { ...plain, detail: true })).toContain('Swaps');
  });

  test('lays out a table of information', () => {
    const text = renderTerminal({ ...longReport, findings: [] }, { ...plain, detail: true });
    expect(text).toMatchInlineSnapshot(`
      "Curlew, revision 4
      curlew.yaml, codes: uk, units: metric

      Mass
      ════

      Lighter materials
      Each row stands alone; the savings may be added.
      part         now                  instead                saves
      ──────────────────────────────────────────────────────────────
      wall lining  birch plywood, 6 mm  poplar plywood, 6 mm   15 kg
      worktop      oak, 27 mm           bamboo, 19 mm         8.2 kg
      source: A litre of water weighs a kilogram (common practice)

      Balance
      ═══════

      Load states
      state                                 front      rear     total
      ───────────────────────────────────────────────────────────────
      fresh full, waste empty, 2 aboard  1,457 kg  2,155 kg  3,612 kg
      fresh empty, waste full, 2 aboard  1,502 kg  2,040 kg  3,542 kg
      as weighed                         1,190 kg    870 kg  2,060 kg

      Nothing was checked.
      2 values are assumed: run with --assumptions to see them
      "
    `);
  });

  test('draws a table with an empty column no wider than the terminal', () => {
    const note = noteOf({ columns: ['', 'part'], rows: [[[], say`${'panel '.repeat(30)}`]] });
    const text = renderTerminal(reportOf({ notes: [note] }), { ...plain, width: 60 });
    expect(text).toContain(`\n${'─'.repeat(60)}\n`);
  });

  test('lists the rows of a table that has no room', () => {
    const columns = ['state', 'front', 'rear', 'left', 'right', 'total'];
    const kg = [mass(1457), mass(2155), mass(1800), mass(1812), mass(3612)];
    const row = [say`fresh full, waste empty, 2 aboard`, ...kg.map((one) => [one])];
    const report = reportOf({ notes: [noteOf({ title: 'Load states', columns, rows: [row] })] });
    const text = renderTerminal(report, { ...plain, width: 60 });
    expect(text).toMatchInlineSnapshot(`
      "Curlew, revision 4
      curlew.yaml, codes: uk, units: metric

      Mass
      ════

      Load states
      fresh full, waste empty, 2 aboard
        front 1,457 kg, rear 2,155 kg, left 1,800 kg,
        right 1,812 kg, total 3,612 kg

      Nothing was checked.
      "
    `);
  });
});

describe('cautions', () => {
  test('stand once per topic, also where all is well or little is said', () => {
    const findings = [
      findingOf({ topic: 'balance', cautions: [balanceCaution] }),
      findingOf({ topic: 'balance', cautions: [balanceCaution, 'Have it weighed.'] }),
    ];
    for (const quiet of [true, false]) {
      const text = renderTerminal(reportOf({ findings }), { ...plain, width: 200, quiet });
      expect(text.split(balanceCaution)).toHaveLength(2);
      expect(text).toContain('- Have it weighed.\n');
    }
  });
});

describe('the paragraph of a finding', () => {
  test.each([
    [0.0005, undefined],
    [0.002, 'chance:  0.2 % that the limit is broken'],
    [0.5, 'chance:  50 % that the limit is broken'],
    [0.9995, undefined],
  ])('with a probability of %f says %s', (probability, expected) => {
    const text = said({ verdict: 'warn', probability });
    if (expected === undefined) expect(text).not.toContain('chance:');
    else expect(text).toContain(expected);
  });

  test('says how far to trust each source', () => {
    const text = said({ verdict: 'warn', sources: [fromMemory, ownChoice, trade] });
    expect(text).toContain('source:  ISO 3833, 3.1.2 (from memory)\n');
    expect(text).toContain("Warning threshold for the mass in hand (this tool's own choice)\n");
    expect(text).toContain('A litre of water weighs a kilogram (common practice)\n');
  });

  test('lists the missing keys and says where they go', () => {
    const text = renderTerminal(
      reportOf({
        findings: [findingOf({ verdict: 'not checked', missing: ['van.track', 'van.wheelbase'] })],
        spot: () => ({ line: 3, column: 1 }),
      }),
      plain,
    );
    expect(text).toContain('Missing: van.track, van.wheelbase. (mass.total)\n');
    expect(text).toContain('Total mass: van                              3\n');
  });

  test('gives its numbers the digits of the table', () => {
    const text = said({
      verdict: 'fail',
      measured: share(0.5304),
      limit: { measure: share(0.53), sense: 'at most' },
      reason: say`The left wheels carry ${share(0.5304)}.`,
    });
    expect(text).toContain('53.04 %  at most 53.00 %');
    expect(text).toContain('The left wheels carry 53.04 %.');
  });

  test('does not tear a number from its unit', () => {
    const words = 'word '.repeat(17);
    const text = said({ verdict: 'warn', reason: say`${words}${mass(12)} more` });
    expect(text).toMatch(/\n +12 kg more\n/);
  });
});

describe('the tolerance', () => {
  test.each([
    [mass(1980), mass(24), '1,980 ± 24 kg'],
    [mass(1980), mass(2.5), '1,980 ± 2.5 kg'],
    [mass(1980), mass(0), '1,980 kg'],
    [mass(1980), mass(0.01), '1,980 kg'],
    [factor(1.08), factor(0.04), '1.08 ± 0.04'],
    [share(0.53), share(0.004), '53 ± 0.4 %'],
  ])('of %o with %o is written "%s"', (measured, tolerance, expected) => {
    expect(said({ measured, tolerance, path: [] })).toMatch(new RegExp(` ${expected}$`, 'm'));
  });
});

describe('the line about the limit', () => {
  const last = (changes: Partial<Finding>): string => said(changes).trimEnd().split('\n').at(-1) ?? '';

  test.each<[string, Partial<Finding>, string]>([
    [
      'an upper limit kept',
      {
        measured: mass(2155),
        limit: { measure: mass(2240), sense: 'at most' },
        margin: mass(85),
        utilisation: 0.962,
      },
      'closest to its limit: van, 96 % of 2,240 kg, 85 kg left (mass.total)',
    ],
    [
      'an upper limit broken by a hair',
      {
        measured: mass(2240.02),
        limit: { measure: mass(2240), sense: 'at most' },
        margin: mass(-0.02),
        utilisation: 2240.02 / 2240,
      },
      'furthest past its limit: van, 100.001 % of 2,240.00 kg, 0.02 kg over (mass.total)',
    ],
    [
      'a lower limit kept',
      {
        measured: share(0.43),
        limit: { measure: share(0.4), sense: 'at least' },
        margin: share(0.03),
        utilisation: 0.93,
      },
      'closest to its limit: van, 43 %, at least 40 %, 3.0 % to spare (mass.total)',
    ],
    [
      'a lower limit broken',
      {
        measured: share(0.2),
        limit: { measure: share(0.4), sense: 'at least' },
        margin: share(-0.2),
        utilisation: 2,
      },
      'furthest past its limit: van, 20 %, at least 40 %, 20 % short (mass.total)',
    ],
    [
      'a limit of nothing',
      {
        measured: mass(3),
        limit: { measure: mass(0), sense: 'at most' },
        margin: mass(-3),
        utilisation: Infinity,
      },
      'furthest past its limit: van, 3.0 kg, at most 0.0 kg, 3.0 kg over (mass.total)',
    ],
    ['no figures', { utilisation: 0.5 }, 'closest to its limit: van, 50 % of its limit (mass.total)'],
    ['no utilisation', {}, '0 fail, 0 warn, 0 not checked, 1 pass'],
  ])('with %s', (_, changes, expected) => {
    expect(last(changes)).toBe(expected);
  });

  test('is about the worst, the first of equals', () => {
    const findings = [0.5, 0.9, 0.9, 0.2].map((utilisation, at) =>
      findingOf({ utilisation, subject: `axle ${at}` }),
    );
    expect(renderTerminal(reportOf({ findings }), plain)).toContain('closest to its limit: axle 1,');
  });

  test('counts the assumptions', () => {
    const assumption = { path: ['van', 'fuel'], text: say`full` };
    const text = (assumed: number) =>
      renderTerminal(reportOf({ assumptions: Array.from({ length: assumed }, () => assumption) }), plain);
    expect(text(0)).not.toContain('assumed');
    expect(text(1)).toContain('1 value is assumed: run with --assumptions to see it\n');
    expect(text(2)).toContain('2 values are assumed: run with --assumptions to see them\n');
  });
});
