import { plan } from './test-van.ts';

/**
 * The test van with a bed and a stove in one place (`fit.overlap` fails), and so much over the rear axle that it is
 * overloaded (`balance.rear-axle` fails, a check about life and limb): 1000 kg + 820 kg and more, of 1800 kg.
 */
export const waivedPlan = (waivers: string): string =>
  plan(`fixtures:
  bed: {mass: 20 kg, size: {length: 1 m, width: 1 m, height: 1 m}, at: {from_front: 0 m, from_left: 0 m, above_floor: 0 m}}
  stove: {mass: 20 kg, size: {length: 1 m, width: 1 m, height: 1 m}, at: {from_front: 0.5 m, from_left: 0 m, above_floor: 0 m}}
  stone: {mass: 820 kg, at: {from_front: 3 m, centred: true, above_floor: 0 m}}
${waivers === '' ? '' : `waivers:\n${waivers}`}`);

export const overlapWaived =
  '  - {check: fit.overlap, subject: bed and stove, reason: the stove goes out in spring, by: Robin, until: 2026-12-01}';
export const axleWaived =
  '  - {check: balance.rear-axle, reason: it never leaves the yard like this, by: Kit, until: 2027-03-01}';
