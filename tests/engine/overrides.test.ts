import { describe, expect, test } from 'vitest';
import type { Override } from '../../src/build/build.ts';
import { overrideTroubles } from '../../src/engine/overrides.ts';
import { rules } from '../../src/rules/index.ts';
import { buildOf } from '../support/check.ts';
import { plan } from '../support/test-van.ts';

const trouble = async (changes: Partial<Override> & { readonly kind?: string }) => {
  const { kind = 'share', ...rest } = changes;
  const override: Override = {
    rule: 'balance.sides',
    path: ['rules', 'balance.sides'],
    limit: { value: 0.05, halfWidth: 0, shared: [], kind },
    reason: 'the maker allows it',
    ...rest,
  };
  return overrideTroubles(rules, { ...(await buildOf(plan())), overrides: [override] });
};

test.each([
  { rule: 'balance.sides', kind: 'share' },
  { rule: 'balance.wheel-load', kind: 'share' },
  { rule: 'balance.stability', kind: 'number' },
  { rule: 'movement.passage', kind: 'length' },
  { rule: 'routes.separation', kind: 'length' },
])('$rule takes a $kind', async ({ rule, kind }) => {
  expect(await trouble({ rule, kind })).toEqual([]);
});

const adjustable =
  'balance.sides, balance.stability, balance.wheel-load, fit.service, movement.bed-length, movement.headroom, movement.heights, movement.passage, movement.standing-height, movement.ways-out, routes.separation, water.heater-recovery, water.hot-wait';

describe('what cannot be taken', () => {
  test('a rule that does not exist, with the nearest that can be set', async () => {
    expect(await trouble({ rule: 'balance.side' })).toEqual([
      {
        path: ['rules', 'balance.sides'],
        onKey: true,
        message: '`balance.side` is not a check',
        expected: `one of ${adjustable}`,
        meant: 'balance.sides',
      },
    ]);
  });

  test.each(['mass.total', 'mass.licence', 'balance.rear-axle', 'balance.steered-share'])(
    'the limit of %s, which the plate or the law sets',
    async (rule) => {
      const [found, ...more] = await trouble({ rule });
      expect(found).toMatchObject({
        onKey: true,
        message: `the limit of ${rule} is not for the plan to set`,
      });
      expect(more).toEqual([]);
    },
  );

  test.each([
    { rule: 'balance.sides', kind: 'mass', expected: 'a share in per cent, such as `50 %`' },
    { rule: 'balance.sides', kind: 'length', expected: 'a share in per cent, such as `50 %`' },
    { rule: 'balance.stability', kind: 'share', expected: 'a number, such as `4`' },
  ])('another kind of quantity: a $kind for $rule', async ({ rule, kind, expected }) => {
    expect(await trouble({ rule, kind })).toEqual([
      {
        path: ['rules', 'balance.sides', 'limit'],
        onKey: false,
        message: `the limit of ${rule} is another kind of quantity`,
        expected,
      },
    ]);
  });

  test.each(['', '   ', 'ok', '  yes '])('a reason that says nothing: "%s"', async (reason) => {
    const [found] = await trouble({ reason });
    expect(found).toMatchObject({ path: ['rules', 'balance.sides', 'reason'], onKey: false });
  });
});
