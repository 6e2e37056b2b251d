import { rearShare } from '../calc/axle-loads.ts';
import { rightShare } from '../calc/wheel-loads.ts';
import type { Body } from './body.ts';
import type { Functional } from './functional.ts';

/** The whole van's mass. */
export const totalMass: Functional<Body> = () => ({ perKg: 1, perKgM: {} });

export const rearAxle =
  (wheelbaseM: number): Functional =>
  ({ position }) => ({ perKg: rearShare(position.x.valueM, wheelbaseM), perKgM: { x: 1 / wheelbaseM } });

export const frontAxle =
  (wheelbaseM: number): Functional =>
  ({ position }) => ({ perKg: 1 - rearShare(position.x.valueM, wheelbaseM), perKgM: { x: -1 / wheelbaseM } });

/**
 * The load on the right wheel of an axle. A mass's lateral moment is shared between the axles as its weight is: the
 * usual assumption for a frame that does not twist and suspensions of the same roll stiffness for their load.
 */
export const rightWheel =
  (axle: Functional, trackM: number): Functional =>
  (body) => {
    const onAxle = axle(body);
    const onRight = rightShare(body.position.y.valueM, trackM);
    return {
      perKg: onAxle.perKg * onRight,
      perKgM: { x: (onAxle.perKgM.x ?? 0) * onRight, y: onAxle.perKg / trackM },
    };
  };

/** Moments about the front axle, the centre line and the datum of heights; over the mass they give the centre. */
export const momentBehindFrontAxle: Functional = ({ position }) => ({
  perKg: position.x.valueM,
  perKgM: { x: 1 },
});
export const momentRightOfCentre: Functional = ({ position }) => ({
  perKg: position.y.valueM,
  perKgM: { y: 1 },
});
export const momentOfHeight: Functional = ({ position }) => ({
  perKg: position.z.valueM,
  perKgM: { z: 1 },
});

/** The same quantity with a constant added to the effect of each kilogram. */
export const plusPerKg =
  <B extends Body>(functional: Functional<B>, perKg: number): Functional<B> =>
  (body) => {
    const effect = functional(body);
    return { ...effect, perKg: effect.perKg + perKg };
  };

export const opposite =
  <B extends Body>(functional: Functional<B>): Functional<B> =>
  (body) => {
    const { perKg, perKgM } = functional(body);
    return { perKg: -perKg, perKgM: { x: -(perKgM.x ?? 0), y: -(perKgM.y ?? 0), z: -(perKgM.z ?? 0) } };
  };
