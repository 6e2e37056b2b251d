import { axleLoadMethod } from '../../catalogue/methods.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { axlePlate, checkAxle, workAxle } from '../axle-load.ts';
import { balanceCaution, vehicleLawCaution } from '../cautions.ts';
import { frontLimit, placed } from '../needs.ts';

const text: RuleText = {
  id: 'balance.front-axle',
  topic: 'balance',
  title: 'front axle load',
  why: 'An overloaded front axle wears tyres and brakes, makes steering heavy, and is illegal by itself.',
  formula: 'R_f = Σ m·(1 − x / L); m mass in kg, x distance behind the front axle in m, L wheelbase in m',
  sources: [axlePlate, axleLoadMethod],
  cautions: [vehicleLawCaution, balanceCaution],
  fix: 'Move heavy things rearward, or leave mass out; what stands ahead of the front axle loads it with more than it weighs.',
  lifeSafety: true,
  place: ['van'],
};

export default defineRule({
  ...text,
  needs: { placed, frontLimit },
  check: ({ build, facts }) => checkAxle(text, 'front', build, facts.placed, facts.frontLimit),
  work: ({ build, facts }) => workAxle('front', build, facts.placed),
});
