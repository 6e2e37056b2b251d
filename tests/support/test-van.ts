/**
 * A van for sums that can be done in the head: wheelbase 4 m, track 2 m, 1000 kg on each axle with the driver in it,
 * plated at 3000 kg with 1500 kg in front and 1800 kg at the rear. Its load bay is 4 m long and 2 m wide and begins 1 m
 * behind the front axle, so the rear axle is at `from_front: 3 m` and the doors are 1 m behind it. There are no
 * stores, and so no allowance for them.
 */
const usual = {
  max_mass: '3000 kg',
  axle_limits: '{front: 1500 kg, rear: 1800 kg}',
  unladen: '{front: 1000 kg, rear: 1000 kg, from: weighbridge, includes: {driver: true}}',
  wheelbase: '4 m',
  track: '2 m',
  overall_length: '6 m',
  load_bay: '{behind_front_axle: 1 m, length: 4 m, width: 2 m, height: 2 m, floor_above_ground: 0.5 m}',
};

/** Keys to write instead of the usual ones, more keys, or `undefined` for a key to leave out. */
type Changes = Readonly<Record<string, string | undefined>>;

/** The text of a plan: the test van with `rest`, which is YAML at the top level. */
export function plan(rest = '', van: Changes = {}, codes: string | undefined = 'uk'): string {
  const keys = Object.entries({ ...usual, ...van }).filter(([, value]) => value !== undefined);
  return [
    'storystick: 1',
    ...(codes === '' ? [] : [`codes: ${codes}`]),
    ...(keys.length === 0 ? ['van: {}'] : ['van:', ...keys.map(([key, value]) => `  ${key}: ${value}`)]),
    ...(/^stores:/m.test(rest) ? [] : ['stores: {}']),
    rest,
  ].join('\n');
}

/** The plan's text without any region. */
export const withoutCodes = (rest = '', van: Changes = {}): string => plan(rest, van, '');

/** A fixture that is a point on the centre line and on the floor, this far behind the front of the load bay. */
export const fixtureAt = (fromFront: string, mass: string, name = 'box'): string =>
  `fixtures: {${name}: {mass: ${mass}, at: {from_front: ${fromFront}, centred: true, above_floor: 0 m}}}`;

/** A fixture over the rear axle, this far from the right-hand side: 1 m is the centre line, 0 m the wheels. */
export const fixtureOnRight = (fromRight: string, mass: string, name = 'box'): string =>
  `fixtures: {${name}: {mass: ${mass}, at: {from_front: 3 m, from_right: ${fromRight}, above_floor: 0 m}}}`;

/** A fixture in the middle of the wheelbase and of the van, this high above the floor. */
export const fixtureAtHeight = (aboveFloor: string, mass: string, name = 'box'): string =>
  `fixtures: {${name}: {mass: ${mass}, at: {from_front: 1 m, centred: true, above_floor: ${aboveFloor}}}}`;
