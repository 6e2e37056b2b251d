import type { Build } from '../../build/build.ts';
import type { NightAir } from '../../build/night-air.ts';
import { flowOfAirChangesM3S } from '../../calc/air/rates.ts';
import { stackAnswer } from '../../catalogue/air/sources.ts';
import { stillNight } from '../../catalogue/air/still-night.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { airFlow, airVolume, factor, freeArea, temperatureC } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { airLimit, night } from '../air-facts.ts';
import { airCaution } from '../cautions.ts';
import { namesOf } from '../routed.ts';
import { areaForFlow } from '../vent-area.ts';
import { stillestSteps } from '../working/night.ts';
import { roomStep } from '../working/still-air.ts';

const text: RuleText = {
  id: 'air.still-night',
  topic: 'air',
  title: 'air changes on a still night',
  why: 'Without wind and fans only warm air rising out of the high vents draws fresh air in at the low ones.',
  formula:
    'Q = C_d · A_low · √(2 · g · h · ΔT / T_i), h = H / (1 + (A_low / A_high)² · T_i / T_e); 1 / A² = 1 / A_low² + 1 / A_high²; Q ≥ n · V; m³/s, m², K, n per hour',
  sources: [stackAnswer, ...stillNight.citations],
  cautions: [airCaution],
  fix: 'Open more free area low and high, as far apart in height as can be.',
  limits: ['air-changes-asleep'],
  place: ['air', 'vents'],
};

export default defineRule({
  ...text,
  needs: { night },
  check: ({ facts }) => ({ findings: [findingFor(facts.night)] }),
  work: ({ build, facts }) => steps(facts.night, build),
});

const neededFor = ({ airM3 }: NightAir): number =>
  flowOfAirChangesM3S(airLimit('air-changes-asleep').value, airM3);

function steps(still: NightAir, build: Build): readonly Step[] {
  const { worst, airM3, leaksM3PerS } = still;
  const changes = airLimit('air-changes-asleep').value;
  const larger: Phrase =
    leaksM3PerS === undefined
      ? say`what warmth draws through the vents`
      : say`the larger of ${airFlow(worst.stackM3PerS)} through the vents and ${airFlow(leaksM3PerS)} of leaks`;
  return [
    ...stillestSteps(still),
    ...roomStep(build),
    {
      what: 'What it is held against: n·V',
      sum: say`${factor(changes)} times an hour · ${airVolume(airM3)}`,
      result: airFlow(neededFor(still)),
    },
    { what: 'Fresh air on a still night: Q', sum: larger, result: airFlow(worst.flowM3PerS) },
  ];
}

function findingFor(still: NightAir): Finding {
  const { worst, airM3, leaksM3PerS, vents } = still;
  const row = airLimit('air-changes-asleep');
  const neededM3PerS = neededFor(still);
  const changes = (worst.flowM3PerS / airM3) * 3600;
  const by: Phrase =
    leaksM3PerS !== undefined && leaksM3PerS > worst.stackM3PerS
      ? say`, the leaks that \`heat.air_changes_per_hour\` stands for; the vents alone give ${airFlow(worst.stackM3PerS)}`
      : [];
  return judge({
    rule: text,
    subject: 'still night',
    path: text.place,
    kind: 'air flow',
    measured: { value: worst.flowM3PerS, standard: 0 },
    limit: neededM3PerS,
    sense: 'at least',
    broken: 'warn',
    reason: say`On a still night, ${temperatureC(worst.insideC)} inside and ${temperatureC(worst.outsideC)} outside, ${airFlow(worst.flowM3PerS)} of fresh air come in${by}: ${changes.toFixed(1)} changes an hour. ${ventsInWords(vents)}`,
    remedy: () => remedyFor(vents, worst, neededM3PerS),
    sources: row.citations,
    cautions: row.cautions,
  });
}

function ventsInWords({ lowM2, highM2, seriesM2, heightM, unsaid }: NightAir['vents']): Phrase {
  const doubt = unsaid.length > 0 ? ' Vents that do not say `closes: false` are taken as shut.' : '';
  if (lowM2 === 0 && highM2 === 0) return say`No fixed vent is in the plan.${doubt}`;
  if (lowM2 === 0 || highM2 === 0)
    return say`There is no fixed ${lowM2 === 0 ? 'low' : 'high'} vent, so warmth draws nothing through.${doubt}`;
  if (heightM === 0)
    return say`The high vents are no higher than the low ones, so warmth draws nothing through.${doubt}`;
  const [small, large] = lowM2 < highM2 ? ['low', 'high'] : ['high', 'low'];
  const starved =
    Math.max(lowM2, highM2) > 2 * Math.min(lowM2, highM2)
      ? say` The small ${small} one starves the ${large} one.`
      : '';
  return say`${freeArea(lowM2)} low and ${freeArea(highM2)} high are worth ${freeArea(seriesM2)} one behind the other.${starved}${doubt}`;
}

function remedyFor(vents: NightAir['vents'], worst: NightAir['worst'], neededM3PerS: number): Phrase {
  const { unsaid } = vents;
  const or =
    unsaid.length > 0
      ? ` Or say \`closes: false\` of ${namesOf(unsaid.map(({ name }) => name))} if nobody can shut ${unsaid.length === 1 ? 'it' : 'them'}.`
      : '';
  return say`For ${airFlow(neededM3PerS)} ${areaForFlow(vents, worst, neededM3PerS)}.${or}`;
}
