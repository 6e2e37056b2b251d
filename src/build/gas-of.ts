import { fluids } from '../catalogue/fluids.ts';
import type { Plan } from '../plan/schema.ts';
import type { Appliance, Gas, GasPipe, GasStore, Locker, Protection } from './gas.ts';
import type { Layout } from './layout.ts';
import type { Locating } from './locating.ts';
import type { RoutedRun, Routes } from './routes.ts';
import { runLengthOf } from './run-length.ts';

type Given = NonNullable<Plan['gas']>;

/** A tank is not filled to its brim with liquid gas: it grows as it warms. The rule that checks it cites the sources. */
export const fillShare = 0.8;

export function gasOf(
  plan: Plan,
  layout: Layout | undefined,
  locating: Locating,
  routes: Routes | undefined,
): Gas | undefined {
  const { gas } = plan;
  if (!gas) return undefined;
  const path = ['gas'];
  const runs = new Map((routes?.runs ?? []).map((run) => [run.name, run]));
  return {
    path,
    stores: storesOf(plan, layout, locating),
    ...(gas.stored_in && { storedIn: gas.stored_in }),
    inUse: gas.in_use?.value ?? 1,
    ...(gas.upright !== undefined && { upright: gas.upright }),
    ...(gas.locker && { locker: lockerOf(gas.locker, locating) }),
    ...(gas.regulator && {
      regulator: {
        path: [...path, 'regulator'],
        pressurePa: gas.regulator.pressure.value,
        ...(gas.regulator.capacity && { capacityKgPerS: gas.regulator.capacity.value }),
        ...(gas.regulator.dated && { dated: gas.regulator.dated }),
      },
    }),
    hoses: Object.entries(gas.hoses ?? {}).map(([name, { length, dated }]) => ({
      name,
      path: [...path, 'hoses', name],
      ...(length && { lengthM: length.value }),
      ...(dated && { dated }),
    })),
    ...(gas.manifold && { manifold: manifoldOf(gas.manifold.thing, locating) }),
    tees: gas.tees ?? [],
    pipes: Object.entries(gas.pipes ?? {}).map(([name, pipe]) => pipeOf(name, pipe, runs)),
    appliances: Object.entries(gas.appliances ?? {}).map(([name, appliance]) =>
      applianceOf(name, appliance, locating),
    ),
    dropOuts: Object.entries(gas.drop_outs ?? {}).map(([name, { in: inside, area, at }]) => {
      const place = locating.at(at);
      return {
        name,
        path: [...path, 'drop_outs', name],
        ...(inside !== undefined && { in: inside }),
        ...(area && { areaM2: area.value }),
        ...(place && { place }),
      };
    }),
    saysDropOuts: gas.drop_outs !== undefined,
    ...(gas.tightness_test !== undefined && { tightnessTest: gas.tightness_test }),
  };
}

function storesOf(plan: Plan, layout: Layout | undefined, locating: Locating): GasStore[] {
  const fixed = new Set((layout?.fixings ?? []).map(({ of }) => of));
  return Object.entries(plan.tanks ?? {}).flatMap(([name, tank]): GasStore[] => {
    const { contents, holds } = tank;
    if (contents !== 'propane' && contents !== 'butane') return [];
    const solid = locating.solid(name);
    const filledFrom = tank.filled_from ?? plan.gas?.filled_from;
    return [
      {
        name,
        path: ['tanks', name],
        gas: contents,
        holdsKg: holds.kind === 'mass' ? holds.value : holds.value * fillShare * fluids[contents].densityKgM3,
        heldAs: holds.kind === 'mass' ? 'mass' : 'volume',
        ...(holds.kind !== 'mass' && { insideM3: holds.value }),
        emptyKg: tank.mass?.value ?? 0,
        hosts: hostsOf(plan, tank.in ?? tank.on),
        fixed: tank.fixings !== undefined || fixed.has(name),
        ...(solid && { whereabouts: solid.whereabouts, box: solid.box }),
        ...(filledFrom && { filledFrom }),
      },
    ];
  });
}

/** What something stands in or on, from the nearest on, whether or not its room is known. */
function hostsOf(plan: Plan, first: string | undefined): string[] {
  const hosts: string[] = [];
  for (let host = first; host !== undefined && host !== 'floor' && !hosts.includes(host); ) {
    hosts.push(host);
    const thing = plan.fixtures?.[host] ?? plan.stores?.[host] ?? plan.tanks?.[host];
    host = thing?.in ?? thing?.on;
  }
  return hosts;
}

function lockerOf(given: NonNullable<Given['locker']>, locating: Locating): Locker {
  const solid = locating.solid(given.thing);
  const ventPlace = locating.at(given.vent);
  return {
    path: ['gas', 'locker'],
    hosts: solid?.hosts ?? [],
    ...(given.thing !== undefined && { thing: given.thing }),
    ...(solid && {
      box: solid.box,
      floorM2: (solid.box.mostXM - solid.box.leastXM) * (solid.box.mostYM - solid.box.leastYM),
    }),
    ...(given.sealed !== undefined && { sealed: given.sealed }),
    ...(given.opens && { opens: given.opens }),
    ...(given.low_vent && { lowVentM2: given.low_vent.value }),
    ...(given.high_vent && { highVentM2: given.high_vent.value }),
    ...(ventPlace && { ventPlace }),
    ...(given.source_of_ignition !== undefined && { sourceOfIgnition: given.source_of_ignition }),
  };
}

function manifoldOf(thing: string | undefined, locating: Locating): NonNullable<Gas['manifold']> {
  const solid = locating.solid(thing);
  return {
    path: ['gas', 'manifold'],
    hosts: solid?.hosts ?? [],
    ...(thing !== undefined && { thing }),
    ...(solid && { whereabouts: solid.whereabouts }),
  };
}

function applianceOf(
  name: string,
  given: NonNullable<Given['appliances']>[string],
  locating: Locating,
): Appliance {
  const solid = locating.solid(given.thing);
  const place = locating.middle(given.thing);
  const exhaust = locating.at(given.exhaust);
  return {
    name,
    path: ['gas', 'appliances', name],
    hosts: solid?.hosts ?? [],
    ...(given.thing !== undefined && { thing: given.thing }),
    ...(solid && { box: solid.box, whereabouts: solid.whereabouts }),
    ...(place && { place }),
    ...(given.use && { use: given.use }),
    ...(given.input && {
      input:
        given.input.kind === 'massFlow'
          ? { gasKgPerS: given.input.value }
          : {
              powerW: given.input.value,
              ...(given.heating_value && { heatingValue: given.heating_value }),
            },
    }),
    ...(given.flue && { flue: given.flue }),
    ...(given.flame_failure !== undefined && { flameFailure: given.flame_failure }),
    ...(given.isolating_valve !== undefined && { isolatingValve: given.isolating_valve }),
    ...(given.pressure && { pressurePa: given.pressure.value }),
    ...(exhaust && { exhaust }),
  };
}

function pipeOf(
  name: string,
  given: NonNullable<Given['pipes']>[string],
  runs: ReadonlyMap<string, RoutedRun>,
): GasPipe {
  return {
    name,
    path: ['gas', 'pipes', name],
    from: given.from,
    to: given.to,
    bends: given.bends?.value ?? 0,
    tees: given.tees?.value ?? 0,
    ...(given.material && { material: given.material }),
    ...(given.size && { sizeM: given.size.value }),
    ...(given.wall && { wallM: given.wall.value }),
    ...(given.bore && { boreM: given.bore.value }),
    ...runLengthOf(given, runs),
    ...(given.hidden_joints && { hiddenJoints: given.hidden_joints.value }),
  };
}

export function protectionOf({ protection }: Plan, locating: Locating): Protection | undefined {
  if (!protection) return undefined;
  const { alarms = {}, extinguisher, fire_blanket: blanket } = protection;
  const path = ['protection'];
  const extinguisherPlace = locating.middle(extinguisher?.thing);
  const blanketPlace = locating.at(blanket?.at) ?? locating.middle(blanket?.thing);
  return {
    path,
    alarms: Object.entries(alarms).map(([name, { kind, thing, at, replace_by: replaceBy }]) => {
      const place = locating.at(at) ?? locating.middle(thing);
      return {
        name,
        path: [...path, 'alarms', name],
        kind,
        ...(place && { place }),
        ...(replaceBy && { replaceBy }),
      };
    }),
    ...(extinguisher && {
      extinguisher: {
        path: [...path, 'extinguisher'],
        ...(extinguisher.kind && { kind: extinguisher.kind }),
        ...(extinguisher.holds && { holdsKg: extinguisher.holds.value }),
        ...(extinguisher.thing !== undefined && { thing: extinguisher.thing }),
        ...(extinguisherPlace && { place: extinguisherPlace }),
      },
    }),
    ...(blanket && {
      fireBlanket: { path: [...path, 'fire_blanket'], ...(blanketPlace && { place: blanketPlace }) },
    }),
  };
}
