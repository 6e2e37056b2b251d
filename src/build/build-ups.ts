import { arealMassOf } from '../calc/sheet-mass.ts';
import { materialNamed } from '../catalogue/materials.ts';
import type { Assumption } from '../engine/finding.ts';
import { area } from '../engine/measure.ts';
import { say } from '../engine/phrase.ts';
import type { Plan } from '../plan/schema.ts';
import type { Body, Coordinate, ErrorTerm, Position } from './body.ts';
import type { BuiltBuildUp, BuiltLayer } from './build.ts';
import { errorsOf } from './errors.ts';
import { type LoadBay, placeIn, somewhereIn, spaceOfBay } from './placing.ts';
import { densityErrors } from './things.ts';

type Van = Plan['van'];
type BuildUp = NonNullable<Plan['build_ups']>[string];
type Surface = NonNullable<BuildUp['of']>;
type Layer = BuildUp['layers'][number];

export interface Linings {
  readonly bodies: readonly Body[];
  readonly buildUps: readonly BuiltBuildUp[];
  readonly assumptions: readonly Assumption[];
}

/** Layers over the floor, the walls or the ceiling: one body for each build-up. */
export function buildUpsOf(plan: Plan, bay: LoadBay | undefined): Linings {
  const assumptions: Assumption[] = [];
  const bodies: Body[] = [];
  const buildUps: BuiltBuildUp[] = [];
  for (const [name, buildUp] of Object.entries(plan.build_ups ?? {})) {
    const path = ['build_ups', name];
    const source = path.join('.');
    const areaM2 = buildUp.area?.value ?? (buildUp.of && bay ? surfaceArea(buildUp.of, bay, plan.van) : 0);
    if (!buildUp.area && buildUp.of) {
      assumptions.push({
        path,
        text: say`${name}: covers ${area(areaM2)}, the ${buildUp.of} of the load bay less openings`,
      });
    }
    const layers = buildUp.layers.map((layer, index) =>
      builtLayer(layer, areaM2, `${source}.layers.${index}`),
    );
    const massKg = layers.reduce((sum, { layer }) => sum + layer.massKg, 0);
    const areaErrors =
      buildUp.area && areaM2 > 0 ? errorsOf(buildUp.area, `${source}.area`, massKg / areaM2) : [];
    const position = bay && placeOf(buildUp, name, bay, plan.van, assumptions);
    buildUps.push({
      name,
      path,
      ...(buildUp.of && { surface: buildUp.of }),
      areaM2,
      layers: layers.map(({ layer }) => layer),
    });
    bodies.push({
      label: name,
      path,
      sort: 'build-up',
      origin: 'computed',
      massKg,
      massErrors: [...areaErrors, ...layers.flatMap(({ errors }) => errors)],
      ...(position && { position }),
    });
  }
  return { bodies, buildUps, assumptions };
}

function builtLayer(
  layer: Layer,
  areaM2: number,
  source: string,
): { layer: BuiltLayer; errors: readonly ErrorTerm[] } {
  const share = layer.share?.value ?? 1;
  const covered = areaM2 * share;
  const material = layer.material === undefined ? undefined : materialNamed(layer.material);
  const shareErrors = (arealMassKgM2: number) =>
    layer.share ? errorsOf(layer.share, `${source}.share`, arealMassKgM2 * areaM2) : [];
  if (material && layer.thickness) {
    const arealMassKgM2 = arealMassOf(layer.thickness.value, material.densityKgM3);
    return {
      layer: {
        name: material.name,
        material,
        thicknessM: layer.thickness.value,
        share,
        arealMassKgM2,
        massKg: arealMassKgM2 * covered,
      },
      errors: [
        ...errorsOf(layer.thickness, `${source}.thickness`, material.densityKgM3 * covered),
        ...densityErrors(material, layer.thickness.value * covered),
        ...shareErrors(arealMassKgM2),
      ],
    };
  }
  const arealMassKgM2 = layer.areal_mass?.value ?? 0;
  return {
    layer: { name: layer.name ?? 'layer', share, arealMassKgM2, massKg: arealMassKgM2 * covered },
    errors: [
      ...(layer.areal_mass ? errorsOf(layer.areal_mass, `${source}.areal_mass`, covered) : []),
      ...shareErrors(arealMassKgM2),
    ],
  };
}

/** The area of a surface of the load bay, less its openings and, for the floor, the wheel arches. */
export function surfaceArea(surface: Surface, bay: LoadBay, van: Van): number {
  const sides: Record<Exclude<Surface, 'walls'>, number> = {
    floor: bay.lengthM * bay.widthM,
    ceiling: bay.lengthM * bay.widthM,
    'left wall': bay.lengthM * bay.heightM,
    'right wall': bay.lengthM * bay.heightM,
    bulkhead: bay.widthM * bay.heightM,
    'rear doors': bay.widthM * bay.heightM,
  };
  if (surface === 'walls') return surfaceArea('left wall', bay, van) + surfaceArea('right wall', bay, van);
  const openings = Object.values(van.openings ?? {})
    // What covers the rear doors is on the doors themselves.
    .filter((opening) => opening.in === surface && !(surface === 'rear doors' && opening.kind === 'door'))
    .reduce(
      (sum, { length, width, height }) =>
        sum + [length, width, height].reduce((product, side) => product * (side?.value ?? 1), 1),
      0,
    );
  const arches = van.wheel_arches;
  const underArches = surface === 'floor' && arches ? 2 * arches.length.value * arches.width.value : 0;
  return Math.max(0, sides[surface] - openings - underArches);
}

/** The wall with fewer openings is the heavier one. */
function sidewaysOfWalls(bay: LoadBay, van: Van): number {
  const leftM2 = surfaceArea('left wall', bay, van);
  const rightM2 = surfaceArea('right wall', bay, van);
  return leftM2 + rightM2 > 0 ? ((rightM2 - leftM2) / (rightM2 + leftM2)) * (bay.widthM / 2) : 0;
}

const at = (valueM: number): Coordinate => ({ valueM, errors: [] });

/** A surface's mass acts at its middle; layers given by area alone may be anywhere. */
function placeOf(
  buildUp: BuildUp,
  name: string,
  bay: LoadBay,
  van: Van,
  assumptions: Assumption[],
): Position {
  const source = `build_ups.${name}.at`;
  const space = spaceOfBay(bay);
  if (buildUp.at) {
    const { position, assumed } = placeIn(space, {
      name,
      source,
      size: undefined,
      at: buildUp.at,
      onTop: false,
    });
    assumptions.push({ path: ['build_ups', name], text: say`${name}: ${assumed.join('; ')}` });
    return position;
  }
  const along = (fromFrontM: number): Coordinate => ({
    valueM: bay.behindFrontAxleM + fromFrontM,
    errors: bay.startErrors,
  });
  const middle: Position = {
    x: along(bay.lengthM / 2),
    y: at(0),
    z: at(bay.heightM / 2),
  };
  switch (buildUp.of) {
    case 'floor':
      return { ...middle, z: at(0) };
    case 'ceiling':
      return { ...middle, z: at(bay.heightM) };
    case 'walls':
      return { ...middle, y: at(buildUp.area ? 0 : sidewaysOfWalls(bay, van)) };
    case 'left wall':
      return { ...middle, y: at(-bay.widthM / 2) };
    case 'right wall':
      return { ...middle, y: at(bay.widthM / 2) };
    case 'bulkhead':
      return { ...middle, x: along(0) };
    case 'rear doors':
      return { ...middle, x: along(bay.lengthM) };
    case undefined:
      assumptions.push({
        path: ['build_ups', name],
        text: say`${name}: somewhere in the load bay, taken at its middle`,
      });
      return somewhereIn(space, source);
  }
}
