import type { NightAir } from '../../build/night-air.ts';
import { flowForPpmAfterM3S } from '../../calc/air/carbon-dioxide.ts';
import { breathingCitations } from '../../catalogue/air/carbon-dioxide.ts';
import { stillNight } from '../../catalogue/air/still-night.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { airFlow, concentration, count, duration, temperatureC } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { airLimit, night } from '../air-facts.ts';
import { airCaution, combustionCaution } from '../cautions.ts';
import { namesOf } from '../routed.ts';
import { areaForFlow } from '../vent-area.ts';
import { nightSteps } from '../working/night.ts';

const text: RuleText = {
  id: 'air.night',
  topic: 'air',
  title: 'carbon dioxide through the night',
  why: 'People asleep in a small room breathe its air stale within hours; headaches come first, and nobody wakes to open a window.',
  formula:
    'C(t) = C_e + (C_0 − C_e) · e^(−Q·t/V) + 10⁶ · G / Q · (1 − e^(−Q·t/V)) ≤ C_limit; ppm, G breathed out and Q fresh air, m³/s, V air in the room, m³',
  sources: [...breathingCitations, ...stillNight.citations],
  cautions: [
    combustionCaution,
    airCaution,
    'Carbon dioxide tells how stale the air is. It is not carbon monoxide, which no figure here knows of.',
  ],
  fix: 'Open more fixed vents, the lower of them above all, or let a fan run at night.',
  limits: ['carbon-dioxide-unacceptable', 'carbon-dioxide-workplace'],
  place: ['air', 'vents'],
};

export default defineRule({
  ...text,
  needs: { night },
  check: ({ facts }) => ({ findings: [findingFor(facts.night)] }),
  work: ({ build, facts }) => nightSteps(facts.night, build),
});

/** Beyond what a guide calls unacceptable it warns; beyond the limit of workplaces it fails. */
function findingFor(still: NightAir): Finding {
  const { carbonDioxide: breath, people, worst, vents } = still;
  const guide = airLimit('carbon-dioxide-unacceptable');
  const workplace = airLimit('carbon-dioxide-workplace');
  const fails = exceeds(breath.greatestPpm, workplace.value);
  const row = fails ? workplace : guide;
  const untilS = breath.secondsUntil(guide.value);
  const reached: Phrase =
    untilS < breath.asleepS
      ? say` It reaches ${concentration(ppm(guide.value))} after ${duration(untilS)}.`
      : [];
  const beyond: Phrase = fails
    ? say` The limit of workplaces, for healthy adults awake, is passed after ${duration(breath.secondsUntil(workplace.value))}.`
    : [];
  return judge({
    rule: text,
    subject: 'night',
    path: text.place,
    kind: 'concentration',
    measured: { value: ppm(breath.greatestPpm), standard: 0 },
    limit: ppm(row.value),
    sense: 'at most',
    broken: fails ? 'fail' : 'warn',
    reason: say`With ${count(people)} asleep and ${airFlow(worst.flowM3PerS)} of fresh air on a still night (${temperatureC(worst.insideC)} inside, ${temperatureC(worst.outsideC)} outside), carbon dioxide goes from ${concentration(ppm(breath.startPpm))} to ${concentration(ppm(breath.endPpm))} in ${duration(breath.asleepS)}.${reached}${beyond}${unsaidWords(vents)}`,
    remedy: () => remedyFor(still, guide.value),
    sources: [...guide.citations, ...(fails ? workplace.citations : [])],
    cautions: row.cautions,
  });
}

const ppm = (value: number): number => value * 1e-6;

const unsaidWords = ({ unsaid }: NightAir['vents']): string =>
  unsaid.length === 0
    ? ''
    : ` ${namesOf(unsaid.map(({ name }) => name))} ${unsaid.length === 1 ? 'is' : 'are'} taken as shut, since the plan does not say \`closes: false\`.`;

function remedyFor({ carbonDioxide: breath, airM3, worst, vents }: NightAir, limitPpm: number): Phrase {
  const flowM3PerS = flowForPpmAfterM3S(
    {
      outsidePpm: breath.outsidePpm,
      generationM3S: breath.generationM3PerS,
      volumeM3: airM3,
      startPpm: breath.startPpm,
    },
    limitPpm,
    breath.asleepS,
  );
  return say`It takes ${airFlow(flowM3PerS)} to stay at ${concentration(ppm(limitPpm))}: ${areaForFlow(vents, worst, flowM3PerS)}, or let a quiet fan move so much all night.`;
}
