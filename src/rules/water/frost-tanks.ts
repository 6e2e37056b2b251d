import type { Water, WaterTank } from '../../build/water.ts';
import { airFilm, exposedTank } from '../../catalogue/water/frost.ts';
import type { Finding } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { duration, length, temperatureC } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { conductivityOf, usualFoam, usualFoamWMK } from '../frost.ts';
import { tankCooling, thicknessAgainstFrost } from '../frozen-tanks.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { tanks, winterLow } from '../watered.ts';
import { frozenTankSteps } from '../working/frost.ts';

const text: RuleText = {
  id: 'water.frost-tanks',
  topic: 'water',
  title: 'tanks out of the frost',
  why: 'A tank outside freezes from its walls and its valve first, and then there is no water, or no way to let the waste out.',
  formula:
    't = m·c/G·ln((T_w − T_a)/(0 − T_a)) ≥ the cold spell, half full; G = Σ A/(R_s + s/λ), W/K, A the walls of the tank’s box, s and λ of its insulation; T_w water, T_a winter low, °C',
  sources: [
    ...exposedTank.citations,
    ...airFilm.outside.citations,
    { title: 'Half full, still for the whole cold spell', provenance: 'own choice' },
  ],
  cautions: [
    waterCaution,
    'The water in the tank is taken as mixed: its valve, its pipe and the pump beside it freeze long before.',
  ],
  fix: 'Bring tanks into the heated space, heat them, or insulate them all round.',
  place: ['tanks'],
};

export default defineRule({
  ...text,
  needs: { tanks, winterLowC: winterLow },
  work: ({ build, facts: { tanks, winterLowC } }, { subject, measured }) => {
    const tank = tanks.find(({ name }) => name === subject);
    if (!build.water || !tank || !measured) return undefined;
    const { thicknessM, conductivityWMK } = aboutOf(tank);
    const cooling = tankCooling(tank, build.water.coldC, winterLowC, thicknessM, conductivityWMK);
    return cooling && frozenTankSteps(cooling, { thicknessM, conductivityWMK, path: tank.path });
  },
  check: ({ build, facts: { tanks, winterLowC } }) => {
    const { water } = build;
    if (!water) return { findings: [] };
    const known = tanks.filter(({ whereabouts }) => whereabouts !== undefined);
    const unknown = tanks.filter((tank) => tank.whereabouts === undefined && !tank.inToilet);
    return {
      findings: [
        ...foldPasses(
          known.flatMap((tank) => findingOf(tank, water, build.habits.coldSpellS, winterLowC)),
          'tank',
        ),
        ...notKnown(unknown),
      ],
    };
  },
});

/** What is about a tank; without insulation the foam that a remedy speaks of, nothing thick. */
const aboutOf = ({ insulation }: WaterTank) => ({
  thicknessM: insulation?.thicknessM ?? 0,
  conductivityWMK: insulation ? conductivityOf(insulation) : usualFoamWMK,
});

const isWarm = ({ whereabouts }: WaterTank): boolean =>
  whereabouts === 'inside' || whereabouts === 'in the cab';

function findingOf(tank: WaterTank, water: Water, coldSpellS: number, winterLowC: number): Finding[] {
  const { name, path, whereabouts, insulation } = tank;
  const pass = (reason: Phrase): Finding[] => [
    observed(text, { verdict: 'pass', subject: name, path, reason }),
  ];
  if (isWarm(tank)) return pass(say`${name} stands ${whereabouts ?? 'inside'}: it is as warm as the van is.`);
  if (winterLowC >= 0)
    return pass(
      say`${name} is ${whereabouts ?? 'outside'}, but the plan's winter low of ${temperatureC(winterLowC)} is no frost.`,
    );
  if (tank.heated)
    return pass(
      say`${name} is ${whereabouts ?? 'outside'}, and the plan heats it: it freezes when that heat fails.`,
    );
  const about = aboutOf(tank);
  const cooling = tankCooling(tank, water.coldC, winterLowC, about.thicknessM, about.conductivityWMK);
  if (!cooling) return [];
  const { seconds } = cooling;
  const empties = water.valves.some(
    ({ kind, thing }) => (kind === 'drain' || kind === 'frost') && thing === name,
  );
  return [
    judge({
      rule: text,
      subject: name,
      path,
      kind: 'duration',
      measured: { value: seconds, standard: 0 },
      limit: coldSpellS,
      sense: 'at least',
      broken: empties ? 'warn' : 'fail',
      reason: say`${name} is ${whereabouts ?? 'outside'}. At ${temperatureC(winterLowC)}, half full of water of ${temperatureC(water.coldC)}, it reaches freezing after ${duration(seconds)}${insulation ? say` behind ${length(insulation.thicknessM)} of ${insulation.material.name}` : say`, without insulation`}${empties ? say`. It has a valve to empty it: that must be done before every cold night` : say``}.`,
      remedy: () => {
        const thicknessM = thicknessAgainstFrost(
          tank,
          water.coldC,
          winterLowC,
          about.conductivityWMK,
          coldSpellS,
        );
        const inside = say`bring it into the heated space, or heat it and write \`heated: true\``;
        return thicknessM === undefined
          ? say`No insulation up to 100 mm holds for ${duration(coldSpellS)}: ${inside}.`
          : say`Put ${length(thicknessM)} of ${insulation?.material.name ?? usualFoam} about all of it, or ${inside}.`;
      },
    }),
  ];
}

function notKnown(tanks: readonly WaterTank[]): Finding[] {
  const [first] = tanks;
  if (!first) return [];
  const names = namesOf(tanks.map(({ name }) => name));
  return [
    observed(text, {
      verdict: 'not checked',
      subject: names,
      path: first.path,
      reason: say`Where ${names} ${tanks.length === 1 ? 'is' : 'are'} is not in the plan.`,
      missing: tanks.flatMap(({ path }) => ['size', 'at'].map((key) => [...path, key].join('.'))),
    }),
  ];
}
