import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { gasCaution } from '../cautions.ts';
import { answered } from '../gas-answers.ts';
import { appliances } from '../gas-facts.ts';

const text: RuleText = {
  id: 'gas.isolating-valves',
  topic: 'gas',
  title: 'a valve for each gas appliance',
  why: 'With a valve of its own, one appliance that leaks or breaks is shut off and the others go on; without one all gas is off, or the leak goes on.',
  formula: 'each appliance has an isolating valve of its own',
  sources: [],
  cautions: [gasCaution],
  fix: 'Fit a valve of its own in the pipe to each appliance, where a hand reaches it.',
  lifeSafety: true,
  place: ['gas', 'appliances'],
};

export default defineRule({
  ...text,
  needs: { appliances },
  check: ({ build, facts: { appliances: all } }) => ({
    findings: answered(
      text,
      all.map(({ name, path, isolatingValve }) => ({
        subject: name,
        path,
        key: 'isolating_valve',
        isKept: isolatingValve,
        requirement: 'appliance-valve',
        kept: say`${name} has a valve of its own`,
        broken: say`By the plan ${name} has no valve of its own.`,
        remedy: say`Fit 1 isolating valve in the pipe to ${name}, where a hand reaches it at once.`,
      })),
      build,
    ),
  }),
});
