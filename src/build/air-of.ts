import type { Place, Plan } from '../plan/schema.ts';
import type { Air, Fan, LivingSpace, Vent } from './air.ts';
import type { Vehicle } from './build.ts';
import type { Layout } from './layout.ts';
import type { Locating } from './locating.ts';

type Given = NonNullable<Plan['air']>;

export function airOf({ air, van }: Plan, locating: Locating): Air | undefined {
  if (!air) return undefined;
  const path = ['air'];
  const vents = Object.entries(air.vents ?? {}).map(([name, vent]) => ventOf(name, vent, van, locating));
  const byName = new Map(vents.map((vent) => [vent.name, vent]));
  return { path, vents, fans: Object.entries(air.fans ?? {}).map(([name, fan]) => fanOf(name, fan, byName)) };
}

function ventOf(
  name: string,
  given: NonNullable<Given['vents']>[string],
  van: Plan['van'],
  locating: Locating,
): Vent {
  const opening = given.opening === undefined ? undefined : van.openings?.[given.opening];
  const surface = given.in ?? opening?.in;
  const at = given.at ?? opening?.at;
  const place = locating.at(at && surface ? onSurface(at, surface) : at);
  return {
    name,
    path: ['air', 'vents', name],
    freeAreaM2: given.free_area.value,
    ...(surface && { surface }),
    ...levelOf(given.level, surface),
    ...(given.closes !== undefined && { closes: given.closes }),
    ...(given.serves !== undefined && { serves: given.serves }),
    ...(given.opening !== undefined && { opening: given.opening }),
    ...(at?.above_floor && { aboveFloorM: at.above_floor.value }),
    ...(place && { place }),
  };
}

/** Exactly at a face of the load bay. */
const atFace = { kind: 'length', value: 0, halfWidth: 0, shared: [] } as const;

/** A vent in a wall is where the wall is; along it the plan says where. */
function onSurface(at: Place, surface: NonNullable<Vent['surface']>): Place {
  const isAcross = at.from_left !== undefined || at.from_right !== undefined || at.centred === true;
  const isAlong = at.from_front !== undefined || at.from_rear !== undefined;
  switch (surface) {
    case 'left wall':
      return isAcross ? at : { ...at, from_left: atFace };
    case 'right wall':
      return isAcross ? at : { ...at, from_right: atFace };
    case 'bulkhead':
      return isAlong ? at : { ...at, from_front: atFace };
    case 'rear doors':
      return isAlong ? at : { ...at, from_rear: atFace };
    case 'ceiling':
    case 'floor':
      return at;
  }
}

/** A vent in the ceiling is high and one in the floor is low; of one in a wall the plan says it. */
function levelOf(typed: Vent['level'], surface: Vent['surface']): Pick<Vent, 'level'> {
  const level = typed ?? (surface === 'ceiling' ? 'high' : surface === 'floor' ? 'low' : undefined);
  return level ? { level } : {};
}

function fanOf(
  name: string,
  given: NonNullable<Given['fans']>[string],
  vents: ReadonlyMap<string, Vent>,
): Fan {
  const vent = given.vent === undefined ? undefined : vents.get(given.vent);
  const serves = given.serves ?? vent?.serves;
  return {
    name,
    path: ['air', 'fans', name],
    ...(given.thing !== undefined && { thing: given.thing }),
    ...(vent && { vent }),
    ...(given.blows && { blows: given.blows }),
    ...(given.flow && { openFlowM3PerS: given.flow.value }),
    ...(given.pressure && { stallPa: given.pressure.value }),
    ...(serves !== undefined && { serves }),
  };
}

/** Own choice: where shapes of furniture overlap or are not known, no more than this part of the bay is taken by it. */
const mostFurniture = 0.7;

/** The room of the load bay and the air in it. */
export function livingSpaceOf(layout: Layout, vehicle: Vehicle, plan: Plan): LivingSpace | undefined {
  const { bay, overallLengthM } = vehicle;
  if (!bay) return undefined;
  const grossM3 = bay.lengthM * bay.widthM * bay.heightM;
  const furnitureM3 = layout.solids
    .filter(({ whereabouts, isInside }) => whereabouts === 'inside' && !isInside)
    .reduce(
      (sum, { box }) =>
        sum + (box.mostXM - box.leastXM) * (box.mostYM - box.leastYM) * (box.topM - box.bottomM),
      0,
    );
  const overallWidthM = plan.van.overall_width?.value;
  return {
    floorM2: bay.lengthM * bay.widthM,
    grossM3,
    airM3: grossM3 - Math.min(furnitureM3, mostFurniture * grossM3),
    ...(overallLengthM !== undefined &&
      overallWidthM !== undefined && { outsidePlanM2: overallLengthM * overallWidthM }),
  };
}
