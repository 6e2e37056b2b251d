import { describe, expect, test } from 'vitest';
import { combustionCaution, escapeCaution, gasCaution, mainsCaution } from '../../src/rules/cautions.ts';
import { rules } from '../../src/rules/index.ts';

/** Cautions of what kills or maims. */
const cautionsOfLife: readonly string[] = [mainsCaution, escapeCaution, gasCaution, combustionCaution];

/** What bears such a caution without being about life and limb itself: comfort, fuel and stale air. */
const byTheWay = ['air.night', 'heat.ducts', 'heat.fuel'];

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
  'water.heater-fittings',
];

describe.each(rules)('$id', ({ id, cautions, lifeSafety }) => {
  const isOfLife = cautions.some((caution) => cautionsOfLife.includes(caution));
  test('can be made to pass by a waiver only if it is not about life and limb', () => {
    expect(lifeSafety === true).toBe((isOfLife && !byTheWay.includes(id)) || others.includes(id));
  });
});

test('what is named here is a rule', () => {
  for (const id of [...others, ...byTheWay]) expect(rules.map((rule) => rule.id)).toContain(id);
});
