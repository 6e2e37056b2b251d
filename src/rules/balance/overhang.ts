import { frontAxle, rearAxle, totalMass } from '../../build/quantities.ts';
import { rearShare } from '../../calc/axle-loads.ts';
import { axleLoadMethod } from '../../catalogue/methods.ts';
import { mass } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { balanceCaution } from '../cautions.ts';
import { bay, frontLimit, maxMass, placed, rearLimit } from '../needs.ts';
import { greatest } from '../states.ts';

const text: RuleText = {
  id: 'balance.overhang',
  topic: 'balance',
  title: 'leverage behind the rear axle',
  why: 'What hangs out behind the rear axle loads it with more than its own weight and lifts the front.',
  formula: 'ΔR_r = m·x / L, ΔR_f = m − ΔR_r; behind the rear axle x > L, so ΔR_f is negative',
  sources: [axleLoadMethod],
  cautions: [balanceCaution],
  fix: 'Move what hangs behind the rear axle forward of it; the table shows what each thing costs.',
  place: ['van'],
  informationOnly: true,
};

const tenKg = 10;

export default defineRule({
  ...text,
  needs: { placed, bay, frontLimit, rearLimit, maxMass },
  check: ({ build, facts }) => {
    const { wheelbaseM, bodies } = facts.placed;
    const { behindFrontAxleM, lengthM } = facts.bay;
    const frontLeftKg = facts.frontLimit.value - greatest(build, bodies, frontAxle(wheelbaseM)).value;
    const rearLeftKg = facts.rearLimit.value - greatest(build, bodies, rearAxle(wheelbaseM)).value;
    const totalLeftKg = facts.maxMass.value - greatest(build, build.bodies, totalMass).value;
    const row = (place: string, xM: number): Phrase[] => {
      const rear = tenKg * rearShare(xM, wheelbaseM);
      const front = tenKg - rear;
      const room = Math.min(totalLeftKg, roomOn(frontLeftKg, front), roomOn(rearLeftKg, rear));
      return [say`${place}`, signed(front), signed(rear), say`${mass(Math.max(0, room))}`];
    };
    return {
      findings: [],
      notes: [
        {
          rule: text.id,
          topic: text.topic,
          title: 'What 10 kg more do to the axles',
          detailOnly: false,
          columns: ['put at', 'front axle', 'rear axle', 'room there'],
          rows: [
            row('front of the load bay', behindFrontAxleM),
            row('middle of the load bay', behindFrontAxleM + lengthM / 2),
            row('rear doors', behindFrontAxleM + lengthM),
          ],
          sources: text.sources,
          cautions: text.cautions,
        },
      ],
    };
  },
});

/** How much more can be put where ten kilograms load an axle with this much; what relieves it has no end. */
const roomOn = (leftKg: number, perTenKg: number): number =>
  perTenKg > 0 ? (leftKg * tenKg) / perTenKg : Number.POSITIVE_INFINITY;

const signed = (kg: number): Phrase => (kg < 0 ? say`${mass(kg)}` : say`+${mass(kg)}`);
