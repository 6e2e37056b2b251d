import type { Refusal } from './quantity.ts';
import { quote } from './quote.ts';

const number = '[+-]?(?:\\d+(?:\\.\\d+)?|\\.\\d+)';
const unit = '[\\p{L}%](?:[\\p{L}\\d²³/^]*[\\p{L}\\d²³])?';
const fractions: ReadonlyMap<string, number> = new Map([
  ['½', 0.5],
  ['¼', 0.25],
  ['¾', 0.75],
  ['⅛', 0.125],
  ['⅜', 0.375],
  ['⅝', 0.625],
  ['⅞', 0.875],
]);

interface Words {
  readonly is: string;
  readonly expected: string;
}

interface Habit {
  readonly pattern: RegExp;
  /** Undefined where the text is that of the pattern by chance. */
  readonly say: (parts: readonly string[]) => Words | undefined;
}

/** Ways to write a quantity that are common on paper and mean nothing here, with what to write instead. */
const habits: readonly Habit[] = [
  {
    pattern: /^([+-]?(?:\d{1,3}(?:[\s'’_.]\d{3})+|\d+)),(\d+)(?!\d|,\d)(.*)$/s,
    say: ([whole = '', decimals = '', rest = '']) => {
      const digits = whole.replace(/[\s'’_.]/g, '');
      const asDecimal = `\`${digits}.${decimals}${rest}\``;
      const ambiguous = decimals.length === 3 && digits === whole && Number(digits) !== 0;
      return {
        is: 'has a comma in the number',
        expected: ambiguous
          ? `\`${digits}${decimals}${rest}\` if the comma parts the thousands, ${asDecimal} if it is the decimal point`
          : `a decimal point: ${asDecimal}`,
      };
    },
  },
  {
    pattern: /^([+-]?\d{1,3}(?:[\s,'’_]\d{3})+(?:\.\d+)?)(?!\d)(.*)$/s,
    say: ([digits = '', rest = '']) => ({
      is: 'has something between the thousands',
      expected: `the digits alone: \`${digits.replace(/[^\d.+-]/g, '')}${rest}\``,
    }),
  },
  {
    // With a plain hyphen it is a range only where a subtraction would make no sense: `3-4 kg`, not `4 m - 3 m`.
    pattern: new RegExp(`^(${number})()\\s*-\\s*(${number})\\s*(${unit})$`, 'su'),
    say: (ends) => (Number(ends[0]) < Number(ends[2]) ? rangeOf(ends) : undefined),
  },
  {
    pattern: new RegExp(
      `^(${number})\\s*(${unit})?\\s*(?:[–—…]|\\.\\.+|to)\\s*(${number})\\s*(${unit})?$`,
      'su',
    ),
    say: rangeOf,
  },
  {
    pattern: /^([+-]?\d+)(?:\s+|-(?=\d+\/\d+\s*[^\s\d]))(\d+)\s*\/\s*(\d+)(?!\d)\s*(.*)$/s,
    say: ([whole = '', above = '', below = '', rest = '']) =>
      decimal(Number(whole) + Number(above) / Number(below), rest),
  },
  {
    pattern: new RegExp(`^([+-]?\\d*)\\s*([${[...fractions.keys()].join('')}])\\s*(.*)$`, 's'),
    say: ([whole = '', fraction = '', rest = '']) =>
      decimal(Number(whole) + (fractions.get(fraction) ?? 0), rest),
  },
  {
    pattern: new RegExp(`^(?:[~≈]|c\\.|ca\\.?|circa|about|approx\\.?|around)\\s*(${number}.*)$`, 's'),
    say: ([rest = '']) => ({
      is: 'is not exact, but does not say by how much',
      expected: `a tolerance, such as \`${rest.trim()} ± 10 %\``,
    }),
  },
  {
    pattern: /^(\d[\d.]*)\s*(?:['′’]|ft|feet)\s*(\d[\d.]*)\s*(?:["″”]|''|in|inches)?$/s,
    say: ([feet = '', inches = '']) => ({
      is: 'is in feet and inches',
      expected: `the two added up: \`${feet} ft + ${inches} in\``,
    }),
  },
  {
    pattern: /(?<![\p{L}\d_.])[\d.]+\s*[x×]\s*\d|[\p{L}\d)]\s*×/u,
    say: () => ({
      is: 'has a multiplication sign that is not known here',
      expected: '`*` to multiply, such as `2 * 4 kg`; of several sizes, each has a key of its own',
    }),
  },
  {
    pattern: new RegExp(`^(${number}\\s*\\p{L}+)\\s+(${number}\\s*\\p{L}+)$`, 'su'),
    say: ([large = '', small = '']) => ({
      is: 'has two units',
      expected: `the two added up: \`${large} + ${small}\``,
    }),
  },
];

/** Both ends and their units: the first may stand bare before the second. */
function rangeOf([from = '', fromUnit = '', to = '', toUnit = '']: readonly string[]): ReturnType<
  Habit['say']
> {
  const half = (Number(to) - Number(from)) / 2;
  const round = (value: number) => Number(value.toPrecision(12));
  const as = toUnit || fromUnit;
  const same = fromUnit === '' || fromUnit === toUnit;
  return {
    is: 'is a range',
    expected:
      same && half > 0 && as !== ''
        ? `its middle with a tolerance: \`${round(Number(from) + half)} ${as} ± ${round(half)} ${as}\``
        : 'its middle with a tolerance, such as `38 kg ± 2 kg`',
  };
}

function decimal(value: number, rest: string): Words {
  return Number.isFinite(value)
    ? { is: 'has a fraction in the number', expected: `a decimal: \`${value} ${rest.trim()}\`` }
    : { is: 'has a fraction in the number', expected: 'a decimal, such as `1.5 in`' };
}

/** What to write instead of a text that follows one of those habits. */
export function refusalOfHabit(text: string): Refusal | undefined {
  for (const { pattern, say } of habits) {
    const match = pattern.exec(text);
    const words = match && say(match.slice(1).map((part) => part ?? ''));
    if (words) return { message: `${quote(text)} ${words.is}`, expected: words.expected };
  }
  return undefined;
}
