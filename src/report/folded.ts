import stringWidth from 'fast-string-width';
import { outdented } from './wrap.ts';

/** What stands in front of a line of a plan that is shown, and of the marks below it. */
const gutter = /^ *\d* \| /;
const marks = /^ *\| *\^+$/;

/**
 * Folds what is complained of for a terminal of so many columns: sentences between their words, and of a line of the plan
 * that is too long the part around its marks. Elsewhere such lines are left whole, for the programs that read them.
 */
export function folded(text: string, width: number): string {
  const lines = text.split('\n');
  const shown: string[] = [];
  for (let at = 0; at < lines.length; at += 1) {
    const line = lines[at] ?? '';
    const below = lines[at + 1];
    if (gutter.test(line) && below !== undefined && marks.test(below)) {
      shown.push(...excerptFor(line, below, width));
      at += 1;
    } else shown.push(...(stringWidth(line) <= width ? [line] : sentence(line, width)));
  }
  return shown.join('\n');
}

function sentence(line: string, width: number): string[] {
  const lead = /^ */.exec(line)?.[0] ?? '';
  return outdented(line.slice(lead.length), 2, width - lead.length).map((each) => lead + each);
}

/** How much of the line is shown in front of its marks. */
const before = 20;

function excerptFor(line: string, below: string, width: number): string[] {
  if (Math.max(stringWidth(line), below.length) <= width) return [line, below];
  const lead = gutter.exec(line)?.[0] ?? '';
  const room = width - lead.length;
  const marked = below.slice(lead.length);
  const start = marked.indexOf('^');
  const from = Math.max(0, start + Math.min(marked.length - start, room - before - 2) + before - room + 1);
  const { text, skipped } = part(line.slice(lead.length), from, room);
  return [lead + text, (below.slice(0, lead.length) + marked.slice(skipped)).slice(0, width)];
}

/** The part of a line that begins about so many columns in and takes no more than there is room for. */
function part(line: string, from: number, room: number): { readonly text: string; readonly skipped: number } {
  let skipped = 0;
  let taken = from > 0 ? '…' : '';
  for (const character of line) {
    const columns = stringWidth(character);
    // The sign that something was left out takes the place of one column.
    if (skipped < from + (from > 0 ? 1 : 0)) skipped += columns;
    else if (stringWidth(taken) + columns < room) taken += character;
    else return { text: `${taken.trimEnd()}…`, skipped: from > 0 ? skipped - 1 : 0 };
  }
  return { text: taken, skipped: from > 0 ? skipped - 1 : 0 };
}
