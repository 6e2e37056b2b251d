import type { Plan } from '../plan/schema.ts';
import type { Body, ErrorTerm, Position } from './body.ts';
import { errorsOf } from './errors.ts';
import { type LoadBay, somewhereIn, spaceOfBay } from './placing.ts';
import type { SpottedLeg, Tracked } from './routes.ts';
import type { Spot } from './routes-terminals.ts';

const axes = ['x', 'y', 'z'] as const;

interface Weighted {
  readonly spot: Spot;
  readonly weight: number;
}

/**
 * Where the mass of a run acts: the middles of its legs, weighted by their lengths. Slack lies along the whole way and
 * does not move it. Where no leg is known, half-way between the ends.
 */
export function centroidOf(
  legs: readonly SpottedLeg[],
  [from, to]: readonly [Spot | undefined, Spot | undefined],
): Spot | undefined {
  const lengthM = legs.reduce((sum, leg) => sum + leg.lengthM, 0);
  const whole = lengthM > 0 ? lengthM : legs.length;
  if (legs.length > 0)
    return meanOf(
      legs.flatMap((leg) => {
        const weight = (lengthM > 0 ? leg.lengthM : 1) / whole / 2;
        return leg.ends.map((spot) => ({ spot, weight }));
      }),
    );
  if (!from || !to) return from ?? to;
  return meanOf([
    { spot: from, weight: 0.5 },
    { spot: to, weight: 0.5 },
  ]);
}

function meanOf(parts: readonly Weighted[]): Spot {
  const mean = (coordinate: (spot: Spot) => number) =>
    parts.reduce((sum, { spot, weight }) => sum + weight * coordinate(spot), 0);
  return {
    xM: mean(({ xM }) => xM),
    yM: mean(({ yM }) => yM),
    zM: mean(({ zM }) => zM),
    errors: {
      x: errorsAlong(parts, 'x'),
      y: errorsAlong(parts, 'y'),
      z: errorsAlong(parts, 'z'),
    },
  };
}

/** The lengths, by which the parts are weighted, are taken as exact. */
function errorsAlong(parts: readonly Weighted[], axis: (typeof axes)[number]): readonly ErrorTerm[] {
  const bySource = new Map<string, number>();
  for (const { spot, weight } of parts)
    for (const { source, standard } of spot.errors[axis])
      bySource.set(source, (bySource.get(source) ?? 0) + weight * standard);
  return [...bySource].map(([source, standard]) => ({ source, standard }));
}

type GivenRun = NonNullable<NonNullable<Plan['routes']>['runs']>[string];

/** What a run weighs and where; undefined where its length or what a metre of it weighs is not known. */
export function bodyOfRun(
  name: string,
  { linear_mass: linearMass, length }: GivenRun,
  { routed: { lengthM, count, path }, centroid }: Tracked,
  bay: LoadBay | undefined,
): Body | undefined {
  if (!linearMass || lengthM === undefined) return undefined;
  const source = path.join('.');
  const position = centroid && bay ? positionOf(centroid, bay) : bay && somewhereIn(spaceOfBay(bay), source);
  return {
    label: name,
    path,
    sort: 'run',
    origin: 'computed',
    massKg: linearMass.value * count * lengthM,
    massErrors: [
      ...errorsOf(linearMass, `${source}.linear_mass`, count * lengthM),
      ...(length ? errorsOf(length, `${source}.length`, count * linearMass.value) : []),
    ],
    ...(position && { position }),
  };
}

const positionOf = ({ xM, yM, zM, errors }: Spot, bay: LoadBay): Position => ({
  x: { valueM: xM + bay.behindFrontAxleM, errors: errors.x },
  y: { valueM: yM, errors: errors.y },
  z: { valueM: zM, errors: errors.z },
});
