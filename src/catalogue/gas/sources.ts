import type { Citation } from '../citation.ts';

/*
 * Where the values about gas come from. Where an address carries a maker's or a seller's name it is left out, and the
 * title says what kind of page it is. No text of EN 1949, DVGW G 607 or EN 50291 itself was read, only restatements.
 */

const remembered = (title: string, caution: string): Citation => ({
  title,
  provenance: 'memory',
  caution: `From memory, not looked up. ${caution}`,
});

// --- Properties ---

export const propaneState: Citation = {
  title:
    'Saturated propane: equations of an open fluid-property library, after Lemmon, McLinden and Wagner (2009)',
  readAt: 'https://github.com/CoolProp/CoolProp (dev/fluids/n-Propane.json)',
  provenance: 'read',
  caution: 'Pure propane; the coefficients were read, the values computed from them.',
};
export const butaneState: Citation = {
  title: 'Saturated n-butane: equations of an open fluid-property library, after Bücker and Wagner (2006)',
  readAt: 'https://github.com/CoolProp/CoolProp (dev/fluids/n-Butane.json)',
  provenance: 'read',
  caution: 'Pure n-butane; the coefficients were read, the values computed from them.',
};
export const antoineCoefficients: Citation = {
  title:
    'NIST Chemistry WebBook, Antoine coefficients of propane and n-butane, as quoted in three open programs',
  provenance: 'read',
  caution:
    'For propane 2 to 3 % above the equation of state. One of the programs takes exp() where the base is 10. The ranges are from memory.',
};
export const mixturePressures: Citation = {
  title: 'Table of gauge pressures of propane and butane mixtures against temperature, on a seller’s page',
  provenance: 'read',
  caution: 'Zero means no pressure above the atmosphere. Agrees with the equations of state to 4 %.',
};
export const commercialPropane: Citation = {
  title: 'Propane table of a tank maker, gauge pressures of commercial propane, reproduced by a tool club',
  readAt: 'http://www.coxontool.com/index.php/References/PropaneCylinderCapacity',
  provenance: 'read',
  caution: 'Commercial propane stands 8 to 30 % higher above the atmosphere than pure propane.',
};
export const propaneTableUs: Citation = {
  title: 'Table of LP gas properties of the US trade, values of the annex of NFPA 58, on a seller’s page',
  provenance: 'read',
  caution: 'A second US page has 21 591 Btu/lb, density 1.53, 2.3 to 9.5 % and 23.5 volumes of air.',
};
export const propaneTableUsOther: Citation = {
  title: 'Propane data on a page of a US burner maker',
  provenance: 'read',
};
export const buildingServicesTable: Citation = {
  title:
    'Teaching sheet on gas pipe sizing of UK building services: properties of natural gas and LPG (propane)',
  readAt: 'https://www.scribd.com/document/201643355/Gas-Pipe-Sizing',
  provenance: 'read',
  caution: 'Its 95 MJ/m³ over 1.85 kg/m³ is 51.4 MJ/kg, not its own 50.',
};
export const netValueItaly: Citation = {
  title: 'Italian table of the energy of fuels: LPG 46.1 MJ/kg net, 12.81 kWh/kg',
  readAt: 'https://www.ingdemurtas.it/en/tables/energy-value-of-several-fuels/',
  provenance: 'read',
};
export const netValueEstonia: Citation = {
  title: 'Page of an Estonian gas supplier: LPG 12.8 kWh/kg',
  provenance: 'read',
};
export const gasPerKilowatt: Citation = {
  title: 'Pipe tables of a Swiss gas supplier: 1 kW takes 78 g/h',
  provenance: 'read',
};
export const butaneValueAustria: Citation = {
  title: 'Page of an Austrian gas supplier: butane 12.72 kWh/kg',
  provenance: 'read',
};
export const grossValueAustralia: Citation = {
  title: 'Page of an Australian gas supplier on consumption: LPG 49 MJ/kg, 25 MJ/L',
  provenance: 'read',
  caution: 'LPG of any mixture; below the gross value of pure propane.',
};
export const pureHeatingValues: Citation = remembered(
  'Tables of thermochemistry, pure gases: propane 50.35 gross and 46.35 MJ/kg net, n-butane 49.5 and 45.75',
  'The read values for what is sold lie within 1 %.',
);
export const flammableLimitsStandard: Citation = {
  title: 'IEC 60079-20-1:2010, flammable limits and ignition temperatures, as transcribed in an open library',
  readAt: 'https://github.com/CalebBell/chemicals (chemicals/Safety/IS IEC 60079-20-1 2010.tsv)',
  provenance: 'read',
  caution: 'US tables print 2.15 to 2.3 % as the lower limit of propane; the lower is kept.',
};
export const chemicalEquation: Citation = {
  title: 'Chemical equation of complete burning, with molar masses',
  provenance: 'computed',
};
export const idealVapour: Citation = {
  title: 'Ideal gas at 15 °C and one atmosphere, from the molar mass',
  provenance: 'computed',
};
export const butaneViscosity: Citation = remembered(
  'Viscosity of n-butane vapour near 15 °C, 0.0074 cP',
  'That of propane, 0.008 cP, was read.',
);

// --- Filling and off-take ---

export const fillFacts: Citation = {
  title: 'Page of facts about LPG of a gas fitter: filled to 80 to 85 %',
  provenance: 'read',
  caution: 'The lower is kept.',
};
export const tunnelRules: Citation = {
  title: 'Rules of the operator of the Channel Tunnel for fixed gas containers',
  provenance: 'read',
  caution: 'For a passage through the tunnel; they change, ask before travelling.',
};
export const dutchDecree: Citation = {
  title:
    'Besluit brandveilig gebruik en basishulpverlening overige plaatsen, articles 4 and 5, as summarised in a course for builders',
  readAt: 'https://sajenn.eu/nl-camper/cursus-camper-bouwen/gas-en-verwarming/gas-eisen-normen-keurmerken/',
  provenance: 'read',
  caution: 'A summary; the decree was not read.',
};
export const germanOffTake: Citation = {
  title:
    'Glossary of the German LPG trade: vapour that cylinders of 5, 11 and 33 kg and a drum give, by duty',
  provenance: 'read',
  caution:
    'Neither temperature nor filling is printed with it. All cylinders connected count together. Far below what a scaled table of large cylinders gives.',
};
export const hundredPoundTable: Citation = {
  title:
    'Vapour that a 100 lb (45 kg) propane cylinder gives by contents and temperature, in two independent manuals',
  provenance: 'read',
  caution:
    'One cylinder of that size, of steel, in free air. It must not be scaled to a small one; in a locker it gives less.',
};
export const lyingTankGuide: Citation = {
  title:
    'Guide for ASME LP gas containers, vapour of lying tanks, reprinted in a manual of a generator, appendix D',
  provenance: 'read',
  caution: 'Empirical, for air of −18 °C. A factor for warmer air exists and was not read.',
};
export const southAfricanContainers: Citation = {
  title:
    'SANS 10087-1, table 2, containers for each appliance in cold winter conditions, as quoted in a forum',
  readAt: 'http://www.theforumsa.co.za/forums/showthread.php/14801-Connecting-gas-stoves',
  provenance: 'read',
  caution: 'For 9, 19 and 48 kg only, in houses.',
};
export const regulatorInlet: Citation = remembered(
  'EN 16129, regulators: least pressure of the gas before a low-pressure regulator, 0.3 bar',
  'The plate of the regulator tells.',
);
export const offTakePolicy: Citation = {
  title:
    'How the off-take table is read: the next smaller size that is printed, held to be true at 15 °C, less in proportion down to the boiling point at the regulator',
  provenance: 'own choice',
};

// --- Pipes ---

export const lowPressureEquation: Citation = remembered(
  'International Fuel Gas Code / NFPA 54, appendix A.4, low-pressure equation',
  'Its list of variables was read; tables of the code confirm the constants to 2.5 %.',
);
export const steelPipeTable: Citation = {
  title: 'International Fuel Gas Code 2018, table 402.4(28): schedule 40 pipe, propane, drop 0.5 in of water',
  readAt: 'http://online.flipbuilder.com/mewf/kdfo/files/basic-html/page72.html',
  provenance: 'read',
  caution:
    'The rows printed for 80 and 100 ft are what the equation gives at 70 and 80 ft: the labels look shifted, they are left out. An older table is 5 to 6 % lower.',
};
export const copperTubeTable: Citation = {
  title:
    'International Fuel Gas Code 2018, table 402.4(30): semirigid copper tube, propane, drop 0.5 in of water',
  readAt: 'http://online.flipbuilder.com/mewf/kdfo/files/basic-html/page74.html',
  provenance: 'read',
};
export const poleFormula: Citation = {
  title: 'Formula of Pole, on a page of unit conversions',
  readAt: 'http://cfm-calculator.com/hvac/Gas-Flow-Rate-Pole-Formula-Calculator.php',
  provenance: 'read',
  caution: 'Over-predicts the flow of small tubes; it must not pass a tube alone.',
};
export const swissPipeTable: Citation = {
  title: 'Pipe tables of a Swiss gas supplier: copper, 50 mbar, g/h by length',
  provenance: 'read',
  caution:
    'The drop allowed is not printed; by the equation it is 0.8 to 3 mbar. Not for a limit of 1 mbar, and not for 30 mbar.',
};
export const corrugatedTable: Citation = {
  title: 'LPG sizing sheet of a maker of corrugated stainless tube (BS 7838): propane at 2.5 mbar',
  readAt: 'https://www.scribd.com/document/290617186/LPG-Pipe-Sizing',
  provenance: 'read',
  caution: 'One column serves natural gas at 1.0 mbar too, because flow goes with √(drop / density).',
};
export const dropPracticeUk: Citation = {
  title:
    'Article for installers on BS 6891:2005 practice: 1 mbar for natural gas; 2.5 mbar for LPG by a sheet of a tube maker',
  readAt: 'https://www.installeronline.co.uk/how-to-calculate-pipe-size-in-domestic-installations/',
  provenance: 'read',
  caution: 'For houses. Another UK sheet allows 13 mbar; the stricter is kept.',
};
export const dropRuleUs: Citation = {
  title: 'Indiana Administrative Code, 675 IAC 15-2-76 (a) and (d): 0.5 in of water with all appliances on',
  readAt: 'https://regulations.justia.com/states/indiana/title-675/article-15/rule-2/section-76',
  provenance: 'read',
  caution: 'Mobile structures in one US state.',
};
export const dropRuleAustralia: Citation = remembered(
  'AS/NZS 5601: LPG supplied at 2.75 kPa, 0.25 kPa lost to the furthest appliance',
  'No Australian figure was read.',
);
export const workingPressureRule: Citation = {
  title:
    'EN 1949 / DVGW G 607, checklist of a gas inspector: all appliances on still get their working pressure',
  readAt: 'https://wohnmobil-gaspruefung-berlin.de/?p=123',
  provenance: 'read',
  caution: 'No figure for the drop is stated.',
};
export const elbowPractice: Citation = {
  title: 'An elbow counts as about 30 bores of tube, a tee run through its branch as 60',
  provenance: 'common practice',
};

// --- Lockers, cylinders, pipework of vehicles ---

export const lockerVentRule: Citation = {
  title:
    'DVGW G 607 (from 1 May 2005, on EN 1949), free area of the cylinder compartment, restated in two forums',
  readAt: 'https://www.womobox.de/phpBB2/viewtopic.php?f=26&t=2939',
  provenance: 'read',
  caution: 'A restatement; the 100 cm² are also on the pages of two inspectors. The standard was not read.',
};
export const inspectorChecklist: Citation = {
  title: 'Checklist of a gas inspector for EN 1949 / DVGW G 607',
  readAt: 'https://wohnmobil-gaspruefung-berlin.de/?p=123',
  provenance: 'read',
  caution: 'A checklist; the standard was not read.',
};
export const hoseTradePage: Citation = {
  title: 'Trade page on gas hoses: 350 to 450 mm, 750 mm on a slide-out',
  provenance: 'read',
  caution: 'The stricter 400 mm of the checklist is kept.',
};
export const hoseAgePage: Citation = {
  title: 'Austrian workshop page on the gas inspection by G 607, read beside the checklist',
  provenance: 'read',
  caution: 'The ten years stand in the checklist; whether this page repeats them was not noted.',
};
export const compartmentKeyPoints: Citation = {
  title:
    'BS EN 1949:2002, clause 6, key points of the cylinder compartment on a page of a seller of gas equipment',
  provenance: 'read',
  caution: 'The edition of 2002; the page broke off before the height of the hatch.',
};
export const tightnessSummary: Citation = {
  title: 'EN 1949:2011+A1:2013, clause 4.3, as summarised on a page for sharing documents',
  readAt: 'https://123doc.top/document/13748385-bsi-bs-en-01949-2011-a1-2013.htm',
  provenance: 'read',
  caution: 'A summary made by machine: confirm it before relying on it.',
};
export const secondSupplySummary: Citation = {
  ...tightnessSummary,
  title: 'EN 1949:2011+A1:2013, near clause 4.4, as summarised on a page for sharing documents',
};
export const usContainers: Citation = {
  title:
    'Indiana Administrative Code, 675 IAC 15-2-74: containers and their compartment in mobile structures',
  readAt: 'https://regulations.justia.com/states/indiana/title-675/article-15/rule-2/section-74',
  provenance: 'read',
  caution: 'One US state. A training page says that NFPA 1192 allows three cylinders.',
};
export const brusselsRules: Citation = {
  title: 'Brussels mobility administration, conversion to a camper',
  readAt: 'https://mobilite-mobiliteit.brussels/nl/ombouw-tot-kampeerwagen',
  provenance: 'read',
};
export const burnerHole: Citation = {
  title: 'Installation instructions of an absorption refrigerator: hole of at least 13 cm² below the burner',
  readAt: 'https://manualsdump.com/amp/en/manuals/80051/20',
  provenance: 'read',
  caution: 'Instructions of one maker, not a standard.',
};
export const noFloorOpening: Citation = {
  title:
    'DVGW G 607, an older edition, as restated by a self-builder: no opening in the floor where an appliance exhausts below the vehicle',
  readAt: 'http://selbstausbauer.de/Inhalt/Gas/gas.html',
  provenance: 'read',
  caution: 'An older edition; what EN 1949 says was not read.',
};
export const supplyPressureRule: Citation = {
  title: 'DVGW G 607 restated: only 30 mbar for new systems since 1 May 2005, older ones may stay at 50 mbar',
  readAt: 'https://www.womobox.de/phpBB2/viewtopic.php?f=26&t=2939',
  provenance: 'read',
};
export const supplyPressureUk: Citation = {
  title: 'Sheet of a UK tube maker: butane 28 mbar, propane 37 mbar',
  provenance: 'read',
  caution: 'For houses and older caravans; new leisure vehicles have 30 mbar.',
};
export const applianceValveArticle: Citation = {
  title:
    'Article of a caravan maker on DIN EN 1645-1: a shut-off for each appliance, quickly reached; EN 1869 named',
  provenance: 'read',
  caution:
    'The part for caravans; EN 1646-1 is that for motor caravans. It names EN 1869 for extinguishers, which is the standard of fire blankets (from memory).',
};
export const flameFailureRemembered: Citation = remembered(
  'EN 1949 and AS/NZS 5601.2: every burner has a flame failure device',
  'Ask a gas engineer.',
);
export const fluelessRemembered: Citation = remembered(
  'EN 1949 and AS/NZS 5601.2: room heaters are room-sealed; flueless heaters have no place where people sleep',
  'Ask a gas engineer.',
);
export const hiddenJointsRemembered: Citation = remembered(
  'EN 1949: joints of gas pipes stay accessible; none in hidden spaces',
  'Ask a gas engineer.',
);
export const oneAreaPractice: Citation = {
  title: 'Gas appliances, manifold and valves in one area, with a low-level drop-out through the floor there',
  provenance: 'common practice',
  caution: 'Common practice, no source; local codes decide.',
};
export const dropOutDistanceChoice: Citation = {
  title: 'The distance beside an exhaust, used for sources of ignition and drains beside a drop-out too',
  provenance: 'own choice',
};

// --- Flues, alarms, fire ---

export const boatFlues: Citation = {
  title: 'Boat Safety Scheme, part 8 (2002), 8.8: terminals of room-sealed flues 500 mm from openings',
  readAt:
    'https://www.boatsafetyscheme.org/boat-examination-and-certification/non-private-boats/part-8-appliances,-flueing-ventilation/flue-components,-room-sealed-appliances/',
  provenance: 'read',
  caution: 'For boats; the values of EN 1949 and EN 624 for vehicles were not read.',
};
export const monoxideAlarmTimes: Citation = {
  title: 'EN 50291, times to alarm, as summarised by a maker of sensors',
  provenance: 'read',
};
export const monoxideAlarmScope: Citation = {
  title: 'EN 50291-2:2019, scope: alarms for recreational vehicles and craft',
  readAt: 'https://standardsupdate.com/en/cei/cei-en-50291-2_2725404.html',
  provenance: 'read',
};
export const monoxideSiting: Citation = {
  title: 'EN 50292, siting of carbon monoxide alarms, as three instruction books and a forum give it',
  readAt: 'https://electriciansforums.net/threads/is-a-carbon-monoxide-co-detector-needed.104457',
  provenance: 'read',
  caution: 'The instructions of the alarm come first.',
};
export const monoxideGuidelines: Citation = {
  title: 'WHO Air Quality Guidelines for Europe, second edition, in a table of a journal paper',
  readAt: 'https://occup-med.biomedcentral.com/articles/10.1186/s12995-018-0214-9/tables/1',
  provenance: 'read',
};
export const monoxideGuidelines2010: Citation = remembered(
  'WHO guidelines for indoor air (2010), carbon monoxide',
  'Stricter than the older ones at 1 h and 24 h.',
);
export const gasAlarmPractice: Citation = {
  title: 'Gas alarms for LPG sit low, at most 300 mm above the floor, because the gas sinks',
  provenance: 'common practice',
  caution: 'Common practice, no source; the instructions of the alarm come first.',
};
export const smokeAlarmUs: Citation = {
  title: 'Indiana Administrative Code, 675 IAC 15-2-27: smoke alarm outside bedrooms, on or near the ceiling',
  readAt: 'https://regulations.justia.com/states/indiana/title-675/article-15/rule-2/section-27',
  provenance: 'read',
};
export const extinguisherHandbook: Citation = {
  title: 'Handbook of a motor caravan: dry powder, at least 1 kg; a fire blanket near the kitchen',
  provenance: 'read',
  caution: 'National rules differ.',
};
