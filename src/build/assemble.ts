import { minimumPayMass } from '../calc/pay-mass.ts';
import { minimumPayMassRule } from '../catalogue/sources.ts';
import type { Assumption } from '../engine/finding.ts';
import { length, mass } from '../engine/measure.ts';
import { say } from '../engine/phrase.ts';
import type { Plan } from '../plan/schema.ts';
import { airOf, livingSpaceOf } from './air-of.ts';
import { baseVehicle, vehicleOf } from './base-vehicle.ts';
import type { Body, Variable } from './body.ts';
import type { Build, Vehicle } from './build.ts';
import { buildUpsOf } from './build-ups.ts';
import { electricsOf } from './electrical-of.ts';
import { energyOf } from './energy-of.ts';
import { gasOf, protectionOf } from './gas-of.ts';
import { habitsOf } from './habits-of.ts';
import { heatOf } from './heat-of.ts';
import { hoursFromUse } from './hours-from-use.ts';
import { layOut } from './lay-out.ts';
import { locatingIn } from './locating.ts';
import { peopleAboard } from './people.ts';
import { type Placed, somewhereIn, spaceOfBay } from './placing.ts';
import { routesOf } from './routes.ts';
import type { Routing } from './routing.ts';
import type { Simulation } from './simulating.ts';
import { statesOf, ticketsOf } from './states.ts';
import { thingsOf } from './things.ts';
import { waterOf } from './water-of.ts';

/**
 * Derives everything that follows from a plan. The order of entries does not matter. A plan with routes needs the
 * routing, see `routingFor`; its year of energy is worked out where a simulation is given, see `simulationFor`.
 */
export function assemble(plan: Plan, routing?: Routing, simulation?: Simulation): Build {
  const vehicle = vehicleOf(plan);
  const base = baseVehicle(plan, vehicle);
  const people = peopleAboard(plan, vehicle.bay);
  const things = thingsOf(plan, vehicle.bay);
  const linings = buildUpsOf(plan, vehicle.bay);
  const routed = routedBy(routing, plan, vehicle.bay, things.placed);
  const layout = vehicle.bay && layOut(plan, vehicle.bay, things.placed);
  const locating = locatingIn(layout, vehicle.bay);
  const habits = habitsOf(plan);
  const water = waterOf(plan, locating, routed?.routes);
  const gas = gasOf(plan, layout, locating, routed?.routes);
  const air = airOf(plan, locating);
  const heat = heatOf(plan, vehicle, layout, linings.buildUps, locating, routed?.routes);
  const protection = protectionOf(plan, locating);
  const livingSpace = layout && livingSpaceOf(layout, vehicle, plan);
  const engineExhaust = locating.at(plan.van.exhaust);
  const electrics = electricsOf(plan, routed?.routes);
  const effects = plan.stores ? { bodies: [], assumptions: [] } : personalEffects(people.persons, vehicle);
  const bodies = [
    ...base.bodies,
    ...people.bodies,
    ...linings.bodies,
    ...things.bodies,
    ...(routed?.bodies ?? []),
    ...effects.bodies,
  ].map(alike);
  const variables = bodies.flatMap((body) => (body.variable ? [body.variable] : []));
  const states = statesOf(plan, variables);
  const carried = waterCarried(variables);
  const tickets = ticketsOf(plan, bodies, variables, states);
  const build: Build = {
    name: plan.name ?? 'Unnamed plan',
    ...(plan.codes && { codes: plan.codes }),
    units: plan.units ?? 'metric',
    vehicle,
    bodies,
    ...(layout && { layout }),
    ...(routed && { routes: routed.routes }),
    ...(water && { water: water.water }),
    ...(gas && { gas }),
    ...(air && { air }),
    ...(heat && { heat: heat.heat }),
    ...(protection && { protection }),
    habits: habits.habits,
    ...(livingSpace && { livingSpace }),
    ...(engineExhaust && { engineExhaust }),
    ...(electrics && { electrical: electrics.electrical }),
    spaces: things.spaces,
    supplyKg: carried.supplyKg,
    persons: people.persons,
    licence: {
      ...(plan.people?.licence?.category && { category: plan.people.licence.category }),
      ...(plan.people?.licence?.test_passed && { testPassed: plan.people.licence.test_passed }),
    },
    storesGiven: plan.stores !== undefined,
    buildUps: linings.buildUps,
    states,
    tickets,
    overrides: Object.entries(plan.rules ?? {}).map(([rule, { limit, reason }]) => ({
      rule,
      path: ['rules', rule],
      limit,
      reason,
    })),
    waivers: (plan.waivers ?? []).map(({ check, subject, reason, by, until }, index) => ({
      check,
      ...(subject !== undefined && { subject }),
      ...(reason !== undefined && { reason }),
      by,
      until,
      path: ['waivers', index],
    })),
    assumptions: [
      ...base.assumptions,
      ...people.assumptions,
      ...linings.assumptions,
      ...things.assumptions,
      ...(routed?.assumptions ?? []),
      ...(electrics?.assumptions ?? []),
      ...habits.assumptions,
      ...(water?.assumptions ?? []),
      ...(heat?.assumptions ?? []),
      ...effects.assumptions,
      ...carried.assumptions,
      ...tickets.flatMap(({ name, path, assumed }) =>
        assumed.map((text) => ({ path, text: say`ticket ${name}: ${text}` })),
      ),
    ],
  };
  const energy = energyOf(plan, electrics?.electrical, simulation, hoursFromUse(build, plan.electrical));
  if (!energy) return build;
  return {
    ...build,
    energy,
    assumptions: [...build.assumptions, ...(energy.worked?.assumptions ?? [])],
  };
}

function routedBy(
  routing: Routing | undefined,
  plan: Plan,
  bay: Vehicle['bay'],
  placed: ReadonlyMap<string, Placed>,
): ReturnType<typeof routesOf> | undefined {
  if (!plan.routes) return undefined;
  if (!routing) throw new Error('A plan with routes is assembled with the routing that was loaded for it.');
  return routesOf(plan, plan.routes, bay, placed, routing);
}

/**
 * All the water there can be in fresh and waste tanks together: what the fresh tanks hold. Where a plan has only waste
 * tanks, nobody knows what fills them, and they may all be full.
 */
function waterCarried(variables: readonly Variable[]): {
  readonly supplyKg: number;
  readonly assumptions: readonly Assumption[];
} {
  const most = (wanted: Variable['group']) =>
    variables.reduce((sum, { group, mostKg }) => sum + (group === wanted ? mostKg : 0), 0);
  const freshKg = most('fresh');
  const wasteKg = most('waste');
  if (freshKg > 0 || wasteKg === 0) return { supplyKg: freshKg, assumptions: [] };
  const text = say`waste tanks: full at the worst (the plan has no fresh tank that their water could come from)`;
  return { supplyKg: wasteKg, assumptions: [{ path: ['tanks'], text }] };
}

/**
 * Bodies are made in several places, with or without a place, a host and a variable. Alike in shape, with the same
 * keys in the same order, they are read several times as fast, and everything is a sum over bodies.
 */
const alike = ({ label, path, sort, origin, massKg, massErrors, position, host, variable }: Body): Body => ({
  label,
  path,
  sort,
  origin,
  massKg,
  massErrors,
  position,
  host,
  variable,
});

/** A van's length where the plan is silent, for the allowance only: own choice. */
const usualLengthM = 6;

/** Where a plan says nothing of what people bring along, the regulation's minimum stands in for it. */
function personalEffects(
  persons: number,
  vehicle: Vehicle,
): { bodies: readonly Body[]; assumptions: readonly Assumption[] } {
  const lengthM = vehicle.overallLengthM ?? usualLengthM;
  const massKg = minimumPayMass(persons, lengthM);
  const { bay } = vehicle;
  const path = ['stores'];
  const body: Body = {
    label: 'personal effects',
    path,
    sort: 'store',
    origin: 'assumed',
    massKg,
    massErrors: [],
    ...(bay && { position: somewhereIn(spaceOfBay(bay), 'stores.personal effects') }),
    variable: { group: 'stores', name: 'personal effects', leastKg: 0, mostKg: massKg, countedIn: 'mass' },
  };
  const text = say`personal effects: ${mass(massKg)} (10 kg for each of ${String(persons)} and for each metre of ${length(lengthM)}), since the plan has no stores`;
  return { bodies: [body], assumptions: [{ path, text, source: minimumPayMassRule }] };
}
