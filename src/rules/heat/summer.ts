import type { Build } from '../../build/build.ts';
import { fanKeys } from '../../build/fanned.ts';
import { summerAirOf } from '../../build/summer-air.ts';
import { summerHeatOf, unfannedAirOf } from '../../build/summer-heat.ts';
import { coolingAirM3PerS, overheatedC } from '../../calc/heat/summer.ts';
import { dischargeRows } from '../../catalogue/air/flow.ts';
import {
  absorptanceCitations,
  paneSolarCitations,
  skyLossCitation,
  summerRiseCitation,
  summerRiseK,
  summerSunCitation,
  usualColour,
  usualFanCitation,
  usualFanShare,
} from '../../catalogue/heat/sun.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { airFlow, kelvins, power, temperatureC } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type Need, type RuleText } from '../../engine/rule.ts';
import { warmthCaution } from '../cautions.ts';
import { optional } from '../needs.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { upToShown } from '../shown-digits.ts';
import { demand, heat } from '../warmth.ts';
import { summerSteps } from '../working/summer.ts';

const text: RuleText = {
  id: 'heat.summer',
  topic: 'heat',
  title: 'hot afternoons',
  why: 'A van in the sun gets far hotter than the air about it; nights in it are bad, and children, the old and animals are in danger.',
  formula:
    'V = (G / ΔT − H) / 1200 ≤ the larger of what the fans move through all that can be opened and what comes in without them; G = Σ g·A·I + Σ U·A·(α·I·R_se − ΔT_sky) + people in W, H Σ U·A in W/K, ΔT allowed rise over the air outside in K, V m³/s of air',
  sources: [
    summerSunCitation,
    ...absorptanceCitations,
    skyLossCitation,
    ...paneSolarCitations,
    summerRiseCitation,
    ...dischargeRows['sharp-edge'].citations,
    { title: 'Fan curve as a straight line between its two figures', provenance: 'own choice' },
    usualFanCitation,
  ],
  cautions: [
    warmthCaution,
    'Never leave children, animals or people who cannot help themselves in a van in the sun, whatever ventilation it has.',
  ],
  fix: 'Move more air through on hot days, shade the panes, or park in the shade.',
  place: ['living', 'summer_high'],
};

const secondsAnHour = 3600;

const summerHigh: Need<number> = optional('living.summer_high', ({ habits }) => habits.summerHighC);

export default defineRule({
  ...text,
  needs: { heat, demand, outsideC: summerHigh },
  check: ({ build, facts: { heat, demand, outsideC } }) => {
    const { sunW, peopleW } = summerHeatOf(build, heat, demand, outsideC);
    const gainsW = sunW + peopleW;
    const { transmissionWPerK } = demand.awake;
    const unfanned = unfannedAirOf(build, heat, demand.volumeM3, outsideC);
    const stillC = overheatedC({ outsideC, gainsW, transmissionWPerK, airM3PerS: unfanned.airM3PerS });
    const neededM3PerS = coolingAirM3PerS({ gainsW, transmissionWPerK, riseK: summerRiseK });
    const fannedM3PerS = summerAirOf(build)?.freshM3S ?? 0;
    const judged = judge({
      rule: text,
      subject: 'living space',
      path: text.place,
      kind: 'air flow',
      measured: { value: Math.max(unfanned.airM3PerS, fannedM3PerS), standard: 0 },
      limit: neededM3PerS,
      sense: 'at least',
      broken: 'warn',
      reason: say`At ${temperatureC(outsideC)} in the sun ${power(sunW)} come in through roof, side and panes, and people add ${power(peopleW)}. Without a fan the van gets to ${temperatureC(stillC)} in the end. It takes ${airFlow(neededM3PerS)} of air from outside to stay within ${kelvins(summerRiseK)} of it.${fansText(build, fannedM3PerS)}`,
      remedy: (shortfall) => remedy(build, neededM3PerS, shortfall),
    });
    const assumptions = [
      ...demand.assumptions.filter((each) => !each.includes('fixed vents')),
      `the paint is ${usualColour}, and the sun stands on the side with the most glass`,
      ...openAssumptions(build),
    ];
    const unknownKeys = (summerAirOf(build)?.unknownFans ?? []).flatMap(fanKeys);
    return {
      findings: [
        {
          ...(judged.verdict === 'pass' || unknownKeys.length === 0 ? judged : notKnown(judged, unknownKeys)),
          assumptions,
        },
      ],
    };
  },
  work: ({ build, facts: { heat, demand, outsideC } }) => summerSteps(build, heat, demand, outsideC),
});

/** What the known fans move is not enough, and nobody can tell what the others do. */
const notKnown = ({ reason, measured, subject }: Finding, keys: readonly string[]): Finding =>
  observed(text, {
    verdict: 'not checked',
    subject,
    path: ['air', 'fans'],
    measured,
    reason: say`${reason} Of other fans the plan does not say enough.`,
    remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
    missing: keys,
  });

function fansText(build: Build, fannedM3PerS: number): Phrase {
  const { fans = [], openings = [] } = summerAirOf(build) ?? {};
  if (fans.length === 0) return say` The plan has no fan whose flow and pressure are known.`;
  const names = fans.map(({ fan }) => fan.name);
  const open = openings.length === 0 ? 'nothing open' : `${namesOf(openings.map(({ name }) => name))} open`;
  return say` With ${open} ${namesOf(names)} ${names.length === 1 ? 'moves' : 'move'} ${airFlow(fannedM3PerS)}.`;
}

/** What counts as open, where there are fans. */
function openAssumptions(build: Build): readonly string[] {
  const { fans = [], shutWindows = [] } = summerAirOf(build) ?? {};
  if (fans.length === 0) return [];
  return [
    'windows and hatches to get out through stand wide open, doors are shut, and wind and insect screens are not counted',
    ...(shutWindows.length === 0
      ? []
      : [
          `${namesOf(shutWindows)} ${shutWindows.length === 1 ? 'counts' : 'count'} as shut, since the plan does not say how far (\`air.vents\` with \`opening\` and \`free_area\` does)`,
        ]),
  ];
}

/** Fans that would do in the open lack a way in; else more of them are needed. */
function remedy(build: Build, neededM3PerS: number, shortfallM3PerS: number): Phrase {
  const { fans = [] } = summerAirOf(build) ?? {};
  const most = (blows: 'exhaust' | 'intake'): number =>
    fans.filter((each) => each.blows === blows).reduce((sum, { openFlowM3PerS }) => sum + openFlowM3PerS, 0);
  const freeM3PerS = Math.max(most('exhaust'), most('intake'));
  const shade = 'or shade the van and cover its panes on the outside';
  return freeM3PerS > neededM3PerS
    ? say`Open more for the air to come in: in the open the fans move ${airFlow(freeM3PerS)}, of which ${airFlow(neededM3PerS)} are enough; ${shade}.`
    : say`Plan a fan and openings that really move ${airFlow(upToShown(shortfallM3PerS, secondsAnHour))} more (printed for about ${airFlow(shortfallM3PerS / usualFanShare)}), ${shade}.`;
}
