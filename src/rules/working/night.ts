import type { Build } from '../../build/build.ts';
import type { NightAir } from '../../build/night-air.ts';
import type { Step } from '../../engine/finding.ts';
import { concentration, count, volume } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { contentStep } from './content.ts';
import { freshAirSteps, roomStep, temperaturePaths } from './still-air.ts';

/*
 * How the air of a still night comes about: through the vents, by breath, and what carbon dioxide makes of both.
 */

export function nightSteps(night: NightAir, build: Build): readonly Step[] {
  const { people, worst, carbonDioxide: breath, airM3 } = night;
  const perHourM3 = breath.generationM3PerS * 3600;
  const endsLower = breath.endPpm < breath.startPpm;
  return [
    ...stillestSteps(night),
    ...roomStep(build),
    {
      what: `What those asleep breathe out in an hour, as carbon dioxide at ${Math.round(worst.insideC)} °C: G`,
      sum: say`${count(people)} · ${volume(perHourM3 / people)}`,
      result: volume(perHourM3),
      paths: [['people', 'sleepers']],
    },
    contentStep({
      ...breath,
      what: 'Carbon dioxide at the end of the night',
      startWords: 'as they lie down',
      freedWords: 'breathed out',
      flowM3PerS: worst.flowM3PerS,
      airM3,
      seconds: breath.asleepS,
      paths: [['living', 'asleep']],
    }),
    ...(endsLower
      ? [
          {
            what: 'The greatest of the night: as they lie down, since it falls from there',
            result: concentration(breath.startPpm * 1e-6),
          },
        ]
      : []),
  ];
}

/** The fresh air of the night that changes the least. */
export function stillestSteps(night: NightAir): readonly Step[] {
  const { worst, nights } = night;
  const which = nights.length > 1 ? `, which of ${nights.length} nights changes least air` : '';
  return freshAirSteps(night, {
    air: worst,
    stackM3PerS: worst.stackM3PerS,
    when: `in the ${worst.when} night${which}`,
    paths: temperaturePaths('night', worst.when),
  });
}
