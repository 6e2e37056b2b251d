import type { Citation } from '../citation.ts';
import { filmsAndLayers, ownChoice } from './heat-sources.ts';

/** What a square metre of something other than an insulated wall loses. */
export interface OpeningLoss {
  readonly id: string;
  /** W/(m²·K), films included. */
  readonly uValue: number;
  readonly citations: readonly Citation[];
}

const row = (id: string, uValue: number, ...citations: readonly [Citation, ...Citation[]]): OpeningLoss => ({
  id,
  uValue,
  citations,
});

const glazingPage: Citation = {
  title:
    'Page of a self-sufficiency guide: single glass 5.6, double 3.4 with 6 mm and 3.0 with 12 mm between',
  readAt: 'https://secrets-of-self-sufficiency.com/u-values-and-double-glazing',
  provenance: 'read',
  caution: 'Without frame.',
};

/** By the kinds of a plan's `panes`. Without the frame and its rubber. */
export const paneLosses: readonly OpeningLoss[] = [
  row('single glass', 5.75, filmsAndLayers('0.13 + 4 mm / 1.0 + 0.04'), glazingPage),
  row('double glass', 3.4, glazingPage),
  row('single acrylic', 5.4, filmsAndLayers('0.13 + 3 mm / 0.2 + 0.04')),
  row(
    'double acrylic',
    2.9,
    filmsAndLayers('0.13 + two of 3 mm / 0.2 + a gap of 10 mm, 0.15, + 0.04'),
    ownChoice('A gap of 10 mm, because hinged panes are thin at the edge and bulge in the middle'),
  ),
];

/** A hatch in the roof loses more than a pane in the wall: heat goes up. */
export const roofHatchLoss = row(
  'roof hatch',
  3.1,
  filmsAndLayers('0.10 + two of 3 mm / 0.2 + a gap of 10 mm, 0.15, + 0.04'),
);

export const doorLosses: readonly OpeningLoss[] = [
  row('bare steel door', 5.9, filmsAndLayers('0.13 + 1 mm / 50 + 0.04')),
  row(
    'lined door',
    2.5,
    ownChoice(
      'A door whose panels are filled and lined between frames of bare steel',
      'Measure or calculate it where the door is large.',
    ),
  ),
];

/** What a mat, blind or shutter adds in front of a pane, m²·K/W. */
export const paneCoverM2KPerW = 0.17;
export const paneCoverCitation = ownChoice(
  'A cover over a pane counts as its gap of air alone, 0.17 m²·K/W',
  'Thick mats are better, badly fitted ones worse.',
);

/**
 * How the living space is closed off from the cab: for each square metre between them. The cab itself loses
 * about 13 W/K for each square metre of that opening (about 2.5 m² of it against 30 W/K of glass, doors, floor and leaks).
 */
export const cabLosses: readonly OpeningLoss[] = [
  row(
    'open',
    13,
    ownChoice(
      'A cab open to the living space: 13 W/(m²·K) of the opening',
      'A guess at a cab with much glass and no covers.',
    ),
  ),
  row('curtain', 5, ownChoice('A curtain: films of both faces, leaks round its edge, then the cab')),
  row('insulated cover', 2, ownChoice('A cover of 20 mm of foam: films, cover, gaps, then the cab')),
  row(
    'bulkhead',
    3,
    filmsAndLayers('1 / (0.13 + 0.13 + 1 / 13) of bare steel between the space and the cab'),
    ownChoice('The cab loses 13 W/K for each square metre of bulkhead'),
  ),
];

const byId = (rows: readonly OpeningLoss[]) => new Map(rows.map((one) => [one.id, one]));
const losses = byId([...paneLosses, roofHatchLoss, ...doorLosses, ...cabLosses]);

export const openingLoss = (id: string): OpeningLoss | undefined => losses.get(id);
