import type { Complain, Path } from './cross-check.ts';
import { quote } from './quote.ts';
import type { Plan } from './schema.ts';
import { hoursOf, spanOf } from './times-of-day.ts';

/** More than falls on level ground anywhere in a day; outside the air it is 12.5 at the most. Wh/m². */
const mostSunWhM2 = 12_500;
const secondsAnHour = 3600;
const joulesAWattHour = 3600;
/** Own choice: beds and doors give up long before. */
const steepestParking = 0.2;
/** A refrigerator is about as cold inside, K. */
const coldestAround = 273.15 + 6;
/** Every month has them. */
const shortestMonth = 28;

/** What places, days and months there can be, and how long the loads run. */
export function checkLiving({ living, electrical }: Plan, complain: Complain): void {
  checkPlaceOnEarth(living?.place, complain);
  for (const [month, sun] of (living?.sun ?? []).entries())
    if (sun.value > mostSunWhM2 * joulesAWattHour)
      complain(['living', 'sun', month], 'the sun never gives so much in a day', {
        expected: 'the mean of one day, not the sum of the month: at most 12.5 kWh/m2',
      });
  if (living?.driving && living.driving.value > 24 * secondsAnHour)
    complain(['living', 'driving'], 'a day has 24 hours', {
      expected: 'the hours of driving on a usual day',
    });
  if (living?.shore_nights && living.shore_nights.value > shortestMonth)
    complain(['living', 'shore_nights'], 'a month has no more nights that count', {
      expected: `nights at a hook-up in a month, at most ${shortestMonth}`,
    });
  if (living?.parking_slope && living.parking_slope.value > steepestParking)
    complain(['living', 'parking_slope'], 'nobody parks on such a slope for a night', {
      expected: 'the fall over the way, such as `2 %`: one degree is 1.75 %',
    });
  if (living?.asleep && living.asleep.value > 24 * secondsAnHour)
    complain(['living', 'asleep'], 'a day has 24 hours', { expected: "the hours of a night's sleep" });
  if (living?.cooking && living.cooking.value > 24 * secondsAnHour)
    complain(['living', 'cooking'], 'a day has 24 hours', { expected: 'the time of cooking on a day' });
  if (living?.winter_low && living.summer_high && living.winter_low.value > living.summer_high.value)
    complain(['living', 'winter_low'], 'the winter is warmer than the summer', {
      expected: 'the lower temperature as `winter_low`',
    });
  for (const section of ['circuits', 'mains_circuits'] as const)
    for (const [name, circuit] of Object.entries(electrical?.[section] ?? {}))
      checkHours(name, circuit, ['electrical', section, name], complain);
  for (const [name, array] of Object.entries(electrical?.solar ?? {}))
    checkArray(array, ['electrical', 'solar', name], complain);
}

function checkPlaceOnEarth(place: NonNullable<Plan['living']>['place'], complain: Complain): void {
  if (!place) return;
  const { latitude, longitude } = place;
  if (Math.abs(latitude.value) > 90)
    complain(['living', 'place', 'latitude'], 'this latitude is off the earth', {
      expected: 'from -90 to 90 degrees, north of the equator positive',
    });
  if (Math.abs(longitude.value) > 180)
    complain(['living', 'place', 'longitude'], 'this longitude is off the earth', {
      expected: 'from -180 to 180 degrees, east of Greenwich positive',
    });
}

type Timed = Pick<
  NonNullable<NonNullable<Plan['electrical']>['circuits']>[string],
  'hours' | 'when' | 'hours_at'
>;

function checkHours(
  name: string,
  { hours, when, hours_at: hoursAt }: Timed,
  path: Path,
  complain: Complain,
): void {
  if (hoursAt && hoursAt.value <= coldestAround)
    complain([...path, 'hours_at'], `${quote(name)} has nothing to cool at this temperature`, {
      expected: 'the temperature around it at which it runs for its `hours`, such as `25 degC`',
    });
  if (hoursAt && (!hours || 'summer' in hours))
    complain([...path, 'hours_at'], `${quote(name)} does not say one number of hours at this temperature`, {
      expected: 'its `hours` as one time, such as `8 h`',
    });
  if (!hours) return;
  const longest = Math.max(...Object.values(hoursOf(hours)));
  const most = spanOf(when ?? 'always').hours;
  if (longest <= most + 1e-9) return;
  if (when === undefined || when === 'always')
    complain([...path, 'hours'], `${quote(name)} runs for more hours than a day has`, {
      expected: 'hours of a day, at most `24 h`',
    });
  else
    complain([...path, 'hours'], `${quote(name)} runs for longer than its part of the day lasts`, {
      expected: `at most ${most} h with \`when: ${when}\`, or \`when: always\``,
    });
}

type GivenArray = NonNullable<NonNullable<Plan['electrical']>['solar']>[string];

function checkArray(
  { tilt_degrees: tilt, facing_degrees: facing, shaded, losses }: GivenArray,
  path: Path,
  complain: Complain,
): void {
  if (tilt && (tilt.value < 0 || tilt.value > 90))
    complain([...path, 'tilt_degrees'], 'an array does not lie like that', {
      expected: 'from 0, flat, to 90, upright',
    });
  if (facing && (facing.value < 0 || facing.value > 360))
    complain([...path, 'facing_degrees'], 'a compass does not show that', {
      expected: 'from 0, north, over 90, east, and 180, south, to 360',
    });
  for (const [key, part] of [
    ['shaded', shaded],
    ['losses', losses],
  ] as const)
    if (part && part.value > 1)
      complain([...path, key], 'more than all of the light cannot be lost', { expected: 'at most `100 %`' });
}
