import type { Body, PlacedBody } from '../build/body.ts';
import type { Build, Filling } from '../build/build.ts';
import { massIn } from '../build/functional.ts';
import { length, mass, volume } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import { type Group, movableGroups } from './groups.ts';
import { bestSwap } from './swaps.ts';

export type Direction = 'forward' | 'rearward' | 'to the left' | 'to the right';

const roomIn: Record<Direction, keyof Group> = {
  forward: 'roomForwardM',
  rearward: 'roomRearwardM',
  'to the left': 'roomLeftM',
  'to the right': 'roomRightM',
};

/** Rounded up, so that doing what is said is enough. */
const upTo = (value: number, step: number): number => Math.ceil(value / step - 1e-9) * step;

/** The part of a body's mass that acts on a quantity, and in words where all of a mass does; without them, anywhere. */
interface Acting {
  readonly where?: string;
  readonly part: (body: PlacedBody) => number;
}

/**
 * The thing that has to move least to change a load by `momentKgM` (kilograms times metres), and the mass that would
 * do over half a metre; or, where no one thing can do it alone, the one that does most.
 */
export function moveSomething(
  build: Build,
  bodies: readonly PlacedBody[],
  filling: Filling,
  momentKgM: number,
  direction: Direction,
  acting?: Acting,
): Phrase | undefined {
  const groups = movableGroups(build, bodies, filling, acting?.part ?? (() => 1));
  const roomOf = (group: Group): number => Number(group[roomIn[direction]]);
  const doneBy = (group: Group): number => group.actingKg * roomOf(group);
  const enough = groups.find((group) => doneBy(group) >= momentKgM);
  const usualM = 0.5;
  const place = acting?.where === undefined ? '' : ` ${acting.where}`;
  const anyMass = say`move ${mass(upTo(momentKgM / usualM, 1))}${place} ${length(usualM)} ${direction}`;
  if (enough) {
    const shiftM = upTo(momentKgM / enough.actingKg, 0.01);
    return say`${capital(anyMass)}, or ${enough.name} (${mass(enough.massKg)}) ${length(shiftM)} ${direction}.`;
  }
  const most = groups.reduce<Group | undefined>(
    (best, group) => (doneBy(group) > (best ? doneBy(best) : 0) ? group : best),
    undefined,
  );
  if (!most) return say`${capital(anyMass)}.`;
  const part = Math.floor((100 * doneBy(most)) / momentKgM);
  return say`${capital(anyMass)}; ${most.name} (${mass(most.massKg)}) as far as it goes, ${length(roomOf(most))}, does ${String(part)} % of it.`;
}

/** What to leave out, carry less of or build lighter to lose this much. */
export function loseMass(build: Build, filling: Filling, excessKg: number): Phrase {
  const parts: Phrase[] = [];
  const water = heaviest(build.bodies, filling, 'fresh');
  if (water?.variable) {
    const aboardKg = massIn(water, filling);
    const lessKg = Math.min(excessKg, aboardKg);
    const less =
      water.variable.densityKgM3 === undefined
        ? mass(upTo(lessKg, 1))
        : volume(upTo(lessKg / water.variable.densityKgM3, 0.001));
    if (lessKg > 0.5) {
      parts.push(
        lessKg < excessKg
          ? say`travelling with ${water.label} empty saves ${mass(lessKg)}`
          : say`carry ${less} less in ${water.label}`,
      );
    }
  }
  const swap = bestSwap(build);
  if (swap)
    parts.push(say`${swap.to} instead of ${swap.from} in ${swap.buildUp} saves ${mass(swap.savesKg)}`);
  return say`Lose ${mass(upTo(excessKg, 1))}: ${joined(parts, 'leave something out, or build lighter')}.`;
}

function heaviest(bodies: readonly Body[], filling: Filling, group: string): Body | undefined {
  const members = bodies.filter((body) => body.variable?.group === group);
  return members.reduce<Body | undefined>(
    (best, body) => (best === undefined || massIn(body, filling) > massIn(best, filling) ? body : best),
    undefined,
  );
}

const joined = (parts: readonly Phrase[], otherwise: string): Phrase =>
  parts.length === 0 ? [otherwise] : parts.reduce((all, part) => say`${all}, or ${part}`);

function capital(phrase: Phrase): Phrase {
  const [first, ...rest] = phrase;
  return typeof first === 'string' ? [first.charAt(0).toUpperCase() + first.slice(1), ...rest] : phrase;
}
