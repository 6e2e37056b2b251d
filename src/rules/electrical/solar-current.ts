import type { Electrical, SolarArray } from '../../build/electrical.ts';
import { arrayCurrents, controllerOutputs } from '../../calc/electrical/solar-current.ts';
import { ampacityTable } from '../../catalogue/electrical/ampacity.ts';
import {
  type ControllerPractice,
  type ControllerPracticeId,
  controllerPractices,
  controllerSizeCitations,
  controllerSizesA,
  solarCurrentFactors,
} from '../../catalogue/electrical/charging-practice.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { exceeds, judge } from '../../engine/judge.ts';
import { count, current, factor, power, voltage } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { arrays } from '../arrays.ts';
import { electricalCaution } from '../cautions.ts';
import { chargeVoltageOf } from '../chargers.ts';
import { type CircuitFigures, electrical, figuresOf } from '../circuits.ts';
import { foldPasses } from '../fold-passes.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';
import { bearsSteps } from '../working/current.ts';

const text: RuleText = {
  id: 'electrical.solar-current',
  topic: 'electrical',
  title: 'solar current, controller and cable',
  why: 'Modules give more than their label says beside a white cloud or snow; a controller that is too small overheats or throws the surplus away, and a thin cable gets hot for hours.',
  formula:
    'PWM: 1.25 · p · I_sc ≤ I_max; MPPT: the most of 1.25 · P / U_n, P / U_min and P / U_ch ≤ I_max; cable: 1.25 · 1.25 · p · I_sc (PWM) or 1.25 · I_max (MPPT) ≤ I_z; p strings, I_sc short-circuit current, I_max limit of the controller and I_z what the cable carries in A, P power of the array in W, U_n nominal, U_min lowest and U_ch charge voltage in V',
  sources: [...solarCurrentFactors.citations],
  cautions: [electricalCaution],
  fix: 'Fit a controller and a cable for more current, or fewer modules on this one.',
  place: ['electrical', 'solar'],
};

export default defineRule({
  ...text,
  needs: { arrays, electrical },
  check: ({ facts }) => {
    const found = facts.arrays.map((array) => ofArray(array, facts.electrical));
    const findings = found.flatMap((each) => each.findings);
    const unknown = found.filter(({ missing }) => missing.length > 0);
    return {
      findings: [...foldPasses(findings, 'comparison'), ...(unknown.length > 0 ? [notChecked(unknown)] : [])],
    };
  },
  work: ({ facts }, { subject, measured }) => {
    if (!measured) return undefined;
    for (const array of facts.arrays) {
      const { controller } = array;
      const figures =
        array.circuit === undefined ? undefined : figuresOf(facts.electrical).get(array.circuit);
      if (!controller) continue;
      if (subject === controllerName(array))
        return controller.kind === 'PWM'
          ? switchedSteps(array, controller)
          : trackedSteps(array, controller, facts.electrical);
      if (figures && subject === cableName(figures))
        return [...bearsSteps(figures), ...neededSteps(array, controller)];
    }
    return undefined;
  },
});

const limitStep = ({ path }: SolarArray, { kind, currentLimitA }: Controller): Step => ({
  what: `What the ${kind} controller is for: I_max`,
  result: current(currentLimitA),
  paths: [[...path, 'controller', 'current_limit']],
});

/** Strings side by side, then brighter than the label says. */
function brightestSteps({ path, strings, shortCircuitA }: SolarArray): readonly Step[] {
  const { ratedA, mostA } = arrayCurrents(shortCircuitA, strings);
  return [
    {
      what: 'The rated short-circuit current of the strings side by side: p · I_sc',
      sum: say`${count(strings)} · ${current(shortCircuitA)}`,
      result: current(ratedA),
      paths: ['modules', 'in_series', 'short_circuit'].map((key) => [...path, key]),
    },
    {
      what: 'In the brightest light, beside a white cloud or snow',
      sum: say`${factor(solarCurrentFactors.brightness)} · ${current(ratedA)}`,
      result: current(mostA),
    },
  ];
}

const switchedSteps = (array: SolarArray, controller: Controller): readonly Step[] => [
  limitStep(array, controller),
  ...brightestSteps(array),
];

/** Three practices, and the strictest of them. */
function trackedSteps(array: SolarArray, controller: Controller, plan: Electrical): readonly Step[] {
  const { path, modules, modulePowerW } = array;
  const { arrayW, voltages, all, strictest } = trackedFigures(array, plan);
  const over = { 'nominal voltage': 'U_n', 'lowest voltage': 'U_min', 'charge voltage': 'U_ch' } as const;
  const volts = {
    'nominal voltage': voltages.nominalV,
    'lowest voltage': voltages.lowestV,
    'charge voltage': voltages.chargeV,
  } as const;
  return [
    limitStep(array, controller),
    {
      what: 'The power of the modules: P',
      sum: say`${count(modules)} · ${power(modulePowerW)}`,
      result: power(arrayW),
      paths: [
        [...path, 'modules'],
        [...path, 'power'],
      ],
    },
    ...all.map(
      ({ id, margin, outputA }): Step => ({
        what: `Its current over the ${id}: ${margin > 1 ? 'with a margin, ' : ''}P / ${over[id]}`,
        sum:
          margin > 1
            ? say`${factor(margin)} · ${power(arrayW)} / ${voltage(volts[id])}`
            : say`${power(arrayW)} / ${voltage(volts[id])}`,
        result: current(outputA),
      }),
    ),
    {
      what: `The most of the three, which is that over the ${strictest.id}`,
      result: current(strictest.outputA),
    },
  ];
}

/** What the cable is to carry for hours. */
function neededSteps(array: SolarArray, controller: Controller): readonly Step[] {
  const neededA = current(neededOf(array, controller));
  const times = factor(solarCurrentFactors.continuous);
  const what = 'What the cable is to carry for hours of sun';
  if (controller.kind !== 'PWM')
    return [
      {
        what: `${what}: 1.25 · I_max`,
        sum: say`${times} · ${current(controller.currentLimitA)}`,
        result: neededA,
        paths: [[...array.path, 'controller', 'current_limit']],
      },
    ];
  const { mostA } = arrayCurrents(array.shortCircuitA, array.strings);
  return [
    ...brightestSteps(array),
    { what: `${what}: 1.25 times that`, sum: say`${times} · ${current(mostA)}`, result: neededA },
  ];
}

interface Found {
  readonly array: SolarArray;
  readonly findings: readonly Finding[];
  readonly missing: readonly string[];
}

function ofArray(array: SolarArray, whole: Electrical): Found {
  const { controller, circuit, path } = array;
  const figures = circuit === undefined ? undefined : figuresOf(whole).get(circuit);
  if (!controller) return { array, findings: [], missing: [`${path.join('.')}.controller`] };
  const onController =
    controller.kind === 'PWM' ? throughController(array, controller) : trackedBy(array, controller, whole);
  const noConductor = figures !== undefined && !figures.circuit.wire.size;
  return {
    array,
    findings: [onController, ...(figures ? onCable(array, controller, figures) : [])],
    missing: noConductor ? [`${figures.circuit.path.join('.')}.conductor`] : [],
  };
}

type Controller = NonNullable<SolarArray['controller']>;

/** The next size that controllers come in; the current itself above all of them. */
const sizeFor = (currentA: number): number =>
  controllerSizesA.find((sizeA) => !exceeds(currentA, sizeA)) ?? Math.ceil(currentA);

const bearing = (controller: Controller): Phrase =>
  say`the ${controller.kind} controller is for ${current(controller.currentLimitA)}`;

const controllerName = ({ name }: SolarArray): string => `the controller of ${name}`;
const cableName = ({ circuit }: CircuitFigures): string => `the cable ${circuit.name}`;

const controllerSubject = (array: SolarArray, { currentLimitA }: Controller, currentA: number) => {
  return {
    rule: text,
    subject: controllerName(array),
    path: [...array.path, 'controller', 'current_limit'],
    kind: 'current' as const,
    measured: { value: currentA, standard: 0 },
    limit: currentLimitA,
    sense: 'at most' as const,
    broken: 'warn' as const,
  };
};

/** A controller that only switches passes on the current of the modules. */
function throughController(array: SolarArray, controller: Controller): Finding {
  const { ratedA, mostA } = arrayCurrents(array.shortCircuitA, array.strings);
  return judge({
    ...controllerSubject(array, controller, mostA),
    reason: say`${array.name} brings ${current(ratedA)} in a short circuit and ${current(mostA)} in the brightest light (times ${factor(solarCurrentFactors.brightness)}); ${bearing(controller)}.`,
    remedy: () =>
      say`Take a controller for at least ${current(sizeFor(mostA))}, or fewer strings side by side.`,
    sources: controllerSizeCitations,
  });
}

/** The three practices and the strictest of them. */
function trackedFigures(array: SolarArray, { nominalV, bank }: Electrical) {
  const arrayW = array.modules * array.modulePowerW;
  const [byNominal, byLowest, byCharge] = practices;
  const voltages = { nominalV, lowestV: bank?.lowestV ?? nominalV, chargeV: chargeVoltageOf(nominalV) };
  const outputs = controllerOutputs(arrayW, voltages, byNominal.margin);
  const all = [
    {
      ...byNominal,
      outputA: outputs.byNominalA,
      how: say`its power times ${factor(byNominal.margin)} over the nominal voltage`,
    },
    { ...byLowest, outputA: outputs.byLowestA, how: say`its power over the lowest voltage of the battery` },
    { ...byCharge, outputA: outputs.byChargeA, how: say`its power over the charge voltage` },
  ];
  const strictest = all.reduce((most, each) => (each.outputA > most.outputA ? each : most));
  return { arrayW, voltages, outputs, all, strictest };
}

/** The strictest of the three practices, by name. */
function trackedBy(array: SolarArray, controller: Controller, plan: Electrical): Finding {
  const { arrayW, outputs, strictest } = trackedFigures(array, plan);
  return judge({
    ...controllerSubject(array, controller, strictest.outputA),
    reason: say`${array.name} of ${power(arrayW)} brings ${current(strictest.outputA)} by the strictest of three practices, ${strictest.how} (${current(outputs.byChargeA)} over the charge voltage); ${bearing(controller)}.`,
    remedy: () =>
      say`Take a controller for at least ${current(sizeFor(strictest.outputA))}; or keep this one if its manual allows an array of ${power(arrayW)} and what it cuts off on bright days is not missed.`,
    sources: [...strictest.citations, ...controllerSizeCitations],
  });
}

const practiceOf = (id: ControllerPracticeId): ControllerPractice =>
  controllerPractices.find((practice) => practice.id === id) ?? { id, margin: 1, citations: [] };
const practices = [
  practiceOf('nominal voltage'),
  practiceOf('lowest voltage'),
  practiceOf('charge voltage'),
] as const;

const neededOf = ({ shortCircuitA, strings }: SolarArray, { kind, currentLimitA }: Controller): number =>
  kind === 'PWM'
    ? arrayCurrents(shortCircuitA, strings).conductorA
    : solarCurrentFactors.continuous * currentLimitA;

/**
 * The cable from the controller to the battery, for a current that flows over hours. Where it does not even carry the
 * controller's current, that is said of the circuit, not here.
 */
function onCable(array: SolarArray, controller: Controller, figures: CircuitFigures): readonly Finding[] {
  const { circuit, ampacity, designA } = figures;
  if (!ampacity || (designA !== undefined && exceeds(designA, ampacity.deratedA))) return [];
  const isSwitched = controller.kind === 'PWM';
  const neededA = neededOf(array, controller);
  const { caution } = ampacityTable(ampacity.table);
  return [
    judge({
      rule: text,
      subject: cableName(figures),
      path: [...circuit.path, 'conductor'],
      kind: 'current',
      measured: { value: neededA, standard: 0 },
      limit: ampacity.deratedA,
      sense: 'at most',
      broken: 'warn',
      reason: isSwitched
        ? say`For hours of sun the cable is to carry ${current(neededA)}, the short-circuit current of ${array.name} times ${factor(solarCurrentFactors.brightness)} and ${factor(solarCurrentFactors.continuous)}; as it lies it carries ${current(ampacity.deratedA)}.`
        : say`For hours of sun the cable is to carry ${current(neededA)}, the controller's current times ${factor(solarCurrentFactors.continuous)}; as it lies it carries ${current(ampacity.deratedA)}.`,
      remedy: () => say`Take a conductor that carries at least ${current(neededA)} where it lies.`,
      sources: ampacity.listed.citations,
      cautions: caution === undefined ? [] : [caution],
    }),
  ];
}

function notChecked(unknown: readonly Found[]): Finding {
  const keys = unknown.flatMap(({ missing }) => missing);
  return observed(text, {
    verdict: 'not checked',
    subject: namesOf(unknown.map(({ array }) => array.name)),
    path: unknown[0]?.array.path ?? text.place,
    reason: say`What controller and cable must bear is not compared with what they are for.`,
    remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
    missing: keys,
  });
}
