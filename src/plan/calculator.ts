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
  type Calculate,
  type Measured,
  type Reading,
  type Refusal,
  refused,
  type SharedError,
  understood,
  unknownUnit,
} from './quantity.ts';
import { type Dimension, dimensionCalled, parseUnit, sameDimension, unitHints, units } from './units.ts';

const maxLength = 200;
const maxDepth = 20;
const bare: Dimension = { kg: 0, m: 0 };
const allowed = 'only numbers, units, params, + - * / ^ and min, max, round, sqrt';

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

type Parameters = ReadonlyMap<string, Measured>;

/** Makes the reader of expressions over these parameters, already evaluated. */
export function calculatorOver(parameters: Parameters): Calculate {
  return (text) => calculate(text, parameters);
}

/** The names that an expression uses, or undefined when it cannot be parsed. */
export function namesIn(text: string): readonly string[] | undefined {
  const node = parse(text);
  return node && symbolsOf(node);
}

function calculate(text: string, parameters: Parameters): Reading<Measured> {
  if (text.length > maxLength) {
    return refused({
      message: `is an expression of ${text.length} characters`,
      expected: `at most ${maxLength}; name its parts in \`params\``,
    });
  }
  if (text.includes('%')) {
    return refused({
      message: `\`${text}\` has a per cent sign inside an expression`,
      expected: 'the share as a number, such as `0.05`',
    });
  }
  const node = parse(text);
  if (!node) {
    return refused({
      message: `\`${text}\` cannot be read as a quantity`,
      expected: 'a number with a unit, such as `38 kg`, or arithmetic with units, such as `2 * 4 kg + 3 kg`',
    });
  }
  const dimension = dimensionOf(node, parameters, 0);
  if (!dimension.ok) return dimension;
  const value = evaluate(node, parameters);
  if (!Number.isFinite(value)) {
    return refused({ message: `\`${text}\` has no finite result (a division by zero?)` });
  }
  return understood({
    value,
    halfWidth: 0,
    shared: sharedErrors(node, parameters),
    dimension: dimension.value,
  });
}

/** In mathjs `in` is also the conversion operator; here it is only ever the inch. */
function parse(text: string): MathNode | undefined {
  const spelt = text
    .replace(/(?<![\p{L}_])in(?![\p{L}\d_])/gu, 'inch')
    .replaceAll('²', '2')
    .replaceAll('³', '3')
    .replaceAll('·', '*');
  try {
    return math.parse(spelt);
  } catch {
    return undefined;
  }
}

/** How the result moves when each parameter used stands at the upper end of its tolerance (central difference). */
function sharedErrors(node: MathNode, parameters: Parameters): readonly SharedError[] {
  const errors: SharedError[] = [];
  for (const name of new Set(symbolsOf(node))) {
    const parameter = parameters.get(name);
    if (!parameter) continue;
    const own = parameter.halfWidth > 0 ? [{ source: `params.${name}`, halfWidth: parameter.halfWidth }] : [];
    for (const { source, halfWidth } of [...own, ...parameter.shared]) {
      const moved = (by: number) =>
        evaluate(node, new Map(parameters).set(name, { ...parameter, value: parameter.value + by }));
      errors.push({ source, halfWidth: (moved(halfWidth) - moved(-halfWidth)) / 2 });
    }
  }
  return errors;
}

function evaluate(node: MathNode, parameters: Parameters): number {
  const scope = new Map<string, number>();
  for (const name of symbolsOf(node)) {
    const value = parameters.get(name)?.value ?? unitNamed(name)?.factor;
    if (value !== undefined) scope.set(name, value);
  }
  const result: unknown = node.compile().evaluate(scope);
  return typeof result === 'number' ? result : Number.NaN;
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
    return refused({ message: `\`${node.toString()}\` is not plain arithmetic`, expected: allowed });
  }
  const dimensions: Dimension[] = [];
  for (const operand of operation.operands) {
    const dimension = dimensionOf(operand, parameters, depth + 1);
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
    if ((name === 'sqrt' || name === 'round') && operands.length === 1) return { name, operands };
    if ((name === 'min' || name === 'max') && operands.length > 0) return { name, operands };
  }
  return undefined;
}

function combine({ name, operands }: Operation, dimensions: readonly Dimension[]): Reading<Dimension> {
  const [left = bare, right = bare] = dimensions;
  const written = operands.map((operand) => `\`${operand.toString()}\``);
  switch (name) {
    case 'alone':
      return understood(left);
    case '*':
      return understood({ kg: left.kg + right.kg, m: left.m + right.m });
    case '/':
      return understood({ kg: left.kg - right.kg, m: left.m - right.m });
    case 'sqrt':
      return understood({ kg: left.kg / 2, m: left.m / 2 });
    case '^': {
      const [, exponent] = operands;
      if (exponent && isConstant(exponent) && Number.isInteger(exponent.value)) {
        return understood({ kg: left.kg * exponent.value, m: left.m * exponent.value });
      }
      if (sameDimension(left, bare) && sameDimension(right, bare)) return understood(bare);
      return refused({ message: `${written[1]} is no whole number to raise a unit to` });
    }
    case 'round':
      if (sameDimension(left, bare)) return understood(bare);
      return refused({
        message: `\`round\` works on bare numbers, and ${written[0]} has a unit`,
        expected: 'the unit outside, such as `round(2.6) * 1 kg`',
      });
    default: {
      const odd = dimensions.findIndex((dimension) => !sameDimension(dimension, left));
      if (odd === -1) return understood(left);
      const [first, other] = [dimensions[0] ?? bare, dimensions[odd] ?? bare];
      return refused({
        message: `${written[0]} is ${dimensionCalled(first)} and ${written[odd]} is ${dimensionCalled(other)}: they cannot be put together with \`${name}\``,
      });
    }
  }
}

function unknownName(name: string, parameters: Parameters): Refusal {
  if (unitHints.has(name)) return unknownUnit(name);
  const meant = nearest(name, [...parameters.keys(), ...units.keys()]);
  return {
    message: `\`${name}\` is neither a unit nor one of the plan's \`params\``,
    expected: `a number with a unit, such as \`38 kg\`, or a name defined under \`params\``,
    ...(meant === undefined ? {} : { meant }),
  };
}

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
