import { boundsOf } from '../../calc/space/plane.ts';
import type { Prism } from '../../calc/space/prism.ts';
import { length } from '../../engine/measure.ts';
import type { Box3, Layout, ShellOpening, Solid } from '../layout.ts';
import type { Thing } from './model.ts';

/** Something with a room of its own that is drawn: a thing of the plan or a part of the van. */
export interface DrawnBody {
  readonly thing: Thing;
  readonly prism: Prism;
  readonly box: Box3;
  readonly isPartOfVan: boolean;
  /** It is above the roof or below the floor, so it hides nothing and is not seen from inside. */
  readonly isOutside: boolean;
}

export interface DrawnOpening {
  readonly thing: Thing;
  readonly opening: ShellOpening;
}

export const bodiesOf = (layout: Layout): DrawnBody[] => [
  ...layout.solids.map(
    (solid): DrawnBody => ({
      thing: {
        id: `thing ${solid.name}`,
        name: solid.name,
        sort: 'thing',
        remark: remarkOn(solid),
        ...measuresOf(solid.box, layout),
      },
      prism: solid.prism,
      box: solid.box,
      isPartOfVan: false,
      isOutside: solid.whereabouts === 'on the roof' || solid.whereabouts === 'under the floor',
    }),
  ),
  ...layout.fixedParts.map(({ name, prism }, index): DrawnBody => {
    const box: Box3 = { ...boundsOf(prism.outline), bottomM: prism.bottomM, topM: prism.topM };
    return {
      thing: { id: `part ${index}`, name, sort: 'van', remark: '', ...measuresOf(box, layout) },
      prism,
      box,
      isPartOfVan: true,
      isOutside: false,
    };
  }),
];

export const openingsOf = (layout: Layout): DrawnOpening[] =>
  layout.openings.map((opening) => {
    const { size, place } = measuresOf(opening.box, layout);
    // It has no extent across its surface, and where it lies that way goes without saying.
    const flat = flatAxis[opening.surface];
    return {
      opening,
      thing: {
        id: `opening ${opening.name}`,
        name: opening.name,
        sort: 'van',
        remark: `${opening.kind ?? 'opening'} in the ${opening.surface}`,
        size: size.map((measure, axis) => (axis === flat ? undefined : measure)),
        place: place.map((measure, axis) => (axis === flat ? undefined : measure)),
      },
    };
  });

const flatAxis: Record<ShellOpening['surface'], 0 | 1 | 2> = {
  bulkhead: 0,
  'rear doors': 0,
  'left wall': 1,
  'right wall': 1,
  floor: 2,
  ceiling: 2,
};

const measuresOf = (box: Box3, { widthM }: Layout): Pick<Thing, 'size' | 'place'> => ({
  size: [length(box.mostXM - box.leastXM), length(box.mostYM - box.leastYM), length(box.topM - box.bottomM)],
  place: [length(box.leastXM), length(box.leastYM + widthM / 2), length(box.bottomM)],
});

function remarkOn({ hosts: [host], isInside, whereabouts }: Solid): string {
  return [
    ...(host === undefined ? [] : [`${isInside ? 'in' : 'on'} ${host}`]),
    ...(whereabouts === 'inside' ? [] : [whereabouts]),
  ].join(', ');
}
