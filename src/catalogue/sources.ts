import type { Citation } from './citation.ts';

/*
 * Citations used by more than one row. Where a manual was read on a page whose address carries a maker's name, the
 * address is cut to the site and the page.
 */

export const designValues: Citation = {
  title:
    'DIN EN 12524:2000, table of design values of building materials, as carried in a general-purpose heat-transfer library',
  readAt: 'https://github.com/CalebBell/ht/blob/0c9af072d3fbaf55d58ced356c9497daef074842/ht/insulation.py',
  provenance: 'read',
  caution:
    'A copy of the table, not the standard, which EN ISO 10456 has replaced. The densities are design values of a class of material, not of one product.',
};

export const handbookValues: Citation = {
  title:
    'ASHRAE Handbook of Fundamentals 2013, densities of insulation, boards and floors, as carried in a general-purpose heat-transfer library',
  readAt: 'https://github.com/CalebBell/ht/blob/0c9af072d3fbaf55d58ced356c9497daef074842/ht/insulation.py',
  provenance: 'read',
  caution: 'A copy of the table. Values such as 32.5 and 97.5 look like the middles of ranges.',
};

export const buildingModelValues: Citation = {
  title: 'Open building-simulation library (Modelica), data record of insulation materials',
  readAt: 'https://github.com/ibpsa/modelica-ibpsa (IDEAS/Buildings/Data/Insulation.mo)',
  provenance: 'read',
  caution: 'The library names no source and no product for each row.',
};

export const servicesGuide: Citation = {
  title: 'CIBSE Guide A, tables 3.36 and 3.37 (insulation and floor coverings)',
  readAt: 'scribd.com, document 852732613',
  provenance: 'read',
  caution: 'Read in an uploaded copy.',
};

export const buildingElementCatalogue: Citation = {
  title: 'Spanish building code, catalogue of building elements (CTE), wood and boards by density class',
  readAt: 'https://github.com/pachi/condensaciones (data/MaterialesDB.ini)',
  provenance: 'read',
  caution: 'Read as carried in an open program. The value given is the middle of the class.',
};

export const windowFrameValues: Citation = {
  title: 'Design values from prEN ISO 10077-2:2000 and prEN 12524:1998 (frames and glazing)',
  readAt: 'http://userdeck.net/g/EBDhYiO3Yj94XLgR/articles/1222-9043-0506-material-properties',
  provenance: 'read',
  caution: 'Drafts that came before the published standards.',
};

export const seasonedTimber: Citation = {
  title: 'Table of the mass of seasoned timber',
  readAt: 'http://www.simetric.co.uk/si_wood.htm',
  provenance: 'read',
};

export const dryToWetTimber: Citation = {
  title: 'Table of wood density from dry (12 to 18 % moisture) to wet (60 to 80 %)',
  readAt: 'https://www.metric-bolt-torque.com/materials/wood-density/',
  provenance: 'read',
};

export const timberVariation: Citation = {
  title:
    'USDA Wood Handbook: a spread of about 10 % within one species is normal (as quoted on a page on wood density)',
  readAt: 'http://www.fantastic-floor.com/WoodDensity.aspx',
  provenance: 'read',
  caution: 'A quotation, not the handbook itself.',
};

export const birchPlywoodDatasheet: Citation = {
  title:
    "An importer's birch plywood datasheet (EN 13986 class E1, 1.4 mm veneers), sheets of 1220 x 2440 mm",
  readAt:
    'https://vdocuments.site/birch-plywood-datasheet-l-birch-plywood-datasheetl-average-lower-limit-upper.html',
  provenance: 'read',
  caution: 'Its sheet masses follow the nominal thickness; all ten were recomputed and agree within 0.05 kg.',
};

export const foamCoreClasses: Citation = {
  title: "A core maker's chart of the density classes of rigid PVC foam",
  readAt: 'https://www.pvc-foam.com/pvc-foam-core-density-chart-for-composite-design.html',
  provenance: 'read',
};

export const foamByUse: Citation = {
  title: 'A guide to polyurethane foam density by use, with the ranges for mattresses',
  readAt: 'https://www.blendpolyol.com/pu-foam-density-spec-by-application/',
  provenance: 'read',
  caution: "A supplier's page.",
};

const massesRegulation = 'Commission Regulation (EU) No 1230/2012 (masses and dimensions)';
const replaced =
  'Replaced in the EU by (EU) 2021/535, annex XIII (not read); still assimilated law in Great Britain.';

export const steeredAxleShareRule: Citation = {
  title: `${massesRegulation}, annex I, part A, points 2.3 and 2.4, as quoted in a bilingual law concordance`,
  readAt:
    'http://wordscope.be/anglais/francais/bearing+axle.html ; http://wordscope.be/anglais/francais/Maximum+mass.html ; https://legislation.gov.uk/eur/2012/1230/contents/data.html',
  provenance: 'read',
  caution: `The sentences were read in the concordance, the point numbers only as headings; which vehicle category each share belongs to was not confirmed. ${replaced}`,
};

export const axleLimitsSumRule: Citation = {
  title: `${massesRegulation}, annex I, part A, point 2.1`,
  readAt: 'https://legislation.gov.uk/eur/2012/1230/contents/data.html',
  provenance: 'memory',
  caution: `Only the heading was read; the wording is from memory. ${replaced}`,
};

export const minimumPayMassRule: Citation = {
  title: `Minimum mass for personal effects, M = 10 N + 10 L, in the manual of a motor caravan (German); ${massesRegulation}, annex I, part A, point 2.6.4.1.2`,
  readAt: 'gebruikershandleiding.com, page 32 of the manual',
  provenance: 'read',
  caution: `The formula was read in the manual; that this is the clause it comes from is from memory (its heading was read). ${replaced}`,
};

export const passengerMassRule: Citation = {
  title: `${massesRegulation}, annex I, part A, point 2.6.2.1`,
  readAt: 'https://legislation.gov.uk/eur/2012/1230/contents/data.html',
  provenance: 'read',
  caution: `A convention of type approval; real people weigh more. ${replaced}`,
};

export const runningOrderTolerance: Citation = {
  title: `${massesRegulation}, annex I, appendix 2, points 2.1 and 2.2 (permitted deviations of the mass in running order)`,
  readAt: 'https://gesetze.legal/eu/vo_eu_2012_1230/anlage_2',
  provenance: 'read',
  caution: `Read in German. It allows 5 % for special purpose vehicles, such as motor caravans, and 3 % for other vehicles. ${replaced}`,
};

export const occupantCapacityRule: Citation = {
  title:
    'US NHTSA final rule, 72 FR 68442 (4 December 2007), occupant and cargo carrying capacity of motor homes: 68 kg (150 lb) a seat',
  readAt:
    'https://regulations.justia.com/regulations/fedreg/2007/12/04/E7-22962.html ; https://nhtsa.gov/es/interpretations/08-003469drn-rev',
  provenance: 'read',
};

export const loadSideGuide: Citation = {
  title: 'Body and equipment mounting directives of a light truck (issue 20.10.2020), clause 4.2.1',
  readAt: 'easymanua.ls, page 41 of the manual',
  provenance: 'read',
  caution:
    'A guide for one truck. It allows 4 % over half the axle load on one wheel: 52 % of the axle load, a left-right difference of 4 % of the axle load.',
};

export const vanConverterGuide: Citation = {
  title: 'Converter guide of a small electric van (2020-05-12), general information, page 14',
  readAt: 'easymanua.ls, page 15 of the manual',
  provenance: 'read',
  caution: "Limits of one model; the base vehicle's own guide comes first.",
};

export const reweighingRule: Citation = {
  title:
    'AMC1 CAT.POL.MAB.100(b), ED Decision 2014/015/R (aircraft: when cumulative changes call for a new weighing)',
  readAt:
    'https://www.easa.europa.eu/en/document-library/easy-access-rules/online-publications/easy-access-rules-air-operations?erules-id=ERULES-1963177438-12930',
  provenance: 'read',
  caution: 'A rule for aircraft, used here as a yardstick only.',
};

export const drivingLicenceRegulationsGb: Citation = {
  title:
    'Motor Vehicles (Driving Licences) Regulations 1999 (SI 1999/2864), schedule 2, categories B, C1 and C',
  readAt:
    'https://www.legislation.gov.uk/uksi/1999/2864/schedule/2?view=extent ; https://www.legislation.gov.uk/uksi/1999/2864/schedule/2/made?view=extent',
  provenance: 'read',
  caution: 'Extends to England, Wales and Scotland.',
};

export const licenceBefore1997: Citation = {
  title:
    'Licence category pages of training and haulage firms: a car test passed before 1 January 1997 includes C1',
  readAt:
    'https://backlinelogistics.co.uk/driving-licence-categories/ ; http://www.sussexmetroltd.co.uk/categories.html',
  provenance: 'read',
  caution:
    'Secondary pages. The licence itself lists C1 if it is held; it lapses with some renewals and conditions.',
};

export const licenceDirective2006: Citation = {
  title:
    'Directive 2006/126/EC, article 4: category B as quoted on a Cypriot page, C1 and C in its Greek transposition',
  readAt: 'http://i-drive.com.cy/?p=287 ; http://dromeasdrive.gr (pages on categories C1 and C)',
  provenance: 'read',
  caution: 'Repealed by Directive (EU) 2025/2205, which member states have yet to transpose.',
};

export const licenceDirective2025: Citation = {
  title:
    'Directive (EU) 2025/2205 of 22 October 2025 on driving licences, and a trade page on the agreement that led to it',
  readAt:
    'https://lexaris.de/book/version/documentflat/head/10284539 ; https://autocaravanasveleta.com (page on the provisional agreement)',
  provenance: 'read',
  caution: 'Title and date were read in the law database; what it says of 4250 kg only on the trade page.',
};

export const licenceClassesAu: Citation = {
  title: 'Western Australia licensing table and South Australian page on light and medium rigid vehicles',
  readAt:
    'http://www.dpi.wa.gov.au/licensing/yourlicence/9553.asp ; https://www.mylicence.sa.gov.au/my-heavy-vehicle-licence/light-or-medium-rigid-vehicle/',
  provenance: 'read',
  caution: 'States share the classes but not every condition.',
};

export const commercialVehicleGroups: Citation = {
  title: '49 CFR 383.91, commercial motor vehicle groups',
  readAt: 'https://ecfr.io/Title-49/Section-383.91',
  provenance: 'read',
  caution:
    'It is a rule for commercial vehicles; that it does not reach a private motor home, and that some states ask for more, is from secondary pages and memory.',
};
