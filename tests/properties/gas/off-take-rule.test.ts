import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Finding, Verdict } from '../../../src/engine/finding.ts';
import { effectiveLimit } from '../../../src/engine/run.ts';
import { rules } from '../../../src/rules/index.ts';
import { buildOf } from '../../support/check.ts';
import { gasPlan } from '../../support/gas-plan.ts';

/** The worse, the greater. */
const badness: Readonly<Record<Verdict, number>> = { pass: 0, 'not checked': 0, warn: 1, fail: 2 };

const contents = ['propane', 'butane'] as const;
const hobs = [1, 20, 100, 280, 500, 1100];
const heaters = [0, 20, 100, 300];
const sizes = [2, 6, 11];

const planOf = (gas: string, hob: number, heater: number, kg: number, inUse: number): string =>
  gasPlan({
    cylinder: `contents: ${gas}, holds: ${kg} kg`,
    tanks: `  second: {contents: propane, holds: 6 kg, in: locker}\n  third: {contents: butane, holds: 5 kg, in: locker}`,
    hob: `use: cooking, input: ${hob} g/h`,
    appliances: heater === 0 ? '' : `    heater: {use: room heating, input: ${heater} g/h}`,
    gas: `  in_use: ${inUse}`,
    living: 'winter_low: 0 degC',
  });

/** Around the boiling points and where the regulator starves there are more of them. */
const celsius = fc.oneof(
  fc.double({ min: -50, max: 40, noNaN: true }),
  fc.double({ min: -1, max: 8, noNaN: true }),
  fc.double({ min: -43, max: -35, noNaN: true }),
);

test('what is colder never comes out better, and never gives more', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...contents),
      fc.constantFrom(...hobs),
      fc.constantFrom(...heaters),
      fc.constantFrom(...sizes),
      fc.constantFrom(1, 2, 3),
      fc.array(celsius, { minLength: 8, maxLength: 8 }),
      async (gas, hob, heater, kg, inUse, temperatures) => {
        const build = await buildOf(planOf(gas, hob, heater, kg, inUse));
        const rule = rules.find(({ id }) => id === 'gas.off-take');
        if (!rule) throw new Error('no rule');
        const at = (winterLowC: number): readonly Finding[] => {
          const cold = { ...build, habits: { ...build.habits, winterLowC } };
          const output = rule.run(cold, (id) => effectiveLimit(rule, id, cold));
          return 'findings' in output ? output.findings : [];
        };
        const rising = temperatures.toSorted((a, b) => a - b).map(at);
        for (const [index, warmer] of rising.entries()) {
          const colder = rising[index - 1];
          if (!colder) continue;
          const [now, before] = [warmer[0], colder[0]];
          if (!now || !before) throw new Error('no finding');
          expect(badness[before.verdict]).toBeGreaterThanOrEqual(badness[now.verdict]);
          expect(colder.length).toBeGreaterThanOrEqual(warmer.length);
          // Of one duration; what burns for hours is held against less than what burns for minutes.
          if (before.limit && now.limit && before.measured?.value === now.measured?.value)
            expect(before.limit.measure.value).toBeLessThanOrEqual(now.limit.measure.value + 1e-15);
        }
      },
    ),
    { numRuns: 60 },
  );
});
