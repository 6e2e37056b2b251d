import type { Build } from '../../build/build.ts';
import type { Appliance, GasPipe } from '../../build/gas.ts';
import { gasBurntIn } from '../../build/gas-use.ts';
import { dropLawAt } from '../../calc/gas/pipe-flow.ts';
import { corrugatedDropPa, fittingLengthsM } from '../../catalogue/gas/pipes.ts';
import { gasProperties } from '../../catalogue/gas/properties.ts';
import type { Step } from '../../engine/finding.ts';
import { count, factor, flow, length, massFlow, pressure, volume } from '../../engine/measure.ts';
import { type Phrase, say } from '../../engine/phrase.ts';
import { corrugatedOf, corrugatedRow, dropIn, sectionOf, wayTo } from '../gas-pipes.ts';
import { ratesStep } from './gas-rate.ts';

/*
 * What is lost between the regulator and an appliance: pipe by pipe its length, its flow and its drop, then their sum.
 */

interface WayOfGas {
  readonly build: Build;
  readonly appliances: readonly Appliance[];
  readonly all: readonly GasPipe[];
  readonly way: readonly GasPipe[];
  /** m³/s by the name of the pipe. */
  readonly flows: ReadonlyMap<string, number>;
  readonly to: string;
}

export function dropSteps(of: WayOfGas): readonly Step[] {
  const { build, appliances, way, flows, to } = of;
  const drops = way.map((pipe) => ({ pipe, dropPa: dropIn(pipe, flows.get(pipe.name) ?? 0, build) }));
  const fed = appliances.filter(({ name }) => feeds(way[0], name, of));
  return [
    ratesStep('What the appliances behind these pipes take, all on', fed, build),
    ...drops.flatMap(({ pipe, dropPa }) => [lengthStep(pipe), dropStep(pipe, dropPa, of)]),
    {
      what: `Lost between the regulator and ${to}: Δp = Σ Δp (100 Pa are 1 mbar)`,
      result: pressure(drops.reduce((sum, { dropPa }) => sum + dropPa, 0)),
      parts: {
        columns: ['lost'],
        rows: drops.map(({ pipe, dropPa }) => ({
          name: pipe.name,
          path: pipe.path,
          origin: 'computed',
          values: [],
          adds: pressure(dropPa),
        })),
      },
    },
  ];
}

const feeds = (pipe: GasPipe | undefined, appliance: string, { all }: WayOfGas): boolean =>
  wayTo(appliance, all).some(({ name }) => name === pipe?.name);

/** The tube, and what each bend and tee adds to it. */
function lengthStep(pipe: GasPipe): Step {
  const { name, path, lengthM = 0, lengthFrom, bends, tees } = pipe;
  const section = sectionOf(pipe);
  const { bendM, teeM } = fittingLengthsM(section.boreM);
  const fittings = [
    ...(bends > 0 ? [say` + ${count(bends)} ${bends === 1 ? 'bend' : 'bends'} · ${length(bendM)}`] : []),
    ...(tees > 0 ? [say` + ${count(tees)} ${tees === 1 ? 'tee' : 'tees'} · ${length(teeM)}`] : []),
  ].flat();
  return {
    what: `The length of the pipe “${name}” that counts: with what its bends and tees add, L`,
    sum: say`${length(lengthM)}${lengthFrom === 'route' ? ' by its route' : ''}${fittings}`,
    result: length(section.lengthM),
    paths: [...(lengthFrom === 'route' ? [] : [[...path, 'length']]), [...path, 'bends'], [...path, 'tees']],
  };
}

const litresAMinute = (m3S: number): number => m3S * 60_000;
const millimetres = (metres: number): number => metres * 1000;

function dropStep(pipe: GasPipe, dropPa: number, of: WayOfGas): Step {
  const { build, appliances, flows } = of;
  const { name, path } = pipe;
  const { vapourM3PerKg } = gasProperties[gasBurntIn(build)];
  const flowM3S = flows.get(name) ?? 0;
  const behind = appliances.filter((each) => feeds(pipe, each.name, of)).map((each) => each.name);
  const taken = say`Q = ${massFlow(flowM3S / vapourM3PerKg)} (${behind.join(', ')}) · ${volume(vapourM3PerKg)} of vapour a kilogram`;
  const result = pressure(dropPa);
  const paths = ['size', 'wall', 'bore'].map((key) => [...path, key]);
  const nominal = corrugatedOf(pipe);
  return nominal
    ? {
        what: `Lost in the pipe “${name}”, corrugated tube of ${nominal}, by its table: Δp = 2.5 mbar·(Q/Q_table)²`,
        sum: say`${taken} = ${flow(flowM3S)}; ${corrugatedText(nominal, sectionOf(pipe).lengthM, flowM3S)}`,
        result,
        paths,
      }
    : {
        what: `Lost in the pipe “${name}”: Δp = k·L·Q^a / D^b, D its bore`,
        sum: say`${taken} = ${flow(flowM3S)}; ${smoothText(pipe, flowM3S, build)}`,
        result,
        paths,
      };
}

function corrugatedText(nominal: 'DN12' | 'DN15', lengthM: number, flowM3S: number): Phrase {
  const { printedM, capacityM3S } = corrugatedRow(nominal, lengthM);
  const beyond =
    lengthM > printedM ? say` · ${length(lengthM)} / ${length(printedM)}, where the table ends` : '';
  return say`${pressure(corrugatedDropPa)} · (${flow(flowM3S)} / ${flow(capacityM3S)})²${beyond}`;
}

/** Bare numbers in the units that the factor is for, whatever units the reader has. */
function smoothText(pipe: GasPipe, flowM3S: number, build: Build): Phrase {
  const { lengthM, boreM } = sectionOf(pipe);
  const law = dropLawAt({ lengthM, boreM }, flowM3S, gasProperties[gasBurntIn(build)]);
  const power = (value: number): string => `${Number(value.toFixed(4))}`;
  return say`${factor(law.factor)} · ${count(millimetres(lengthM))} · ${factor(litresAMinute(flowM3S))}^${power(law.flowPower)} / ${factor(millimetres(boreM))}^${power(law.borePower)} Pa, with L and D in mm and Q in L/min; by the ${law.by}, the greatest of three`;
}
