import type { WaterHeater } from '../../build/water.ts';
import { waterLimits } from '../../catalogue/water/limits.ts';
import { closedHeater, scaldingAdvice } from '../../catalogue/water/sources.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds } from '../../engine/judge.ts';
import { closeC, kelvins, temperatureC } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { heatCaution, waterCaution } from '../cautions.ts';
import { hotWater } from '../hot-water.ts';
import { observed } from '../observed.ts';

const text: RuleText = {
  id: 'water.heater-fittings',
  topic: 'water',
  title: 'valves of the water heater',
  why: 'Water that is heated in a closed store grows and bursts it if nothing lets it out, and water of 60 °C scalds within seconds.',
  formula: 'a store has a relief valve; a heater hotter than 43 °C has a mixing valve behind it',
  sources: [closedHeater, scaldingAdvice],
  cautions: [
    waterCaution,
    heatCaution,
    'A planning aid: the maker of the heater says which valves it needs and at what pressure and temperature they open, and a qualified installer fits them.',
  ],
  fix: 'Fit the relief valve and the mixing valve that the maker of the heater asks for.',
  lifeSafety: true,
  limits: ['scald-temperature'],
  place: ['water', 'heater'],
};

export default defineRule({
  ...text,
  needs: { hot: hotWater },
  work: ({ facts: { hot } }, { measured }) => {
    const { temperatureC: hotC, path } = hot.heater;
    if (!measured || hotC === undefined) return undefined;
    const limitC = waterLimits['scald-temperature'].value;
    return [
      {
        what: 'How much hotter it comes than taps and showers are set to',
        sum: say`${closeC(hotC)} − ${closeC(limitC)}`,
        result: kelvins(hotC - limitC),
        paths: [[...path, 'temperature']],
      },
    ];
  },
  check: ({ facts: { hot } }) => {
    const { heater } = hot;
    const findings = [...reliefOf(heater), ...mixingOf(heater)];
    return { findings: findings.length > 0 ? findings : [fitted(heater)] };
  },
});

function reliefOf({ kind, reliefValve, path }: WaterHeater): Finding[] {
  if (kind === 'instant' || reliefValve === true) return [];
  const at = { subject: 'relief valve', path: [...path, 'relief_valve'] };
  if (reliefValve === undefined)
    return [
      observed(text, {
        ...at,
        path,
        verdict: 'not checked',
        reason: say`The plan does not say whether the store has a relief valve, which lets out what heating makes too much.`,
        remedy: say`Add \`water.heater.relief_valve\`.`,
        missing: ['water.heater.relief_valve'],
      }),
    ];
  return [
    observed(text, {
      ...at,
      verdict: 'fail',
      reason: say`The store has no relief valve: when its thermostat fails nothing holds its pressure down.`,
      remedy: say`Fit one relief valve at the store that opens at the pressure its maker names, with a pipe that leads what it lets out away from people.`,
    }),
  ];
}

function mixingOf({ temperatureC: hotC, mixingValve, path, kind }: WaterHeater): Finding[] {
  const limit = waterLimits['scald-temperature'];
  if (mixingValve === true) return [];
  const at = { subject: 'mixing valve', sources: limit.citations };
  const setting = say`above ${temperatureC(limit.value)} one is needed, and set to no more`;
  if (hotC === undefined) {
    const missing = [
      'water.heater.temperature',
      ...(mixingValve === undefined ? ['water.heater.mixing_valve'] : []),
    ];
    return [
      observed(text, {
        ...at,
        path,
        verdict: 'not checked',
        reason: say`Whether its water scalds is not known: the plan does not say how hot the heater makes it${mixingValve === undefined ? ', nor whether a mixing valve cools it' : ''}.`,
        remedy: say`Add ${missing.map((key) => `\`${key}\``).join(' or ')}; ${setting}.`,
        missing,
      }),
    ];
  }
  if (!exceeds(hotC, limit.value)) return [];
  if (mixingValve === undefined)
    return [
      observed(text, {
        ...at,
        path,
        verdict: 'not checked',
        reason: say`The heater makes water of ${temperatureC(hotC)}, which scalds; the plan does not say whether a mixing valve cools it.`,
        remedy: say`Add \`water.heater.mixing_valve\`; ${setting}.`,
        missing: ['water.heater.mixing_valve'],
      }),
    ];
  const stays = kind === 'storage' ? ' The store itself stays hot, which keeps germs away.' : '';
  return [
    observed(text, {
      ...at,
      path: [...path, 'mixing_valve'],
      verdict: 'warn',
      measured: kelvins(hotC - limit.value),
      reason: say`Water of ${temperatureC(hotC)} comes to the outlets, ${kelvins(hotC - limit.value)} above what taps and showers are set to: it scalds before one can draw the hand back.`,
      remedy: say`Fit a thermostatic mixing valve behind the heater, set to ${temperatureC(limit.value)} at the most.${stays}`,
      cautions: limit.caution ? [limit.caution] : [],
    }),
  ];
}

const fitted = ({ kind, mixingValve, path }: WaterHeater): Finding =>
  observed(text, {
    verdict: 'pass',
    subject: 'water heater',
    path,
    reason: say`The plan has ${kind === 'storage' ? 'a relief valve at the store' : 'an instant heater, which holds next to nothing,'} and ${mixingValve ? 'a mixing valve behind it' : say`water no hotter than ${temperatureC(waterLimits['scald-temperature'].value)}`}.`,
  });
