import type { Vent } from '../../build/air.ts';
import type { OpenWay } from '../../build/fanned.ts';
import type { Flame } from '../../build/flames.ts';
import type { FixedOpenings } from '../../build/night-air.ts';
import {
  caravanAuNzM2,
  caravanAuNzRow,
  type LeisureVentilation,
} from '../../catalogue/air/fixed-ventilation.ts';
import type { Part, Step } from '../../engine/finding.ts';
import { area, count, freeArea, power } from '../../engine/measure.ts';
import { say } from '../../engine/phrase.ts';
import { namesOf } from '../routed.ts';

/*
 * How free areas come about: what is there, vent by vent, and what the tables of fixed ventilation ask for.
 */

/** Vents side by side with what each counts for; all of their free area where nothing else is said. */
export function ventsStep<Way extends OpenWay>(
  what: string,
  vents: readonly Way[],
  countsM2: (vent: Way) => number = ({ freeAreaM2 }) => freeAreaM2,
): Step {
  const rows = vents.map(
    (vent): Part => ({
      name: vent.name,
      path: vent.path,
      origin: 'typed',
      values: [freeArea(vent.freeAreaM2)],
      adds: freeArea(countsM2(vent)),
    }),
  );
  const result = freeArea(rows.reduce((sum, { adds }) => sum + adds.value, 0));
  if (rows.length === 0) return { what, sum: say`none is in the plan`, result };
  return {
    what,
    result,
    parts: { columns: ['free area', 'counts'], rows },
    paths: vents.map(({ path }) => path),
  };
}

export const isInRoof = ({ surface }: Vent): boolean => surface === 'ceiling';

interface ByTable {
  readonly open: FixedOpenings;
  readonly asked: LeisureVentilation;
  readonly outsidePlanM2: number;
  readonly floorM2: number | undefined;
  readonly burning: readonly Flame[];
}

/** By the table for leisure vehicles: the area that picks the row, what the row asks for, what there is. */
export function leisureSteps(
  { open, asked, outsidePlanM2, floorM2, burning }: ByTable,
  level: 'high' | 'low',
): readonly Step[] {
  const { row, areaM2 } = asked;
  const { roofHighM2, wallHighM2, lowM2 } = row;
  const burns =
    burning.length === 0
      ? 'without anything that burns the air of the room'
      : `with ${namesOf(burning.map(({ name }) => name))} burning the air of the room`;
  const upTo = Number.isFinite(row.upToM2) ? say`up to ${area(row.upToM2)}` : say`for all that is larger`;
  return [
    {
      what: 'The area that picks the row: the larger of outside length × width and floor',
      sum: say`${area(outsidePlanM2)} outside${floorM2 === undefined ? '' : say`, ${area(floorM2)} of floor`}`,
      result: area(areaM2),
      paths: [
        ['van', 'overall_length'],
        ['van', 'overall_width'],
      ],
    },
    {
      what: `What the table asks for ${level === 'high' ? 'high up, in the roof' : 'low down'}`,
      sum: say`the row ${upTo}, ${burns}${level === 'high' ? say`; in a wall ${freeArea(wallHighM2)}` : ''}`,
      result: freeArea(level === 'high' ? roofHighM2 : lowM2),
      paths: burning.map(({ path }) => path),
    },
    level === 'high'
      ? ventsStep('Fixed vents high up: A_roof + A_wall / 2', open.high, (vent) =>
          isInRoof(vent) ? vent.freeAreaM2 : (vent.freeAreaM2 * roofHighM2) / wallHighM2,
        )
      : ventsStep('Fixed vents low down', open.low),
  ];
}

/** By the rule of Australia and New Zealand: what burns and who sleeps, then all fixed vents together. */
export function caravanSteps(
  fixed: readonly Vent[],
  burning: readonly Flame[],
  inputOfW: (flame: Flame) => number,
  sleepers: number,
): readonly Step[] {
  const { inputM2PerW, sleeperM2, leastM2 } = caravanAuNzRow;
  const byFlame = burning.map((flame): Part => {
    const inputW = inputOfW(flame);
    return {
      name: flame.name,
      path: flame.path,
      origin: 'computed',
      values: [power(inputW)],
      adds: freeArea(inputM2PerW * inputW),
    };
  });
  const forFlamesM2 = byFlame.reduce((sum, { adds }) => sum + adds.value, 0);
  const inputW = burning.reduce((sum, flame) => sum + inputOfW(flame), 0);
  return [
    {
      what: 'For what burns the air of the room: 6.1 cm² for each MJ/h, gross',
      result: freeArea(forFlamesM2),
      ...(byFlame.length > 0
        ? { parts: { columns: ['input', 'asks for'], rows: byFlame } }
        : { sum: say`nothing burns it` }),
    },
    {
      what: 'What the rule asks for',
      sum: say`the larger of ${freeArea(leastM2)} and ${freeArea(forFlamesM2)} + ${count(sleepers)} · ${freeArea(sleeperM2)} for those who sleep here`,
      result: freeArea(caravanAuNzM2(inputW, sleepers)),
      paths: [['people', 'sleepers']],
    },
    ventsStep('Fixed vents together', fixed),
  ];
}
