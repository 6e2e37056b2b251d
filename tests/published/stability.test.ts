// Static stability factor, against published overturning problems: a rigid vehicle overturns on a level curve of radius R
// at v = √(g · R · SSF), and on a side slope of tangent SSF.
import { describe, expect, test } from 'vitest';
import { staticStabilityFactor } from '../../src/calc/stability.ts';
import type { Citation } from '../../src/catalogue/citation.ts';
import { exactly, expectPublished } from './agreement.ts';

const overturningSpeed = (trackM: number, heightM: number, radiusM: number): number =>
  Math.sqrt(9.81 * radiusM * staticStabilityFactor(trackM, heightM));

describe('speed at which a vehicle overturns on a level curve', () => {
  test.each([
    {
      name: 'track 2 m, height 0.8 m, radius 50 m',
      speed: overturningSpeed(2, 0.8, 50),
      value: 24.76,
      source: {
        title: 'wheeled vehicle on a circular track, worked answer',
        readAt:
          'http://clay6.com/qa/52661/a-wheeled-vehicle-travels-around-a-circular-track-of-radius-50-m-the-wheels',
        provenance: 'read',
      } satisfies Citation,
    },
    {
      name: 'track 1.3 m, height 0.6 m, radius 20 m',
      speed: overturningSpeed(1.3, 0.6, 20),
      value: 14.58,
      source: {
        title:
          'linear and angular motion and friction, question 2a/b, worked by the asker of a physics forum',
        readAt: 'https://www.physicsforums.com/threads/linear-and-angular-motion-and-friction-q-2a-b.174374/',
        provenance: 'read',
        caution: 'a student’s working; recomputed here, the printed result is right',
      } satisfies Citation,
    },
  ])('$name', ({ speed, value, source }) => {
    expectPublished(speed, { value, within: 0.005, because: 'printed to 0.01 m/s' }, source);
  });
});

describe('the factor itself', () => {
  const trucking: Citation = {
    title:
      'specification of a static rollover threshold, worked example and cross-check, in a public code repository',
    provenance: 'read',
  };
  test.each([
    { name: 'a high load: track 72 in, height 80 in', trackIn: 72, heightIn: 80, value: 0.45 },
    { name: 'a low flatbed: track 96 in, height 60 in', trackIn: 96, heightIn: 60, value: 0.8 },
  ])('$name', ({ trackIn, heightIn, value }) => {
    expectPublished(staticStabilityFactor(trackIn, heightIn), exactly(value), trucking);
  });

  test('track 2.6 m, height 1.0 m (inputs read, answer recomputed)', () => {
    // University physics question asking for the static stability factor; no answer printed.
    expect(staticStabilityFactor(2.6, 1)).toBeCloseTo(1.3, 12);
  });

  test('the side slope that tips a truck 2.4 m wide with its centre at 2.2 m (answer from memory)', () => {
    const source: Citation = {
      title: 'Giancoli, Physics, chapter 9, problem on the steepest slope for a loaded truck',
      provenance: 'memory',
      caution: 'inputs read on a solutions page, the printed answer of 29° is from memory',
    };
    const slopeDeg = (Math.atan(staticStabilityFactor(2.4, 2.2)) * 180) / Math.PI;
    expectPublished(slopeDeg, { value: 29, within: 0.5, because: 'printed to 1°' }, source);
  });
});
