import type { Bank, Electrical } from '../../build/electrical.ts';
import { allowedRatePerHour, compensatedVoltageV, currentOfRateA } from '../../calc/electrical/charging.ts';
import { leadCompensation } from '../../catalogue/electrical/lead-compensation.ts';
import { lithiumRates } from '../../catalogue/electrical/lithium-rates.ts';
import { controllerChargeVoltage } from '../../catalogue/electrical/supply-sources.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { chargeAh, current, factor, temperatureC, voltage } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { electricalCaution } from '../cautions.ts';
import { bank, type Chargers, chargers, chargeVoltageOf } from '../chargers.ts';
import { electrical } from '../circuits.ts';
import { coldest } from '../coldest.ts';
import { observed } from '../observed.ts';
import { chargersStep } from '../working/charging.ts';

const text: RuleText = {
  id: 'electrical.cold-charging',
  topic: 'electrical',
  title: 'charging in the cold',
  why: 'Charging a frozen lithium battery plates metal inside it, which cannot be undone and can make it burn later.',
  formula:
    'Σ I_k ≤ r(T) · C; I_k current of each charger in A, C capacity in Ah, r from a table by the cells’ temperature T, per hour',
  sources: [
    {
      title: 'The cells are counted as cold as `coldest`: an unheated battery becomes as cold as its place',
      provenance: 'own choice',
    },
  ],
  cautions: [electricalCaution],
  fix: 'Warm the battery, put it where it is warmer, or charge it with less current in the cold.',
  place: ['electrical', 'battery'],
};

interface Cold {
  readonly battery: Bank;
  readonly atC: number;
  readonly all: Chargers;
  readonly electrical: Electrical;
}

export default defineRule({
  ...text,
  needs: { battery: bank, atC: coldest, all: chargers, electrical },
  check: ({ facts }) => ({ findings: [findingOf(facts)] }),
  work: ({ facts: { battery, atC, all } }, { measured, limit }) => {
    if (!measured) return undefined;
    return [...(limit ? [allowedStep(battery, atC)] : []), chargersStep(all.known)];
  },
});

/** What the table allows at the lowest temperature, for the capacity of the bank. */
function allowedStep({ capacityAh, path, chemistry }: Bank, atC: number): Step {
  const rate = allowedRatePerHour(lithiumRates.standardCharge, atC);
  return {
    what: 'What the table allows when it is coldest: r(T) · C',
    sum: say`${factor(rate)} A for each Ah of ${chemistry.name} · ${chargeAh(capacityAh)}, at ${temperatureC(atC)}`,
    result: current(currentOfRateA(rate, capacityAh)),
    paths: [
      ['electrical', 'coldest'],
      [...path, 'capacity'],
      [...path, 'in_parallel'],
    ],
  };
}

function findingOf(cold: Cold): Finding {
  const { battery, atC } = cold;
  const fromC = battery.chargesFromC;
  if (fromC !== undefined && atC < fromC)
    return forbidden(cold, say`takes charge from ${temperatureC(fromC)} only`);
  if (battery.chemistry.lead) return compensated(cold);
  const rate = allowedRatePerHour(lithiumRates.standardCharge, atC);
  if (rate > 0) return withinTable(cold, rate);
  return fromC === undefined ? forbidden(cold, tableForbids) : statedToCharge(cold, fromC);
}

const tableForbids = say`must not be charged at all by the table for its kind`;

/** Any current is too much, known or not: there is nothing to measure it against. */
function forbidden({ battery, atC, all }: Cold, why: Phrase): Finding {
  const isTyped = battery.chargesFromC !== undefined;
  return observed(text, {
    verdict: 'fail',
    subject: 'battery',
    path: isTyped ? [...battery.path, 'charges_from'] : battery.path,
    ...(all.togetherA > 0 && { measured: current(all.togetherA) }),
    reason: say`At ${temperatureC(atC)} the ${battery.chemistry.name} battery ${why}${all.togetherA > 0 ? say`, and the chargers bring ${current(all.togetherA)}` : []}.`,
    remedy: say`Take a battery that heats itself or that its maker lets charge at ${temperatureC(atC)}, and write that as \`electrical.battery.charges_from\`; or keep its place warmer, and let chargers stop at its limit by a sensor on the cells.`,
    sources: isTyped ? [] : lithiumRates.citations,
  });
}

function statedToCharge({ battery, atC }: Cold, fromC: number): Finding {
  return observed(text, {
    verdict: 'pass',
    subject: 'battery',
    path: [...battery.path, 'charges_from'],
    reason: say`The plan says that the battery takes charge from ${temperatureC(fromC)}, and it gets no colder than ${temperatureC(atC)}. Without heating, the table for ${battery.chemistry.name} allows no current there: its manual says how it warms its cells, and how much it may take before they are warm.`,
    sources: lithiumRates.citations,
  });
}

function withinTable({ battery, atC, all }: Cold, rate: number): Finding {
  const limitA = currentOfRateA(rate, battery.capacityAh);
  const allowed = say`At ${temperatureC(atC)} the table allows ${current(limitA)} for ${chargeAh(battery.capacityAh)} of ${battery.chemistry.name}`;
  if (all.missing.length > 0 && !exceeds(all.togetherA, limitA))
    return observed(text, {
      verdict: 'not checked',
      subject: 'battery',
      path: battery.path,
      reason: say`${allowed}. Not every charger's current is known.`,
      remedy: say`Add ${all.missing.map((key) => `\`${key}\``).join(', ')}.`,
      missing: all.missing,
    });
  return judge({
    rule: text,
    subject: 'battery',
    path: battery.path,
    kind: 'current',
    measured: { value: all.togetherA, standard: 0 },
    limit: limitA,
    sense: 'at most',
    broken: 'warn',
    reason: say`${allowed}. All chargers together bring ${current(all.togetherA)}.`,
    remedy: () =>
      say`Let the chargers bring at most ${current(limitA)} while it is that cold, take a battery of ${chargeAh(Math.ceil(all.togetherA / rate - 1e-9))} or more, or one that heats itself.`,
    sources: lithiumRates.citations,
  });
}

/** Lead takes charge in the cold, but wants more voltage. */
function compensated({ battery, atC, electrical }: Cold): Finding {
  const cells = Math.round(battery.voltageV / battery.chemistry.nominalCellV);
  const chargeV = chargeVoltageOf(electrical.nominalV);
  const wantedV = compensatedVoltageV(cells, chargeV / cells, leadCompensation.voltsPerCellKelvin, atC);
  return observed(text, {
    verdict: 'pass',
    subject: 'battery',
    path: battery.path,
    reason: say`A ${battery.chemistry.name} battery takes charge at ${temperatureC(atC)}, but wants ${voltage(wantedV)} there instead of ${voltage(chargeV)} at ${temperatureC(leadCompensation.fromC)}: give the chargers a temperature sensor on it. Discharged, its acid freezes: keep it charged in the cold.`,
    sources: [...leadCompensation.citations, controllerChargeVoltage],
  });
}
