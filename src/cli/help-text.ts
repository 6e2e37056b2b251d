import stringWidth from 'fast-string-width';
import { wrapped } from '../report/wrap.ts';

/**
 * What stands below the options in a command's help, as wide as the terminal: paragraphs are filled anew, and indented
 * lines stay by themselves, since they are there to be copied.
 */
export const helpText = (text: string, { width }: { readonly width: number }): string =>
  text
    .split('\n\n')
    .map((paragraph) => filled(paragraph, width).join('\n'))
    .join('\n\n');

function filled(paragraph: string, width: number): string[] {
  const lines: string[] = [];
  let prose: string[] = [];
  const endProse = () => {
    if (prose.length > 0) lines.push(...wrapped(prose.join(' '), width));
    prose = [];
  };
  for (const line of paragraph.split('\n')) {
    if (line !== '' && !line.startsWith(' ')) {
      prose.push(line);
      // What stands below it is a list.
      if (!line.endsWith(':')) continue;
    }
    endProse();
    if (line === '' || line.startsWith(' ')) lines.push(...copyable(line, width));
  }
  endProse();
  return lines;
}

/** A line of a shell that is too long goes on in the next one, as a shell reads it; a label stands above its command. */
function copyable(line: string, width: number): string[] {
  if (stringWidth(line) <= width) return [line];
  const [, label, command] = /^( *\S.*?) {2,}(\S.*)$/.exec(line) ?? [];
  if (label !== undefined && command !== undefined) return [label, ...copyable(`    ${command}`, width)];
  const lines = wrapped(line.trim(), width - '    '.length - ' \\'.length);
  return lines.map((part, at) => `${at === 0 ? '  ' : '    '}${part}${at < lines.length - 1 ? ' \\' : ''}`);
}
