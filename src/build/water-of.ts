import type { PlaceInVan } from '../calc/space/route.ts';
import { fluids } from '../catalogue/fluids.ts';
import { materialNamed } from '../catalogue/materials.ts';
import type { Assumption } from '../engine/finding.ts';
import { temperatureC } from '../engine/measure.ts';
import { say } from '../engine/phrase.ts';
import type { Plan } from '../plan/schema.ts';
import { fittingKinds } from '../plan/schema-water.ts';
import { celsius } from './celsius.ts';
import { asLiquidC } from './liquid-water.ts';
import type { Locating } from './locating.ts';
import { pipeRoles } from './pipe-roles.ts';
import type { RoutedRun, Routes } from './routes.ts';
import { runLengthOf } from './run-length.ts';
import type { Outlet, Pump, Water, WaterHeater, WaterPipe, WaterTank, Wrap } from './water.ts';

type Given = NonNullable<Plan['water']>;
type GivenPipe = NonNullable<Given['pipes']>[string];
type GivenTank = NonNullable<Plan['tanks']>[string];

/** Of cold water in a tank in winter: own choice, on the cold side. */
const usualColdC = 10;

export interface Watered {
  readonly water: Water;
  readonly assumptions: readonly Assumption[];
}

export function waterOf(plan: Plan, locating: Locating, routes: Routes | undefined): Watered | undefined {
  const { water } = plan;
  if (!water) return undefined;
  const path = ['water'];
  const tanks = tanksOf(plan, locating);
  const pump = water.pump && pumpOf(water.pump, locating);
  const heater = water.heater && heaterOf(water.heater, locating);
  const roles = pipeRoles(water, tanks);
  const toHot = new Set(
    Object.entries(water.pipes ?? {}).flatMap(([name, { to }]) => (roles.get(name) === 'hot' ? [to] : [])),
  );
  const outlets = Object.entries(water.outlets ?? {}).map(([name, outlet]) =>
    outletOf(name, outlet, plan, locating, toHot.has(name)),
  );
  const points = new Map((routes?.points ?? []).map(({ name, place }) => [name, place]));
  const placeOf = (name: string, begins: boolean): PlaceInVan | undefined => {
    if (name === 'pump') return pump?.place;
    if (name === 'heater') return heater?.place;
    const outlet = outlets.find((each) => each.name === name);
    if (outlet) {
      const zM = begins ? outlet.wasteZM : outlet.zM;
      return outlet.place && zM !== undefined ? { ...outlet.place, zM } : undefined;
    }
    const tank = tanks.find((each) => each.name === name);
    if (!tank) return points.get(name);
    const middle = locating.middle(name);
    // Drawn from its bottom, filled at its top.
    return middle && tank.box && { ...middle, zM: begins ? tank.box.bottomM : tank.box.topM };
  };
  const runs = new Map((routes?.runs ?? []).map((run) => [run.name, run]));
  const assumptions: Assumption[] = [];
  if (!water.cold)
    assumptions.push({
      path,
      text: say`cold water: ${temperatureC(usualColdC)} (\`water.cold\` says otherwise)`,
    });
  return {
    water: {
      path,
      // What is colder is ice, and stands in no pipe.
      coldC: water.cold ? asLiquidC(celsius(water.cold)) : usualColdC,
      tanks,
      ...(pump && { pump }),
      ...(water.accumulator && {
        accumulator: {
          path: [...path, 'accumulator'],
          holdsM3: water.accumulator.holds.value,
          ...(water.accumulator.charged_to && { chargedToPa: water.accumulator.charged_to.value }),
        },
      }),
      ...(heater && { heater }),
      pipes: Object.entries(water.pipes ?? {}).map(([name, pipe]): WaterPipe => {
        const ends = { fromPlace: placeOf(pipe.from, true), toPlace: placeOf(pipe.to, false) };
        return {
          ...pipeOf(name, pipe, ends, runs, routes),
          role: roles.get(name) ?? 'apart',
        };
      }),
      outlets,
      valves: Object.entries(water.valves ?? {}).map(([name, { kind, pipe, thing }]) => ({
        name,
        path: [...path, 'valves', name],
        kind,
        ...(pipe !== undefined && { pipe }),
        ...(thing !== undefined && { thing }),
      })),
    },
    assumptions,
  };
}

function wrapOf(
  given: { readonly material: string; readonly thickness: { readonly value: number } } | undefined,
): {
  readonly insulation?: Wrap;
} {
  const material = given && materialNamed(given.material);
  return given && material ? { insulation: { material, thicknessM: given.thickness.value } } : {};
}

function tanksOf(plan: Plan, locating: Locating): WaterTank[] {
  return Object.entries(plan.tanks ?? {}).flatMap(([name, tank]): WaterTank[] => {
    const { contents } = tank;
    if (contents !== 'fresh' && contents !== 'waste') return [];
    const solid = locating.solid(name);
    return [
      {
        name,
        path: ['tanks', name],
        contents,
        holdsM3:
          tank.holds.kind === 'volume' ? tank.holds.value : tank.holds.value / fluids[contents].densityKgM3,
        usableShare: tank.usable?.value ?? 1,
        usableGiven: tank.usable !== undefined,
        emptyKg: tank.mass?.value ?? 0,
        heated: tank.heated === true,
        inToilet: isInToilet(plan, tank),
        ...(solid && { whereabouts: solid.whereabouts, box: solid.box }),
        ...(tank.vent && { ventBoreM: tank.vent.value }),
        ...(tank.inspection && { inspectionM: tank.inspection.value }),
        ...(tank.baffles && { baffles: tank.baffles.value }),
        ...(tank.drinking_water !== undefined && { drinkingWater: tank.drinking_water }),
        ...wrapOf(tank.insulation),
        ...(tank.filled_from && { filledFrom: tank.filled_from }),
        ...(tank.overflows_to && { overflowsTo: tank.overflows_to }),
        ...(tank.fill_rate && { fillM3PerS: tank.fill_rate.value }),
      },
    ];
  });
}

function isInToilet(plan: Plan, tank: GivenTank): boolean {
  const host = tank.in ?? tank.on;
  return host !== undefined && plan.fixtures?.[host]?.is === 'toilet';
}

function pumpOf(given: NonNullable<Given['pump']>, locating: Locating): Pump {
  const place = locating.middle(given.thing);
  return {
    path: ['water', 'pump'],
    ...(given.thing !== undefined && { thing: given.thing }),
    ...(place && { place }),
    ...(given.flow && { openFlowM3PerS: given.flow.value }),
    ...(given.cut_out && { cutOutPa: given.cut_out.value }),
    ...(given.cut_in && { cutInPa: given.cut_in.value }),
    ...(given.curve && {
      curve: given.curve
        .map(({ flow, pressure }) => ({ flowM3PerS: flow.value, pressurePa: pressure.value }))
        .sort((a, b) => a.flowM3PerS - b.flowM3PerS),
    }),
    ...(given.circuit !== undefined && { circuit: given.circuit }),
  };
}

function heaterOf(given: NonNullable<Given['heater']>, locating: Locating): WaterHeater {
  const solid = locating.solid(given.thing);
  const place = locating.middle(given.thing);
  return {
    path: ['water', 'heater'],
    kind: given.kind,
    ...(given.thing !== undefined && { thing: given.thing }),
    ...(place && { place }),
    ...(solid && { whereabouts: solid.whereabouts }),
    ...(given.holds && { holdsM3: given.holds.value }),
    ...(given.power && { powerW: given.power.value }),
    ...(given.temperature && { temperatureC: celsius(given.temperature) }),
    ...(given.heated_by && { heatedBy: given.heated_by }),
    ...(given.efficiency && { efficiency: given.efficiency.value }),
    ...(given.circuit !== undefined && { circuit: given.circuit }),
    ...(given.relief_valve !== undefined && { reliefValve: given.relief_valve }),
    ...(given.mixing_valve !== undefined && { mixingValve: given.mixing_valve }),
  };
}

const useOf = { shower: 'shower', toilet: 'toilet' } as const;

function outletOf(
  name: string,
  given: NonNullable<Given['outlets']>[string],
  plan: Plan,
  locating: Locating,
  hot: boolean,
): Outlet {
  const solid = locating.solid(given.thing);
  const is = given.thing === undefined ? undefined : plan.fixtures?.[given.thing]?.is;
  const use = given.use ?? (is === 'shower' || is === 'toilet' ? useOf[is] : 'tap');
  const place = locating.middle(given.thing);
  const zM = given.above_floor?.value ?? solid?.box.topM;
  const wasteZM = given.waste_above_floor?.value ?? solid?.box.bottomM;
  return {
    name,
    path: ['water', 'outlets', name],
    use,
    useGiven: given.use !== undefined || is === 'shower' || is === 'toilet',
    drains: given.drains ?? (use === 'tap' || use === 'shower'),
    hot,
    ...(given.thing !== undefined && { thing: given.thing }),
    ...(given.flow && { flowM3PerS: given.flow.value }),
    ...(given.pressure && { pressurePa: given.pressure.value }),
    ...(place && { place }),
    ...(zM !== undefined && { zM }),
    ...(wasteZM !== undefined && { wasteZM }),
    ...(given.trap && { trapM: given.trap.value }),
  };
}

interface Ends {
  readonly fromPlace: PlaceInVan | undefined;
  readonly toPlace: PlaceInVan | undefined;
}

function pipeOf(
  name: string,
  given: GivenPipe,
  { fromPlace, toPlace }: Ends,
  runs: ReadonlyMap<string, RoutedRun>,
  routes: Routes | undefined,
): Omit<WaterPipe, 'role'> {
  const length = runLengthOf(given, runs);
  const inFrost = length.run && exposedPartOf(length.run, routes);
  const bothInside = fromPlace && toPlace && fromPlace.zM >= 0 && toPlace.zM >= 0;
  const exposedM = inFrost?.lengthM ?? (length.run === undefined && bothInside ? 0 : undefined);
  return {
    name,
    path: ['water', 'pipes', name],
    from: given.from,
    to: given.to,
    fittings: fittingKinds.flatMap((kind) => {
      const count = given.fittings?.[kind]?.value;
      return count ? [{ kind, count }] : [];
    }),
    extraLoss: given.loss?.value ?? 0,
    heated: given.heated === true,
    exposedIn: inFrost?.chases ?? [],
    ...length,
    ...(given.material && { material: given.material }),
    ...(given.size && { sizeM: given.size.value }),
    ...(given.bore && { boreM: given.bore.value }),
    ...(given.rise && { riseM: given.rise.value }),
    ...(fromPlace && { fromPlace }),
    ...(toPlace && { toPlace }),
    ...wrapOf(given.insulation),
    ...(given.drinking_water !== undefined && { drinkingWater: given.drinking_water }),
    ...(exposedM !== undefined && { exposedM }),
  };
}

/** How much of a run lies under the floor or outside, slack included; undefined where its way is not known. */
function exposedPartOf(
  { way, legs, slackShare, lengthM, lengthIsTyped }: RoutedRun,
  routes: Routes | undefined,
): { readonly lengthM: number; readonly chases: readonly string[] } | undefined {
  if (way !== 'chases' && way !== 'straight') return undefined;
  const chases = new Map((routes?.chases ?? []).map((chase) => [chase.id, chase]));
  const frosty = legs.map((leg) => {
    const laid = leg.kind === 'chase' ? chases.get(leg.id)?.runs : undefined;
    const isCold = laid === 'under floor' || laid === 'outside';
    if (isCold) return leg.lengthM;
    return leg.kind === 'chase' ? 0 : leg.lengthM * belowFloor(leg.ends[0].zM, leg.ends[1].zM);
  });
  const wayM = legs.reduce((sum, leg) => sum + leg.lengthM, 0);
  const coldM = frosty.reduce((sum, each) => sum + each, 0);
  const perWay = lengthIsTyped && lengthM !== undefined && wayM > 0 ? lengthM / wayM : 1 + slackShare;
  return {
    lengthM: coldM * perWay,
    chases: legs.flatMap((leg, index) => (leg.kind === 'chase' && (frosty[index] ?? 0) > 0 ? [leg.id] : [])),
  };
}

/** The part of a straight way between two heights that is below the floor. */
function belowFloor(oneM: number, otherM: number): number {
  const [lowM, highM] = [Math.min(oneM, otherM), Math.max(oneM, otherM)];
  if (lowM >= 0) return 0;
  return highM <= 0 ? 1 : -lowM / (highM - lowM);
}
