import type { Layout, Solid } from '../build/layout.ts';
import { type Prism, prismOverlap } from '../calc/space/prism.ts';
import { type Mend, mender } from './clearing.ts';

/** The shortest move that takes a thing, with those that go along with it, out of some room that must stay free. */
export function outOfRoom(
  solid: Solid,
  room: Prism,
  layout: Layout,
  along: readonly Solid[] = [],
): Mend | undefined {
  const meetings = along
    .filter(({ prism }) => prismOverlap(prism, room))
    .map(({ prism }) => ({ moving: prism, fixed: room }));
  return mender(layout)([{ solid, from: [room], along: meetings }]);
}
