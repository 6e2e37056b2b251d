import { describe, expect, test } from 'vitest';
import type { Comparison, Edit } from '../../../src/engine/compare/comparison.ts';
import { isSame } from '../../../src/engine/compare/comparison.ts';
import { compareStandings, isStepBack, isWorse } from '../../../src/engine/compare/standing.ts';
import { verdicts } from '../../../src/engine/finding.ts';
import { comparisonOf } from '../../support/compared.ts';

const van = `storystick: 1
van:
  max_mass: 3500 kg
  axle_limits: {front: 1850 kg, rear: 2240 kg}
  unladen: {front: 1190 kg, rear: 870 kg}
  wheelbase: 3640 mm
  load_bay: {behind_front_axle: 1130 mm, length: 3270 mm, width: 1760 mm, height: 1890 mm}
`;
const size = 'size: {length: 600 mm, width: 500 mm, height: 400 mm}';
const cupboard = `  cupboard: {mass: 38 kg, ${size}, at: {from_front: 1200 mm, from_left: 0 mm, above_floor: 0 mm}}\n`;
const plan = `${van}fixtures:\n${cupboard}`;

const edits = ({ edits: all }: Comparison): readonly Partial<Edit>[] =>
  all.map(({ kind, entry, key, was, before, after, change, moves }) => ({
    kind,
    ...(entry && { entry }),
    ...(key.length > 0 && { key }),
    ...(was !== undefined && { was }),
    ...(before !== undefined && { before }),
    ...(after !== undefined && { after }),
    ...(change && { change }),
    ...(moves && { moves }),
  }));

const editsTo = async (after: string, before = plan) => edits(await comparisonOf(before, after));

describe('what was edited', () => {
  test('a quantity, with its change', async () => {
    expect(await editsTo(plan.replace('38 kg', '52 kg'))).toEqual([
      {
        kind: 'changed',
        entry: ['fixtures', 'cupboard'],
        key: ['mass'],
        before: '38 kg',
        after: '52 kg',
        change: { kind: 'mass', value: 14 },
      },
    ]);
  });

  test('is nothing where the same is written in other words', async () => {
    const other = plan
      .replace('38 kg', '38000 g')
      .replace('van:', '# all weighed\nvan:')
      .replace('from_front: 1200 mm, from_left: 0 mm', 'from_left: 0 in, from_front: "1.2 m"');
    const comparison = await comparisonOf(plan, other);
    expect(isSame(comparison)).toBe(true);
  });

  test('is something where only the tolerance changed', async () => {
    expect(await editsTo(plan.replace('38 kg', '38 kg ± 2 kg'))).toEqual([
      {
        kind: 'changed',
        entry: ['fixtures', 'cupboard'],
        key: ['mass'],
        before: '38 kg',
        after: '38 kg ± 2 kg',
      },
    ]);
  });

  test('a place, as moves along the van, across it and up', async () => {
    const moved = plan.replace(
      'from_front: 1200 mm, from_left: 0 mm, above_floor: 0 mm',
      'from_front: 800 mm, from_left: 50 mm, above_floor: 0.1 m',
    );
    expect(await editsTo(moved)).toMatchObject([
      {
        kind: 'moved',
        entry: ['fixtures', 'cupboard'],
        moves: [
          { direction: 'forward', by: { kind: 'length', value: expect.closeTo(0.4, 9) } },
          { direction: 'to the right', by: { kind: 'length', value: expect.closeTo(0.05, 9) } },
          { direction: 'up', by: { kind: 'length', value: expect.closeTo(0.1, 9) } },
        ],
      },
    ]);
  });

  test('a place that is measured from somewhere else now, by where the thing is', async () => {
    // 3270 - 600 - 1470 = 1200: it stands where it stood, along the van.
    const moved = plan.replace(
      'from_front: 1200 mm, from_left: 0 mm',
      'from_rear: 1070 mm, from_right: 0 mm',
    );
    expect(await editsTo(moved)).toMatchObject([
      {
        kind: 'moved',
        before: 'from_front: 1200 mm, from_left: 0 mm',
        after: 'from_rear: 1070 mm, from_right: 0 mm',
        moves: [
          { direction: 'rearward', by: { value: expect.closeTo(0.4, 6) } },
          { direction: 'to the right', by: { value: expect.closeTo(1.26, 6) } },
        ],
      },
    ]);
  });

  test('a thing in another is moved as seen from what it stands in', async () => {
    const box = `  box: {mass: 2 kg, in: cupboard, size: {length: 100 mm, width: 100 mm, height: 100 mm}, at: {from_front: 0 mm, from_left: 0 mm, above_floor: 0 mm}}\n`;
    const both = (plan + box)
      .replace('at: {from_front: 1200 mm', 'at: {from_front: 1000 mm')
      .replace('at: {from_front: 0 mm', 'at: {from_rear: 0 mm');
    expect(await editsTo(both, plan + box)).toMatchObject([
      {
        entry: ['fixtures', 'cupboard'],
        moves: [{ direction: 'forward', by: { value: expect.closeTo(0.2, 9) } }],
      },
      {
        entry: ['fixtures', 'box'],
        moves: [{ direction: 'rearward', by: { value: expect.closeTo(0.5, 6) } }],
      },
    ]);
  });

  test('an entry that is new, and one that is gone', async () => {
    const other = `${van}fixtures:\n  bicycle: {mass: 14 kg, at: {from_rear: 0 mm}}\n`;
    expect(await editsTo(other)).toMatchObject([
      { kind: 'added', entry: ['fixtures', 'bicycle'], after: '{mass: 14 kg, at: {from_rear: 0 mm}}' },
      { kind: 'removed', entry: ['fixtures', 'cupboard'], before: expect.stringContaining('mass: 38 kg') },
    ]);
  });

  test('a key that is new, and one that is gone', async () => {
    expect(await editsTo(plan.replace('wheelbase: 3640 mm', 'track: 1710 mm'))).toEqual([
      { kind: 'added', entry: ['van'], key: ['track'], after: '1710 mm' },
      { kind: 'removed', entry: ['van'], key: ['wheelbase'], before: '3640 mm' },
    ]);
  });

  test('a name, without those who refer to it', async () => {
    const box = `  box: {mass: 2 kg, in: cupboard}\nstores:\n  tins: {full: 5 kg, in: cupboard}\nload_states:\n  away: {tins: 50 %}\n`;
    const renamed = (plan + box).replaceAll('cupboard', 'pantry').replaceAll('tins', 'food in tins');
    expect(await editsTo(renamed, plan + box)).toEqual([
      { kind: 'renamed', entry: ['fixtures', 'pantry'], was: 'cupboard' },
      { kind: 'renamed', entry: ['stores', 'food in tins'], was: 'tins' },
    ]);
  });

  test('an entry of a list, by what stays before and after it', async () => {
    const floor = (layers: string) => `${van}build_ups:\n  floor: {of: floor, layers: [${layers}]}\n`;
    const [xps, ply, lino] = [
      '{material: XPS, thickness: 25 mm}',
      '{material: birch plywood, thickness: 12 mm}',
      '{material: linoleum, thickness: 2.5 mm}',
    ];
    const entry = ['build_ups', 'floor'];
    expect(await editsTo(floor(`${xps}, ${lino}`), floor(`${xps}, ${ply}, ${lino}`))).toEqual([
      { kind: 'removed', entry, key: ['layers', 1], before: ply },
    ]);
    expect(
      await editsTo(floor(`${xps}, ${ply.replace('12', '15')}, ${lino}`), floor(`${xps}, ${ply}, ${lino}`)),
    ).toMatchObject([
      { kind: 'changed', entry, key: ['layers', 1, 'thickness'], before: '12 mm', after: '15 mm' },
    ]);
  });

  test('a parameter, and not what is worked out with it', async () => {
    const withParams = plan
      .replace('van:', 'params: {depth: 500 mm}\nvan:')
      .replace('width: 500 mm', 'width: depth');
    expect(await editsTo(withParams.replace('depth: 500 mm', 'depth: 450 mm'), withParams)).toEqual([
      {
        kind: 'changed',
        entry: ['params', 'depth'],
        before: '500 mm',
        after: '450 mm',
        change: { kind: 'length', value: expect.closeTo(-0.05, 9) },
      },
    ]);
  });
});

describe('a finding', () => {
  test('is found again under the new name of what it is about', async () => {
    const renamed = plan.replace('cupboard', 'pantry unit');
    const { verdicts: changes, edits: made } = await comparisonOf(plan, renamed);
    expect(made).toMatchObject([{ kind: 'renamed', was: 'cupboard' }]);
    expect(changes).toEqual([]);
  });

  test('that got worse is a step back, with what it was', async () => {
    const { verdicts: changes } = await comparisonOf(plan, plan.replace('38 kg', '1600 kg'));
    expect(changes.find(({ identity }) => identity.startsWith('mass.total'))).toMatchObject({
      turn: 'worse',
      before: { verdict: 'pass' },
      after: { verdict: 'fail' },
    });
  });

  test('of a check that could not begin is the other side of all that the check finds', async () => {
    const bare = plan.replace('  axle_limits: {front: 1850 kg, rear: 2240 kg}\n', '');
    const there = (await comparisonOf(bare, plan)).verdicts.filter(
      ({ shown }) => shown.rule === 'balance.rear-axle',
    );
    expect(there).toMatchObject([
      { turn: 'better', before: { verdict: 'not checked' }, after: { verdict: 'pass' } },
    ]);
    const back = (await comparisonOf(plan, bare)).verdicts.filter(
      ({ shown }) => shown.rule === 'balance.rear-axle',
    );
    expect(back).toMatchObject([
      { turn: 'worse', before: { verdict: 'pass' }, after: { verdict: 'not checked' } },
    ]);
    expect(back[0]?.shown.subject).toBe(there[0]?.shown.subject);
  });
});

describe('a value', () => {
  test('is told with its change and what that does to the margin', async () => {
    const { moved } = await comparisonOf(plan, plan.replace('38 kg', '52 kg'));
    expect(moved.find(({ identity }) => identity === 'mass.total whole van')).toMatchObject({
      change: { kind: 'mass', value: expect.closeTo(14, 6) },
      margin: { change: { value: expect.closeTo(-14, 6) }, turn: 'less' },
    });
  });

  test('whose limit alone moved is told too', async () => {
    const { moved } = await comparisonOf(plan, plan.replace('max_mass: 3500 kg', 'max_mass: 3600 kg'));
    expect(moved.find(({ identity }) => identity === 'mass.total whole van')).toMatchObject({
      change: { value: 0 },
      margin: { change: { value: expect.closeTo(100, 6) }, turn: 'more' },
    });
  });
});

test('verdicts from good to bad: pass, not checked, warn, fail', () => {
  expect([...verdicts].sort((a, b) => compareStandings({ verdict: a }, { verdict: b }))).toEqual([
    'pass',
    'not checked',
    'warn',
    'fail',
  ]);
});

test('a new failure or warning is a step back, a new check that could not be made is none', async () => {
  const { verdicts: changes } = await comparisonOf(plan, plan.replace('38 kg', '1600 kg'));
  const shown = changes[0]?.shown;
  if (!shown) throw new Error('nothing changed');
  for (const verdict of verdicts) {
    const after = { ...shown, verdict };
    const change = { identity: '', turn: 'new' as const, shown: after, after };
    expect(isStepBack(change)).toBe(verdict === 'fail' || verdict === 'warn');
    expect(isStepBack({ identity: '', turn: 'gone', shown: after, before: after })).toBe(false);
  }
});

test('the worse plan is worse, and the better is not', async () => {
  const heavy = plan.replace('38 kg', '1600 kg');
  expect(isWorse(await comparisonOf(plan, heavy))).toBe(true);
  expect(isWorse(await comparisonOf(heavy, plan))).toBe(false);
  expect(isWorse(await comparisonOf(heavy, heavy))).toBe(false);
});

describe('what the plan waives', () => {
  const until = '2999-12-31';
  const waiver = `waivers:\n  - {check: mass.payload, reason: "the maker raises the plate", by: Robin, until: ${until}}\n`;
  const broken = plan.replace('max_mass: 3500 kg', 'max_mass: 2050 kg');
  const payload = ({ verdicts: changes }: Comparison) =>
    changes.find(({ shown }) => shown.rule === 'mass.payload');

  test('got worse, and is no step back', async () => {
    const change = payload(await comparisonOf(plan, broken + waiver));
    expect(change).toMatchObject({ turn: 'worse', after: { verdict: 'warn', waived: { as: 'waived' } } });
    expect(change && isStepBack(change)).toBe(false);
  });

  test('is better than what is not waived, and worse the other way', async () => {
    expect(payload(await comparisonOf(broken, broken + waiver))).toMatchObject({ turn: 'better' });
    const back = payload(await comparisonOf(broken + waiver, broken));
    expect(back).toMatchObject({ turn: 'worse' });
    expect(back && isStepBack(back)).toBe(true);
  });

  test('is an edit', async () => {
    expect(await editsTo(broken + waiver, broken)).toMatchObject([{ kind: 'added', entry: ['waivers'] }]);
  });
});
