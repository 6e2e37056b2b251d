import type { Circuit, Draw, Electrical } from '../../build/electrical.ts';
import { ampacityTable } from '../../catalogue/electrical/ampacity.ts';
import type { Part, PlanPath, Step } from '../../engine/finding.ts';
import {
  count,
  current,
  factor,
  type Measure,
  power,
  share,
  temperatureC,
  voltage,
} from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { type CircuitFigures, figuresOf, shareAlone, shareOf } from '../circuits.ts';
import type { Drawn, DrawnLoad } from '../drawn.ts';

/*
 * How currents come about: what conductors may carry where they lie, what circuits carry, and what is drawn through a point.
 */

/** What the conductors of a circuit may carry where they lie, factor by factor. */
export function bearsSteps({ circuit, ampacity }: CircuitFigures): readonly Step[] {
  if (!ampacity) return [];
  const { wire, path } = circuit;
  const { listed, table, ambient, grouping, thermalInsulation: within, deratedA } = ampacity;
  const { system } = ampacityTable(table);
  return [
    {
      what: `What the table “${table}” lists: I_t`,
      sum: say`${listed.row.size} ${system}, insulation for ${temperatureC(listed.insulationC)}, at ${temperatureC(listed.ambientC)} about it`,
      result: current(listed.currentA),
      paths: [
        [...path, 'conductor'],
        [...path, 'insulation'],
      ],
    },
    {
      what: 'Less where it is warmer: C_a = √((T_c − T_a) / (T_c − T_ref))',
      sum: say`T_c = ${temperatureC(listed.insulationC)}, T_a = ${temperatureC(wire.ambientC)} (${wire.lies}), T_ref = ${temperatureC(listed.ambientC)}; no more than 1`,
      result: factor(ambient),
      paths: [[...path, 'lies']],
    },
    {
      what: 'Less where conductors lie together: C_g',
      sum: say`${count(2 * wire.bundled)} conductors`,
      result: factor(grouping),
      paths: [[...path, 'bundled']],
    },
    {
      what: 'Less within insulation: C_i',
      sum: say`${wire.lies}`,
      result: factor(within),
    },
    {
      what: `What ${circuit.name} may carry there: I_t · C_a · C_g · C_i`,
      sum: say`${current(listed.currentA)} · ${factor(ambient)} · ${factor(grouping)} · ${factor(within)}`,
      result: current(deratedA),
    },
  ];
}

const measureOf = (draw: Draw): Measure => ('powerW' in draw ? power(draw.powerW) : current(draw.currentA));

const lowestOf = ({ bank, nominalV }: Electrical): number => bank?.lowestV ?? nominalV;

/** What is left of the lowest voltage for a load with itself whole on; all of it where the cables are not known. */
const leftFor = (electrical: Electrical, circuit: Circuit): number =>
  lowestOf(electrical) - (figuresOf(electrical).get(circuit.name)?.dropV ?? 0);

/** What a circuit carries in steady use. */
export function carriesStep(electrical: Electrical, figures: CircuitFigures): Step {
  const { circuit, designA = 0, dropV, loopOhm } = figures;
  const { load, path, feeds, charges } = circuit;
  if (feeds) return feederStep(electrical, figures);
  const what = `What ${circuit.name} carries in steady use: I_b`;
  const result = current(designA);
  if (charges || !load)
    return {
      what,
      sum: say`the rated current of the charger`,
      result,
      paths: [path, ...chargersAt(electrical, circuit.name)],
    };
  if ('currentA' in load)
    return { what, sum: say`as the plan says, whatever the voltage`, result, paths: [[...path, 'load']] };
  const lowestV = lowestOf(electrical);
  const solved = dropV !== undefined && loopOhm !== undefined;
  return {
    what,
    sum: solved
      ? say`P / U = ${power(load.powerW)} / (${voltage(lowestV)} at the lowest − ${voltage(dropV)} lost on the way)`
      : say`P / U = ${power(load.powerW)} / ${voltage(lowestV)}, the lowest; what the cables lose is not known`,
    result,
    paths: [[...path, 'load']],
  };
}

/** The keys that say the currents of the chargers on a circuit. */
const chargersAt = ({ solar, drivingCharger, shore }: Electrical, circuit: string): readonly PlanPath[] => [
  ...solar
    .filter((array) => array.circuit === circuit)
    .map(({ path }) => [...path, 'controller', 'current_limit']),
  ...(drivingCharger?.circuit === circuit ? [[...drivingCharger.path, 'current']] : []),
  ...(shore?.charger?.circuit === circuit ? [[...shore.path, 'charger', 'current']] : []),
];

const columns = ['asks for', 'left for it', 'at once', 'adds'];

/** I = P / U at what is left for it, or the current itself, and of that the part that is on at once. */
function drawnRow(circuit: Circuit, leftV: number, part: number, addsA: number): Part {
  const { name, path, load } = circuit;
  return {
    name,
    path,
    origin: 'computed',
    values: [load ? measureOf(load) : current(addsA), voltage(leftV), share(part)],
    adds: current(addsA),
  };
}

/** What feeds a point bears all of the whole tree, or all of its own point alone where that is more. */
function feederStep(electrical: Electrical, { circuit, designA = 0, inTree, dropV }: CircuitFigures): Step {
  const behind = [...figuresOf(electrical).values()].filter(
    ({ circuit: other, chain }) =>
      !other.feeds && !other.charges && chain?.some(({ name }) => name === circuit.name),
  );
  const isWholeTree = inTree !== undefined && dropV !== undefined && inTree.currentA >= designA;
  const lowestV = lowestOf(electrical);
  const rows = behind.map(({ circuit: each, chain = [], inTree: leaf }): Part => {
    if (isWholeTree && leaf)
      return drawnRow(each, leaf.endV, shareOf(electrical, each, chain), leaf.currentA);
    const { load } = each;
    const wholeA = load ? ('powerW' in load ? load.powerW / lowestV : load.currentA) : 0;
    const part = shareAlone(electrical, circuit, each);
    return drawnRow(each, lowestV, part, wholeA * part);
  });
  return {
    what: `What ${circuit.name} carries in steady use, by what hangs behind it: I_b = Σ a·P / U`,
    sum: isWholeTree
      ? say`with all loads of the plan on as far as they are on at once, from ${voltage(lowestV)} at the lowest; a load in amperes counts as it is`
      : say`its own loads alone at the lowest voltage, which is more than they draw when the cables and the whole van are counted; a load in amperes counts as it is`,
    result: current(designA),
    parts: { columns, rows },
  };
}

/** What is drawn through a point: each load at the voltage that its cables leave, as far as it is on at once. */
export function drawnStep(electrical: Electrical, what: string, { each, currentA }: Drawn): Step {
  return {
    what,
    sum: say`watts over the volts left for it, and of that what is on at once; the battery has ${voltage(lowestOf(electrical))} at its lowest, and the cables lose the rest; a load in amperes counts as it is`,
    result: current(currentA),
    parts: {
      columns,
      rows: each
        .filter(({ circuit }) => circuit.load !== undefined)
        .map(({ circuit, share: part, steadyA }) =>
          drawnRow(circuit, leftFor(electrical, circuit), part, steadyA),
        ),
    },
    paths: [['electrical', 'battery', 'chemistry']],
  };
}

/** What the inverter takes, where it is among the loads: a figure that the plan gives as what comes out of it. */
export function inverterTakes({ inverter }: Electrical, loads: readonly DrawnLoad[]): readonly Step[] {
  if (!inverter || !loads.some(({ circuit }) => circuit.name === inverter.circuit && circuit.load)) return [];
  const { powerW, efficiency, path } = inverter;
  return [
    {
      what: 'What the inverter takes at full power: P / η',
      sum: say`${power(powerW)} / ${share(efficiency)}${assumedWords(inverter)}`,
      result: power(powerW / efficiency),
      paths: [
        [...path, 'power'],
        [...path, 'efficiency'],
      ],
    },
  ];
}

export const assumedWords = ({ efficiencyAssumed }: { readonly efficiencyAssumed: boolean }): Phrase =>
  efficiencyAssumed ? say`, assumed, since the plan does not say it` : [];

/** What all chargers behind a circuit or a point push through it at once. */
export function pushedStep(what: string, charging: readonly CircuitFigures[]): Step {
  const rows = charging.map(
    ({ circuit: { name, path }, designA = 0 }): Part => ({
      name,
      path,
      origin: 'typed',
      values: [],
      adds: current(designA),
    }),
  );
  return {
    what,
    result: current(rows.reduce((sum, { adds }) => sum + adds.value, 0)),
    parts: { columns: ['adds'], rows },
  };
}
