import type { Gas } from '../../build/gas.ts';
import { length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { gasCaution } from '../cautions.ts';
import { answered } from '../gas-answers.ts';
import { gasLimit, isInCylinders, stores } from '../gas-facts.ts';
import { observed } from '../observed.ts';

const text: RuleText = {
  id: 'gas.locker',
  topic: 'gas',
  title: 'the cylinder locker',
  why: 'Regulators, hoses and valves leak in the end. In a locker that is tight towards the room, the gas falls out under the van instead of under the bed.',
  formula: 'sealed from the living space; opens to the outside; nothing in it that sparks',
  sources: [],
  cautions: [gasCaution],
  fix: 'Make the locker tight towards the room, let it open to the outside, and keep everything that sparks out of it.',
  lifeSafety: true,
  limits: ['locker-sill'],
  place: ['gas', 'locker'],
};

const stored: Need<Gas> = (build) => {
  if (!build.gas) return missing('gas');
  if (build.gas.locker || build.gas.storedIn) return given(build.gas);
  const found = stores(build);
  return found.ok ? given(build.gas) : found;
};

export default defineRule({
  ...text,
  needs: {
    gas: stored,
    locker: ({ gas }) => (gas?.locker || (gas && !isInCylinders(gas)) ? given(true) : missing('gas.locker')),
  },
  check: ({ build, facts: { gas } }) => {
    const { locker } = gas;
    if (!locker)
      return {
        findings: [
          observed(text, {
            verdict: 'pass',
            subject: 'fixed tank',
            path: gas.path,
            reason: say`By the plan the gas is in a fixed tank, and no cylinders need a locker.`,
          }),
        ],
      };
    const name = locker.thing ?? 'the locker';
    const { path } = locker;
    const sill = gasLimit('locker-sill', build);
    return {
      findings: answered(
        text,
        [
          {
            subject: name,
            path,
            key: 'sealed',
            isKept: locker.sealed,
            requirement: 'locker-sealed',
            kept: say`${name} is sealed from the living space`,
            broken: say`By the plan ${name} is not sealed from the living space.`,
            remedy: say`Make it gastight towards the room: every joint, the pipe where it passes, and any door.`,
          },
          {
            subject: name,
            path,
            key: 'opens',
            isKept: locker.opens === undefined ? undefined : locker.opens === 'outside',
            requirement: 'locker-opens-outside',
            kept: say`${name} opens to the outside`,
            broken: say`${name} opens to the inside.`,
            remedy: say`Let its door open to the outside. Where the body of the van must not be cut for it: a door with a seal, its sill ${length(sill.value)} or more above the floor of the locker.`,
          },
          {
            subject: name,
            path,
            key: 'source_of_ignition',
            isKept: locker.sourceOfIgnition === undefined ? undefined : !locker.sourceOfIgnition,
            requirement: 'locker-no-ignition',
            kept: say`nothing in ${name} can light gas`,
            broken: say`Something in ${name} can light gas, by the plan.`,
            remedy: say`Move every lamp, socket, switch, pump, battery and joint of a cable out of the locker.`,
          },
        ],
        build,
      ),
    };
  },
});
