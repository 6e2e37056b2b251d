import type { GasStore } from '../../build/gas.ts';
import { mass, share } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { gasCaution } from '../cautions.ts';
import { answered } from '../gas-answers.ts';
import { gasLimit, isInCylinders, stores } from '../gas-facts.ts';
import { observed } from '../observed.ts';
import { joined } from '../routed.ts';

const text: RuleText = {
  id: 'gas.filling',
  topic: 'gas',
  title: 'filling a fixed gas tank',
  why: 'Some gas escapes at every filling, and liquid gas grows as it warms: a tank that is filled to the brim bursts or blows off.',
  formula: 'filled from outside; m = 0.8 · V · ρ, kg; V the whole inside, m³; ρ liquid, kg/m³',
  sources: [],
  cautions: [gasCaution],
  fix: 'Lead the filling point outside, with a valve in the tank that stops the filling.',
  lifeSafety: true,
  limits: ['fill-share'],
  place: ['tanks'],
};

const isFixedTank: Need<boolean> = ({ gas }) => (gas ? given(!isInCylinders(gas)) : missing('gas'));

export default defineRule({
  ...text,
  needs: { stores, isFixedTank },
  check: ({ build, facts }) => {
    const fill = gasLimit('fill-share', build);
    if (!facts.isFixedTank)
      return {
        findings: [
          observed(text, {
            verdict: 'pass',
            subject: 'cylinders',
            path: facts.stores[0]?.path ?? text.place,
            reason: say`By the plan the gas is in cylinders, which are filled away from the van. Refillable ones need a valve that stops the filling at ${share(fill.value)}, and a filling point outside.`,
            sources: fill.sources,
            cautions: fill.cautions,
          }),
        ],
      };
    return {
      findings: answered(text, facts.stores.map(answerOf(fill.value)), build).map(
        withFill(facts.stores, fill),
      ),
    };
  },
});

const answerOf =
  (fillShare: number) =>
  ({ name, path, filledFrom }: GasStore) => ({
    subject: name,
    path,
    key: 'filled_from',
    isKept: filledFrom === undefined ? undefined : filledFrom === 'outside',
    requirement: 'filled-from-outside' as const,
    kept: say`${name} is filled from outside`,
    broken: say`${name} is filled from inside the van.`,
    remedy: say`Lead the filling point through the outer wall or below the floor, with a valve in the tank that stops at ${share(fillShare)}.`,
  });

/** What the tank may hold, with all that is said of it. */
const withFill =
  (all: readonly GasStore[], fill: ReturnType<typeof gasLimit>) =>
  <T extends { readonly reason: ReturnType<typeof say>; readonly cautions: readonly string[] }>(
    finding: T,
  ): T => {
    const counted = all.map(({ name, holdsKg, gas, heldAs }) =>
      heldAs === 'volume'
        ? say`${name} counts with ${mass(holdsKg)} of ${gas}, ${share(fill.value)} of its inside`
        : say`${name} counts with ${mass(holdsKg)} of ${gas} as typed, which may be no more than ${share(fill.value)} of its inside`,
    );
    return {
      ...finding,
      reason: say`${finding.reason} ${joined(counted, '; ')}.`,
      cautions: [...finding.cautions, ...fill.cautions],
    };
  };
