import type { Build } from '../../build/build.ts';
import { waterUseOf } from '../../build/water-use.ts';
import { heatingEnergyJ, heatingSeconds } from '../../calc/water/heating.ts';
import { kettleArticle } from '../../catalogue/water/sources.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { duration, energyWh, power, share, temperatureC, volume } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import {
  defineRule,
  type EffectiveLimit,
  given,
  missing,
  type Need,
  type RuleText,
} from '../../engine/rule.ts';
import { heatCaution, waterCaution } from '../cautions.ts';
import { hotWater, type Store, storeOf } from '../hot-water.ts';
import { observed } from '../observed.ts';
import { upToShown, upToShownTime } from '../shown-digits.ts';
import { heatingSteps } from '../working/heating.ts';
import { hotUseSteps, temperaturePaths } from '../working/water-use.ts';

const text: RuleText = {
  id: 'water.heater-recovery',
  topic: 'water',
  title: 'time to heat water again',
  why: 'After a shower the store is cold: whoever comes next waits, and what the heater takes meanwhile comes out of the battery or the gas cylinder.',
  formula:
    't = ρ·V·c·(T_h − T_c) / P; V store, m³; T_h hot, T_c cold, °C; P power that reaches the water, W; a day: heat of all hot water ≤ 24 h·P',
  sources: [
    kettleArticle,
    { title: 'No heat lost from the store; the whole of it drawn and cold', provenance: 'own choice' },
  ],
  cautions: [waterCaution, heatCaution],
  fix: 'Take a heater with more power, or a smaller store.',
  limits: ['store-warm-again'],
  place: ['water', 'heater'],
};

const dayS = 24 * 3600;

interface Recovery {
  readonly store: Store;
  readonly powerW: number;
  /** Undefined where the habits are not known. */
  readonly dailyJ: number | undefined;
}

const recovery: Need<Recovery | 'instant'> = (build) => {
  const found = hotWater(build);
  if (!found.ok) return found;
  const { heater } = found.value;
  if (heater.kind === 'instant') return given('instant');
  const store = storeOf(build, found.value);
  const keys = [
    ...('missing' in store ? store.missing : []),
    ...(heater.powerW === undefined ? ['water.heater.power'] : []),
  ];
  if ('missing' in store || heater.powerW === undefined) return missing(...keys);
  return given({ store, powerW: heater.powerW, dailyJ: waterUseOf(build).hotEnergyJPerDay });
};

export default defineRule({
  ...text,
  override: { limit: 'store-warm-again', kinds: ['duration'] },
  needs: { recovery },
  work: ({ build, facts: { recovery } }) => (recovery === 'instant' ? undefined : stepsOf(build, recovery)),
  check: ({ facts: { recovery }, limit }) => ({
    findings: [recovery === 'instant' ? instant : findingOf(recovery, limit('store-warm-again'))],
  }),
});

const instant = observed(text, {
  verdict: 'pass',
  subject: 'water heater',
  path: text.place,
  reason: say`An instant heater has no store that cools: what it makes warm at once is a check of its own.`,
});

/** How long the hot water of a day takes, s, where that is longer than the day. */
function overDayOf({
  powerW,
  dailyJ,
}: Recovery): { readonly heatJ: number; readonly seconds: number } | undefined {
  if (dailyJ === undefined) return undefined;
  const seconds = heatingSeconds(dailyJ, powerW);
  return exceeds(seconds, dayS) ? { heatJ: dailyJ, seconds } : undefined;
}

function findingOf(recovery: Recovery, limit: EffectiveLimit): Finding {
  const { store, powerW, dailyJ } = recovery;
  const { holdsM3, hotC, coldC, heater } = store;
  const heatJ = hotC > coldC ? heatingEnergyJ({ volumeM3: holdsM3, fromC: coldC, toC: hotC }) : 0;
  const seconds = heatingSeconds(heatJ, powerW);
  const overDay = overDayOf(recovery);
  if (overDay)
    return judge({
      rule: text,
      subject: 'water heater',
      path: [...heater.path, 'power'],
      kind: 'duration',
      measured: { value: overDay.seconds, standard: 0 },
      limit: dayS,
      sense: 'at most',
      broken: 'fail',
      reason: say`The hot water of a day takes ${energyWh(overDay.heatJ / 3600)}: ${power(powerW)} heat it in ${duration(overDay.seconds)}, longer than the day.`,
      remedy: () => say`It takes ${power(upToShown(overDay.heatJ / dayS))} at the least, or less hot water.`,
    });
  return judge({
    rule: text,
    subject: 'water heater',
    path: [...heater.path, 'power'],
    kind: 'duration',
    measured: { value: seconds, standard: 0 },
    limit: limit.value,
    sense: 'at most',
    broken: limit.failing ? 'fail' : 'warn',
    reason: say`${power(powerW)} bring ${volume(holdsM3)} from ${temperatureC(coldC)} to ${temperatureC(hotC)} in ${duration(seconds)}, with ${energyWh(heatJ / 3600)}.${dayText(dailyJ, powerW)}`,
    sources: limit.citations,
    cautions: limit.cautions,
    remedy: () =>
      say`A heater of ${power(upToShown(heatJ / limit.value))} is as quick as that; or plan ${duration(upToShownTime(seconds))} between one who showers and the next.`,
  });
}

/** The store once, or where that is what breaks it, the hot water of a day. */
function stepsOf(build: Build, recovery: Recovery): readonly Step[] {
  const { powerW, store } = recovery;
  const { water, heater, holdsM3, hotC, coldC } = store;
  const common = {
    powerW,
    degreePaths: temperaturePaths(water),
    powerPath: [...heater.path, 'power'],
  };
  if (overDayOf(recovery) === undefined)
    return heatingSteps({
      ...common,
      water: { volumeM3: holdsM3, fromC: coldC, toC: hotC },
      of: 'the store',
      volumePaths: [[...heater.path, 'holds']],
    });
  const use = waterUseOf(build);
  return [
    ...hotUseSteps(use, build.habits, water, hotC),
    ...heatingSteps({
      ...common,
      water: { volumeM3: use.hotM3PerDay ?? 0, fromC: coldC, toC: hotC },
      of: 'a day',
      volumePaths: [],
    }),
  ];
}

const dayText = (dailyJ: number | undefined, powerW: number): Phrase =>
  dailyJ === undefined
    ? say``
    : say` All hot water of a day takes ${energyWh(dailyJ / 3600)}, ${share(heatingSeconds(dailyJ, powerW) / dayS)} of the day's hours.`;
