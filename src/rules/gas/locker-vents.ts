import type { Locker } from '../../build/gas.ts';
import { type LockerVents, lockerVents } from '../../catalogue/gas/locker-vents.ts';
import type { Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { freeArea, length, share } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { gasCaution } from '../cautions.ts';
import { brokenBy, keyOf } from '../gas-facts.ts';
import { joined } from '../routed.ts';

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
  limits: [
    'locker-low-vent-share',
    'locker-low-vent-least',
    'locker-split-vent-share',
    'locker-split-vent-least',
  ],
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
    const wants = lockerVents(floorM2, build.codes);
    const { lowAloneM2, eachOfTwoM2, force, citations, cautions } = wants;
    const { highM2, limitM2, measuredM2 } = comparedOf(facts.vented, wants);
    const has =
      highM2 > 0
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
          remedy: () => leastMore(lowM2, highM2, wants),
          sources: citations,
          cautions,
        }),
      ],
    };
  },
  work: ({ build, facts: { vented: found } }) =>
    lockerVentSteps(found, lockerVents(found.floorM2, build.codes)),
});

/** What is held against what: half of it high will do with half of it low; without high ones the low ones bear all. */
function comparedOf({ locker, lowM2 }: Vented, { lowAloneM2, eachOfTwoM2 }: LockerVents) {
  const { highVentM2: highM2 = 0 } = locker;
  const isSplit = highM2 > 0 && Math.min(lowM2, highM2) >= eachOfTwoM2 - 1e-12;
  const countsBoth = isSplit || lowAloneM2 === undefined;
  return {
    highM2,
    countsBoth,
    limitM2: countsBoth ? eachOfTwoM2 : lowAloneM2,
    measuredM2: countsBoth ? Math.min(lowM2, highM2) : lowM2,
  };
}

/** What must at least be opened more: low alone, or low and high together, whichever is less. */
function leastMore(lowM2: number, highM2: number, { lowAloneM2, eachOfTwoM2 }: LockerVents): Phrase {
  const alone = lowAloneM2 === undefined ? Number.POSITIVE_INFINITY : lowAloneM2 - lowM2;
  const low = Math.max(0, eachOfTwoM2 - lowM2);
  const high = Math.max(0, eachOfTwoM2 - highM2);
  const whole = (areaM2: number) => freeArea(Math.ceil(areaM2 * 1e4 - 1e-9) / 1e4);
  const outside = 'straight to the outside, with nothing standing on it';
  if (alone <= low + high) return say`Open ${whole(alone)} more in its floor, ${outside}.`;
  const more = [
    ...(low > 0 ? [say`${whole(low)} more low down`] : []),
    ...(high > 0 ? [say`${whole(high)} more high up`] : []),
  ];
  return say`Open ${joined(more, ' and ')}, ${outside}.`;
}

/** The larger of a share of the floor and a least area, then what there is. */
function lockerVentSteps(found: Vented, wants: LockerVents): readonly Step[] {
  const { locker, floorM2, lowM2 } = found;
  const { box } = locker;
  const { highM2, countsBoth, limitM2, measuredM2 } = comparedOf(found, wants);
  const { ofFloor, leastM2 } = countsBoth ? wants.eachOfTwo : wants.lowAlone;
  const has: Step = countsBoth
    ? {
        what: 'What there is: the smaller of both counts',
        sum: say`${freeArea(lowM2)} low, ${freeArea(highM2)} high`,
        result: freeArea(measuredM2),
        paths: [
          [...locker.path, 'low_vent'],
          [...locker.path, 'high_vent'],
        ],
      }
    : {
        what: 'What there is low down',
        ...(highM2 > 0 && {
          sum: say`${freeArea(lowM2)}; the ${freeArea(highM2)} high up do not help, since ${freeArea(wants.eachOfTwoM2)} low and as much high would be needed for that`,
        }),
        result: freeArea(lowM2),
        paths: [[...locker.path, 'low_vent']],
      };
  return [
    {
      what: 'The floor of the locker',
      ...(box && {
        sum: say`${length(box.mostXM - box.leastXM)} · ${length(box.mostYM - box.leastYM)}`,
      }),
      result: freeArea(floorM2),
      ...(locker.thing !== undefined && { paths: [['fixtures', locker.thing, 'size']] }),
    },
    {
      what: countsBoth
        ? 'Wanted low, and again high: the larger of a share of the floor and a least area'
        : 'Wanted low: the larger of a share of the floor and a least area',
      sum: say`${share(ofFloor)} · ${freeArea(floorM2)} = ${freeArea(ofFloor * floorM2)}, or ${freeArea(leastM2)}`,
      result: freeArea(limitM2),
    },
    has,
  ];
}
