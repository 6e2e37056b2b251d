import type { Complain } from './cross-check.ts';
import { refersTo } from './cross-check-named.ts';
import type { Plan } from './schema.ts';

/** Names of the air, of the alarms and of what puts fires out. */
export function checkAir(
  { air, van, protection }: Plan,
  things: ReadonlySet<string>,
  complain: Complain,
): void {
  const thing = refersTo(things, 'is not in the plan', 'the name of a fixture, a store or a tank', complain);
  const opening = refersTo(
    Object.keys(van.openings ?? {}),
    'is not one of the openings of the van',
    'its entry under `van.openings`',
    complain,
  );
  for (const [name, vent] of Object.entries(air?.vents ?? {})) {
    opening(vent.opening, ['air', 'vents', name, 'opening']);
    thing(vent.serves, ['air', 'vents', name, 'serves']);
  }
  const vent = refersTo(
    Object.keys(air?.vents ?? {}),
    'is not one of the vents',
    'its entry under `air.vents`',
    complain,
  );
  for (const [name, fan] of Object.entries(air?.fans ?? {})) {
    vent(fan.vent, ['air', 'fans', name, 'vent']);
    thing(fan.thing, ['air', 'fans', name, 'thing']);
    thing(fan.serves, ['air', 'fans', name, 'serves']);
  }
  for (const [name, alarm] of Object.entries(protection?.alarms ?? {}))
    thing(alarm.thing, ['protection', 'alarms', name, 'thing']);
  thing(protection?.extinguisher?.thing, ['protection', 'extinguisher', 'thing']);
  thing(protection?.fire_blanket?.thing, ['protection', 'fire_blanket', 'thing']);
}
