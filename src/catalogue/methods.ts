import type { Citation } from './citation.ts';

/** Where the methods of mass and balance come from. Their worked examples are in tests/published. */
export const axleLoadMethod: Citation = {
  title:
    'Body and equipment mounting directives of a light-truck maker (issue 20.10.2020), clause 9.1: axle loads from moments about the front axle',
  readAt: 'easymanua.ls, page 182 of the manual',
  provenance: 'read',
  caution: 'The clause asks for the empty vehicle to be weighed before work begins.',
};

export const uncertaintyMethod: Citation = {
  title: 'JCGM 100:2008 (GUM), 5.1.2 equation (10), 5.2.2, with k = 2',
  readAt: 'http://www.iso.org/sites/JCGM/GUM/JCGM100/C045315e-html/C045315e_FILES/MAIN_C045315e/05_e.html',
  provenance: 'read',
  caution: 'That a stated ± a has the standard uncertainty a/√3 (4.3.7) is from memory.',
};

export const stabilityMethod: Citation = {
  title: "US NHTSA, rollover rule-making, chapter V 'Why choose SSF?', section A: SSF = T / (2 h)",
  readAt: 'http://www.nhtsa.dot.gov/cars/rules/rulings/Rollover/Chapt05.html',
  provenance: 'read',
};

export const centreHeightMethod: Citation = {
  title: 'Height of the laden centre of mass as the mean of heights weighted by mass',
  provenance: 'computed',
};

export const centreInWheelbaseRule: Citation = {
  title:
    'Body builder manual part II for a light commercial vehicle, V1.0 (February 2015), A.2.3, page 268: the centre of mass stays within the wheelbase',
  readAt: 'manualshive.com, body builder manual 2015, page 268',
  provenance: 'read',
};

export const brochureMassCase: Citation = {
  title:
    'A van hire guide and a court case: payload of a 3500 kg van 1620 kg by arithmetic, 490 kg for one weighed empty',
  readAt:
    'https://www.smithbowyerclarke.co.uk/cases/van-company-escapes-with-light-fine-following-55-overload/',
  provenance: 'read',
};
