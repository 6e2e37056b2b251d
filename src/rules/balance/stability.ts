import { momentOfHeight, totalMass } from '../../build/quantities.ts';
import { staticStabilityFactor } from '../../calc/stability.ts';
import { stabilityMethod } from '../../catalogue/methods.ts';
import { judge, meaningless } from '../../engine/judge.ts';
import { factor, length } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { aboveGround } from '../above-ground.ts';
import { stabilityCaution } from '../cautions.ts';
import { floorHeight, placed, tracks } from '../needs.ts';
import { greatestRatio } from '../states.ts';
import { heightSteps } from '../working/centre.ts';

const text: RuleText = {
  id: 'balance.stability',
  topic: 'balance',
  title: 'static stability factor',
  why: 'It says how hard a stiff van could be pushed sideways before it tips: the share of its own weight.',
  formula:
    'SSF = T / (2·h); T the narrower track, h greatest height of the centre of mass above ground, both in m',
  sources: [stabilityMethod],
  cautions: [stabilityCaution],
  fix: 'Bring heavy things down to the floor; a wider track is not to be had.',
  limits: ['static-stability-factor'],
  place: ['van'],
};

export default defineRule({
  ...text,
  override: { limit: 'static-stability-factor', kinds: ['number'] },
  needs: { placed, floorHeight, tracks },
  check: ({ build, facts, limit }) => {
    const regional = limit('static-stability-factor');
    const bodies = aboveGround(facts.placed.bodies, facts.floorHeight);
    const worst = greatestRatio(build, bodies, momentOfHeight, totalMass);
    const heightM = worst.value;
    const subject = { rule: text, subject: 'whole van', path: ['van', 'track'], state: worst.state };
    if (heightM <= 0) {
      const reason = say`The centre of mass comes out ${length(-heightM)} below the ground, where it cannot be.`;
      const remedy = say`Look for a height in the wrong unit, or counted from the wrong place.`;
      return {
        findings: [meaningless({ ...subject, kind: 'length', measured: worst, reason }, 'warn', remedy)],
      };
    }
    const trackM = Math.min(facts.tracks.frontM, facts.tracks.rearM);
    const value = staticStabilityFactor(trackM, heightM);
    return {
      findings: [
        judge({
          ...subject,
          kind: 'factor',
          measured: { ...worst, value, standard: (value * worst.standard) / heightM },
          limit: regional.value,
          sense: 'at least',
          broken: regional.failing ? 'fail' : 'warn',
          reason: say`A stiff van with this track would tip at ${factor(value)} times its weight pushed sideways; the centre of mass is ${length(heightM)} above the ground.`,
          remedy: (shortfall) =>
            say`Bring the centre of mass down by ${length(heightM - trackM / (2 * (value + shortfall)))}: heavy things to the floor.`,
          sources: regional.citations,
          cautions: regional.cautions,
        }),
      ],
    };
  },
  work: ({ build, facts }) => {
    const bodies = aboveGround(facts.placed.bodies, facts.floorHeight);
    const { value: heightM, filling } = greatestRatio(build, bodies, momentOfHeight, totalMass);
    const height = heightSteps(bodies, filling, facts.floorHeight.value);
    if (heightM <= 0) return height;
    const { frontM, rearM } = facts.tracks;
    const trackM = Math.min(frontM, rearM);
    const narrower = frontM === rearM ? '' : ', T the narrower track';
    return [
      ...height,
      {
        what: 'How hard it could be pushed before it tips: SSF = T / (2·h)',
        sum: say`${length(trackM)} / (2 · ${length(heightM)})${narrower}`,
        result: factor(staticStabilityFactor(trackM, heightM)),
        paths: [['van', 'track']],
      },
    ];
  },
});
