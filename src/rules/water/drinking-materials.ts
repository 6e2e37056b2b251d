import type { WaterPipe, WaterTank } from '../../build/water.ts';
import { tankHygiene } from '../../catalogue/water/sources.ts';
import type { Finding, PlanPath } from '../../engine/finding.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { isPressed } from '../water-network.ts';
import { byName } from '../watered.ts';

const text: RuleText = {
  id: 'water.drinking-materials',
  topic: 'water',
  title: 'made for drinking water',
  why: 'Hose and tanks that are not made for it give the water a taste, and their plasticisers with it; slime grows well on them.',
  formula: 'every fresh tank and every pipe from it is declared `drinking_water: true`',
  sources: [tankHygiene],
  cautions: [
    waterCaution,
    'A plan can only repeat what is printed on the material: look for the mark of an approval for drinking water, on seals and hoses too.',
  ],
  fix: 'Take tanks, pipes and hoses that are approved for drinking water.',
  place: ['water'],
};

interface Wetted {
  readonly name: string;
  readonly path: PlanPath;
  readonly declared: boolean | undefined;
}

const wetted: Need<readonly Wetted[]> = ({ water }) => {
  if (!water) return missing('water');
  const tanks = water.tanks.filter(({ contents }) => contents === 'fresh');
  const pipes = water.pipes.filter((pipe) => isPressed(pipe) || pipe.role === 'fill');
  const found = [...byName(tanks), ...byName(pipes)].map(wettedOf);
  return found.length > 0
    ? given(found)
    : missing('tanks.NAME.drinking_water', 'water.pipes.NAME.drinking_water');
};

const wettedOf = ({ name, path, drinkingWater }: WaterTank | WaterPipe): Wetted => ({
  name,
  path,
  declared: drinkingWater,
});

export default defineRule({
  ...text,
  needs: { wetted },
  check: ({ facts: { wetted } }) => {
    const refused = wetted.filter(({ declared }) => declared === false);
    const silent = wetted.filter(({ declared }) => declared === undefined);
    const findings = [...refused.map(notFor), ...notSaid(silent)];
    return { findings: findings.length > 0 ? findings : [allDeclared(wetted)] };
  },
});

const notFor = ({ name, path }: Wetted): Finding =>
  observed(text, {
    verdict: 'warn',
    subject: name,
    path: [...path, 'drinking_water'],
    reason: say`${name} holds fresh water, and the plan says that it is not made for drinking water.`,
    remedy: say`Exchange this one part for one that is marked for drinking water; or mark every tap behind it as not for drinking, and carry water for drinking apart.`,
  });

function notSaid(silent: readonly Wetted[]): Finding[] {
  if (silent.length === 0) return [];
  const keys = silent.map(({ path }) => `${path.join('.')}.drinking_water`);
  return [
    observed(text, {
      verdict: 'not checked',
      subject: silent.length === 1 ? (silent[0]?.name ?? '') : 'tanks and pipes',
      path: silent.length === 1 ? (silent[0]?.path ?? text.place) : text.place,
      reason: say`The plan does not say of ${namesOf(silent.map(({ name }) => name))} whether ${silent.length === 1 ? 'it is' : 'they are'} made for drinking water.`,
      remedy: say`Look for the mark and add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
      missing: keys,
    }),
  ];
}

const allDeclared = (wetted: readonly Wetted[]): Finding =>
  observed(text, {
    verdict: 'pass',
    subject: 'tanks and pipes',
    path: text.place,
    reason: say`All ${wetted.length === 1 ? '' : `${wetted.length} `}fresh tanks and pipes are declared as made for drinking water.`,
  });
