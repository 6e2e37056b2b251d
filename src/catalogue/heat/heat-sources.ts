import type { Citation } from '../citation.ts';

/* Citations about heat and vapour that more than one row uses. */

export const surfaceFilms: Citation = {
  title: 'BS EN ISO 6946 and BR 443, table A1, as restated on a page on working out U-values',
  readAt: 'https://www.u-value.com/blog/how-to-calculate-u-values',
  provenance: 'read',
  caution: 'A restatement. Films are conventional: wind and motion make the outer one thinner.',
};

export const elementCatalogue: Citation = {
  title:
    'Spanish building code, catalogue of building elements (CTE): conductivity, heat capacity and vapour resistance by class of material',
  readAt: 'https://github.com/pachi/condensaciones (data/MaterialesDB.ini)',
  provenance: 'read',
  caution: 'Read as carried in an open program. Values of a class, not of one product.',
};

export const handbookHeat: Citation = {
  title:
    'ASHRAE Handbook of Fundamentals 2013, conductivity and heat capacity of insulation, boards and floors, as carried in a general-purpose heat-transfer library',
  readAt: 'https://github.com/CalebBell/ht/blob/0c9af072d3fbaf55d58ced356c9497daef074842/ht/insulation.py',
  provenance: 'read',
  caution:
    'A copy of the table. One of its boards, high-density particleboard, has 1.18 W/(m·K), ten times its kin.',
};

export const designHeat: Citation = {
  title:
    'DIN EN 12524:2000, conductivity and heat capacity of building materials, as carried in a general-purpose heat-transfer library',
  readAt: 'https://github.com/CalebBell/ht/blob/0c9af072d3fbaf55d58ced356c9497daef074842/ht/insulation.py',
  provenance: 'read',
  caution:
    'A copy of the table, not the standard. Its cork tiles (65) and some gases are a thousand times too conductive: misprints, in mW.',
};

export const timberComponents: Citation = {
  title:
    'Austrian catalogue of tested timber components: conductivity, vapour resistance and vapour layers of its sheets',
  readAt: 'https://www.dataholz.eu/en/components/external-wall/detail/kz/awropi25a.htm',
  provenance: 'read',
};

export const vapourStandard: Citation = {
  title: 'EN ISO 10456:2007, tables 3 and 4: vapour resistance of materials and foils',
  provenance: 'memory',
  caution: 'Not looked up: from memory.',
};

export const finiteMetal: Citation = {
  title: 'ISO 13788: vapour resistance factor 100 000 for metal and glass, which tables give as infinite',
  provenance: 'memory',
  caution: 'Not looked up: from memory. It predicts a few grams through metal, to be ignored.',
};

export const moistureStandard: Citation = {
  title: 'ISO 13788, surface and interstitial condensation',
  provenance: 'memory',
  caution: 'Not looked up: clause and value from memory.',
};

export const condensationProgram: Citation = {
  title: 'Open program for condensation by the Spanish building code (ISO 13788), values of its tests',
  readAt: 'https://github.com/pachi/condensaciones (condensaciones/test)',
  provenance: 'read',
  caution: 'Values of a program, not of the code itself.',
};

export const airByTheHour: Citation = {
  title: 'MacKay, Sustainable Energy – without the hot air, page 289 and table E.1: changes of air an hour',
  readAt: 'http://www.withouthotair.com/cE/page_289.shtml',
  provenance: 'read',
  caution: 'For rooms of houses; a van in wind may be leakier.',
};

export const filmsAndLayers = (of: string): Citation => ({
  title: `ISO 6946, surface films and layers added up: ${of}`,
  provenance: 'computed',
});

export const ownChoice = (title: string, caution?: string): Citation =>
  caution === undefined ? { title, provenance: 'own choice' } : { title, provenance: 'own choice', caution };

export const practice = (title: string): Citation => ({
  title,
  provenance: 'common practice',
  caution: 'No source. What the maker says comes first.',
});

export const remembered = (title: string): Citation => ({
  title,
  provenance: 'memory',
  caution: 'Not looked up: from memory.',
});
