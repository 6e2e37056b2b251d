import { finite, notNegative, positive } from '../argument.ts';
import { rootBetween } from '../root.ts';
import { volumeFromZeroC } from './moist-air.ts';
import { contentAfter, contentThrough, type RoomSpell, secondsUntil, steadyContent } from './room-balance.ts';

const million = 1e6;

/**
 * Carbon dioxide that a person breathes out, m³/s at 0 °C and 101.325 kPa.
 *
 *     G = RQ · BMR · M · T / p · 0.000211 L/s
 *
 * RQ: 0.85; BMR: basal metabolism, MJ/day (> 0); M: activity, met (> 0); T: 273.15 K; p: 101.325 kPa.
 *
 * Throws RangeError if a value is not finite or not above 0.
 *
 * Source: Persily and de Jonge 2017, Indoor Air 27(5) (memory); from the basal metabolism of its rows it gives back their
 * table 4 to one in the last place, which the table cuts off here and there.
 */
export function breathedOutM3S(basalMJPerDay: number, met: number): number {
  const respiratoryQuotient = 0.85;
  return (
    (respiratoryQuotient *
      positive(basalMJPerDay, 'The basal metabolism') *
      positive(met, 'The activity') *
      (273.15 / 101.325) *
      0.000211) /
    1000
  );
}

/**
 * Flow of a gas that a table states at 0 °C, at the temperature of the room, m³/s. At 20 °C 7.3 % more.
 *
 * Throws RangeError if a value is not finite or the flow negative.
 *
 * Source: gas law (computed).
 */
export const generationAtRoomM3S = (atZeroM3S: number, roomC: number): number =>
  volumeFromZeroC(atZeroM3S, roomC);

/** A room in which carbon dioxide is set free. */
export interface BreathedRoom {
  readonly outsidePpm: number;
  /** Of carbon dioxide at the temperature of the room, of all sources together. */
  readonly generationM3S: number;
  /** Of outside air. */
  readonly flowM3S: number;
}

export interface FillingBreathedRoom extends BreathedRoom {
  /** Of air: the room without what fills it. */
  readonly volumeM3: number;
  readonly startPpm: number;
}

/**
 * What carbon dioxide settles at, ppm.
 *
 *     C = C_e + 10⁶ · G / Q
 *
 * G: m³/s (≥ 0); Q: m³/s (≥ 0). Infinite without fresh air.
 *
 * Throws RangeError if a value is not finite or negative.
 *
 * Source: mass balance, printed on an engineering page on carbon dioxide in rooms (read).
 */
export function steadyPpm({ outsidePpm, generationM3S, flowM3S }: BreathedRoom): number {
  return steadyContent({ outside: outsidePpm, releasePerS: million * generationM3S, flowM3S });
}

const asShare = ({ outsidePpm, generationM3S, flowM3S, volumeM3, startPpm }: FillingBreathedRoom) => ({
  outside: outsidePpm,
  releasePerS: million * generationM3S,
  flowM3S,
  volumeM3,
  start: startPpm,
});

/**
 * Carbon dioxide after a time, ppm: see {@link contentAfter} for formula and source. s ≥ 0.
 *
 * Throws RangeError if a value is not finite or out of its range.
 */
export function ppmAfter(room: FillingBreathedRoom, seconds: number): number {
  return contentAfter(asShare(room), seconds);
}

/**
 * How long until carbon dioxide reaches a limit, s: 0 if it starts there, infinite if it never gets there.
 *
 * Throws RangeError as {@link ppmAfter} does.
 */
export function secondsUntilPpm(room: FillingBreathedRoom, limitPpm: number): number {
  return secondsUntil(asShare(room), limitPpm);
}

/** Part of an evening or a night. */
export interface BreathedSpell {
  readonly seconds: number;
  readonly generationM3S: number;
  readonly flowM3S: number;
}

export interface SpellPpm {
  readonly endPpm: number;
  readonly greatestPpm: number;
}

/**
 * Carbon dioxide through an evening and a night, spell by spell, ppm.
 *
 * Throws RangeError as {@link ppmAfter} does.
 */
export function ppmThrough(
  room: { readonly outsidePpm: number; readonly volumeM3: number; readonly startPpm: number },
  spells: readonly BreathedSpell[],
): readonly SpellPpm[] {
  const parts: readonly RoomSpell[] = spells.map(({ seconds, generationM3S, flowM3S }) => ({
    seconds,
    releasePerS: million * notNegative(generationM3S, 'What is breathed out'),
    flowM3S,
  }));
  return contentThrough(
    { outside: room.outsidePpm, volumeM3: room.volumeM3, start: room.startPpm },
    parts,
  ).map(({ end, greatest }) => ({ endPpm: end, greatestPpm: greatest }));
}

/**
 * Fresh air that keeps carbon dioxide at or below a limit for good, m³/s.
 *
 *     Q = 10⁶ · G / (C_limit − C_e)
 *
 * Infinite if the outside air is at the limit already and something is set free.
 *
 * Throws RangeError if a value is not finite or negative.
 *
 * Source: as {@link steadyPpm}.
 */
export function flowForSteadyPpm(generationM3S: number, outsidePpm: number, limitPpm: number): number {
  const released = million * notNegative(generationM3S, 'What is breathed out');
  const room = finite(limitPpm, 'The limit') - notNegative(outsidePpm, 'The content of the outside air');
  if (released === 0) return 0;
  return room > 0 ? released / room : Number.POSITIVE_INFINITY;
}

/**
 * The least fresh air with which carbon dioxide is at the limit only after `seconds`, m³/s: less than
 * {@link flowForSteadyPpm}, because a night ends. 0 where the room is large enough without any; infinite where no flow helps
 * (it starts at the limit, or the outside air is at it).
 *
 * Throws RangeError if a value is not finite or out of its range.
 *
 * Source: {@link ppmAfter}, solved (computed).
 */
export function flowForPpmAfterM3S(
  room: Omit<FillingBreathedRoom, 'flowM3S'>,
  limitPpm: number,
  seconds: number,
): number {
  positive(seconds, 'The time');
  const over = (flowM3S: number) => ppmAfter({ ...room, flowM3S }, seconds) - limitPpm;
  const enough = flowForSteadyPpm(room.generationM3S, room.outsidePpm, limitPpm);
  if (room.startPpm > limitPpm || !Number.isFinite(enough)) return Number.POSITIVE_INFINITY;
  if (over(0) <= 0) return 0;
  // With the steady flow it is below the limit still, or at it if it starts there.
  return over(enough) >= 0 ? enough : rootBetween(over, 0, enough, enough * 1e-12);
}
