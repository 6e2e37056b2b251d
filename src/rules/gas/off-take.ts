import type { Build } from '../../build/build.ts';
import type { Gas, GasStore } from '../../build/gas.ts';
import { gasUseOf } from '../../build/gas-use.ts';
import { atmospherePa, boilingPointC } from '../../calc/gas/saturation.ts';
import { cylinderOffTake, germanCylinders, type OffTakeDuty } from '../../catalogue/gas/off-take.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { count, kelvins, mass, massFlow, share, temperatureC } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { combustionCaution, gasCaution } from '../cautions.ts';
import { appliances, gas, gasLimit, isInCylinders, stores } from '../gas-facts.ts';
import { givenOf, type Source, tankLeft } from '../gas-off-take.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { winterLow } from '../warmth.ts';
import { atOnceSteps, boilingSteps, longSteps } from '../working/gas-off-take.ts';

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

const tankChoice = {
  title: 'A tank is looked at when a fifth of its inside is left',
  provenance: 'own choice',
} as const;

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
    const source = sourceOf(build, facts);
    return { findings: [boilingOf(source) ?? flowOf(source), ...spares(source)] };
  },
  work: ({ build, facts }, { measured }) => {
    if (measured === undefined) return undefined;
    const source = sourceOf(build, facts);
    const { ambientC } = source;
    if (measured.kind !== 'mass flow') {
      const { store, boilsC, starvesBelowC } = worstBoiling(source);
      return boilingSteps({ store, boilsC, starvesBelowC, ambientC });
    }
    const given = givenOf(source);
    return given && (given.long ? longSteps(source, given.long) : atOnceSteps(source, given.short));
  },
});

interface Facts {
  readonly gas: Gas;
  readonly stores: readonly GasStore[];
  readonly fullRate: number;
  readonly ambientC: number;
}

/** The first of the plan's cylinders stand at the regulator, the others wait for their turn. */
function sourceOf(build: Build, { gas: all, stores: kept, fullRate: needKgPerS, ambientC }: Facts): Source {
  const inUse = Math.max(1, Math.min(all.inUse, kept.length));
  return {
    build,
    gas: all,
    feeding: kept.slice(0, inUse),
    spare: kept.slice(inUse),
    ambientC,
    needKgPerS,
  };
}

/** The table of tanks goes by diameter and length. */
function tankIsSized({ gas: all }: Build): ReturnType<Need<true>> {
  if (!all || isInCylinders(all)) return given(true);
  const lacking = all.stores.filter(({ gas: kind, box }) => kind === 'propane' && box === undefined);
  return lacking.length > 0 ? missing(...lacking.map(({ name }) => `tanks.${name}.size`)) : given(true);
}

const propaneBoilsC = boilingPointC('propane', atmospherePa);

/** Of those in use the one whose gas boils last. */
const worstBoiling = ({ feeding }: Source) =>
  feeding
    .map((store) => ({ store, ...pointsOf(store) }))
    .reduce((least, each) => (each.boilsC > least.boilsC ? each : least));

/**
 * A gas of which nothing, or too little for the regulator, boils at this temperature. Both fail: just above the second
 * point hardly any flows, and what is colder must not come out better.
 */
function boilingOf(source: Source): Finding | undefined {
  const { feeding, spare, ambientC } = source;
  const { store, boilsC, starvesBelowC, sources, cautions } = worstBoiling(source);
  if (ambientC > starvesBelowC) return undefined;
  const none = ambientC <= boilsC;
  const others = new Set(spare.filter(({ gas: kind }) => kind !== store.gas).map(({ name }) => name));
  return observed(text, {
    verdict: 'fail',
    subject: store.name,
    path: [...store.path, 'contents'],
    measured: kelvins(ambientC - boilsC),
    reason: none
      ? say`At ${temperatureC(ambientC)}, the plan's winter low, ${store.gas} does not boil (${temperatureC(boilsC)}): ${store.name} gives no gas at all.`
      : say`At ${temperatureC(ambientC)}, the plan's winter low, ${store.gas} boils (${temperatureC(boilsC)}), but below ${temperatureC(starvesBelowC)} its pressure is too low for the regulator: flames shrink and may go out.`,
    remedy:
      store.gas === 'butane'
        ? say`Use propane in winter, which boils down to ${temperatureC(propaneBoilsC)}, in place of ${namesOf(feeding.filter(({ gas: kind }) => kind === 'butane').map(({ name }) => name))}${others.size > 0 ? say`; if ${namesOf([...others])} ${others.size === 1 ? 'is' : 'are'} to feed the regulator, name ${others.size === 1 ? 'it' : 'them'} first under \`tanks\`` : ''}.`
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

/** Cylinders that wait: what they give when their turn comes. A tank has no spare. */
function spares({ gas: all, feeding, spare, ambientC, needKgPerS }: Source): readonly Finding[] {
  if (!isInCylinders(all)) return [];
  return spare.flatMap((store): Finding[] => {
    const { kgPerS, boilsC, starvesBelowC, citations, cautions } = cylinderOffTake({
      gas: store.gas,
      holdsKg: store.holdsKg,
      duty: 'bursts of 20 minutes',
      ambientC,
    });
    const givesKgPerS = kgPerS * feeding.length;
    if (ambientC > starvesBelowC && !exceeds(needKgPerS, givesKgPerS)) return [];
    const gives =
      ambientC <= boilsC
        ? say`gives no gas at all`
        : ambientC <= starvesBelowC
          ? say`has too little pressure for the regulator`
          : say`gives ${massFlow(givesKgPerS)} for 20 minutes at a time, and all appliances together take ${massFlow(needKgPerS)}`;
    return [
      observed(text, {
        verdict: 'warn',
        subject: `${store.name}: spare`,
        path: [...store.path, 'contents'],
        reason: say`${store.name} is a spare and does not count for what flows now. When its turn comes at ${temperatureC(ambientC)}, the plan's winter low, ${store.gas} of ${mass(store.holdsKg)} ${gives}.`,
        remedy: say`Carry a spare for winter that serves as well as what it stands in for.`,
        sources: citations,
        cautions,
      }),
    ];
  });
}

function flowOf(source: Source): Finding {
  const { feeding, needKgPerS, ambientC, gas: all, spare } = source;
  const subject = namesOf(feeding.map(({ name }) => name));
  const inUse = feeding.length;
  const given = givenOf(source);
  if (!given) {
    const [tank] = feeding.filter(({ gas: kind }) => kind !== 'propane');
    return observed(text, {
      verdict: 'not checked',
      subject,
      path: tank?.path ?? text.place,
      reason: say`No table of what a fixed tank of ${tank?.gas ?? 'such gas'} gives was read, so nothing can be said of how much flows; at ${temperatureC(ambientC)} it is above the point where it feeds the regulator.`,
      remedy: say`Ask the maker of the tank, or plan it with propane. No key of the plan makes up for it.`,
    });
  }
  const { short, long } = given;
  const from = isInCylinders(all)
    ? say`${inUse === 1 ? 'One cylinder' : say`${count(inUse)} cylinders`} of ${mass(short.store.holdsKg)}`
    : say`${short.store.name}, ${share(tankLeft)} full,`;
  const measured = long ? long.needKgPerS : needKgPerS;
  const limit = long ? long.givesKgPerS : short.kgPerS;
  const cold = say`At ${temperatureC(ambientC)}, the plan's winter low,`;
  const waits =
    spare.length > 0 && isInCylinders(all)
      ? say` By the order under \`tanks\`, ${namesOf(spare.map(({ name }) => name))} ${spare.length === 1 ? 'is a spare and does' : 'are spares and do'} not count.`
      : say``;
  return judge({
    rule: text,
    subject,
    path: short.store.path,
    kind: 'mass flow',
    measured: { value: measured, standard: 0 },
    limit,
    sense: 'at most',
    broken: long ? 'warn' : 'fail',
    reason: long
      ? say`${cold} ${namesOf(long.parts.map(({ appliance }) => appliance.name))} ${long.parts.length === 1 ? 'takes' : 'take'} ${massFlow(measured)} for hours. ${from} ${inUse === 1 ? 'gives' : 'give'} ${massFlow(limit)} for so long.${waits}`
      : say`${cold} all appliances together take ${massFlow(measured)}. ${from} ${inUse === 1 ? 'gives' : 'give'} ${massFlow(limit)}${isInCylinders(all) ? ' for 20 minutes at a time' : ''}.${waits}`,
    remedy: () => remedyOf(source, short.store, measured / limit, long?.duty ?? 'bursts of 20 minutes'),
    sources: [...short.citations, ...(isInCylinders(all) ? [] : [tankChoice])],
    cautions: short.cautions,
  });
}

/** The number of such cylinders, or the printed size, that gives so many times as much. */
function remedyOf(source: Source, smallest: GasStore, times: number, duty: OffTakeDuty): Phrase {
  const { gas: all, feeding, ambientC, build } = source;
  const inUse = feeding.length;
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
