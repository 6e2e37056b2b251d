import type { Build } from '../../build/build.ts';
import type { Appliance } from '../../build/gas.ts';
import { fullRateOf, gasBurntIn } from '../../build/gas-use.ts';
import { heatingValueOf } from '../../catalogue/gas/properties.ts';
import type { Part, Step } from '../../engine/finding.ts';
import { energyWh, massFlow, power } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { joined } from '../routed.ts';

const joulesPerWattHour = 3600;

/** What appliances take with everything on them lit, each from the input on its plate. */
export function ratesStep(what: string, appliances: readonly Appliance[], build: Build): Step {
  const burns = gasBurntIn(build);
  const rows = appliances.map(({ name, path, input }): Part => {
    const rate = input ? fullRateOf({ name, path, hosts: [], input }, burns) : 0;
    return {
      name,
      path: [...path, 'input'],
      origin: input && 'powerW' in input ? 'computed' : 'typed',
      values: [input && 'powerW' in input ? power(input.powerW) : massFlow(rate ?? 0)],
      adds: massFlow(rate ?? 0),
    };
  });
  return {
    what: `${what}: ṁ = P / h`,
    sum: heatingValuesIn(appliances, build),
    result: massFlow(rows.reduce((sum, { adds }) => sum + adds.value, 0)),
    parts: { columns: ['input', 'takes'], rows },
    paths: rows.map(({ path }) => path),
  };
}

/** The heating values that the inputs are counted with. */
export function heatingValuesIn(appliances: readonly Appliance[], build: Build): Phrase {
  const burns = gasBurntIn(build);
  const kinds = new Set(
    appliances.flatMap(({ input }) =>
      input && 'powerW' in input ? [input.heatingValue ?? ('net' as const)] : [],
    ),
  );
  if (kinds.size === 0) return say`as typed`;
  const values = [...kinds].map(
    (kind) => say`${energyWh(heatingValueOf(burns, kind) / joulesPerWattHour)} for a power that is ${kind}`,
  );
  return say`h from a kilogram of ${burns}: ${joined(values)}`;
}
