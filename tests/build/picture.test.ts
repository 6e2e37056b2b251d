import { describe, expect, test } from 'vitest';
import type { Picture, View } from '../../src/build/picture/model.ts';
import { pictureOf } from '../../src/build/picture/picture.ts';
import { isWithin, widened } from '../../src/build/picture/spans.ts';
import { boundsOf } from '../../src/calc/space/plane.ts';
import { renderPhrase } from '../../src/report/format-measure.ts';
import { buildOf, words } from '../support/check.ts';
import { wholeVan } from '../support/whole-van.ts';

async function pictureFrom(text: string, cutM?: number): Promise<Picture> {
  const build = await buildOf(text);
  if (!build.layout) throw new Error('the plan has no load bay');
  return pictureOf(build, build.layout, {
    views: ['plan', 'left', 'right'],
    ...(cutM !== undefined && { cutM }),
  });
}

function viewOf({ views }: Picture, name: View['name']): View {
  const view = views.find((each) => each.name === name);
  if (!view) throw new Error(`no view ${name}`);
  return view;
}

const figureOf = (view: View, thing: string) => view.figures.find((figure) => figure.thing === thing);
const boundsIn = (view: View, thing: string) => boundsOf(figureOf(view, thing)?.outline ?? []);
const notes = ({ notes: all }: Picture): readonly string[] => all.map((note) => words(note));

const bay = (more: string, van = '') => `
storystick: 1
van:
  load_bay: {behind_front_axle: 1130 mm, length: 3270 mm, width: 1760 mm, height: 1890 mm}
  ${van}
fixtures:
  ${more}
`;

describe('views', () => {
  test('the plan view has the front on the left and the left side on top', async () => {
    const plan = viewOf(await pictureFrom(wholeVan), 'plan');
    const kitchen = boundsIn(plan, 'thing kitchen unit');
    expect(kitchen.leastXM).toBeCloseTo(0.08);
    expect(kitchen.mostXM).toBeCloseTo(1.18);
    expect(kitchen.leastYM).toBeCloseTo(-0.88);
  });

  test('the left side is seen from the middle: the front is on the right, and up is up', async () => {
    const left = viewOf(await pictureFrom(wholeVan), 'left');
    const kitchen = boundsIn(left, 'thing kitchen unit');
    expect(kitchen.leastXM).toBeCloseTo(-1.18);
    expect(kitchen.mostXM).toBeCloseTo(-0.08);
    expect(kitchen.leastYM).toBeCloseTo(-0.86);
    expect(kitchen.mostYM).toBeCloseTo(0);
    expect(left.edges).toMatchObject({ left: '← rear', right: 'front →' });
  });

  test('a side shows what lies at least partly on it', async () => {
    const picture = await pictureFrom(wholeVan);
    const [left, right] = [viewOf(picture, 'left'), viewOf(picture, 'right')];
    const shows = (view: View, thing: string) => figureOf(view, thing) !== undefined;
    expect([shows(left, 'thing wardrobe'), shows(right, 'thing wardrobe')]).toEqual([true, false]);
    expect([shows(left, 'thing shower'), shows(right, 'thing shower')]).toEqual([false, true]);
    expect([shows(left, 'thing bed'), shows(right, 'thing bed')]).toEqual([true, true]);
    expect([shows(left, 'opening sliding door'), shows(right, 'opening sliding door')]).toEqual([
      false,
      true,
    ]);
  });

  test('what ends at the middle is on its own side only', async () => {
    const picture = await pictureFrom(
      bay(
        'box: {mass: 1 kg, size: {length: 500 mm, width: 880 mm, height: 500 mm}, at: {from_front: 0 mm, from_left: 0 mm}}',
      ),
    );
    expect(figureOf(viewOf(picture, 'left'), 'thing box')).toBeDefined();
    expect(figureOf(viewOf(picture, 'right'), 'thing box')).toBeUndefined();
  });

  test('things on the roof and under the floor are dashed, and hide nothing', async () => {
    const plan = viewOf(await pictureFrom(wholeVan), 'plan');
    for (const thing of ['thing solar module', 'thing waste tank'])
      expect(figureOf(plan, thing)).toMatchObject({ line: 'hidden', hides: false });
  });

  test('the roof follows its heights', async () => {
    const [shell] = viewOf(await pictureFrom(wholeVan), 'right').figures;
    const millimetres = shell?.outline.map(
      ({ xM, yM }) => `${Math.round(1000 * xM)} ${Math.round(-1000 * yM)}`,
    );
    expect(millimetres).toEqual(['0 0', '0 1900', '2500 1890', '3270 1700', '3270 0']);
  });
});

describe('a cut', () => {
  test('leaves out what is above, dashes what is below, and draws what it goes through', async () => {
    const picture = await pictureFrom(wholeVan, 1.2);
    const plan = viewOf(picture, 'plan');
    expect(figureOf(plan, 'thing locker')).toBeUndefined();
    expect(figureOf(plan, 'thing bed')).toMatchObject({ line: 'hidden' });
    expect(figureOf(plan, 'thing wardrobe')).toMatchObject({ line: 'solid' });
    expect(plan.remarks.map((remark) => words(remark))).toEqual([
      'Above the cut, not drawn: locker, solar module.',
    ]);
    expect(plan.gaps.map(({ thing }) => thing)).toEqual([
      'opening sliding door',
      'opening kitchen window',
      'opening bed window',
      'opening rear door',
    ]);
  });

  test('at the top of a thing is above it, at its bottom goes through it', async () => {
    const at = async (cutM: number) =>
      figureOf(viewOf(await pictureFrom(wholeVan, cutM), 'plan'), 'thing locker')?.line;
    expect(await at(1.38)).toBe('solid');
    expect(await at(1.379)).toBeUndefined();
    expect(await at(1.68)).toBe('hidden');
  });

  test('the walls stand where they are at that height', async () => {
    const [shell] = viewOf(await pictureFrom(wholeVan, 1.4), 'plan').figures;
    expect(boundsOf(shell?.outline ?? []).mostYM).toBeCloseTo(0.83);
  });
});

describe('the axles and the centre of mass', () => {
  test('an axle that would cost too much room is only mentioned', async () => {
    const near = await pictureFrom(bay('{}'));
    expect(viewOf(near, 'plan').guides.map(({ label }) => label)).toEqual(['front axle']);
    const far = await pictureFrom(bay('{}').replace('1130 mm', '1500 mm'));
    expect(viewOf(far, 'plan').guides).toEqual([]);
    expect(viewOf(far, 'plan').remarks.map((remark) => words(remark))).toEqual([
      'The front axle is 1500 mm ahead of the load bay.',
    ]);
  });

  test('without the weight of the van there is no centre, and the plan is told what to add', async () => {
    const picture = await pictureFrom(bay('{}'));
    expect(viewOf(picture, 'plan').marks).toEqual([]);
    expect(notes(picture)).toContain('No centre of mass is drawn: add van.unladen.');
  });

  test('an empty van on its axles has its centre between them', async () => {
    const van =
      'unladen: {front: 1500 kg, rear: 500 kg, from: weighbridge, includes: {driver: true}}\n  wheelbase: 4000 mm';
    const picture = await pictureFrom(`${bay('{}', van)}stores: {nothing: {full: 0 kg}}\n`);
    const [mark] = viewOf(picture, 'plan').marks;
    expect(mark).toMatchObject({ sign: 'centre' });
    expect(mark?.at.xM).toBeCloseTo(1 - 1.13);
    expect(mark?.at.yM).toBeCloseTo(0);
    expect(viewOf(picture, 'left').marks).toEqual([]);
    expect(
      viewOf(picture, 'left')
        .remarks.map((remark) => words(remark))
        .join(),
    ).toContain('van.load_bay.floor_above_ground');
  });
});

describe('the passage', () => {
  test('its narrowest spot is named with what it lies between', async () => {
    const { signs, views } = await pictureFrom(wholeVan);
    expect(signs.narrowest && renderPhrase(signs.narrowest, 'metric')).toMatch(
      /^narrowest spot on the way to .+: \d+ mm, between kitchen unit and stool$/,
    );
    const [plan] = views;
    expect(plan?.marks.map(({ sign }) => sign)).toEqual(['centre', 'narrowest']);
    expect(plan?.passage.length).toBeGreaterThan(0);
  });

  test('without a door, or without anything to go to, the reader is told why there is none', async () => {
    expect(notes(await pictureFrom(bay('{}')))).toContain(
      'No passage is drawn: the plan has no door with a place in van.openings.',
    );
    const door =
      'openings: {door: {kind: door, in: right wall, length: 900 mm, height: 1500 mm, at: {from_front: 100 mm}}}';
    expect(notes(await pictureFrom(bay('{}', door)))).toContain(
      'No passage is drawn: no fixture says what it is, such as is: bed.',
    );
  });
});

test('things without a known place are named with the keys that they lack, those alike together', async () => {
  const picture = await pictureFrom(
    bay('bed: {mass: 30 kg}\n  table: {mass: 5 kg}\n  lamps: {mass: 1 kg, solid: false}'),
  );
  expect(notes(picture)).toContain(
    'Not drawn without size.length, size.width, size.height, at.from_front, at.from_left: bed, table.',
  );
});

describe('widened', () => {
  const core = { leastM: 0, mostM: 7 };
  test('takes in what costs less than three tenths of the whole, and no more', () => {
    expect(widened(core, [{ leastM: -2.9, mostM: 0 }])).toEqual({ leastM: -2.9, mostM: 7 });
    expect(widened(core, [{ leastM: -3, mostM: 0 }])).toEqual(core);
    expect(
      widened(core, [
        { leastM: 7, mostM: 9 },
        { leastM: -2, mostM: 0 },
      ]),
    ).toEqual({ leastM: 0, mostM: 9 });
  });
  test('what it takes in lies within it', () => {
    expect(isWithin({ leastM: -1, mostM: 0 }, widened(core, [{ leastM: -1, mostM: 0 }]))).toBe(true);
  });
});
