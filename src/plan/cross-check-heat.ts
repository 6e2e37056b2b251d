import { materialNamed } from '../catalogue/materials.ts';
import type { Complain } from './cross-check.ts';
import { isPart, isWhole, refersTo } from './cross-check-named.ts';
import { checkWrap } from './cross-check-water.ts';
import { quote } from './quote.ts';
import type { Plan } from './schema.ts';

/** Names and numbers of the heat. */
export function checkHeat(
  { heat, van, routes, electrical }: Plan,
  things: ReadonlySet<string>,
  complain: Complain,
): void {
  if (!heat) return;
  const at = ['heat'];
  const thing = refersTo(things, 'is not in the plan', 'the name of a fixture, a store or a tank', complain);
  const opening = refersTo(
    Object.keys(van.openings ?? {}),
    'is not one of the openings of the van',
    'its entry under `van.openings`',
    complain,
  );
  for (const name of Object.keys(heat.panes ?? {})) opening(name, [...at, 'panes', name]);
  thing(heat.heater?.thing, [...at, 'heater', 'thing']);
  isPart(complain)(heat.heater?.efficiency, [...at, 'heater', 'efficiency']);
  refersTo(
    Object.keys(electrical?.circuits ?? {}),
    'is not one of the circuits',
    'its entry under `electrical.circuits`',
    complain,
  )(heat.heater?.circuit, [...at, 'heater', 'circuit']);
  const run = refersTo(
    Object.entries(routes?.runs ?? {})
      .filter(([, { carries }]) => carries === 'duct')
      .map(([name]) => name),
    'is not one of the runs that carry a duct',
    'a `length` of its own, or the run under `routes`',
    complain,
  );
  const whole = isWhole(complain);
  for (const [name, duct] of Object.entries(heat.ducts ?? {})) {
    run(duct.run, [...at, 'ducts', name, 'run']);
    whole(duct.outlets, [...at, 'ducts', name, 'outlets']);
  }
  whole(heat.heater?.duct_outlets_limit, [...at, 'heater', 'duct_outlets_limit']);
  checkWrap(heat.ribs?.covered_by, [...at, 'ribs', 'covered_by'], complain);
  const skin = heat.skin?.material;
  if (skin !== undefined && !materialNamed(skin)?.purposes.includes('metal'))
    complain([...at, 'skin', 'material'], `${quote(skin)} is not a metal of the catalogue`, {
      expected: 'steel, stainless steel or aluminium',
    });
  if (heat.asleep && heat.inside && heat.asleep.value > heat.inside.value)
    complain([...at, 'asleep'], 'it is warmer at night than by day', {
      expected: 'the lower temperature as `asleep`',
    });
}
