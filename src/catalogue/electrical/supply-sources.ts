import type { Citation } from '../citation.ts';
import { leftOut, remembered } from '../citing.ts';

/*
 * Where the figures of solar strings, alternators, inverters, mains and appliances come from. An address that carries a
 * maker's or a seller's name is cut or left out, and the title says what kind of page it is.
 */

// --- Solar ---

export const coldTable: Citation = {
  title:
    'NEC 2017, 690.7(A)(2), table 690.7(A), as an open voltage library of a US national laboratory codes it',
  readAt: 'https://github.com/toddkarin/vocmax (vocmax/main.py, nec_correction_factor)',
  provenance: 'read',
  caution:
    'For crystalline silicon. The module’s own coefficient comes first. A copy shifted by a degree circulates: it gives too little between −1 and −39 °C.',
};

export const solarCurrentCourse: Citation = {
  title: 'Electrician course on NEC 690.8 (2023): 1.25 for brightness, another 1.25 for conductors and fuses',
  provenance: 'read',
  caution: 'Read through a file index, which keeps no address.',
};

export const controllerShopArticle = leftOut(
  'Solar shop article and a sizing page: array power over nominal voltage, times 1.25, next standard size',
);

export const controllerBuyersGuide: Citation = {
  title:
    'Charge-controller guide of an off-grid power magazine, reprint: array power over the lowest battery voltage',
  readAt: 'https://www.freeenergyplanet.biz/charge-controllers/info-ktn.html',
  provenance: 'read',
};

export const controllerChargeVoltage = leftOut(
  'Another solar shop: array power over the charge voltage, 14.4 V for 12, 28.8 V for 24 and 58.8 V for 48 V',
  '58.8 V breaks the pattern; 57.6 V is used, which gives more current.',
);

export const controllerManual: Citation = {
  title: 'A tracking controller’s manual, p. 22: array of at most 1.5 times the rated charge power',
  readAt: 'https://easymanua.ls (cut: the rest of the address carries the maker’s name)',
  provenance: 'read',
  caution: 'One maker. The controller’s own manual comes first.',
};

// --- Alternator ---

export const alternatorHalf = remembered(
  'A charger on the alternator takes no more than about half of its rated current',
  ' The vehicle’s own loads come first.',
);

export const alternatorHot: Citation = {
  title: 'Cruising magazine: an alternator gives a quarter less when hot',
  readAt: 'https://bwsailing.com/cc/2017/08/smart-charging',
  provenance: 'read',
  caution: 'For boats.',
};

export const alternatorMargin: Citation = {
  title: 'Text on charging systems: an alternator of 120 % of the worst load',
  readAt: 'http://nyagdell.com/charging-system.html',
  provenance: 'read',
};

export const converterInputPeak = leftOut(
  'Installation manual of a small charger from direct current: 20 A out, 30 A peak in',
);

// --- Inverters ---

export const inverterDesignEfficiency: Citation = {
  title: 'Off-grid design article: 90 % for design, 92 to 95 % as peak efficiency by makers',
  readAt:
    'https://www.homepower.com/articles/solar-electricity/design-installation/designing-stand-alone-pv-system/page/0/2',
  provenance: 'read',
};

export const inverterLossArticle: Citation = {
  title: 'Off-grid design note: an inverter loses 5 to 15 %, takes 1 to 30 W itself',
  readAt: 'https://firstgreen.co/system-sizing-off-grid',
  provenance: 'read',
  caution: 'Read together with three other pages; which of them prints the range was not kept.',
};

export const inverterEfficienciesRemembered = remembered(
  'Efficiency of inverters: modified sine 85 %, sine 90 %, the best 95 %',
);

export const inverterIdleMeasured: Citation = {
  title: 'No-load power of three inverters, measured by an individual',
  readAt: 'http://zetatalk6.com/energy/tengx112.htm',
  provenance: 'read',
};

export const inverterIdleSheets: Citation = {
  title: 'Page on inverters without load, upper figures of data sheets',
  readAt: 'https://www.ayixa.com/power_-an_inverter_draws_with_no_load/',
  provenance: 'read',
  caution: 'Its 12 V × 0.4 A = 3 W is wrong: 4.8 W.',
};

export const inverterSurge = leftOut(
  'Inverter maker’s questions and a manual, p. 6: motors and compressors start at 3 to 7 times, refrigerator example 4, heaters 1; up to 5 s',
  'A direct-current compressor refrigerator starts softly and is not on the inverter.',
);

export const standAloneLoads: Citation = {
  title:
    'IEEE 1013-2007, clause 5.2, in an excerpt: loads of constant power at 0.95 of the system voltage; own use of inverter and controller and self-discharge counted',
  readAt: 'https://www.onlinestandardssearch.com/ieee-std-1013-2007-pdf-free-download.html',
  provenance: 'read',
};

// --- Mains in leisure vehicles ---

export const leisureTradeJournal: Citation = {
  title:
    'DIN VDE 0100-721:2019 (IEC 60364-7-721) in a trade journal: one lead of 25 m ± 2 m, H05RN-F or equal, EN 60309-2; a main switch for all live conductors; metal frame bonded',
  readAt: 'https://elektro.net/115175/elektrische-anlagen-in-caravans-und-motorcaravans',
  provenance: 'read',
};

export const leisureMotorMagazine: Citation = {
  title: 'Motor magazine, readers’ questions: H07RN-F 3G2.5, 25 m',
  readAt: 'https://www.freenet.de/auto/wohnmobile/leserfragen-zu-stromkabeln-im-reisemobil-40360836.html',
  provenance: 'read',
};

export const leisureGuideUk: Citation = leftOut(
  "Electrician's guide to BS 7671, section 7.9.2 and table 7.5: 30 mA double-pole residual-current device, double-pole breakers, inlet up to 1.8 m, a test every three years",
  'Text for the 16th edition; the current one is the 18th, section 721.',
);

export const residualTripTime: Citation = {
  title: 'BS 7671, 415.1: a 30 mA device trips within 40 ms at five times its residual current',
  readAt: 'http://electricalengineertraining.co.uk/rcd-protection.php',
  provenance: 'read',
};

export const leisureHandbookCzech: Citation = {
  title: 'ČSN 33 2000-7-721 in two Czech handbooks: wiring at least 1.5 mm², supply lead 2.5 mm²',
  readAt: 'https://zdroje.elektrika.cz/book/prirucka-elektromontera/page/87',
  provenance: 'read',
};

export const leisureSizesRemembered = remembered(
  'IEC 60364-7-721 and BS 7671, 721.411.3.1.2, 721.524.1 and table 721: bonding 4 mm²; leads 4 mm² at 25 A, 6 at 32 A, 16 at 63 A, 35 at 100 A',
);

export const leisureVoltage: Citation = {
  title: 'DIN VDE 0100-721, overview: at most 230 V single-phase',
  readAt: 'https://www.elektrofachkraft.de/sicheres-arbeiten/die-neue-din-vde-0100-721-caravan',
  provenance: 'read',
};

export const supplyCablesAustralia: Citation = {
  title: 'AS/NZS 3001:2008 (amendment 2012), table 5.1, extract',
  readAt: 'https://rvbooks.com.au/supply-cables-for-caravans-2/',
  provenance: 'read',
  caution: 'Two rows of the table were not read. Cables may not be joined.',
};

export const cordTable = leftOut(
  'BS 7671, tables 4F3A and 4F3B, flexible cords at 60 °C, reproduced by electrical wholesalers',
  'The columns run together in one copy and were split by hand.',
);

export const drumReduction = leftOut(
  'BS 7671, table 4F1A, notes 2 and 3, flexible cables on a reeling drum, reproduced by an electrical wholesaler',
);

// --- Appliances ---

export const applianceTableUs: Citation = {
  title:
    'US Department of Energy, estimating appliance and home electronic energy use, reprints: nameplate powers; refrigerators run a third of the time',
  readAt: 'https://www.e-education.psu.edu/egee102/node/1915',
  provenance: 'read',
  caution: 'Nameplate power is a maximum. Mains appliances of a household.',
};

export const applianceTableMacKay: Citation = {
  title: 'MacKay, Sustainable Energy – without the hot air, chapter 7, table 7A (reprint)',
  readAt: 'https://www.briangwilliams.us/sustainable-energy-2/kettles-and-cookers.html',
  provenance: 'read',
};

export const applianceListUk = leftOut('UK list of appliance powers', 'Lists differ by up to 2.5 times.');

export const applianceListSecond = leftOut(
  'Second list of household powers',
  'Lists differ by up to 2.5 times.',
);

export const applianceListThird: Citation = {
  title: 'Third list of household powers',
  readAt:
    'https://www.thesouthafrican.com/lifestyle/how-much-power-your-household-appliances-use-breaking-7-august-2023-latest/',
  provenance: 'read',
  caution: 'Lists differ by up to 2.5 times.',
};

export const campingArticles: Citation = {
  title:
    'Camping-trade articles: LED lamp 10 W, television 30 to 150 W, compressor refrigerator of 12 V 40 to 55 W',
  readAt:
    'https://reisemobil-international.de/ratgeber/service-technik/technik-ecke-stromkabel-im-wohnmobil/',
  provenance: 'read',
};
