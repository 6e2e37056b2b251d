import { finite, notNegative, positive } from '../argument.ts';

/*
 * Something that is set free in a room at a steady rate, spreads at once through its air, and leaves with it: carbon
 * dioxide as a share of volume, water vapour as kg/m³, or anything else whose amount is content times volume.
 */

export interface RoomBalance {
  readonly outside: number;
  /** Amount set free in a second: m³/s for a share of volume, kg/s for kg/m³. */
  readonly releasePerS: number;
  /** Of outside air, steady. */
  readonly flowM3S: number;
}

export interface FillingRoom extends RoomBalance {
  readonly volumeM3: number;
  /** Content at the start. */
  readonly start: number;
}

function checked(room: RoomBalance): void {
  notNegative(room.outside, 'The content of the outside air');
  notNegative(room.releasePerS, 'What is set free');
  notNegative(room.flowM3S, 'The flow of fresh air');
}

/**
 * Where the content ends up.
 *
 *     c = c_e + G / Q
 *
 * Infinite where something is set free and no air comes; c_e where nothing is set free.
 *
 * Throws RangeError if a value is not finite or negative.
 *
 * Source: balance of what comes and goes (computed).
 */
export function steadyContent(room: RoomBalance): number {
  checked(room);
  return room.releasePerS === 0 ? room.outside : room.outside + room.releasePerS / room.flowM3S;
}

/**
 * The content after a time.
 *
 *     c(t) = c_e + (c_0 − c_e) · e^(−n·t) + G / Q · (1 − e^(−n·t)),  n = Q / V
 *
 * V: m³ (> 0); t: s (≥ 0). The start counts as *difference* from outside: an older copy of a page prints a sum there,
 * which would add the outside air twice. It never passes beyond the steady content. Without flow: c_0 + G · t / V.
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: an engineering reference page on pollution of rooms (read), its newer copy.
 */
export function contentAfter(room: FillingRoom, seconds: number): number {
  checked(room);
  const changes =
    (room.flowM3S * notNegative(seconds, 'The time')) / positive(room.volumeM3, 'The volume of the room');
  const gone = -Math.expm1(-changes);
  // The share of the release that is still there; 1 for no flow at all.
  const kept = changes === 0 ? 1 : gone / changes;
  const released = ((room.releasePerS * seconds) / room.volumeM3) * kept;
  return (
    room.outside +
    (notNegative(room.start, 'The content at the start') - room.outside) * (1 - gone) +
    released
  );
}

/**
 * How long until the content reaches a limit from below, s. 0 where it starts there or above; infinite where it never
 * does.
 *
 *     t = −V / Q · ln(1 − (c_limit − c_0) / (c_steady − c_0))
 *
 * Throws RangeError as {@link contentAfter} does.
 */
export function secondsUntil(room: FillingRoom, limit: number): number {
  const steady = steadyContent(room);
  const volumeM3 = positive(room.volumeM3, 'The volume of the room');
  const toGo = finite(limit, 'The limit') - notNegative(room.start, 'The content at the start');
  if (toGo <= 0) return 0;
  if (steady <= limit) return Number.POSITIVE_INFINITY;
  // Without fresh air, or with so little that it does not count, it rises on a straight line.
  if (room.flowM3S === 0 || !Number.isFinite(steady)) return (toGo * volumeM3) / room.releasePerS;
  return (-volumeM3 / room.flowM3S) * Math.log1p(-toGo / (steady - room.start));
}

/** A stretch of time during which people and openings stay as they are. */
export interface RoomSpell {
  readonly seconds: number;
  readonly releasePerS: number;
  readonly flowM3S: number;
}

export interface SpellContent {
  readonly end: number;
  readonly greatest: number;
}

/**
 * The content through spells one after the other: at the end of each and the greatest in each.
 *
 * Within a spell it runs one way, so the greatest is at one of its ends.
 *
 * Throws RangeError as {@link contentAfter} does.
 */
export function contentThrough(
  room: { readonly outside: number; readonly volumeM3: number; readonly start: number },
  spells: readonly RoomSpell[],
): readonly SpellContent[] {
  let start = room.start;
  return spells.map(({ seconds, releasePerS, flowM3S }) => {
    const end = contentAfter({ ...room, start, releasePerS, flowM3S }, seconds);
    const greatest = Math.max(start, end);
    start = end;
    return { end, greatest };
  });
}
