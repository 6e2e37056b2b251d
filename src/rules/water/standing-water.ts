import type { Water } from '../../build/water.ts';
import { waterLimits } from '../../catalogue/water/limits.ts';
import { growthRange, hotColdSystems } from '../../catalogue/water/sources.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds } from '../../engine/judge.ts';
import { closeC, kelvins, temperatureC } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { waterCaution } from '../cautions.ts';
import { observed } from '../observed.ts';
import { water } from '../watered.ts';

const text: RuleText = {
  id: 'water.standing-water',
  topic: 'water',
  title: 'warmth that germs like',
  why: 'Legionella multiplies in lukewarm water that stands, and is breathed in with the mist of a shower.',
  formula: 'stored cold water ≤ 20 °C; stored hot water ≥ 60 °C; between 20 and 45 °C legionella multiplies',
  sources: [hotColdSystems, growthRange],
  cautions: [
    waterCaution,
    'Advice from rules for workplaces. A thermometer at the tap tells what no plan does; after weeks of standing, drain the system, disinfect it and flush it before anyone showers.',
  ],
  fix: 'Keep cold water below 20 °C and the store at 60 °C, and flush what has stood.',
  limits: ['cold-water-temperature', 'hot-store-temperature', 'legionella-growth-to'],
  place: ['water'],
};

export default defineRule({
  ...text,
  needs: { water },
  work: ({ facts: { water } }, { subject, measured }) => {
    const hotC = water.heater?.temperatureC;
    if (!measured) return undefined;
    if (subject === 'cold water')
      return [
        {
          what: 'How much warmer the cold water is than it should be',
          sum: say`${closeC(water.coldC)} − ${closeC(waterLimits['cold-water-temperature'].value)}`,
          result: kelvins(water.coldC - waterLimits['cold-water-temperature'].value),
          paths: [[...water.path, 'cold']],
        },
      ];
    if (!water.heater || hotC === undefined) return undefined;
    return [
      {
        what: 'How much cooler the store is than it should be',
        sum: say`${closeC(waterLimits['hot-store-temperature'].value)} − ${closeC(hotC)}`,
        result: kelvins(waterLimits['hot-store-temperature'].value - hotC),
        paths: [[...water.heater.path, 'temperature']],
      },
    ];
  },
  check: ({ build, facts }) => {
    const warned = [...coldOf(facts.water), ...storeOf(facts.water)];
    if (warned.length > 0) return { findings: warned };
    const unknown = facts.water.heater?.kind === 'storage' && facts.water.heater.temperatureC === undefined;
    return {
      findings: [unknown ? storeNotKnown : asItShould(facts.water, build.habits.summerHighC)],
    };
  },
});

function coldOf({ coldC, path }: Water): Finding[] {
  const limit = waterLimits['cold-water-temperature'];
  if (!exceeds(coldC, limit.value)) return [];
  return [
    observed(text, {
      verdict: 'warn',
      subject: 'cold water',
      path: [...path, 'cold'],
      measured: kelvins(coldC - limit.value),
      reason: say`Cold water of ${temperatureC(coldC)} is ${kelvins(coldC - limit.value)} warmer than ${temperatureC(limit.value)}, from where legionella multiplies.`,
      remedy: say`Keep tank and pipes ${kelvins(coldC - limit.value)} cooler, away from heaters and sun; else empty and refill the tank within days, and boil what you drink.`,
      sources: limit.citations,
      cautions: limit.caution ? [limit.caution] : [],
    }),
  ];
}

function storeOf({ heater }: Water): Finding[] {
  const limit = waterLimits['hot-store-temperature'];
  const hotC = heater?.temperatureC;
  if (heater?.kind !== 'storage' || hotC === undefined || !exceeds(limit.value, hotC)) return [];
  const multiplies = exceeds(waterLimits['legionella-growth-to'].value, hotC);
  return [
    observed(text, {
      verdict: 'warn',
      subject: 'hot store',
      path: [...heater.path, 'temperature'],
      measured: kelvins(limit.value - hotC),
      reason: say`The store is heated to ${temperatureC(hotC)}, ${kelvins(limit.value - hotC)} less than the ${temperatureC(limit.value)} that stored hot water should have${multiplies ? say`; below ${temperatureC(waterLimits['legionella-growth-to'].value)} legionella multiplies in it` : ''}.`,
      remedy: say`Heat it to ${temperatureC(limit.value)} behind a mixing valve, or bring it there once before a shower after days of standing.`,
      sources: limit.citations,
      cautions: limit.caution ? [limit.caution] : [],
    }),
  ];
}

const storeNotKnown = observed(text, {
  verdict: 'not checked',
  subject: 'hot store',
  path: ['water', 'heater'],
  reason: say`The plan does not say how hot its store is.`,
  remedy: say`Add \`water.heater.temperature\`.`,
  missing: ['water.heater.temperature'],
});

function asItShould({ coldC, heater, path }: Water, summerHighC: number | undefined): Finding {
  const limit = waterLimits['cold-water-temperature'];
  const summer =
    summerHighC !== undefined && exceeds(summerHighC, limit.value)
      ? say` In summer, at ${temperatureC(summerHighC)}, the tank becomes as warm as the van: then empty and refill it every few days.`
      : '';
  const hot =
    heater?.kind === 'storage' && heater.temperatureC !== undefined
      ? say` and its hot store has ${temperatureC(heater.temperatureC)}`
      : '';
  return observed(text, {
    verdict: 'pass',
    subject: 'water',
    path,
    reason: say`By the plan cold water has ${temperatureC(coldC)}${hot}, outside what legionella likes.${summer}`,
  });
}
