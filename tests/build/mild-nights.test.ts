import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type DampestNight, dampestNightOf } from '../../src/build/mild-nights.ts';
import { type NightAir, nightAirOf, stackM3S } from '../../src/build/night-air.ts';
import { steadyDamp } from '../../src/calc/air/moisture.ts';
import { airy, twoAsleep, twoVents } from '../support/air-plan.ts';
import { buildOf } from '../support/check.ts';

async function nightsOf(
  text: string,
): Promise<{ readonly night: NightAir; readonly dampest: DampestNight | undefined }> {
  const build = await buildOf(text);
  const night = nightAirOf(build);
  if (!('humid' in night)) throw new Error(`missing: ${night.missing.join(', ')}`);
  return { night, dampest: dampestNightOf(build, night) };
}

const living = (keys: string) => `${twoAsleep}living: {${keys}}\n`;

test('the mildest night with the heating on, 5 K below the room, is the dampest', async () => {
  const { night, dampest } = await nightsOf(airy(twoVents(50, 100), living('winter_low: -10 degC')));
  expect(dampest).toMatchObject({ coldestC: -10, mildestC: 10, air: { insideC: 15, outsideC: 10 } });
  expect(dampest?.month).toBeUndefined();
  const winter = night.humid.find(({ part }) => part === 'night');
  expect(dampest?.air.unboundedHumidity).toBeGreaterThan(winter?.unboundedHumidity ?? 1);
});

test('where it never gets so mild, the mean of the warmest month is the end', async () => {
  // A wave between means 10 K from the extremes: −20 to 4 °C.
  const { dampest } = await nightsOf(
    airy(twoVents(50, 100), living('winter_low: -30 degC, summer_high: 14 degC')),
  );
  expect(dampest?.mildestC).toBeCloseTo(4, 9);
});

test('it is as in the autumn month whose mean comes nearest, in the south in its own autumn', async () => {
  const place = (latitude: number) =>
    airy(twoVents(50, 100), living(`winter_low: -8 degC, place: {latitude: ${latitude}, longitude: -3.2}`));
  expect((await nightsOf(place(55.9))).dampest?.month?.name).toBe('October');
  const south = living('winter_low: -8 degC, summer_high: 30 degC, place: {latitude: -75, longitude: 100}');
  expect(['April', 'May']).toContain((await nightsOf(airy(twoVents(50, 100), south))).dampest?.month?.name);
});

test('no milder night where the coldest is as mild, and none without a coldest', async () => {
  expect((await nightsOf(airy(twoVents(50, 100), living('winter_low: 10 degC')))).dampest).toBeUndefined();
  expect((await nightsOf(airy(twoVents(50, 100)))).dampest).toBeUndefined();
});

/** By the formula alone, degree by degree: nothing between the ends is damper than what was found. */
test('no night between the coldest and the mildest is damper', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.double({ min: 1, max: 900, noNaN: true }),
      fc.double({ min: 1, max: 900, noNaN: true }),
      fc.double({ min: -45, max: 12, noNaN: true }),
      fc.double({ min: 8, max: 24, noNaN: true }),
      fc.option(fc.double({ min: 0, max: 10, noNaN: true })),
      async (lowCm2, highCm2, winterC, asleepC, leaks) => {
        const changes = leaks === null ? '' : `, air_changes_per_hour: ${leaks.toFixed(3)}`;
        const rest = `people: {sleepers: [{stature: 1.7 m}]}\nheat: {inside: 24 degC, asleep: ${asleepC.toFixed(3)} degC${changes}}\nliving: {winter_low: ${winterC.toFixed(3)} degC}\n`;
        const { night, dampest } = await nightsOf(
          airy(twoVents(Number(lowCm2.toFixed(3)), Number(highCm2.toFixed(3))), rest),
        );
        if (!dampest) return;
        const { coldestC, mildestC, air } = dampest;
        for (let step = 0; step <= 60; step += 1) {
          const outsideC = coldestC + ((mildestC - coldestC) * step) / 60;
          const flowM3S = Math.max(stackM3S(night.vents, air.insideC, outsideC), night.leaksM3PerS ?? 0);
          const { relativeHumidity } = steadyDamp({
            insideC: air.insideC,
            outsideC,
            outsideHumidity: 0.9,
            releaseKgS: 0.05 / 3600,
            flowM3S,
          });
          expect(relativeHumidity).toBeLessThanOrEqual(air.unboundedHumidity * (1 + 1e-9));
        }
      },
    ),
    { numRuns: 40 },
  );
});
