import { asLiquidC } from '../build/liquid-water.ts';
import { type WantedFlow, wantedFlowOf } from '../build/outlet-flow.ts';
import type { Outlet, Pump, Water, WaterPipe, WaterTank } from '../build/water.ts';
import { type Liquid, type PipeSegment, seriesLossPa } from '../calc/water/pipe-loss.ts';
import { waterProperties } from '../calc/water/properties.ts';
import { type PumpCurve, straightPumpCurve } from '../calc/water/pump.ts';
import { type SolvedFlow, solveFlow } from '../calc/water/solve-flow.ts';
import type { Citation } from '../catalogue/citation.ts';
import { defaultLossTable, type FittingName, lossTables } from '../catalogue/water/fittings.ts';
import { type PipeMaterial, pipeRoughness } from '../catalogue/water/pipes.ts';
import { boreKeys, boreOf } from './pipe-bore.ts';

/*
 * The pressure side of the water as it is solved: for each outlet the pipes that its cold and its hot water take from
 * the tank, with what they lose. Roles and ends of pipes come from the build.
 */

/** The way of an outlet's water, from the tank on. */
export interface Supply {
  readonly outlet: Outlet;
  readonly kind: 'cold' | 'hot';
  readonly tank: WaterTank;
  readonly pipes: readonly WaterPipe[];
  readonly isPumped: boolean;
}

const pressed: readonly WaterPipe['role'][] = ['suction', 'cold', 'hot'];

/** Whether water under pressure, or drawn by the pump, is in it. */
export const isPressed = ({ role }: WaterPipe): boolean => pressed.includes(role);

/** Of pipes that lead to one place the longest counts, so that the order of the plan decides nothing. */
function feedingPipe(pipes: readonly WaterPipe[], to: string): WaterPipe | undefined {
  return pipes
    .filter((pipe) => pipe.to === to && isPressed(pipe))
    .toSorted((a, b) => (b.lengthM ?? 0) - (a.lengthM ?? 0) || (a.name < b.name ? -1 : 1))[0];
}

/** Every way on which an outlet gets water, in the order of the outlets, cold before hot. */
export function suppliesOf(water: Water): readonly Supply[] {
  return water.outlets.flatMap((outlet) =>
    (['cold', 'hot'] as const).flatMap((kind): Supply[] => {
      const ofKind = water.pipes.filter(({ role }) => (role === 'hot') === (kind === 'hot'));
      const last = feedingPipe(ofKind, outlet.name);
      const way = last && wayTo(water, last);
      return way ? [{ outlet, kind, ...way }] : [];
    }),
  );
}

/** Outlets that no pipe brings water to from a fresh tank. */
export function withoutSupply(water: Water, supplies: readonly Supply[]): readonly Outlet[] {
  const supplied = new Set(supplies.map(({ outlet }) => outlet.name));
  return water.outlets.filter(({ name }) => !supplied.has(name));
}

function wayTo(water: Water, last: WaterPipe): Pick<Supply, 'tank' | 'pipes' | 'isPumped'> | undefined {
  const way: WaterPipe[] = [];
  for (let pipe: WaterPipe | undefined = last; pipe && !way.includes(pipe); ) {
    way.unshift(pipe);
    const { from }: WaterPipe = pipe;
    const tank = water.tanks.find(({ name, contents }) => name === from && contents === 'fresh');
    if (tank) return { tank, pipes: way, isPumped: way.some((each) => each.from === 'pump') };
    pipe = feedingPipe(water.pipes, from);
  }
  return undefined;
}

/** The ways that the pump draws by: one for each pipe that leads to it, by their names. */
export function waysToPump(water: Water): readonly Pick<Supply, 'tank' | 'pipes'>[] {
  return water.pipes
    .filter((pipe) => pipe.to === 'pump' && pipe.role === 'suction')
    .toSorted((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((pipe) => wayTo(water, pipe) ?? []);
}

const fittingNames: Readonly<Record<WaterPipe['fittings'][number]['kind'], FittingName>> = {
  elbow: 'elbow 90',
  'long elbow': 'elbow 90 long',
  'tee, straight on': 'tee straight',
  'tee, to the side': 'tee branch',
  valve: 'ball valve',
  'non-return valve': 'check valve',
  entrance: 'entrance',
};

/** The table that loss coefficients are taken from. */
export const lossTableName = defaultLossTable;
const lossTable = lossTables[lossTableName];

const isTee = ({ kind }: WaterPipe['fittings'][number]): boolean => kind.startsWith('tee');

/** What a pipe's fittings lose. A pipe that begins at a tee and counts none leaves it to the side. */
function lossCoefficientOf({ fittings, extraLoss }: WaterPipe, beginsAtTee: boolean): number {
  const counted = fittings.reduce((sum, { kind, count }) => sum + count * lossTable[fittingNames[kind]].k, 0);
  const tee = beginsAtTee && extraLoss === 0 && !fittings.some(isTee) ? lossTable['tee branch'].k : 0;
  return counted + extraLoss + tee;
}

const roughAs: Readonly<Record<NonNullable<WaterPipe['material']>, PipeMaterial>> = {
  copper: 'copper',
  PEX: 'plastic',
  'rigid plastic': 'plastic',
  hose: 'hose',
};

/** No formula holds for a wall rougher than a tenth of the bore. */
const roughestShare = 0.1;

/** A pipe as the flow sees it, with a bore of one's own to try another size; undefined where length or bore is unknown. */
export function segmentOf(pipe: WaterPipe, water: Water, boreM?: number): PipeSegment | undefined {
  const innerDiameterM = boreM ?? boreOf(pipe)?.narrowestM;
  if (innerDiameterM === undefined || pipe.lengthM === undefined) return undefined;
  // Of the materials that a plan may name, hose is the roughest.
  const { roughnessM } = pipeRoughness[pipe.material ? roughAs[pipe.material] : 'hose'];
  return {
    lengthM: pipe.lengthM,
    innerDiameterM,
    roughnessM: Math.min(roughnessM, roughestShare * innerDiameterM),
    minorK: lossCoefficientOf(pipe, beginsAtTee(pipe, water)),
  };
}

/** Where it begins is neither pump, heater, tank nor outlet. */
function beginsAtTee({ from }: WaterPipe, { tanks, outlets }: Water): boolean {
  return (
    from !== 'pump' &&
    from !== 'heater' &&
    from !== 'outside' &&
    !tanks.some(({ name }) => name === from) &&
    !outlets.some(({ name }) => name === from)
  );
}

/** A supply of which everything is known. */
export interface KnownSupply extends Supply {
  /** One for each of the pipes. */
  readonly segments: readonly PipeSegment[];
  /** Of the outlet above the bottom of the tank: what is nearly empty must still give. */
  readonly riseM: number;
  readonly wanted: WantedFlow;
}

export type Resolved =
  | { readonly ok: true; readonly supply: KnownSupply }
  | { readonly ok: false; readonly missing: readonly string[] };

export const lengthKeys = ({ path, lengthM }: WaterPipe): readonly string[] =>
  lengthM === undefined ? [`${path.join('.')}.length`] : [];

/** How much higher a row of pipes ends than it begins: as typed and placed, pipe by pipe. */
export function riseOf(pipes: readonly WaterPipe[]): number | undefined {
  return pipes.reduce<number | undefined>((sum, { riseM, fromPlace, toPlace }) => {
    const rise = riseM ?? (fromPlace && toPlace ? toPlace.zM - fromPlace.zM : undefined);
    return sum === undefined || rise === undefined ? undefined : sum + rise;
  }, 0);
}

/** A rise that the plan types comes before what its places say. */
function riseOfSupply({ pipes, outlet, tank }: Supply): number | undefined {
  const between = outlet.zM === undefined || !tank.box ? undefined : outlet.zM - tank.box.bottomM;
  return pipes.some(({ riseM }) => riseM !== undefined)
    ? (riseOf(pipes) ?? between)
    : (between ?? riseOf(pipes));
}

export function resolve(supply: Supply, water: Water): Resolved {
  const { pipes, outlet, tank } = supply;
  const segments = pipes.flatMap((pipe) => segmentOf(pipe, water) ?? []);
  const riseM = riseOfSupply(supply);
  const wanted = wantedFlowOf(outlet);
  const missing = [
    ...pipes.flatMap((pipe) => [...(boreOf(pipe) ? [] : boreKeys(pipe)), ...lengthKeys(pipe)]),
    ...(riseM === undefined && outlet.zM === undefined ? [`water.outlets.${outlet.name}.above_floor`] : []),
    ...(riseM === undefined && !tank.box ? [`tanks.${tank.name}.size`, `tanks.${tank.name}.at`] : []),
    ...(wanted ? [] : [`water.outlets.${outlet.name}.flow`]),
  ];
  return missing.length > 0 || riseM === undefined || !wanted
    ? { ok: false, missing }
    : { ok: true, supply: { ...supply, segments, riseM, wanted } };
}

/** What flows: as cold as it comes from the tank, since cold water is the thicker. */
export function liquidOf({ coldC }: Water): Liquid {
  const { densityKgM3, kinematicViscosityM2S } = waterProperties(asLiquidC(coldC));
  return { densityKgM3, kinematicViscosityM2S };
}

export const pumpKeys = (pump: Pump | undefined): readonly string[] => {
  if (pump?.curve) return [];
  return [
    ...(pump?.openFlowM3PerS === undefined ? ['water.pump.flow'] : []),
    ...(pump?.cutOutPa === undefined ? ['water.pump.cut_out'] : []),
  ];
};

/** The pump's pressure by its flow, as its maker measured it, or straight from the cut-out to the open flow. */
export function givenCurveOf({ curve, openFlowM3PerS, cutOutPa }: Pump): PumpCurve | undefined {
  if (curve) return curve.map(({ flowM3PerS, pressurePa }) => ({ flowM3S: flowM3PerS, pressurePa }));
  if (openFlowM3PerS === undefined || cutOutPa === undefined) return undefined;
  return straightPumpCurve(openFlowM3PerS, cutOutPa);
}

/**
 * The curve that the pump keeps: its switch stops it at the cut-out, so that what the maker measured above counts for no
 * more than a line up to there.
 */
export function pumpCurveOf(pump: Pump): PumpCurve | undefined {
  const curve = givenCurveOf(pump);
  const { cutOutPa } = pump;
  if (!curve || cutOutPa === undefined) return curve;
  const below = curve.filter(({ pressurePa }) => pressurePa < cutOutPa);
  if (below.length === curve.length || below.length === 0) return curve;
  return [{ flowM3S: 0, pressurePa: cutOutPa }, ...below];
}

const beginsAlike = (supplies: readonly Supply[], at: number): boolean => {
  const pipe = supplies[0]?.pipes[at];
  return pipe !== undefined && supplies.every(({ pipes }) => pipes[at] === pipe);
};

/** How many of their first pipes supplies have in common. */
export function sharedBy(supplies: readonly KnownSupply[]): number {
  let shared = 0;
  while (beginsAlike(supplies, shared)) shared += 1;
  return shared;
}

/** The flow at each of the outlets, all of them open at once. Pipes that all share are counted with the sum. */
export function flowThrough(
  water: Water,
  supplies: readonly KnownSupply[],
  curve: PumpCurve | undefined,
): SolvedFlow {
  // Of one outlet alone all is shared, and solved in one go.
  const trunk = supplies[0]?.segments.slice(0, sharedBy(supplies)) ?? [];
  return solveFlow({
    liquid: liquidOf(water),
    trunk,
    branches: supplies.map(({ segments, riseM, wanted }) => ({
      segments: segments.slice(trunk.length),
      riseM,
      outlet: { nominalFlowM3S: wanted.flowM3PerS, nominalPressurePa: wanted.pressurePa },
    })),
    ...(curve && { pump: curve }),
  });
}

/** What a supply's pipes lose, each at a flow through all of them. */
export const lossesOf = (water: Water, { segments }: KnownSupply, flowM3PerS: number): readonly number[] => {
  const liquid = liquidOf(water);
  return segments.map((segment) => seriesLossPa(flowM3PerS, [segment], liquid));
};

/** Where bores, roughness and loss coefficients of these pipes come from. */
export function networkCitations(pipes: readonly WaterPipe[]): readonly Citation[] {
  const materials = pipes.map(({ material }) => roughAs[material ?? 'hose']);
  const fittings = pipes.flatMap((pipe) => pipe.fittings.map(({ kind }) => fittingNames[kind]));
  return [
    ...new Set([
      ...materials.flatMap((material) => pipeRoughness[material].citations),
      ...fittings.flatMap((fitting) => lossTable[fitting].citations),
    ]),
  ];
}
