import type { Citation } from '../citation.ts';
import { ownChoice, remembered } from './heat-sources.ts';

/** How much of the sun a painted skin takes up, 0 to 1. */
export const absorptances = { white: 0.3, light: 0.5, medium: 0.7, dark: 0.9 } as const;
export const absorptanceCitations: readonly Citation[] = [
  {
    title:
      'Typical envelope values of a building-energy tool: reflectance 0.6 to 0.9 light, 0.4 to 0.6 medium, 0.1 to 0.4 dark',
    readAt: 'https://support.sefaira.com/hc/en-us/articles/205423725-Envelope-Typical-Values-Metric',
    provenance: 'read',
  },
  ownChoice('Of each range the dirtier end, because vans are rarely washed'),
];

/** Sol-air correction of a roof for the clear sky, K: 7 °F. A wall has none. */
export const roofSkyLossK = 3.9;
export const skyLossCitation: Citation = {
  title: 'Encyclopedia page on sol-air temperature: about −7 °F for horizontal surfaces, 0 for vertical ones',
  readAt: 'https://grokipedia.com/page/sol_air_temperature',
  provenance: 'read',
  caution:
    'Its absorptances (0.15, 0.30) are the ratio to the surface coefficient of 3 Btu/h·ft²·°F: misnamed there.',
};

/** Share of the sun through a pane that ends up inside, 0 to 1. */
export const paneSolarShares = {
  'single glass': 0.87,
  'double glass': 0.76,
  'single acrylic': 0.85,
  'double acrylic': 0.75,
} as const;
export const paneSolarCitations: readonly Citation[] = [
  remembered('Solar share of clear single glass 0.87 and double glass 0.76'),
  {
    title:
      'Typical envelope values of a building-energy tool: 0.71 to 0.9 clear single, 0.41 to 0.7 clear double',
    readAt: 'https://support.sefaira.com/hc/en-us/articles/205423725-Envelope-Typical-Values-Metric',
    provenance: 'read',
    caution: 'Windows with their frames.',
  },
  ownChoice('Acrylic a little below glass'),
];

/** What a reflecting cover or blind inside lets through of that. */
export const coveredSolarShare = 0.4;
export const coveredSolarCitation: Citation = ownChoice(
  'A reflecting cover inside keeps out 60 % of the sun',
);

/** Sun of a clear summer noon on each face, W/m². */
export const summerSunWM2 = { roof: 900, wall: 500 } as const;
export const summerSunCitation: Citation = ownChoice(
  'Clear summer sun: 900 W/m² on the roof, 500 W/m² on the side that faces it',
  'For a place and day the sky of the energy rules is better.',
);

/** What a plan's paint is taken for, since it does not say. */
export const usualColour = 'light';

/** How much warmer than outside it may get, K. */
export const summerRiseK = 5;
export const summerRiseCitation: Citation = ownChoice(
  'A living space at most 5 K warmer than the air outside on a hot afternoon',
  'Comfort, not health: where it is hot outside, no flow of air makes it cool.',
);

/** What a fan moves through screens, rain hoods and small openings, of what it blows freely; for one that is not there yet. */
export const usualFanShare = 0.5;
export const usualFanCitation: Citation = ownChoice(
  'A fan that is still to be bought moves half of the flow that is printed for it, because screens and openings hold it back',
  'What the fans of the plan move is worked out.',
);
