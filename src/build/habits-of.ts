import type { Assumption } from '../engine/finding.ts';
import { duration } from '../engine/measure.ts';
import { say } from '../engine/phrase.ts';
import type { Plan } from '../plan/schema.ts';
import { celsius } from './celsius.ts';
import type { Habits } from './habits.ts';

/** A long winter night: own choice. */
const usualColdSpellS = 16 * 3600;
/** Common practice, no source. */
const usualNightS = 8 * 3600;
const waterKgPerM3 = 1000;

export interface HabitsGiven {
  readonly habits: Habits;
  readonly assumptions: readonly Assumption[];
}

export function habitsOf({ living, people, water, gas, air, heat }: Plan): HabitsGiven {
  const wanted = water ?? gas ?? air ?? heat;
  const fills = living?.days_between_fills ?? living?.nights_off_grid;
  const sleepers = people?.sleepers?.length;
  const assumptions: Assumption[] = [];
  if (wanted && !living?.cold_spell && living?.winter_low)
    assumptions.push({
      path: ['living'],
      text: say`the coldest weather lasts ${duration(usualColdSpellS)} at a stretch (\`cold_spell\` says otherwise)`,
    });
  if (air && !living?.asleep)
    assumptions.push({
      path: ['living'],
      text: say`people sleep for ${duration(usualNightS)} (\`asleep\` says otherwise)`,
    });
  return {
    habits: {
      coldSpellS: living?.cold_spell?.value ?? usualColdSpellS,
      asleepS: living?.asleep?.value ?? usualNightS,
      ...(sleepers !== undefined && { people: sleepers }),
      ...(living?.nights_off_grid && { nightsOffGrid: living.nights_off_grid.value }),
      ...(living?.place && {
        place: { latitudeDeg: living.place.latitude.value, longitudeDeg: living.place.longitude.value },
      }),
      ...(living?.winter_low && { winterLowC: celsius(living.winter_low) }),
      ...(living?.summer_high && { summerHighC: celsius(living.summer_high) }),
      ...(living?.parking_slope && { parkingSlope: living.parking_slope.value }),
      ...(fills && { daysBetweenFills: fills.value }),
      ...(living?.days_between_gas_refills && {
        daysBetweenGasRefills: living.days_between_gas_refills.value,
      }),
      ...(living?.litres_per_person_day && { waterPerPersonDayM3: living.litres_per_person_day.value }),
      ...(living?.hot_litres_per_person_day && { hotPerPersonDayM3: living.hot_litres_per_person_day.value }),
      ...(living?.showers_per_person_day && { showersPerPersonDay: living.showers_per_person_day.value }),
      ...(living?.litres_per_shower && { showerM3: living.litres_per_shower.value }),
      ...(living?.cooking && { cookingS: living.cooking.value }),
      ...(living?.wet_clothes && { wetClothesKg: living.wet_clothes.value * waterKgPerM3 }),
    },
    assumptions,
  };
}
