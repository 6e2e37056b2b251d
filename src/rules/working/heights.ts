import type { Layout, Solid } from '../../build/layout.ts';
import { bodyCorrections } from '../../catalogue/body-measures.ts';
import type { Step } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { longAndShortM, type Surface } from '../lying-surface.ts';
import { elbowHeightM } from '../sleepers.ts';
import { told } from '../told.ts';
import { personStep } from './person.ts';
import { topStep, uppermost } from './rise.ts';

/*
 * How the heights come about that people sit and work at, and what the people of the plan ask for.
 */

export const topOf = (name: string): string => `How high the top of ${name} is above the floor`;

export const seatTopStep = (seat: Solid, surface: Surface, room: Layout): Step =>
  topStep(topOf(seat.name), uppermost(seat, surface), room);

const ofLeg = {
  'popliteal height': 'from the floor to the crease of the knee',
  'buttock-popliteal length': 'from the back to the crease of the knee',
} as const;

/** What the shortest sleeper has; nothing where the table is the limit. */
export function forShortSteps(
  measure: keyof typeof ofLeg,
  { value, isTheirs }: { readonly value: number; readonly isTheirs: boolean },
  { staturesM }: Layout,
): readonly Step[] {
  if (!isTheirs) return [];
  return [
    personStep({
      what: `The leg of the shortest sleeper, ${ofLeg[measure]}`,
      measure,
      statureM: Math.min(...staturesM),
      population: 'British women',
      resultM: value,
      isRounded: true,
    }),
  ];
}

/** Two lengths that differ by less are one: a micrometre. */
const sameWithinM = 1e-6;

/** How deep or wide a seat is: of a plain one a side of it. */
export function seatSideStep(side: 'shorter' | 'longer', sideM: number, seat: Solid, surface: Surface): Step {
  const [longM, shortM] = longAndShortM(surface.box);
  const isPlain = Math.abs(sideM - (side === 'longer' ? longM : shortM)) < sameWithinM;
  const things = surface.cushions.length > 0 ? surface.cushions : [seat];
  return {
    what: `How ${side === 'longer' ? 'wide' : 'deep'} ${seat.name} is: the ${side} of its sides`,
    sum: isPlain
      ? say`the ${side} of ${told(longM)} and ${told(shortM)}`
      : say`of the greatest rectangles that lie in its outline, the longest ${side} side`,
    result: length(sideM),
    paths: things.flatMap(({ path }) => [
      [...path, 'size', 'length'],
      [...path, 'size', 'width'],
      [...path, 'outline'],
    ]),
  };
}

interface Seated {
  readonly name: string;
  readonly topM: number;
  readonly seat: Solid;
  readonly surface: Surface;
}

export function aboveSeatSteps(table: Solid, { name, topM, seat, surface }: Seated, room: Layout): Step[] {
  return [
    seatTopStep(seat, surface, room),
    topStep(topOf(table.name), table, room),
    {
      what: `How high ${table.name} is above ${name}, the nearest seat`,
      sum: say`${told(table.box.topM)} − ${told(topM)}`,
      result: length(table.box.topM - topM),
    },
  ];
}

/** One end of the band below the elbow, which comes last. */
export function elbowSteps(
  who: 'shortest' | 'tallest',
  statureM: number,
  belowM: number,
  limitM: number,
): readonly Step[] {
  const elbowM = elbowHeightM(statureM);
  return [
    personStep({
      what: `The elbow of the ${who} sleeper above the floor`,
      measure: 'elbow height standing',
      statureM,
      population: 'British men',
      and: { correction: bodyCorrections.shoes, of: 'of shoes' },
      resultM: elbowM,
      isRounded: false,
    }),
    {
      what: `The ${who === 'tallest' ? 'highest' : 'lowest'} worktop that suits anybody there: below the elbow of the ${who}`,
      sum: say`${told(elbowM)} − ${told(belowM)}, to the nearest millimetre`,
      result: length(limitM),
    },
  ];
}
