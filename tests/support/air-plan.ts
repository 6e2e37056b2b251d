import { plan } from './test-van.ts';

/** One low and one high vent that nobody can shut, 2 m apart in height. */
export const twoVents = (lowCm2: number, highCm2: number): string =>
  `low: {in: floor, free_area: ${lowCm2} cm2, closes: false}, high: {in: ceiling, free_area: ${highCm2} cm2, closes: false}`;

/** Two who sleep, 15 °C while they do and 20 °C by day. */
export const twoAsleep = `
people: {sleepers: [{stature: 1.7 m}, {stature: 1.8 m}]}
heat: {inside: 20 degC, asleep: 15 degC}
`;

/** The test van, 12 m² outside and 16 m³ inside, with these vents, and more of the plan. */
export const airy = (
  vents: string,
  rest = twoAsleep,
  van: Readonly<Record<string, string | undefined>> = {},
  codes: string | undefined = 'uk',
): string => plan(`air: {vents: {${vents}}}\n${rest}`, { overall_width: '2 m', ...van }, codes);

/** The same with fans too. */
export const fannedPlan = (vents: string, fans: string, rest = twoAsleep): string =>
  plan(`air: {vents: {${vents}}, fans: {${fans}}}\n${rest}`, { overall_width: '2 m' });

/** A gas hob, without a flue as all are. */
export const hob =
  'hob: {use: cooking, input: 3 kW, heating_value: net, flue: flueless, flame_failure: true, isolating_valve: true}';
