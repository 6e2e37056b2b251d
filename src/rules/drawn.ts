import type { Circuit, Draw, Electrical } from '../build/electrical.ts';
import { currentForPower } from '../calc/electrical/power-through.ts';
import { figuresOf, theBattery } from './circuits.ts';

/*
 * What flows through one point of the distribution, or out of the battery, when as much is on at once as the plan says.
 */

export interface Drawn {
  /** Of all loads that are known, with what their cables lose. */
  readonly currentA: number;
  /** While the load starts whose start adds most. */
  readonly surgeA: number;
  readonly surgeBy?: string;
  /** The inverter's part of `currentA`. */
  readonly inverterA: number;
  /** Of the chargers that push through here towards the battery, all at once. */
  readonly chargingA: number;
  readonly loads: number;
  /** What makes up `currentA`. */
  readonly each: readonly DrawnLoad[];
  /** Keys that would make the sums whole. */
  readonly missing: readonly string[];
}

/** What hangs on a point: the shares of the points between it and each load count, those before it do not. */
export function drawnThrough(electrical: Electrical, from: string): Drawn {
  const { inverter, circuits } = electrical;
  const loads: DrawnLoad[] = [];
  const missing: string[] = [];
  let chargingA = 0;
  for (const circuit of circuits) {
    const behind = behindOf(electrical, circuit, from);
    if (!behind || circuit.feeds) continue;
    const currentA = steadyA(electrical, circuit);
    if (currentA === undefined) missing.push(...lacking(circuit));
    if (circuit.charges) chargingA += currentA ?? 0;
    else loads.push(loadOf(electrical, circuit, behind, currentA ?? 0));
  }
  const currentA = loads.reduce((sum, load) => sum + load.steadyA, 0);
  const starting = loads.reduce<DrawnLoad | undefined>(
    (most, load) => (load.startA > (most?.startA ?? 0) ? load : most),
    undefined,
  );
  return {
    currentA,
    surgeA: currentA + (starting?.startA ?? 0),
    ...(starting && { surgeBy: starting.circuit.name }),
    inverterA: loads.find(({ circuit }) => circuit.name === inverter?.circuit)?.steadyA ?? 0,
    chargingA,
    loads: loads.length,
    each: loads,
    missing: [...new Set(missing)],
  };
}

export interface DrawnLoad {
  readonly circuit: Circuit;
  /** The part of it that is on at once with the others. */
  readonly share: number;
  readonly steadyA: number;
  /** While it starts; 0 where the plan says nothing of it. */
  readonly surgeA: number;
  /** What its start adds. */
  readonly startA: number;
}

/** The circuits from a point to the end of one, itself last; undefined where it does not hang on that point. */
function behindOf(electrical: Electrical, circuit: Circuit, from: string): readonly Circuit[] | undefined {
  const chain = figuresOf(electrical).get(circuit.name)?.chain;
  if (!chain || from === theBattery) return chain;
  const feeder = chain.findIndex(({ to, feeds }) => feeds && to === from);
  return feeder < 0 ? undefined : chain.slice(feeder);
}

/** The part of a load that counts where these circuits begin. */
export const shareBehind = (electrical: Electrical, circuit: Circuit, behind: readonly Circuit[]): number =>
  behind
    .filter(({ feeds }) => feeds)
    .map(({ to }) => electrical.distribution.find(({ name }) => name === to)?.atOnce ?? 1)
    .reduce((product, part) => product * part, circuit.atOnce);

function loadOf(
  electrical: Electrical,
  circuit: Circuit,
  behind: readonly Circuit[],
  wholeA: number,
): DrawnLoad {
  const share = shareBehind(electrical, circuit, behind);
  const currentA = share * wholeA;
  const wayOhm = wayOhmOf(electrical, circuit);
  const surgeA = (circuit.surge && startingA(circuit.surge, electrical.bank?.lowestV, wayOhm)) ?? 0;
  return {
    circuit,
    share,
    steadyA: currentA,
    surgeA,
    startA: Math.max(0, surgeA - currentA),
  };
}

/** Out and back from the battery, over every circuit on the way; undefined where one is not known. */
function wayOhmOf(electrical: Electrical, circuit: Circuit): number | undefined {
  const figures = figuresOf(electrical);
  const loops = (figures.get(circuit.name)?.chain ?? []).map(({ name }) => figures.get(name)?.loopOhm);
  return loops.reduce<number | undefined>(
    (sum, ohm) => (sum === undefined || ohm === undefined ? undefined : sum + ohm),
    0,
  );
}

/** At what its own start leaves of the lowest voltage; at all of it, where its cables are not known or cannot bring that. */
function startingA(draw: Draw, voltageV: number | undefined, wayOhm = 0): number | undefined {
  if ('currentA' in draw || voltageV === undefined) return atVoltage(draw, voltageV);
  return currentForPower(draw.powerW, voltageV, wayOhm) ?? draw.powerW / voltageV;
}

/** At what its cables leave of the lowest voltage, where that is known. */
export function steadyA(electrical: Electrical, circuit: Circuit): number | undefined {
  const designA = figuresOf(electrical).get(circuit.name)?.designA;
  return designA ?? (circuit.load && atVoltage(circuit.load, electrical.bank?.lowestV));
}

/** Undefined for a power where no voltage is known. */
export const atVoltage = (draw: Draw, voltageV: number | undefined): number | undefined => {
  if ('currentA' in draw) return draw.currentA;
  return voltageV === undefined ? undefined : draw.powerW / voltageV;
};

const lacking = ({ load, path }: Circuit): readonly string[] =>
  load ? ['electrical.battery'] : [`${path.join('.')}.load`];
