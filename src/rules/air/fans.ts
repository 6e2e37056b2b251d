import type { Air } from '../../build/air.ts';
import { type Fanned, fanKeys, fanned, type KnownFan, knownFans } from '../../build/fanned.ts';
import { areaForDepressionM2 } from '../../calc/air/fans.ts';
import { dischargeRows, fanPairPractice } from '../../catalogue/air/flow.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { airFlow, freeArea, length, pressure } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { airLimit } from '../air-facts.ts';
import { airCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { balanceSteps, fanStep } from '../working/fans.ts';

const text: RuleText = {
  id: 'air.fans',
  topic: 'air',
  title: 'fans against what lets air in',
  why: 'A fan blows out only what comes in elsewhere: in a van that is shut it turns and moves next to nothing.',
  formula:
    'Σ Q_exhaust(d) = Σ Q_intake(−d) + C_d · A · √(2 · |d| / ρ); Q(d) a straight line from the flow in the open to the pressure at which it stalls; m³/s, Pa, A vents that no fan sits in, m²',
  sources: [
    ...dischargeRows['sharp-edge'].citations,
    { title: 'Fan curve as a straight line between its two figures', provenance: 'own choice' },
    fanPairPractice,
  ],
  cautions: [airCaution],
  fix: 'Open a way in for the air that a fan is to move, far from it.',
  limits: ['extract-kitchen'],
  place: ['air', 'fans'],
};

interface Fans {
  readonly air: Air;
  readonly known: readonly KnownFan[];
}

const fans: Need<Fans> = ({ air }) => {
  if (!air || air.fans.length === 0) return missing('air.fans');
  const keys = air.fans.flatMap(fanKeys);
  return keys.length > 0 ? missing(...keys) : given({ air, known: knownFans(air) });
};

export default defineRule({
  ...text,
  needs: { fans },
  check: ({ facts }) => {
    const { air, known } = facts.fans;
    const together = fanned(air, known);
    const pair = opposing(known);
    return {
      findings: foldPasses(
        known.map((fan, index) => findingFor(air, fan, together, together.flowsM3PerS[index] ?? 0, pair)),
        'fan',
      ),
    };
  },
  work: ({ facts }, { subject, limit }) => {
    const { air, known } = facts.fans;
    const together = fanned(air, known);
    const index = known.findIndex(({ fan }) => fan.name === subject);
    const found = known[index];
    if (!found) return undefined;
    return [
      ...balanceSteps(known, together),
      ...(limit ? [limitStep(found)] : []),
      fanStep(found, together.flowsM3PerS[index] ?? 0, together),
    ];
  },
});

/** A fan for a thing of its own, or one that blows in, needs no more than some air. */
const isForRoom = ({ fan, blows }: KnownFan): boolean => blows === 'exhaust' && fan.serves === undefined;

const leastFlowOf = (known: KnownFan): number =>
  isForRoom(known)
    ? Math.min(airLimit('extract-kitchen').value, known.openFlowM3PerS / 2)
    : known.openFlowM3PerS / 10;

function limitStep(known: KnownFan): Step {
  const { openFlowM3PerS, fan } = known;
  return {
    what: 'What it is held against',
    sum: isForRoom(known)
      ? say`the smaller of ${airFlow(airLimit('extract-kitchen').value)} for the steam of a kitchen and half of ${airFlow(openFlowM3PerS)}`
      : say`${airFlow(openFlowM3PerS)} / 10: for a thing of its own, or blowing in, some air is enough`,
    result: airFlow(leastFlowOf(known)),
    paths: [fan.path],
  };
}

/** Fans nearer to each other than this blow past the room between them: own choice. */
const pairApartM = 1;

/** An intake and an exhaust fan that sit so close that the air goes from one straight to the other. */
function opposing(known: readonly KnownFan[]): readonly string[] {
  const placed = known.flatMap(({ fan, blows }) =>
    fan.vent?.place ? [{ name: fan.name, blows, place: fan.vent.place }] : [],
  );
  return placed.flatMap((one) =>
    placed.some(
      (other) =>
        other.blows !== one.blows &&
        Math.hypot(other.place.xM - one.place.xM, other.place.yM - one.place.yM) < pairApartM,
    )
      ? [one.name]
      : [],
  );
}

/** It warns where a fan that blows out moves less than a kitchen's steam asks for, or where a pair sits together. */
function findingFor(
  air: Air,
  known: KnownFan,
  together: Fanned,
  flowM3PerS: number,
  close: readonly string[],
): Finding {
  const row = airLimit('extract-kitchen');
  const { fan, blows, openFlowM3PerS, curve } = known;
  const { path } = fan;
  const subject = fan.name;
  const others = air.fans.length > 1 ? 'with all fans running and ' : 'with ';
  const through: Phrase =
    together.openM2 === 0
      ? say`${others}no vent to let air ${blows === 'exhaust' ? 'in' : 'out'}`
      : say`${others}${freeArea(together.openM2)} of other vents open (${namesOf(together.openings.map(({ name }) => name))})`;
  const pressureWords: Phrase =
    Math.abs(together.depressionPa) < 0.05
      ? []
      : say` The room is then ${pressure(Math.abs(together.depressionPa))} ${together.depressionPa > 0 ? 'below' : 'above'} the outside.`;
  const reason = say`${fan.name} moves ${airFlow(flowM3PerS)} of its ${airFlow(openFlowM3PerS)}, ${through} and windows and doors shut.${pressureWords}`;
  if (close.includes(fan.name))
    return observed(text, {
      verdict: 'warn',
      subject,
      path,
      measured: airFlow(flowM3PerS),
      reason: say`${reason} The fans that blow in and out sit less than ${length(pairApartM)} apart, so the air goes from one to the other and not through the room.`,
      remedy: say`Put them ${length(pairApartM)} or more apart, best at opposite ends of the room.`,
    });
  const limit = leastFlowOf(known);
  return judge({
    rule: text,
    subject,
    path,
    kind: 'air flow',
    measured: { value: flowM3PerS, standard: 0 },
    limit,
    sense: 'at least',
    broken: 'warn',
    reason,
    remedy: () => {
      const depressionPa = pressureAt(curve, limit);
      return say`Open ${freeArea(Math.max(0, areaForDepressionM2(curve, depressionPa) - together.openM2))} more, such as a window, while it runs: then it moves ${airFlow(limit)}.`;
    },
    sources: isForRoom(known) ? row.citations : [],
    cautions: isForRoom(known) ? row.cautions : [],
  });
}

/** On a straight curve. */
function pressureAt([stall, open]: KnownFan['curve'], flowM3PerS: number): number {
  if (!stall || !open) return 0;
  return stall.pressurePa * (1 - flowM3PerS / open.flowM3S);
}
