import type { Citation } from '../citation.ts';
import {
  applianceListSecond,
  applianceListThird,
  applianceListUk,
  applianceTableMacKay,
  applianceTableUs,
  campingArticles,
} from './supply-sources.ts';

/**
 * What published lists say of an appliance's power, from the least to the most of them all. To tell a slip from a figure,
 * never to judge by: the rating plate decides.
 */
export interface ApplianceLoad {
  readonly name: string;
  readonly leastW: number;
  readonly mostW: number;
  readonly citations: readonly Citation[];
}

const load = (name: string, leastW: number, mostW: number, ...citations: Citation[]): ApplianceLoad => ({
  name,
  leastW,
  mostW,
  citations,
});

export const applianceLoads: readonly ApplianceLoad[] = [
  load('kettle', 1200, 3000, applianceListSecond, applianceListUk, applianceTableMacKay),
  load('toaster', 800, 1500, applianceTableUs, applianceListUk),
  load('coffee maker', 900, 1200, applianceTableUs),
  load('hair dryer', 1000, 1875, applianceListSecond, applianceTableUs),
  load('hob ring', 1000, 2300, applianceTableMacKay, applianceListSecond),
  load('clothes iron', 1000, 1800, applianceTableUs),
  load('portable heater', 750, 1500, applianceTableUs),
  load('electric blanket', 60, 200, applianceTableUs, applianceListThird),
  load('dehumidifier', 300, 785, applianceListUk, applianceTableUs),
  load('extractor fan', 5, 36, applianceListUk, applianceListThird),
  load('laptop', 20, 100, applianceListUk, applianceListThird, applianceTableUs),
  load('tablet charger', 10, 10, applianceListUk),
  load('phone charger', 2.5, 7, applianceListUk, applianceListThird, applianceListSecond),
  load('router', 5, 15, applianceListThird, applianceListUk, applianceListSecond),
  load('LED lamp', 7, 10, applianceListThird, campingArticles),
  load('television', 30, 193, campingArticles, applianceListSecond),
  load('12 V compressor refrigerator', 40, 55, campingArticles),
];

/** Share of the day that a refrigerator runs. Warm surroundings raise it. */
export const refrigeratorRunningShare = { share: 1 / 3, citations: [applianceTableUs] } as const;

/** Power into the food over power out of the socket: a 900 W oven takes 1400 W. */
export const microwaveOven = {
  outputW: 900,
  inputW: 1400,
  efficiency: 900 / 1400,
  citations: [applianceTableMacKay],
} as const;
