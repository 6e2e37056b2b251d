import type { Bank, Electrical } from '../../build/electrical.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { chargeAh, count, current, power, voltage } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { electricalCaution } from '../cautions.ts';
import { bank } from '../chargers.ts';
import { figuresOf, theBattery } from '../circuits.ts';
import { type Drawn, drawnThrough } from '../drawn.ts';
import { withCircuits } from '../fused.ts';
import { observed } from '../observed.ts';
import { bankLimitStep } from '../working/charging.ts';
import { drawnStep, inverterTakes } from '../working/current.ts';

const text: RuleText = {
  id: 'electrical.battery-current',
  topic: 'electrical',
  title: 'current drawn from the battery',
  why: 'A lithium battery that is asked for too much switches itself off, lights and all; a lead battery sags and gets hot.',
  formula:
    'Σ a_k · I_k ≤ I_max; a_k the part that is on at once, I_k = P_k / U at the lowest voltage less the loss of its cables (R·I), A; at a start the greatest surge counts in place of that load’s own current, against I_surge',
  sources: [{ title: 'Currents into one node add up (Kirchhoff)', provenance: 'computed' }],
  cautions: [electricalCaution],
  fix: 'Put loads on one after the other, or fit a bank that gives more current.',
  place: ['electrical', 'battery', 'discharge_limit'],
};

export default defineRule({
  ...text,
  needs: { bank, electrical: withCircuits },
  check: ({ facts }) => {
    const drawn = drawnThrough(facts.electrical, theBattery);
    const keys = [...drawn.missing, ...unfed(facts.electrical)];
    const steady = steadyOf(facts.bank, drawn, keys);
    const surge = surgeOf(facts.bank, drawn, keys);
    return { findings: [...steady, ...surge] };
  },
  work: ({ facts }, finding) =>
    finding.measured &&
    stepsOf(
      facts.electrical,
      facts.bank,
      drawnThrough(facts.electrical, theBattery),
      finding.subject === startSubject,
    ),
});

const startSubject = 'battery at a start';

/** What is drawn, load by load, after what it may bring; at a start what the hardest start adds. */
function stepsOf(plan: Electrical, battery: Bank, drawn: Drawn, isStart: boolean): readonly Step[] {
  const { dischargeLimitA, surgeLimitA, limitsFrom } = battery;
  const limitA = isStart ? surgeLimitA : dischargeLimitA;
  const takes = inverterTakes(plan, drawn.each);
  const steady = drawnStep(plan, 'All that is on at once: Σ a·I', drawn);
  const limit =
    limitA === undefined
      ? []
      : [
          bankLimitStep(battery, {
            what: isStart ? 'What the battery may bring for some seconds' : 'What the battery may bring',
            limitA,
            key: isStart ? 'surge_limit' : 'discharge_limit',
            from: isStart ? 'typed' : limitsFrom.discharge,
          }),
        ];
  if (!isStart) return [...takes, ...limit, steady];
  const starting = drawn.each.find(({ circuit }) => circuit.name === drawn.surgeBy);
  if (!starting) return [];
  const { circuit, surgeA, steadyA, startA } = starting;
  const { surge, path, name } = circuit;
  return [
    ...takes,
    steady,
    {
      what: `What ${name} takes while it starts, the hardest start of all`,
      sum:
        surge && 'powerW' in surge
          ? startSum(surge.powerW, battery.lowestV, surgeA)
          : say`as the plan says, whatever the voltage`,
      result: current(surgeA),
      paths: [
        [...path, 'surge'],
        ...(plan.inverter?.circuit === name ? [[...plan.inverter.path, 'surge']] : []),
      ],
    },
    {
      what: 'What this start adds to what it draws anyway',
      sum: say`${current(surgeA)} − ${current(steadyA)}`,
      result: current(startA),
    },
    ...limit,
    {
      what: `All that is on at once while ${name} starts`,
      sum: say`${current(drawn.currentA)} + ${current(startA)}`,
      result: current(drawn.surgeA),
    },
  ];
}

/** Where its cables are not known, or cannot bring that, nothing is lost in them here. */
function startSum(powerW: number, lowestV: number, surgeA: number): Phrase {
  const lostV = lowestV - powerW / surgeA;
  return lostV < 1e-9
    ? say`P / U = ${power(powerW)} / ${voltage(lowestV)}`
    : say`P / (U − R·I) = ${power(powerW)} / (${voltage(lowestV)} − ${voltage(lostV)}), R·I what its own start loses in its cables`;
}

/** Circuits that no chain joins to the battery are in no sum. */
const unfed = (plan: Electrical): readonly string[] =>
  [...figuresOf(plan).values()].some(({ chain, circuit }) => !chain && !circuit.charges)
    ? ['electrical.circuits.NAME.to']
    : [];

function steadyOf(battery: Bank, drawn: Drawn, keys: readonly string[]): readonly Finding[] {
  const limitA = battery.dischargeLimitA;
  if (limitA === undefined)
    return [
      lacking(
        battery,
        [...keys, 'electrical.battery.discharge_limit'],
        say`It brings ${current(drawn.currentA)}${inverterPart(drawn)}; how much it may bring is not known.`,
      ),
    ];
  if (keys.length > 0 && !exceeds(drawn.currentA, limitA))
    return [
      lacking(
        battery,
        keys,
        say`Known loads draw ${current(drawn.currentA)} of the ${current(limitA)} it may bring; others are not known.`,
      ),
    ];
  return [steady(battery, limitA, drawn, keys)];
}

function steady(battery: Bank, limitA: number, drawn: Drawn, keys: readonly string[]): Finding {
  const { limitsFrom, chemistry, capacityAh, lowestV, path } = battery;
  const typed = limitsFrom.discharge === 'typed';
  const guidance = typed ? undefined : chemistry.dischargeRatePerHour;
  return judge({
    rule: text,
    subject: 'battery',
    path: typed ? text.place : path,
    kind: 'current',
    measured: { value: drawn.currentA, standard: 0 },
    limit: limitA,
    sense: 'at most',
    broken: typed ? 'fail' : 'warn',
    reason: say`All that is on at once draws ${current(drawn.currentA)} at ${voltage(lowestV)}${inverterPart(drawn)}${keys.length > 0 ? ', without loads that are not known' : ''}: ${typed ? say`the battery may bring ${current(limitA)}` : say`${current(limitA)} is guidance for ${chargeAh(capacityAh)} of ${chemistry.name}`}.`,
    remedy: (shortfallA) =>
      say`${moreOfThem(battery, limitA, drawn.currentA)}, or have ${current(shortfallA)} less on at once${drawn.inverterA > 0 ? ' (the inverter first)' : ''}: \`at_once\` of a circuit says what is never on together.${typed ? [] : say` If the battery's data sheet allows more, write it as \`electrical.battery.discharge_limit\`.`}`,
    ...(guidance && { sources: guidance.citations }),
    ...(guidance?.caution !== undefined && { cautions: [guidance.caution] }),
  });
}

/** Only where something starts harder than it runs; what the battery may bring for hours it brings for seconds too. */
function surgeOf(battery: Bank, drawn: Drawn, keys: readonly string[]): readonly Finding[] {
  const { surgeA, surgeBy, currentA } = drawn;
  const { surgeLimitA, dischargeLimitA, path } = battery;
  if (surgeBy === undefined) return [];
  const starting = say`While ${surgeBy} starts, the battery brings ${current(surgeA)} for some seconds`;
  if (surgeLimitA === undefined) {
    // Nothing new: what it brings for hours is too much already, or not known, or enough for the start as well.
    const isEnough = dischargeLimitA !== undefined && !exceeds(surgeA, dischargeLimitA);
    if (isEnough || (dischargeLimitA !== undefined && exceeds(currentA, dischargeLimitA))) return [];
    return [
      lacking(
        battery,
        ['electrical.battery.surge_limit'],
        say`${starting}; what it may bring for so long is not known.`,
        startSubject,
      ),
    ];
  }
  if (keys.length > 0 && !exceeds(surgeA, surgeLimitA)) return [];
  return [
    judge({
      rule: text,
      subject: startSubject,
      path: [...path, 'surge_limit'],
      kind: 'current',
      measured: { value: surgeA, standard: 0 },
      limit: surgeLimitA,
      sense: 'at most',
      broken: 'fail',
      reason: say`${starting}${inverterPart(drawn)}.`,
      remedy: (shortfallA) =>
        say`${moreOfThem(battery, surgeLimitA, surgeA)}, or start ${surgeBy} with ${current(shortfallA)} less on beside it, or choose one that starts softly.`,
    }),
  ];
}

const inverterPart = ({ inverterA }: Drawn): Phrase =>
  inverterA > 0 ? say`, of which the inverter draws ${current(inverterA)}` : [];

/** Batteries side by side add their limits. */
function moreOfThem({ inParallel }: Bank, limitA: number, neededA: number): Phrase {
  const strings = Math.ceil((neededA * inParallel) / limitA - 1e-9);
  return say`Take a battery that may bring ${current(neededA)}, or ${count(strings)} such in parallel instead of ${count(inParallel)} (with cables of equal length)`;
}

const lacking = ({ path }: Bank, keys: readonly string[], reason: Phrase, subject = 'battery'): Finding => {
  const all = [...new Set(keys)];
  return observed(text, {
    verdict: 'not checked',
    subject,
    path,
    reason,
    remedy: say`Add ${all.map((key) => `\`${key}\``).join(', ')}.`,
    missing: all,
  });
};
