import type { Citation } from './citation.ts';

/*
 * Where the body measures and the limits of fit, movement, reach and restraint come from. Where an address carries a
 * maker's or a seller's name, it is cut or left out, and the title says what kind of page it is.
 */

const fromMemory = (title: string, caution: string): Citation => ({ title, provenance: 'memory', caution });

// --- Tables of body measures ---

const bodyTable = (page: string, dimension: string, caution?: string): Citation => ({
  title: `Chan, Online Anthropometry, chapter 2, ${dimension} (data after Pheasant)`,
  readAt: `http://personal.cityu.edu.hk/meachan/online%20anthropometry/Chapter2/${page}.htm`,
  provenance: 'read',
  ...(caution !== undefined && { caution }),
});

const readInPart =
  'The stored copy of the page breaks off within the table; only the figures before the break were read.';

export const statureTable = bodyTable('Ch2-1', '1 Stature');
export const eyeHeightTable = bodyTable('Ch2-2', '2 Eye height');
export const elbowHeightTable = bodyTable('Ch2-4', '4 Elbow height', readInPart);
export const sittingHeightTable = bodyTable('Ch2-8', '8 Sitting height', readInPart);
export const sittingElbowTable = bodyTable('Ch2-11', '11 Sitting elbow height');
export const poplitealTable = bodyTable('Ch2-16', '16 Popliteal height');
export const shoulderBreadthTable = bodyTable('Ch2-17', '17 Shoulder breadth (bideltoid)');
export const hipBreadthTable = bodyTable('Ch2-19', '19 Hip breadth');
export const elbowFingertipTable = bodyTable('Ch2-23', '23 Elbow-fingertip length', readInPart);
export const shoulderGripTable = bodyTable('Ch2-25', '25 Shoulder-grip length', readInPart);

export const shoesNote: Citation = {
  title:
    'Chan, Online Anthropometry, chapter 1, section 9: shoes add 20 to 30 mm for men, 40 to 50 mm for women',
  readAt: 'http://personal.cityu.edu.hk/meachan/online%20anthropometry/Chapter1/Ch1-9.htm',
  provenance: 'read',
  caution: 'The value is the middle of the range for men, which fits flat shoes and slippers of anyone.',
};

/** For the figures of that table which could not be read in a copy. */
export const britishTableRemembered = fromMemory(
  'Pheasant, Bodyspace, table of British adults aged 19 to 65',
  "Remembered. The mean of the men's and the women's 50th percentiles agrees, rounded, with what an open program quotes from the book's third edition: elbow 1048, forward grip reach 743, buttock to popliteal 488 mm.",
);

export const ratioScaling: Citation = {
  title:
    'Pheasant, Bodyspace (1996), chapter 10: many tabulated body measures are themselves estimated by ratio scaling',
  readAt:
    'https://www.scribd.com/document/590706239/Bodyspace-Anthropometry-Ergonomics-and-the-Design-10-Anthropometric-data',
  provenance: 'read',
  caution: 'Only the opening of the chapter was read.',
};

export const scalingPractice: Citation = {
  title: "One person's measure taken as the table's, times their stature over the table's stature",
  provenance: 'common practice',
  caution:
    'People of one stature differ by several centimetres in legs, trunk and arms, and breadths hardly follow stature. Measure the person if it is close.',
};

export const soldierTable: Citation = {
  title:
    'NUREG-0700 rev. 3, table 11.4 (from MIL-STD-1472G, appendix B): US soldiers, 5th percentile woman and 95th percentile man',
  readAt: 'http://www2.hrp.no/vr/create4/Data/guidelines/nureg/nureg0700rev3_review_subset_us.zip',
  provenance: 'read',
  caution: 'Soldiers, not the public.',
};

// --- Beds ---

export const bedMovementCourse: Citation = {
  title:
    'Course on furniture and furnishings, lesson 10: 3 to 5 cm of room to move beyond the tallest sleeper',
  readAt: 'http://ecoursesonline.iasri.res.in/mod/page/view.php?id=121438',
  provenance: 'read',
  caution: 'The upper end is used.',
};

export const bedComfortArticle: Citation = {
  title: 'Article on the dimensions of beds: stature + 9 in (6 in at the head, 3 in at the feet)',
  readAt: 'https://www.fibre2fashion.com/industry-article/1166/good-night-sleep-tight-',
  provenance: 'read',
  caution: 'A bed in a house. A bed seller says 5 % of the stature and 150 mm, another 200 to 300 mm.',
};

export const lyingAcross: Citation = {
  title:
    'A sleeper as tall as the inside is wide does not lie straight across the van (73 in of sleeper in 72 in of width)',
  provenance: 'common practice',
  caution: 'Curled up or on the diagonal is a compromise.',
};

export const sleeperBerthRule: Citation = {
  title: '49 CFR 393.76(a): sleeper berth of a lorry, 75 in long, 24 in wide, 24 in high above the mattress',
  readAt: 'https://app.worksafe360.com/Special-Industries/Trucking/Sleeper-Berths/',
  provenance: 'read',
  caution: 'A rule for lorry drivers in the US, used as a yardstick.',
};

export const polishBedStandard: Citation = {
  title: 'PN-89/F-06027.04 (beds in houses): at least 1900 x 800 mm for one, 1900 x 1200 mm for two',
  readAt: 'http://jfjm100.com/the-history-of-furniture-construction/requirements-for-beds.html',
  provenance: 'read',
  caution: 'As quoted in a book on furniture.',
};

export const singleBedPractice = fromMemory(
  'General design handbooks: single bed at least 600 mm wide',
  'Not looked up.',
);

export const sitUpPractice = fromMemory(
  'General design handbooks: 900 mm over a bed to sit up',
  'Not looked up. More than half of British men sit taller than this.',
);

export const crewHeadroom: Citation = {
  title: 'Maritime Labour Convention 2006, standard A3.1, 6(a): headroom of at least 203 cm in crew quarters',
  readAt: 'https://studylib.net/doc/27224315/ch-43-6-annex-i-c92-133-mlc--2-',
  provenance: 'read',
  caution: 'For ships, and for anyone aboard; shown for comparison.',
};

// --- Moving about ---

export const aislePractice = fromMemory(
  'General design handbooks: a single aisle of 500 mm at least, 600 mm comfortably',
  'Not looked up.',
);

export const hallwayRule: Citation = {
  title: '24 CFR 280.113 (now 3280.112), manufactured homes: hallways of at least 28 in (711 mm)',
  readAt: 'https://books.google.lv/books?id=xHqrPwsDqSAC&pg=RA4-PA739',
  provenance: 'read',
  caution: 'A home that stands on its site; wider than a van allows.',
};

export const caravanEscapeWidth: Citation = {
  title: "A caravan maker's article on DIN EN 1645-1 (in German): escape route and escape window 450 mm wide",
  provenance: 'read',
  caution:
    'The caravan part of the standard, at second hand; the address carries the maker’s name. EN 1646-1, the motor caravan part, was not read; its scope lets vehicles of small plan area off some of its requirements.',
};

export const exitPathUs: Citation = {
  title: 'NFPA 1192, 6.2.1.1 to 6.2.3.1: the path to the alternate exit at least 13 in (330 mm) wide',
  readAt: 'https://donstronicthings.blogspot.com/2022/09/rv-exit-window-screen.html',
  provenance: 'read',
  caution: "Quoted on an owner's page.",
};

// --- Working and sitting ---

export const accessibleSurfaces: Citation = {
  title:
    '2010 ADA Standards, 902.3: tops of dining and work surfaces 28 in (711 mm) to 34 in (864 mm) above the floor',
  readAt: 'https://www.corada.com/search?page=9&query=Built-In+Element',
  provenance: 'read',
  caution: 'For wheelchair users in public buildings; used as a guide.',
};

export const accessibleKneeSpace: Citation = {
  title: 'ADA Accessibility Guidelines, 4.32.3 (older edition): knee space 27 in (686 mm) high, 19 in deep',
  readAt: 'https://www.corada.com/search?page=9&query=Built-In+Element',
  provenance: 'read',
  caution: 'For wheelchair users; a bench with feet on the floor needs less height.',
};

export const computerWorkstation: Citation = {
  title:
    'US OSHA, computer workstations, clearance under the work surface: 44 cm deep at the knee, 60 cm at the foot, 52 cm wide, 50 to 69 cm high',
  readAt: 'https://www.osha.gov/etools/computer-workstations/components/work-space',
  provenance: 'read',
};

export const worktopPractice = fromMemory(
  'General design handbooks: kitchen worktop 900 mm high',
  'Not looked up.',
);

export const worktopFitter: Citation = {
  title:
    "A kitchen fitter's page: worktops are 900 mm as a rule (850 to 950 by stature), 15 cm below the bent elbow",
  readAt: 'https://kuchenarchitecture.co.uk/kitchen-worktops/kitchen-worktop-height/',
  provenance: 'read',
};

export const worktopBelowElbow: Citation = {
  title: 'A page of kitchen advice: worktop 12 cm below the bent elbow',
  readAt: 'https://burma-ksa.com/en/advices/7097-what-height-should-it-be',
  provenance: 'read',
};

export const lightWorkPractice = fromMemory(
  'Ergonomics handbooks: light work standing up is done 100 to 150 mm below the elbow',
  'Not looked up.',
);

export const seatToTable: Citation = {
  title: 'A page on table heights: 10 to 12 in between the seat and the table top',
  readAt: 'https://www.landscapefacilities.com/RoundtableFAQ/92675.html',
  provenance: 'read',
};

export const seatToTablePractice = fromMemory(
  'General design handbooks: table 280 mm above the seat',
  'Not looked up. The middle of the range that was read.',
);

export const seatPractice = fromMemory(
  'General design handbooks: dining seat 450 mm high and 450 mm deep',
  'Not looked up. Made for the average sitter, too high and too deep for short people.',
);

// --- Reaching ---

export const graspingSpace: Citation = {
  title: 'Austrian accident insurance, grasping space: 35 to 45 cm from the shoulder, extended 55 to 65 cm',
  readAt: 'http://app.auva.at/Lexikon/Topic/GraspingSpace?lang=en',
  provenance: 'read',
};

export const reachOverCounter: Citation = {
  title: '2010 ADA Standards, 308.2.2: reach over an obstruction at most 25 in (635 mm) deep',
  readAt: 'https://www.corada.com/documents/2010ADAStandards/308-2',
  provenance: 'read',
  caution: 'Over a counter with the knees under it; deeper than one arm goes into a hole.',
};

export const servicePractice: Citation = {
  title: 'An arm reaches about 600 mm into a locker',
  provenance: 'common practice',
  caution: 'No source; looser than the value used.',
};

// --- Getting out ---

export const twoWaysOutUs: Citation = {
  title: 'NFPA 1192:2018, 6.2.1.2 and 6.2.1.3: two unobstructed paths to exits from every sleeping area',
  readAt: 'community.goodsam.com, discussion 3074801',
  provenance: 'read',
  caution:
    "Quoted by owners. A path must not pass one exit to reach the other, unless part of the bed is within 610 mm of the plane of the nearest exit; the driver's door may be the second exit of a motor home.",
};

export const escapeAdviceGerman: Citation = {
  title:
    'A German advice page on converting vans: two independent ways out; opening of 0.65 m², at least 0.5 m wide and 1.0 m high',
  provenance: 'read',
  caution: 'The rule behind it is not named; the other sources ask for less. The address is left out.',
};

export const twoWaysOutYachts: Citation = {
  title:
    'IMO guidance for small commercial vessels, 14.8.1: two means of escape from spaces for sleeping, not cut off by one event',
  readAt: 'https://imorules.com/GUID-F0209FBB-7D4E-4585-8ACD-F7066D0DED02.html',
  provenance: 'read',
  caution: 'For vessels.',
};

export const escapeWindowMotorCaravan = fromMemory(
  'EN 1646-1: escape window of a motor caravan at least 450 x 600 mm',
  'The standard was not read.',
);

export const escapeWindowUs: Citation = {
  title: 'Forum of trailer owners: escape window of at least 17 in x 24 in (432 x 610 mm)',
  readAt: 'fiberglassrv.com, forum f55, thread 91027',
  provenance: 'read',
  caution: 'What a window seller tells owners; the clause of NFPA 1192 was not read.',
};

export const escapeWindowHouses: Citation = {
  title: 'Approved Document B (England), 2.10: escape windows of 0.33 m², at least 450 mm each way',
  readAt:
    'https://glazingcentre.co.uk/building-regulation-part-b-fire-safety-for-windows-and-external-doors-in-residential-buildings/',
  provenance: 'read',
  caution: 'For houses.',
};

export const escapeWindowManufacturedHomes: Citation = {
  title: '24 CFR 3280.404, manufactured homes: escape window of 5 ft² (0.46 m²), at least 22 in (559 mm)',
  readAt:
    'https://howtolookatahouse.com/Blog/Entries/2023/10/what-is-the-hud-requirement-for-bedroom-emergency-egress-windows-for-manufacturedmobile-homes.html',
  provenance: 'read',
  caution: "A home that stands on its site; an inspector's page. Its shorter side is the largest of all.",
};

export const escapeInlandVessels: Citation = {
  title:
    'German accident prevention rule for inland vessels, § 12: emergency exits of 0.36 m², at least 50 cm',
  readAt: 'http://www.bc-verlag.de/UVVen/107/12.HTM',
  provenance: 'read',
  caution: 'For vessels.',
};

export const escapeWindowBuses: Citation = {
  title: '49 CFR 393.62(c), older buses: opening of 1290 cm², 33 x 45 cm',
  readAt:
    'https://law.lawstack.com/laws/49-cfr_s_393-62_emergency-exits-for-buses-999cbb6f-3fd7-49e9-96d1-0ef147a0fbbe',
  provenance: 'read',
  caution: 'The smallest of all, for seated passengers.',
};

// --- Routes ---

export const gasPipesOnBoats: Citation = {
  title:
    'Boat Safety Scheme, part 7, 7.18: gas pipes 30 mm from uncovered electrical cables and not in the same duct',
  readAt:
    'https://www.boatsafetyscheme.org/requirements-examinations-certification/non-private-boat-standards/part-7-lpg-installations/installation-pipework-2/',
  provenance: 'read',
  caution: 'For boats; what EN 1949 says for vehicles was not read.',
};

export const gasPipesInHouses: Citation = {
  title:
    'BS 6891:2005, 8.16.2: gas pipes 25 mm from cables, 150 mm from meters, distribution boards, switches and sockets',
  readAt: 'https://www.diynot.com/diy/threads/proximity-of-gas-pipe-to-electrical-cableing.451910/',
  provenance: 'read',
  caution: 'For houses, quoted in a forum. A later edition keeps 150 mm for meters and boards only.',
};

export const spaceFactorUk: Citation = {
  title: 'UK wiring practice: cables fill at most 45 % of a conduit or trunking',
  readAt: 'http://www.tlc-direct.co.uk/Book/4.5.3.htm',
  provenance: 'read',
};

/** The stricter of the two UK figures; the other is for trunking and for single cables. */
export const conduitSpaceFactorUk: Citation = {
  title: 'On-Site Guide to BS 7671, appendix E: a space factor of 35 % in conduit, on one secondary page',
  readAt: 'https://askvity.info/electrical-installation-regulations/what-is-the-space-factor-for-trunking',
  provenance: 'read',
};

export const conduitFillUs: Citation = {
  title: 'US National Electrical Code, chapter 9, table 1: one conductor fills at most 53 %, two 31 %',
  readAt:
    'http://2.accessengineeringlibrary.com/browse/mcgraw-hills-national-electrical-code-2014-handbook-twenty-eighth-edition/c9780071834780ch09',
  provenance: 'read',
};

export const conduitFillThreeUs: Citation = {
  title: 'US National Electrical Code, chapter 9, table 1: three or more conductors fill at most 40 %',
  readAt: 'http://www.electricianmath.com/areavolume/conduit_fill_percent.htm',
  provenance: 'read',
};

// --- Restraint ---

export const lashingComparison: Citation = {
  title:
    'IRU Academy, comparison of EN 12195-1:2003, prEN 12195-1:2009 and IMO/ILO/UN ECE 2001 (November 2010), examples 1, 3 and 4',
  readAt:
    'https://www.yumpu.com/en/document/view/10645372/rev-pren-12195-1-iru/23 ; https://www.yumpu.com/en/document/view/10645372/rev-pren-12195-1-iru/27',
  provenance: 'read',
};

export const lashingTrainingPage: Citation = {
  title:
    'EN 12195-1 on a training page on the CTU Code, transport loads for road transport: 0.8 g forward, 0.5 g rearward and sideways, 0.6 g for what would tip sideways',
  readAt: 'https://demo.arcademy.ch/CTU-Code/data/html/en/4/p_4_6.html',
  provenance: 'read',
  caution:
    'The standard itself was not read. By its scope EN 12195-1:2010 does not apply to vehicles of up to 3500 kg, which can be driven harder.',
};

export const lightVanPaper: Citation = {
  title:
    'VDI 2700 part 16 in figure 1 of A. Berg, W. Sicks and J.-P. Cheynet, “ISO 27956 - a new standard describing requirements and test methods for lashing points and partitioning systems for cargo securing in delivery vans”, paper 09-0008 (2009): up to 2000 kg 0.9 g forward and 0.7 g sideways, up to 3500 kg 0.8 g and 0.6 g, above it 0.8 g and 0.5 g; 0.5 g rearward',
  readAt: 'https://www.scribd.com/document/345584161/std-iso-27956-load-restraint-system-pdf',
  provenance: 'read',
  caution:
    'Read in a copy of that page. The text beside the figure names 0.9 g and 0.7 g for 2000 to 3500 kg; a manual for van racking has 0.6 g sideways up to 3500 kg, so the figure is followed.',
};

export const cargoInsurers: Citation = {
  title:
    'German insurers, load securing on the road, 1: 0.8 g forward, 0.5 g rearward and sideways; 1.0 g forward in several other European countries',
  readAt: 'https://www.tis-gdv.de/tis_e/ls/ls_im_strassenverkehr/kapitel01.html/',
  provenance: 'read',
};

export const cargoInsurersSummary: Citation = {
  title:
    'German insurers, load securing on the road, 5.1: a vehicle that brakes at 0.8 g may call for 1.0 g on its load',
  readAt: 'https://www.tis-gdv.de/tis_e/ls/ls_im_strassenverkehr/kapitel0501.html/',
  provenance: 'read',
  caution: 'Because the vehicle pitches and the load swings on its springs.',
};

export const cargoRuleUs: Citation = {
  title: '49 CFR 393.102: 0.8 g forward, 0.5 g rearward, 0.5 g sideways; 20 % of the weight held down',
  readAt:
    'http://www.fmcsa.dot.gov/rules-regulations/administration/fmcsr/fmcsrruletext.aspx?chunkKey=0901633480023950',
  provenance: 'read',
  caution: 'For the cargo of commercial vehicles, against the breaking strength of the fastenings.',
};

export const cargoRuleQuebec: Citation = {
  title:
    'Québec, Cargo Securement Standards Regulation, C-24.2, r. 30, s. 3: 0.8 g forward, 0.5 g rearward and sideways',
  readAt: 'http://legisquebec.gouv.qc.ca/en/showversion/cr/C-24.2,%20r.%2030?code=se:3&pointInTime=20190521',
  provenance: 'read',
  caution: 'For cargo.',
};

export const loadRestraintGuide: Citation = {
  title:
    'Australian Load Restraint Guide (2018), performance standards: 0.8 g forward, 0.5 g rearward and sideways, 0.2 g upward',
  readAt:
    'https://www.hviatraining.com.au/topic/lesson-1-2-1-overview-performance-standards-2/ ; https://www.nhvr.gov.au/road-access/loading/faqs',
  provenance: 'read',
  caution: 'A training page and the answers of the regulator; for heavy vehicles.',
};

export const motorCaravanGuidance: Citation = {
  title: 'UK DVLA, converting a vehicle into a motor caravan (7 August 2020): internal features',
  readAt:
    'http://www.gov.uk/government/publications/converting-a-vehicle-into-a-motor-caravan/converting-a-vehicle-into-a-motor-caravan',
  provenance: 'read',
  caution:
    'For the body type in the registration document, which also asks for features outside. It says nothing of strength.',
};
