import type { Bank, Electrical } from '../../build/electrical.ts';
import { layUpDays, selfDischargeAh, standingLossAh } from '../../calc/electrical/standing-loss.ts';
import { usablePart } from '../../calc/electrical/usable-energy.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { chargeAh, count } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { electricalCaution } from '../cautions.ts';
import { bank } from '../chargers.ts';
import { electrical } from '../circuits.ts';
import { atVoltage } from '../drawn.ts';
import { observed } from '../observed.ts';

const text: RuleText = {
  id: 'electrical.standing-loss',
  topic: 'electrical',
  title: 'what drains while the van stands',
  why: 'A forgotten inverter or alarm empties a battery over a winter, and a battery left empty is often a dead one.',
  formula:
    'Q = 24 h · Σ I_k · d + C · s · d / 30.44 ≤ u · C; I_k standing currents at the lowest voltage, A, d days, C capacity, Ah, s self-discharge a month at 20 °C, u usable share',
  sources: [
    {
      title: 'Currents over time add up; the battery is full at first and nothing charges it',
      provenance: 'computed',
    },
  ],
  cautions: [
    electricalCaution,
    'A battery’s own monitor and switch draw too: count them as `standing`. A drained lead battery freezes; a lithium battery below its lowest voltage may never be charged again.',
  ],
  fix: 'Switch off what draws while the van stands, or charge it meanwhile.',
  place: ['electrical', 'lay_up'],
};

const layUp: Need<number> = (build) => {
  const found = electrical(build);
  if (!found.ok) return found;
  const { layUpDays: days } = found.value;
  return days === undefined ? missing('electrical.lay_up') : given(days);
};

interface Drain {
  readonly name: string;
  readonly currentA: number;
}

interface Drains {
  readonly known: readonly Drain[];
  readonly missing: readonly string[];
}

/** Circuits that say what they draw while nobody is there, and an inverter that is never off. */
const drains: Need<Drains> = (build) => {
  const found = electrical(build);
  if (!found.ok) return found;
  const { circuits, inverter, bank: battery } = found.value;
  const standing = circuits.flatMap(({ name, standing: draw }): Drain[] => {
    const currentA = draw && atVoltage(draw, battery?.lowestV);
    return currentA === undefined ? [] : [{ name, currentA }];
  });
  const idle = inverter?.alwaysOn ? idleOf(inverter.idleW, battery) : { known: [], missing: [] };
  if (standing.length + idle.known.length + idle.missing.length === 0)
    return missing('electrical.circuits.NAME.standing');
  return given({ known: [...standing, ...idle.known], missing: idle.missing });
};

const idleOf = (idleW: number | undefined, battery: Electrical['bank']): Drains => {
  if (idleW === undefined) return { known: [], missing: ['electrical.inverter.idle'] };
  return { known: battery ? [{ name: 'the inverter', currentA: idleW / battery.lowestV }] : [], missing: [] };
};

export default defineRule({
  ...text,
  needs: { bank, layUp, drains },
  check: ({ facts }) => ({ findings: [drained(facts.bank, facts.layUp, facts.drains)] }),
});

function drained(battery: Bank, days: number, { known, missing: keys }: Drains): Finding {
  const { chemistry, capacityAh, usableShare } = battery;
  const perMonth = chemistry.selfDischargePerMonth;
  const standingA = known.reduce((sum, { currentA }) => sum + currentA, 0);
  const selfAh = selfDischargeAh(capacityAh, perMonth.value, days);
  const lostAh = standingLossAh(standingA, days) + selfAh;
  const usableAh = usablePart(capacityAh, usableShare);
  if (keys.length > 0 && !exceeds(lostAh, usableAh))
    return observed(text, {
      verdict: 'not checked',
      subject: 'battery while the van stands',
      path: text.place,
      reason: say`The inverter is always on, but what it draws without load is not known; the rest takes ${chargeAh(lostAh)}.`,
      remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
      missing: keys,
    });
  const lastsDays = layUpDays({
    spareAh: usableAh,
    capacityAh,
    standingA,
    selfDischargePerMonth: perMonth.value,
  });
  return judge({
    rule: text,
    subject: 'battery while the van stands',
    path: text.place,
    kind: 'charge',
    measured: { value: chargeAh(lostAh).value, standard: 0 },
    limit: chargeAh(usableAh).value,
    sense: 'at most',
    broken: 'warn',
    reason: say`Over ${inDays(days)} ${chargeAh(standingLossAh(standingA, days))} are drawn${mostOf(known)} and ${chargeAh(selfAh)} lost by the battery itself; ${chargeAh(usableAh)} of a full one can be used, which lasts ${inDays(lastsDays)}.`,
    remedy: () => remedyFor(known, usableAh / days - selfAh / days, lastsDays),
    sources: perMonth.citations,
    ...(perMonth.caution !== undefined && { cautions: [perMonth.caution] }),
  });
}

/** Whole days, rounded down: nobody comes for the last hours. */
const inDays = (days: number): Phrase => {
  const whole = Math.floor(days + 1e-9);
  return say`${count(whole)} ${whole === 1 ? 'day' : 'days'}`;
};

const largestOf = (known: readonly Drain[]): Drain | undefined =>
  known.reduce<Drain | undefined>(
    (most, each) => (most === undefined || each.currentA > most.currentA ? each : most),
    undefined,
  );

function mostOf(known: readonly Drain[]): Phrase {
  const largest = largestOf(known);
  if (!largest) return [];
  const perDay = chargeAh(standingLossAh(largest.currentA, 1));
  return known.length === 1
    ? say` by ${largest.name} (${perDay} a day)`
    : say`, above all by ${largest.name} (${perDay} a day)`;
}

function remedyFor(known: readonly Drain[], leftPerDayAh: number, lastsDays: number): Phrase {
  const largest = largestOf(known);
  const charge = lastsDays < 1 ? say`leave a charger on` : say`charge it every ${inDays(lastsDays)}`;
  if (!largest || leftPerDayAh <= 0) return say`What it loses by itself is too much for so long: ${charge}.`;
  return say`Switch off what you can, ${largest.name} first, so that at most ${chargeAh(leftPerDayAh)} a day are drawn, or ${charge}.`;
}
