import type { Circuit } from '../build/electrical.ts';
import { count, current, temperatureC } from '../engine/measure.ts';
import { type Phrase, say } from '../engine/phrase.ts';
import type { CircuitFigures } from './circuits.ts';
import { fusesBefore } from './fused.ts';

/** What an installer needs to know about a circuit besides its row. Equal notes have equal words. */
export function notesOf(figures: CircuitFigures): readonly Phrase[] {
  const { circuit, surgeA, designA, dropV, ampacity, failsAt, loadsKnown } = figures;
  const { name, wire, charges, alarm, switched, fuse, dropClass } = circuit;
  const before = fuse ? undefined : fusesBefore(figures).at(-1);
  return [
    ...(failsAt === undefined ? [] : [cannotBring(name, failsAt)]),
    ...(dropV !== undefined && !loadsKnown
      ? [say`not every load on the way from the battery is known: more may be lost than its drop says`]
      : []),
    ...(wire.size ? [insulationNote(wire)] : []),
    ...(wire.bundled > 1 ? [say`bundled: ${count(wire.bundled)} circuits lie together`] : []),
    ...(charges ? [say`charges the battery`] : []),
    ...(surgeA !== undefined && designA !== undefined && surgeA > designA * (1 + 1e-9)
      ? [say`carries up to ${current(surgeA)} while something starts`]
      : []),
    ...(dropClass === 'ordinary' ? [] : [say`voltage drop is counted as ${dropClass}`]),
    ...(wire.conductor && !ampacity ? [say`no table gives an ampacity for its size and insulation`] : []),
    ...(switched === undefined ? [] : [switched ? say`can be switched off` : say`cannot be switched off`]),
    ...(alarm ? [say`supplies the ${alarm}`] : []),
    ...(before
      ? [
          say`has no fuse of its own: the one before it is that of ${before.circuit.name}, ${current(before.fuse.ratingA)}`,
        ]
      : []),
    ...(fuse?.sheathed ? [say`sheathed between its source and its fuse`] : []),
    ...(fuse?.family.caution ? [say`fuse ${fuse.family.id}: ${fuse.family.caution}`] : []),
  ];
}

const places = {
  inside: 'inside the van',
  'engine space': 'in the engine space',
  roof: 'on the roof',
  'in insulation': 'in insulation',
} as const;

const insulationNote = ({ insulationC, lies, ambientC }: Circuit['wire']): Phrase =>
  say`lies ${places[lies]} at up to ${temperatureC(ambientC)}, insulation for ${temperatureC(insulationC)}`;

const cannotBring = (name: string, failsAt: string): Phrase =>
  failsAt === name
    ? say`its conductors cannot bring what is asked of them at any voltage`
    : say`no drop is known, since ${failsAt} cannot bring what is asked of it at any voltage`;
