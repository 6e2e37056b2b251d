import type { Circuit, Draw, Electrical, Wire } from '../build/electrical.ts';
import { ambientFactor, deratedAmpacity } from '../calc/electrical/ampacity.ts';
import { type PointLoad, type Segment, solveDropTree } from '../calc/electrical/drop-tree.ts';
import { copperTemperatureFactor } from '../calc/electrical/resistance.ts';
import { dropOfPower } from '../calc/electrical/voltage-drop.ts';
import {
  type AmpacityTableId,
  ampacityOf,
  ampacityTable,
  type ListedAmpacity,
} from '../catalogue/electrical/ampacity.ts';
import { groupingFactor, thermalInsulationFactor } from '../catalogue/electrical/derating.ts';
import type { Need } from '../engine/rule.ts';
import { optional } from './needs.ts';

/*
 * What flows in every circuit, what it loses and what its conductors carry: the figures that the electrical checks and
 * the schedule of circuits share.
 */

export const electrical: Need<Electrical> = optional('electrical', (build) => build.electrical);

/** A source of current that is not the plan's to name. */
export const theBattery = 'battery';

export interface Ampacity {
  readonly deratedA: number;
  readonly listed: ListedAmpacity;
  readonly table: AmpacityTableId;
  readonly ambient: number;
  readonly grouping: number;
  readonly thermalInsulation: number;
}

/** What flows in a circuit while everything is on as far as it is on at once, and the voltage left at its end. */
export interface InTree {
  readonly currentA: number;
  readonly endV: number;
}

export interface CircuitFigures {
  readonly circuit: Circuit;
  /** Circuits from the battery to this one, itself last; undefined where the chain does not begin at the battery. */
  readonly chain?: readonly Circuit[];
  /** In steady use, at the voltage that is left for it; undefined where some load downstream is not known. */
  readonly designA?: number;
  readonly surgeA?: number;
  /** Of one conductor at the temperature that its insulation bears. */
  readonly ohmPerM?: number;
  /** Out and back, without connections. */
  readonly loopOhm?: number;
  readonly ampacity?: Ampacity;
  /** Lost over its own conductors. */
  readonly ownDropV?: number;
  /** Lost from the battery to its end, over every circuit on the way. */
  readonly dropV?: number;
  /** Its part of the whole tree, with all loads on as far as they are on at once. */
  readonly inTree?: InTree;
  /** False where the loads ask for more than the conductors can bring at any voltage. */
  readonly delivers: boolean;
  /** The circuit that cannot bring what hangs on it, if there is one: the others have no figures then. */
  readonly failsAt?: string;
  /** Whether every load that takes part in its loss is known: all that hangs on the way to it. */
  readonly loadsKnown: boolean;
  /** Keys that its own figures lack, without those of the circuits that feed it. */
  readonly missing: readonly string[];
}

const known = new WeakMap<Electrical, ReadonlyMap<string, CircuitFigures>>();

/** The figures of every circuit, by name; worked out once for a plan. */
export function figuresOf(given: Electrical): ReadonlyMap<string, CircuitFigures> {
  const before = known.get(given);
  if (before) return before;
  const figures = workOut(given);
  known.set(given, figures);
  return figures;
}

/** Resistance of one conductor when it is as warm as its insulation bears, Ω/m. */
export const hotOhmPerM = ({
  conductor,
  insulationC,
}: Pick<Wire, 'conductor' | 'insulationC'>): number | undefined =>
  conductor && conductor.resistanceOhmPerM * copperTemperatureFactor(insulationC, conductor.resistanceAtC);

/** The tables for cables in vehicles and boats; the stricter counts. */
const tables: readonly AmpacityTableId[] = [
  'small craft, single in free air',
  'boat law, single in free air',
];

/** What a conductor may carry where it lies: looked up, never interpolated. Undefined off the tables. */
export function ampacityFor(
  areaMm2: number,
  { insulationC, ambientC, bundled, lies }: Pick<Wire, 'insulationC' | 'ambientC' | 'bundled' | 'lies'>,
): Ampacity | undefined {
  const grouping = groupingFactor('small craft', 2 * bundled);
  if (grouping === undefined) return undefined;
  const thermalInsulation = lies === 'in insulation' ? thermalInsulationFactor(Number.MAX_VALUE) : 1;
  if (tables.every((table) => !ampacityOf(table, areaMm2, insulationC))) return undefined;
  return tables
    .flatMap((table): Ampacity[] => {
      // A table that begins above this size still bounds it: less copper carries no more than its first row.
      const firstMm2 = ampacityTable(table).rows[0]?.areaMm2 ?? areaMm2;
      const listed = ampacityOf(table, Math.max(areaMm2, firstMm2), insulationC);
      if (!listed) return [];
      const ambient = Math.min(1, ambientFactor(listed.insulationC, ambientC, listed.ambientC));
      const deratedA = deratedAmpacity(listed.currentA, { ambient, grouping, thermalInsulation });
      return [{ deratedA, listed, table, ambient, grouping, thermalInsulation }];
    })
    .reduce<Ampacity | undefined>(
      (strictest, each) => (strictest === undefined || each.deratedA < strictest.deratedA ? each : strictest),
      undefined,
    );
}

export interface Flows {
  readonly chains: ReadonlyMap<string, readonly Circuit[] | undefined>;
  /** The circuit that cannot bring what hangs on it; nothing flows in the figures then. */
  readonly failsAt?: string;
  readonly flowOf: (circuit: Circuit) => Flow | undefined;
  readonly inTreeOf: (circuit: Circuit) => InTree | undefined;
}

/** What flows in every circuit and what it loses: the part of the figures that changes with a conductor. */
export function flowsOf(given: Electrical): Flows {
  const byTo = new Map(given.circuits.filter(({ feeds }) => feeds).map((circuit) => [circuit.to, circuit]));
  const chainOf = (circuit: Circuit): readonly Circuit[] | undefined => {
    const chain = [circuit];
    for (let at = circuit.from; at !== theBattery; ) {
      const feeder = byTo.get(at);
      if (!feeder || chain.includes(feeder)) return undefined;
      chain.unshift(feeder);
      at = feeder.from;
    }
    return chain;
  };
  const chains = new Map(given.circuits.map((circuit) => [circuit.name, chainOf(circuit)]));
  const lowestV = given.bank?.lowestV;
  const solved = lowestV === undefined ? undefined : solve(given, lowestV, chains);
  return {
    chains,
    ...(solved?.failsAt !== undefined && { failsAt: solved.failsAt }),
    flowOf: (circuit) => {
      const chain = chains.get(circuit.name);
      return circuit.charges ? chargingFlow(circuit, chain) : solved?.flowOf(circuit, chain);
    },
    inTreeOf: (circuit) => solved?.inTreeOf(circuit),
  };
}

/** Resistance out and back of the conductors as warm as their insulation bears, Ω. */
function loopOf({ wire }: Circuit): number | undefined {
  const ohmPerM = hotOhmPerM(wire);
  return ohmPerM === undefined || wire.outM === undefined || wire.backM === undefined
    ? undefined
    : ohmPerM * (wire.outM + wire.backM);
}

function workOut(given: Electrical): ReadonlyMap<string, CircuitFigures> {
  const lowestV = given.bank?.lowestV;
  const { chains, failsAt, flowOf, inTreeOf } = flowsOf(given);
  /** What hangs on each circuit, itself included. */
  const hanging = new Map<string, Circuit[]>(given.circuits.map(({ name }) => [name, []]));
  for (const circuit of given.circuits)
    if (!circuit.charges && !circuit.feeds)
      for (const { name } of chains.get(circuit.name) ?? []) hanging.get(name)?.push(circuit);
  return new Map(
    given.circuits.map((circuit) => {
      const { name, wire, path } = circuit;
      const chain = chains.get(name);
      const loopOhm = loopOf(circuit);
      const ohmPerM = hotOhmPerM(wire);
      const ampacity = wire.conductor && ampacityFor(wire.conductor.areaMm2, wire);
      const own = flowOf(circuit);
      const inTree = inTreeOf(circuit);
      const hangsOn = hanging.get(name) ?? [];
      const loadsKnown = hangsOn.length > 0 && hangsOn.every(({ load }) => load !== undefined);
      const plainA =
        lowestV === undefined || !loadsKnown ? undefined : sumOf(given, circuit, hangsOn, lowestV, 'load');
      const flowA =
        (circuit.charges || loadsKnown ? own?.currentA : undefined) ??
        (circuit.charges ? currentAt(circuit.load, lowestV ?? given.nominalV) : plainA);
      // In the whole tree not everything is on at once; what feeds one point must bear all of that point alone.
      const designA =
        circuit.feeds && flowA !== undefined && plainA !== undefined ? Math.max(flowA, plainA) : flowA;
      const surgeA =
        lowestV === undefined || !loadsKnown ? undefined : sumOf(given, circuit, hangsOn, lowestV, 'surge');
      const key = path.join('.');
      return [
        name,
        {
          circuit,
          ...(chain && { chain }),
          ...(designA !== undefined && { designA }),
          ...(surgeA !== undefined && { surgeA }),
          ...(ohmPerM !== undefined && { ohmPerM }),
          ...(loopOhm !== undefined && { loopOhm }),
          ...(ampacity && { ampacity }),
          ...(own && { ownDropV: own.ownDropV, dropV: own.dropV }),
          ...(inTree && { inTree }),
          delivers: failsAt === undefined,
          ...(failsAt !== undefined && { failsAt }),
          loadsKnown: circuit.charges
            ? circuit.load !== undefined
            : (chain ?? []).every((each) =>
                (hanging.get(each.name) ?? []).every(({ load }) => load !== undefined),
              ),
          missing: [
            ...(wire.size ? [] : [`${key}.conductor`]),
            ...(wire.outM === undefined ? [`${key}.length`] : []),
            ...(circuit.load || circuit.feeds ? [] : [`${key}.load`]),
            ...(given.bank ? [] : ['electrical.battery']),
          ],
        },
      ];
    }),
  );
}

export interface Flow {
  readonly currentA: number;
  readonly ownDropV: number;
  readonly dropV: number;
}

interface Solved {
  readonly failsAt?: string;
  readonly flowOf: (circuit: Circuit, chain: readonly Circuit[] | undefined) => Flow | undefined;
  readonly inTreeOf: (circuit: Circuit) => InTree | undefined;
}

const nothingFlows = { flowOf: () => undefined, inTreeOf: () => undefined };

/** Every circuit whose way to the battery is known whole, with all its loads on as far as they are on at once. */
function solve(
  given: Electrical,
  lowestV: number,
  chains: ReadonlyMap<string, readonly Circuit[] | undefined>,
): Solved {
  const isKnown = (chain: readonly Circuit[] | undefined): chain is readonly Circuit[] =>
    chain?.every((each) => loopOf(each) !== undefined) ?? false;
  // A circuit that lacks its own conductor or length still draws through those that feed it.
  const inTree = given.circuits.filter(({ name, charges }) => !charges && chains.get(name) !== undefined);
  // Each circuit has an end of its own, so that two that go to one thing stay two.
  const endOf = (circuit: Circuit): string => (circuit.feeds ? `point ${circuit.to}` : `end ${circuit.name}`);
  const startOf = (circuit: Circuit): string =>
    circuit.from === theBattery ? theBattery : `point ${circuit.from}`;
  const segments = inTree.map(
    (circuit): Segment => ({
      id: circuit.name,
      from: startOf(circuit),
      to: endOf(circuit),
      loopOhm: loopOf(circuit) ?? 0,
    }),
  );
  const loads = inTree
    .filter(({ feeds, load }) => !feeds && load !== undefined)
    .map((circuit): PointLoad => {
      const share = shareOf(given, circuit, chains.get(circuit.name) ?? []);
      const { load } = circuit;
      if (!load) return { at: endOf(circuit) };
      return 'powerW' in load
        ? { at: endOf(circuit), powerW: share * load.powerW }
        : { at: endOf(circuit), currentA: share * load.currentA };
    });
  const result = solveDropTree(theBattery, lowestV, segments, loads);
  if (!result.delivers) return { failsAt: result.atSegment, ...nothingFlows };
  /** A load of its own counts whole in its own circuit, whatever part of it is on together with others. */
  const wholeOf = (circuit: Circuit, startV: number): number | undefined => {
    const { load } = circuit;
    if (circuit.feeds || !load) return 0;
    if ('currentA' in load) return load.currentA;
    const whole = dropOfPower(startV, load.powerW, loopOf(circuit) ?? 0);
    return whole.delivers ? whole.currentA : undefined;
  };
  const startVOf = (circuit: Circuit): number => lowestV - (result.points.get(startOf(circuit))?.dropV ?? 0);
  const failing = inTree.find((circuit) => wholeOf(circuit, startVOf(circuit)) === undefined);
  if (failing) return { failsAt: failing.name, ...nothingFlows };
  return {
    flowOf: (circuit, chain) => {
      const flow = result.segments.get(circuit.name);
      if (!flow || !isKnown(chain)) return undefined;
      const currentA = Math.max(flow.currentA, wholeOf(circuit, startVOf(circuit)) ?? 0);
      const ownDropV = currentA * (loopOf(circuit) ?? 0);
      return { currentA, ownDropV, dropV: lowestV - startVOf(circuit) + ownDropV };
    },
    inTreeOf: (circuit) => {
      const flow = result.segments.get(circuit.name);
      const end = result.points.get(endOf(circuit));
      return flow && end && { currentA: flow.currentA, endV: end.voltageV };
    },
  };
}

/** The part of a load that counts in what feeds it: its own, and that of every point on the way. */
export function shareOf(given: Electrical, circuit: Circuit, chain: readonly Circuit[]): number {
  const points = new Map(given.distribution.map((point) => [point.name, point.atOnce]));
  return chain.reduce(
    (share, each) => (each.feeds ? share * (points.get(each.to) ?? 1) : share),
    circuit.atOnce,
  );
}

const currentAt = (draw: Draw | undefined, voltageV: number): number | undefined => {
  if (!draw) return undefined;
  return 'powerW' in draw ? draw.powerW / voltageV : draw.currentA;
};

/** The part of a load that counts in a circuit which feeds one point, when all of that point alone is added up. */
export const shareAlone = (given: Electrical, circuit: Circuit, load: Circuit): number =>
  circuit.feeds ? load.atOnce * (given.distribution.find(({ name }) => name === circuit.to)?.atOnce ?? 1) : 1;

/** The currents of what hangs on a circuit at the lowest voltage; with `surge`, the one whose surge adds most surges. */
function sumOf(
  given: Electrical,
  circuit: Circuit,
  hangsOn: readonly Circuit[],
  lowestV: number,
  what: 'load' | 'surge',
): number {
  const steady = hangsOn.map(
    (each) => (currentAt(each.load, lowestV) ?? 0) * shareAlone(given, circuit, each),
  );
  const sum = steady.reduce((total, each) => total + each, 0);
  if (what === 'load') return sum;
  const most = hangsOn.reduce((best, each, index) => {
    const surge = currentAt(each.surge, lowestV) ?? 0;
    return Math.max(best, surge - (steady[index] ?? 0));
  }, 0);
  return sum + most;
}

/** A charger pushes its current through its own circuit and those between it and the battery. */
function chargingFlow(circuit: Circuit, chain: readonly Circuit[] | undefined): Flow | undefined {
  const currentA = circuit.load && 'currentA' in circuit.load ? circuit.load.currentA : undefined;
  const loops = chain?.map(loopOf);
  if (currentA === undefined || !loops || loops.some((loop) => loop === undefined)) return undefined;
  const dropV = loops.reduce<number>((sum, loop) => sum + currentA * (loop ?? 0), 0);
  return { currentA, ownDropV: currentA * (loopOf(circuit) ?? 0), dropV };
}
