import { rectangle } from '../../calc/space/plane.ts';
import { widthAt } from '../../calc/space/shell.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import type { Layout } from '../layout.ts';
import type { DrawnBody, DrawnOpening } from './bodies.ts';
import type { Figure, Gap, Tick, View } from './model.ts';
import { openLineOf } from './openings.ts';
import type { Scene } from './scene.ts';
import { isAbove, spans, widened } from './spans.ts';

/** The load bay from above: x to the right, so that the front is on the left of the page, and the left side on top. */
export function planView(scene: Scene, cutM: number | undefined): View {
  const { layout, bodies, openings, across } = scene;
  const halfM = widthAt(layout.shell.profile, cutM ?? 0) / 2;
  const isOmitted = ({ box }: DrawnBody) => cutM !== undefined && isAbove(box, cutM);
  const shown = bodies.filter((body) => !isOmitted(body));
  const omitted = bodies.filter(isOmitted);
  const down = widened(
    { leastM: -halfM, mostM: halfM },
    bodies.map(({ box }) => ({ leastM: box.leastYM, mostM: box.mostYM })),
  );
  const cutOpenings = openings.filter(({ opening: { box, surface } }) =>
    cutM === undefined || surface === 'floor' ? true : surface !== 'ceiling' && spans(box, cutM),
  );
  const { centre, walked } = scene;
  return {
    name: 'plan',
    title:
      cutM === undefined ? say`Plan view, from above` : say`Plan view, cut ${length(cutM)} above the floor`,
    across,
    down,
    edges: { left: '← front', right: 'rear →', above: 'left side', below: 'right side' },
    figures: [
      {
        outline: rectangle(0, -halfM, layout.shell.lengthM, 2 * halfM),
        line: 'shell',
        nearnessM: Infinity,
        hides: false,
        hatched: false,
      },
      ...shown.map((body) => figureOf(body, cutM)),
      ...cutOpenings.flatMap(lyingFigure),
    ],
    gaps: cutOpenings.flatMap((each) => gapOf(each, halfM, layout)),
    ticks: layout.ribs.flatMap(({ surface, fromM, toM }): Tick[] => {
      const xM = (fromM + toM) / 2;
      if (surface === 'left wall') return [{ at: { xM, yM: -halfM }, towards: 'down' }];
      return surface === 'right wall' ? [{ at: { xM, yM: halfM }, towards: 'up' }] : [];
    }),
    sweeps: layout.sweeps
      .filter(({ prism }) => cutM === undefined || spans(prism, cutM))
      .map(({ prism }) => prism.outline),
    passage: walked?.passage ?? [],
    marks: [
      ...(centre ? [{ sign: 'centre' as const, at: centre }] : []),
      ...(walked ? [{ sign: 'narrowest' as const, at: walked.narrowestAt }] : []),
    ],
    guides: scene.axles,
    remarks: [
      ...scene.remarks,
      ...(omitted.length === 0
        ? []
        : [say`Above the cut, not drawn: ${omitted.map(({ thing }) => thing.name).join(', ')}.`]),
    ],
  };
}

function figureOf(
  { thing, prism, box, isPartOfVan, isOutside }: DrawnBody,
  cutM: number | undefined,
): Figure {
  const isSeen = cutM === undefined ? !isOutside : spans(box, cutM);
  return {
    thing: thing.id,
    outline: prism.outline,
    line: isSeen ? 'solid' : 'hidden',
    nearnessM: box.topM,
    hides: isSeen,
    hatched: isPartOfVan,
  };
}

/** Openings in the ceiling and the floor lie in the view itself. */
function lyingFigure({ thing, opening: { surface, box } }: DrawnOpening): Figure[] {
  if (surface !== 'ceiling' && surface !== 'floor') return [];
  return [
    {
      thing: thing.id,
      outline: rectangle(box.leastXM, box.leastYM, box.mostXM - box.leastXM, box.mostYM - box.leastYM),
      line: 'hidden',
      nearnessM: box.topM,
      hides: false,
      hatched: false,
    },
  ];
}

function gapOf({ thing, opening }: DrawnOpening, halfM: number, { shell }: Layout): Gap[] {
  const { surface, box } = opening;
  const line = openLineOf(opening);
  const gap = (leastXM: number, leastYM: number, mostXM: number, mostYM: number): Gap[] => [
    {
      thing: thing.id,
      from: { xM: leastXM, yM: leastYM },
      to: { xM: mostXM, yM: mostYM },
      ...(line && { line }),
    },
  ];
  if (surface === 'left wall') return gap(box.leastXM, -halfM, box.mostXM, -halfM);
  if (surface === 'right wall') return gap(box.leastXM, halfM, box.mostXM, halfM);
  if (surface === 'bulkhead') return gap(0, box.leastYM, 0, box.mostYM);
  return surface === 'rear doors' ? gap(shell.lengthM, box.leastYM, shell.lengthM, box.mostYM) : [];
}
