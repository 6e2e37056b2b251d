import type { Picture, Thing } from '../../build/picture/model.ts';
import { formatMeasure } from '../format-measure.ts';
import type { Pen } from '../pen.ts';
import { type Column, columnWidths, fitted, naturalWidth, renderTable } from '../table.ts';
import { visible } from '../visible.ts';
import { hanging } from '../wrap.ts';

const columns: readonly Column[] = [
  { heading: '', align: 'left' },
  { heading: '', align: 'left' },
  { heading: 'length', align: 'right' },
  { heading: 'width', align: 'right' },
  { heading: 'height', align: 'right' },
  { heading: 'from front', align: 'right' },
  { heading: 'from left', align: 'right' },
  { heading: 'above floor', align: 'right' },
];

/** A table whose names would be wrapped in less than this becomes a list. */
const narrowestName = 20;

/** What each key stands for: its name, its size and where it stands. A thing without room for a key has a blank. */
export function legendLines(
  things: readonly Thing[],
  keys: ReadonlyMap<string, string>,
  { units }: Pick<Picture, 'units'>,
  pen: Pen,
  width: number,
): string[] {
  if (things.length === 0) return [];
  const texts = things.map((thing) => ({
    key: keys.get(thing.id) ?? '',
    name: visible(thing.name) + (thing.remark === '' ? '' : ` (${visible(thing.remark)})`),
    measures: [...thing.size, ...thing.place].map((measure) =>
      measure ? formatMeasure(measure, units) : '',
    ),
  }));
  const rows = texts.map(({ key, name, measures }) => [
    { text: key, paint: pen.strong },
    { text: name },
    ...measures.map((text) => ({ text })),
  ]);
  const widths = columnWidths(columns, rows);
  const nameWidth = widths[1] ?? 0;
  if (naturalWidth(widths) - nameWidth + Math.min(nameWidth, narrowestName) <= width)
    return renderTable(columns, rows, fitted(widths, width), pen.faint);
  const indent = 3;
  return texts.flatMap(({ key, name, measures }) => {
    const [length, wide, height, ...place] = measures;
    const size = [length, wide, height].filter((text) => text !== '').join(' × ');
    const where = place.flatMap((text, axis) =>
      text === '' ? [] : [`${text} ${columns[axis + 5]?.heading ?? ''}`],
    );
    const [first = '', ...rest] = hanging(
      `${key.padEnd(indent)}${[`${name}: ${size}`, ...where].join(', ')}`,
      indent,
      width,
    );
    return [pen.strong(first.slice(0, indent)) + first.slice(indent), ...rest];
  });
}
