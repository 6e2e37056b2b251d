import type { Circuit, Electrical, Inverter } from '../../build/electrical.ts';
import type { Part, Step } from '../../engine/finding.ts';
import { current, power, resistance, share, voltage } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { assumedWords } from './current.ts';

/*
 * What is left at an inverter: the voltages and currents on its way from the battery, where both sides agree.
 */

/** A circuit on the way, with what flows in it while the inverter gives its surge. */
export interface Leg {
  readonly circuit: Circuit;
  readonly loopOhm: number;
  readonly currentA: number;
}

/** What the inverter takes for what it gives. */
export function takesStep(unit: Inverter, outputW: number): Step {
  const { path, powerW, efficiency } = unit;
  const isSurge = outputW > powerW;
  return {
    what: `What the inverter takes ${isSurge ? 'at its surge' : 'at full power'}: P / η`,
    sum: say`${power(outputW)} / ${share(efficiency)}${assumedWords(unit)}`,
    result: power(outputW / efficiency),
    paths: [
      [...path, isSurge ? 'surge' : 'power'],
      [...path, 'efficiency'],
    ],
  };
}

export interface Supply {
  readonly plan: Electrical;
  readonly unit: Inverter;
  readonly lowestV: number;
  readonly leastV: number;
  readonly leastShare: number;
}

/** Current, losses on the way, and what is left: at the solution the current fits the voltage that it leaves. */
export function leftSteps(supply: Supply, legs: readonly Leg[], leftV: number): readonly Step[] {
  const { plan, unit, lowestV, leastV, leastShare } = supply;
  const takesW = unit.surgeW / unit.efficiency;
  const lostV = legs.reduce((sum, { loopOhm, currentA }) => sum + loopOhm * currentA, 0);
  return [
    takesStep(unit, unit.surgeW),
    {
      what: 'The current that this takes at the voltage it leaves: I = P / U, and the last step comes to the same U',
      sum: say`${power(takesW)} / ${voltage(leftV)}`,
      result: current(takesW / leftV),
    },
    {
      what: 'What the cables lose on the way, out and back and warm: Σ R·I',
      sum: say`with all else that is on at once along the way`,
      result: voltage(lostV),
      parts: {
        columns: ['resistance', 'current', 'lost'],
        rows: legs.map(
          ({ circuit, loopOhm, currentA }): Part => ({
            name: circuit.name,
            path: circuit.path,
            origin: 'computed',
            values: [resistance(loopOhm), current(currentA)],
            adds: voltage(loopOhm * currentA),
          }),
        ),
      },
      paths: legs.flatMap(({ circuit: { path } }) => [
        [...path, 'length'],
        [...path, 'conductor'],
      ]),
    },
    {
      what: 'What should be left at the inverter',
      sum: say`${share(leastShare)} · ${voltage(plan.nominalV)} (this tool's own choice)`,
      result: voltage(leastV),
      paths: [['electrical', 'voltage']],
    },
    {
      what: 'What is left at its terminals: U = U_battery − Σ R·I',
      sum: say`${voltage(lowestV)} at the lowest − ${voltage(lostV)}`,
      result: voltage(leftV),
    },
  ];
}

/** More than the most that can come through the cables from the lowest voltage, whatever the current. */
export function cannotBringSteps(
  { unit, lowestV }: Supply,
  legs: readonly Omit<Leg, 'currentA'>[],
  outputW: number,
): readonly Step[] {
  const loopOhm = legs.reduce((sum, each) => sum + each.loopOhm, 0);
  return [
    {
      what: 'The resistance of the way to the inverter, out and back and warm: Σ R',
      result: resistance(loopOhm),
      parts: {
        columns: ['resistance'],
        rows: legs.map(
          (leg): Part => ({
            name: leg.circuit.name,
            path: leg.circuit.path,
            origin: 'computed',
            values: [],
            adds: resistance(leg.loopOhm),
          }),
        ),
      },
    },
    ...(loopOhm > 0
      ? [
          {
            what: 'The most that can come through it, with nothing else on: P = U² / (4·R), where half of the voltage is lost',
            sum: say`${voltage(lowestV)} · ${voltage(lowestV)} / (4 · ${resistance(loopOhm)}); less for what else is on at once along the way`,
            result: power(lowestV ** 2 / (4 * loopOhm)),
          },
        ]
      : []),
    takesStep(unit, outputW),
  ];
}
