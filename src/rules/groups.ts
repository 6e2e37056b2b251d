import type { PlacedBody } from '../build/body.ts';
import type { Build, Filling } from '../build/build.ts';
import { massIn } from '../build/functional.ts';

/** Something that can be moved as one: a thing with everything that stands in or on it. */
export interface Group {
  /** "wardrobe", or "wardrobe with what it holds". */
  readonly name: string;
  readonly massKg: number;
  /** The part of its mass that acts on the quantity in question, such as what rests on one axle. */
  readonly actingKg: number;
  /** How far its nearest face can go before it meets the end or the side of the load bay. */
  readonly roomForwardM: number;
  readonly roomRearwardM: number;
  readonly roomLeftM: number;
  readonly roomRightM: number;
}

/** Fixtures, tanks and stores of the plan, each with what it holds, those that act most first. */
export function movableGroups(
  build: Build,
  bodies: readonly PlacedBody[],
  filling: Filling,
  partOf: (body: PlacedBody) => number,
): readonly Group[] {
  const { bay } = build.vehicle;
  if (!bay) return [];
  const hosts = new Map(
    bodies.flatMap(({ label, host }) => (host === undefined ? [] : [[label, host] as const])),
  );
  const masses = new Map<string, { readonly massKg: number; readonly actingKg: number }>();
  for (const body of bodies) {
    if (!['fixture', 'tank', 'contents', 'store'].includes(body.sort) || body.origin === 'assumed') continue;
    const root = rootOf(body.label, hosts);
    const { massKg, actingKg } = masses.get(root) ?? { massKg: 0, actingKg: 0 };
    const bodyKg = massIn(body, filling);
    masses.set(root, { massKg: massKg + bodyKg, actingKg: actingKg + bodyKg * partOf(body) });
  }
  const holding = new Set(hosts.values());
  const groups = [...masses].flatMap(([name, { massKg, actingKg }]): Group[] => {
    const space = build.spaces.get(name);
    if (!space || massKg <= 0) return [];
    const { x, y } = space;
    const bayEndM = bay.behindFrontAxleM + bay.lengthM;
    return [
      {
        name: holding.has(name) ? `${name} with what it holds` : name,
        massKg,
        actingKg,
        roomForwardM: Math.max(0, x.startM - bay.behindFrontAxleM),
        roomRearwardM: Math.max(0, bayEndM - x.startM - (x.lengthM ?? 0)),
        roomLeftM: Math.max(0, y.startM + bay.widthM / 2),
        roomRightM: Math.max(0, bay.widthM / 2 - y.startM - (y.lengthM ?? 0)),
      },
    ];
  });
  return groups.sort((a, b) => b.actingKg - a.actingKg || (a.name < b.name ? -1 : 1));
}

function rootOf(name: string, hosts: ReadonlyMap<string, string>): string {
  let root = name;
  for (let host = hosts.get(root); host !== undefined; host = hosts.get(root)) root = host;
  return root;
}
