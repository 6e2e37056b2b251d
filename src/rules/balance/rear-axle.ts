import { axleLoadMethod } from '../../catalogue/methods.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { axlePlate, checkAxle, workAxle } from '../axle-load.ts';
import { balanceCaution, vehicleLawCaution } from '../cautions.ts';
import { placed, rearLimit } from '../needs.ts';

const text: RuleText = {
  id: 'balance.rear-axle',
  topic: 'balance',
  title: 'rear axle load',
  why: 'An overloaded rear axle overheats tyres and brakes, and lifts weight off the wheels that steer. It is the limit that conversions break first.',
  formula:
    'R_r = Σ m·x / L; m mass in kg, x distance behind the front axle in m (beyond L behind the rear axle), L wheelbase in m',
  sources: [axlePlate, axleLoadMethod],
  cautions: [vehicleLawCaution, balanceCaution],
  fix: 'Move heavy things forward, most of all what hangs behind the rear axle, or leave mass out.',
  lifeSafety: true,
  place: ['van'],
};

export default defineRule({
  ...text,
  needs: { placed, rearLimit },
  check: ({ build, facts }) => checkAxle(text, 'rear', build, facts.placed, facts.rearLimit),
  work: ({ build, facts }) => workAxle('rear', build, facts.placed),
});
