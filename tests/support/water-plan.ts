import { plan } from './test-van.ts';

/**
 * A plan with water for sums in the head: a sink and a pump inside, a fresh tank of 100 L inside, and a waste tank of 50 L
 * below the floor. The load bay is 4 m long and 2 m wide.
 */
const fixtures = `fixtures:
  sink: {mass: 4 kg, size: {length: 400 mm, width: 400 mm, height: 200 mm}, at: {from_front: 1 m, from_right: 0 mm, above_floor: 700 mm}}
  pump: {mass: 2 kg, size: {length: 200 mm, width: 200 mm, height: 100 mm}, at: {from_front: 3 m, from_right: 0 mm, above_floor: 0 mm}}
  boiler: {mass: 8 kg, size: {length: 300 mm, width: 300 mm, height: 300 mm}, at: {from_front: 2 m, from_right: 0 mm, above_floor: 0 mm}}`;

const insideTank =
  'size: {length: 500 mm, width: 500 mm, height: 500 mm}, at: {from_front: 3.4 m, from_right: 0 mm, above_floor: 0 mm}';
const outsideTank =
  'size: {length: 500 mm, width: 500 mm, height: 200 mm}, at: {from_front: 1 m, centred: true, above_floor: -300 mm}';

interface Parts {
  /** More keys of the fresh tank, of the waste tank. */
  readonly fresh?: string;
  readonly waste?: string;
  readonly water?: string;
  readonly living?: string;
  readonly rest?: string;
  readonly sleepers?: number;
}

export function waterPlan({
  fresh = '',
  waste = '',
  water = '',
  living = '',
  rest = '',
  sleepers = 2,
}: Parts): string {
  const people =
    sleepers > 0 ? `people: {sleepers: [${Array(sleepers).fill('{stature: 1.7 m}').join(', ')}]}` : '';
  return plan(`${fixtures}
tanks:
  fresh tank: {contents: fresh, holds: 100 L, ${insideTank}${fresh && `, ${fresh}`}}
  waste tank: {contents: waste, holds: 50 L, ${outsideTank}${waste && `, ${waste}`}}
${people}
water: {${water}}
living: {${living}}
${rest}`);
}
