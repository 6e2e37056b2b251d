import type { Bank, Draw, Electrical, Inverter } from '../../build/electrical.ts';
import { layUpDays, selfDischargeAh, standingLossAh } from '../../calc/electrical/standing-loss.ts';
import { usablePart } from '../../calc/electrical/usable-energy.ts';
import type { Finding, Part, PlanPath, Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { chargeAh, count, current, power, share, voltage } from '../../engine/measure.ts';
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
  /** The key that says it. */
  readonly path: PlanPath;
  readonly draw: Draw;
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
  const standing = circuits.flatMap(({ name, path, standing: draw }): Drain[] => {
    const currentA = draw && atVoltage(draw, battery?.lowestV);
    return !draw || currentA === undefined ? [] : [{ name, path: [...path, 'standing'], draw, currentA }];
  });
  const idle = inverter?.alwaysOn ? idleOf(inverter, battery) : { known: [], missing: [] };
  if (standing.length + idle.known.length + idle.missing.length === 0)
    return missing('electrical.circuits.NAME.standing');
  return given({ known: [...standing, ...idle.known], missing: idle.missing });
};

const idleOf = ({ idleW, path }: Inverter, battery: Electrical['bank']): Drains => {
  if (idleW === undefined) return { known: [], missing: ['electrical.inverter.idle'] };
  const inverter = (lowestV: number): Drain => ({
    name: 'the inverter',
    path: [...path, 'idle'],
    draw: { powerW: idleW },
    currentA: idleW / lowestV,
  });
  return { known: battery ? [inverter(battery.lowestV)] : [], missing: [] };
};

export default defineRule({
  ...text,
  needs: { bank, layUp, drains },
  check: ({ facts }) => ({ findings: [drained(facts.bank, facts.layUp, facts.drains)] }),
  work: ({ facts }, { measured }) => (measured ? stepsOf(facts.bank, facts.layUp, facts.drains) : undefined),
});

function stepsOf(battery: Bank, days: number, { known }: Drains): readonly Step[] {
  const { path, chemistry, capacityAh, usableShare, lowestV } = battery;
  const { standingA, selfAh, lostAh, usableAh } = figuresOf(battery, days, known);
  const perMonth = chemistry.selfDischargePerMonth.value;
  const drawnAh = standingLossAh(standingA, days);
  const capacity = [...path, 'capacity'];
  return [
    {
      what: 'What stands on and draws: 24 h · Σ I_k · d',
      sum: say`each for 24 h a day · ${daysWords(days)}; watts are divided by ${voltage(lowestV)}, the lowest of the battery`,
      result: chargeAh(drawnAh),
      parts: {
        columns: ['says', 'current', 'drawn'],
        rows: known.map(
          ({ name, path: said, draw, currentA }): Part => ({
            name,
            path: said,
            origin: 'typed',
            values: ['powerW' in draw ? power(draw.powerW) : current(draw.currentA), current(currentA)],
            adds: chargeAh(standingLossAh(currentA, days)),
          }),
        ),
      },
      paths: [text.place],
    },
    {
      what: 'What the battery loses by itself: C · s · d / 30.44',
      sum: say`${chargeAh(capacityAh)} · ${share(perMonth)} a month · ${daysWords(days)} / 30.44 days of a month; no more than it holds`,
      result: chargeAh(selfAh),
      paths: [capacity, text.place],
    },
    {
      what: 'What of a full one can be used: u · C',
      sum: say`${share(usableShare)} · ${chargeAh(capacityAh)}`,
      result: chargeAh(usableAh),
      paths: [[...path, 'usable'], capacity],
    },
    {
      what: 'Both losses together: Q',
      sum: say`${chargeAh(drawnAh)} + ${chargeAh(selfAh)}`,
      result: chargeAh(lostAh),
    },
  ];
}

/** As the plan says them; a lay-up may be typed in hours. */
const daysWords = (days: number): string => `${Number(days.toPrecision(6))} ${days === 1 ? 'day' : 'days'}`;

function figuresOf({ chemistry, capacityAh, usableShare }: Bank, days: number, known: readonly Drain[]) {
  const standingA = known.reduce((sum, { currentA }) => sum + currentA, 0);
  const selfAh = selfDischargeAh(capacityAh, chemistry.selfDischargePerMonth.value, days);
  return {
    standingA,
    selfAh,
    lostAh: standingLossAh(standingA, days) + selfAh,
    usableAh: usablePart(capacityAh, usableShare),
  };
}

function drained(battery: Bank, days: number, { known, missing: keys }: Drains): Finding {
  const { chemistry, capacityAh } = battery;
  const perMonth = chemistry.selfDischargePerMonth;
  const { standingA, selfAh, lostAh, usableAh } = figuresOf(battery, days, known);
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
