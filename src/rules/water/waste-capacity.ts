import type { WaterTank } from '../../build/water.ts';
import { waterUseOf } from '../../build/water-use.ts';
import type { Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { count, volume } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { namesOf } from '../routed.ts';
import { daysBetweenFills, isForDrains, isFresh, outlets, tanks, usableOf } from '../watered.ts';
import { tanksStep, wasteUseStep } from '../working/water-use.ts';

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
  work: ({ build, facts: { tanks: all, outlets, daily, days } }) => {
    const waste = all.filter(isForDrains);
    const fresh = all.filter(isFresh);
    const drainsM3 = days * daily;
    const between: Step = {
      what: 'Between two fillings: n·V_waste',
      sum: say`${count(days)} days · ${volume(daily)}`,
      result: volume(drainsM3),
      paths: [['living', 'days_between_fills']],
    };
    const comes = flowsOf(fresh, drainsM3);
    const lesser: Step = {
      what: 'No more can come than was carried: the lesser of the two',
      sum: say`of ${volume(drainsM3)} and ${volume(usableOf(fresh))}`,
      result: volume(comes),
    };
    const took: Step =
      waste.length > 0
        ? tanksStep('What the waste tanks take: Σ V_w·u', waste)
        : { what: 'What waste tanks take', sum: say`nothing: there is none for drains`, result: volume(0) };
    return [
      wasteUseStep(
        waterUseOf(build),
        build.habits,
        outlets.some(({ drains }) => drains),
      ),
      between,
      ...(fresh.length > 0 ? [tanksStep('What the fresh tanks give: Σ V·u', fresh), lesser] : []),
      took,
    ];
  },
  check: ({ facts: { tanks: all, daily, days } }) => {
    const waste = all.filter(isForDrains);
    const takesM3 = usableOf(waste);
    const holdsM3 = waste.reduce((sum, tank) => sum + tank.holdsM3, 0);
    const usableShare = holdsM3 > 0 ? takesM3 / holdsM3 : 1;
    const fresh = all.filter(isFresh);
    const carriedM3 = usableOf(fresh);
    const drainsM3 = days * daily;
    const flowsM3 = flowsOf(fresh, drainsM3);
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

/** What comes between two fillings: no more than the fresh tanks give, where there are some. */
const flowsOf = (fresh: readonly WaterTank[], drainsM3: number): number =>
  fresh.length > 0 ? Math.min(drainsM3, usableOf(fresh)) : drainsM3;

const everyDays = (days: number) => (days === 1 ? say`every day` : say`every ${count(days)} days`);

const upToLitre = (volumeM3: number): number => Math.ceil(volumeM3 * 1000 - 1e-6) / 1000;
