/** Shown with everything that vehicle law has a say in. */
export const vehicleLawCaution =
  'A planning aid. The plate, the law of the country and the police scale decide: have the finished van weighed, axle by axle and loaded for a journey, before it goes on the road.';

/** Shown with everything that rests on where the centre of mass is. */
export const balanceCaution =
  "Worked out from the plan for a stiff frame on level ground. Axle and wheel loads on a scale come first, and so do the base vehicle maker's own body-building limits and the load rating of the tyres.";

export const stabilityCaution =
  'An estimate of a rigid van. Springs, tyres and moving water let a real one tip earlier, and no figure here says how a van handles.';
