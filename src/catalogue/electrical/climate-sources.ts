import type { Citation } from '../citation.ts';

/*
 * Where the monthly tables of radiation and temperature come from, and the formulas of the sun and the sky. A typical year
 * is one made of real months: single months lie 10 to 20 % off a mean of thirty years, and single years further.
 */

const typicalYear =
  'One synthetic year, not a mean of thirty: single months deviate by 10 to 20 %. Monthly sums of an hourly file that keeps its own licence; the file is not shipped.';

export const ashraeYears: Citation = {
  title: 'ASHRAE IWEC typical-year weather files: monthly means of the hourly values',
  readAt:
    'https://github.com/architecture-building-systems/CityEnergyAnalyst cea/databases/weather ; https://github.com/pvlib/pvlib-python tests/data',
  provenance: 'read',
  caution: typicalYear,
};

export const meteonormYear: Citation = {
  title:
    'Typical-year weather file of Zurich-Kloten 1990 to 2010 (Meteonorm): monthly means of the hourly values',
  readAt: 'https://github.com/architecture-building-systems/CityEnergyAnalyst cea/databases/weather',
  provenance: 'read',
  caution: typicalYear,
};

export const tmyxYear: Citation = {
  title: 'Typical-year weather file of Bologna 2004 to 2018 (TMYx): monthly means of the hourly values',
  readAt: 'https://github.com/CenterForTheBuiltEnvironment/clima tests/python',
  provenance: 'read',
  caution: typicalYear,
};

export const pvgisYear: Citation = {
  title: 'European Commission JRC, PVGIS typical year 2005 to 2023 at 45.0 N 8.0 E: monthly means',
  readAt: 'https://github.com/pvlib/pvlib-python tests/data/tmy_45.000_8.000_2005_2023.epw',
  provenance: 'read',
  caution: `${typicalYear} Its June is high.`,
};

export const usYears: Citation = {
  title: 'US NREL TMY3 statistics files (.stat): global and diffuse daily averages, dry bulb',
  readAt:
    'https://github.com/NREL/EnergyPlus weather ; https://github.com/ladybug-tools/ladybug tests/assets/epw',
  provenance: 'read',
  caution: typicalYear,
};

export const canadianYears: Citation = {
  title: 'Canadian CWEC statistics file (.stat) of Yellowknife: global and diffuse daily averages, dry bulb',
  readAt: 'https://github.com/NREL/openstudio-standards data/weather/CAN_NT_Yellowknife.719360_CWEC.stat',
  provenance: 'read',
  caution: typicalYear,
};

export const ukRegions: Citation = {
  title:
    'UK Standard Assessment Procedure SAP 10.2, appendix U, tables U1 (temperature) and U3 (mean global horizontal irradiance)',
  readAt: 'stored public files holding the tables (found by the string "Severn Wales / Severn England")',
  provenance: 'read',
  caution:
    'A region of a country, means over day and night; the table has no diffuse part. The latitude of a region is that of table U4 from memory, its longitude our own choice within the region: both only serve to find the nearest.',
};

export const extraterrestrialSource: Citation = {
  title:
    'Allen, Pereira, Raes and Smith, FAO Irrigation and Drainage Paper 56 (1998), chapter 3, equations 21 to 25, 34 and 37',
  readAt: 'https://rdrr.io/github/gopalpenny/fao56/man/get_Ra_daily.html',
  provenance: 'read',
  caution: 'Its declination is up to 1° off in autumn, and the paper limits it beyond 55° of latitude.',
};

export const extraterrestrialTable: Citation = {
  title: 'FAO Irrigation and Drainage Paper 56 (1998), annex 2, tables 2.6 and 2.7 (15th of the month)',
  readAt: 'a public program holding the tables (found by the string "15.0, 20.4, 27.2, 34.7")',
  provenance: 'read',
  caution:
    'Transcribed at second hand; rows 62, 66, 68 and 70 of table 2.6 hold misprints there and are not used.',
};

export const sunPositionSource: Citation = {
  title: 'Reda and Andreas, Solar Position Algorithm, NREL/TP-560-34302 (2008), appendix A.5',
  readAt: 'https://github.com/pvlib/pvlib-python tests/test_solarposition.py and tests/test_spa.py',
  provenance: 'read',
};

export const solarHandbook: Citation = {
  title: 'Duffie and Beckman, Solar Engineering of Thermal Processes, chapters 1 and 2',
  readAt:
    'https://www.transtutors.com/questions/example-1-5-1-at-madison-city-wisconsin-what-is-the-solar-time--10519304.htm',
  provenance: 'read',
  caution: 'Examples 1.5.1 and 1.6.1 as quoted on that page; the book itself was not read.',
};

export const diffuseShareSource: Citation = {
  title: 'Erbs, Klein and Duffie, Solar Energy 28 (1982): diffuse share of hours, days and months',
  provenance: 'memory',
  caution:
    'The coefficients were seen in public programs and give the published values of a solar library’s tests for hours.',
};

export const hourRatioSource: Citation = {
  title: 'Collares-Pereira and Rabl, Solar Energy 22 (1979): ratio of hourly to daily radiation',
  readAt: 'http://www.saecanet.com/calculation_page/000435_000564_ratio_of_hourly_total_rt.php',
  provenance: 'read',
};

export const solarLibraryTests: Citation = {
  title:
    'Test suite of a public solar library: tilted sky, ground, clear sky, incidence, cell temperature, panel power',
  readAt: 'https://github.com/pvlib/pvlib-python tests',
  provenance: 'read',
};

export const lossesSource: Citation = {
  title: 'Dobos, PVWatts Version 5 Manual, NREL/TP-6A20-62641 (2014): losses of a photovoltaic system',
  readAt: 'https://github.com/pvlib/pvlib-python pvlib/pvsystem.py, tests/test_pvsystem.py',
  provenance: 'read',
  caution: 'Without temperature, controller and battery.',
};
