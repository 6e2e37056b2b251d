import type { Layout, Solid } from '../../build/layout.ts';
import { bodyCorrections } from '../../catalogue/body-measures.ts';
import type { Step } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import type { Ceiling } from '../clear-height.ts';
import type { Surface } from '../lying-surface.ts';
import { told } from '../told.ts';
import { personStep } from './person.ts';
import { ceilingStep, type Stretch, topStep, uppermost } from './rise.ts';

interface Clear {
  readonly ceiling: Ceiling;
  /** What the ceiling was looked for over. */
  readonly over: Stretch;
  /** Where somebody sits up. */
  readonly sitting?: { readonly value: number; readonly isTheirs: boolean };
  /** The ceiling is that over the best such spot. */
  readonly spot?: { readonly lengthM: number };
}

/** From what one sits or lies on up to what is over it. */
export function headroomSteps(
  thing: Solid,
  surface: Surface,
  { ceiling, over, sitting, spot }: Clear,
  room: Layout,
): readonly Step[] {
  const { name } = thing;
  const place = spot ? `the best place to sit up on ${name}` : name;
  const tallestM = Math.max(...room.staturesM);
  return [
    topStep(`How high one ${sitting ? 'sits' : 'lies'}: the top of ${name}`, uppermost(thing, surface), room),
    ceilingStep(place, ceiling, over, room),
    ...(sitting?.isTheirs
      ? [
          personStep({
            what: 'What the tallest sleeper needs to sit up straight: the sitting height',
            measure: 'sitting height',
            statureM: tallestM,
            population: 'British men',
            and: { correction: bodyCorrections.hat, of: 'above the head' },
            resultM: sitting.value,
            isRounded: true,
          }),
        ]
      : []),
    {
      what: `The height over ${place}${spot || sitting ? '' : ', where it is lowest'}`,
      sum: say`${told(ceiling.atM)} − ${told(surface.box.topM)}${spot ? say`; the place is ${told(spot.lengthM)} square` : []}`,
      result: length(ceiling.atM - surface.box.topM),
    },
  ];
}
