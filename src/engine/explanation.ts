import type { Citation } from '../catalogue/citation.ts';
import { type LengthLimit, lengthLimits } from '../catalogue/fit-limits.ts';
import { type RegionalLimit, regionalLimits } from '../catalogue/limits.ts';
import { isWaterLimitId, type WaterLimitId, type WaterUnit, waterLimits } from '../catalogue/water/limits.ts';
import type { Topic } from './finding.ts';
import {
  density,
  duration,
  factor,
  length,
  type Measure,
  mass,
  pressure,
  share,
  temperatureC,
  volume,
} from './measure.ts';
import type { AnyLimitId, Rule } from './rule.ts';

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

function rowsOf(wanted: AnyLimitId): readonly ExplainedLimit[] {
  return [
    ...regionalLimits.filter(({ id }) => id === wanted).map(regional),
    ...lengthLimits.filter(({ id }) => id === wanted).map(ofLength),
    ...(isWaterLimitId(wanted) ? [ofWater(wanted)] : []),
  ];
}

/** Rows of water are in SI units. */
const inUnit: Readonly<Record<WaterUnit, (value: number) => Measure>> = {
  s: duration,
  m: length,
  'm³': volume,
  '°C': temperatureC,
  '°': factor,
  Pa: pressure,
  share,
  'kg/m³': density,
};

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
