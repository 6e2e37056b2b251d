import type { Citation } from '../citation.ts';

/*
 * Where the values of conductors, voltage drop, ampacity and protection come from. Where an address carries a maker's or
 * a seller's name it is left out, and the title says what kind of page it is.
 */

const fromMemory = (title: string, caution: string): Citation => ({ title, provenance: 'memory', caution });

// --- Conductors ---

export const conductorStandard: Citation = {
  title:
    'IEC 60228 (DIN VDE 0295), tables 1 to 3: greatest resistance at 20 °C, as reprinted by three makers and calculators of cables that agree',
  provenance: 'read',
  caution: 'The greatest resistance allowed. The nominal area is a label, not the area of copper.',
};

export const conductorStandardSmall: Citation = {
  title: 'DIN VDE 0295 / HD 383, small flexible conductors, as reprinted by an engineering office',
  provenance: 'read',
};

export const conductorTemperatureTable: Citation = {
  title: 'IEC 60228, factors that bring a measured resistance to 20 °C, as reprinted by a cable maker',
  provenance: 'read',
  caution:
    'They use 0.004 per kelvin where copper has 0.00393. The factor brings a resistance down to 20 °C; to go up, divide by it.',
};

export const annealedCopper: Citation = {
  title:
    'International Annealed Copper Standard: 1/58 Ω·mm²/m at 20 °C; NBS Handbook 100 and Circular 31, as quoted',
  provenance: 'read',
  caution: 'Pure copper of physics handbooks (0.01678) is 2.7 % lower and wrong for cables.',
};

export const americanGauge: Citation = {
  title: 'ASTM B258, American wire gauge: 0.005 in at 36, factor 92 over 39 steps',
  provenance: 'computed',
  caution: 'The definition is remembered; a public table of diameters and areas agrees to four digits.',
};

export const usCodeResistance: Citation = {
  title: 'US National Electrical Code, chapter 9, table 8: stranded copper at 75 °C',
  readAt: 'http://www.sfasoft.com/look/35/Conductor_Properties',
  provenance: 'read',
  caution:
    'At 75 °C, 22 % above the value at 20 °C. Another page prints the figures of solid wire from 14 to 8 under the heading of stranded wire.',
};

export const ulFlexibleResistance: Citation = {
  title:
    'UL 1581 / ASTM: greatest resistance at 20 °C of stranded and flexible AWG, in a manual on cable rating',
  provenance: 'read',
  caution: 'The page prints its cells without gaps; split by hand.',
};

export const saeAreas: Citation = {
  title: "SAE J1128 least areas beside AWG areas, in a marine cable maker's catalogue of 2023",
  provenance: 'read',
  caution:
    'By these areas SAE wire has 3 to 12 % less copper than AWG of the same number; two notes on wire sizes say 5 to 12 %.',
};

export const saeResistance: Citation = {
  title: 'Resistance of plain AWG of the same number, by the ratio of the areas',
  provenance: 'computed',
  caution: 'No table of SAE resistances was read.',
};

export const strandedAutomotive: Citation = {
  title:
    'Cable guidance table of a UK supplier of vehicle wiring: strands of 0.30 mm, resistance at 20 °C and continuous current',
  provenance: 'read',
  caution: 'The ambient temperature and the insulation of the currents are not stated.',
};

export const soldByOutsideSize: Citation = {
  title: 'Page on cables of a travel journal (Australia and New Zealand): cable sold by its outside diameter',
  readAt: 'https://tagoverland.au/ts/cables/',
  provenance: 'read',
  caution: 'Sizes vary by maker; only the outside diameter is fixed.',
};

// --- Ampacity ---

export const boatLawAmpacity: Citation = {
  title: '33 CFR 183.425, table 5 (US boats): continuous current by gauge and insulation, 30 °C',
  readAt: 'http://federal.elaws.us/cfr/title-33/section-183.425',
  provenance: 'read',
  caution: 'Law for petrol boats, used as a guide. Below 50 V it does not look at bundles.',
};

export const boatLawEngineSpace = fromMemory(
  '33 CFR 183.425, table 5, note 1: engine spaces at 50 °C',
  'Remembered; 0.85 for 105 °C follows from tables that were read, 60, 75 and 90 °C agree with the US code.',
);

export const boatCableTable: Citation = {
  title: "A cable maker's table for 105 °C boat cable (UL 1426), by bundle and engine space",
  provenance: 'read',
};

export const marineBundles: Citation = {
  title:
    'Marine wire guide after the US Coast Guard guideline: bundles of three conductors and more, from 50 V',
  provenance: 'read',
  caution: 'Counts conductors. The source asks for it from 50 V only; below, it is on the safe side.',
};

export const usCodeAmpacity: Citation = {
  title:
    'US National Electrical Code 2023, table 310.16: at most three conductors in a raceway or cable, 30 °C',
  readAt: 'https://wiresizes.com/guides/nec-table-310-16',
  provenance: 'read',
  caution: 'An older page has 110 A for 3 AWG and 150 A for 1 AWG at 90 °C (an earlier edition).',
};

export const usCodeAmpacityRemembered = fromMemory(
  'US National Electrical Code, table 310.16, rows 6 and 1/0',
  'Remembered.',
);

export const usCodeAmbient: Citation = {
  title: 'US National Electrical Code, table 310.15(B)(2)(a): ambient factors on 30 °C',
  readAt: 'http://wiresizecalculator.net/tables/correctionfactors.htm',
  provenance: 'read',
};

export const usCodeCount: Citation = {
  title: 'US National Electrical Code 2014, table 310.15(B)(3)(a): more than three conductors',
  readAt: 'https://www.buildmyowncabin.com/nec/nec2014_table310.15(b)(3)(a).html',
  provenance: 'read',
  caution: 'Counts conductors, on top of a table that already holds three.',
};

export const ukSingleCores70: Citation = {
  title: 'BS 7671, table 4D1A (printing of the 16th edition): two single-core 70 °C PVC cables, 30 °C',
  readAt: 'https://vi.scribd.com/document/377981020/Table-4D1A-Single-Core-PVC',
  provenance: 'read',
  caution: 'The methods 4, 3 and 1 of that edition are A, B and C today.',
};

export const ukSingleCores70Remembered = fromMemory('BS 7671, table 4D1A, rows 4 and 25 mm²', 'Remembered.');

export const ukSingleCores90: Citation = {
  title:
    'BS 7671, table 4E1A: two single-core 90 °C thermosetting cables, 30 °C, as reproduced by a distributor',
  provenance: 'read',
};

export const ukHeavyFlexible60: Citation = {
  title:
    'BS 7671, table 4F1A: 60 °C flexible cables, 30 °C, as reproduced by a distributor and a cable maker',
  provenance: 'read',
  caution: 'To 25 mm² one two-core cable, from 35 mm² two single-core cables that touch.',
};

export const ukHeavyFlexible90: Citation = {
  title: 'BS 7671, table 4F2A: 90 °C flexible cables, 30 °C, in a cable maker’s handbook',
  readAt: 'https://www.scribd.com/document/331909248/CurrentRatings-pdf',
  provenance: 'read',
  caution: 'To 25 mm² one two-core cable, from 35 mm² two single-core cables that touch.',
};

export const ukFlexibleCords: Citation = {
  title: 'BS 7671, tables 4F3A and 4F3B: flexible cords, reproduced by an electrical wholesaler',
  provenance: 'read',
  caution:
    'The columns of the page run together and were split by hand. A list for appliance flex has 15 A for 1.5 mm² and 20 A for 2.5 mm².',
};

export const ukReelingDrum: Citation = {
  title: 'BS 7671, table 4F1A, notes 2 and 3: cables on a drum, as reproduced by a distributor',
  provenance: 'read',
};

export const ukAmbient: Citation = {
  title: 'BS 7671, table 4B1 (earlier 4C1): ambient factors on 30 °C, in two handouts',
  readAt: 'https://de.scribd.com/document/245595863/IEE-Wiring-Regulation-Basic-Summary-and-Tables',
  provenance: 'read',
  caution: 'Below 30 °C more cautious than the formula. Rewirable fuses have other factors.',
};

export const ukGrouping: Citation = {
  title: 'BS 7671:2008, table 4C1: cables that touch',
  readAt: 'https://fliphtml5.com/glisk/snup/17th_edition_iee_wiring_regulations/60/',
  provenance: 'read',
  caution:
    'Counts circuits: a pair out and back is one. Cables more than two diameters apart need no factor.',
};

export const ukInThermalInsulation: Citation = {
  title: 'BS 7671, table 52.2 in a student handout: 0.89, 0.81, 0.68 and 0.55 for 50, 100, 200 and 400 mm',
  provenance: 'read',
  caution: 'An earlier edition: the exercise on a heater of 5 kW uses 0.51 for 400 mm.',
};

export const ukInThermalInsulationLater = fromMemory(
  'BS 7671:2008 and later, table 52.2: 0.88, 0.78, 0.63 and 0.51 for 50, 100, 200 and 400 mm, 0.5 from 500 mm (523.9)',
  'Remembered, except 0.51, which an exercise on an electricians’ forum uses. For cables up to 10 mm².',
);

export const smallCraftAmpacity = fromMemory(
  'ISO 10133 and ISO 13297, table A.1: single conductors by area and insulation, 30 °C',
  'Two recollections agree, the standard was not read; the column for 60 °C is left out because recollections differ.',
);

export const aircraftBundles: Citation = {
  title: 'FAA AC 43.13-1B CHG 1, table 11-9: tinned copper in bundles of 33 (9 from 8 AWG), 70 °C, 60 000 ft',
  readAt: 'https://www.landseaskyspace.com/ac4313/p11-23.html',
  provenance: 'read',
  caution: 'Far more severe than a vehicle: a lower bound.',
};

// --- Voltage drop ---

export const boatDropLimits: Citation = {
  title:
    'ABYC E-11 as quoted by a marine cable page, and the list of ISO 10133, 4.8: 3 % and 10 % of the nominal voltage',
  readAt:
    'https://lateststandardsdownload.com/iso-10133-pdf-download-small-craft-electrical-systems-extra-low-voltage-d-c-installations.html',
  provenance: 'read',
  caution: 'For boats, used as a guide.',
};

export const leisureVehicleDrop: Citation = {
  title:
    'DIN EN 1648-2, edition before 2007, as quoted in a forum: 0.2 V on the charging line, 0.8 V elsewhere',
  readAt:
    'https://campingforum.at/campingforum/archive/index.php/t-4364.html?s=d63710f7d1c555c5e196cb558d97ac59',
  provenance: 'read',
  caution:
    'At second hand, and for 12 V; the clause was changed in 2018. Its copper is at 50 °C, its length out and back.',
};

export const buildingDropLimits: Citation = {
  title: 'BS 7671:2008, 525 and appendix 12: 3 % for lighting, 5 % otherwise, as printed in a textbook',
  readAt: 'https://zdroje.elektrika.cz/book/basic-electrical-installation-work/page/313',
  provenance: 'read',
};

export const aircraftDropLimits = fromMemory(
  'FAA AC 43.13-1B, table 11-6: 0.5 V in 14 V and 1 V in 28 V continuously, twice that for a moment',
  'Remembered; the drops used in table 11-7, which was read, agree.',
);

// --- Least sizes ---

export const boatLawLeastSize: Citation = {
  title: '33 CFR 183.425(d) to (g) (US boats): 16 AWG alone, 18 AWG in a sheath',
  readAt: 'http://federal.elaws.us/cfr/title-33/section-183.425',
  provenance: 'read',
  caution: 'Pigtails up to 7 in and electronics below 1 A are let off.',
};

export const smallCraftLeastSize: Citation = {
  title:
    'ISO 10133:2012, 7.3 to 7.8: 1 mm² alone over 200 mm, 0.75 mm² in a multicore cable or within a panel',
  readAt:
    'https://www.mealir.com/iso-10133-2012-pdf-download-small-craft-electrical-systems-extra-low-voltage-d-c-installations.html',
  provenance: 'read',
  caution: 'Withdrawn in 2021 for ISO 13297:2020, which was not read.',
};

export const caravanLeastSize = fromMemory(
  'IEC 60364-7-721 / BS 7671 section 721: 1.5 mm² for mains wiring, 4 mm² for bonding',
  'Remembered.',
);

export const hookUpLeadSize: Citation = {
  title: 'DIN VDE 0100-721:2019 in a trade paper: supply lead 25 m (2 m more or less), 2.5 mm² at 16 A',
  readAt: 'https://elektro.net/115175/elektrische-anlagen-in-caravans-und-motorcaravans',
  provenance: 'read',
};

export const hookUpLeadSizesRemembered = fromMemory(
  'IEC 60364-7-721, table 721.1: 4, 6, 16 and 35 mm² at 25, 32, 63 and 100 A',
  'Remembered.',
);

export const plugFuseFlex: Citation = {
  title: 'UK guidance on testing appliances: flex of 0.5 mm² behind a 3 A plug fuse, 1.25 mm² behind 13 A',
  readAt: 'http://www.pat-testing.info/flex.htm',
  provenance: 'read',
};

export const parkTrailerBonding: Citation = {
  title:
    'US National Electrical Code 2008, article 552.10: bonding of the chassis and of metal parts at least 8 AWG',
  readAt: 'http://solar365.com/green-homes/national-electric-code-2008/park-trailers/page/0/1?page=0,1',
  provenance: 'read',
  caution: 'For park trailers in the US.',
};

// --- Protection ---

export const bladeFuseStandard: Citation = {
  title: 'ISO 8820-3:2015, scope: blade fuses of 32 V and 58 V, up to 100 A, breaking 1000 A',
  readAt:
    'https://standards.iteh.ai/catalog/standards/iso/65ad1633-ed2b-4551-aa66-c8e45fe0dec4/iso-fdis-8820-3',
  provenance: 'read',
};

export const fuseRatingsRemembered = fromMemory(
  'ISO 8820 and data sheets: ratings and breaking capacities of road-vehicle fuses',
  'Remembered; only ratings on which two recollections agree are listed. The data sheet of the fuse at hand decides.',
);

export const inverterManualBreaking: Citation = {
  title: "An inverter maker's manual, tables 2 and 3: 2700 A for ANL fuses, 200 kA for class T",
  provenance: 'read',
  caution: 'The 200 kA of a class T fuse are its figure for alternating current.',
};

export const largeBankBreaking: Citation = {
  title:
    'ABYC E-11 quoted by owners: above 2200 A cranking or 500 Ah, the battery maker’s figure or 20 kA at 125 V DC',
  readAt: 'https://www.trawlerforum.com/threads/lfp-battery-and-battery-bank-fusing.75323/page-3',
  provenance: 'read',
};

export const industrialFuses = fromMemory(
  'IEC 60269-1 and -2: preferred ratings; gG fuses break at least 25 kA of direct current at their DC voltage',
  'Remembered. The DC voltage of a fuse is on its data sheet and lower than its AC voltage.',
);

export const breakerNeedByCranking: Citation = {
  title:
    'ABYC E-11, table V.A, as reproduced by a marine supplier: breakers by cold-cranking amperes, 12 and 24 V',
  provenance: 'read',
  caution: 'For lead batteries. A lithium bank needs its maker’s figure.',
};

export const boatLawFuse: Citation = {
  title:
    '33 CFR 183.455 (US boats): fuse at the source, else within 7 in, 40 in if sheathed; up to 150 % of ampacity below 50 V',
  readAt: 'https://self-law.org/code/us/cfr/t33/s%C2%A7%20183.455',
  provenance: 'read',
  caution: 'From 50 V 100 %, or the next standard rating up to 150 %.',
};

export const smallPowerCraftFuse: Citation = {
  title:
    'BS EN ISO 13590:2018: fuse within 180 mm, 500 mm if sheathed, 900 mm on the battery’s own conductor; up to 150 %',
  readAt: 'https://www.ulstandardspdf.com/bs-en-iso-13590-2018-pdf-free.html',
  provenance: 'read',
};

export const smallCraftFuse: Citation = {
  title: 'BS EN ISO 13297:2021, 12.3 and 13.1.5: chargers protected within 1.8 m; at most 100 % for AC',
  readAt: 'https://content.yudu.com/web/1oc76/0A1qulm/1BSENISO132972021/html/26.html',
  provenance: 'read',
};

export const boatStandardFuseDistance: Citation = {
  title:
    'ABYC E-11 (2004), 11.12.1.1.1, quoted in a forum: 7 in; 72 in sheathed at a battery, 40 in at other sources',
  readAt:
    'http://www.cruisersforum.com/forums/f14/dc-overcurrent-protection-fuses-or-breakers-3193.html?mode=threaded',
  provenance: 'read',
  caution: 'Starter conductors are let off.',
};

export const smallCraftFuseDistanceRemembered = fromMemory(
  'ISO 10133, 8.2: 200 mm, 1800 mm if impractical and sheathed',
  'Remembered.',
);

export const smallGaugeCapsRead: Citation = {
  title:
    'US National Electrical Code, 240.4(D): 15, 20 and 30 A behind 14, 12 and 10 AWG, whatever the ampacity',
  readAt: 'https://wiresizes.com/guides/nec-table-310-16',
  provenance: 'read',
  caution: 'For mains wiring.',
};

export const smallGaugeCapsRemembered = fromMemory(
  'US National Electrical Code, 552.10(E)(1): 6 and 8 A behind 18 and 16 AWG in 12 V wiring',
  'Remembered.',
);

export const continuousMargin = fromMemory(
  'US practice: fuse at least 1.25 times a load of three hours or more',
  'Remembered; two tables of inverter makers that were read use it.',
);

export const discriminationPractice = fromMemory(
  'IEC 60269-2: gG fuses discriminate from 1.6 : 1',
  'Remembered, for one make and type of fuse. Road-vehicle fuses promise nothing; 2 : 1 is common practice.',
);
