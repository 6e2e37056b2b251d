import fc from 'fast-check';
import { micromark } from 'micromark';
import { gfm, gfmHtml } from 'micromark-extension-gfm';
import { describe, expect, test } from 'vitest';
import { say } from '../../src/engine/phrase.ts';
import { renderMarkdown } from '../../src/report/markdown.ts';
import { markdownText } from '../../src/report/markdown-text.ts';
import { visible } from '../../src/report/visible.ts';
import { findingOf, massCaution, noteOf, reportOf, smallReport } from './fixtures.ts';
import { nastyReport, nastyText } from './nasty-report.ts';

const html = (markdown: string): string =>
  micromark(markdown, { extensions: [gfm()], htmlExtensions: [gfmHtml()], allowDangerousHtml: true });

const entities: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"' };

/** What a reader sees of a page, with what parts words in it but for the count of spaces. */
const seen = (page: string): string =>
  page
    .replace(/<!--.*?-->/gs, '')
    .replace(/<br>/g, ' ')
    .replace(/<[^>]*>/g, '')
    .replace(/&(lt|gt|amp|quot);/g, (_, name: string) => entities[name] ?? '')
    .replace(/\s+/gu, ' ')
    .trim();

describe('text of the plan', () => {
  const asItIs = (text: string) =>
    visible(text)
      .replace(/\s+/gu, ' ')
      .replace(/(?<!`)`([\w.-]+)`(?!`)/g, '$1')
      .trim();
  const markup = fc
    .array(
      fc.constantFrom(
        ...'*_`~[](){}<>!|\\#@&$-+=.:/"\' 1a',
        '<!--',
        '`van.max_mass`',
        '-->',
        '</details>',
        '&lt;',
        '1. ',
        '- ',
        '---',
      ),
      { maxLength: 12 },
    )
    .map((parts) => parts.join(''));

  test.each([
    ['in a cell', (text: string) => `| ${text} |\n| --- |\n| x |\n`, / ?x$/],
    ['in an entry of a list', (text: string) => `- ${text}\n- x`, / ?x$/],
  ])('reads as it is %s', (_, page, end) => {
    fc.assert(
      fc.property(fc.oneof(markup, nastyText), (text) => {
        expect(seen(html(page(markdownText(text)))).replace(end, '')).toBe(asItIs(text));
      }),
      { numRuns: 500 },
    );
  });

  test('calls no person and points at no issue', () => {
    expect(markdownText('for @robin, see #12')).toBe('for @<!-- -->robin, see #<!-- -->12');
  });

  test('a key in back quotes is code', () => {
    expect(markdownText('add `van.max_mass`, not `a b`')).toBe('add `van.max_mass`, not \\`a b\\`');
  });

  test('numbers stay as they are', () => {
    expect(['-51 kg', '1.5 %', '2,240 kg'].map(markdownText)).toEqual(['-51 kg', '1.5 %', '2,240 kg']);
  });
});

test('every row of every table has as many cells as its head, whatever the plan calls its things', () => {
  fc.assert(
    fc.property(nastyReport, (report) => {
      const text = renderMarkdown(report);
      const tables = text
        .split(/\n(?!\|)/)
        .map((block) => block.split('\n').filter((line) => line.startsWith('|')));
      for (const rows of tables.filter((each) => each.length > 0)) {
        const widths = rows.map((row) => row.replace(/\\./g, '').split('|').length);
        expect(new Set(widths).size).toBe(1);
      }
      expect(html(text).match(/<details>/g)?.length).toBe(html(text).match(/<\/details>/g)?.length);
    }),
    { numRuns: 60 },
  );
});

test('says the sums first, then what is no pass, and the cautions', () => {
  expect(renderMarkdown(smallReport)).toMatchInlineSnapshot(`
    "## Curlew, revision 4

    **1 fail, 1 warn, 1 not checked, 1 pass** (curlew.yaml, codes: uk, units: metric)

    Furthest past its limit: van, 103 % of 3,500 kg, 112 kg over (mass.total)

    ### Mass

    1 fail, 0 warn, 1 not checked, 0 pass

    | verdict | what | measured | limit | check | where |
    | --- | --- | ---: | ---: | --- | --- |
    | **fail** | **van**: The van weighs 3,612 kg, 112 kg more than its plate allows.<br>*State:* fresh full, waste empty, 2 aboard, stores full<br>*Do:* Leave out 112 kg, or carry less water. | 3,612 ± 24 kg | at most 3,500 kg | \`mass.total\` | curlew.yaml:5:3 |
    | **not checked** | **van**: The plan does not say what is to be kept free. Missing: van.reserve. |  |  | \`mass.reserve\` | curlew.yaml:4:1 |

    ### Balance

    0 fail, 1 warn, 0 not checked, 1 pass

    | verdict | what | measured | limit | check | where |
    | --- | --- | ---: | ---: | --- | --- |
    | **warn** | **rear axle**: The rear axle carries 2,155 kg and may carry 2,240 kg, but the masses in the plan are not sure enough to tell.<br>*State:* fresh full, waste empty, 2 aboard, stores full<br>*Do:* Weigh the heaviest fixtures, or move 20 kg ahead of the rear axle.<br>*Assumes:* the driver weighs 75 kg | 2,155 ± 90 kg | at most 2,240 kg | \`balance.rear-axle\` | curlew.yaml:6:38 |

    <details><summary>1 pass</summary>

    | what | measured | limit | check | where |
    | --- | ---: | ---: | --- | --- |
    | **front axle**: The front axle carries 40 % of the van. | 40 % | at least 25 % | \`balance.front-share\` | curlew.yaml:8:3 |

    </details>

    ### Caution

    - Have the finished van weighed, axle by axle, before it goes on the road; only the weighbridge and the plate count.
    - How a laden van handles depends on more than these numbers; a qualified person must judge a van near a limit.

    <details><summary>2 assumed values</summary>

    - the driver weighs 75 kg (curlew.yaml:13:5)
    - diesel is taken as full (curlew.yaml)

    </details>
    "
  `);
});

test('shows chosen topics only, and says what it leaves out', () => {
  const text = renderMarkdown(smallReport, { only: ['balance'] });
  expect(text).toContain('**0 fail, 1 warn, 0 not checked, 1 pass**');
  expect(text).toContain('In topics not shown: 1 fail, 0 warn, 1 not checked, 0 pass.');
  expect(text).not.toContain('### Mass');
});

test('folds tables of information, and never their cautions', () => {
  const text = renderMarkdown(reportOf({ notes: [noteOf({ rows: [[say`a`]], cautions: [massCaution] })] }));
  expect(text.slice(text.lastIndexOf('</details>'))).toContain(`- ${massCaution}`);
});

test('a heading that is folded is no Markdown, and no HTML of the plan', () => {
  const text = renderMarkdown(reportOf({ notes: [noteOf({ title: 'a_b & <c>' })] }));
  expect(seen(html(text))).toContain('a_b & <c>');
});

test('a waiver stands beside what it covers', () => {
  const waived = {
    as: 'waived',
    reason: 'until spring',
    by: 'Robin',
    until: '2027-03-01',
    path: ['waivers', 0],
  } as const;
  const text = renderMarkdown(reportOf({ findings: [findingOf({ verdict: 'fail', waived })] }));
  expect(text).toContain('**fail, waived**');
  expect(text).toContain('*Waiver:* waived until 2027-03-01 by Robin: until spring');
});
