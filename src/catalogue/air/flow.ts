import { orificeCode, stackAnswer, windAndStack } from './sources.ts';

/** How openings let air through, without unit. */
export const dischargeRows = {
  'sharp-edge': { value: 0.61, citations: [orificeCode] },
  'two-openings-stack': {
    value: 0.65,
    citations: [
      stackAnswer,
      { title: 'ASHRAE: 0.65 for two openings', provenance: 'memory', caution: 'Not looked up.' },
    ],
  },
  'wind-square-on': {
    value: 0.5,
    citations: [
      {
        title: 'ASHRAE: 0.5 to 0.6 for wind square on an opening',
        provenance: 'memory',
        caution: 'Not looked up.',
      },
      windAndStack,
    ],
  },
  'wind-aslant': {
    value: 0.25,
    citations: [
      { title: 'ASHRAE: 0.25 to 0.35 for wind aslant', provenance: 'memory', caution: 'Not looked up.' },
      windAndStack,
    ],
  },
} as const;

/** How fans are put to work. */
export const fanPairPractice = {
  title: 'Two roof fans, one drawing in and one blowing out at opposite ends, make a through draught',
  provenance: 'common practice',
  caution: 'No source.',
} as const;
