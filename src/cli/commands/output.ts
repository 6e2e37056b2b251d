import { Option } from 'commander';
import { nearest } from '../../plan/nearest.ts';
import { quote } from '../../plan/quote.ts';
import { type Format, formats } from '../../report/format.ts';
import { visible } from '../../report/visible.ts';

/** What a command line may say of the output's format, as commander hands it over. */
export interface WrittenFormat {
  readonly format: readonly string[];
  readonly json: boolean;
  readonly markdown: boolean;
}

/** The options of a command that can write in several formats. */
export const formatOptions = (): readonly Option[] => [
  new Option('--format <format>', `how to write it: ${formats.join(', ')}`)
    .choices(formats)
    // Ours speaks of what was meant, and knows when two formats are asked for.
    .argParser((given: string, before: readonly string[]): readonly string[] => [...before, given])
    .default([]),
  new Option('--json', 'short for --format json').default(false),
  new Option('--markdown', 'short for --format markdown').default(false),
];

/** The format that is asked for, or what to complain of. */
export function chosenFormat({
  format,
  json,
  markdown,
}: WrittenFormat): { readonly format: Format } | { readonly wrong: string } {
  const ways = [
    ...format.map((name) => ({ name, written: `--format ${name}` })),
    ...(json ? [{ name: 'json', written: '--json' }] : []),
    ...(markdown ? [{ name: 'markdown', written: '--markdown' }] : []),
  ];
  const unknown = ways.find(({ name }) => !formats.some((each) => each === name));
  if (unknown) {
    const meant = nearest(unknown.name, formats);
    return {
      wrong: `${visible(quote(unknown.name))} is not a format\n${meant === undefined ? '' : `  did you mean: ${meant}\n`}  expected: one of ${formats.join(', ')}\n`,
    };
  }
  const [first, ...others] = ways;
  const other = others.find(({ name }) => name !== first?.name);
  if (first && other) return contradiction(first.written, other.written, 'each asks for another format');
  return { format: formats.find((each) => each === first?.name) ?? 'table' };
}

/** Options that cannot both be meant. */
export const contradiction = (one: string, other: string, why: string): { readonly wrong: string } => ({
  wrong: `\`${one}\` and \`${other}\` contradict each other: ${why}\n  expected: one of the two\n`,
});
