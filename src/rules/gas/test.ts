import { tightnessTest } from '../../catalogue/gas/requirements.ts';
import { pressure, wait } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { gasCaution } from '../cautions.ts';
import { gas } from '../gas-facts.ts';
import { observed } from '../observed.ts';

const text: RuleText = {
  id: 'gas.test',
  topic: 'gas',
  title: 'tightness test',
  why: 'Nobody sees a leak of gas. Only a test with pressure, by someone qualified, finds it before a spark does.',
  formula: 'the plan can only say that the test is made, never what came of it',
  sources: tightnessTest.citations,
  cautions: [gasCaution],
  fix: 'Have a qualified gas engineer test the installation for leaks before it is used.',
  lifeSafety: true,
  place: ['gas', 'tightness_test'],
};

const test: Need<boolean> = (build) => {
  if (!build.gas) return missing('gas');
  const { tightnessTest: said } = build.gas;
  return said === undefined ? missing('gas.tightness_test') : given(said);
};

const { testPa, mostDropPa, settlesS, watchedS } = tightnessTest;

const howItIsMade = say`One summary of EN 1949 has ${pressure(testPa)} of air in the pipes, ${wait(settlesS)} to settle, and then no more than ${pressure(mostDropPa)} lost in ${wait(watchedS)}; a gas engineer knows what holds where the van is.`;

export default defineRule({
  ...text,
  needs: { gas, test },
  check: ({ facts: { test: isMade } }) => ({
    findings: [
      observed(text, {
        verdict: isMade ? 'pass' : 'warn',
        subject: 'tightness test',
        path: text.place,
        reason: isMade
          ? say`The plan has a tightness test; what came of it, it cannot show. ${howItIsMade}`
          : say`The plan has no tightness test.`,
        ...(!isMade && {
          remedy: say`Have a qualified gas engineer make one before the gas is used, and after every change. ${howItIsMade}`,
        }),
      }),
    ],
  }),
});
