import type { Locker } from '../../build/gas.ts';
import { lockerVents } from '../../catalogue/gas/locker-vents.ts';
import { judge } from '../../engine/judge.ts';
import { freeArea } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { gasCaution } from '../cautions.ts';
import { brokenBy, keyOf } from '../gas-facts.ts';

const text: RuleText = {
  id: 'gas.locker-vents',
  topic: 'gas',
  title: 'vents of the gas locker',
  why: 'Gas is heavier than air: what leaks in the locker must fall out of it under the van, faster than it gathers.',
  formula:
    'A_low ≥ max(2 % of the locker’s floor; 100 cm²), or low and high each ≥ max(1 %; 50 cm²); free areas in m²',
  sources: [],
  cautions: [gasCaution],
  fix: 'Open more free area low in the locker, straight to the outside.',
  lifeSafety: true,
  place: ['gas', 'locker'],
};

interface Vented {
  readonly locker: Locker;
  readonly floorM2: number;
  readonly lowM2: number;
}

const vented: Need<Vented> = ({ gas }) => {
  if (!gas) return missing('gas');
  const { locker } = gas;
  if (!locker) return missing('gas.locker');
  const { floorM2, lowVentM2 } = locker;
  if (floorM2 !== undefined && lowVentM2 !== undefined) return given({ locker, floorM2, lowM2: lowVentM2 });
  return missing(
    ...(floorM2 === undefined
      ? [locker.thing === undefined ? keyOf(locker.path, 'thing') : `fixtures.${locker.thing}.size`]
      : []),
    ...(lowVentM2 === undefined ? [keyOf(locker.path, 'low_vent')] : []),
  );
};

export default defineRule({
  ...text,
  needs: { vented },
  check: ({ build, facts }) => {
    const { locker, floorM2, lowM2 } = facts.vented;
    const { highVentM2: highM2 = 0 } = locker;
    const { lowAloneM2, eachOfTwoM2, force, citations, cautions } = lockerVents(floorM2, build.codes);
    const bothOpen = highM2 > 0;
    // Half of it high will do with half of it low; without the high one the low one bears all.
    const split = bothOpen && Math.min(lowM2, highM2) >= eachOfTwoM2 - 1e-12;
    const limitM2 = split || lowAloneM2 === undefined ? eachOfTwoM2 : lowAloneM2;
    const measuredM2 = split || lowAloneM2 === undefined ? Math.min(lowM2, highM2) : lowM2;
    const has = bothOpen
      ? say`${freeArea(lowM2)} low and ${freeArea(highM2)} high`
      : say`${freeArea(lowM2)} low and none high`;
    const wanted =
      lowAloneM2 === undefined
        ? say`${freeArea(eachOfTwoM2)} low and as much high`
        : say`${freeArea(lowAloneM2)} low, or ${freeArea(eachOfTwoM2)} low and as much high`;
    return {
      findings: [
        judge({
          rule: text,
          subject: locker.thing ?? 'the locker',
          path: [...locker.path, 'low_vent'],
          kind: 'free area',
          measured: { value: measuredM2, standard: 0 },
          limit: limitM2,
          sense: 'at least',
          broken: brokenBy(force),
          reason: say`The locker has vents of ${has} for its floor of ${freeArea(floorM2)}. Wanted are ${wanted}.`,
          remedy: (shortM2) =>
            say`Open ${freeArea(Math.ceil(shortM2 * 1e4 - 1e-9) / 1e4)} more ${lowAloneM2 === undefined ? 'low and high' : 'in its floor'}, straight to the outside, with nothing standing on it.`,
          sources: citations,
          cautions,
        }),
      ],
    };
  },
});
