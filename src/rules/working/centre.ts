import type { PlacedBody } from '../../build/body.ts';
import type { Filling } from '../../build/build.ts';
import { massIn, sumOf } from '../../build/functional.ts';
import { totalMass } from '../../build/quantities.ts';
import type { Part, Step } from '../../engine/finding.ts';
import { length, mass } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';

/*
 * How a centre of mass comes about: the whole mass, then what each mass adds to the place of the centre.
 */

export interface Centre {
  /** "the height of the centre of mass above the ground" */
  readonly what: string;
  /** The letter of the distance, and what it is counted from. */
  readonly letter: string;
  readonly from: Phrase;
  /** What is counted: "everything in this state". */
  readonly ofWhat: string;
  readonly bodies: readonly PlacedBody[];
  readonly filling: Filling;
  readonly placeM: (body: PlacedBody) => number;
  readonly paths: NonNullable<Step['paths']>;
}

/** A kilogram far out moves the centre further than one near to it, so each mass adds m·d / M to its distance. */
export function centreSteps(centre: Centre): readonly Step[] {
  const { what, letter, from, ofWhat, bodies, filling, placeM, paths } = centre;
  const totalKg = sumOf(bodies, totalMass, filling);
  const rows = bodies.map((body): Part => {
    const massKg = massIn(body, filling);
    const distanceM = placeM(body);
    return {
      name: body.variable && body.sort === 'contents' ? `${body.label} (contents)` : body.label,
      path: body.path,
      origin: body.origin,
      values: [mass(massKg), length(distanceM)],
      adds: length((massKg * distanceM) / totalKg),
    };
  });
  return [
    {
      what: `The mass of ${ofWhat}: M = Σ m`,
      sum: say`all that stands under "mass" in the next step, added up`,
      result: mass(totalKg),
    },
    {
      what: `What each mass adds to ${what}: m·${letter} / M`,
      sum: say`${letter} ${from}; M = ${mass(totalKg)}; rounded only here, not as they are added up`,
      result: length(rows.reduce((sum, { adds }) => sum + adds.value, 0)),
      parts: { columns: ['mass', letter, `m·${letter} / M`], rows },
      paths,
    },
  ];
}

/** The centre's height above the ground; the bodies have theirs counted from there. */
export const heightSteps = (
  bodies: readonly PlacedBody[],
  filling: Filling,
  floorM: number,
): readonly Step[] =>
  centreSteps({
    what: 'the height of the centre of mass',
    letter: 'z',
    from: say`above the ground, the floor at ${length(floorM)}`,
    ofWhat: 'everything in this state',
    bodies,
    filling,
    placeM: ({ position }) => position.z.valueM,
    paths: [
      ['van', 'load_bay', 'floor_above_ground'],
      ['van', 'unladen', 'centre_height'],
    ],
  });
