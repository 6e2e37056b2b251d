import { fullRateOf, gasBurntIn } from '../../build/gas-use.ts';
import { gasProperties } from '../../catalogue/gas/properties.ts';
import { massFlow, power } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { combustionCaution, gasCaution } from '../cautions.ts';
import { appliances, keyOf } from '../gas-facts.ts';
import { observed } from '../observed.ts';
import { joined, namesOf } from '../routed.ts';

const text: RuleText = {
  id: 'gas.input',
  topic: 'gas',
  title: 'input of gas appliances',
  why: 'The same burner has a power that is 8 % greater when it is counted gross than net; taken for the other, its pipe and its cylinder are chosen 8 % too small.',
  formula: 'ṁ = P / h; P input, W, net or gross, h heating value of the same kind, J/kg; or ṁ as typed, g/h',
  sources: [],
  cautions: [gasCaution, combustionCaution],
  fix: 'Copy the input from the plate of the appliance, and whether it is net or gross.',
  lifeSafety: true,
  place: ['gas', 'appliances'],
};

export default defineRule({
  ...text,
  needs: { appliances },
  check: ({ build, facts: { appliances: all } }) => {
    const burns = gasBurntIn(build);
    const sources = gasProperties[burns].citations;
    const lacking = all.flatMap(({ path, input }) =>
      input === undefined
        ? [keyOf(path, 'input')]
        : 'powerW' in input && input.heatingValue === undefined
          ? [keyOf(path, 'heating_value')]
          : [],
    );
    const isKnown = ({ path }: (typeof all)[number]): boolean =>
      !lacking.some((key) => key === keyOf(path, 'input') || key === keyOf(path, 'heating_value'));
    const unknown = all.filter((each) => !isKnown(each));
    const known = all.filter(isKnown);
    const [firstUnknown] = unknown;
    const [firstKnown] = known;
    return {
      findings: [
        ...(firstUnknown
          ? [
              observed(text, {
                verdict: 'not checked',
                subject: namesOf(unknown.map(({ name }) => name)),
                path: firstUnknown.path,
                reason: say`Of ${namesOf(unknown.map(({ name }) => name))}, the plan does not say the input, or not whether it is net or gross. Until then a power counts as net here, which needs more gas.`,
                remedy: say`Add ${namesOf(
                  lacking.map((key) => `\`${key}\``),
                  8,
                )}: on the plate, Hi or Hinf is net, Hs is gross.`,
                missing: lacking,
                sources,
              }),
            ]
          : []),
        ...(firstKnown
          ? [
              observed(text, {
                verdict: 'pass',
                subject: namesOf(known.map(({ name }) => name)),
                path: firstKnown.path,
                reason: say`With everything lit, ${joined(
                  known.map(({ name, input }): Phrase => {
                    const rate = input && fullRateOf({ name, path: [], hosts: [], input }, burns);
                    const taken = say`${name} takes ${massFlow(rate ?? 0)} of ${burns}`;
                    return input && 'powerW' in input
                      ? say`${taken} (${power(input.powerW)} ${input.heatingValue ?? 'net'})`
                      : taken;
                  }),
                )}.`,
                sources,
              }),
            ]
          : []),
      ],
    };
  },
});
