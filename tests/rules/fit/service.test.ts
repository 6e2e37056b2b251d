import { describe, expect, test } from 'vitest';
import { findingOf, measured, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const service = (text: string, subject = '') => findingOf(text, 'fit.service', subject);

/** A door of 1 × 1 m in each wall, the doors at the rear, a hatch in the floor and one in the roof. */
const openings = `
    left: {in: left wall, length: 1 m, height: 1 m, kind: door, at: {from_front: 1 m}}
    right: {in: right wall, length: 1 m, height: 1 m, kind: door, at: {from_front: 1 m}}
    bulkhead door: {in: bulkhead, width: 1 m, height: 1 m, kind: door, at: {centred: true}}
    rear: {in: rear doors, width: 1 m, height: 1 m, kind: door, at: {centred: true}}
    trap: {in: floor, length: 1 m, width: 1 m, kind: hatch, at: {from_front: 1 m, centred: true}}
    roof: {in: ceiling, length: 1 m, width: 1 m, kind: hatch, at: {from_front: 1 m, centred: true}}
    vague: {in: left wall, length: 1 m, height: 1 m}`;

/** A tank of 0.4 m a side that is serviced from somewhere, and more things. */
const tank = (from: string, at: string, ...things: readonly string[]) =>
  plan(
    `tanks:
  tank: {contents: waste, holds: 40 L, size: {length: 0.4 m, width: 0.4 m, height: 0.4 m}, at: {${at}}, service_from: ${from}}
fixtures: {${things.join(', ')}}`,
    { openings },
  );

const box = (name: string, size: readonly [number, number, number], at: string, more = '') =>
  `${name}: {mass: 1 kg, size: {length: ${size[0]} m, width: ${size[1]} m, height: ${size[2]} m}, at: {${at}}${more}}`;

/** 0.3 m from each opening, in its middle, and a crate of 0.1 m right in the way. */
const ways = [
  { from: 'left', at: 'from_front: 1.3 m, from_left: 0.3 m', between: 'from_front: 1.4 m, from_left: 0.1 m' },
  {
    from: 'right',
    at: 'from_front: 1.3 m, from_right: 0.3 m',
    between: 'from_front: 1.4 m, from_right: 0.1 m',
  },
  {
    from: 'bulkhead door',
    at: 'from_front: 0.3 m, centred: true',
    between: 'from_front: 0.1 m, centred: true',
  },
  { from: 'rear', at: 'from_rear: 0.3 m, centred: true', between: 'from_rear: 0.1 m, centred: true' },
  {
    from: 'trap',
    at: 'from_front: 1.3 m, centred: true, above_floor: 0.3 m',
    between: 'from_front: 1.4 m, centred: true, above_floor: 0.1 m',
  },
  {
    from: 'roof',
    at: 'from_front: 1.3 m, centred: true, above_floor: 1.3 m',
    between: 'from_front: 1.4 m, centred: true, above_floor: 1.8 m',
  },
] as const;

describe.each(ways)('through $from', ({ from, at, between }) => {
  test('free: pass, with the distance', async () => {
    const finding = await service(tank(from, at));
    expect(finding).toMatchObject({
      verdict: 'pass',
      subject: `tank through ${from}`,
      path: ['tanks', 'tank', 'service_from'],
    });
    expect(measured(finding)).toBeCloseTo(0.3, 9);
    expect(finding.limit?.measure.value).toBe(0.4);
  });

  test('something in the way: fail, and it is named', async () => {
    const finding = await service(tank(from, at, box('crate', [0.1, 0.1, 0.1], between)));
    expect(finding.verdict).toBe('fail');
    expect(words(finding.reason)).toContain(`crate stands between tank and ${from}, and must come out first`);
    expect(words(finding.remedy)).toMatch(/take crate out or move it \d+ mm/);
  });
});

describe('through an opening', () => {
  const left = (fromLeft: string, ...things: readonly string[]) =>
    tank('left', `from_front: 1.3 m, from_left: ${fromLeft}`, ...things);

  test('exactly within reach, a millimetre beyond it, and a reach of the plan', async () => {
    expect((await service(left('400 mm'))).verdict).toBe('pass');
    const finding = await service(left('450 mm'));
    expect(finding.verdict).toBe('warn');
    expect(words(finding.remedy)).toContain('Move tank 50 mm nearer to left');
    const own = `${left('450 mm')}\nrules: {fit.service: {limit: 500 mm, reason: "long arms, tried out"}}`;
    expect((await service(own)).verdict).toBe('pass');
  });

  test('exactly in the opening; beyond its edge warns by how much', async () => {
    expect((await service(tank('left', 'from_front: 1 m, from_left: 0.3 m'))).verdict).toBe('pass');
    const finding = await service(tank('left', 'from_front: 0.9 m, from_left: 0.3 m'));
    expect(finding.verdict).toBe('warn');
    expect(words(finding.reason)).toContain('100 mm of it at its front');
    expect(words(finding.remedy)).toContain('Move tank 100 mm rearward');
    const high = await service(tank('left', 'from_front: 1.3 m, from_left: 0.3 m, above_floor: 0.7 m'));
    expect(words(high.reason)).toContain('100 mm of it at its top');
  });

  test('what hosts it and what it hosts are not in the way', async () => {
    const cupboard = box('cupboard', [1, 1, 1], 'from_front: 1 m, from_left: 0 m');
    const text = tank('left', 'from_front: 0.3 m, from_left: 0.3 m', cupboard).replace(
      'service_from',
      'in: cupboard, service_from',
    );
    expect((await service(text)).verdict).toBe('pass');
  });

  test('aside, not along: the shortest way to clear the sweep', async () => {
    const crate = box('crate', [0.4, 0.1, 0.1], 'from_front: 1.65 m, from_left: 0.1 m');
    expect(words((await service(left('300 mm', crate))).remedy)).toContain('move it 50 mm rearward');
  });

  test('a part of the van stays where it is', async () => {
    const text = left('300 mm').replace(
      'openings:',
      'wheel_arches: {from_front: 1.2 m, length: 0.8 m, width: 0.2 m, height: 0.3 m}\n  openings:',
    );
    const finding = await service(text);
    expect(finding.verdict).toBe('fail');
    expect(words(finding.remedy)).toContain('left wheel arch is a part of the van and stays');
  });

  test('rear doors open', async () => {
    const text = tank('rear', 'from_rear: 0.3 m, centred: true').replace(
      'height: 2 m',
      'height: 2 m, rear_door_thickness: 0.1 m',
    );
    expect((await service(text)).verdict).toBe('pass');
  });
});

describe('from underneath', () => {
  test('it hangs there: pass', async () => {
    const text = tank('underneath', 'from_front: 2.5 m, centred: true, above_floor: -0.4 m');
    expect((await service(text)).verdict).toBe('pass');
  });
  test('above the floor: fail, unless an opening lies below it', async () => {
    const finding = await service(tank('underneath', 'from_front: 2.5 m, centred: true'));
    expect(finding.verdict).toBe('fail');
    expect(words(finding.remedy)).toContain('400 mm × 400 mm');
    expect((await service(tank('underneath', 'from_front: 1.3 m, centred: true'))).verdict).toBe('pass');
    expect((await service(tank('underneath', 'from_front: 1.8 m, centred: true'))).verdict).toBe('warn');
  });
});

describe('from inside', () => {
  /** In the front left corner, walled in on the right; behind it this much floor up to another thing. */
  const corner = (floor: number, ...more: readonly string[]) =>
    tank(
      'inside',
      'from_front: 0 m, from_left: 0 m',
      box('wall', [2, 0.1, 1.5], 'from_front: 0 m, from_left: 0.4 m'),
      box('bench', [0.5, 0.4, 0.5], `from_front: ${0.4 + floor} m, from_left: 0 m`),
      ...more,
    );

  test('600 mm are enough, less warns', async () => {
    const finding = await service(corner(0.6));
    expect(finding).toMatchObject({ verdict: 'pass', subject: 'tank from inside' });
    expect(measured(finding)).toBeCloseTo(0.6, 9);
    const short = await service(corner(0.55));
    expect(short.verdict).toBe('warn');
    expect(words(short.reason)).toContain('behind it: 550 mm deep, up to bench');
    expect(words(short.remedy)).toContain('Move bench 50 mm away');
  });

  test('what is lower than toes or higher than shoulders is not in the way', async () => {
    const low = box('mat', [0.5, 0.4, 0.1], 'from_front: 0.5 m, from_left: 0 m');
    const high = box('shelf', [0.5, 0.4, 0.1], 'from_front: 0.5 m, from_left: 0 m, above_floor: 1.4 m');
    expect((await service(corner(0.6, low, high))).verdict).toBe('pass');
    const bar = box('bar', [0.5, 0.4, 0.1], 'from_front: 0.5 m, from_left: 0 m, above_floor: 1.3 m');
    expect((await service(corner(0.6, bar))).verdict).toBe('warn');
  });

  test('over a low bed it may be reached, if the floor begins within reach', async () => {
    // Under the bench of 0.35 m depth, which floats; the tank is lower than it.
    const bench = (depth: number) =>
      tank(
        'inside',
        'from_front: 0 m, from_left: 0 m',
        box('wall', [2, 0.1, 1.5], 'from_front: 0 m, from_left: 0.4 m'),
        box('bed', [depth, 0.4, 0.1], 'from_front: 0.4 m, from_left: 0 m, above_floor: 0.5 m'),
      );
    expect((await service(bench(0.4))).verdict).toBe('pass');
    expect((await service(bench(0.45))).verdict).toBe('warn');
  });

  test('in a cupboard: the cupboard is no wall, but nobody stands in it', async () => {
    const text = (reach: number) =>
      tank(
        'inside',
        'from_front: 0 m, from_left: 0 m',
        box('cupboard', [0.4, 0.4 + reach, 1], 'from_front: 0 m, from_left: 0 m'),
        box('post', [1, 0.4, 1], 'from_front: 0.4 m, from_left: 0 m'),
      ).replace('service_from', 'in: cupboard, service_from');
    expect((await service(text(0.4))).verdict).toBe('pass');
    expect((await service(text(0.41))).verdict).toBe('warn');
  });

  test('under the floor or in the cab nothing is known', async () => {
    expect(
      await service(tank('inside', 'from_front: 1 m, centred: true, above_floor: -0.4 m')),
    ).toMatchObject({
      verdict: 'not checked',
      missing: ['tanks.tank.service_from'],
    });
  });
});

describe('not checked', () => {
  test('an opening without a place', async () => {
    const finding = await service(tank('vague', 'from_front: 1 m, from_left: 0 m'));
    expect(finding.verdict).toBe('not checked');
    expect(finding.missing).toContain('van.openings.vague.at.from_front');
  });
  test('a thing without a place', async () => {
    const text = plan('tanks: {gas: {contents: propane, holds: 11 kg, service_from: left}}', { openings });
    const finding = await service(text);
    expect(finding.missing).toContain('tanks.gas.size.length');
    expect(finding.missing).toContain('tanks.gas.at.from_front');
  });
  test('nothing to service', async () => {
    expect(await service(plan())).toMatchObject({
      verdict: 'not checked',
      missing: ['tanks.NAME.service_from'],
    });
  });
});
