import { describe, expect, test } from 'vitest';
import { escapeCaution, mainsCaution } from '../../src/rules/cautions.ts';
import { rules } from '../../src/rules/index.ts';

/** Cautions of what kills or maims; those of gas and combustion belong here as soon as there are rules with them. */
const cautionsOfLife: readonly string[] = [mainsCaution, escapeCaution];

/** What is about life and limb without one of these cautions. */
const others = [
  'balance.front-axle',
  'balance.load-states',
  'balance.rear-axle',
  'electrical.alarms',
  'fit.covered-opening',
  'fit.heat-clearance',
  'mass.total',
  'routes.separation',
];

describe.each(rules)('$id', ({ id, cautions, lifeSafety }) => {
  const isOfLife = cautions.some((caution) => cautionsOfLife.includes(caution));
  test('can be made to pass by a waiver only if it is not about life and limb', () => {
    expect(lifeSafety === true).toBe(isOfLife || others.includes(id));
  });
});

test('what is named here is a rule', () => {
  for (const id of others) expect(rules.map((rule) => rule.id)).toContain(id);
});
