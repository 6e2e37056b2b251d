import type { GasStore } from '../../build/gas.ts';
import { atmospherePa, saturationPressurePa } from '../../calc/gas/saturation.ts';
import {
  leastRegulatorInletPa,
  lyingTankAir,
  type OffTakeDuty,
  offTakeTableAmbientC,
} from '../../catalogue/gas/off-take.ts';
import { gasProperties } from '../../catalogue/gas/properties.ts';
import type { Part, Step } from '../../engine/finding.ts';
import {
  count,
  energyWh,
  factor,
  kelvins,
  mass,
  massFlow,
  power,
  pressure,
  share,
} from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { type Given, type LongUse, lyingSides, type Source, tankLeft } from '../gas-off-take.ts';
import { ratesStep } from './gas-rate.ts';

/*
 * How much gas comes in the cold. Temperatures are bare numbers in °C: half a degree counts here, and the sums are of °C.
 */

interface Boiling {
  readonly store: GasStore;
  readonly boilsC: number;
  readonly starvesBelowC: number;
  readonly ambientC: number;
}

const winterLow = ['living', 'winter_low'];

/** Where the vapour has the pressure that is needed, and how far the winter low is from there. */
export const boilingSteps = ({ store, boilsC, starvesBelowC, ambientC }: Boiling): readonly Step[] => [
  {
    what: `Where ${store.gas} boils: its vapour has the pressure of the air there`,
    sum: say`${factor(boilsC)} °C, with ${pressure(saturationPressurePa(store.gas, boilsC))} of vapour against ${pressure(atmospherePa)} of air; at and below that nothing comes`,
    paths: [[...store.path, 'contents']],
  },
  {
    what: 'Where the vapour just feeds the regulator',
    sum: say`${factor(starvesBelowC)} °C, with ${pressure(saturationPressurePa(store.gas, starvesBelowC))} of vapour: ${pressure(leastRegulatorInletPa)} more than the air has`,
  },
  {
    what: 'How far the winter low is above the boiling point: T_a − T_b',
    sum: say`${factor(ambientC)} °C − ${inBrackets(boilsC)} °C; it fails at ${factor(starvesBelowC)} °C and below`,
    result: kelvins(ambientC - boilsC),
    paths: [winterLow],
  },
];

const inBrackets = (celsius: number) => (celsius < 0 ? say`(${factor(celsius)})` : say`${factor(celsius)}`);

/** What is left in the cold of what the table prints, what that makes, and what is taken. */
export const atOnceSteps = (source: Source, short: Given): readonly Step[] => [
  coldStep(source, short),
  ...printedSteps(source, short, 'bursts of 20 minutes'),
  ratesStep('What all appliances take at once with everything lit', source.gas.appliances, source.build),
];

const givenText: Readonly<Record<OffTakeDuty, string>> = {
  uninterrupted: 'without a pause',
  'half of the time': 'half of the time',
  'bursts of 20 minutes': 'for 20 minutes at a time',
};

/** For each duration what is given, what each appliance takes of it, and what so much of a mix gets. */
export function longSteps(
  source: Source,
  { parts, part, needKgPerS, givesKgPerS }: LongUse,
): readonly Step[] {
  const [first] = parts;
  const durations = new Map(parts.map(({ duty, given }) => [duty, given]));
  const rows = parts.map(
    ({ appliance, takesKgPerS, given }): Part => ({
      name: appliance.name,
      path: [...appliance.path, 'input'],
      origin: 'computed',
      values: [massFlow(takesKgPerS), massFlow(given.kgPerS)],
      adds: share(takesKgPerS / given.kgPerS),
    }),
  );
  return [
    ...(first ? [coldStep(source, first.given)] : []),
    ...[...durations].flatMap(([duty, given]) => printedSteps(source, given, duty)),
    {
      what: 'How much each takes of what is given for as long as it burns: Σ ṁ / ṁ_given',
      result: share(part),
      parts: { columns: ['takes', 'given', 'part'], rows },
    },
    {
      what: 'What is given for so long to all of them: Σ ṁ over that part',
      sum: say`${massFlow(needKgPerS)} / ${share(part)}`,
      result: massFlow(givesKgPerS),
    },
    ratesStep(
      'What they take while they burn for hours',
      parts.map(({ appliance }) => appliance),
      source.build,
    ),
  ];
}

function coldStep({ ambientC }: Source, { coldShare, starvesBelowC, tank }: Given): Step {
  const tableC = tank ? lyingTankAir.ambientC : offTakeTableAmbientC;
  const clipped = ambientC > tableC ? ', and never more than all of it' : '';
  const held = tank ? 'the guide is for' : 'the table is held to be for';
  return {
    what: 'What the cold leaves of what is printed: k = (T_a − T_b) / (T_table − T_b)',
    sum: say`(${factor(ambientC)} − ${inBrackets(starvesBelowC)}) / (${factor(tableC)} − ${inBrackets(starvesBelowC)}), in °C${clipped}; ${held} ${factor(tableC)} °C, and at ${factor(starvesBelowC)} °C ${tank ? 'the liquid is at its coldest' : 'the vapour just feeds the regulator'}`,
    result: share(coldShare),
    paths: [winterLow],
  };
}

/** Of a tank by its size, of a cylinder by its row of the table; then as many of them as are in use, in the cold. */
function printedSteps(source: Source, given: Given, duty: OffTakeDuty): readonly Step[] {
  const { feeding } = source;
  const { store, tank, rowKg = 0, rowKgPerS = 0, printedKgPerS, coldShare, kgPerS } = given;
  if (tank) return tankSteps(feeding.length, given, tank);
  const isSmaller = store.holdsKg < rowKg;
  return [
    {
      what: `What the table prints for a cylinder, ${givenText[duty]}`,
      sum: isSmaller
        ? say`${massFlow(rowKgPerS)} of its smallest · ${mass(store.holdsKg)} / ${mass(rowKg)}`
        : say`for ${mass(rowKg)}, the next size that is not larger than the ${mass(store.holdsKg)} of ${store.name}`,
      result: massFlow(printedKgPerS),
      paths: [[...store.path, 'holds']],
    },
    {
      what: `What the cylinders in use give in this cold, ${givenText[duty]}: n·ṁ·k`,
      sum: say`${count(feeding.length)} · ${massFlow(printedKgPerS)} · ${share(coldShare)}`,
      result: massFlow(kgPerS),
      paths: [['gas', 'in_use']],
    },
  ];
}

const inchM = 0.0254;
const joulesPerWattHour = 3600;

function tankSteps(
  inUse: number,
  { store, coldShare, kgPerS }: Given,
  { printedW, factor: filling }: NonNullable<Given['tank']>,
): readonly Step[] {
  const { box, gas, path } = store;
  const { diameterM, lengthM } = box ? lyingSides(box) : { diameterM: 0, lengthM: 0 };
  const { grossJPerKg } = gasProperties[gas];
  return [
    {
      what: `The heat of the gas that boils in a lying tank: P = D·L·K`,
      sum: say`${factor(diameterM / inchM)} · ${factor(lengthM / inchM)} · ${count(filling)} · 0.293071 W, with D and L in inches and K for a tank that is ${share(tankLeft)} full`,
      result: power(printedW),
      paths: [[...path, 'size']],
    },
    {
      what: 'What it gives in this cold: n·P·k / h',
      sum: say`${count(inUse)} · ${power(printedW)} · ${share(coldShare)} / ${energyWh(grossJPerKg / joulesPerWattHour)} that a kilogram gives, gross`,
      result: massFlow(kgPerS),
    },
  ];
}
