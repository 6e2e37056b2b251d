/**
 * Reads quantities that are expressions, such as `2 * shelf_mass + 3 kg`. This module holds mathjs and is loaded
 * only when a plan needs it.
 *
 * A text is parsed first and walked once: the walk lets nothing pass but plain arithmetic (numbers, units,
 * parameters, + - * / ^ and min, max, round, sqrt) and works out the dimension of the result on the way. Only then
 * is it evaluated, over plain numbers in SI, so nothing else of mathjs can be reached.
 */
import {
  addDependencies,
  create,
  divideDependencies,
  type MathNode,
  maxDependencies,
  minDependencies,
  multiplyDependencies,
  parseDependencies,
  powDependencies,
  roundDependencies,
  sqrtDependencies,
  subtractDependencies,
  unaryMinusDependencies,
  unaryPlusDependencies,
} from 'mathjs/number';
import { nearest } from './nearest.ts';
import {
  type Expressions,
  longestQuantity,
  type Measured,
  type Reading,
  type Refusal,
  refused,
  type SharedError,
  understood,
  unknownUnit,
} from './quantity.ts';
import { quote } from './quote.ts';
import {
  bare,
  combined,
  type Dimension,
  dimensionCalled,
  parseUnit,
  sameDimension,
  unitHints,
  units,
} from './units.ts';

const maxDepth = 20;
const allowed = 'only numbers, units, params, + - * / ^ and min, max, round, sqrt';

/** The functions of an expression, and how many arguments each takes at the most. */
const functions: ReadonlyMap<string, number> = new Map([
  ['min', Infinity],
  ['max', Infinity],
  ['round', 1],
  ['sqrt', 1],
]);

const math = create({
  ...parseDependencies,
  ...addDependencies,
  ...subtractDependencies,
  ...multiplyDependencies,
  ...divideDependencies,
  ...powDependencies,
  ...unaryMinusDependencies,
  ...unaryPlusDependencies,
  ...minDependencies,
  ...maxDependencies,
  ...roundDependencies,
  ...sqrtDependencies,
});

// Any language's letters make a name; mathjs alone would take Latin and Greek ones only.
math.parse.isAlpha = (character) => /[\p{L}_]/u.test(character);

type Parameters = ReadonlyMap<string, Measured>;

/** Makes the reader of expressions over these parameters, already evaluated; `spoilt` are those with a problem. */
export const calculatorOver = (parameters: Parameters, spoilt: ReadonlySet<string>): Expressions => ({
  isParameter: (name) => parameters.has(name) || spoilt.has(name),
  calculate: (text) => calculate(text, parameters, spoilt),
});

/** The names that an expression uses, or undefined when it cannot be parsed. */
export function namesIn(text: string): readonly string[] | undefined {
  const node = parse(text);
  return node && symbolsOf(node);
}

function calculate(text: string, parameters: Parameters, spoilt: ReadonlySet<string>): Reading<Measured> {
  if (text.includes('%')) {
    return refused({
      message: `${quote(text)} has a per cent sign inside an expression`,
      expected: 'the share as a number, such as `0.05`',
    });
  }
  const node = parse(text);
  if (!node) return refused({ message: `${quote(text)} cannot be read as a quantity` });
  if (symbolsOf(node).some((name) => spoilt.has(name)))
    return refused({ message: 'uses a param that has a problem of its own', follows: true });
  const dimension = dimensionOf(node, parameters, 0);
  if (!dimension.ok) return dimension;
  const valueWith = evaluator(node, parameters);
  const value = valueWith();
  if (!Number.isFinite(value)) {
    return refused({
      message: `${quote(text)} has no result`,
      expected: 'no division by zero, no square root of less than nothing, and numbers that are not huge',
    });
  }
  const shared = sharedErrors(node, parameters, valueWith);
  if (!shared.every(({ halfWidth }) => Number.isFinite(halfWidth))) {
    return refused({
      message: `${quote(text)} has no result at the edges of its params' tolerances`,
      expected: 'an expression that has one there too, or smaller tolerances',
    });
  }
  // A param alone stays a temperature on its scale; of sums and products nobody can tell.
  const onScale = isSymbol(node) && parameters.get(node.name)?.onScale === true;
  return understood({ value, halfWidth: 0, shared, dimension: dimension.value, ...(onScale && { onScale }) });
}

// mathjs would read binary and octal numbers, and skip a comment.
const foreign = /(?<![\p{L}\d_.])0[bo]\d|#/iu;

/** In mathjs `in` is also the conversion operator; here it is only ever the inch. */
function parse(text: string): MathNode | undefined {
  if (text.length > longestQuantity || foreign.test(text)) return undefined;
  const spelt = text
    .replace(/(?<![\p{L}_])in(?![\p{L}\d_])/gu, 'inch')
    .replaceAll('²', '2')
    .replaceAll('³', '3')
    .replaceAll('·', '*')
    .replace(/\p{Zs}/gu, ' ');
  try {
    return math.parse(spelt);
  } catch {
    return undefined;
  }
}

/** Works the expression out, with one parameter moved away from its value if asked. */
type ValueWith = (name?: string, moved?: number) => number;

function evaluator(node: MathNode, parameters: Parameters): ValueWith {
  const code = node.compile();
  const values = new Map<string, number>();
  for (const name of symbolsOf(node)) {
    const value = parameters.get(name)?.value ?? unitNamed(name)?.factor;
    if (value !== undefined) values.set(name, value);
  }
  return (name, moved = 0) => {
    const scope = new Map(values);
    if (name !== undefined) scope.set(name, (values.get(name) ?? 0) + moved);
    const result: unknown = code.evaluate(scope);
    return typeof result === 'number' ? result : Number.NaN;
  };
}

/** How the result moves when each parameter used stands at the upper end of its tolerance (central difference). */
function sharedErrors(node: MathNode, parameters: Parameters, valueWith: ValueWith): readonly SharedError[] {
  const errors: SharedError[] = [];
  for (const name of new Set(symbolsOf(node))) {
    const parameter = parameters.get(name);
    if (!parameter) continue;
    const own = parameter.halfWidth > 0 ? [{ source: `params.${name}`, halfWidth: parameter.halfWidth }] : [];
    for (const { source, halfWidth } of [...own, ...parameter.shared]) {
      errors.push({ source, halfWidth: (valueWith(name, halfWidth) - valueWith(name, -halfWidth)) / 2 });
    }
  }
  return errors;
}

/** The dimension of an expression, or why it is none that a plan may use. */
function dimensionOf(node: MathNode, parameters: Parameters, depth: number): Reading<Dimension> {
  if (depth > maxDepth) {
    return refused({
      message: 'is nested too deeply',
      expected: 'fewer brackets; name its parts in `params`',
    });
  }
  if (isConstant(node)) return understood(bare);
  if (isSymbol(node)) {
    const dimension = parameters.get(node.name)?.dimension ?? unitNamed(node.name)?.dimension;
    return dimension ? understood(dimension) : refused(unknownName(node.name, parameters));
  }
  const operation = operationOf(node);
  if (operation === undefined) {
    return refused({ message: `${written(node)} is not plain arithmetic`, expected: allowed });
  }
  // A long sum is a chain of pairs, and not deep to read; brackets are.
  const deeper = depth + (isOperator(node) ? 0 : 1);
  const dimensions: Dimension[] = [];
  for (const operand of operation.operands) {
    const dimension = dimensionOf(operand, parameters, deeper);
    if (!dimension.ok) return dimension;
    dimensions.push(dimension.value);
  }
  return combine(operation, dimensions);
}

interface Operation {
  readonly name: string;
  readonly operands: readonly MathNode[];
}

/** The node as one of the operations that are allowed, with as many operands as it takes. */
function operationOf(node: MathNode): Operation | undefined {
  if (isBracket(node)) return { name: 'alone', operands: [node.content] };
  if (isOperator(node)) {
    const operands = node.args;
    if (operands.length === 1 && (node.op === '-' || node.op === '+')) return { name: 'alone', operands };
    return operands.length === 2 && '+-*/^'.includes(node.op) ? { name: node.op, operands } : undefined;
  }
  if (isCall(node)) {
    const { name } = node.fn;
    const operands = node.args;
    const most = functions.get(name) ?? 0;
    if (operands.length > 0 && operands.length <= most) return { name, operands };
  }
  return undefined;
}

function combine({ name, operands }: Operation, dimensions: readonly Dimension[]): Reading<Dimension> {
  const operand = (index: number) => {
    const node = operands[index];
    return node ? written(node) : '';
  };
  const [left = bare, right = bare] = dimensions;
  switch (name) {
    case 'alone':
      return understood(left);
    case '*':
      return understood(combined(left, right, (a, b) => a + b));
    case '/':
      return understood(combined(left, right, (a, b) => a - b));
    case 'sqrt':
      return understood(combined(left, bare, (a) => a / 2));
    case '^': {
      const [, exponent] = operands;
      if (exponent && isConstant(exponent) && Number.isInteger(exponent.value)) {
        const power = exponent.value;
        return understood(combined(left, bare, (a) => a * power));
      }
      if (sameDimension(left, bare) && sameDimension(right, bare)) return understood(bare);
      return refused({
        message: `${operand(1)} is no whole number to raise a unit to`,
        expected: 'a whole number after `^`, such as `2 m ^ 2`',
      });
    }
    case 'round':
      if (sameDimension(left, bare)) return understood(bare);
      return refused({
        message: `\`round\` works on bare numbers, and ${operand(0)} has a unit`,
        expected: 'the unit outside, such as `round(2.6) * 1 kg`',
      });
    default: {
      const odd = dimensions.findIndex((dimension) => !sameDimension(dimension, left));
      if (odd === -1) return understood(left);
      const [first, other] = [dimensions[0] ?? bare, dimensions[odd] ?? bare];
      return refused({
        message: `${operand(0)} is ${dimensionCalled(first)} and ${operand(odd)} is ${dimensionCalled(other)}: they cannot be put together with \`${name}\``,
        expected: 'the same kind of quantity on both sides, each with its unit',
      });
    }
  }
}

function unknownName(name: string, parameters: Parameters): Refusal {
  if (unitHints.has(name)) return unknownUnit(name);
  if (functions.has(name)) {
    return {
      message: `\`${name}\` has no brackets after it`,
      expected: 'brackets, such as `max(3 kg, 4 kg)` or `round(2.6)`',
    };
  }
  const meant = nearest(name, [...parameters.keys(), ...units.keys()]);
  return {
    message: `${quote(name)} is neither a unit nor one of the plan's \`params\``,
    ...(meant === undefined ? {} : { meant }),
  };
}

/** An expression as it was written, or nearly so. */
const written = (node: MathNode): string => quote(node.toString().replace(/\binch\b/g, 'in'));

function unitNamed(name: string) {
  const unit = parseUnit(name);
  return 'unknown' in unit ? undefined : unit;
}

function symbolsOf(node: MathNode): string[] {
  const names: string[] = [];
  // The name of a function is a symbol node too, but no name that the expression uses.
  node.traverse((part, path) => {
    if (isSymbol(part) && path !== 'fn') names.push(part.name);
  });
  return names;
}

const isSymbol = (node: MathNode): node is MathNode & { name: string } => node.type === 'SymbolNode';
const isConstant = (node: MathNode): node is MathNode & { value: number } =>
  node.type === 'ConstantNode' && 'value' in node && typeof node.value === 'number';
const isBracket = (node: MathNode): node is MathNode & { content: MathNode } =>
  node.type === 'ParenthesisNode';
const isOperator = (node: MathNode): node is MathNode & { op: string; args: MathNode[] } =>
  node.type === 'OperatorNode';
const isCall = (node: MathNode): node is MathNode & { fn: { name: string }; args: MathNode[] } =>
  node.type === 'FunctionNode' && 'fn' in node && isNode(node.fn) && isSymbol(node.fn);
const isNode = (value: unknown): value is MathNode =>
  typeof value === 'object' && value !== null && 'type' in value;
