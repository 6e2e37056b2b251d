import type { Build } from '../../build/build.ts';
import { monthName } from '../../build/energy.ts';
import type { GasStore } from '../../build/gas.ts';
import type { ApplianceGas, GasUse, UseOfGas } from '../../build/gas-use.ts';
import { heatDemandOf } from '../../build/heat-demand.ts';
import { asLiquidC } from '../../build/liquid-water.ts';
import { hotWaterC, waterUseOf } from '../../build/water-use.ts';
import { daysOfGas } from '../../calc/gas/stored.ts';
import { heldHeat } from '../../calc/water/heating.ts';
import { heatingValueOf } from '../../catalogue/gas/properties.ts';
import type { PlanPath, Step } from '../../engine/finding.ts';
import {
  closeC,
  count,
  duration,
  energyWh,
  factor,
  mass,
  massFlow,
  power,
  share,
  smallMass,
  volume,
} from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { heatingValuesIn } from './gas-rate.ts';
import { contentsStep } from './gas-store.ts';

/*
 * How many days the gas lasts: what is carried, what each appliance burns on a winter day, and one over the other.
 */

interface Lasting {
  readonly build: Build;
  readonly stores: readonly GasStore[];
  readonly use: GasUse;
  readonly winterKg: number;
  readonly days: number;
}

const joulesPerWattHour = 3600;

export function daysSteps({ build, stores, use, winterKg, days }: Lasting): readonly Step[] {
  const burning = use.byAppliance.filter((each) => each.winterKg > 0);
  const heldKg = stores.reduce((sum, { holdsKg }) => sum + holdsKg, 0);
  const lasts = daysOfGas(heldKg, [winterKg]);
  return [
    ...heldSteps(stores, heldKg),
    ...burning.flatMap((appliance) =>
      appliance.uses
        .filter((each) => each.winterKg > 0)
        .flatMap((each) => [
          ...(each.use === 'water heating' ? hotWaterSteps(build) : []),
          useStep(appliance, each, use.burns, build),
        ]),
    ),
    ...(burning.length > 1 || burning.some(({ uses }) => uses.length > 1)
      ? [
          {
            what: 'All of it on a winter day: Σ m_day',
            result: smallMass(winterKg),
            parts: {
              columns: ['burnt'],
              rows: burning.map(({ name, path, winterKg: adds }) => ({
                name,
                path,
                origin: 'computed',
                values: [],
                adds: smallMass(adds),
              })),
            },
          },
        ]
      : []),
    {
      what: 'Days between refills, as the plan says',
      result: count(days),
      paths: [['living', 'days_between_gas_refills']],
    },
    {
      what: 'How many days the gas lasts: n = Σ m / Σ m_day',
      sum: say`${smallMass(heldKg)} / ${smallMass(winterKg)} = ${factor(lasts)}`,
      result: count(lasts),
    },
  ];
}

/** One cylinder by itself, several with their sum. */
function heldSteps(stores: readonly GasStore[], heldKg: number): readonly Step[] {
  const each = stores.map(contentsStep);
  if (stores.length < 2) return each;
  return [
    ...each.filter((_, at) => stores[at]?.insideM3 !== undefined),
    {
      what: 'The gas in all of them together: Σ m',
      result: mass(heldKg),
      parts: {
        columns: ['holds'],
        rows: stores.map(({ name, path, holdsKg, insideM3 }) => ({
          name,
          path: [...path, 'holds'],
          origin: insideM3 === undefined ? 'typed' : 'computed',
          values: [],
          adds: mass(holdsKg),
        })),
      },
    },
  ];
}

/** The heat that the hot water of a day takes up. */
function hotWaterSteps(build: Build): readonly Step[] {
  const { hotM3PerDay, hotEnergyJPerDay } = waterUseOf(build);
  const hotC = hotWaterC(build);
  const coldC = build.water && asLiquidC(build.water.coldC);
  if (hotM3PerDay === undefined || hotEnergyJPerDay === undefined) return [];
  if (hotC === undefined || coldC === undefined || hotC <= coldC) return [];
  const { massKg, capacityJKgK } = heldHeat({ volumeM3: hotM3PerDay, fromC: coldC, toC: hotC });
  return [
    {
      what: 'The heat that the hot water of a day takes up, drawn as hot as it stands: Q = m·c·ΔT',
      sum: say`${mass(massKg)} (${volume(hotM3PerDay)}) · ${factor(capacityJKgK / joulesPerWattHour)} Wh for a kilogram and a degree · ${factor(hotC - coldC)} degrees, from ${closeC(coldC)} to ${closeC(hotC)}`,
      result: energyWh(hotEnergyJPerDay / joulesPerWattHour),
      paths: [
        ['living', 'hot_litres_per_person_day'],
        ['people', 'sleepers'],
        ['water', 'heater', 'temperature'],
        ['water', 'cold'],
      ],
    },
  ];
}

/** Lit for a time at its input, or heat that is wanted over what a kilogram gives. */
function useStep(
  { name, path }: ApplianceGas,
  { use, winterKg, cause }: UseOfGas,
  burns: GasUse['burns'],
  build: Build,
): Step {
  const appliance = build.gas?.appliances.find((each) => each.name === name);
  const result = smallMass(winterKg);
  if ('litS' in cause)
    return {
      what: `${name}, ${use}: m = ṁ·t, with all of it lit, ṁ = P / h`,
      sum: say`${massFlow(cause.gasKgPerS)} · ${duration(cause.litS)}${inputText(appliance, build)}`,
      result,
      paths: [[...path, 'input'], ...(use === 'refrigerator' ? [] : [['living', 'cooking']])],
    };
  const { heatJ, efficiency, isUsual, sharedBy } = cause;
  const shared = sharedBy === 1 ? '' : say` / ${count(sharedBy)} appliances that share it`;
  const usual = isUsual ? ', as usual since the plan does not say,' : '';
  return {
    what: `${name}, ${use}: m = Q / (η·h)`,
    sum: say`${energyWh(heatJ / joulesPerWattHour)} / (${share(efficiency)} that becomes heat${usual} · ${energyWh(heatingValueOf(burns) / joulesPerWattHour)} a kilogram)${shared}; Q is ${heatText(use, build)}`,
    result,
    paths: heatPaths(use),
  };
}

function inputText(
  appliance: NonNullable<Build['gas']>['appliances'][number] | undefined,
  build: Build,
): Phrase {
  const input = appliance?.input;
  if (!appliance || !input || !('powerW' in input)) return say`, as typed`;
  return say`; ṁ = ${power(input.powerW)} / h, with ${heatingValuesIn([appliance], build)}`;
}

/** Where the heat of a day comes from. */
function heatText(use: UseOfGas['use'], build: Build): Phrase {
  if (use === 'water heating') return say`that of the step before`;
  const months = heatDemandOf(build).worked?.months;
  if (!months) return say`the heat of a day at the plan's winter low`;
  const coldest = months.reduce((most, each) => (each.heatJPerDay > most.heatJPerDay ? each : most));
  return say`the heat of a mean day in ${monthName(coldest.month)}, the month that takes most; \`storystick explain heat.fuel\` is about that heat`;
}

const heatPaths = (use: UseOfGas['use']): readonly PlanPath[] =>
  use === 'water heating'
    ? [['water', 'heater', 'efficiency']]
    : [
        ['heat', 'heater', 'efficiency'],
        ['heat', 'inside'],
        ['living', 'winter_low'],
        ['living', 'place'],
      ];
