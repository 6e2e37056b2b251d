import type { PlanDocument } from './document.ts';
import type { Problem } from './problem.ts';
import { type Measured, type Refusal, readMeasured, withoutCalculator } from './quantity.ts';
import { unseenIn } from './quote.ts';
import { sentenceAbout } from './subject.ts';
import { parseUnit } from './units.ts';

export type Calculator = Pick<typeof import('./calculator.ts'), 'calculatorOver' | 'namesIn'>;
export type Parameters = ReadonlyMap<string, Measured>;

export interface Evaluated {
  readonly parameters: Parameters;
  /** The names of those that have a problem, or use one that has. */
  readonly spoilt: ReadonlySet<string>;
  readonly problems: readonly Problem[];
  /** Some parameter is an expression and there was no calculator yet. */
  readonly needsCalculator: boolean;
}

/** The plan's `params`, each evaluated after those it refers to. */
export function evaluateParameters(document: PlanDocument, calculator: Calculator | undefined): Evaluated {
  const problems: Problem[] = [];
  const parameters = new Map<string, Measured>();
  const spoilt = new Set<string>();
  let calculatorMissing = false;
  const complain = (path: readonly string[], { message, expected, meant }: Refusal, onKey = false) => {
    problems.push({
      message: sentenceAbout(path, message),
      span: onKey ? document.keySpanOf(path) : document.spanOf(path),
      ...(expected === undefined ? {} : { expected }),
      ...(meant === undefined ? {} : { meant }),
    });
  };

  const section = isRecord(document.data) ? document.data.params : undefined;
  if (section !== undefined && !isRecord(section)) {
    complain(['params'], {
      message: section === null ? 'has nothing in it' : 'should be a section with keys of its own',
      expected: 'such as `params: {shelf_mass: 4 kg}`',
    });
  }
  const written = new Map(isRecord(section) ? Object.entries(section) : []);
  const uses = (name: string): readonly string[] => {
    const text = textOf(written.get(name));
    const names = text === undefined ? [] : (calculator?.namesIn(text) ?? []);
    // A unit stays a unit, whatever a plan calls its parameters.
    return names.filter((used) => written.has(used) && !refusalOfName(used));
  };

  const spoil = (name: string, refusal: Refusal) => {
    spoilt.add(name);
    complain(['params', name], refusal);
  };
  const circle = (names: readonly string[]) => {
    for (const name of names) spoilt.add(name);
    const [first = ''] = names;
    spoil(first, {
      message: `goes round in a circle: ${[...names, first].join(' → ')}`,
      expected: 'a value in one of them',
    });
  };

  for (const name of afterWhatTheyUse([...written.keys()], uses, circle)) {
    if (spoilt.has(name)) continue;
    const nameRefusal = refusalOfName(name);
    if (nameRefusal) {
      complain(['params', name], nameRefusal, true);
      continue;
    }
    const text = textOf(written.get(name));
    if (text === undefined) {
      spoil(name, {
        message: written.get(name) === null ? 'has no value' : 'is not one value',
        expected: 'a quantity, such as `4 kg`, or a number',
      });
      continue;
    }
    const expressions = calculator
      ? calculator.calculatorOver(parameters, spoilt)
      : withoutCalculator((each) => written.has(each));
    const reading = readMeasured(text, expressions);
    if (reading.ok) parameters.set(name, reading.value);
    else if (reading.refusal.needsCalculator) calculatorMissing = true;
    // A parameter that uses a spoilt one has no trouble of its own.
    else if (reading.refusal.follows) spoilt.add(name);
    else
      spoil(name, { expected: 'a quantity, such as `4 kg` or `2 * thickness + 3 mm`', ...reading.refusal });
  }
  return { parameters, spoilt, problems, needsCalculator: calculatorMissing };
}

/**
 * The names in an order in which each comes after all that it uses; those that go round in a circle, which have no
 * such order, are handed to `circle` first. Walks without recursion, since a chain may be as long as the plan.
 */
function afterWhatTheyUse(
  names: readonly string[],
  uses: (name: string) => readonly string[],
  circle: (names: readonly string[]) => void,
): string[] {
  const order: string[] = [];
  const state = new Map<string, 'open' | 'done'>();
  for (const first of names) {
    const trail: { readonly name: string; readonly waiting: string[] }[] = [];
    const open = (name: string) => {
      state.set(name, 'open');
      trail.push({ name, waiting: [...uses(name)].reverse() });
    };
    if (!state.has(first)) open(first);
    for (let last = trail.at(-1); last !== undefined; last = trail.at(-1)) {
      const next = last.waiting.pop();
      if (next === undefined) {
        state.set(last.name, 'done');
        order.push(last.name);
        trail.pop();
      } else if (state.get(next) === 'open') {
        circle(trail.slice(trail.findIndex(({ name }) => name === next)).map(({ name }) => name));
      } else if (!state.has(next)) open(next);
    }
  }
  return order;
}

const textOf = (raw: unknown): string | undefined => (typeof raw === 'string' ? raw : undefined);

/** Words that mean something within an expression, besides the units. */
const taken = new Set(
  'min max round sqrt mod to in and or not xor true false null undefined Infinity NaN end'.split(' '),
);

function refusalOfName(name: string): Refusal | undefined {
  const unseen = unseenIn(name);
  if (!/^[\p{L}_][\p{L}\d_]{0,59}$/u.test(name) || unseen !== undefined) {
    return {
      message: 'has a name that cannot be used in an expression',
      expected: 'up to 60 letters, digits and _, such as `shelf_mass`',
    };
  }
  if (taken.has(name) || !('unknown' in parseUnit(name))) {
    return {
      message: 'has the name of a unit or an operation',
      expected: 'another name, such as `shelf_mass`',
    };
  }
  return undefined;
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
