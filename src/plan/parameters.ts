import type { PlanDocument } from './document.ts';
import type { Problem } from './problem.ts';
import { type Calculate, type Measured, needsCalculator, type Refusal, readMeasured } from './quantity.ts';
import { parseUnit } from './units.ts';

export type Calculator = Pick<typeof import('./calculator.ts'), 'calculatorOver' | 'namesIn'>;
export type Parameters = ReadonlyMap<string, Measured>;

interface Evaluated {
  readonly parameters: Parameters;
  readonly problems: readonly Problem[];
  /** Some parameter is an expression and there was no calculator yet. */
  readonly needsCalculator: boolean;
}

/** The plan's `params`, each evaluated after those it refers to. */
export function evaluateParameters(document: PlanDocument, calculator: Calculator | undefined): Evaluated {
  const written = paramsOf(document.data);
  if (written === undefined) return { parameters: new Map(), problems: [], needsCalculator: false };
  const parameters = new Map<string, Measured>();
  const problems: Problem[] = [];
  const spoilt = new Set<string>();
  let calculatorMissing = false;

  const complain = (name: string, refusal: Refusal) => {
    spoilt.add(name);
    const { message, expected, meant } = refusal;
    problems.push({
      message: `param ${name} ${message}`,
      span: document.spanOf(['params', name]),
      ...(expected === undefined ? {} : { expected }),
      ...(meant === undefined ? {} : { meant }),
    });
  };

  const evaluate = (name: string, trail: readonly string[]): void => {
    if (parameters.has(name) || spoilt.has(name)) return;
    if (trail.includes(name)) {
      const circle = [...trail.slice(trail.indexOf(name)), name];
      complain(name, {
        message: `goes round in a circle: ${circle.join(' → ')}`,
        expected: 'a value in one of them',
      });
      for (const other of circle) spoilt.add(other);
      return;
    }
    const raw = written.get(name);
    const nameRefusal = refusalOfName(name);
    if (nameRefusal) {
      complain(name, nameRefusal);
      return;
    }
    if (typeof raw !== 'string' && typeof raw !== 'number') {
      complain(name, {
        message: 'is not one value',
        expected: 'a quantity, such as `4 kg`, or a number',
      });
      return;
    }
    const text = String(raw);
    for (const used of calculator?.namesIn(text) ?? []) {
      if (written.has(used)) evaluate(used, [...trail, name]);
    }
    if (spoilt.has(name)) return;
    const calculate: Calculate = calculator ? calculator.calculatorOver(parameters) : needsCalculator;
    const reading = readMeasured(text, calculate);
    if (reading.ok) parameters.set(name, reading.value);
    else if (reading.refusal.needsCalculator) calculatorMissing = true;
    // A parameter that uses a spoilt one has no trouble of its own.
    else if ((calculator?.namesIn(text) ?? []).some((used) => spoilt.has(used))) spoilt.add(name);
    else complain(name, reading.refusal);
  };

  for (const name of written.keys()) evaluate(name, []);
  if (isRecord(document.data) && !isRecord(document.data.params)) {
    problems.push({
      message: 'params should be a section with keys of its own',
      span: document.spanOf(['params']),
      expected: 'such as `params: {shelf_mass: 4 kg}`',
    });
  }
  return { parameters, problems, needsCalculator: calculatorMissing };
}

function paramsOf(data: unknown): ReadonlyMap<string, unknown> | undefined {
  if (!isRecord(data) || data.params === undefined) return undefined;
  return new Map(isRecord(data.params) ? Object.entries(data.params) : []);
}

function refusalOfName(name: string): Refusal | undefined {
  if (!/^[\p{L}_][\p{L}\d_]*$/u.test(name)) {
    return {
      message: 'has a name that cannot be used in an expression',
      expected: 'letters, digits and _ only, such as `shelf_mass`',
    };
  }
  if (
    !('unknown' in parseUnit(name)) ||
    [
      'min',
      'max',
      'round',
      'sqrt',
      'mod',
      'to',
      'and',
      'or',
      'not',
      'xor',
      'true',
      'false',
      'null',
      'undefined',
      'Infinity',
      'NaN',
      'end',
    ].includes(name)
  ) {
    return {
      message: 'has the name of a unit or an operation',
      expected: 'another name, such as `shelf_mass`',
    };
  }
  return undefined;
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
