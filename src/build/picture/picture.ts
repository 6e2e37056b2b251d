import { boundsOf } from '../../calc/space/plane.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import type { Build } from '../build.ts';
import type { Layout, Unplaced } from '../layout.ts';
import { bodiesOf, type DrawnBody, openingsOf } from './bodies.ts';
import { centreOfMass } from './centre-of-mass.ts';
import type { Guide, Picture, Stretch, View } from './model.ts';
import { narrowestWay, passageFor, sideText } from './passage.ts';
import { planView } from './plan-view.ts';
import type { Scene } from './scene.ts';
import { sideView } from './side-view.ts';
import { isWithin, meets, widened } from './spans.ts';

export interface Wanted {
  readonly views: readonly View['name'][];
  /** Above the floor. */
  readonly cutM?: number;
}

/** What there is to see of a build: only what its plan says. */
export function pictureOf(build: Build, layout: Layout, { views, cutM }: Wanted): Picture {
  const bodies = bodiesOf(layout);
  const openings = openingsOf(layout);
  const axles = axlesOf(build);
  const across = widened({ leastM: 0, mostM: layout.shell.lengthM }, [
    ...axles.map(({ atM }) => ({ leastM: atM, mostM: atM })),
    ...bodies.map(lengthways),
    ...layout.sweeps.map(({ prism }) => {
      const { leastXM, mostXM } = boundsOf(prism.outline);
      return { leastM: leastXM, mostM: mostXM };
    }),
  ]);
  const isInView = ({ atM }: Guide) => isWithin({ leastM: atM, mostM: atM }, across);
  const centre = centreOfMass(build);
  const { narrowest, notes: noteOnWays } = narrowestWay(layout);
  const scene: Scene = {
    layout,
    bodies: bodies.filter((body) => meets(lengthways(body), across)),
    openings,
    across,
    axles: axles.filter(isInView),
    ...('state' in centre && { centre }),
    ...(narrowest && {
      walked: {
        passage: passageFor(layout, narrowest.way.widthM, narrowest.spot.at),
        narrowestAt: narrowest.spot.at,
      },
    }),
    remarks: axles.filter((axle) => !isInView(axle)).map((axle) => outOfView(axle, layout)),
  };
  const far = bodies.filter((body) => !meets(lengthways(body), across));
  return {
    name: build.name,
    units: build.units,
    views: views.map((view) => (view === 'plan' ? planView(scene, cutM) : sideView(scene, view, cutM))),
    things: [...scene.bodies, ...openings].map(({ thing }) => thing),
    signs: {
      ...('state' in centre && { centre: say`centre of mass: ${centre.state}` }),
      ...(narrowest && {
        passage: say`passage: where a body ${length(narrowest.way.widthM)} wide gets to from the ${narrowest.way.from}`,
        narrowest: say`narrowest spot on the way to ${narrowest.way.to}: ${length(narrowest.way.widthM)}, between ${sideText(narrowest.spot.between[0])} and ${sideText(narrowest.spot.between[1])}`,
      }),
    },
    notes: [
      ...('missing' in centre ? [say`No centre of mass is drawn: add ${centre.missing.join(', ')}.`] : []),
      ...noteOnWays,
      ...(far.length === 0
        ? []
        : [say`Too far outside the load bay to be drawn: ${far.map(({ thing }) => thing.name).join(', ')}.`]),
      ...unplacedNotes([...layout.unplaced, ...layout.unplacedParts, ...layout.unplacedOpenings]),
    ],
  };
}

const lengthways = ({ box }: DrawnBody): Stretch => ({ leastM: box.leastXM, mostM: box.mostXM });

function axlesOf({ vehicle: { bay, wheelbaseM } }: Build): Guide[] {
  if (!bay) return [];
  const front: Guide = { runs: 'down', atM: -bay.behindFrontAxleM, label: 'front axle' };
  return wheelbaseM === undefined
    ? [front]
    : [front, { runs: 'down', atM: wheelbaseM - bay.behindFrontAxleM, label: 'rear axle' }];
}

const outOfView = ({ atM, label }: Guide, { shell }: Layout): Phrase =>
  atM < 0
    ? say`The ${label} is ${length(-atM)} ahead of the load bay.`
    : say`The ${label} is ${length(atM - shell.lengthM)} behind the load bay.`;

/** Those that lack the same keys stand together, or the list would be longer than the picture. */
function unplacedNotes(unplaced: readonly Unplaced[]): Phrase[] {
  const byKeys = new Map<string, string[]>();
  for (const { name, missing } of unplaced) {
    const keys = missing.join(', ');
    byKeys.set(keys, [...(byKeys.get(keys) ?? []), name]);
  }
  return [...byKeys].map(([keys, names]) =>
    keys === ''
      ? say`Not drawn, since their size or place is not known: ${names.join(', ')}.`
      : say`Not drawn without ${keys}: ${names.join(', ')}.`,
  );
}
