import { expect, test } from 'vitest';
import { findingOf, reportOf, words } from '../../support/check.ts';
import { plan } from '../../support/test-van.ts';

const text = (tank: string, pipe: string) =>
  plan(`tanks: {fresh tank: {contents: fresh, holds: 70 L${tank}}, waste tank: {contents: waste, holds: 50 L}}
water:
  pump: {}
  outlets: {sink: {use: tap}}
  pipes:
    suction: {from: fresh tank, to: pump${pipe}}
    waste: {from: sink, to: waste tank}`);
const yes = ', drinking_water: true';
const no = ', drinking_water: false';

const all = async (tank: string, pipe: string) =>
  (await reportOf(text(tank, pipe))).findings.filter(({ rule }) => rule === 'water.drinking-materials');

test('all declared, waste pipes and tanks not asked: pass', async () => {
  const [finding, ...more] = await all(yes, yes);
  expect(more).toEqual([]);
  expect(finding?.verdict).toBe('pass');
  expect(words(finding?.reason)).toContain('All 2 fresh tanks and pipes');
});

test('each that is not made for it warns', async () => {
  expect((await all(no, no)).map(({ subject, verdict }) => [subject, verdict]).sort()).toEqual([
    ['fresh tank', 'warn'],
    ['suction', 'warn'],
  ]);
});

test('those of which nothing is said are one not checked', async () => {
  expect(await all('', '')).toMatchObject([
    {
      verdict: 'not checked',
      missing: ['tanks.fresh tank.drinking_water', 'water.pipes.suction.drinking_water'],
    },
  ]);
  expect(await all(yes, '')).toMatchObject([{ verdict: 'not checked', subject: 'suction' }]);
});

test('one refused and one silent are two findings', async () => {
  expect((await all(no, '')).map(({ verdict }) => verdict)).toEqual(['warn', 'not checked']);
});

test('without tank and pipes there is nothing to declare', async () => {
  expect(await findingOf(plan('water: {}'), 'water.drinking-materials')).toMatchObject({
    missing: ['tanks.NAME.drinking_water', 'water.pipes.NAME.drinking_water'],
  });
});
