import type { Build } from '../../build/build.ts';
import { asLiquidC } from '../../build/liquid-water.ts';
import { wantedFlowOf } from '../../build/outlet-flow.ts';
import { type WaterUse, waterUseOf } from '../../build/water-use.ts';
import { flowHeatedM3S, hotShare, mixedFromLayered, mixedFromStirred } from '../../calc/water/heating.ts';
import { waterProperties } from '../../calc/water/properties.ts';
import { coldDraws } from '../../catalogue/water/dead-leg.ts';
import { waterLimits } from '../../catalogue/water/limits.ts';
import { mixingBalance } from '../../catalogue/water/sources.ts';
import { showerC } from '../../catalogue/water/use.ts';
import type { Finding, PlanPath, Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import {
  closeC,
  count,
  density,
  flow,
  kelvins,
  power,
  share,
  temperatureC,
  volume,
} from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { heatCaution, waterCaution } from '../cautions.ts';
import { hotWater, type Store, storeOf } from '../hot-water.ts';
import { observed } from '../observed.ts';
import { downToShown, litresAMinute, litresPerM3, upToDegree, upToShown } from '../shown-digits.ts';
import { hasShowers, hotPartStep, hotUseSteps, temperaturePaths } from '../working/water-use.ts';

const text: RuleText = {
  id: 'water.hot-amount',
  topic: 'water',
  title: 'warm water at once',
  why: 'A small store gives a warm shower once, and the second half of it cold if it was too small; a small instant heater makes a trickle warm, or a flow lukewarm.',
  formula:
    'store: V_mix between V·(T_h − T_m)/(T_m − T_c), stirred, and V·(T_h − T_c)/(T_m − T_c), layered, m³, without heating meanwhile; instant: Q = P / (ρ·c·(T_m − T_c)), m³/s; T_h hot, T_c cold, T_m as warm as a shower, °C; P power that reaches the water, W',
  sources: [mixingBalance, ...showerC.citations, ...coldDraws.citations],
  cautions: [waterCaution, heatCaution],
  fix: 'Take a larger or hotter store, or use less hot water at a time.',
  place: ['water', 'heater'],
};

/** More than this no store for a van is heated to: common practice, no source, °C. */
const hottestStoreC = 85;

interface ForStore {
  readonly kind: 'storage';
  readonly store: Store;
  readonly build: Build;
  /** Wanted at once, as warm as a shower. */
  readonly wantedM3: number;
  readonly wantedText: string;
  /** Where it is a part of a day's hot water: that, and how much of the mix is hot. */
  readonly ofDay?: { readonly use: WaterUse; readonly part: number };
}

interface ForInstant {
  readonly kind: 'instant';
  readonly powerW: number;
  readonly coldC: number;
  readonly outletName: string;
  readonly outletPath: PlanPath;
  readonly heaterPath: PlanPath;
  readonly wantedM3PerS: number;
}

const asked: Need<ForStore | ForInstant | 'no hot water'> = (build) => {
  const found = hotWater(build);
  if (!found.ok) return found;
  return found.value.heater.kind === 'storage' ? askedOfStore(build) : askedOfInstant(build);
};

function askedOfStore(build: Build): ReturnType<typeof asked> {
  const found = hotWater(build);
  if (!found.ok) return found;
  const store = storeOf(build, found.value);
  const use = waterUseOf(build);
  const storeKeys = 'missing' in store ? store.missing : [];
  const keys = [...storeKeys, ...use.hotMissing];
  if ('missing' in store || keys.length > 0) return missing(...new Set(keys));
  const { showerM3, showersPerPersonDay } = build.habits;
  if (showerM3 !== undefined && showersPerPersonDay !== undefined && showersPerPersonDay > 0)
    return given({ kind: 'storage', store, build, wantedM3: showerM3, wantedText: 'for one shower' });
  const { hotM3PerDay = 0 } = use;
  if (hotM3PerDay === 0) return given('no hot water');
  // What is counted at the heater's warmth is as much more when it is mixed.
  const part =
    store.hotC > showerC.value && store.coldC < showerC.value
      ? hotShare(store.hotC, store.coldC, showerC.value)
      : 1;
  return given({
    kind: 'storage',
    store,
    build,
    wantedM3: hotM3PerDay / part / coldDraws.perDay,
    wantedText: `at a time, if a day's hot water is drawn in ${coldDraws.perDay} parts`,
    ofDay: { use, part },
  });
}

function askedOfInstant(build: Build): ReturnType<typeof asked> {
  const { water } = build;
  const heater = water?.heater;
  if (!water || !heater) return missing('water.heater');
  const hot = water.outlets.filter((outlet) => outlet.hot);
  const flows = hot.flatMap((outlet) => {
    const wanted = wantedFlowOf(outlet);
    return wanted ? [{ outlet, wantedM3PerS: wanted.flowM3PerS }] : [];
  });
  const [first, ...others] = flows;
  const keys = [
    ...(heater.powerW === undefined ? ['water.heater.power'] : []),
    ...(first ? [] : [hot.length > 0 ? 'water.outlets.NAME.flow' : 'water.pipes.NAME.from']),
  ];
  if (!first || heater.powerW === undefined) return missing(...keys);
  const most = others.reduce(
    (found, each) =>
      each.wantedM3PerS > found.wantedM3PerS ||
      (each.wantedM3PerS === found.wantedM3PerS && each.outlet.name < found.outlet.name)
        ? each
        : found,
    first,
  );
  return given({
    kind: 'instant',
    powerW: heater.powerW,
    coldC: asLiquidC(water.coldC),
    outletName: most.outlet.name,
    outletPath: most.outlet.path,
    heaterPath: heater.path,
    wantedM3PerS: most.wantedM3PerS,
  });
}

export default defineRule({
  ...text,
  needs: { asked },
  work: ({ facts: { asked } }, { measured }) => {
    if (asked === 'no hot water' || !measured) return undefined;
    return asked.kind === 'storage' ? storeSteps(asked) : instantSteps(asked);
  },
  check: ({ facts: { asked } }) => {
    if (asked === 'no hot water')
      return { findings: [plain('pass', say`By the habits of the plan nobody uses hot water.`)] };
    return { findings: [asked.kind === 'storage' ? ofStore(asked) : ofInstant(asked)] };
  },
});

const plain = (verdict: 'pass' | 'warn', reason: Phrase, remedy?: Phrase): Finding =>
  observed(text, { verdict, subject: 'water heater', path: text.place, reason, remedy });

function ofStore({ store, wantedM3, wantedText }: ForStore): Finding {
  const { holdsM3, hotC, coldC, heater } = store;
  const mixedC = showerC.value;
  if (coldC >= mixedC)
    return plain('pass', say`The cold water is as warm as a shower already, by \`water.cold\`.`);
  if (exceeds(mixedC, hotC))
    return plain(
      'warn',
      say`The store is heated to ${temperatureC(hotC)}, and a shower is taken at ${temperatureC(mixedC)}.`,
      hotterStore(store, wantedM3),
    );
  const water = { storeM3: holdsM3, hotC, coldC, mixedC };
  const least = mixedFromStirred(water).mixedM3;
  const most = mixedFromLayered(water).mixedM3;
  const whole = !exceeds(wantedM3, most);
  return judge({
    rule: text,
    subject: 'water heater',
    path: heater.path,
    kind: 'volume',
    measured: { value: least, standard: 0 },
    limit: wantedM3,
    sense: 'at least',
    broken: 'warn',
    reason: say`${volume(holdsM3)} at ${temperatureC(hotC)}, mixed with water of ${temperatureC(coldC)}, make ${volume(least)} to ${volume(most)} at ${temperatureC(mixedC)} before it must heat again, by how much the cold that follows stirs it. ${volume(wantedM3)} are wanted ${wantedText}${whole && exceeds(wantedM3, least) ? ': it is enough only if the water in the store stays in layers' : ''}.`,
    remedy: () => largerStore(store, wantedM3, least),
  });
}

/** The store grows as its mixed litres do. */
function largerStore(store: Store, wantedM3: number, leastM3: number): Phrase {
  const { holdsM3 } = store;
  if (leastM3 <= 0) return hotterStore(store, wantedM3);
  const largerM3 = upToShown((holdsM3 * wantedM3) / leastM3, litresPerM3);
  return say`Take a store of ${volume(largerM3)} at this warmth, or use no more than ${volume(downToShown(leastM3, litresPerM3))} at a time.`;
}

/** As hot as stored water should be, or as much hotter as gives what is wanted; a larger store where that would boil. */
function hotterStore({ holdsM3, coldC }: Store, wantedM3: number): Phrase {
  const mixedC = showerC.value;
  const usualC = waterLimits['hot-store-temperature'].value;
  const neededC = upToDegree(mixedC + (wantedM3 * (mixedC - coldC)) / holdsM3);
  if (neededC <= hottestStoreC)
    return say`Heat it to ${temperatureC(Math.max(usualC, neededC))}, behind a mixing valve.`;
  const largerM3 = upToShown((wantedM3 * (mixedC - coldC)) / (usualC - mixedC), litresPerM3);
  return say`Heat it to ${temperatureC(usualC)}, behind a mixing valve, and take a store of ${volume(largerM3)}.`;
}

/** How much is wanted at once, and what the store mixes it to. */
function storeSteps({ store, build, wantedM3, ofDay }: ForStore): readonly Step[] {
  const { water, heater, holdsM3, hotC, coldC } = store;
  const mixedC = showerC.value;
  const wanted: readonly Step[] = ofDay
    ? [
        ...hotUseSteps(ofDay.use, build.habits, water, hotC),
        ...(ofDay.part < 1 && !hasShowers(build.habits) ? [hotPartStep({ hotC, coldC, mixedC }, water)] : []),
        {
          what: 'Wanted at once: as much as a draw makes, mixed as warm as a shower',
          sum: say`${volume(ofDay.use.hotM3PerDay ?? 0)} / ${share(ofDay.part)} / ${count(coldDraws.perDay)} draws a day`,
          result: volume(wantedM3),
        },
      ]
    : [
        {
          what: 'Wanted for one shower',
          sum: say`as the plan says`,
          result: volume(wantedM3),
          paths: [['living', 'litres_per_shower']],
        },
      ];
  return [
    ...wanted,
    {
      what: 'What the store makes, stirred by the cold that follows: V·(T_h − T_m) / (T_m − T_c)',
      sum: say`${volume(holdsM3)} · (${closeC(hotC)} − ${closeC(mixedC)}) / (${closeC(mixedC)} − ${closeC(coldC)})`,
      result: volume(mixedFromStirred({ storeM3: holdsM3, hotC, coldC, mixedC }).mixedM3),
      paths: [[...heater.path, 'holds'], ...temperaturePaths(water)],
    },
  ];
}

/** What the outlet wants, and what the heater makes warm. */
function instantSteps({
  powerW,
  coldC,
  outletName,
  outletPath,
  heaterPath,
  wantedM3PerS,
}: ForInstant): readonly Step[] {
  const { densityKgM3, heatCapacityJKgK } = waterProperties(coldC);
  const riseK = showerC.value - coldC;
  return [
    {
      what: `What ${outletName} wants`,
      sum: say`the most of all outlets with hot water`,
      result: flow(wantedM3PerS),
      paths: [[...outletPath, 'flow']],
    },
    {
      what: 'What the heater makes as warm as a shower: Q = P / (ρ·c·(T_m − T_c))',
      sum: say`${power(powerW)} / (${density(densityKgM3)} · ${String(Number(heatCapacityJKgK.toFixed(1)))} J/(kg·K) · ${kelvins(riseK)}); 1 m³/s are 60,000 L/min`,
      result: flow(flowHeatedM3S(powerW, riseK, coldC)),
      paths: [
        [...heaterPath, 'power'],
        ['water', 'cold'],
      ],
    },
  ];
}

function ofInstant({ powerW, coldC, outletName, outletPath, wantedM3PerS }: ForInstant): Finding {
  const riseK = showerC.value - coldC;
  if (riseK <= 0)
    return plain('pass', say`The cold water is as warm as a shower already, by \`water.cold\`.`);
  const heated = flowHeatedM3S(powerW, riseK, coldC);
  const neededW = (powerW * wantedM3PerS) / heated;
  return judge({
    rule: text,
    subject: outletName,
    path: outletPath,
    kind: 'flow',
    measured: { value: heated, standard: 0 },
    limit: wantedM3PerS,
    sense: 'at least',
    broken: 'warn',
    reason: say`An instant heater of ${power(powerW)} makes ${flow(heated)} of water as warm as ${temperatureC(showerC.value)} from ${temperatureC(coldC)}; ${outletName} wants ${flow(wantedM3PerS)}.`,
    remedy: () =>
      say`It takes ${power(upToShown(neededW))} that reach the water, or an outlet that is content with ${flow(downToShown(heated, litresAMinute))}.`,
  });
}
