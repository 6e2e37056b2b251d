import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { combustionCaution, gasCaution } from '../cautions.ts';
import { answered } from '../gas-answers.ts';
import { appliances } from '../gas-facts.ts';

const text: RuleText = {
  id: 'gas.flame-failure',
  topic: 'gas',
  title: 'flame failure devices',
  why: 'When wind or boiling water puts a flame out, gas flows on into the van unless a device closes it.',
  formula: 'each burner of each appliance has a flame failure device',
  sources: [],
  cautions: [gasCaution, combustionCaution],
  fix: 'Take appliances with a flame failure device on every burner.',
  lifeSafety: true,
  place: ['gas', 'appliances'],
};

export default defineRule({
  ...text,
  needs: { appliances },
  check: ({ build, facts: { appliances: all } }) => ({
    findings: answered(
      text,
      all.map(({ name, path, flameFailure }) => ({
        subject: name,
        path,
        key: 'flame_failure',
        isKept: flameFailure,
        requirement: 'flame-failure',
        kept: say`${name} has a flame failure device`,
        broken: say`By the plan ${name} has burners without a flame failure device.`,
        remedy: say`Take an appliance with a flame failure device on every burner instead of ${name}.`,
      })),
      build,
    ),
  }),
});
