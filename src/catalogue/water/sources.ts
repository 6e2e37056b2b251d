import type { Citation } from '../citation.ts';
import { leftOut, remembered } from '../citing.ts';

/*
 * Where the figures of pipes, pumps, hot water, drains, tanks and frost come from. An address that carries a maker's
 * or a seller's name is left out, and the title says what kind of page it is.
 */

const ownChoice = (title: string, caution: string): Citation => ({
  title,
  provenance: 'own choice',
  caution,
});

// --- Pipe flow ---

export const colebrookPaper: Citation = {
  title: 'Colebrook–White as printed in D. Clamond, Ind. Eng. Chem. Res. 48 (2009), eq. 1',
  readAt: 'https://datapdf.com/efficient-resolution-of-the-colebrook-equation-industrial.html',
  provenance: 'read',
  caution: 'Some books print 3.71 or 3.7065 in place of 3.7, which changes the fifth figure.',
};

export const frictionBenchmark: Citation = {
  title: 'Test values of an open library of fluid dynamics, tests/test_friction.py',
  readAt: 'https://github.com/CalebBell/fluids (tests/test_friction.py)',
  provenance: 'read',
};

export const surgeProblem = leftOut(
  'Book on surge analysis, chapter 0, problem 0.2: 6 m of 0.3 m pipe at 2 m/s',
  'Its friction factor is rounded to 0.0169 before use.',
);

export const laminarQuestion = leftOut(
  'Examination question with a printed solution: 0.01 m³/s in a 0.1 m pipe at Re 800',
  'The Reynolds number is given and does not suit water (1.3e5).',
);

export const waterFormulation: Citation = {
  title:
    'IAPWS-95 (density, heat capacity) and IAPWS R12-08 (viscosity) at 101.325 kPa, evaluated with a general-purpose library',
  provenance: 'computed',
};

export const networkManual = leftOut(
  'Table of loss coefficients in a water-network modelling manual',
  'Tables of coefficients differ widely; the maker of the fitting comes first.',
);

export const networkManualRemembered = remembered(
  'Loss of an exit into a tank or the open air, K = 1',
  ' It follows from losing the whole velocity head.',
);

export const textbookCompilation: Citation = {
  title: 'Tables of loss coefficients, Hazen–Williams C and roughness compiled from textbooks',
  readAt: 'https://www.lmnoeng.com/surface.htm',
  provenance: 'read',
  caution: 'Tables of coefficients differ widely; an angle valve is 2 here and 5 in the other table.',
};

export const pushFitElbow = remembered(
  'Small push-fit plastic elbows lose more than the tables say: at least K = 1.5',
  ' The insert narrows the bore.',
);

export const ballValveAsGate = ownChoice(
  'A full-bore ball valve is taken as a gate valve',
  'Neither table has a ball valve. One with a reduced bore loses far more.',
);

export const plasticRoughness = remembered(
  'Roughness of PE-X tube, 0.007 mm',
  ' The textbook table says 0 for plastic, which gives less loss.',
);

export const hoseRoughness = ownChoice(
  'Roughness of smooth hose, 0.01 mm',
  'Spiral-reinforced suction hose is far rougher.',
);

export const hazenWilliamsGlossary = leftOut(
  'Irrigation glossary, Hazen–Williams formula; C 150 for polyethylene',
  'For pipes above about 50 mm: it gives a sixth less than Darcy–Colebrook in 10 mm tube at 10 °C.',
);

// --- Pipe sizes ---

export const copperSizes = leftOut(
  'A tube maker’s table of EN 1057 R250 sizes, and EN 1057 table 1, recommended walls',
  'Volumes and bores are computed from diameter and wall.',
);

export const copperSizesRemembered = remembered('EN 1057, recommended walls');

export const plasticSizesRemembered = remembered(
  'EN ISO 15875-2 and BS 7291, common sizes of PE-X and plastic tube',
  ' Walls differ between makes and pressure classes; measure the bore or look it up.',
);

export const hotWaterProblemSet: Citation = {
  title:
    'US DOE building science education, problem set on WaterSense criteria, table 1 (2009 International Plumbing Code, table E202.1)',
  readAt: 'https://bsesc.energy.gov/problem-sets/calculating-watersense-criteria-problem-set',
  provenance: 'read',
  caution:
    'Up to 4 % below what the bores give, so the volume is computed from the bore. The bore 0.824 in for 3/4 in copper M is a slip: 0.811 in gives the printed 3.43 oz/ft.',
};

// --- Hot water ---

export const hotWaterDelivery: Citation = {
  title:
    'US EPA WaterSense New Home Specification 1.2 (2014), section 3.3, as quoted by a national laboratory',
  readAt: 'https://basc.pnnl.gov/information/watersense-hot-water-delivery-requirements',
  provenance: 'read',
  caution: 'For houses on the mains: a 60 litre tank asks for far less.',
};

export const smallTankDeadLeg = ownChoice(
  'Half a litre to a litre held between heater and outlet',
  'A house may waste two litres at each draw; a tank of 60 litres may not.',
);

export const fourLitreRule: Citation = {
  title: 'Plumbing Africa, July 2017, p. 23: a proposed rule of 4 litres',
  readAt: 'https://viewer.joomag.com/plumbing-africa-july-2017/0363139001499152986/p25',
  provenance: 'read',
};

export const pipeMakerFaq = leftOut(
  'A pipe maker’s questions and answers on the UK water regulations: 50 °C at the outlet within 30 s',
);

export const hotColdSystems: Citation = {
  title: 'UK Health and Safety Executive, Legionnaires’ disease: hot and cold water systems',
  readAt: 'https://hse.gov.uk/legionnaires/hot-and-cold.htm',
  provenance: 'read',
  caution: 'Written for workplaces. Water at 50 °C scalds: an outlet needs a mixing valve.',
};

export const growthRange: Citation = {
  title: 'Approved code of practice L8, as quoted on secondary pages: legionella grows from 20 to 45 °C',
  provenance: 'read',
  caution: 'Secondary pages, whose addresses were not kept (no address).',
};

export const deadLegLengthsUk = remembered(
  'UK water regulations guide, BS 6700 and BS 8558: longest uninsulated hot dead leg by outside diameter',
);

export const deadLegLengthsUs = remembered(
  'International Energy Conservation Code 2015 and 2018, table C404.5.1',
  ' Its rows agree with 64 fl oz over the volume of a foot.',
);

export const showerTemperature = remembered('A shower is taken at about 38 °C');

export const scaldingAdvice = remembered('Mixing valves at showers and taps are set to 38 to 43 °C');

export const panExample: Citation = {
  title: 'Open college textbook, example: heating water in an aluminium pan',
  readAt: 'https://github.com/openstax/osbooks-college-physics-bundle (modules/m42224/index.cnxml)',
  provenance: 'read',
};

export const kettleArticle: Citation = {
  title: 'Science article on the time to heat water: 20 litres by 80 K with 3.6 kW',
  readAt: 'https://sciencing.com/calculate-time-heat-water-8028611.html',
  provenance: 'read',
};

export const mixingBalance: Citation = {
  title: 'Heat balance of mixing hot and cold water',
  provenance: 'computed',
};

// --- Pumps ---

export const smallPumpDuty = remembered(
  'Usual duty of a small 12 V diaphragm pump with a pressure switch',
  ' The pump’s own label and curve come first.',
);

export const pumpStarts = ownChoice(
  'A pump with a pressure switch does not start more often than every ten seconds',
  'Less often is kinder to it; its maker comes first.',
);

export const suctionLimit: Citation = {
  title: 'Standard air pressure over the weight of water: 10.3 m at sea level, less on a mountain',
  provenance: 'computed',
};

export const closedHeater: Citation = {
  title: 'Water that is heated in a closed store grows and must be let out: a relief valve on the store',
  provenance: 'memory',
  caution:
    'Not looked up: UK Building Regulations G3 and International Plumbing Code 504.4, both for houses. The maker of the heater comes first.',
};

export const warmingUp = ownChoice(
  'A store of hot water is warm again within an hour',
  'So that two people can shower one after the other on one evening.',
);

export const drawsPerDay = ownChoice(
  'Hot water is drawn three times a day from a tap whose pipe has cooled',
  'Once a meal. A shower is counted as often as the plan has showers.',
);

export const fluidPowerExample: Citation = {
  title: 'Open college textbook, section 12.3, example: power in a moving fluid',
  readAt: 'https://github.com/openstax/osbooks-college-physics-bundle (modules/m42208/index.cnxml)',
  provenance: 'read',
};

export const nozzleExample: Citation = {
  title: 'Open college textbook, example 12.5: a fire hose nozzle',
  readAt: 'http://cnx.org/content/m42208/latest/',
  provenance: 'read',
};

export const pressureUnits: Citation = {
  title: 'Definitions of bar, psi, gallon and standard gravity; water at 20 °C',
  provenance: 'computed',
};

export const outletFlows = remembered(
  'US federal limit for a shower head (2.5 gal/min), WaterSense (2.0; tap 1.5), camping and boat showers',
);

export const outletPressure = remembered(
  'International Plumbing Code, table 604.3: 8 psi before a tap, sink or basin at its flow',
  ' An outlet made for a mains of 3 bar lets far less through at this pressure.',
);

// --- Use ---

export const emergencyNeed: Citation = {
  title: 'Sphere Project 2011, basic water need, as quoted by an open university, table 14.1',
  readAt: 'https://www.open.edu/openlearncreate/mod/oucontent/view.php?id=80580&section=6.1',
  provenance: 'read',
  caution: 'Survival in emergencies.',
};

export const vehicleUse = remembered(
  'Living in a vehicle takes 10 to 30 litres a person and day without a daily shower',
);

export const householdUse: Citation = {
  title: 'US EPA, supporting statement of the WaterSense new home specification, table 1',
  readAt: 'https://nepis.epa.gov/Exe/ZyPURL.cgi?Dockey=P1007ZDS.TXT',
  provenance: 'read',
  caution:
    'Houses on the mains. The six items sum to 67.1 of 69.3 gallons; the rest was cut off in the page.',
};

export const usableTankShare = remembered(
  'Usable volume of a tank, 90 to 97 % of the whole (height of the outlet, air space)',
  ' Litres quoted are often gross.',
);

// --- Drains ---

export const drainSlopeUs: Citation = {
  title: 'Chicago plumbing code, table 18-29-704.1 (as table 704.1 of the International Plumbing Code)',
  readAt: 'https://codelibrary.amlegal.com/codes/chicago/latest/chicago_il/0-0-0-2691996',
  provenance: 'read',
  caution: 'For buildings, which stand level.',
};

export const drainSlopeForum: Citation = {
  title: 'Ontario building code 1997 (1 in 50 up to 3 in) and IRC (2 %), as quoted on a forum of inspectors',
  readAt: 'https://forum.nachi.org/t/qod-for-9-3-06-plumbing/7145',
  provenance: 'read',
  caution: 'A quotation, for buildings.',
};

export const drainSlopeUk = remembered(
  'BS EN 12056-2 and Approved Document H, table 2: length and fall by use',
);

export const parkingLean = ownChoice(
  'A parked vehicle leans by a degree',
  'A degree is 1.75 %, so that it takes most of a fall of 2 %. A plan states its own.',
);

export const trapBylaw: Citation = {
  title: 'Building by-law on traps in waste-water fittings (southern Africa; issuing body not seen)',
  readAt: 'https://www.zezuru.digital/library_snippets/traps-in-waste-water-fittings',
  provenance: 'read',
};

export const trapSealsRemembered = remembered(
  'Approved Document H, table 1 (seal 75 mm; 50 mm at basins, baths and showers) and IPC 1002.4 (51 to 102 mm)',
);

// --- Tanks ---

export const tankHygiene = remembered('General practice for drinking-water tanks (WHO, BS 8558)');

export const ventPressureChoice = ownChoice(
  'No more than 500 Pa (5 cm of water) in a tank through its vent',
  'A flat plastic tank bulges at little more; the maker of the tank comes first.',
);

export const damExample: Citation = {
  title: 'Open college textbook, example: what force must a dam withstand?',
  readAt: 'https://github.com/openstax/osbooks-college-physics-bundle (modules/m42192/index.cnxml)',
  provenance: 'read',
};

export const tankShapes: Citation = { title: 'Geometry of boxes and cylinders', provenance: 'computed' };

export const strapExample = remembered('Straps over a tank, after EN 12195-1');

export const partFilledTanks: Citation = {
  title:
    'Safety pamphlet on tank containers (IMDG and ADR): no free-flowing liquid between 20 and 80 % without surge plates',
  readAt: 'https://yumpu.com/en/document/view/11640406/safe-handling-of-tank-containers-itco/57',
  provenance: 'read',
  caution: 'A rule for dangerous goods in sections of 7500 litres. It is no duty for the tanks of a camper.',
};

export const freeSurfaceTest: Citation = {
  title: 'Test of an open library of ship hydrostatics: free surface of a tank of 5 by 5 by 2 m',
  provenance: 'read',
  caution: 'Read through a file index, which keeps no address.',
};

// --- Frost ---

export const pipeFreezing: Citation = {
  title:
    'ASHRAE Handbook of Fundamentals 2009, chapter 23, eq. 1, as printed with its symbols; figures in an article of a forensic engineer',
  readAt:
    'https://engineersedge.com/calculators/time_to_freeze_piping_15700.htm ; https://www.warrenforensics.com/2014/03/18/how-long-before-the-pipes-freeze/',
  provenance: 'read',
  caution: 'Without pipe wall, film of air and heat of freezing. Bores of the example from memory.',
};

export const tankFreezing = remembered('Lumped heat balance of a tank with ice 334 kJ/kg and 917 kg/m³');

export const surfaceResistances: Citation = {
  title: 'BS EN ISO 6946 and BR 443, table A1, as restated: 0.13 inside (horizontal), 0.04 outside',
  readAt: 'https://www.u-value.com/blog/how-to-calculate-u-values',
  provenance: 'read',
  caution: 'For walls. A driving vehicle or wind leaves less outside.',
};

export const tankOutside: Citation = {
  title:
    'A fresh tank under the floor is exposed to frost in an alpine winter; one in the heated space is not',
  provenance: 'common practice',
  caution: 'No source.',
};
