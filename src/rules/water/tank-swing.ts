import type { PlacedBody } from '../../build/body.ts';
import { rearShare } from '../../calc/axle-loads.ts';
import { axleLoadMethod } from '../../catalogue/methods.ts';
import { length, mass, share } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { balanceCaution, tankCaution } from '../cautions.ts';
import { placed, tracks } from '../needs.ts';

const text: RuleText = {
  id: 'water.tank-swing',
  topic: 'water',
  title: 'what full tanks do to axles',
  why: 'A tank over or between the axles changes little as it empties; one far out swings the whole van with it.',
  formula:
    'ΔR_r = m·x/L, ΔR_f = m − ΔR_r; sideways m·y/T for the mean track T; m what the tank holds, kg; x behind the front axle, y right of the centre line, L wheelbase, m',
  sources: [axleLoadMethod],
  cautions: [tankCaution, balanceCaution],
  fix: 'Move tanks between the axles and to the lighter side.',
  place: ['tanks'],
  informationOnly: true,
};

interface Full {
  readonly name: string;
  readonly body: PlacedBody;
  readonly fullKg: number;
}

/** What fresh and waste tanks hold, where it is known. */
const contents: Need<readonly Full[]> = (build) => {
  const found = placed(build);
  if (!found.ok) return found;
  const full = found.value.bodies.flatMap((body): Full[] => {
    const { variable } = body;
    return variable && (variable.group === 'fresh' || variable.group === 'waste')
      ? [{ name: variable.name, body, fullKg: variable.mostKg }]
      : [];
  });
  return full.length > 0 ? given(full) : missing('tanks');
};

export default defineRule({
  ...text,
  needs: { placed, tracks, contents },
  check: ({ facts }) => {
    const { wheelbaseM } = facts.placed;
    const trackM = (facts.tracks.frontM + facts.tracks.rearM) / 2;
    return {
      findings: [],
      notes: [
        {
          rule: text.id,
          topic: text.topic,
          title: 'What the water of each tank does, full against empty',
          detailOnly: false,
          columns: ['tank', 'holds', 'front axle', 'rear axle', 'of it in front', 'sideways', 'its height'],
          rows: facts.contents.map(({ name, body, fullKg }): Phrase[] => {
            const rear = rearShare(body.position.x.valueM, wheelbaseM);
            const sideKg = (fullKg * body.position.y.valueM) / trackM;
            return [
              say`${name}`,
              say`${mass(fullKg)}`,
              signed(fullKg * (1 - rear)),
              signed(fullKg * rear),
              say`${share(1 - rear)}`,
              sideways(sideKg),
              say`${length(body.position.z.valueM)}`,
            ];
          }),
          text: say`Sideways is how much more stands on the wheels of that side than half of it. Heights are above the floor.`,
          sources: text.sources,
          cautions: text.cautions,
        },
      ],
    };
  },
});

const signed = (kg: number): Phrase => (kg < 0 ? say`${mass(kg)}` : say`+${mass(kg)}`);

/** Half a kilogram is on neither side. */
const sideways = (kg: number): Phrase =>
  Math.abs(kg) < 0.5 ? say`even` : say`${mass(Math.abs(kg))} ${kg > 0 ? 'right' : 'left'}`;
