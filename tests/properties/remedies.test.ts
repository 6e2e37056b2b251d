import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { PlacedBody } from '../../src/build/body.ts';
import { isPlaced } from '../../src/build/body.ts';
import type { Build } from '../../src/build/build.ts';
import type { Finding } from '../../src/engine/finding.ts';
import { buildOf, reportOf, words } from '../support/check.ts';
import { drafts, kg, write } from '../support/random-plan.ts';
import { figures, type Mass, modelOf } from '../support/reference-model.ts';

/** "…, or wardrobe with what it holds (98 kg) 130 mm to the right." */
const move =
  /, or (.+?)(?: with what it holds)? \([\d,.]+ kg\) ([\d,]+) mm (forward|rearward|to the left|to the right)\.$/;

const directions: Readonly<Record<string, readonly [x: number, y: number]>> = {
  forward: [-1, 0],
  rearward: [1, 0],
  'to the left': [0, -1],
  'to the right': [0, 1],
};

/** The names of a thing and of all that is in or on it. */
function group(build: Build, root: string): ReadonlySet<string> {
  const hosts = new Map(build.bodies.map(({ label, host }) => [label, host]));
  const inside = (label: string): boolean => {
    for (let at: string | undefined = label; at !== undefined; at = hosts.get(at))
      if (at === root) return true;
    return false;
  };
  return new Set(build.bodies.map(({ label }) => label).filter(inside));
}

const rules: Readonly<Record<string, (mass: readonly Mass[], finding: Finding, text: string) => number>> = {
  'balance.front-axle': (mass, finding, text) => at(mass, finding, text).front,
  'balance.rear-axle': (mass, finding, text) => at(mass, finding, text).rear,
  'balance.steered-share': (mass, finding, text) => at(mass, finding, text).front / modelOf(text).maxMass,
  'balance.sides': (mass, finding, text) =>
    at(mass, finding, text).lean * (finding.subject.startsWith('right') ? 1 : -1),
  'balance.lateral-centre': (mass, finding, text) =>
    at(mass, finding, text).sideways * (finding.subject.endsWith('right') ? 1 : -1),
  'balance.wheel-load': (mass, finding, text) => {
    const f = at(mass, finding, text);
    const right = finding.subject.startsWith('front') ? f.frontRight : f.rearRight;
    return finding.subject.includes('right') ? right : 1 - right;
  },
  'balance.equipment-centre': (mass, finding, text) => at(mass, finding, text).equipment,
};

/** The figures in the state that the finding names. */
function at(masses: readonly Mass[], { worstState }: Finding, text: string) {
  const fill = new Map((worstState?.fills ?? []).map(({ name, massKg }) => [name, massKg]));
  return figures({ ...modelOf(text), masses }, fill);
}

/** Plans with little to spare, so that every limit is broken often enough. */
const tight = drafts.map((draft) => ({
  ...draft,
  van: { ...draft.van, max_mass: kg(4500), axle_limits: { front: kg(1150), rear: kg(1250) } },
}));

// A remedy names a thing, a distance and a direction. Doing it brings the value to its limit, in the state that broke it,
// or clear of the tolerance where that was the trouble.
test('doing what the remedy says is enough', async () => {
  const tried = new Set<string>();
  await fc.assert(
    fc.asyncProperty(tight, async (draft) => {
      const text = write(draft);
      const build = await buildOf(text);
      const { masses } = modelOf(text);
      for (const finding of (await reportOf(text)).findings) {
        const { rule, remedy, limit, verdict, margin, tolerance } = finding;
        const [, name = '', distance = '', direction = ''] = move.exec(words(remedy)) ?? [];
        const value = rules[rule];
        if (!value || !limit || !margin || name === '') continue;
        const by = Number(distance.replaceAll(',', '')) / 1000;
        const [dx, dy] = directions[direction] ?? [0, 0];
        const moving = group(build, name);
        const moved = masses.map((mass) =>
          moving.has(mass.name) ? { ...mass, x: mass.x + dx * by, y: mass.y + dy * by } : mass,
        );
        expect(value(masses, finding, text)).toBeCloseTo(finding.measured?.value ?? Number.NaN, 7);
        const after = value(moved, finding, text);
        const clear = margin.value < 0 ? 0 : (tolerance?.value ?? 0);
        const left = limit.sense === 'at most' ? limit.measure.value - after : after - limit.measure.value;
        expect({ rule, verdict, name, by, direction, left: left - clear >= -1e-7 }).toMatchObject({
          left: true,
        });
        tried.add(rule);
      }
    }),
    { numRuns: 60 },
  );
  expect([...tried].sort()).toEqual(Object.keys(rules).sort());
});

// What the remedy moves has the room to go there.
test('nothing is sent through the end or the side of the load bay', async () => {
  await fc.assert(
    fc.asyncProperty(drafts, async (draft) => {
      const text = write(draft);
      const build = await buildOf(text);
      const { bay } = build.vehicle;
      if (!bay) throw new Error('a random plan has a load bay');
      for (const { remedy } of (await reportOf(text)).findings) {
        const [, name = '', distance = '', direction = ''] = move.exec(words(remedy)) ?? [];
        const space = build.spaces.get(name);
        if (!space) continue;
        const by = Number(distance.replaceAll(',', '')) / 1000;
        // Rounded up to the next centimetre.
        const spare = 0.01 + 1e-9;
        const [x, y] = [space.x.startM - bay.behindFrontAxleM, space.y.startM + bay.widthM / 2];
        if (direction === 'forward') expect(by).toBeLessThanOrEqual(x + spare);
        if (direction === 'rearward')
          expect(by).toBeLessThanOrEqual(bay.lengthM - x - (space.x.lengthM ?? 0) + spare);
        if (direction === 'to the left') expect(by).toBeLessThanOrEqual(y + spare);
        if (direction === 'to the right')
          expect(by).toBeLessThanOrEqual(bay.widthM - y - (space.y.lengthM ?? 0) + spare);
      }
    }),
    { numRuns: 25 },
  );
});

/** Every body of a random plan has a place, or the models above would compare less than all of it. */
test('random plans have a place for everything', async () => {
  await fc.assert(
    fc.asyncProperty(drafts, async (draft) => {
      const build = await buildOf(write(draft));
      const placed: readonly PlacedBody[] = build.bodies.filter(isPlaced);
      expect(placed).toHaveLength(build.bodies.length);
    }),
    { numRuns: 15 },
  );
});
