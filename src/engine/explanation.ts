import { type AirLimitId, type AirUnit, airLimitIds, airLimits } from '../catalogue/air/limits.ts';
import type { Citation } from '../catalogue/citation.ts';
import { type LengthLimit, lengthLimits } from '../catalogue/fit-limits.ts';
import { type GasLimit, type GasUnit, gasLimits } from '../catalogue/gas/limits.ts';
import { type RegionalLimit, regionalLimits } from '../catalogue/limits.ts';
import { isWaterLimitId, type WaterLimitId, type WaterUnit, waterLimits } from '../catalogue/water/limits.ts';
import type { Topic } from './finding.ts';
import {
  airFlow,
  area,
  concentration,
  count,
  density,
  duration,
  factor,
  freeArea,
  kelvins,
  length,
  type Measure,
  mass,
  massFlow,
  pressure,
  share,
  temperatureC,
  volume,
  wait,
} from './measure.ts';
import type { AnyLimitId, NamedLimitId, Rule } from './rule.ts';

/** A row of the catalogue as a reader meets it. */
export interface ExplainedLimit {
  readonly id: string;
  readonly value: Measure;
  readonly sense: 'at most' | 'at least';
  /** What the value is a share, length or number of. */
  readonly of: string;
  /** "law", "published guide", "common practice", "own choice". Only law can fail a check. */
  readonly force: string;
  /** The regions that it holds in; empty where it holds everywhere. */
  readonly codes: readonly string[];
  readonly sources: readonly Citation[];
  readonly caution?: string;
}

/** What a waiver in the plan can do about a check. */
export type Waivable = 'waivable' | 'acknowledged only' | 'not at all';

/** All that a rule says of itself, for `explain` and for the list of all rules. */
export interface Explanation {
  readonly id: string;
  readonly topic: Topic;
  readonly title: string;
  readonly why: string;
  readonly formula: string;
  readonly fix?: string;
  readonly limits: readonly ExplainedLimit[];
  /** The row that a plan may replace by a limit of its own, if there is one. */
  readonly settable?: AnyLimitId;
  readonly waivable: Waivable;
  readonly informationOnly: boolean;
  readonly sources: readonly Citation[];
  readonly cautions: readonly string[];
}

export function explanationOf(rule: Rule): Explanation {
  const { id, topic, title, why, formula, fix, limits = [], override, lifeSafety, sources, cautions } = rule;
  return {
    id,
    topic,
    title,
    why,
    formula,
    ...(fix !== undefined && { fix }),
    limits: limits.flatMap(rowsOf),
    ...(override && { settable: override.limit }),
    waivable:
      rule.informationOnly || rule.review ? 'not at all' : lifeSafety ? 'acknowledged only' : 'waivable',
    informationOnly: rule.informationOnly === true,
    sources,
    cautions,
  };
}

function rowsOf(wanted: NamedLimitId): readonly ExplainedLimit[] {
  return [
    ...regionalLimits.filter(({ id }) => id === wanted).map(regional),
    ...lengthLimits.filter(({ id }) => id === wanted).map(ofLength),
    ...(isWaterLimitId(wanted) ? [ofWater(wanted)] : []),
    ...(isAirLimitId(wanted) ? [ofAir(wanted)] : []),
    ...gasLimits.filter(({ id }) => id === wanted).map(ofGas),
  ];
}

const isAirLimitId = (id: string): id is AirLimitId => airLimitIds.some((each) => each === id);

/** Half a minute is no whole minute; an hour is not counted in seconds. */
const leastDurationS = 600;
/** From here on an area is of a floor, and not of a vent. */
const leastFloorM2 = 1;

/** Rows of water, air and gas are in SI units. */
const inUnit: Readonly<Record<WaterUnit | AirUnit | GasUnit, (value: number) => Measure>> = {
  s: (value) => (value < leastDurationS ? wait(value) : duration(value)),
  m: length,
  'm²': (value) => (value < leastFloorM2 ? freeArea(value) : area(value)),
  'm³': volume,
  '°C': temperatureC,
  '°': factor,
  K: kelvins,
  Pa: pressure,
  share,
  kg: mass,
  'kg/m³': density,
  'kg/s': massFlow,
  'm³/s': airFlow,
  ppm: (value) => concentration(value / 1e6),
  '1/h': factor,
  number: count,
  years: count,
};

/** What the number is of, with the unit where the measure itself has none. */
const withUnit = (unit: AirUnit | GasUnit, of: string): string =>
  unit === '1/h' ? `${of}, an hour` : unit === 'years' ? `years: ${of}` : of;

function ofAir(id: AirLimitId): ExplainedLimit {
  const { value, unit, sense, of, force, citations, caution } = airLimits[id];
  return {
    id,
    value: inUnit[unit](value),
    sense,
    of: withUnit(unit, of),
    force,
    codes: [],
    sources: citations,
    ...(caution !== undefined && { caution }),
  };
}

const ofGas = ({
  id,
  value,
  unit,
  sense,
  of,
  force,
  codes,
  citations,
  cautions,
}: GasLimit): ExplainedLimit => ({
  id,
  value: inUnit[unit](value),
  sense,
  of: withUnit(unit, of),
  force,
  codes: codes.length === allRegions ? [] : codes,
  sources: citations,
  ...(cautions.length > 0 && { caution: cautions.join(' ') }),
});

function ofWater(id: WaterLimitId): ExplainedLimit {
  const { value, unit, sense, of, force, citations, caution } = waterLimits[id];
  return {
    id,
    value: inUnit[unit](value),
    sense,
    of,
    force,
    codes: [],
    sources: citations,
    ...(caution !== undefined && { caution }),
  };
}

/** All regions there are; a row for all of them names none. */
const allRegions = 4;

const regional = ({
  id,
  value,
  sense,
  of,
  force,
  codes,
  citations,
  caution,
}: RegionalLimit): ExplainedLimit => ({
  id,
  value: measureOf(id, value),
  sense,
  of,
  force,
  codes: codes.length === allRegions ? [] : codes,
  sources: citations,
  ...(caution !== undefined && { caution }),
});

function measureOf(id: RegionalLimit['id'], value: number): Measure {
  if (id === 'minimum-pay-mass') return mass(value);
  return id === 'static-stability-factor' ? factor(value) : share(value);
}

const ofLength = ({ id, valueM, sense, of, force, citations, caution }: LengthLimit): ExplainedLimit => ({
  id,
  value: length(valueM),
  sense,
  of,
  force,
  codes: [],
  sources: citations,
  ...(caution !== undefined && { caution }),
});
