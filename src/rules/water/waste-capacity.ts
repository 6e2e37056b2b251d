import { waterUseOf } from '../../build/water-use.ts';
import { judge } from '../../engine/judge.ts';
import { count, volume } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { namesOf } from '../routed.ts';
import { daysBetweenFills, isForDrains, isFresh, outlets, tanks } from '../watered.ts';

const text: RuleText = {
  id: 'water.waste-capacity',
  topic: 'water',
  title: 'room for waste water',
  why: 'A waste tank that fills before the fresh tank is empty comes up in the sink, or is let run out where it must not.',
  formula:
    'Σ V_w·u ≥ min(n·V_waste, what the fresh tanks give); V_w of the waste tanks, m³; n days between fills; V_waste what runs down the drains on a day',
  sources: [
    {
      title: 'A waste tank takes what can flow into it between two fillings; no source',
      provenance: 'common practice',
    },
  ],
  cautions: [waterCaution],
  fix: 'Take a larger waste tank, or empty it more often.',
  place: ['tanks'],
};

const wastePerDay: Need<number> = (build) => {
  const { freshMissing, wasteM3PerDay } = waterUseOf(build);
  return wasteM3PerDay === undefined ? missing(...freshMissing) : given(wasteM3PerDay);
};

export default defineRule({
  ...text,
  needs: {
    tanks,
    outlets,
    daily: wastePerDay,
    days: daysBetweenFills,
  },
  check: ({ facts: { tanks: all, daily, days } }) => {
    const waste = all.filter(isForDrains);
    const takesM3 = waste.reduce((sum, { holdsM3, usableShare }) => sum + holdsM3 * usableShare, 0);
    const holdsM3 = waste.reduce((sum, tank) => sum + tank.holdsM3, 0);
    const usableShare = holdsM3 > 0 ? takesM3 / holdsM3 : 1;
    const fresh = all.filter(isFresh);
    const carriedM3 = fresh.reduce((sum, { holdsM3, usableShare }) => sum + holdsM3 * usableShare, 0);
    const drainsM3 = days * daily;
    const flowsM3 = fresh.length > 0 ? Math.min(drainsM3, carriedM3) : drainsM3;
    return {
      findings: [
        judge({
          rule: text,
          subject: 'waste water',
          path: waste[0]?.path ?? text.place,
          kind: 'volume',
          measured: { value: takesM3, standard: 0 },
          limit: flowsM3,
          sense: 'at least',
          broken: 'warn',
          reason:
            waste.length === 0
              ? say`The plan has no waste tank for drains, and ${volume(daily)} run down them on a day.`
              : say`${namesOf(waste.map(({ name }) => name))} ${waste.length === 1 ? 'takes' : 'take'} ${volume(takesM3)}. In ${count(days)} days ${volume(drainsM3)} run down the drains${flowsM3 < drainsM3 ? say`, but no more than the ${volume(carriedM3)} carried` : say``}.`,
          remedy: () =>
            takesM3 < daily
              ? say`Take waste tanks that take ${volume(upToLitre(flowsM3))}: what there is does not last a day.`
              : say`Take waste tanks that take ${volume(upToLitre(flowsM3))}${usableShare < 1 ? say`, ${volume(upToLitre(flowsM3 / usableShare))} in all` : say``}, or empty them ${everyDays(Math.floor(takesM3 / daily))}.`,
        }),
      ],
    };
  },
});

const everyDays = (days: number) => (days === 1 ? say`every day` : say`every ${count(days)} days`);

const upToLitre = (volumeM3: number): number => Math.ceil(volumeM3 * 1000 - 1e-6) / 1000;
