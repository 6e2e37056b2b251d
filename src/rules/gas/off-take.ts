import type { Build } from '../../build/build.ts';
import type { Gas, GasStore } from '../../build/gas.ts';
import { fullRateOf, gasBurntIn, gasUseOf, usesOf } from '../../build/gas-use.ts';
import type { Box3 } from '../../build/layout.ts';
import { atmospherePa, boilingPointC } from '../../calc/gas/saturation.ts';
import {
  cylinderOffTake,
  germanCylinders,
  lyingTankOffTake,
  type OffTake,
  type OffTakeDuty,
} from '../../catalogue/gas/off-take.ts';
import { gasProperties } from '../../catalogue/gas/properties.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { count, kelvins, mass, massFlow, share, temperatureC } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { combustionCaution, gasCaution } from '../cautions.ts';
import { appliances, gas, gasLimit, isInCylinders, stores } from '../gas-facts.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { winterLow } from '../warmth.ts';

const text: RuleText = {
  id: 'gas.off-take',
  topic: 'gas',
  title: 'gas in the cold',
  why: 'Liquid gas boils with the heat that comes through the wall of its cylinder. In the cold it gives little, and butane gives none below freezing: the heating goes out when it is needed most.',
  formula:
    'ṁ_all ≤ n·ṁ_short·k; Σ ṁ_long / (n·ṁ_duty·k) ≤ 1; k = (T_a − T_b) / (15 °C − T_b); n cylinders in use, T_a winter low, T_b where the vapour just feeds the regulator, °C',
  sources: [],
  cautions: [gasCaution, combustionCaution],
  fix: 'Take propane in winter, larger cylinders, or open two at once.',
  lifeSafety: true,
  place: ['tanks'],
};

const fullRate: Need<number> = (build) => {
  const { fullRateKgPerS, rateMissing } = gasUseOf(build);
  return fullRateKgPerS === undefined ? missing(...rateMissing) : given(fullRateKgPerS);
};

/** A tank is looked at when it is a fifth full: own choice. */
const tankLeft = 0.2;
const tankChoice = {
  title: 'A tank is looked at when a fifth of its inside is left',
  provenance: 'own choice',
} as const;

/** What burns on for long, by how long: a room heater without a pause, a boiler or a refrigerator with pauses. */
const longDuties: Readonly<Record<string, OffTakeDuty>> = {
  'room heating': 'uninterrupted',
  'water heating': 'half of the time',
  refrigerator: 'half of the time',
};

interface Source {
  readonly build: Build;
  readonly gas: Gas;
  readonly all: readonly GasStore[];
  /** What stands at the regulator at once. */
  readonly inUse: number;
  readonly smallest: GasStore;
  readonly ambientC: number;
  readonly needKgPerS: number;
}

export default defineRule({
  ...text,
  needs: {
    gas,
    stores,
    appliances,
    fullRate,
    ambientC: winterLow,
    sized: (build) => tankIsSized(build),
  },
  check: ({ build, facts }) => {
    const smallest = facts.stores.reduce((least, each) => (each.holdsKg < least.holdsKg ? each : least));
    const source: Source = {
      build,
      gas: facts.gas,
      all: facts.stores,
      inUse: Math.max(1, Math.min(facts.gas.inUse, facts.stores.length)),
      smallest,
      ambientC: facts.ambientC,
      needKgPerS: facts.fullRate,
    };
    return { findings: [boilingOf(source) ?? flowOf(source)] };
  },
});

/** The table of tanks goes by diameter and length. */
function tankIsSized({ gas: all }: Build): ReturnType<Need<true>> {
  if (!all || isInCylinders(all)) return given(true);
  const lacking = all.stores.filter(({ gas: kind, box }) => kind === 'propane' && box === undefined);
  return lacking.length > 0 ? missing(...lacking.map(({ name }) => `tanks.${name}.size`)) : given(true);
}

const propaneBoilsC = boilingPointC('propane', atmospherePa);

/** A gas of which nothing, or too little for the regulator, boils at this temperature. */
function boilingOf({ all, gas: { stores: kept }, ambientC }: Source): Finding | undefined {
  const worst = kept
    .map((store) => ({ store, ...pointsOf(store) }))
    .reduce((least, each) => (each.boilsC > least.boilsC ? each : least));
  const { store, boilsC, starvesBelowC, sources, cautions } = worst;
  if (ambientC > starvesBelowC) return undefined;
  const none = ambientC <= boilsC;
  return observed(text, {
    verdict: none ? 'fail' : 'warn',
    subject: store.name,
    path: [...store.path, 'contents'],
    measured: kelvins(ambientC - boilsC),
    reason: none
      ? say`At ${temperatureC(ambientC)}, the plan's winter low, ${store.gas} does not boil (${temperatureC(boilsC)}): ${store.name} gives no gas at all.`
      : say`At ${temperatureC(ambientC)}, the plan's winter low, ${store.gas} boils (${temperatureC(boilsC)}), but below ${temperatureC(starvesBelowC)} its pressure is too low for the regulator: flames shrink and may go out.`,
    remedy:
      store.gas === 'butane'
        ? say`Use propane in winter, which boils down to ${temperatureC(propaneBoilsC)}, in place of ${namesOf(all.filter(({ gas: kind }) => kind === 'butane').map(({ name }) => name))}.`
        : say`Plan for places above ${temperatureC(starvesBelowC)}, or heat with another fuel.`,
    sources,
    cautions,
  });
}

function pointsOf({ gas: kind }: GasStore) {
  const { boilsC, starvesBelowC, citations, cautions } = cylinderOffTake({
    gas: kind,
    holdsKg: 1,
    duty: 'uninterrupted',
    ambientC: 15,
  });
  return { boilsC, starvesBelowC, sources: citations, cautions };
}

/** What all that stands at the regulator gives. */
function offTakeOf({ gas: all, smallest, inUse, ambientC }: Source, duty: OffTakeDuty): OffTake | undefined {
  const one = isInCylinders(all)
    ? cylinderOffTake({ gas: smallest.gas, holdsKg: smallest.holdsKg, duty, ambientC })
    : smallest.box &&
      lyingTankOffTake({
        gas: smallest.gas,
        ...lyingSides(smallest.box),
        fullShare: tankLeft,
        ambientC,
        grossJPerKg: gasProperties[smallest.gas].grossJPerKg,
      });
  return one && { ...one, kgPerS: one.kgPerS * inUse };
}

/** A lying tank in its box: the longest side along, the smaller of the others across. */
const lyingSides = ({ leastXM, mostXM, leastYM, mostYM, bottomM, topM }: Box3) => {
  const [acrossM = 0, , alongM = 0] = [mostXM - leastXM, mostYM - leastYM, topM - bottomM].toSorted(
    (a, b) => a - b,
  );
  return { diameterM: acrossM, lengthM: alongM };
};

function flowOf(source: Source): Finding {
  const { smallest, needKgPerS, inUse, ambientC, gas: all } = source;
  const short = offTakeOf(source, 'bursts of 20 minutes');
  const subject = namesOf(source.all.map(({ name }) => name));
  if (!short)
    return observed(text, {
      verdict: 'not checked',
      subject,
      path: smallest.path,
      reason: say`No table of what a tank of ${smallest.gas} gives was read; it is above its boiling point at ${temperatureC(ambientC)}.`,
      remedy: say`Ask the maker of the tank, or plan it with propane.`,
      missing: [`${smallest.path.join('.')}.contents`],
    });
  const from = isInCylinders(all)
    ? say`${inUse === 1 ? 'One cylinder' : say`${count(inUse)} cylinders`} of ${mass(smallest.holdsKg)}`
    : say`${smallest.name}, ${share(tankLeft)} full,`;
  const long = longUseOf(source);
  const shortPart = needKgPerS / short.kgPerS;
  const tooMuchAtOnce = exceeds(needKgPerS, short.kgPerS);
  // The worse of the two: all lit for some minutes, or what burns for hours.
  const byHours = !tooMuchAtOnce && long !== undefined && long.part > shortPart;
  const measured = byHours ? long.needKgPerS : needKgPerS;
  const limit = byHours ? long.givesKgPerS : short.kgPerS;
  const cold = say`At ${temperatureC(ambientC)}, the plan's winter low,`;
  return judge({
    rule: text,
    subject,
    path: smallest.path,
    kind: 'mass flow',
    measured: { value: measured, standard: 0 },
    limit,
    sense: 'at most',
    broken: byHours ? 'warn' : 'fail',
    reason: byHours
      ? say`${cold} ${long.names} ${long.isOne ? 'takes' : 'take'} ${massFlow(measured)} for hours. ${from} ${inUse === 1 ? 'gives' : 'give'} ${massFlow(limit)} for so long.`
      : say`${cold} all appliances together take ${massFlow(measured)}. ${from} ${inUse === 1 ? 'gives' : 'give'} ${massFlow(limit)}${isInCylinders(all) ? ' for 20 minutes at a time' : ''}.`,
    remedy: () => remedyOf(source, measured / limit, byHours ? long.duty : 'bursts of 20 minutes'),
    sources: [...short.citations, ...(isInCylinders(all) ? [] : [tankChoice])],
    cautions: short.cautions,
  });
}

/** What burns for hours, and how much of that the source gives for so long. */
function longUseOf(source: Source) {
  const { build, gas: all } = source;
  const burns = gasBurntIn(build);
  const parts = all.appliances.flatMap((appliance) => {
    const duties = [...usesOf(appliance, build)].flatMap((use) => longDuties[use] ?? []);
    const duty: OffTakeDuty | undefined = duties.includes('uninterrupted') ? 'uninterrupted' : duties[0];
    const rate = fullRateOf(appliance, burns);
    return duty === undefined || rate === undefined ? [] : [{ name: appliance.name, duty, rate }];
  });
  if (parts.length === 0) return undefined;
  const part = parts.reduce(
    (sum, { rate, duty }) => sum + rate / (offTakeOf(source, duty)?.kgPerS ?? Number.POSITIVE_INFINITY),
    0,
  );
  const needKgPerS = parts.reduce((sum, { rate }) => sum + rate, 0);
  const duty: OffTakeDuty = parts.some((each) => each.duty === 'uninterrupted')
    ? 'uninterrupted'
    : 'half of the time';
  return {
    part,
    needKgPerS,
    givesKgPerS: needKgPerS / part,
    duty,
    names: namesOf(parts.map(({ name }) => name)),
    isOne: parts.length === 1,
  };
}

/** The number of such cylinders, or the printed size, that gives so many times as much. */
function remedyOf(source: Source, times: number, duty: OffTakeDuty): Phrase {
  const { gas: all, inUse, smallest, ambientC, build } = source;
  if (!isInCylinders(all) && !Number.isFinite(times))
    return say`No tank gives anything there: plan for warmer places, or heat with another fuel.`;
  if (!isInCylinders(all))
    return say`Take a tank ${count(Math.ceil(times * 10) / 10)} times as large in diameter × length, or appliances that take less.`;
  const number = Math.ceil(inUse * times - 1e-9);
  const most = gasLimit('locker-cylinders', build).value;
  const nowKgPerS = cylinderOffTake({ gas: smallest.gas, holdsKg: smallest.holdsKg, duty, ambientC }).kgPerS;
  const size = germanCylinders.find(
    ({ holdsKg }) =>
      holdsKg > smallest.holdsKg &&
      cylinderOffTake({ gas: smallest.gas, holdsKg, duty, ambientC }).kgPerS >=
        nowKgPerS * times * (1 - 1e-9),
  );
  const larger = size ? say`cylinders of ${mass(size.holdsKg)}` : undefined;
  const more = say`connect ${count(number)} cylinders at once`;
  if (number <= most)
    return say`Open ${count(number)} cylinders at once (\`gas.in_use\`)${larger ? say`, or take ${larger}` : ''}.`;
  return larger
    ? say`Take ${larger}, or appliances that take less.`
    : say`It would have to ${more}: take appliances that take less, or heat with another fuel.`;
}
