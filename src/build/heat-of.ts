import { materialNamed } from '../catalogue/materials.ts';
import type { Assumption } from '../engine/finding.ts';
import { length, temperatureC } from '../engine/measure.ts';
import { say } from '../engine/phrase.ts';
import type { Plan } from '../plan/schema.ts';
import type { BuiltBuildUp, Vehicle } from './build.ts';
import { surfaceArea } from './build-ups.ts';
import { celsius } from './celsius.ts';
import type { Duct, EnvelopePart, EnvelopeSurface, Heat, Heater, HeatLayer, Pane } from './heat.ts';
import type { Layout } from './layout.ts';
import type { Locating } from './locating.ts';
import type { RoutedRun, Routes } from './routes.ts';
import { runLengthOf } from './run-length.ts';

type Given = NonNullable<Plan['heat']>;

/** Common practice, no source. */
const usualInsideC = 20;
const usualAsleepC = 16;
/** A panel van's body. From memory. */
const usualSkinM = 0.001;

const envelopeSurfaces: readonly EnvelopeSurface[] = [
  'floor',
  'ceiling',
  'left wall',
  'right wall',
  'bulkhead',
  'rear doors',
];

export interface Heated {
  readonly heat: Heat;
  readonly assumptions: readonly Assumption[];
}

export function heatOf(
  plan: Plan,
  vehicle: Vehicle,
  layout: Layout | undefined,
  buildUps: readonly BuiltBuildUp[],
  locating: Locating,
  routes: Routes | undefined,
): Heated | undefined {
  const { heat } = plan;
  if (!heat) return undefined;
  const path = ['heat'];
  const assumptions: Assumption[] = [];
  const assume = (text: Assumption['text']) => assumptions.push({ path, text });
  if (!heat.inside) assume(say`inside: ${temperatureC(usualInsideC)} (\`heat.inside\` says otherwise)`);
  if (!heat.asleep)
    assume(say`inside at night: ${temperatureC(usualAsleepC)} (\`heat.asleep\` says otherwise)`);
  if (!heat.skin?.thickness) assume(say`the van's skin: ${length(usualSkinM)} of steel (from memory)`);
  const runs = new Map((routes?.runs ?? []).map((run) => [run.name, run]));
  const skinMaterial = materialNamed(heat.skin?.material ?? 'steel') ?? materialNamed('steel');
  if (!skinMaterial) return undefined;
  const cover = heat.ribs?.covered_by && materialNamed(heat.ribs.covered_by.material);
  const envelope = envelopeOf(plan, vehicle, layout, buildUps);
  if (envelope.some(({ surface }) => doorsOf(plan, surface).length > 0))
    assume(say`doors in a wall are lined as the wall is`);
  return {
    heat: {
      path,
      insideC: heat.inside ? celsius(heat.inside) : usualInsideC,
      asleepC: heat.asleep
        ? celsius(heat.asleep)
        : Math.min(usualAsleepC, heat.inside ? celsius(heat.inside) : usualInsideC),
      skin: { material: skinMaterial, thicknessM: heat.skin?.thickness?.value ?? usualSkinM },
      ...(heat.ribs && {
        ribs: {
          path: [...path, 'ribs'],
          ...(heat.ribs.depth && { depthM: heat.ribs.depth.value }),
          ...(heat.ribs.metal && { metalM: heat.ribs.metal.value }),
          ...(cover &&
            heat.ribs.covered_by && {
              coveredBy: { material: cover, thicknessM: heat.ribs.covered_by.thickness.value },
            }),
        },
      }),
      ...(heat.air_changes_per_hour && { airChangesPerHour: heat.air_changes_per_hour.value }),
      envelope,
      panes: panesOf(plan),
      ...(heat.cab && {
        cab: {
          path: [...path, 'cab'],
          closedBy: heat.cab.closed_by,
          ...(heat.cab.area && { areaM2: heat.cab.area.value }),
          ...(heat.cab.u_value && { uValue: heat.cab.u_value.value }),
        },
      }),
      ...(heat.heater && { heater: heaterOf(heat.heater, locating) }),
      ducts: Object.entries(heat.ducts ?? {}).map(([name, duct]) => ductOf(name, duct, runs)),
      ...(heat.warms_up_in && { warmsUpInS: heat.warms_up_in.value }),
    },
    assumptions,
  };
}

type Opening = NonNullable<Plan['van']['openings']>[string];

const areaOf = ({ length: along, width, height }: Opening): number =>
  [along, width, height].reduce((product, side) => product * (side?.value ?? 1), 1);

/** Doors within a wall; the rear doors are a surface of their own, and one in the bulkhead leads to the cab. */
const doorsOf = ({ van }: Plan, surface: EnvelopeSurface): readonly Opening[] =>
  surface === 'bulkhead' || surface === 'rear doors'
    ? []
    : Object.values(van.openings ?? {}).filter(
        (opening) => opening.in === surface && opening.kind === 'door',
      );

function envelopeOf(
  plan: Plan,
  { bay }: Vehicle,
  layout: Layout | undefined,
  buildUps: readonly BuiltBuildUp[],
): EnvelopePart[] {
  if (!bay) return [];
  return envelopeSurfaces.map((surface) => {
    const covering = buildUps.filter((each) => covers(each.surface, surface));
    const doorsM2 = doorsOf(plan, surface).reduce((sum, door) => sum + areaOf(door), 0);
    const ribsM = (layout?.ribs ?? [])
      .filter((rib) => rib.surface === surface)
      .reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
    return {
      surface,
      path: covering[0]?.path ?? ['build_ups'],
      areaM2: surfaceArea(surface, bay, plan.van) + doorsM2,
      buildUps: covering.map(({ name }) => name),
      layers: covering.flatMap((each) => layersOf(plan, each)),
      ribShare: Math.min(1, ribsM / bay.lengthM),
    };
  });
}

const covers = (covered: BuiltBuildUp['surface'], surface: EnvelopeSurface): boolean =>
  covered === surface || (covered === 'walls' && (surface === 'left wall' || surface === 'right wall'));

const layersOf = (plan: Plan, { name, path, layers }: BuiltBuildUp): HeatLayer[] =>
  layers.map((layer, index): HeatLayer => {
    const given = plan.build_ups?.[name]?.layers[index];
    return {
      path: [...path, 'layers', index],
      name: layer.name,
      share: layer.share,
      arealMassKgM2: layer.arealMassKgM2,
      ...(layer.material && { material: layer.material }),
      ...(given?.thickness && { thicknessM: given.thickness.value }),
      ...(given?.conductivity && { conductivity: given.conductivity.value }),
      ...(given?.vapour_resistance && { vapourFactor: given.vapour_resistance.value }),
      ...(given?.vapour_air_layer && { vapourAirM: given.vapour_air_layer.value }),
    };
  });

/** Every window of the load bay, and every opening that is said to have a pane. */
function panesOf(plan: Plan): Pane[] {
  const given = plan.heat?.panes ?? {};
  return Object.entries(plan.van.openings ?? {}).flatMap(([name, opening]): Pane[] => {
    const pane = given[name];
    if (opening.kind !== 'window' && !pane) return [];
    return [
      {
        name,
        path: pane ? ['heat', 'panes', name] : ['van', 'openings', name],
        surface: opening.in,
        areaM2: areaOf(opening),
        cover: pane?.cover === true,
        ...(pane?.kind && { kind: pane.kind }),
        ...(pane?.u_value && { uValue: pane.u_value.value }),
      },
    ];
  });
}

function heaterOf(given: NonNullable<Given['heater']>, locating: Locating): Heater {
  const solid = locating.solid(given.thing);
  const [place, exhaust, combustionAir] = [
    locating.middle(given.thing),
    locating.at(given.exhaust),
    locating.at(given.combustion_air),
  ];
  return {
    path: ['heat', 'heater'],
    ...(given.thing !== undefined && { thing: given.thing }),
    ...(place && { place }),
    ...(solid && { whereabouts: solid.whereabouts }),
    ...(given.output && { outputW: given.output.value }),
    ...(given.heated_by && { heatedBy: given.heated_by }),
    ...(given.efficiency && { efficiency: given.efficiency.value }),
    ...(given.flue && { flue: given.flue }),
    ...(exhaust && { exhaust }),
    ...(combustionAir && { combustionAir }),
    ...(given.circuit !== undefined && { circuit: given.circuit }),
    ...(given.duct_limit && { ductLimitM: given.duct_limit.value }),
    ...(given.duct_outlets_limit && { ductOutletsLimit: given.duct_outlets_limit.value }),
  };
}

function ductOf(
  name: string,
  given: NonNullable<Given['ducts']>[string],
  runs: ReadonlyMap<string, RoutedRun>,
): Duct {
  return {
    name,
    path: ['heat', 'ducts', name],
    ...runLengthOf(given, runs),
    ...(given.bore && { boreM: given.bore.value }),
    ...(given.outlets && { outlets: given.outlets.value }),
  };
}
