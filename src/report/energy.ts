import type { EnergyOverview, OverviewLoad, OverviewMonth } from '../engine/energy-overview.ts';
import { energyWh, share } from '../engine/measure.ts';
import { formatMeasure, renderPhrase } from './format-measure.ts';
import { type Pen, penOf } from './pen.ts';
import { distinct } from './summary.ts';
import { type Cell, type Column, columnWidths, fitted, renderTable } from './table.ts';
import { visible } from './visible.ts';
import { hanging, underlined, wrapped } from './wrap.ts';

export interface EnergyOptions {
  /** The terminal's columns; no line is longer. */
  readonly width: number;
  readonly colour: boolean;
}

/** Terminals from here on get the nights too, and the whole names of the months. */
const wideFrom = 90;
const longestBar = 30;
const gap = 2;

/** Writes a year of energy for a terminal. Ends with a line break. */
export function renderEnergy(overview: EnergyOverview, { width, colour }: EnergyOptions): string {
  const pen = penOf(colour);
  const { units } = overview;
  const say = (phrase: EnergyOverview['place']): string => visible(renderPhrase(phrase, units));
  const paragraphs = [
    [
      ...headline(`Energy of ${visible(overview.name)}`, '═', pen, width),
      ...wrapped(say(overview.place), width),
    ],
    monthLines(overview.months, pen, width),
    legendLines(overview.months, pen, width),
    [
      ...headline('What the loads take on a day, Wh', '─', pen, width),
      ...loadLines(overview.loads, pen, width),
    ],
    [
      ...headline('What would close the year', '─', pen, width),
      ...wrapped(say(overview.outcome), width),
      ...(overview.changes.length > 0 ? wrapped('Each by itself, worked out anew:', width) : []),
      ...overview.changes.flatMap((change) => hanging(`- ${say(change)}`, 2, width)),
    ],
    [
      ...headline('Assumed', '─', pen, width),
      ...overview.assumptions.flatMap((text) => hanging(`- ${say(text)}`, 2, width)),
    ],
    [
      pen.caution('Caution'),
      ...distinct(overview.cautions).flatMap((text) => hanging(`- ${visible(text)}`, 2, width)),
    ],
  ];
  return `${paragraphs.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function headline(text: string, rule: string, pen: Pen, width: number): string[] {
  const heading = underlined(text, rule, width);
  return [...heading.title, heading.rule].map(pen.strong);
}

const number = (wattHours: number): string =>
  formatMeasure(energyWh(Math.round(wattHours)), 'metric', 0).replace(/ Wh$/, '');
const falls = '↓';
const dullMark = '*';
/** More is as good as endless. */
const mostNights = 99;

function monthLines(months: readonly OverviewMonth[], pen: Pen, width: number): string[] {
  const wide = width >= wideFrom;
  const right = (heading: string): Column => ({ heading, align: 'right' });
  const columns: Column[] = [
    { heading: '', align: 'left' },
    right('sun kWh/m²'),
    right('array Wh'),
    right('other Wh'),
    right('loads Wh'),
    right('short Wh'),
    right('lowest'),
    ...(wide ? [right('nights')] : []),
  ];
  const rows = months.map((month): Cell[] => [
    { text: wide ? month.name : month.name.slice(0, 3) },
    { text: month.sunKWhM2.toFixed(2) },
    { text: number(month.arrayWh) },
    { text: number(month.otherWh) },
    { text: number(month.loadsWh) },
    {
      text: shortText(month),
      ...(month.shortWh > 0 && { paint: pen.verdict[month.dullOnly ? 'warn' : 'fail'] }),
    },
    { text: `${formatMeasure(share(month.lowest), 'metric', 0)}${month.runsDown ? ` ${falls}` : ''}` },
    ...(wide ? [{ text: nightsText(month.nights) }] : []),
  ]);
  // Headings of two words may take two lines; what is under them may not.
  const widths = columnWidths(
    columns.map(({ heading, align }) => ({ align, heading: longestWord(heading) })),
    rows,
  );
  const taken = widths.reduce((sum, each) => sum + each + gap, 0);
  const barWidth = Math.max(1, Math.min(longestBar, width - taken));
  return renderTable(
    [...columns, { heading: 'usual day', align: 'left' }],
    rows.map((row, at) => [...row, { text: barOf(months[at], barWidth) }]),
    [...widths, barWidth],
    pen.faint,
  );
}

const longestWord = (text: string): string =>
  text.split(' ').reduce((longest, word) => (word.length > longest.length ? word : longest), '');

/** What is short never looks like nothing. */
const shortText = ({ shortWh, dullOnly }: OverviewMonth): string =>
  shortWh === 0 ? '–' : `${number(Math.max(1, shortWh))}${dullOnly ? dullMark : ''}`;

const nightsText = (nights: number): string =>
  nights > mostNights ? `> ${mostNights}` : (Math.floor(10 * nights + 1e-9) / 10).toFixed(1);

/** How much of the loads the sources bring on a usual day: a full bar is all of it or more. */
export function barOf(month: OverviewMonth | undefined, width: number): string {
  if (!month) return '';
  const { arrayWh, otherWh, loadsWh } = month;
  const part = loadsWh > 0 ? Math.min(1, (arrayWh + otherWh) / loadsWh) : 1;
  // A bar that is not full must not look full.
  const filled = Math.floor(part * width + 1e-9);
  return '█'.repeat(filled) + '░'.repeat(width - filled);
}

function legendLines(months: readonly OverviewMonth[], pen: Pen, width: number): string[] {
  const text = [
    'sun, array, other and loads: a usual day of the month; other: driving and hook-ups, as far as they are drawn; short: what the loads miss in the whole month; lowest: charge of the battery; bar: the part of the loads that a usual day brings.',
    ...(width >= wideFrom ? ['Nights: on a full battery alone.'] : []),
    ...(months.some(({ shortWh, dullOnly }) => shortWh > 0 && dullOnly)
      ? [`${dullMark} only in the dull days at the end of the month.`]
      : []),
    ...(months.some(({ runsDown }) => runsDown)
      ? [`${falls} the battery falls from one usual day to the next.`]
      : []),
  ].join(' ');
  return wrapped(text, width).map(pen.faint);
}

function loadLines(loads: readonly OverviewLoad[], pen: Pen, width: number): string[] {
  const sum = (read: (load: OverviewLoad) => number): number =>
    loads.reduce((total, load) => total + read(load), 0);
  const columns: Column[] = [
    { heading: 'load', align: 'left' },
    { heading: 'when', align: 'left' },
    { heading: 'summer', align: 'right' },
    { heading: 'winter', align: 'right' },
  ];
  const row = (name: string, when: string, summerWh: number, winterWh: number): Cell[] => [
    { text: visible(name) },
    { text: when },
    { text: number(summerWh) },
    { text: number(winterWh) },
  ];
  const rows = [
    ...loads.map(({ name, when, summerWh, winterWh }) => row(name, when, summerWh, winterWh)),
    row(
      'all',
      '',
      sum(({ summerWh }) => summerWh),
      sum(({ winterWh }) => winterWh),
    ),
  ];
  return renderTable(columns, rows, fitted(columnWidths(columns, rows), width), pen.faint);
}
