import type { DesignAir } from '../build/design-humidity.ts';
import { type DampYear, dampYearOf } from '../build/vapour-walls.ts';
import { saturationPressurePa } from '../calc/air/saturation.ts';
import { type FaceRisk, faceRisk } from '../calc/heat/surface.ts';
import { share, temperatureC } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import { given, missing, type Need } from '../engine/rule.ts';

/* How damp the air inside is taken to be, for everything that may get wet. */

export const humidityCaution =
  'How damp the air gets is a guess: cooking without a lid, wet clothes and closed vents make it worse, and open vents better. A humidity meter tells.';

export const dampYear: Need<DampYear> = (build) => {
  const found = dampYearOf(build);
  return 'months' in found ? given(found) : missing(...found.missing);
};

/** The relative humidity of the room at which a face of that temperature reaches `atFace`; rounded down to whole per cent. */
export function dryEnough(faceC: number, insideC: number, atFace: number): Phrase {
  const humidity = (atFace * saturationPressurePa(faceC)) / saturationPressurePa(insideC);
  const whole = Math.max(0, Math.floor(humidity * 100 + 1e-9)) / 100;
  return say`keep the air at ${share(whole)} relative humidity or less at ${temperatureC(insideC)}, by airing while you cook and sleep`;
}

export interface WorstRisk {
  readonly risk: FaceRisk;
  readonly air: DesignAir;
  readonly insideC: number;
  readonly outsideC: number;
}

/** By day and by night the air differs: whichever leaves the face with least to spare. */
export function worstRisk(factor: number, airs: readonly [DesignAir, ...DesignAir[]]): WorstRisk {
  const [first, ...more] = airs.map(
    (air): WorstRisk => ({
      risk: faceRisk(factor, air, air.outsideC),
      air,
      insideC: air.insideC,
      outsideC: air.outsideC,
    }),
  );
  if (!first) throw new RangeError('There must be some air inside.');
  return more.reduce((worst, each) => (each.risk.marginK < worst.risk.marginK ? each : worst), first);
}
