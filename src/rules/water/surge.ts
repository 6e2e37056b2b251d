import type { WaterTank } from '../../build/water.ts';
import { waterLimits } from '../../catalogue/water/limits.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { share, volume } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { tankCaution } from '../cautions.ts';
import { foldPasses } from '../fold-passes.ts';
import { observed } from '../observed.ts';
import { tanks } from '../watered.ts';

const from = waterLimits['part-fill-from'];
const to = waterLimits['part-fill-to'];

const text: RuleText = {
  id: 'water.surge',
  topic: 'water',
  title: 'water that surges',
  why: 'Half a tank of water runs to the outside of every bend and to the front at every stop, and pushes the van about.',
  formula: 'a tank of 100 L or more has baffles, or travels less than 20 % or more than 80 % full',
  sources: [
    { title: 'Large is 100 L or more: a tenth of what a van may carry', provenance: 'own choice' },
    ...from.citations,
  ],
  cautions: [tankCaution, ...(from.caution === undefined ? [] : [from.caution])],
  fix: 'Take a tank with baffles, or two smaller ones.',
  limits: ['part-fill-from', 'part-fill-to'],
  place: ['tanks'],
};

const largeM3 = 0.1;

export default defineRule({
  ...text,
  needs: { tanks },
  work: ({ facts }, { subject }) => {
    const tank = facts.tanks.find(({ name }) => name === subject);
    return tank && [holdsStep(tank)];
  },
  check: ({ facts }) => ({ findings: foldPasses(facts.tanks.map(found), 'tank') }),
});

function holdsStep({ path, holdsM3, baffles }: WaterTank): Step {
  const walls =
    baffles === undefined ? 'no baffles are named' : `${baffles} ${baffles === 1 ? 'baffle' : 'baffles'}`;
  return {
    what: 'What the tank holds, as the plan gives it',
    sum: say`large is ${volume(largeM3)} or more; ${walls}`,
    result: volume(holdsM3),
    paths: [
      [...path, 'holds'],
      [...path, 'baffles'],
    ],
  };
}

function found({ name, path, holdsM3, baffles }: WaterTank): Finding {
  const isLarge = holdsM3 >= largeM3 - 1e-9;
  if (!isLarge || (baffles ?? 0) > 0)
    return observed(text, {
      verdict: 'pass',
      subject: name,
      path,
      measured: volume(holdsM3),
      reason: isLarge
        ? say`${name} has ${String(baffles ?? 0)} ${baffles === 1 ? 'baffle' : 'baffles'} in its ${volume(holdsM3)}.`
        : say`${name} holds ${volume(holdsM3)}, less than the ${volume(largeM3)} from which baffles are asked for here.`,
    });
  return observed(text, {
    verdict: 'warn',
    subject: name,
    path,
    measured: volume(holdsM3),
    reason: say`${name} holds ${volume(holdsM3)} and has no baffles by the plan.`,
    remedy: say`Take a tank with baffles, which cut the surge short, or two smaller tanks; until then drive with less than ${share(from.value)} or more than ${share(to.value)} in it.`,
  });
}
