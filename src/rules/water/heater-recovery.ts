import { waterUseOf } from '../../build/water-use.ts';
import { heatingEnergyJ, heatingSeconds } from '../../calc/water/heating.ts';
import { kettleArticle } from '../../catalogue/water/sources.ts';
import type { Finding } from '../../engine/finding.ts';
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

function findingOf({ store, powerW, dailyJ }: Recovery, limit: EffectiveLimit): Finding {
  const { holdsM3, hotC, coldC, heater } = store;
  const heatJ = hotC > coldC ? heatingEnergyJ({ volumeM3: holdsM3, fromC: coldC, toC: hotC }) : 0;
  const seconds = heatingSeconds(heatJ, powerW);
  const dailyS = dailyJ === undefined ? undefined : heatingSeconds(dailyJ, powerW);
  if (dailyJ !== undefined && dailyS !== undefined && exceeds(dailyS, dayS))
    return judge({
      rule: text,
      subject: 'water heater',
      path: [...heater.path, 'power'],
      kind: 'duration',
      measured: { value: dailyS, standard: 0 },
      limit: dayS,
      sense: 'at most',
      broken: 'fail',
      reason: say`The hot water of a day takes ${energyWh(dailyJ / 3600)}: ${power(powerW)} heat it in ${duration(dailyS)}, longer than the day.`,
      remedy: () => say`It takes ${power(dailyJ / dayS)} at the least, or less hot water.`,
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
    reason: say`${power(powerW)} bring ${volume(holdsM3)} from ${temperatureC(coldC)} to ${temperatureC(hotC)} in ${duration(seconds)}, with ${energyWh(heatJ / 3600)}.${dayText(dailyJ, dailyS)}`,
    sources: limit.citations,
    cautions: limit.cautions,
    remedy: () =>
      say`A heater of ${power(heatJ / limit.value)} is as quick as that; or plan ${duration(seconds)} between one who showers and the next.`,
  });
}

const dayText = (dailyJ: number | undefined, dailyS: number | undefined): Phrase =>
  dailyJ === undefined || dailyS === undefined
    ? say``
    : say` All hot water of a day takes ${energyWh(dailyJ / 3600)}, ${share(dailyS / dayS)} of the day's hours.`;
