import type { Layout } from '../../build/layout.ts';
import { boundsOf } from '../../calc/space/plane.ts';
import type { Prism } from '../../calc/space/prism.ts';
import { heightAt, type Protrusion, type Shell, widthAt } from '../../calc/space/shell.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import { length } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { inBrackets } from './box.ts';

/*
 * How far something is beyond a side of the load bay: where that side is there, where the thing ends, the difference.
 */

export interface BeyondSide {
  /** What reaches out. */
  readonly name: string;
  readonly prism: Prism;
  readonly paths: readonly PlanPath[];
  readonly protrusion: Protrusion;
}

export function beyondSteps(beyond: BeyondSide, shell: Shell, layout: Layout): readonly Step[] {
  const { name, prism, paths, protrusion } = beyond;
  const { face, byM } = protrusion;
  const side = sideSteps(protrusion, shell, layout);
  const wallM = side.at(-1)?.result?.value ?? 0;
  const edgeM = edgeOf(prism, face, layout);
  // Towards the front and the left places grow smaller.
  const [greater, smaller] = face === 'front' || face === 'left' ? [wallM, edgeM] : [edgeM, wallM];
  return [
    ...side,
    {
      what: `Where ${name} ends on that side, counted from the same place`,
      result: length(edgeM),
      paths,
    },
    {
      what: 'How far it is beyond: the one less the other',
      sum: say`${inBrackets(greater)} − ${inBrackets(smaller)}`,
      result: length(byM),
    },
  ];
}

/** Across the van places count from the left wall at the floor. */
function edgeOf({ outline, topM }: Prism, face: Protrusion['face'], { widthM }: Layout): number {
  const { leastXM, mostXM, leastYM, mostYM } = boundsOf(outline);
  return { front: leastXM, rear: mostXM, left: leastYM + widthM / 2, right: mostYM + widthM / 2, top: topM }[
    face
  ];
}

/** Where a side of the load bay is; the last step comes to it. */
function sideSteps(
  { face, atHeightM = 0, fromFrontM = 0 }: Protrusion,
  shell: Shell,
  { widthM }: Layout,
): readonly Step[] {
  const bay: PlanPath = ['van', 'load_bay'];
  if (face === 'front')
    return [{ what: 'Where the load bay begins, from where places along it count', result: length(0) }];
  if (face === 'rear')
    return [
      {
        what: 'Where the load bay ends, counted from its front',
        result: length(shell.lengthM),
        paths: [
          [...bay, 'length'],
          [...bay, 'rear_door_thickness'],
        ],
      },
    ];
  if (face === 'top')
    return [
      {
        what: 'How high the roof is there, above the floor',
        sum: say`at ${length(fromFrontM)} from the front, where it is lowest above the thing${between(
          shell.heights.map((each) => ({ at: each.fromFrontM, value: each.heightM })),
          fromFrontM,
        )}`,
        result: length(heightAt(shell.heights, fromFrontM)),
        paths: [[...bay, 'height']],
      },
    ];
  const acrossM = widthAt(shell.profile, atHeightM);
  const isLeft = face === 'left';
  return [
    {
      what: 'How wide the load bay is there',
      sum: say`at ${length(atHeightM)} above the floor, where it is narrowest beside the thing${between(
        shell.profile.map((each) => ({ at: each.heightM, value: each.widthM })),
        atHeightM,
      )}`,
      result: length(acrossM),
      paths: [
        [...bay, 'width'],
        [...bay, 'profile'],
      ],
    },
    {
      what: `Where its ${face} wall is at that height, counted from the left wall at the floor`,
      sum: isLeft
        ? say`(${length(widthM)} − ${length(acrossM)}) / 2`
        : say`(${length(widthM)} + ${length(acrossM)}) / 2`,
      result: length(isLeft ? (widthM - acrossM) / 2 : (widthM + acrossM) / 2),
      paths: [[...bay, 'width']],
    },
  ];
}

interface Given {
  readonly at: number;
  readonly value: number;
}

/** The straight line between the two given places about this one; nothing where a given value is taken as it is. */
function between(given: readonly Given[], at: number): Phrase {
  const sorted = [...given].sort((a, b) => a.at - b.at);
  const next = sorted.find((each) => each.at >= at);
  const before = sorted.findLast((each) => each.at < at);
  if (!next || !before || next.at === at || next.value === before.value) return [];
  return say`: ${length(before.value)} − ${length(before.value - next.value)} · (${length(at)} − ${length(before.at)}) / (${length(next.at)} − ${length(before.at)})`;
}
