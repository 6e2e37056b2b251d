// Height of the centre of gravity by raising one axle. No source found prints a complete numerical example, so the
// published *formulas* are set against each other and against the moment balance they start from.
import { describe, expect, test } from 'vitest';
import {
  centreAboveAxlesByGain,
  centreAboveAxlesByGainShort,
  centreAboveAxlesFrontRaised,
  centreHeightByRaisedAxle,
  ladenCentreHeight,
} from '../../src/calc/centre-height.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { exactly, expectPublished } from './agreement.ts';

/**
 * Reading of the front axle while it is raised, from the moment balance about the standing rear wheel, equation 1 of the
 * vehicle dynamics course notes (read): R_f1 · L · cos θ = W · (b · cos θ − c · sin θ).
 */
function frontWhileRaised(vehicle: {
  totalKg: number;
  wheelbaseM: number;
  bM: number;
  cM: number;
  tiltDeg: number;
}) {
  const { totalKg, wheelbaseM, bM, cM } = vehicle;
  const tilt = (vehicle.tiltDeg * Math.PI) / 180;
  return (totalKg * (bM * Math.cos(tilt) - cM * Math.sin(tilt))) / (wheelbaseM * Math.cos(tilt));
}

describe('three published forms give back the height that the moment balance was fed with', () => {
  test.each([
    { totalKg: 3200, wheelbaseM: 3.6, bM: 1.5, cM: 0.45, tiltDeg: 10 },
    { totalKg: 2350, wheelbaseM: 3.3, bM: 1.7, cM: 0.38, tiltDeg: 11 },
    { totalKg: 3495, wheelbaseM: 4.3, bM: 1.9, cM: 0.62, tiltDeg: 8 },
    { totalKg: 1250, wheelbaseM: 2.5, bM: 1.4, cM: 0.25, tiltDeg: 25 },
    { totalKg: 2900, wheelbaseM: 3.0, bM: 1.45, cM: 0, tiltDeg: 12 },
  ])('$totalKg kg on $wheelbaseM m, tilted $tiltDeg° (inputs ours, formulas read)', (vehicle) => {
    const { totalKg, wheelbaseM, bM, cM, tiltDeg } = vehicle;
    const raiseM = wheelbaseM * Math.sin((tiltDeg * Math.PI) / 180);
    const frontLevelKg = (totalKg * bM) / wheelbaseM;
    const frontRaisedKg = frontWhileRaised(vehicle);
    const wheelRadiusM = 0.34;

    const general = centreHeightByRaisedAxle({
      wheelbaseM,
      raiseM,
      wheelRadiusM,
      totalKg,
      raisedAxleKg: frontRaisedKg,
      centreToStandingAxleM: bM,
    });
    const byGain = centreAboveAxlesByGain({
      wheelbaseM,
      raiseM,
      totalKg,
      gainKg: frontLevelKg - frontRaisedKg,
    });
    const byVanMaker = centreAboveAxlesFrontRaised({
      wheelbaseM,
      raiseM,
      frontLevelKg,
      rearLevelKg: totalKg - frontLevelKg,
      frontRaisedKg,
      rearRaisedKg: totalKg - frontRaisedKg,
    });
    // All three are exact: only the rounding of the arithmetic may remain.
    expect(general - wheelRadiusM).toBeCloseTo(cM, 10);
    expect(byGain).toBeCloseTo(cM, 10);
    expect(byVanMaker).toBeCloseTo(cM, 10);
  });
});

describe('the form that uses the gain of the standing axle', () => {
  const definition: Citation = {
    title: 'derivation of the height from the gain of the lower axle, lines 1 to 8',
    provenance: 'computed',
  };
  const tilt = (10 * Math.PI) / 180;
  const weighing = { wheelbaseM: 3.6, raiseM: 3.6 * Math.sin(tilt), totalKg: 3200, gainKg: 70.53 };

  test('a gain of 70.53 kg at 10° is 450 mm (inputs and answer computed from the definition)', () => {
    const because = 'the gain is given to 0.01 kg, which is 0.03 mm of height';
    expectPublished(centreAboveAxlesByGain(weighing), { value: 0.45, within: 0.00004, because }, definition);
  });
  test('the short form reads high by 1 / cos θ, 1.5 % at 10°', () => {
    const ratio = centreAboveAxlesByGainShort(weighing) / centreAboveAxlesByGain(weighing);
    expect(ratio).toBeCloseTo(1 / Math.cos(tilt), 12);
    expect(ratio).toBeGreaterThan(1.015);
    expect(ratio).toBeLessThan(1.016);
  });
  test('short over exact is wheelbase over its level length: 110 in lifted 18 in spans 108.5 in', () => {
    const source: Citation = {
      title:
        'racing forum discussion "Center of Gravity Height Again", April 2009, as stored in a public text collection',
      provenance: 'read',
    };
    const lifted = { wheelbaseM: 110, raiseM: 18, totalKg: 3000, gainKg: 100 };
    const levelLength = 110 / (centreAboveAxlesByGainShort(lifted) / centreAboveAxlesByGain(lifted));
    expectPublished(levelLength, { value: 108.5, within: 0.05, because: 'printed to 0.1 in' }, source);
  });
});

describe('several parts together', () => {
  const source: Citation = {
    title:
      'bodybuilder instructions for a light commercial chassis, 1st edition 05/2015, 1.15, control at full load',
    provenance: 'computed',
    caution: 'symbols read; the formula follows from the definition and the numbers are not the source’s',
  };
  test('2000 kg at 700 mm and 1200 kg at 1100 mm (answer computed from the definition)', () => {
    const height = ladenCentreHeight([
      { massKg: 2000, heightM: 0.7 },
      { massKg: 1200, heightM: 1.1 },
    ]);
    expectPublished(height, exactly(0.85), source);
  });
});
