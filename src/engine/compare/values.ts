import { type Quantity, readMeasured, withoutCalculator } from '../../plan/quantity.ts';
import { type DimensionName, dimensions, sameDimension } from '../../plan/units.ts';
import type { PlanPath } from '../finding.ts';
import type { Kind, Measure } from '../measure.ts';
import { isSection } from './entries.ts';

/** A quantity of a plan, and what kind of number it is. */
export type KindOfQuantity = Quantity & { readonly kind: DimensionName };

/** The value at a path in a plan that was read: expressions are worked out there. */
export function quantityAt(plan: unknown, path: PlanPath): KindOfQuantity | undefined {
  let value: unknown = plan;
  for (const key of path) {
    if (Array.isArray(value)) value = value[Number(key)];
    else if (isSection(value) && Object.hasOwn(value, key)) value = value[key];
    else return undefined;
  }
  // What `params` hold is read where it is used.
  return typeof value === 'string' && path[0] === 'params' ? literal(value) : asQuantity(value);
}

function literal(text: string): KindOfQuantity | undefined {
  const read = readMeasured(
    text,
    withoutCalculator(() => true),
  );
  if (!read.ok) return undefined;
  const { value } = read;
  const kind = kindNames.find(
    (name) =>
      name !== 'number' &&
      (name === 'share') === (value.percent === true) &&
      sameDimension(dimensions[name].dimension, value.dimension),
  );
  return { ...value, kind: kind ?? 'number' };
}

const kindNames = Object.keys(dimensions).filter((name): name is DimensionName => name in dimensions);

function asQuantity(value: unknown): KindOfQuantity | undefined {
  if (!isSection(value) || typeof value.value !== 'number' || typeof value.halfWidth !== 'number')
    return undefined;
  const kind = kindNames.find((name) => name === value.kind);
  return kind && { value: value.value, halfWidth: value.halfWidth, shared: [], kind };
}

/** Numbers of a plan are the same if they differ by no more than the last digits of a conversion. */
export const isSameNumber = (one: number, other: number): boolean =>
  Math.abs(one - other) <= 1e-9 * Math.max(Math.abs(one), Math.abs(other));

export const isSameQuantity = (one: KindOfQuantity, other: KindOfQuantity): boolean =>
  one.kind === other.kind &&
  isSameNumber(one.value, other.value) &&
  isSameNumber(one.halfWidth, other.halfWidth);

/** What a reader is shown such a quantity as; some kinds are never shown. */
const kinds: Readonly<Partial<Record<DimensionName, Kind>>> = {
  mass: 'mass',
  length: 'length',
  area: 'area',
  volume: 'volume',
  arealMass: 'areal mass',
  density: 'density',
  duration: 'duration',
  current: 'current',
  voltage: 'voltage',
  power: 'power',
  energy: 'energy',
  charge: 'charge',
  resistance: 'resistance',
  temperature: 'temperature',
  share: 'share',
  number: 'factor',
};

/** How much greater the second is; undefined where that cannot be said, or is nothing. */
export function changeBetween(before: KindOfQuantity, after: KindOfQuantity): Measure | undefined {
  const kind = kinds[after.kind];
  if (before.kind !== after.kind || kind === undefined || isSameNumber(before.value, after.value))
    return undefined;
  return { kind, value: after.value - before.value };
}
