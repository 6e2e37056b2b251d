import { waterUseOf } from '../../build/water-use.ts';
import { tankDays } from '../../calc/water/supply.ts';
import { emergencyNeeds } from '../../catalogue/water/use.ts';
import { judge } from '../../engine/judge.ts';
import { count, factor, volume } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { namesOf } from '../routed.ts';
import { daysBetweenFills, isFresh, tanks, usableOf } from '../watered.ts';
import { freshUseStep, tanksStep } from '../working/water-use.ts';

const text: RuleText = {
  id: 'water.days',
  topic: 'water',
  title: 'days of fresh water',
  why: 'When the tank is dry the journey bends to the next tap; in winter that may be a long way.',
  formula:
    'n = Σ V·u / V_day ≥ n_wanted; V what the fresh tanks hold, m³; u its usable share; V_day used by all on a day',
  sources: [
    {
      title: 'Water used is as the plan says; a person needs 7.5 to 15 L a day in an emergency',
      provenance: 'common practice',
    },
    ...emergencyNeeds.total.citations,
  ],
  cautions: [waterCaution],
  fix: 'Carry more water, use less of it, or fill more often.',
  place: ['living', 'litres_per_person_day'],
};

interface Daily {
  readonly m3: number;
  readonly people: number;
}

const dailyUse: Need<Daily> = (build) => {
  const { freshMissing, freshM3PerDay, people } = waterUseOf(build);
  if (freshM3PerDay === undefined || people === undefined) return missing(...freshMissing);
  return freshM3PerDay > 0 ? given({ m3: freshM3PerDay, people }) : missing('living.litres_per_person_day');
};

export default defineRule({
  ...text,
  needs: {
    tanks,
    daily: dailyUse,
    days: daysBetweenFills,
  },
  work: ({ build, facts: { tanks: all, daily } }) => {
    const fresh = all.filter(isFresh);
    const usableM3 = usableOf(fresh);
    const lasts = say`${volume(usableM3)} / ${volume(daily.m3)}`;
    return [
      freshUseStep(waterUseOf(build), build.habits),
      ...(fresh.length > 0 ? [tanksStep('What the fresh tanks give: Σ V·u', fresh)] : []),
      {
        what: 'The days that it lasts: n = Σ V·u / V_day',
        sum:
          fresh.length > 0
            ? say`${lasts} a day = ${factor(usableM3 / daily.m3)} days`
            : say`no fresh tank: ${lasts}`,
        result: count(usableM3 / daily.m3),
      },
    ];
  },
  check: ({ facts: { tanks: all, daily, days } }) => {
    const fresh = all.filter(isFresh);
    const [first] = fresh;
    const usableM3 = usableOf(fresh);
    const whole = fresh.every(({ usableGiven }) => usableGiven)
      ? say``
      : say` What is not said of them counts as usable to the last drop.`;
    return {
      findings: [
        judge({
          rule: text,
          subject: 'fresh water',
          path: first?.path ?? ['tanks'],
          kind: 'count',
          measured: { value: usableM3 > 0 ? tankDays(usableM3, 1, daily.m3) : 0, standard: 0 },
          limit: days,
          sense: 'at least',
          broken: 'warn',
          reason:
            fresh.length === 0
              ? say`The plan has no fresh tank, and ${volume(daily.m3)} are used on a day.`
              : say`${namesOf(fresh.map(({ name }) => name))} ${fresh.length === 1 ? 'gives' : 'give'} ${volume(usableM3)}, and ${daily.people === 1 ? 'one uses' : `${String(daily.people)} use`} ${volume(daily.m3)} on a day.${whole}`,
          remedy: () =>
            usableM3 < daily.m3
              ? say`Carry ${volume(upToLitre(days * daily.m3 - usableM3))} more: what there is does not last a day.`
              : say`Carry ${volume(upToLitre(days * daily.m3 - usableM3))} more, use ${volume(upToTenthLitre(daily.m3 - usableM3 / days))} less on a day, or fill after ${count(Math.floor(usableM3 / daily.m3))} ${Math.floor(usableM3 / daily.m3) === 1 ? 'day' : 'days'}.`,
        }),
      ],
    };
  },
});

const upToTenthLitre = (volumeM3: number): number => Math.ceil(volumeM3 * 10_000 - 1e-6) / 10_000;

const upToLitre = (volumeM3: number): number => Math.ceil(volumeM3 * 1000 - 1e-6) / 1000;
