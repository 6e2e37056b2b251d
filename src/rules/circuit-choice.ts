import type { Bank, Circuit, Electrical, Wire } from '../build/electrical.ts';
import { smallestFuse } from '../calc/electrical/protection.ts';
import type { Citation } from '../catalogue/citation.ts';
import { type Conductor, conductors, conductorsOf } from '../catalogue/electrical/conductors.ts';
import { permittedDropV } from '../catalogue/electrical/drop-limits.ts';
import {
  breakingCapacityA,
  type FuseFamily,
  type FuseFamilyId,
  fuseFamily,
  fuseMargin,
} from '../catalogue/electrical/fuses.ts';
import { exceeds } from '../engine/judge.ts';
import { current, mass, share } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import { dropLimitOf, leastAreaMm2 } from './circuit-limits.ts';
import { ampacityFor, type CircuitFigures, type Flows, figuresOf, flowsOf, hotOhmPerM } from './circuits.ts';
import { sizeText } from './conductor-text.ts';

/*
 * The smallest standard conductor and fuse that pass every check of a circuit together: loss from the battery to its
 * end, ampacity at least the fuse, least size, fuse at least the design current with its margin. A size that passes
 * some of these alone is no answer.
 */

export interface CircuitChoice {
  readonly circuit: Circuit;
  readonly conductor: Conductor;
  readonly family: FuseFamily;
  readonly fuseA: number;
  /** In steady use over this conductor. */
  readonly designA: number;
  /** Derated. */
  readonly ampacityA: number;
  /** From the battery to its end, also of a feeder, whose loss is judged with what it feeds. */
  readonly dropV: number;
  /** Of the nominal voltage. */
  readonly dropShare: number;
  /** Copper of both conductors, against what the plan has; undefined where the plan names no conductor. */
  readonly extraMassKg?: number;
}

/** Below, a mass would read as none. */
const LEAST_SHOWN_KG = 0.1;

/** Of copper wire, kg/m³. */
const COPPER_KG_PER_M3 = 8890;

export const choiceMethod: Citation = {
  title: `The smallest standard conductor and fuse that keep drop, ampacity, least size and margin at once; copper of ${COPPER_KG_PER_M3} kg/m³ (International Annealed Copper Standard), without its insulation`,
  provenance: 'memory',
  caution:
    'What a fuse must break, how far it may be from its source and its order with other fuses are checks of their own.',
};

/** Fuses of a van by how much they carry, where the plan names none that does: own choice. */
const usualFamilies: readonly FuseFamilyId[] = ['blade', 'small bolt-in', 'large bolt-in', 'industrial gG'];

const chosen = new WeakMap<Electrical, Map<Circuit, CircuitChoice | undefined>>();

/** Undefined where the plan does not say enough, or where no standard conductor passes. */
export function choiceFor(electrical: Electrical, circuit: Circuit): CircuitChoice | undefined {
  const known = chosen.get(electrical) ?? new Map<Circuit, CircuitChoice | undefined>();
  chosen.set(electrical, known);
  if (known.has(circuit)) return known.get(circuit);
  const choice = choose(electrical, circuit);
  known.set(circuit, choice);
  return choice;
}

function choose(electrical: Electrical, circuit: Circuit): CircuitChoice | undefined {
  const { wire } = circuit;
  const figures = figuresOf(electrical).get(circuit.name);
  const { bank } = electrical;
  if (!figures?.chain || (figures.designA === undefined && figures.failsAt === undefined)) return undefined;
  if (!bank || wire.outM === undefined || wire.backM === undefined) return undefined;
  const sizes = sizesFor(wire).filter((conductor) => mayDo(electrical, circuit, conductor, bank));
  const branch = branchOf(electrical, circuit, figures.chain);
  const now = figuresOf(electrical);
  const tried = (index: number) => {
    const conductor = sizes[index];
    return conductor && attempt({ branch, now, circuit, highestV: bank.highestV }, conductor);
  };
  // Often the first size that may do does; it costs one look.
  let best = tried(0);
  if (best) return best;
  // More copper never loses more, carries less or asks for a greater fuse, so that the sizes part in two.
  let [tooSmall, enough] = [0, sizes.length];
  while (enough - tooSmall > 1) {
    const middle = Math.floor((tooSmall + enough) / 2);
    const choice = tried(middle);
    if (choice) [enough, best] = [middle, choice];
    else tooSmall = middle;
  }
  return best;
}

/** What can be said of a size without its neighbours: no size that is refused here would pass. */
function mayDo(electrical: Electrical, circuit: Circuit, conductor: Conductor, bank: Bank): boolean {
  if (exceeds(leastAreaMm2(circuit), conductor.areaMm2)) return false;
  const ampacityA = ampacityFor(conductor.areaMm2, circuit.wire)?.deratedA ?? 0;
  if (ampacityA === 0) return false;
  const { load } = circuit;
  if (circuit.feeds || !load) return true;
  // A load that holds its power takes this at least.
  const leastA = 'currentA' in load ? load.currentA : load.powerW / bank.lowestV;
  const fuse = fuseFor(circuit, leastA, bank.highestV);
  if (!fuse || exceeds(fuse.fuseA, ampacityA)) return false;
  const { outM = 0, backM = 0, insulationC } = circuit.wire;
  const ohmPerM = hotOhmPerM({ conductor, insulationC }) ?? 0;
  return !exceeds(leastA * ohmPerM * (outM + backM), permittedV(electrical, circuit));
}

/** The plan with nothing but what one circuit's conductor can bear upon: the battery keeps other branches apart. */
function branchOf(electrical: Electrical, circuit: Circuit, chain: readonly Circuit[]): Electrical {
  const figures = figuresOf(electrical);
  const [first] = chain;
  return {
    ...electrical,
    circuits: electrical.circuits.filter((each) =>
      circuit.charges ? chain.includes(each) : !each.charges && figures.get(each.name)?.chain?.[0] === first,
    ),
  };
}

const permittedV = (electrical: Electrical, circuit: Circuit): number => {
  const limit = dropLimitOf(electrical, circuit);
  return limit ? permittedDropV(limit, electrical.nominalV) : Number.POSITIVE_INFINITY;
};

/** The standard sizes of a wire's own system, build and finish, by rising area. */
export function sizesFor({ conductor }: Wire): readonly Conductor[] {
  const same = conductor
    ? conductorsOf(conductor.system, conductor.build, conductor.finish)
    : conductorsOf('mm²', 'flexible', 'plain');
  const sizes = same.length > 0 ? same : conductors.filter(({ system }) => system === conductor?.system);
  return sizes.toSorted((one, other) => one.areaMm2 - other.areaMm2);
}

interface Search {
  readonly branch: Electrical;
  /** What flows with the conductors that the plan has. */
  readonly now: ReadonlyMap<string, CircuitFigures>;
  readonly circuit: Circuit;
  readonly highestV: number;
}

/** One conductor with the smallest fuse that suits it; undefined if any check of the circuit would be broken. */
function attempt(
  { branch, now, circuit, highestV }: Search,
  conductor: Conductor,
): CircuitChoice | undefined {
  const ampacityA = ampacityFor(conductor.areaMm2, circuit.wire)?.deratedA ?? 0;
  const changed = { ...circuit, wire: { ...circuit.wire, conductor } };
  const flows = flowsOf({
    ...branch,
    circuits: branch.circuits.map((each) => (each === circuit ? changed : each)),
  });
  const flow = flows.flowOf(changed);
  if (!flow || !(flow.currentA > 0)) return undefined;
  const fuse = fuseFor(circuit, flow.currentA, highestV);
  if (!fuse || exceeds(fuse.fuseA, ampacityA)) return undefined;
  if (!keepsDrops({ branch, now, circuit }, changed, flows)) return undefined;
  const before = circuit.wire.conductor;
  const lengthM = (circuit.wire.outM ?? 0) + (circuit.wire.backM ?? 0);
  return {
    circuit,
    conductor,
    ...fuse,
    designA: flow.currentA,
    ampacityA,
    dropV: flow.dropV,
    dropShare: flow.dropV / branch.nominalV,
    ...(before && {
      extraMassKg: (conductor.areaMm2 - before.areaMm2) * 1e-6 * COPPER_KG_PER_M3 * lengthM,
    }),
  };
}

/** The smallest rating of the family that the plan names, or of a usual one where that has none. */
function fuseFor(
  { fuse }: Circuit,
  designA: number,
  highestV: number,
): Pick<CircuitChoice, 'family' | 'fuseA'> | undefined {
  const families = [...(fuse ? [fuse.family] : []), ...usualFamilies.map(fuseFamily)];
  for (const family of families) {
    if (breakingCapacityA(family, highestV) === undefined) continue;
    const fuseA = smallestFuse(family.ratingsA, designA, fuseMargin.value);
    if (fuseA !== undefined) return { family, fuseA };
  }
  return undefined;
}

/**
 * Whether the circuit keeps its limit, and whether those that share its way lose no more than they may: or than they
 * do now, where they break their limit already and this circuit is not the one to mend.
 */
function keepsDrops(
  { branch, now, circuit }: Omit<Search, 'highestV'>,
  changed: Circuit,
  flows: Flows,
): boolean {
  return branch.circuits.every((each) => {
    if (each.feeds) return true;
    const isOwn = each === circuit;
    const dropV = flows.flowOf(isOwn ? changed : each)?.dropV;
    if (dropV === undefined) return !isOwn;
    // Where nothing is known now, since some circuit cannot bring its load, there is nothing to keep.
    const nowV = isOwn ? 0 : (now.get(each.name)?.dropV ?? Number.POSITIVE_INFINITY);
    return !exceeds(dropV, Math.max(permittedV(branch, each), nowV));
  });
}

/** "Use 6 mm² flexible with a fuse of 15 A: …". */
export function choiceInWords(choice: CircuitChoice): Phrase {
  const { circuit, conductor, family, fuseA, ampacityA, dropShare } = choice;
  const size = sizeText(conductor, conductor);
  return say`Use ${size} with a fuse of ${current(fuseA)} (${family.id}): it loses ${share(dropShare)} from the battery to ${circuit.to} and carries ${current(ampacityA)}; ${copperInWords(choice)}, and cost is not known here.`;
}

function copperInWords({ extraMassKg }: CircuitChoice): Phrase {
  if (extraMassKg === undefined) return say`the plan names no conductor to compare its mass with`;
  if (Math.abs(extraMassKg) < LEAST_SHOWN_KG)
    return say`less than ${mass(LEAST_SHOWN_KG)} of copper more or less`;
  return say`${mass(Math.abs(extraMassKg))} ${extraMassKg > 0 ? 'more' : 'less'} copper, insulation not counted`;
}
