import type { Citation } from '../citation.ts';
import { leftOut } from '../citing.ts';

/*
 * Where the figures of batteries and of charging come from. An address that carries a maker's or a seller's name is cut
 * or left out, and the title says what kind of page it is.
 */

const fileIndex = 'Read through a file index, which keeps no address.';

// --- Batteries ---

export const offGridBankGuide: Citation = {
  title: 'Open off-grid guide (New Hampshire), page on battery bank design and maintenance, citing makers',
  provenance: 'read',
  caution: `${fileIndex} Its 1 % a °F and its 80 Ah of 100 at 0 °C contradict each other; neither is used.`,
};

export const chemistryComparison: Citation = {
  title: 'Compiled comparison of lead-acid and lithium-ion batteries, with battery makers’ pages',
  readAt: 'https://docslib.org/doc/4435027/lead-acid-vs-lithium-ion-battery-comparison',
  provenance: 'read',
  caution: 'Sources disagree: energy efficiency of lead 70 to 85 %.',
};

export const lfpVoltageCharts: Citation = {
  title:
    'Two reference pages and a chart on the voltage of lithium iron phosphate: 3.2 V a cell, 12.8 V for four',
  readAt: 'https://lifepo4batteryhq.com/?p=140',
  provenance: 'read',
  caution:
    '13.2 V at rest is 40 % in one table and 80 % in another: voltage tells nothing about the charge between 20 and 90 %.',
};

export const leadCellDefinition: Citation = {
  title: 'A lead cell counts as 2 V by convention, a 12 V battery has six',
  provenance: 'computed',
};

export const lowestVoltagePractice: Citation = {
  title:
    'Design at the low end of the discharge: 10.5 V for a lead battery of 12 V, 12.0 V for lithium iron phosphate',
  provenance: 'memory',
  caution: 'Not looked up. 12.0 V is 10 % of charge in one read table.',
};

export const monitorManual: Citation = {
  title:
    "Battery monitor owner's manuals, p. 26 and 27: exponents 1.25 for flooded, 1.11 for gel and AGM; table of percentages; no gain below the 20 h rate",
  readAt: 'https://manualsdump.com (cut: the rest of the address carries the maker’s name)',
  provenance: 'read',
  caution: 'The printed table truncates some cells and is within 1 percentage point of its own formula.',
};

export const rememberedExponents: Citation = {
  title:
    'Peukert exponents: lithium iron phosphate 1.02 to 1.06, AGM 1.05 to 1.15, gel 1.10 to 1.25, flooded 1.2 to 1.6',
  provenance: 'memory',
  caution: 'Not looked up.',
};

export const lfpNoPeukert: Citation = {
  title: 'Lithium iron phosphate: no loss of capacity to the current is counted',
  provenance: 'own choice',
  caution: 'Remembered exponents are 1.02 to 1.06, which costs a few per cent at high currents.',
};

export const vrlaDataSheet = leftOut(
  "Battery maker's data sheet, sealed lead battery of 12 V and 40 Ah",
  'One battery of one maker, whether AGM or gel is not said.',
);

export const acceptanceArticle: Citation = {
  title:
    'Cruising magazine, charge acceptance 25 % of the capacity for flooded, 30 % for gel, 40 % for AGM; chargers of 10 to 25 %; hot alternators give a quarter less',
  readAt: 'https://bwsailing.com/cc/2017/08/smart-charging',
  provenance: 'read',
  caution: 'For boats.',
};

export const leadChargerNotes = leftOut(
  'Industrial charger maker’s questions and answers and a battery maker’s page: 0.1 of the capacity for lead, up to 0.3 for AGM; 0.2 to 0.5 for lithium iron phosphate, 0.2 for a long life',
);

export const chargerMinimumBattery = leftOut(
  'Battery charger manual, 4.3.3: at least 140 Ah for a charger of 70 A, that is 0.5 of the capacity',
);

export const lfpRateTables: Citation = {
  title: 'Operation manual of a 48 V lithium iron phosphate module, tables 4.3 and 4.4, p. 12',
  readAt: 'https://manualshive.com (cut: the rest of the address carries the maker’s name)',
  provenance: 'read',
  caution: 'One maker. The battery’s own table comes first. The temperature is that of the cells.',
};

export const selfDischargeBook = leftOut(
  "A power electronics maker's book, 2.5.9 and 2.5.10, p. 19: self-discharge and float life by type, halved for each 10 K",
  'The order of the rows is read from running text.',
);

export const selfDischargeAgmNote = leftOut(
  "Battery maker's support note on AGM in storage: 2 % a month at 25 °C, half as much again at 35 °C",
);

export const rememberedSelfDischarge: Citation = {
  title: 'Self-discharge of lithium iron phosphate 1 to 3 % a month',
  provenance: 'memory',
  caution: 'Not looked up.',
};

export const rememberedResistance: Citation = {
  title:
    'Internal resistance of a 12 V battery of 100 Ah: AGM 3 to 6, flooded 4 to 10, lithium iron phosphate with its switch 5 to 30 milliohms',
  provenance: 'memory',
  caution: 'Not looked up. Falls as the capacity grows. Resistance by alternating current differs.',
};

export const batteryFaq: Citation = leftOut(
  'Deep-cycle battery questions and answers, two reprints: golf cart batteries 225 cycles at 80 % and 750 at 50 % depth',
);

export const offGridSeller: Citation = leftOut(
  'Off-grid seller’s article: renewable deep-cycle batteries 1500 cycles at 50 %, 3400 at 20 % depth',
);

export const lifeByChemistryPaper: Citation = {
  ...chemistryComparison,
  title: `${chemistryComparison.title}: cycles 1200 (flooded, 50 %), 1000 (sealed, 50 %), 1900 (lithium, 80 %)`,
};

export const compensationArticle: Citation = {
  title: 'Battery knowledge article, reprinted: 3 mV a cell and kelvin from 25 °C; float 2.30 V a cell',
  readAt: 'https://konferencjaskd2024.pl/15_09_14_5177.html',
  provenance: 'read',
  caution: 'Another article counts from 27 °C.',
};

export const chargeTimeArticle = leftOut(
  'Battery seller’s article: 100 Ah at 10 A and 80 % efficiency take 12.5 h; losses 5 % for lithium, 15 % for lead',
);

// --- Gas of lead batteries ---

export const ventilationStandard: Citation = {
  title:
    'EN 50272-2:2001, clause 8 (EN 62485-2 has the same form), as a public calculation page reproduces it',
  readAt: 'https://estimation.tools/ventilation/battery_ventilation.php',
  provenance: 'read',
  caution: 'For stationary batteries, used as a guide; lithium is outside of its scope.',
};

export const tractionStandard = leftOut(
  "EN 50272-3 and IEC 62485-3, as battery makers' pages quote them: gassing current for each 100 Ah",
  'A newer reprint has 0.055 instead of 0.05, which is not the product of its own three factors.',
);

export const usBatteryCompartment: Citation = {
  title: 'NEC 2008, 552.10: battery compartment vented by 1100 mm² at top and bottom, within 50 mm of them',
  readAt: 'http://solar365.com/green-homes/national-electric-code-2008/park-trailers/page/0/1?page=0,1',
  provenance: 'read',
  caution: 'US rule for park trailers, written for lead batteries.',
};

export const hydrogenLimits: Citation = {
  title:
    'Open off-grid guide citing NFPA 1 and IEEE 1635: hydrogen burns from 4 to 75 %; design limit 1 % by volume',
  provenance: 'read',
  caution: fileIndex,
};
