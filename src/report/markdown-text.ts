import { visible } from './visible.ts';

/**
 * Plain text as GitHub-flavoured Markdown that reads the same: nothing in it is taken for markup but a key in back
 * quotes, and no `@name` or `#12` in a pull request calls a person or points at an issue.
 */
export const markdownText = (text: string): string =>
  htmlText(text)
    .split(keyInQuotes)
    // Every second part is a key.
    .map((part, at) => (at % 2 === 1 ? part : escaped(part)))
    .join('')
    // At the start of an entry of a list these would begin a heading, another list or a rule.
    .replace(/^[#+\-=]+(?=\s|$)/, '\\$&')
    .replace(/^(\d+)([.)])(?=\s|$)/, '$1\\$2');

const keyInQuotes = /(?<!`)(`[\w.-]+`)(?!`)/;

const escaped = (text: string): string =>
  text
    .replace(/[\\`*_[\]|~$]/g, '\\$&')
    .replace(/([@#])(?=[\p{L}\p{N}])/gu, '$1<!-- -->')
    // What looks like an address would become a link, and take what follows with it.
    .replace(/:(?=\/\/)|www(?=\.)/gi, '$&<!-- -->');

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;' };

/** Plain text within HTML, where Markdown is not read. */
const htmlText = (text: string): string =>
  visible(text)
    .trim()
    .replace(/[&<>]/g, (sign) => entities[sign] ?? sign);

/** A name of the plan or of a check as code, where it is plain enough for that. */
export const markdownCode = (name: string): string =>
  /^[\w.-]+$/.test(name) ? `\`${name}\`` : markdownText(name);

export interface MarkdownColumn {
  readonly heading: string;
  readonly align: 'left' | 'right';
}

/** A table of cells that are Markdown already. */
export const markdownTable = (
  columns: readonly MarkdownColumn[],
  rows: readonly (readonly string[])[],
): string[] => [
  rowText(columns.map(({ heading }) => heading)),
  rowText(columns.map(({ align }) => (align === 'right' ? '---:' : '---'))),
  ...rows.map((row) => rowText(columns.map((_, at) => row[at] ?? ''))),
];

const rowText = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

/** Lines of Markdown that a reader opens with a click; the heading is plain text. */
export const folded = (heading: string, lines: readonly string[]): string[] => [
  `<details><summary>${htmlText(heading)}</summary>`,
  '',
  ...lines,
  '',
  '</details>',
];
