import type { Bank } from '../../build/electrical.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { chargeAh, current } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { electricalCaution } from '../cautions.ts';
import { bank, type Charger, type Chargers, chargers } from '../chargers.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { bankLimitStep, chargersStep } from '../working/charging.ts';

const text: RuleText = {
  id: 'electrical.charge-current',
  topic: 'electrical',
  title: 'charging current of the battery',
  why: 'A battery that is charged faster than it can take gets hot, ages, or switches itself off at full current, which can wreck a charger or an alternator.',
  formula: 'Σ I_k ≤ I_max; I_k rated current of each charger, I_max what the whole bank takes, both in A',
  sources: [{ title: 'Currents into one node add up (Kirchhoff)', provenance: 'computed' }],
  cautions: [electricalCaution],
  fix: 'Set the chargers to less current, or fit a bank that takes more.',
  place: ['electrical', 'battery', 'charge_limit'],
};

export default defineRule({
  ...text,
  needs: { bank, chargers },
  check: ({ facts }) => {
    const limitA = facts.bank.chargeLimitA;
    if (limitA === undefined) return { findings: [withoutCurrents(['electrical.battery.charge_limit'])] };
    return { findings: judged(facts.bank, limitA, facts.chargers) };
  },
  work: ({ facts }, finding) => {
    const { chargeLimitA: limitA, limitsFrom } = facts.bank;
    if (!finding.measured || limitA === undefined) return undefined;
    const { known } = facts.chargers;
    const alone = known.filter(({ name }) => name === finding.subject);
    return [
      bankLimitStep(facts.bank, {
        what: 'What the battery takes',
        limitA,
        key: 'charge_limit',
        from: limitsFrom.charge,
      }),
      chargersStep(alone.length > 0 ? alone : known),
    ];
  },
});

/** Chargers that are too large alone; else all of them together: one defect, one finding. */
function judged(battery: Bank, limitA: number, all: Chargers): readonly Finding[] {
  const alone = all.known
    .filter(({ currentA }) => exceeds(currentA, limitA))
    .map((charger) => tooLarge(battery, limitA, charger, all));
  if (alone.length > 0) return alone;
  if (all.missing.length > 0 && !exceeds(all.togetherA, limitA)) return [withoutCurrents(all.missing)];
  return [together(battery, limitA, all)];
}

const setBy = ({ limitsFrom, chemistry, capacityAh }: Bank, limitA: number): Phrase =>
  limitsFrom.charge === 'typed'
    ? say`the battery takes ${current(limitA)}`
    : say`${current(limitA)} is guidance for ${chargeAh(capacityAh)} of ${chemistry.name}`;

const typedHint = ({ limitsFrom }: Bank): Phrase =>
  limitsFrom.charge === 'typed'
    ? []
    : say` If the battery's data sheet allows more, write it as \`electrical.battery.charge_limit\`.`;

const verdictOf = ({ limitsFrom }: Bank) => {
  return limitsFrom.charge === 'typed' ? ('fail' as const) : ('warn' as const);
};

const guidanceOf = ({ limitsFrom, chemistry }: Bank) => {
  if (limitsFrom.charge === 'typed') return {};
  const { citations, caution } = chemistry.chargeRatePerHour;
  return { sources: citations, cautions: caution === undefined ? [] : [caution] };
};

function tooLarge(battery: Bank, limitA: number, charger: Charger, all: Chargers): Finding {
  const othersA = all.togetherA - charger.currentA;
  const isOnlyOne = othersA === 0;
  // What is left for it beside the others; where they leave nothing, its own limit is the first step.
  const leftA = othersA < limitA ? limitA - othersA : limitA;
  return judge({
    rule: text,
    subject: charger.name,
    path: charger.path,
    kind: 'current',
    measured: { value: charger.currentA, standard: 0 },
    limit: limitA,
    sense: 'at most',
    broken: verdictOf(battery),
    reason: say`${capital(charger.name)} alone brings ${current(charger.currentA)}${isOnlyOne ? [] : say` (${current(all.togetherA)} with the others)`}: ${setBy(battery, limitA)}.`,
    remedy: () =>
      say`Set or choose it for at most ${current(wholeBelow(leftA))}${isOnlyOne || othersA >= limitA ? [] : ', so that all together stay within the limit'}, or take a battery that may be charged with ${current(all.togetherA)}.${typedHint(battery)}`,
    ...guidanceOf(battery),
  });
}

function together(battery: Bank, limitA: number, { known, togetherA, missing }: Chargers): Finding {
  const names = namesOf(known.map(({ name }) => name));
  const largest = known.reduce<Charger | undefined>(
    (most, each) => (most === undefined || each.currentA > most.currentA ? each : most),
    undefined,
  );
  const unknown = missing.length > 0 ? ' Others, of unknown current, come on top.' : '';
  return judge({
    rule: text,
    subject: known.length === 1 ? (largest?.name ?? 'battery') : 'all chargers together',
    path: battery.limitsFrom.charge === 'typed' ? text.place : battery.path,
    kind: 'current',
    measured: { value: togetherA, standard: 0 },
    limit: limitA,
    sense: 'at most',
    broken: verdictOf(battery),
    reason: say`${capital(names)} ${known.length === 1 ? 'brings' : 'together bring'} ${current(togetherA)}: ${setBy(battery, limitA)}.${unknown}`,
    remedy: (shortfallA) =>
      say`Set the chargers ${current(shortfallA)} lower in all${lowered(largest, shortfallA)}, or take a battery that may be charged with ${current(togetherA)}.${typedHint(battery)}`,
    ...guidanceOf(battery),
  });
}

/** The largest charger, where it alone can give way. */
const lowered = (largest: Charger | undefined, byA: number): Phrase =>
  largest && largest.currentA > byA
    ? say`, for example ${largest.name} to ${current(wholeBelow(largest.currentA - byA))}`
    : [];

const withoutCurrents = (keys: readonly string[]): Finding =>
  observed(text, {
    verdict: 'not checked',
    subject: 'all chargers together',
    path: text.place,
    reason: say`How much current comes together follows from every charger's own.`,
    remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
    missing: keys,
  });

const capital = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
/** Whole amperes, as chargers are set, unless that leaves nothing. */
const wholeBelow = (currentA: number): number => Math.floor(currentA + 1e-9) || currentA;
