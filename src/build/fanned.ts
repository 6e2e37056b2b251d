import { type FanCurve, type FannedFlow, flowOfFans, straightFanCurve } from '../calc/air/fans.ts';
import { parallelAreaM2 } from '../calc/air/openings.ts';
import type { PlanPath } from '../engine/finding.ts';
import type { Air, Fan } from './air.ts';

/* What fans really move: their curves solved against what is open beside them. */

/** A fan of which flow, pressure and direction are known. */
export interface KnownFan {
  readonly fan: Fan;
  readonly blows: NonNullable<Fan['blows']>;
  readonly openFlowM3PerS: number;
  readonly stallPa: number;
  readonly curve: FanCurve;
}

/** The keys of a fan without which nobody can tell what it moves. */
export const fanKeys = ({ path, blows, openFlowM3PerS, stallPa }: Fan): readonly string[] => [
  ...(blows === undefined ? [`${path.join('.')}.blows`] : []),
  ...(openFlowM3PerS === undefined ? [`${path.join('.')}.flow`] : []),
  ...(stallPa === undefined ? [`${path.join('.')}.pressure`] : []),
];

export const knownFans = ({ fans }: Air): readonly KnownFan[] =>
  fans.flatMap((fan): KnownFan[] => {
    const { blows, openFlowM3PerS, stallPa } = fan;
    return blows === undefined || openFlowM3PerS === undefined || stallPa === undefined
      ? []
      : [{ fan, blows, openFlowM3PerS, stallPa, curve: straightFanCurve(openFlowM3PerS, stallPa) }];
  });

/** A way for air that stands open: a vent, or a window. */
export interface OpenWay {
  readonly name: string;
  readonly path: PlanPath;
  readonly freeAreaM2: number;
}

export interface Fanned extends FannedFlow {
  /** What else is open, m². */
  readonly openM2: number;
  readonly openings: readonly OpenWay[];
  /** Of each of the fans that were asked for, in their order. */
  readonly flowsM3PerS: readonly number[];
}

/**
 * What fans move together through the vents that no fan sits in, all of them open, also those that can be shut. Windows and
 * doors are shut unless they are handed over as ways. A vent that serves a thing of its own counts only for a fan that
 * serves it too.
 */
export function fanned(air: Air, fans: readonly KnownFan[], ways: readonly OpenWay[] = []): Fanned {
  const taken = new Set(air.fans.flatMap(({ vent }) => (vent ? [vent.name] : [])));
  const served = new Set(fans.map(({ fan }) => fan.serves));
  const vents = air.vents.filter(
    ({ name, serves }) => !taken.has(name) && (serves === undefined || served.has(serves)),
  );
  const openings = [...vents, ...ways];
  const openM2 = parallelAreaM2(openings.map(({ freeAreaM2 }) => freeAreaM2));
  const curves = (blows: KnownFan['blows']) =>
    fans.filter((fan) => fan.blows === blows).map(({ curve }) => curve);
  const flow = flowOfFans({
    exhausts: curves('exhaust'),
    intakes: curves('intake'),
    opening: { areaM2: openM2 },
  });
  const [out, into] = [flow.exhaustM3S.values(), flow.intakeM3S.values()];
  return {
    ...flow,
    openM2,
    openings,
    flowsM3PerS: fans.map(({ blows }) => (blows === 'exhaust' ? out : into).next().value ?? 0),
  };
}
