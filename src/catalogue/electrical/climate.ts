import type { Citation } from '../citation.ts';
import {
  ashraeYears,
  canadianYears,
  meteonormYear,
  pvgisYear,
  tmyxYear,
  ukRegions,
  usYears,
} from './climate-sources.ts';

/*
 * Monthly means of radiation and air temperature. What a plan types in comes first; these rows stand in for a place near one
 * of them. Every row is a typical year: single months are 10 to 20 % off, say so wherever one is used.
 */

export interface ClimatePlace {
  readonly name: string;
  /** North positive. */
  readonly latitudeDeg: number;
  /** East positive. */
  readonly longitudeDeg: number;
  readonly heightM?: number;
  /** Mean radiation of a day on a horizontal surface, January first, Wh/m². */
  readonly globalWhM2: readonly number[];
  /** Its diffuse part, where the source has it. */
  readonly diffuseWhM2?: readonly number[];
  /** Mean air temperature, °C. */
  readonly airC: readonly number[];
  readonly citation: Citation;
}

/** From kWh, as printed. Rounded to a whole Wh: the sources print no more than that. */
const thousand = (kilo: readonly number[]): number[] => kilo.map((value) => Math.round(value * 1000));

/** From means over day and night in W/m², as printed. */
const ukRegion = (
  name: string,
  latitudeDeg: number,
  longitudeDeg: number,
  irradianceWM2: readonly number[],
  airC: readonly number[],
): ClimatePlace => ({
  name,
  latitudeDeg,
  longitudeDeg,
  globalWhM2: irradianceWM2.map((value) => value * 24),
  airC,
  citation: ukRegions,
});

export const climatePlaces: readonly ClimatePlace[] = [
  {
    name: 'Munich, Germany',
    latitudeDeg: 48.13,
    longitudeDeg: 11.7,
    heightM: 529,
    globalWhM2: thousand([0.88, 1.65, 2.52, 4.02, 5.5, 5.02, 5.61, 4.71, 3.14, 2.08, 1.03, 0.67]),
    diffuseWhM2: thousand([0.67, 0.92, 1.54, 2.2, 2.7, 3.23, 2.72, 2.28, 1.68, 1.25, 0.77, 0.5]),
    airC: [-0.5, -2.6, 2.7, 7.4, 12.4, 14.4, 18.0, 17.3, 13.6, 9.0, 3.6, -0.2],
    citation: ashraeYears,
  },
  {
    name: 'Hamburg, Germany',
    latitudeDeg: 53.63,
    longitudeDeg: 10.0,
    heightM: 16,
    globalWhM2: thousand([0.49, 1.12, 2.24, 3.79, 4.95, 4.93, 4.61, 3.98, 2.62, 1.51, 0.72, 0.36]),
    diffuseWhM2: thousand([0.41, 0.77, 1.41, 2.25, 2.76, 3.15, 3.07, 2.57, 1.76, 1.08, 0.51, 0.3]),
    airC: [2.0, 0.2, 4.4, 6.9, 12.8, 15.8, 16.9, 17.4, 13.5, 9.8, 5.2, 2.6],
    citation: ashraeYears,
  },
  {
    name: 'Berlin, Germany',
    latitudeDeg: 52.47,
    longitudeDeg: 13.4,
    heightM: 49,
    globalWhM2: thousand([0.53, 1.18, 1.93, 3.84, 4.84, 5.04, 5.11, 4.35, 2.74, 1.54, 0.8, 0.41]),
    diffuseWhM2: thousand([0.44, 0.75, 1.42, 2.09, 2.5, 3.05, 2.83, 2.4, 1.84, 1.02, 0.51, 0.34]),
    airC: [1.9, 0.3, 5.4, 8.3, 14.0, 17.6, 19.1, 18.5, 15.0, 10.2, 4.4, 2.4],
    citation: ashraeYears,
  },
  {
    name: 'Paris-Orly, France',
    latitudeDeg: 48.73,
    longitudeDeg: 2.4,
    heightM: 96,
    globalWhM2: thousand([0.78, 1.39, 2.28, 3.63, 4.61, 5.31, 5.36, 4.86, 3.12, 2.03, 1.04, 0.61]),
    diffuseWhM2: thousand([0.55, 0.92, 1.71, 2.49, 3.13, 3.21, 3.01, 2.49, 2.01, 1.22, 0.7, 0.49]),
    airC: [3.9, 4.2, 7.0, 10.0, 14.3, 16.8, 19.4, 19.7, 15.7, 11.3, 6.4, 4.5],
    citation: ashraeYears,
  },
  {
    name: 'Zurich-Kloten, Switzerland',
    latitudeDeg: 47.48,
    longitudeDeg: 8.536,
    heightM: 436,
    globalWhM2: thousand([0.96, 1.81, 3.06, 4.31, 5.02, 5.53, 5.4, 4.72, 3.5, 1.99, 1.11, 0.77]),
    diffuseWhM2: thousand([0.51, 1.01, 1.66, 2.13, 2.62, 2.63, 2.77, 2.21, 1.79, 1.16, 0.63, 0.5]),
    airC: [0.6, 2.0, 5.6, 9.6, 14.6, 17.9, 19.0, 18.5, 14.0, 10.3, 4.7, 1.6],
    citation: meteonormYear,
  },
  {
    name: 'Bologna, Italy',
    latitudeDeg: 44.53,
    longitudeDeg: 11.3,
    heightM: 37,
    globalWhM2: thousand([1.48, 2.4, 3.64, 5.28, 6.48, 7.08, 7.36, 6.42, 4.72, 3.0, 1.61, 1.25]),
    diffuseWhM2: thousand([0.87, 1.16, 1.75, 2.19, 2.49, 2.59, 2.18, 1.93, 1.76, 1.34, 1.02, 0.73]),
    airC: [2.4, 4.8, 9.6, 14.0, 18.8, 23.0, 25.7, 25.1, 20.1, 16.1, 9.5, 3.7],
    citation: tmyxYear,
  },
  {
    name: 'Amsterdam, Netherlands',
    latitudeDeg: 52.3,
    longitudeDeg: 4.77,
    heightM: -2,
    globalWhM2: thousand([0.64, 1.36, 2.48, 3.43, 4.81, 4.93, 4.93, 4.07, 2.72, 1.55, 0.82, 0.46]),
    diffuseWhM2: thousand([0.46, 0.83, 1.36, 2.09, 2.87, 2.87, 2.63, 2.46, 1.72, 1.12, 0.59, 0.36]),
    airC: [4.2, 3.7, 5.3, 8.4, 12.7, 15.2, 16.9, 17.1, 14.4, 10.9, 6.5, 4.4],
    citation: ashraeYears,
  },
  {
    name: 'Piedmont at 45.0 N 8.0 E, Italy',
    latitudeDeg: 45.0,
    longitudeDeg: 8.0,
    heightM: 250,
    globalWhM2: thousand([1.54, 2.39, 3.82, 4.05, 4.83, 7.21, 6.62, 5.76, 4.52, 2.87, 2.02, 1.49]),
    diffuseWhM2: thousand([0.64, 1.06, 1.44, 1.97, 2.26, 2.5, 2.44, 2.19, 1.67, 1.26, 0.74, 0.57]),
    airC: [5.2, 7.0, 8.7, 12.4, 17.0, 22.5, 21.9, 22.1, 20.2, 15.0, 6.3, 4.1],
    citation: pvgisYear,
  },
  {
    name: 'Golden, Colorado, US',
    latitudeDeg: 39.73,
    longitudeDeg: -105.17,
    heightM: 1829,
    globalWhM2: thousand([
      2.317, 3.049, 4.701, 5.685, 6.114, 6.262, 6.175, 5.892, 4.929, 3.482, 2.881, 1.701,
    ]),
    diffuseWhM2: thousand([
      0.803, 1.023, 1.423, 1.962, 2.322, 2.558, 2.145, 2.099, 1.764, 1.209, 0.725, 0.936,
    ]),
    airC: [1.1, -1.3, 3.2, 8.4, 13.1, 18.8, 20.8, 21.5, 17.0, 9.4, 2.6, 1.8],
    citation: usYears,
  },
  {
    name: 'Phoenix, Arizona, US',
    latitudeDeg: 33.45,
    longitudeDeg: -111.98,
    heightM: 337,
    globalWhM2: thousand([3.287, 4.162, 5.336, 7.086, 7.844, 8.318, 7.616, 7.127, 6.34, 4.823, 3.773, 3.07]),
    diffuseWhM2: thousand([
      0.999, 1.282, 1.653, 1.779, 1.996, 1.946, 2.207, 1.965, 1.58, 1.271, 0.977, 0.874,
    ]),
    airC: [13.0, 15.7, 17.3, 23.7, 27.3, 34.0, 35.6, 33.8, 30.4, 24.8, 18.0, 11.7],
    citation: usYears,
  },
  {
    name: 'Chicago, Illinois, US',
    latitudeDeg: 41.98,
    longitudeDeg: -87.92,
    heightM: 201,
    globalWhM2: thousand([1.76, 2.49, 3.44, 4.39, 5.98, 6.29, 6.18, 5.16, 4.19, 2.94, 1.82, 1.5]),
    diffuseWhM2: thousand([0.96, 1.33, 1.74, 2.06, 2.54, 2.69, 2.8, 2.42, 1.86, 1.39, 1.09, 0.8]),
    airC: [-4.6, -2.5, 3.8, 10.0, 15.3, 21.1, 24.1, 21.8, 18.1, 11.0, 4.7, -3.7],
    citation: usYears,
  },
  {
    name: 'New York, Central Park, US',
    latitudeDeg: 40.78,
    longitudeDeg: -73.97,
    heightM: 40,
    globalWhM2: thousand([1.85, 2.78, 4.0, 4.93, 5.41, 6.39, 6.23, 5.43, 4.38, 3.2, 2.13, 1.6]),
    diffuseWhM2: thousand([0.96, 1.29, 1.77, 2.24, 2.79, 2.96, 3.0, 2.58, 2.13, 1.51, 1.07, 0.85]),
    airC: [-1.7, 1.5, 6.5, 11.3, 17.2, 22.2, 25.0, 23.2, 20.2, 13.0, 8.9, 1.9],
    citation: usYears,
  },
  {
    name: 'Yellowknife, Northwest Territories, Canada',
    latitudeDeg: 62.47,
    longitudeDeg: -114.43,
    heightM: 206,
    globalWhM2: thousand([
      0.299, 1.224, 3.052, 4.944, 5.633, 6.221, 5.602, 4.037, 2.313, 0.852, 0.373, 0.146,
    ]),
    diffuseWhM2: thousand([0.187, 0.474, 1.217, 2.141, 2.08, 2.034, 2.257, 1.45, 1.095, 0.591, 0.222, 0.087]),
    airC: [-25.5, -24.5, -18.0, -5.4, 4.8, 13.5, 16.6, 14.0, 6.5, -1.4, -13.8, -22.8],
    citation: canadianYears,
  },
  ukRegion(
    'Thames, UK',
    51.6,
    -0.3,
    [30, 56, 98, 157, 195, 217, 203, 173, 127, 73, 39, 24],
    [5.1, 5.6, 7.4, 9.9, 13.0, 16.0, 17.9, 17.8, 15.2, 11.6, 8.0, 5.1],
  ),
  ukRegion(
    'South East England, UK',
    51.1,
    0.5,
    [32, 59, 104, 170, 208, 231, 216, 182, 133, 77, 41, 25],
    [5.0, 5.4, 7.1, 9.5, 12.6, 15.4, 17.4, 17.5, 15.0, 11.7, 8.1, 5.2],
  ),
  ukRegion(
    'Southern England, UK',
    50.9,
    -1.4,
    [35, 62, 109, 172, 209, 235, 217, 185, 138, 80, 44, 27],
    [5.4, 5.7, 7.3, 9.6, 12.6, 15.4, 17.3, 17.3, 15.0, 11.8, 8.4, 5.5],
  ),
  ukRegion(
    'South West England, UK',
    50.5,
    -4.2,
    [36, 63, 110, 174, 210, 233, 204, 182, 136, 78, 44, 28],
    [6.1, 6.4, 7.5, 9.3, 11.9, 14.5, 16.2, 16.3, 14.6, 11.8, 9.0, 6.4],
  ),
  ukRegion(
    'Severn (Wales and England), UK',
    51.5,
    -2.8,
    [32, 59, 105, 167, 201, 226, 206, 175, 130, 74, 40, 25],
    [4.9, 5.3, 7.0, 9.3, 12.2, 15.0, 16.7, 16.7, 14.4, 11.1, 7.8, 4.9],
  ),
  ukRegion(
    'Midlands, UK',
    52.6,
    -1.6,
    [28, 55, 97, 153, 191, 208, 194, 163, 121, 69, 35, 23],
    [4.3, 4.8, 6.6, 9.0, 11.8, 14.8, 16.6, 16.5, 14.0, 10.5, 7.1, 4.2],
  ),
  ukRegion(
    'West Pennines (Wales and England), UK',
    53.5,
    -2.6,
    [24, 51, 95, 152, 191, 203, 186, 152, 115, 65, 31, 20],
    [4.7, 5.2, 6.7, 9.1, 12.0, 14.7, 16.4, 16.3, 14.1, 10.7, 7.5, 4.6],
  ),
  ukRegion(
    'North West England / South West Scotland, UK',
    54.6,
    -3.3,
    [23, 51, 95, 157, 200, 203, 194, 156, 113, 62, 30, 19],
    [3.9, 4.3, 5.6, 7.9, 10.7, 13.2, 14.9, 14.8, 12.8, 9.7, 6.6, 3.7],
  ),
  ukRegion(
    'Borders (Scotland and England), UK',
    55.2,
    -2.4,
    [23, 50, 92, 151, 200, 196, 187, 153, 111, 61, 30, 18],
    [4.0, 4.5, 5.8, 7.9, 10.4, 13.3, 15.2, 15.1, 13.1, 9.7, 6.6, 3.7],
  ),
  ukRegion(
    'North East England, UK',
    54.4,
    -1.4,
    [25, 51, 95, 152, 196, 198, 190, 156, 115, 64, 32, 20],
    [4.0, 4.6, 6.1, 8.3, 10.9, 13.8, 15.8, 15.6, 13.5, 10.1, 6.7, 3.8],
  ),
  ukRegion(
    'East Pennines, UK',
    53.5,
    -1.2,
    [26, 54, 96, 150, 192, 200, 189, 157, 115, 66, 33, 21],
    [4.3, 4.9, 6.5, 8.9, 11.7, 14.6, 16.6, 16.4, 14.1, 10.6, 7.1, 4.2],
  ),
  ukRegion(
    'East Anglia, UK',
    52.1,
    0.8,
    [30, 58, 101, 165, 203, 220, 206, 173, 128, 74, 39, 24],
    [4.7, 5.2, 7.0, 9.5, 12.5, 15.4, 17.6, 17.6, 15.0, 11.4, 7.7, 4.7],
  ),
  ukRegion(
    'Wales, UK',
    52.5,
    -3.8,
    [29, 57, 104, 164, 205, 220, 199, 167, 120, 68, 35, 22],
    [5.0, 5.3, 6.5, 8.5, 11.2, 13.7, 15.3, 15.3, 13.5, 10.7, 7.8, 5.2],
  ),
  ukRegion(
    'West Scotland, UK',
    55.8,
    -4.5,
    [19, 46, 88, 148, 196, 193, 185, 150, 101, 55, 25, 15],
    [4.0, 4.4, 5.6, 7.9, 10.4, 13.0, 14.5, 14.4, 12.5, 9.3, 6.5, 3.8],
  ),
  ukRegion(
    'East Scotland, UK',
    56.4,
    -3.2,
    [21, 46, 89, 146, 198, 191, 183, 150, 106, 57, 27, 15],
    [3.6, 4.0, 5.4, 7.7, 10.1, 12.9, 14.6, 14.5, 12.5, 9.2, 6.1, 3.2],
  ),
  ukRegion(
    'North East Scotland, UK',
    57.2,
    -2.4,
    [19, 45, 89, 143, 194, 188, 177, 144, 101, 54, 25, 14],
    [3.3, 3.6, 5.0, 7.1, 9.3, 12.2, 14.0, 13.9, 12.0, 8.8, 5.7, 2.9],
  ),
  ukRegion(
    'Highland, UK',
    57.5,
    -4.5,
    [17, 43, 85, 145, 189, 185, 170, 139, 98, 51, 22, 12],
    [3.1, 3.2, 4.4, 6.6, 8.9, 11.4, 13.2, 13.1, 11.3, 8.2, 5.4, 2.7],
  ),
  ukRegion(
    'Western Isles, UK',
    58.0,
    -7.0,
    [16, 41, 87, 155, 205, 206, 185, 148, 101, 51, 21, 11],
    [5.2, 5.0, 5.8, 7.6, 9.7, 11.8, 13.4, 13.6, 12.1, 9.6, 7.3, 5.2],
  ),
  ukRegion(
    'Orkney, UK',
    59.0,
    -3.0,
    [14, 39, 84, 143, 205, 201, 178, 145, 100, 50, 19, 9],
    [4.4, 4.2, 5.0, 7.0, 8.9, 11.2, 13.1, 13.2, 11.7, 9.1, 6.6, 4.3],
  ),
  ukRegion(
    'Shetland, UK',
    60.2,
    -1.2,
    [12, 34, 79, 135, 196, 190, 168, 144, 90, 46, 16, 7],
    [4.6, 4.1, 4.7, 6.5, 8.3, 10.5, 12.4, 12.8, 11.4, 8.8, 6.5, 4.6],
  ),
  ukRegion(
    'Northern Ireland, UK',
    54.7,
    -6.5,
    [24, 52, 96, 155, 201, 198, 183, 150, 107, 61, 30, 18],
    [4.8, 5.2, 6.4, 8.4, 10.9, 13.5, 15.0, 14.9, 13.1, 10.0, 7.2, 4.7],
  ),
];
