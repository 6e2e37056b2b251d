import { gasForInput, inputOfGas } from '../calc/gas/input-rate.ts';
import type { PlaceInVan } from '../calc/space/route.ts';
import { heatingValueOf } from '../catalogue/gas/properties.ts';
import type { PlanPath } from '../engine/finding.ts';
import type { Appliance, Gas } from './gas.ts';
import type { Heat } from './heat.ts';
import type { Whereabouts } from './layout.ts';

/** Something that burns a fuel aboard. */
export interface Flame {
  readonly name: string;
  readonly path: PlanPath;
  readonly thing?: string;
  readonly use?: Appliance['use'];
  readonly burns: 'propane' | 'butane' | 'diesel';
  /** A cooker whose plan does not say has none; of others nobody can tell. */
  readonly flue?: NonNullable<Appliance['flue']>;
  /** Of gas at full flame; undefined for diesel and where no input is given. */
  readonly gasKgPerS?: number;
  /** Net, W, at full flame. */
  readonly netInputW?: number;
  readonly place?: PlaceInVan;
  readonly whereabouts?: Whereabouts;
}

/** Every gas appliance, and the heater of the living space if it burns something and is not one of them. */
export function flamesOf(gas: Gas | undefined, heat: Heat | undefined): readonly Flame[] {
  const burns = gas?.stores[0]?.gas ?? 'propane';
  const appliances = (gas?.appliances ?? []).map((appliance): Flame => {
    const { name, path, thing, use, input, place, whereabouts } = appliance;
    const gasKgPerS = input && gasOfInput(input, burns);
    const flue = appliance.flue ?? (use === 'cooking' ? 'flueless' : undefined);
    return {
      name,
      path,
      burns,
      ...(thing !== undefined && { thing }),
      ...(use && { use }),
      ...(flue && { flue }),
      ...(gasKgPerS !== undefined && {
        gasKgPerS,
        netInputW: inputOfGas(gasKgPerS, heatingValueOf(burns, 'net')),
      }),
      ...(place && { place }),
      ...(whereabouts && { whereabouts }),
    };
  });
  const heater = heat?.heater;
  if (!heater || (heater.heatedBy !== 'gas' && heater.heatedBy !== 'diesel')) return appliances;
  const isListed = appliances.some(
    ({ thing, use }) =>
      (thing !== undefined && thing === heater.thing) ||
      (heater.heatedBy === 'gas' && heater.thing === undefined && use === 'room heating'),
  );
  if (isListed) return appliances;
  return [
    ...appliances,
    {
      name: heater.thing ?? 'heater',
      path: heater.path,
      use: 'room heating',
      burns: heater.heatedBy === 'diesel' ? 'diesel' : burns,
      ...(heater.thing !== undefined && { thing: heater.thing }),
      ...(heater.flue && { flue: heater.flue }),
      ...(heater.outputW !== undefined &&
        heater.efficiency !== undefined && { netInputW: heater.outputW / heater.efficiency }),
      ...(heater.place && { place: heater.place }),
      ...(heater.whereabouts && { whereabouts: heater.whereabouts }),
    },
  ];
}

export const gasOfInput = (input: NonNullable<Appliance['input']>, burns: 'propane' | 'butane'): number =>
  'gasKgPerS' in input
    ? input.gasKgPerS
    : gasForInput(input.powerW, heatingValueOf(burns, input.heatingValue));
