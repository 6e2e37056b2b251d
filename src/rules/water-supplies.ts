import type { Water } from '../build/water.ts';
import type { PumpCurve } from '../calc/water/pump.ts';
import { length, pressure } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import { given, missing, type Need } from '../engine/rule.ts';
import {
  type KnownSupply,
  lossTableName,
  pumpCurveOf,
  pumpKeys,
  resolve,
  suppliesOf,
  withoutSupply,
} from './water-network.ts';

/** The ways of all outlets' water: those that can be solved, and the keys that the others lack. */
export interface Supplies {
  readonly water: Water;
  readonly curve: PumpCurve | undefined;
  readonly known: readonly KnownSupply[];
  readonly missing: readonly string[];
}

/** For every rule that solves a flow; with nothing to solve, the keys that would give something. */
export const supplies: Need<Supplies> = ({ water }) => {
  if (!water) return missing('water');
  if (water.outlets.length === 0) return missing('water.outlets');
  if (water.pipes.length === 0) return missing('water.pipes');
  const found = suppliesOf(water);
  const curve = water.pump && pumpCurveOf(water.pump);
  const resolved = found.map((supply) => resolve(supply, water));
  const lackPump = found.some(({ isPumped }) => isPumped) && !curve ? pumpKeys(water.pump) : [];
  const unsupplied = withoutSupply(water, found);
  const keys = [
    ...new Set([
      ...lackPump,
      ...resolved.flatMap((each) => (each.ok ? [] : each.missing)),
      // A pipe that leads to the outlet, or one before it on its way from the tank.
      ...(unsupplied.length > 0 ? ['water.pipes.NAME.to'] : []),
    ]),
  ];
  const known = resolved.flatMap((each) =>
    each.ok && (curve || !each.supply.isPumped) ? [each.supply] : [],
  );
  return known.length > 0 ? given({ water, curve, known, missing: keys }) : missing(...keys);
};

/** The curve that drives a supply: none where its water falls from the tank. */
export const curveOf = ({ curve }: Supplies, { isPumped }: KnownSupply): PumpCurve | undefined =>
  isPumped ? curve : undefined;

export const supplyName = ({ outlet, kind }: KnownSupply): string => `${outlet.name}, ${kind}`;

/** What a flow is worked out with though the plan does not say it. */
export function assumedOf({ wanted, outlet }: KnownSupply): Phrase {
  const flowText = wanted.flowGiven
    ? ''
    : say` The plan does not say its \`flow\`: one usual for a ${outlet.use} is taken.`;
  const pressureText = wanted.pressureGiven
    ? ''
    : say` It is taken to let its flow through at ${pressure(wanted.pressurePa)}, as the plan does not say its \`pressure\`.`;
  return say`${flowText}${pressureText}`;
}

export const lossTableText = `Fittings by the table “${lossTableName}”; a pipe's \`loss\` in place of \`fittings\` says otherwise.`;

/** Height of an outlet over the bottom of its tank. */
export const heightText = (riseM: number): Phrase =>
  riseM >= 0 ? say`${length(riseM)} above` : say`${length(-riseM)} below`;
