import type { SolarArray } from '../../build/electrical.ts';
import {
  moduleVoltageByTableV,
  moduleVoltageByVoltsV,
  mostInSeries,
  stringVoltageV,
} from '../../calc/electrical/solar-voltage.ts';
import type { Citation } from '../../catalogue/citation.ts';
import { coldVoltageCitations, coldVoltageRows } from '../../catalogue/electrical/cold-voltage.ts';
import type { Finding, Step } from '../../engine/finding.ts';
import { judge } from '../../engine/judge.ts';
import { count, factor, temperatureC, voltage } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { defineRule, type RuleText } from '../../engine/rule.ts';
import { arrays } from '../arrays.ts';
import { electricalCaution } from '../cautions.ts';
import { coldest } from '../coldest.ts';
import { foldPasses } from '../fold-passes.ts';
import { observed } from '../observed.ts';
import { namesOf } from '../routed.ts';

const text: RuleText = {
  id: 'electrical.solar-voltage',
  topic: 'electrical',
  title: 'solar voltage on the coldest morning',
  why: 'Cold modules give more voltage than their label says; one frosty dawn above its limit destroys a controller.',
  formula:
    'n · (U_oc + b · (T − 25 °C)) ≤ U_max; n modules in series, U_oc open-circuit voltage of one in V, b its coefficient in V/K, T the lowest temperature in °C; without b, n · U_oc · f(T) by the table of a code',
  sources: [
    {
      title: 'Voltages in series add up; above 25 °C the rated voltage is kept',
      provenance: 'own choice',
    },
  ],
  cautions: [electricalCaution],
  fix: 'Put fewer modules in series, or fit a controller that bears more voltage.',
  place: ['electrical', 'solar'],
};

/** At or above the temperature at which modules are rated nothing is credited. */
const ratedAtC = 25;

export default defineRule({
  ...text,
  needs: { arrays, coldestC: coldest },
  check: ({ facts }) => {
    const found = facts.arrays.map((array) => ofArray(array, Math.min(facts.coldestC, ratedAtC)));
    const unknown = found.flatMap((each) => ('missing' in each ? [each] : []));
    return {
      findings: [
        ...foldPasses(
          found.flatMap((each) => ('missing' in each ? [] : [each.finding])),
          'array',
        ),
        ...(unknown.length > 0 ? [notChecked(unknown, facts.coldestC)] : []),
      ],
    };
  },
  work: ({ facts }, { subject, measured }) => {
    const array = facts.arrays.find(({ name }) => name === subject);
    if (!measured || !array || !isControlled(array)) return undefined;
    return stepsOf(array, Math.min(facts.coldestC, ratedAtC));
  },
});

function stepsOf(array: Controlled, atC: number): readonly Step[] {
  const { path, openCircuitV, voltagePerKelvin, inSeries, controller } = array;
  const moduleV = moduleVoltageAt(array, atC);
  const open = voltage(openCircuitV);
  return [
    {
      what: 'What the controller bears: U_max',
      result: voltage(controller.voltageLimitV),
      paths: [[...path, 'controller', 'voltage_limit']],
    },
    {
      what:
        voltagePerKelvin === undefined
          ? 'What one module gives when it is coldest, by the table for silicon: U_oc · f(T)'
          : 'What one module gives when it is coldest: U_oc + b · (T − 25 °C)',
      sum:
        voltagePerKelvin === undefined
          ? say`${open} · ${factor(moduleV / openCircuitV)}, at ${temperatureC(atC)}`
          : say`${open} + ${String(Number((-1000 * voltagePerKelvin).toPrecision(6)))} mV/K · ${String(Number((ratedAtC - atC).toPrecision(6)))} K, at ${temperatureC(atC)}`,
      result: voltage(moduleV),
      paths: [
        [...path, 'open_circuit'],
        [...path, 'voltage_per_kelvin'],
        ['electrical', 'coldest'],
      ],
    },
    {
      what: 'What the modules in series give together: n · U',
      sum: say`${count(inSeries)} · ${voltage(moduleV)}`,
      result: voltage(stringVoltageV(moduleV, inSeries)),
      paths: [[...path, 'in_series']],
    },
  ];
}

/** By its own coefficient, or by the table of a code. */
const moduleVoltageAt = ({ openCircuitV, voltagePerKelvin }: SolarArray, atC: number): number =>
  voltagePerKelvin === undefined
    ? moduleVoltageByTableV(openCircuitV, coldVoltageRows, atC)
    : moduleVoltageByVoltsV(openCircuitV, voltagePerKelvin, atC);

interface Unknown {
  readonly array: SolarArray;
  readonly missing: readonly string[];
  readonly hint?: Phrase;
}

type Controlled = SolarArray & { readonly controller: NonNullable<SolarArray['controller']> };

const isControlled = (array: SolarArray): array is Controlled => array.controller !== undefined;

const lowestOfTableC = Math.min(...coldVoltageRows.map(({ fromC }) => fromC));

function ofArray(array: SolarArray, atC: number): { readonly finding: Finding } | Unknown {
  const { voltagePerKelvin, path } = array;
  const key = path.join('.');
  if (!isControlled(array)) return { array, missing: [`${key}.controller`] };
  const coefficientKey = `${key}.voltage_per_kelvin`;
  if (voltagePerKelvin === undefined) {
    if (atC < lowestOfTableC)
      return {
        array,
        missing: [coefficientKey],
        hint: say` The table for modules without a coefficient ends at ${temperatureC(lowestOfTableC)}.`,
      };
    const moduleV = moduleVoltageAt(array, atC);
    const how = say`by the table for silicon modules, as the plan has no \`voltage_per_kelvin\``;
    return { finding: compared(array, atC, moduleV, how, coldVoltageCitations) };
  }
  if (voltagePerKelvin > 0)
    return {
      array,
      missing: [coefficientKey],
      hint: say` A positive coefficient cannot be: a cold module gives more, so write the minus sign.`,
    };
  const moduleV = moduleVoltageAt(array, atC);
  return { finding: compared(array, atC, moduleV, say`by its own coefficient`, []) };
}

function compared(
  { name, path, inSeries, controller, openCircuitV }: Controlled,
  atC: number,
  moduleV: number,
  how: Phrase,
  sources: readonly Citation[],
): Finding {
  const stringV = stringVoltageV(moduleV, inSeries);
  const limitV = controller.voltageLimitV;
  const most = mostInSeries(limitV, moduleV);
  return judge({
    rule: text,
    subject: name,
    path: [...path, inSeries > 1 ? 'in_series' : 'controller'],
    kind: 'voltage',
    measured: { value: stringV, standard: 0 },
    limit: limitV,
    sense: 'at most',
    broken: 'fail',
    reason: say`At ${temperatureC(atC)} ${inSeries > 1 ? say`${count(inSeries)} modules in series give` : 'a module gives'} ${voltage(stringV)} (${voltage(openCircuitV)} each at ${temperatureC(ratedAtC)}), ${how}; the controller bears ${voltage(limitV)}.`,
    remedy: () => {
      const stronger = say`take a controller that bears at least ${voltage(Math.ceil(stringV - 1e-9))}`;
      return most > 0
        ? say`Put at most ${count(most)} in series, or ${stronger}.`
        : say`Not even one module suits this controller: ${stronger}.`;
    },
    sources,
  });
}

function notChecked(unknown: readonly Unknown[], coldestC: number): Finding {
  const keys = unknown.flatMap(({ missing }) => missing);
  const hints = unknown.flatMap(({ hint }) => hint ?? []);
  return observed(text, {
    verdict: 'not checked',
    subject: namesOf(unknown.map(({ array }) => array.name)),
    path: unknown[0]?.array.path ?? text.place,
    reason: say`The highest voltage at ${temperatureC(coldestC)} is not compared with a controller's limit.${hints}`,
    remedy: say`Add ${keys.map((key) => `\`${key}\``).join(', ')}.`,
    missing: keys,
  });
}
