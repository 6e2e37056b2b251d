import type { Citation } from '../citation.ts';
import { leftOut, remembered } from '../citing.ts';

/*
 * Where the figures of ventilation, carbon dioxide, moisture and heat of people come from. An address that carries a
 * maker's or a seller's name is cut or left out, and the title says what kind of page it is.
 */

// --- Fixed openings ---

export const leisureTableFrench: Citation = {
  title:
    'NF EN 721, table of fixed ventilation by projected plan area of the vehicle (length by width), as two French conversion guides print it',
  readAt:
    'https://mon-fourgon-amenage.fr/homologation-vasp/aeration-ventilation ; https://toitsalternatifs.fr/conseils-pratiques/bricolage/faire-les-aerations-van-pour-homologation-vasp/',
  provenance: 'read',
  caution: 'The standard (2004, 2019) was not read.',
};

export const leisureTableGerman: Citation = {
  title:
    'EN 721, its first two rows, the room-sealed case and the heights, in a leaflet of a German inspection body quoted in a forum',
  readAt: 'https://www.multi-board.com/board/forum/index.php?thread/99148',
  provenance: 'read',
  caution: 'It speaks of the area of the habitable room, which is smaller than the plan of the vehicle.',
};

export const leisureVentHeightFrench: Citation = leftOut(
  'A third French text on permanent vents in vans: low vent within 10 cm of the floor',
);

export const boatVentilation: Citation = {
  title:
    'Boat Safety Scheme, standards for non-private boats, part 8, quoting PD 5482-3: 2200 mm² a kW without flue, 650 mm² a person, 440 mm² a kW with flue, half of it high, half low',
  readAt:
    'https://boatsafetyscheme.org/requirements-examinations-certification/non-private-boat-standards/part-8-appliances-flueing-ventilation/ventilation',
  provenance: 'read',
  caution: 'For boats; a guide for vehicles.',
};

export const caravanVentilationAuNz: Citation = {
  title:
    'AS/NZS 5601.2:2013, clause 2.9.6 and section 7, in the magazine of the regulator of Victoria: 610 mm² for each MJ/h and 650 mm² a sleeping place, at least 4000 mm²',
  readAt: 'https://view.joomag.com/energysafe-magazine-summer-2016-issue-42/0327909001456119436?page=22',
  provenance: 'read',
  caution: 'Windows and hatches that can be closed do not count, and it must work with a pop-top down.',
};

export const caravanVentHeightsAuNz: Citation = leftOut(
  'A caravan inspector’s page: permanent vents within 150 mm of the roof and within 150 mm of the floor',
);

export const dwellingCooker: Citation = leftOut(
  'BS 5440-2:2000, flueless cooker by volume of the room, as two cooker instruction books print it',
  'For dwellings. An openable window is asked for in every case.',
);

export const dwellingOpenFlue: Citation = {
  title: 'Training page on open-flued appliances: 5 cm² for each kW (net) above 7 kW',
  readAt: 'https://plumbrevise.co.uk/revisions/open-flued-ventilation-free-area-worked-example',
  provenance: 'read',
  caution: 'For dwellings: the first 7 kW are credited to leaks, which a van has not to give.',
};

export const openingsBetweenRooms: Citation = leftOut(
  'Approved Document F (England, an older edition), 1.5 and 1.6, on a page of an electrical wholesaler: a 10 mm gap under the door of a room without a window; two rooms count as one with an opening of 1/20 of their floor',
  'For dwellings; superseded.',
);

// --- Flow ---

export const orificeCode: Citation = {
  title:
    'Klote et al., Handbook of Smoke Control Engineering (ASHRAE), equation 3.4a, as coded in an open repository',
  readAt: 'https://github.com/zishanulh/smokecontrol (VolumeFlowSI.m)',
  provenance: 'read',
};

export const stackAnswer: Citation = {
  title: 'ASHRAE Fundamentals 1997, page 25.13, equations 37 and 38, quoted in an engineering answer',
  readAt: 'https://isolution.pro/it/q/er13033648',
  provenance: 'read',
};

export const windAndStack: Citation = {
  title: 'Handbook text on ventilation: equal wind and stack together give 10 % more than one of them',
  readAt:
    'http://machineryequipmentonline.com/hvac-machinery/ventilation-principlescombined-force-of-wind-effect-and-thermal-effect',
  provenance: 'read',
  caution: 'An open library adds them in quadrature, 41 % more. The larger alone is used.',
};

export const dwellingFanRate: Citation = {
  title: 'ASHRAE 62.2-2022, equation 4.1a: 0.03 cfm a square foot and 7.5 cfm for each bedroom and one more',
  readAt: 'https://nationalcalculatorauthority.com/ventilation-rate-calculator-ashrae-62-2.html',
  provenance: 'read',
  caution: 'For dwellings.',
};

export const airChangesByRoom: Citation = {
  title: 'MacKay, Sustainable Energy – without the hot air, page 289, table E.1',
  readAt: 'http://www.withouthotair.com/cE/page_289.shtml',
  provenance: 'read',
  caution: 'Houses.',
};

export const extractTable: Citation = {
  title:
    'Solar housing design text (IEA SHC Task 28), table 10.1.2: kitchen 60, bathroom 40 to 60, toilet 30 m³/h',
  readAt: 'https://www.northernarchitecture.us/solar-housing-2/design-advice-1.html',
  provenance: 'read',
  caution: 'Dwellings, fans that run all the time.',
};

export const extractPolish: Citation = {
  title:
    'Page on the volumes of ventilation air: kitchen with gas 70, with electricity 50, bathroom 50, toilet 30 m³/h',
  readAt: 'http://www.rembud.info/en/building/the-volume-of-the-ventilation-air-streams',
  provenance: 'read',
  caution: 'Dwellings.',
};

export const extractBritish: Citation = {
  title:
    'Approved Document F, fans that run now and then: kitchen 30 (beside the hob) or 60, bathroom 15, toilet 6 L/s, as a testing firm’s page restates it',
  provenance: 'read',
  caution: 'The address carries a firm’s name and is left out. Dwellings.',
};

export const extractBritishSteady: Citation = {
  title:
    'Approved Document F, fans that run all the time: kitchen 13, bathroom 8, toilet 6 L/s, as a ventilation firm’s page restates it',
  provenance: 'read',
  caution: 'The address carries a firm’s name and is left out. Dwellings.',
};

// --- Fans and open flues ---

export const depressionGerman: Citation = {
  title:
    'Two chimney sweeps’ pages and a fan maker’s instructions (all in German): at most 4 Pa below the outside where a fire takes its air from the room, 8 Pa for room-sealed ones',
  provenance: 'read',
  caution:
    'The addresses carry firms’ names and are left out. Houses with chimneys; shown by measurement, not by calculation. No limit for vehicles was read.',
};

export const depressionOpenFlueTests: Citation = {
  title:
    'AIVC conference 1992: spillage tests of open-flued boilers; no extract fan that can lower the pressure of their room',
  readAt: 'https://www.aivc.org/resource/spillage-test-results-gas-and-oil-fired-boilers?volume=34378',
  provenance: 'read',
};

export const extractBesideFlue: Citation = leftOut(
  'Approved Document F (England, an older edition), 1.8, on a page of an electrical wholesaler: at most 20 L/s of extract where an open-flued gas appliance is in the kitchen, and a spillage test; none beside solid fuel',
  'For dwellings; superseded.',
);

// --- Carbon dioxide ---

export const breathingTable: Citation = {
  title:
    'Persily and de Jonge 2017, Indoor Air 27(5), 868–879, table 4 (PMC5666301), as three open programs transcribe it alike',
  readAt: 'a public source code index (files that cite PMC5666301 table 4)',
  provenance: 'read',
  caution: 'At 0 °C and 101 kPa: at 20 °C the volume is 7.3 % larger.',
};

export const breathingActivities: Citation = {
  title: 'Persily and de Jonge 2017, table 3, activities in met, as an open program summarises it',
  readAt: 'a public source code index (a file that cites PMC5666301 table 3)',
  provenance: 'read',
};

export const carbonDioxideGerman: Citation = {
  title:
    'German Working Group on Indoor Guideline Values 2008, Bundesgesundheitsblatt 51(11): below 1000 ppm harmless, 1000 to 2000 ppm elevated, above 2000 ppm unacceptable',
  readAt: 'https://pubmed.ncbi.nlm.nih.gov/19043767/',
  provenance: 'read',
  caution: 'As a sign of stale air. The abstract was read.',
};

export const carbonDioxideOldGerman: Citation = leftOut(
  'DIN 1946-2:1994, 1500 ppm on average, and the MAK value of 5000 ppm, on a page (in German) on concentrations of carbon dioxide',
  'DIN 1946-2 is withdrawn.',
);

export const carbonDioxideWorkplace: Citation = {
  title: 'OSHA permissible exposure limit: 5000 ppm averaged over an eight-hour day',
  readAt: 'https://bmet.fandom.com/wiki/Health_Risk_Evaluation_for_Carbon_Dioxide',
  provenance: 'read',
  caution: 'For workplaces with healthy adults, not for a bedroom.',
};

export const outdoorCarbonDioxide: Citation = remembered(
  'Carbon dioxide of outside air, about 425 ppm in 2024 and rising; more in towns',
);

export const freshAirRemembered: Citation = remembered(
  'ASHRAE 62.1-2016, appendix: 7.5 L/s a person holds 0.0052 L/s of carbon dioxide about 700 ppm above outside',
);

export const freshAirPerPerson: Citation = {
  title: 'Solar housing design text (IEA SHC Task 28), 10.1: 30 m³/h a person',
  readAt: 'https://www.northernarchitecture.us/solar-housing-2/humidity.html',
  provenance: 'read',
};

// --- Moisture ---

export const moistureTable: Citation = {
  title: 'Solar housing design text (IEA SHC Task 28), table 10.1.1: water vapour by source',
  readAt: 'https://www.northernarchitecture.us/solar-housing-2/humidity.html',
  provenance: 'read',
};

export const moistureNewZealand: Citation = {
  title: 'NZ Metal Roof and Wall Cladding Code of Practice, clause 10.8.1: water by behaviour of 2.5 people',
  readAt: 'https://www.metalroofing.org.nz/occupant-behaviour',
  provenance: 'read',
};

export const moistureGerman: Citation = {
  title: 'Pages of German housing and mould experts: water vapour by activity',
  readAt:
    'https://schimmelpilzexpertise.de/ursachen/durchfeuchtungsursachen/durchfeuchtung-von-innen/nutzungsbedingte-feuchte ; https://kwg-halle.de/?p=5035',
  provenance: 'read',
};

export const moistureCaravan: Citation = leftOut(
  'Owner’s handbook of a caravan (in Dutch): a person gives off up to 35 g of water an hour',
);

export const moistureUs: Citation = {
  title:
    'House inspector’s page: a shower of 10 minutes about one US pint of water, a load of washing 5 pints',
  readAt: 'http://www.covenantinspectionstx.com/2017/02/moisture-creation/',
  provenance: 'read',
};

export const burningWater: Citation = {
  title: 'Water from burning propane or butane, from the chemical equation',
  provenance: 'computed',
};

export const humidityClasses: Citation = {
  title: 'ISO 13788, vapour excess by class of humidity, as an open program and its tests have it',
  readAt: 'https://github.com/pachi/condensaciones (condensaciones/test/test_psicrometria.py)',
  provenance: 'read',
  caution:
    'The program rises where the standard falls between 0 and 20 °C outside; only its rows at −1 °C are used.',
};

export const humidityClassFive: Citation = remembered('ISO 13788, class 5, laundries and pools: 1350 Pa');

export const mouldHumidity: Citation = {
  title: 'ISO 13788: no more than 80 % relative humidity at a surface, as an open program has it',
  readAt: 'https://github.com/pachi/condensaciones (condensaciones/test/test_comprobaciones.py)',
  provenance: 'read',
};

export const winterHumidity: Citation = {
  title: 'Solar housing design text (IEA SHC Task 28), 10.1: 60 % at 20 °C as the winter case to hold',
  readAt: 'https://www.northernarchitecture.us/solar-housing-2/humidity.html',
  provenance: 'read',
};

// --- People ---

export const metabolicTable: Citation = {
  title: 'ASHRAE-based table of metabolic heat, W for each m² of skin',
  readAt: 'https://ns2.engineersedge.com/heat_transfer/thermal_energy_created_13777.htm',
  provenance: 'read',
};

export const peopleHeatTable: Citation = {
  title: 'Jones, Air Conditioning Engineering, 5th edition, table 7.16: sensible and latent heat of people',
  readAt: 'http://fenkoil.ru/1213/',
  provenance: 'read',
};

// --- Leisure vehicles ---

export const leisureScope2008: Citation = {
  title: 'EN 1646-1:2004+A1:2008, scope: some requirements not for overall length by width up to 12 m²',
  readAt:
    'https://standards.iteh.ai/catalog/standards/sist/900e06a8-2df5-4a00-9673-9c7d3e87b409/sist-en-1646-1-2005a1-2008',
  provenance: 'read',
  caution: 'The scope was read, not the standard.',
};

export const leisureScope2012: Citation = {
  title: 'EN 1646-1:2012, scope: some requirements not for overall length by width up to 13.5 m²',
  readAt: 'https://www.boutique.afnor.org/en-gb/standard/din-en-16461/519000',
  provenance: 'read',
  caution: 'The scope was read, not the standard.',
};
