import stringWidth from 'fast-string-width';
import { visible } from './visible.ts';

/** A line that is only in the one text or only in the other, with its number there. */
export interface ChangedLine {
  readonly sign: '-' | '+';
  readonly number: number;
  readonly text: string;
}

/** The lines in which two texts differ, those of the first before those of the second at each place. */
export function changedLines(before: string, after: string): ChangedLine[] {
  const [old, young] = [before.split(/\r?\n/), after.split(/\r?\n/)];
  const most = Math.min(old.length, young.length);
  let head = 0;
  while (head < most && old[head] === young[head]) head += 1;
  let tail = 0;
  while (tail < most - head && old.at(-1 - tail) === young.at(-1 - tail)) tail += 1;
  return between(old.slice(head, old.length - tail), young.slice(head, young.length - tail), head);
}

/** By the longest common part; there are few lines left between the first change and the last. */
function between(old: readonly string[], young: readonly string[], offset: number): ChangedLine[] {
  const common = Array.from({ length: old.length + 1 }, () => new Array<number>(young.length + 1).fill(0));
  const at = (i: number, j: number): number => common[i]?.[j] ?? 0;
  for (let i = old.length - 1; i >= 0; i -= 1)
    for (let j = young.length - 1; j >= 0; j -= 1) {
      const row = common[i];
      if (row) row[j] = old[i] === young[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
    }
  const lines: ChangedLine[] = [];
  for (let [i, j] = [0, 0]; i < old.length || j < young.length; ) {
    if (i < old.length && j < young.length && old[i] === young[j]) {
      i += 1;
      j += 1;
    } else if (i < old.length && (j === young.length || at(i + 1, j) >= at(i, j + 1))) {
      lines.push({ sign: '-', number: offset + i + 1, text: old[i] ?? '' });
      i += 1;
    } else {
      lines.push({ sign: '+', number: offset + j + 1, text: young[j] ?? '' });
      j += 1;
    }
  }
  return lines;
}

const gutter = 8;

/** The lines for a terminal; of a long one, the part around its first change. */
export function renderChangedLines(lines: readonly ChangedLine[], width: number): string[] {
  return lines.map((line, index) => {
    const number = `${String(line.number).padStart(gutter - 3)} ${line.sign} `;
    return number + around(line.text, firstChange(lines, index), width - gutter);
  });
}

/** Where a line begins to differ from the one that it replaces, or that replaces it. */
function firstChange(lines: readonly ChangedLine[], index: number): number {
  const line = lines[index];
  const old = lines.filter(({ sign }) => sign === '-');
  const young = lines.filter(({ sign }) => sign === '+');
  const [own, others] = line?.sign === '-' ? [old, young] : [young, old];
  const other = others[line ? own.indexOf(line) : -1]?.text ?? '';
  const text = line?.text ?? '';
  let at = 0;
  while (at < text.length && text[at] === other[at]) at += 1;
  return at;
}

function around(text: string, change: number, width: number): string {
  const shown = visible(text).trimEnd();
  if (stringWidth(shown) <= width) return shown;
  const lead = Math.max(0, Math.min(change - Math.floor(width / 3), text.length - width + 2));
  const from = lead > 0 ? wholeCharacter(text, lead) : 0;
  const start = from > 0 ? '…' : '';
  let to = Math.min(text.length, from + width - 1);
  while (to > from && stringWidth(start + visible(text.slice(from, to))) > width - 1) to -= 1;
  return `${start}${visible(text.slice(from, wholeCharacter(text, to)))}${to < text.length ? '…' : ''}`;
}

const wholeCharacter = (line: string, offset: number): number =>
  /[\uDC00-\uDFFF]/.test(line[offset] ?? '') ? offset - 1 : offset;
