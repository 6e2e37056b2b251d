import type { Build } from '../../build/build.ts';
import { asLiquidC } from '../../build/liquid-water.ts';
import { wantedFlowOf } from '../../build/outlet-flow.ts';
import { waterUseOf } from '../../build/water-use.ts';
import { flowHeatedM3S, hotShare, mixedFromLayered, mixedFromStirred } from '../../calc/water/heating.ts';
import { coldDraws } from '../../catalogue/water/dead-leg.ts';
import { mixingBalance } from '../../catalogue/water/sources.ts';
import { showerC } from '../../catalogue/water/use.ts';
import type { Finding } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { flow, power, temperatureC, volume } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, given, missing, type Need, type RuleText } from '../../engine/rule.ts';
import { heatCaution, waterCaution } from '../cautions.ts';
import { hotWater, type Store, storeOf } from '../hot-water.ts';
import { observed } from '../observed.ts';

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

interface ForStore {
  readonly kind: 'storage';
  readonly store: Store;
  readonly build: Build;
  /** Wanted at once, as warm as a shower. */
  readonly wantedM3: number;
  readonly wantedText: string;
}

interface ForInstant {
  readonly kind: 'instant';
  readonly powerW: number;
  readonly coldC: number;
  readonly outletName: string;
  readonly outletPath: readonly (string | number)[];
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
  const most = others.reduce((found, each) => (each.wantedM3PerS > found.wantedM3PerS ? each : found), first);
  return given({
    kind: 'instant',
    powerW: heater.powerW,
    coldC: asLiquidC(water.coldC),
    outletName: most.outlet.name,
    outletPath: most.outlet.path,
    wantedM3PerS: most.wantedM3PerS,
  });
}

export default defineRule({
  ...text,
  needs: { asked },
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
      say`Heat it to ${temperatureC(60)}, behind a mixing valve.`,
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
function largerStore({ holdsM3, hotC }: Store, wantedM3: number, leastM3: number): Phrase {
  const less = say`use no more than ${volume(leastM3)} at a time`;
  if (leastM3 <= 0) return say`Heat it to more than ${temperatureC(hotC)}, behind a mixing valve.`;
  return say`Take a store of ${volume((holdsM3 * wantedM3) / leastM3)} at this warmth, or ${less}.`;
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
      say`It takes ${power(neededW)} that reach the water, or an outlet that is content with ${flow(heated)}.`,
  });
}
